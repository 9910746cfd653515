package picture

import (
	"fmt"
	"strings"

	"thenar/internal/draw"
	"thenar/internal/mitt"
)

// NestedSize is one of several sizes that are drawn over each other.
type NestedSize struct {
	Name string
	Plan *mitt.Plan
}

// nested lays the fabrics of sizes flat, all from one cast-on.
func nested(sizes []NestedSize) []*fabric {
	list := make([]*fabric, len(sizes))
	for i, s := range sizes {
		f := onTable(s.Plan)
		if list[i] = newFabric(s.Plan, f); i > 0 {
			list[i] = newFabric(s.Plan, f.moved(list[0].foot().y-list[i].foot().y))
		}
	}
	return list
}

// Nested draws the mitts of several sizes over each other at one scale, in mm, by the
// girths and lengths of their fabric, from one cast-on. The smallest comes first and lies
// uppermost; the middle one is cloth, the others are lines. Beside the upper end of each
// stands its name. letter is the size of its letters in mm.
func Nested(sizes []NestedSize, left bool, letter float64) *draw.Scene {
	fabrics := nested(sizes)
	names := make([]string, len(sizes))
	c := fitCanvas(left, letter, letter, letter, func(c *canvas) {
		c.ground, c.even = cardColour, true
		middle := len(sizes) / 2
		fabrics[middle].lay(c, draw.Style{Class: "cloth", Fill: cardColour, Stroke: inkColour, Width: letter / 8, Round: true})
		for i, m := range fabrics {
			if i != middle {
				m.lay(c, draw.Style{Class: "nested-size", Stroke: inkColour, Width: letter / 16, Round: true})
			}
		}
		edge := c.drawn
		for i, m := range fabrics {
			names[i] = sizes[i].Name
			top := m.main()[len(m.main())-1].last().left
			out := point{(edge.left - c.dx) * c.sign, top.y}
			if c.sign < 0 {
				out.x = (edge.right - c.dx) * c.sign
			}
			p := c.pen()
			p.move(top)
			p.line(point{out.x - letter/2, top.y})
			p.path(draw.Style{Class: "leader", Stroke: pencilColour, Width: letter / 24})
			c.place(label{value: sizes[i].Name, at: point{out.x - 0.7*letter, top.y - 0.3*letter}, anchor: draw.End, slide: point{0, letter / 3}})
		}
	})
	s := c.s
	s.Width, s.Height = c.drawn.right+letter, c.drawn.bottom+letter
	s.Label = fmt.Sprintf("%s hand: sizes %s over each other, at one scale, from one cast-on.", HandOptions{Left: left}.side(), strings.Join(names, ", "))
	return s
}
