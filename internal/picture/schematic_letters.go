package picture

import (
	"thenar/internal/draw"
	"thenar/internal/mitt"
	"thenar/internal/stitch"
)

// letterRing is the radius of the circle round a letter, by its size.
const letterRing = 0.8

// Ringed writes a letter of a size in mm in a circle round x, y.
func Ringed(page *draw.Scene, x, y float64, letter string, size float64) {
	const k = 0.5523 // of a quarter of a circle
	r := letterRing * size
	var p draw.Pen
	p.Move(x+r, y).Curve(x+r, y+k*r, x+k*r, y+r, x, y+r).Curve(x-k*r, y+r, x-r, y+k*r, x-r, y).
		Curve(x-r, y-k*r, x-k*r, y-r, x, y-r).Curve(x+k*r, y-r, x+r, y-k*r, x+r, y).Close()
	page.Path(p.String(), draw.Style{Class: "letter-ring", Fill: groundColour, Stroke: inkColour, Width: size / 16})
	page.Text(x, y+0.36*size, letter, draw.TextStyle{Class: "letter", Size: size, Anchor: draw.Middle, Face: draw.Semibold})
}

// mark writes a letter in a circle.
func (s *schematic) mark(letter string, at point) {
	r := letterRing * s.letter
	s.include(at.plus(point{-r, -r}))
	s.include(at.plus(point{r, r}))
	Ringed(s.s, s.x(at), s.y(at), letter, s.letter)
}

// span draws a line with an end mark at both ends.
func (s *schematic) span(a, b point) {
	p := s.pen().move(a).line(b)
	p.ends(a, b, 1.3*s.letter)
	p.path(draw.Style{Class: "measure", Stroke: inkColour, Width: s.letter / 16})
}

// height is a length that is drawn upright beside the mitt.
type height struct {
	letter   string
	low, top float64
	from     [2]point // what its ends are level with
}

// heights draws the lengths of what lies below the fingers, of a cap, and of the whole, in
// columns left of x.
func (s *schematic) heights(x float64) {
	var tube, over []height
	for _, t := range s.of.tubesOf() {
		letter, ok := s.letterOf(mitt.Dimension{Part: t.part})
		if !ok || digit(t.part) {
			continue
		}
		h := height{letter, t.edges[0].left.y, t.last().left.y, [2]point{t.edges[0].left, t.last().left}}
		if t.over == stitch.OverCap {
			over = append(over, h)
		} else {
			tube = append(tube, h)
		}
	}
	foot := s.of.tubes[0].edges[0].left
	tip := foot
	for _, t := range s.of.tubesOf() {
		if at := t.last().left; at.y > tip.y && !t.part.OnThumb() {
			tip = at
		}
	}
	letter, _ := s.letterOf(mitt.Dimension{})
	for _, list := range [][]height{tube, over, {{letter, foot.y, tip.y, [2]point{foot, tip}}}} {
		if len(list) > 0 {
			x = s.column(list, x)
		}
	}
}

// column draws lengths one above the other in a column left of x, and returns how far it
// reaches. Letters that find no room on their lines stand beside them.
func (s *schematic) column(list []height, x float64) float64 {
	high := 2.2 * letterRing * s.letter
	want, gaps, roomy := make([]float64, len(list)), make([]float64, len(list)), true
	for i, h := range list {
		want[i], gaps[i] = (h.low+h.top)/2, high
		roomy = roomy && h.top-h.low > high
	}
	at := x - (letterRing+0.2)*s.letter
	side := at
	if !roomy {
		at = x - 0.4*s.letter
		side = at - 1.9*letterRing*s.letter
		want = Apart(want, gaps)
	}
	level := s.pen()
	for _, h := range list {
		for _, from := range h.from {
			level.move(from).line(point{at - 0.3*s.letter, from.y})
		}
	}
	level.path(draw.Style{Class: "level", Stroke: pencilColour, Width: s.letter / 30, Dash: dashes(s.letter)})
	for i, h := range list {
		s.span(point{at, h.low}, point{at, h.top})
		middle := point{at, (h.low + h.top) / 2}
		if !roomy {
			s.pen().move(middle).line(point{side, want[i]}).path(draw.Style{Class: "leader", Stroke: inkColour, Width: s.letter / 24})
		}
		s.mark(h.letter, point{side, want[i]})
	}
	return side - (letterRing+0.3)*s.letter
}

