package picture

import (
	"fmt"

	"thenar/internal/draw"
	"thenar/internal/mitt"
)

// The frame of a small picture in mm, and its scale. A tall mitten for the largest hands
// just fits.
const (
	smallWidth  = 30.0
	smallHeight = 45.0
	smallScale  = 1.0 / 7
)

// Small draws the mitt alone, for a list: at a seventh of its size, so that mitts can be
// compared, on the lower edge of the frame. A mitt too large for the frame is made to fit.
func Small(p *mitt.Plan, left bool) *draw.Scene {
	f := newFigure(&p.Hand)
	f.tucked = !p.Thumbed()
	m := newFabric(p, f)
	const thick = 5.0
	c := fitCanvas(left, thick, 0, 0, func(c *canvas) {
		m.outline(c).path(draw.Style{Class: "cloth", Fill: cardColour, Stroke: inkColour, Width: 2.4, Round: true})
		m.ribs(c)
		m.seams(c)
	})
	wide, high := c.drawn.right-c.drawn.left, c.drawn.bottom-c.drawn.top
	const margin = 0.5
	scale := min(smallScale, (smallWidth-2*margin)/wide, (smallHeight-2*margin)/high)
	s := &draw.Scene{Width: smallWidth, Height: smallHeight, Label: fmt.Sprintf("%s hand: %s", HandOptions{Left: left}.side(), p.Kind.Words())}
	s.Add(c.s, (smallWidth-wide*scale)/2, smallHeight-margin-high*scale, scale)
	return s
}
