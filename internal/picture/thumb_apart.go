package picture

import (
	"math"

	"thenar/internal/draw"
)

// A mitt without a gusset keeps its count over the base of the thumb, and so its outline
// there: nothing of the fabric grows. A thumb on waste yarn stands in the palm, and an
// opening gapes at the side.

// pulls is over how great a height the thumb pulls the side of the palm to its foot, over
// how far (our judgement).
const pulls = 0.7

// strain draws the palm of a mitt with a thumb on waste yarn: it keeps its width up to
// near the crotch, where the thumb pulls its side out to its own foot.
func (m *fabric) strain(t *tube, f *figure) {
	inner, outer := m.parting(f)
	high := pulls * max(outer.x-t.last().out.x, 1)
	var from point
	for r, e := range t.edges {
		share := min(max(1-(outer.y-e.out.y)/high, 0), 1)
		if share == 0 || r == 0 {
			from = e.out
		}
		t.edges[r].in, t.edges[r].out = e.in.to(inner, share), from.to(outer, share)
	}
}

// tilts is how far a thumb tilts that stands in the palm of a mitt that lies flat, as a
// share of how far the hand's does (our judgement).
const tilts = 0.5

// palmThumb returns the edges of a thumb on waste yarn as it lies flat: it begins at the
// height of the crotch, so many stitches from the side as it is set in, and turns as it
// leaves the palm. The widths are in stitches.
func (m *fabric) palmThumb(widths []float64, f *figure) []edge {
	g, q := m.p.Gauge.Stitches, m.p.Gauge.Rounds
	half := func(n float64) float64 { return n / g / 4 * flatThumb }
	level := f.crotch.y
	side := float64(m.p.Body.Stitches.N) / g / 4 * f.flatness(level)
	middle := point{side - m.inPalm(level, f) - half(widths[0]), level}
	edges := make([]edge, 0, len(widths))
	for r, n := range widths {
		sin, cos := math.Sincos(tilts * thumbLean * min(2*float64(r)/float64(len(widths)), 1))
		if r > 0 {
			middle = middle.plus(point{sin, cos}.times(1 / q))
		}
		across := point{cos, -sin}.times(half(n))
		out := middle.plus(across)
		edges = append(edges, edge{middle.plus(across.times(-1)), out, out})
	}
	return edges
}

// gapes is how far the palm's edge of an opening lies from the other at most, as a share
// of half the thumb's girth (our judgement).
const gapes = 0.55

// gape draws back the palm's edge of an opening, so that the thumb is seen in it.
func (m *fabric) gape(t *tube) {
	wide := gapes * m.p.Hand.Thumb.MM() / 2 * flatThumb
	for r := range t.edges {
		back := wide * math.Sin(math.Pi*float64(r)/float64(t.rounds()))
		t.edges[r].in.x -= back
		t.edges[r].out.x -= back
	}
}

// lay draws the mitt's contour, and over it that of a thumb that stands in the palm.
func (m *fabric) lay(c *canvas, s draw.Style, attrs ...draw.Attr) {
	m.outline(c).path(s, attrs...)
	if m.apart {
		p := c.pen()
		m.thumbContour(p)
		p.path(s, attrs...)
	}
}

// thumbContour draws round a thumb that stands in the palm: up its inner side, over its
// end and down its outer side. Its foot is open, for there it goes on into the palm.
func (m *fabric) thumbContour(p *pen) {
	t := m.thumb()
	p.move(t.edges[0].left)
	for _, e := range t.edges[1:] {
		p.line(e.left)
	}
	m.overThumb(p)
}

// farEdge draws the edge of an opening on the back of the hand, which the palm's leaves in
// sight, as it lies there without a hand in it.
func (m *fabric) farEdge(c *canvas) {
	if m.p.OpeningRows() == 0 {
		return
	}
	p := c.pen()
	for i := range m.tubes {
		if t := &m.tubes[i]; t.noun == "row" && len(t.edges) > 2 {
			p.move(t.edges[0].out).bow(t.edges[0].out, t.last().out, -nearEdge)
		}
	}
	p.path(draw.Style{Class: "seam", Stroke: pencilColour, Width: c.letter / 7, Round: true})
}
