package picture

import (
	"math"
	"sync"

	"thenar/internal/chart"
	"thenar/internal/draw"
	"thenar/internal/stitch"
)

// Worn is what the mitt of one plan is knitted in. Many may share it.
type Worn struct {
	palette chart.Palette
	palm    map[stitch.Part][]chart.PalmRound

	mu    sync.Mutex
	small map[SmallOptions]*draw.Scene // small pictures, which a shelf asks for again and again
}

// kept returns the small picture that drawn returns, drawn once for the same options.
func (w *Worn) kept(o SmallOptions, drawn func() *draw.Scene) *draw.Scene {
	w.mu.Lock()
	defer w.mu.Unlock()
	s, ok := w.small[o]
	if !ok {
		s = drawn()
		w.small = map[SmallOptions]*draw.Scene{o: s} // while it is knitted, each is asked for in its turn
	}
	return s
}

// NewWorn returns what a mitt is knitted in, or nil if nothing of it has a colour.
func NewWorn(s chart.Source) *Worn {
	coloured := s.Palette.Or(chart.ID(0)).Fill != "" || s.LaysColour()
	for _, m := range s.Marks {
		coloured = coloured || m.Colour != "" && s.Palette.Or(m.Colour).Fill != ""
	}
	if !coloured {
		return nil
	}
	return &Worn{palette: s.Palette, palm: s.Palm()}
}

func (w *Worn) main() string { return w.palette.Or(chart.ID(0)).Fill }

// seenStitch is a stitch of the palm side with its four corners.
type seenStitch struct {
	chart.PalmStitch
	t              *tube
	ribbed         bool
	ul, ur, ll, lr point
}

// seen calls each for every stitch of the palm side.
func (m *fabric) seen(w *Worn, each func(s seenStitch)) {
	for i := range m.tubes {
		t := &m.tubes[i]
		rounds := w.palm[t.part]
		for r := 1; r <= t.rounds() && t.worked(r) <= len(rounds); r++ {
			palm := rounds[t.worked(r)-1]
			ribbed := r > t.rounds()-t.ribbed
			row := func(list []chart.PalmStitch, corner func(edge int, share float64) point, from, to float64) {
				for k, s := range list {
					a := from + (to-from)*float64(k)/float64(len(list))
					b := from + (to-from)*float64(k+1)/float64(len(list))
					each(seenStitch{s, t, ribbed, corner(r, b), corner(r, a), corner(r-1, b), corner(r-1, a)})
				}
			}
			row(palm.Hand, func(e int, share float64) point { return m.onEdge(i, e, t.edges[e].in, t.edges[e].left, share) }, 0, 1)
			if t.edges[r].in != t.edges[r].out {
				row(palm.Gusset, func(e int, share float64) point { return t.edges[e].in.to(t.edges[e].out, share) }, 0, 1)
			}
		}
	}
}

// onEdge returns the point at a share from a to b of an edge of a tube. Towards an opening
// the edges sag with it.
func (m *fabric) onEdge(tube, e int, a, b point, share float64) point {
	t, deep := &m.tubes[tube], 0.0
	if above := t.rounds() - e; !m.stopped && !t.closed && m.ends(tube) {
		deep = 1 - float64(above)/sagRounds
	}
	if tube == 0 && t.below == 0 {
		deep = max(deep, 1-float64(e)/sagRounds)
	}
	at := a.to(b, share)
	if deep <= 0 {
		return at
	}
	way := b.plus(a.times(-1))
	return at.plus(point{-way.y, way.x}.times(4 * nearEdge * deep * share * (1 - share)))
}

// sagRounds is the number of rounds that sag with an opening.
const sagRounds = 5

// tone is one of the two colours of a yarn's fabric. A class gives an undyed yarn that of
// the page.
type tone struct {
	of     func(fill string) string
	undyed string
}

var (
	clothTone  = tone{Cloth, "undyed"}
	furrowTone = tone{Furrow, "undyed-furrow"}
)

// area returns the style of an area in a yarn's tone.
func (t tone) area(class, fill string) draw.Style {
	return draw.Style{Class: undyedAs(class, t.undyed, fill), Fill: t.of(fill)}
}

