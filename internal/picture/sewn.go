package picture

import (
	"thenar/internal/draw"
	"thenar/internal/stitch"
)

// sewnEvery is how many rounds apart the drawn stitches of a seam are.
const sewnEvery = 3

// sewn draws the seams of a piece that is worked flat: a line with a stitch across it every
// few rows, inside the edge on the little finger's side and on the thumb's inner side. If
// the thumb comes out of the seam, it lies on that side, and is open along the opening.
func (m *fabric) sewn(c *canvas) {
	if m.p.SeamStitches() == 0 {
		return
	}
	p, wide := c.pen(), 1/m.p.Gauge.Stitches
	for i := range m.tubes {
		t := &m.tubes[i]
		if m.byThumb && t.over == stitch.OverMound {
			continue
		}
		for r, e := range t.edges {
			from, to := e.left, e.out
			if m.byThumb {
				from, to = to, from
			}
			across := to.plus(from.times(-1))
			if n := length(across); n > 0 {
				across = across.times(min(wide, n/4) / n)
			}
			on := from.plus(across)
			if r == 0 {
				p.move(on)
			} else {
				p.line(on)
			}
			if r%sewnEvery == 1 {
				p.move(from.plus(across.times(0.4))).line(from.plus(across.times(1.6))).move(on)
			}
		}
	}
	p.path(draw.Style{Class: "sewn", Stroke: pencilColour, Width: c.letter / 14, Round: true})
}
