package picture

import (
	"fmt"
	"math"

	"thenar/internal/draw"
	"thenar/internal/mitt"
	"thenar/internal/units"
)

// spine is the upright line at the left of the hand with a tick for every round, and its
// labels.
type spine struct {
	m      *fabric
	letter float64
	labels []spineLabel
	wide   float64 // width of the labels
	x      float64 // of the line on the page
}

// spineLabel is a label beside the spine.
type spineLabel struct {
	y     float64 // its height in the hand's coordinates
	lines []string
	soft  bool
	tick  bool // at the border of a section, not in its middle
}

// newSpine returns a spine that labels the end of each section with the length from the
// cast-on, and its middle with its name and rounds.
func newSpine(m *fabric, u units.Unit, letter float64) *spine {
	s := &spine{m: m, letter: letter}
	s.labels = append(s.labels, spineLabel{m.foot().y, []string{m.p.Said(mitt.CastOn) + fmt.Sprintf(" %d", m.p.Cuff.CastOn.N)}, true, true})
	for _, t := range m.main() {
		low, high := t.edges[0].left.y, t.last().left.y
		mm := t.up(float64(t.rounds())) / m.p.Gauge.Rounds
		s.labels = append(
			s.labels,
			spineLabel{(low + high) / 2, []string{t.part.Words(), roundsWords(t.rounds(), t.noun)}, true, false},
			spineLabel{high, []string{units.FromMM(mm).With(u)}, false, true},
		)
	}
	for _, l := range s.labels {
		for _, t := range l.lines {
			s.wide = max(s.wide, draw.Measure(t, letter, draw.Regular))
		}
	}
	s.x = 1.8*letter + s.wide
	return s
}

func roundsWords(n int, noun string) string {
	if n == 1 {
		return "1 " + noun
	}
	return fmt.Sprintf("%d %ss", n, noun)
}

// width returns the room for labels and line, up to the drawing.
func (s *spine) width() float64 { return s.x + 1.6*s.letter }

// draw draws the line, a tick for every round, longer for every fifth and for every border
// of sections, and the labels.
func (s *spine) draw(c *canvas) {
	y := func(h float64) float64 { return c.y(point{0, h}) }
	main := s.m.main()
	foot, top := s.m.foot().y, main[len(main)-1].last().left.y
	c.s.Group("rounds")
	var each, fifth, border draw.Pen
	r := 0
	for i := range main {
		for k := 1; k <= main[i].rounds() && (k < main[i].rounds() || i+1 < len(main)); k++ {
			at := y(foot + main[i].up(float64(k))/s.m.p.Gauge.Rounds)
			if r++; r%5 == 0 {
				fifth.Move(s.x, at).Line(s.x+0.75*s.letter, at)
			} else {
				each.Move(s.x, at).Line(s.x+0.4*s.letter, at)
			}
		}
	}
	for _, l := range s.labels {
		if l.tick {
			border.Move(s.x-0.5*s.letter, y(l.y)).Line(s.x+1.1*s.letter, y(l.y))
		}
	}
	c.s.Path(each.String(), draw.Style{Class: "spine tick", Stroke: fifthColour, Width: s.letter / 25})
	c.s.Path(fifth.String(), draw.Style{Class: "spine tick", Stroke: inkColour, Width: s.letter / 20})
	border.Move(s.x, y(foot)).Line(s.x, y(top))
	c.s.Path(border.String(), draw.Style{Class: "spine", Stroke: inkColour, Width: s.letter / 12, Round: true})
	s.drawLabels(c)
	c.s.End()
}

// places returns the middles of the labels on the page, from the foot up, and the height of
// each label. The labels are spread so that none covers another.
func (s *spine) places(c *canvas) (middles, room []float64) {
	want := make([]float64, len(s.labels))
	room = make([]float64, len(s.labels))
	for i, l := range s.labels {
		want[i], room[i] = -s.at(c, l), float64(len(l.lines))*leading*s.letter
	}
	middles = spread(want, room)
	for i := range middles {
		middles[i] = -middles[i]
	}
	return middles, room
}

// keepRoom makes the page large enough for the labels.
func (s *spine) keepRoom(c *canvas) {
	middles, room := s.places(c)
	for i, y := range middles {
		c.drawn.top = min(c.drawn.top, y-room[i]/2)
		c.drawn.bottom = max(c.drawn.bottom, y+room[i]/2)
	}
}

// at returns the y on the page of the height that a label belongs to.
func (s *spine) at(c *canvas, l spineLabel) float64 { return c.y(point{0, l.y}) }

func (s *spine) drawLabels(c *canvas) {
	x := s.x - 0.9*s.letter
	middles, room := s.places(c)
	for i, l := range s.labels {
		y, own := middles[i], s.at(c, l)
		if moved := math.Abs(y - own); l.tick && moved > 0.3*s.letter {
			c.s.Line(s.x-0.5*s.letter, own, x+0.1*s.letter, y, draw.Style{Class: "spine tick", Stroke: inkColour, Width: s.letter / 20})
		}
		style := draw.TextStyle{Size: s.letter, Anchor: draw.End, Face: draw.Semibold}
		if l.soft {
			style.Class, style.Size, style.Face = "soft", c.soft(), draw.Regular
		}
		for n, t := range l.lines {
			c.s.Text(x, y-room[i]/2+(0.92+float64(n)*leading)*s.letter, t, style)
		}
	}
}

// spread moves centres, given in rising order, so that things of these sizes don't overlap,
// with the least sum of squared moves.
func spread(want, size []float64) []float64 {
	gaps := make([]float64, max(len(size)-1, 0))
	for i := range gaps {
		gaps[i] = (size[i] + size[i+1]) / 2
	}
	return Apart(want, gaps)
}