// strand returns the style of a stroke in the tone of a yarn's stitches.
func strand(fill string, width float64) draw.Style {
	return draw.Style{Class: undyedAs("worn", "undyed-strand", fill), Stroke: Cloth(fill), Width: width}
}

// undyedAs returns a class, with another one after it if a yarn is undyed.
func undyedAs(class, undyed, fill string) string {
	if fill != "" {
		return class
	}
	return class + " " + undyed
}

// tint draws the stitches of every yarn but the main one as plain areas in a tone, and
// reports whether there are any.
func (m *fabric) tint(c *canvas, w *Worn, t tone) bool {
	if w == nil {
		return false
	}
	pens := map[string]*pen{}
	m.seen(w, func(s seenStitch) {
		if s.Yarn == chart.ID(0) {
			return
		}
		p := pens[s.Yarn]
		if p == nil {
			p = c.pen()
			pens[s.Yarn] = p
		}
		p.move(tenth(s.ul)).line(tenth(s.ur), tenth(s.lr), tenth(s.ll))
		p.Close()
	})
	for i := range chart.MaxYarns {
		if p := pens[chart.ID(i)]; p != nil {
			p.path(t.area("worn", w.palette.Or(chart.ID(i)).Fill))
		}
	}
	return len(pens) > 0
}

// knit draws the stitches as two leaning strokes each, of the measures of Knitting; a purl as
// one across. Between ribs purls lie back in the furrow.
func (m *fabric) knit(c *canvas, w *Worn) {
	type key struct {
		t    *tube
		yarn string
	}
	m.tint(c, w, furrowTone)
	pens, wide := map[key]*pen{}, map[*tube]float64{}
	m.seen(w, func(s seenStitch) {
		wide[s.t] = max(wide[s.t], length(s.lr.plus(s.ll.times(-1))))
		if s.Purl && s.ribbed {
			return
		}
		p := pens[key{s.t, s.Yarn}]
		if p == nil {
			p = c.pen()
			pens[key{s.t, s.Yarn}] = p
		}
		if s.Purl {
			p.move(tenth(s.ul.to(s.ll, 0.5))).line(tenth(s.ur.to(s.lr, 0.5)))
			return
		}
		for _, lean := range [2][2]float64{{0.21, 0.36}, {0.79, 0.64}} {
			p.move(tenth(s.ul.to(s.ur, lean[0]))).line(tenth(s.ll.to(s.lr, lean[1])))
		}
	})
	for i := range m.tubes {
		t := &m.tubes[i]
		for y := range chart.MaxYarns {
			if p := pens[key{t, chart.ID(y)}]; p != nil {
				p.path(strand(w.palette.Or(chart.ID(y)).Fill, 0.4*wide[t]))
			}
		}
	}
}

// tenth rounds a point to tenths of a mm, which keeps a page small.
func tenth(p point) point { return point{math.Round(p.x*10) / 10, math.Round(p.y*10) / 10} }

// maxKnitted is the number of stitches that are drawn as knitting at most. More would make
// a page heavy: they are plain colour.
const maxKnitted = 1600

// knitted reports whether the mitt is drawn as knitting.
func (m *fabric) knitted(w *Worn) bool {
	n := 0
	m.seen(w, func(seenStitch) { n++ })
	return n <= maxKnitted
}

// drawWorn draws the mitt in the colours that it wears.
func (m *fabric) drawWorn(c *canvas, w *Worn) {
	m.wear(c, w, func(s draw.Style) { m.lay(c, s) })
}

// wear draws the mitt as knitting within a contour, which outline draws in a style.
func (m *fabric) wear(c *canvas, w *Worn, outline func(draw.Style)) {
	if m.knitted(w) {
		outline(furrowTone.area("worn", w.main()))
		m.knit(c, w)
	} else {
		outline(clothTone.area("worn", w.main()))
		m.tint(c, w, clothTone)
		m.ribs(c, w.main())
	}
	outline(draw.Style{Class: "worn-edge", Stroke: inkColour, Width: c.letter / 9, Round: true})
}
