package picture

import "thenar/internal/draw"

// LifeSize draws the hand of Example with one tape, round its knuckles, for somebody to
// lay their own hand on. It is sized in mm.
func LifeSize() *draw.Scene {
	h := Example()
	f := newFigure(&h)
	const margin = 1.0
	c := fitCanvas(false, 5, margin, margin, func(c *canvas) {
		f.drawHand(c, -0.1*f.long)
		knuckles := f.girths(c.letter)[0]
		knuckles.ribbon(c)
	})
	s := c.s
	s.Width, s.Height = c.drawn.right+margin, c.drawn.bottom+margin
	s.Label = "A right hand, palm towards you, with a tape round its knuckles."
	return s
}
