package picture

import (
	"fmt"
	"math"
	"strings"

	"thenar/internal/draw"
	"thenar/internal/fit"
)

// write writes a text and reserves its area.
func (c *fitCurve) write(x, y float64, text string, style draw.TextStyle) {
	c.texts = append(c.texts, textArea(x, y, text, style))
	c.s.Text(x, y, text, style)
}

// textArea returns the area of a text.
func textArea(x, y float64, text string, style draw.TextStyle) area {
	width := draw.Measure(text, style.Size, style.Face)
	switch style.Anchor {
	case draw.Middle:
		x -= width / 2
	case draw.End:
		x -= width
	}
	return area{x, y - 0.85*style.Size, x + width, y + 0.3*style.Size}
}

// place writes a text at the first of some points where it is on the page and covers no other
// text and no curve. It returns false, and writes nothing, if there is no such point.
func (c *fitCurve) place(text string, style draw.TextStyle, at ...point) bool {
	for _, p := range at {
		if a := textArea(p.x, p.y, text, style); c.isFree(a) {
			c.write(p.x, p.y, text, style)
			return true
		}
	}
	return false
}

func (c *fitCurve) isFree(a area) bool {
	edge := 0.2 * c.letter
	if a.left < edge || a.top < edge || a.right > c.s.Width-edge || a.bottom > c.s.Height-edge {
		return false
	}
	for _, list := range [][]area{c.texts, c.lines} {
		for _, b := range list {
			if a.meets(b) {
				return false
			}
		}
	}
	return true
}

// placesBeside returns the points at which a text can begin to the right or, second, to the left
// of a panel's curves, with its base line at y.
func (c *fitCurve) placesBeside(p *panel, text string, style draw.TextStyle, y float64) []point {
	style.Anchor = draw.Start
	room := textArea(0, y, text, style)
	curves := area{math.Inf(1), room.top, math.Inf(-1), room.bottom}
	for _, b := range c.lines {
		if b.right > p.spine && b.left < p.right && b.top < room.bottom && room.top < b.bottom {
			curves.left, curves.right = min(curves.left, b.left), max(curves.right, b.right)
		}
	}
	var out []point
	if x := curves.right + 0.3*c.letter; x > p.left && x+room.right < min(p.right+fitMargin*c.letter, c.s.Width) {
		out = append(out, point{x, y})
	}
	if x := curves.left - 0.3*c.letter - room.right; x > p.left && !math.IsInf(x, 0) {
		out = append(out, point{x, y})
	}
	return out
}

// drawLabels writes the name of each section into its panel, and the fabric's girth at its end,
// marked with a dot. The thumb's labels are above its panel, which is narrow.
func (c *fitCurve) drawLabels(p *panel) {
	if p.finger {
		return
	}
	l := c.letter
	dots := (&canvas{sign: 1}).pen()
	value := draw.TextStyle{Class: "fit-over", Size: l, Halo: groundColour}
	name := draw.TextStyle{Class: "soft fit-over", Size: c.small(), Halo: groundColour}
	for _, s := range sections(p.rows) {
		last := s[len(s)-1]
		top, bottom := c.extent(s)
		dots.dot(point{c.x(p, last.Fabric), -top}, l/5)
		text := c.girth(last.Fabric)
		if c.o.Half > 0 {
			text = fmt.Sprintf("%s ± %s %s", strings.TrimSuffix(text, " "+string(c.unit)), c.half(last.Fabric), c.unit)
		}
		if p == &c.thumb {
			value.Anchor, name.Anchor = draw.End, draw.End
			x := max(p.right, p.left+draw.Measure(text, l, draw.Regular))
			x = min(x, c.s.Width-0.3*l)
			c.place(text, value, point{x, top - 0.6*l}, point{x, top - 0.3*l})
			c.place(last.Section.Words(), name, point{x, top - 1.8*l}, point{x, top - 1.5*l})
			continue
		}
		var spots []point
		for down := 1.0; down < 3.2 && top+down*l < bottom-0.2*l; down += 0.4 {
			spots = append(spots, c.placesBeside(p, text, value, top+down*l)...)
		}
		c.place(text, value, spots...)
		c.nameSection(p, s, name)
	}
	c.s.Path(dots.String(), draw.Style{Class: "increase", Fill: inkColour})
}

// nameSection writes a section's name above its lower border, at the right of the panel or, if
// the curves are there, at the left.
func (c *fitCurve) nameSection(p *panel, s []fit.Row, style draw.TextStyle) {
	top, bottom := c.extent(s)
	text := s[0].Section.Words()
	if bottom-top < 0.9*c.letter {
		return
	}
	y := bottom - 0.35*c.letter
	right := style
	right.Anchor = draw.End
	if !c.place(text, right, point{p.right - 0.2*c.letter, y}) {
		c.place(text, style, point{p.left + 0.2*c.letter, y})
	}
}