// widths draws what is measured around hand and cuff, across it.
func (s *schematic) widths() {
	for i := range s.list {
		m := s.list[i].Dimension
		t := s.of.tube(m.Part)
		if !m.Around || digit(m.Part) || t == nil {
			continue
		}
		first, last := t.edges[0], t.last()
		if m.Edge && (s.twice(m.Part) || last.left.y-first.left.y < 2*letterRing*s.letter) {
			s.underEdge(s.list[i].Letter, first)
			continue
		}
		share := 0.5
		if s.twice(m.Part) {
			share = 0.96
		}
		e := t.edges[int(share*float64(t.rounds()))]
		s.pen().move(e.left).line(e.out).path(draw.Style{Class: "measure", Stroke: inkColour, Width: s.letter / 16})
		s.mark(s.list[i].Letter, e.left.to(e.out, 0.42))
	}
}

// underEdge draws the width of an edge below it.
func (s *schematic) underEdge(letter string, e edge) {
	down := point{0, -(letterRing + 0.5) * s.letter}
	down.y -= nearEdge * (e.out.x - e.left.x) // the edge sags
	s.span(e.left.plus(down), e.out.plus(down))
	s.mark(letter, e.left.to(e.out, 0.5).plus(down))
}

// twice reports whether a part is measured around in two places.
func (s *schematic) twice(part stitch.Part) bool {
	n := 0
	for _, l := range s.list {
		if l.Around && l.Part == part {
			n++
		}
	}
	return n > 1
}

// digits draws what is measured on fingers and thumb: around them across, the length of the
// thumb beside it and that of a finger above its tip.
func (s *schematic) digits() {
	for i := range s.of.tubes {
		t := &s.of.tubes[i]
		if !digit(t.part) {
			continue
		}
		long, ok := s.letterOf(mitt.Dimension{Part: t.part})
		around, _ := s.letterOf(mitt.Dimension{Part: t.part, Around: true})
		if !ok {
			continue
		}
		low, high := t.edges[0].left.to(t.edges[0].out, 0.5), t.last().left.to(t.last().out, 0.5)
		way := unit(high.plus(low.times(-1)))
		if t.part.OnThumb() {
			s.besideThumb(t, long, low, high, way)
		} else {
			s.aboveFinger(t.part, long, low, high, way)
		}
		e := t.edges[t.rounds()/2]
		s.span(e.left, e.out)
		s.mark(around, e.left.to(e.out, 0.5))
	}
}

// besideThumb draws the length of the thumb outside all sizes.
func (s *schematic) besideThumb(t *tube, letter string, low, high, way point) {
	across := point{way.y, -way.x}
	along := func(p point) (up, out float64) {
		d := p.plus(low.times(-1))
		return d.x*way.x + d.y*way.y, d.x*across.x + d.y*across.y
	}
	top, _ := along(high)
	most := 0.0
	for _, m := range s.fabrics {
		for _, t := range m.tubesOf() {
			for _, e := range t.edges {
				if up, out := along(e.out); up > -s.letter && up < top+s.letter {
					most = max(most, out)
				}
			}
		}
	}
	aside := across.times(most + (letterRing+0.4)*s.letter)
	level := s.pen()
	for _, e := range []edge{t.edges[0], t.last()} {
		up, _ := along(e.left.to(e.out, 0.5))
		level.move(e.out).line(low.plus(way.times(up)).plus(aside))
	}
	level.path(draw.Style{Class: "level", Stroke: pencilColour, Width: s.letter / 30, Dash: dashes(s.letter)})
	s.span(low.plus(aside), high.plus(aside))
	s.mark(letter, low.to(high, 0.5).plus(aside))
}

// aboveFinger draws the length of a finger along it, with its letter above the tips of all
// sizes.
func (s *schematic) aboveFinger(part stitch.Part, letter string, low, high, way point) {
	most := 0.0
	for _, m := range s.fabrics {
		if t := m.tube(part); t != nil {
			d := t.last().left.to(t.last().out, 0.5).plus(low.times(-1))
			most = max(most, d.x*way.x+d.y*way.y)
		}
	}
	s.span(low, high)
	at := low.plus(way.times(most + (letterRing+1.2)*s.letter))
	s.pen().move(high).line(at).path(draw.Style{Class: "level", Stroke: pencilColour, Width: s.letter / 30, Dash: dashes(s.letter)})
	s.mark(letter, at)
}

// dashes returns the dashes of lines that show what is level, by the size of the letters.
func dashes(letter float64) string { return px(letter/3) + " " + px(letter/4) }
