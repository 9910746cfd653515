package picture

import "thenar/internal/draw"

// sewnEvery is how many rounds apart the drawn stitches of a seam are.
const sewnEvery = 3

// sewn draws the seams of a piece that is worked flat: inside the edge on the little
// finger's side, and on the thumb's inner side, a line with a stitch across it every few
// rows.
func (m *fabric) sewn(c *canvas) {
	if m.p.SeamStitches() == 0 {
		return
	}
	p, wide := c.pen(), 1/m.p.Gauge.Stitches
	for i := range m.tubes {
		t := &m.tubes[i]
		for r, e := range t.edges {
			across := e.out.plus(e.left.times(-1))
			if n := length(across); n > 0 {
				across = across.times(min(wide, n/4) / n)
			}
			on := e.left.plus(across)
			if r == 0 {
				p.move(on)
			} else {
				p.line(on)
			}
			if r%sewnEvery == 1 {
				p.move(e.left.plus(across.times(0.4))).line(e.left.plus(across.times(1.6))).move(on)
			}
		}
	}
	p.path(draw.Style{Class: "sewn", Stroke: pencilColour, Width: c.letter / 14, Round: true})
}
