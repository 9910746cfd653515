package picture

import (
	"slices"

	"thenar/internal/draw"
	"thenar/internal/fit"
)

// drawCurves draws the curves of a panel: the interval of the fabric's girth, the other
// variant, the fabric, the body.
func (c *fitCurve) drawCurves(p *panel) {
	if c.o.Half > 0 {
		c.drawInterval(p)
	}
	if len(p.other) > 0 {
		c.s.Path(c.stairs(p, c.onPage(p.other)), c.otherStyle())
	}
	c.s.Path(c.stairs(p, p.rows), c.fabricStyle())
	body, style := c.body(p), c.bodyStyle()
	// A light edge, so that the body's line is seen on the fabric's.
	c.s.Path(body, draw.Style{Class: "fit-free", Stroke: groundColour, Width: c.letter / 3, Dash: style.Dash})
	c.s.Path(body, style)
	c.keepOffCurves(p)
}

// Styles of the lines. They differ not only in colour: the fabric is unbroken, the body dashed,
// another variant dotted.
func (c *fitCurve) fabricStyle() draw.Style {
	return draw.Style{Class: "fit-fabric", Stroke: inkColour, Width: c.letter / 6, Round: true}
}

func (c *fitCurve) bodyStyle() draw.Style {
	return draw.Style{Class: "fit-body", Stroke: pencilColour, Width: c.letter / 8, Dash: c.dash(0.55, 0.3)}
}

func (c *fitCurve) otherStyle() draw.Style {
	return draw.Style{Class: "fit-other", Stroke: inkColour, Width: c.letter / 9, Dash: c.dash(0, 0.3), Round: true}
}

func (c *fitCurve) intervalStyle() draw.Style {
	return draw.Style{Class: "fit-interval", Fill: cardColour, Stroke: fifthColour, Width: c.letter / 20}
}

// dash returns a dash pattern, given in multiples of the letters' size.
func (c *fitCurve) dash(mark, gap float64) string {
	return draw.Number(mark*c.letter) + " " + draw.Number(gap*c.letter)
}

// onPage returns the rounds of a variant that are not above the page.
func (c *fitCurve) onPage(rows []fit.Row) []fit.Row {
	var out []fit.Row
	for _, r := range rows {
		if c.y(r.AboveCastOn) >= 0 {
			out = append(out, r)
		}
	}
	return out
}

// roundHeight returns the height of a round in mm.
func roundHeight(r fit.Row) float64 { return r.Height / float64(max(r.Place, 1)) }

// steps returns the staircase of a profile's girths of fabric, multiplied by a factor, as points
// on the page: upright through each round, level between them.
func (c *fitCurve) steps(p *panel, profile []fit.Row, times float64) []point {
	var out []point
	for _, r := range profile {
		x, y := c.x(p, r.Fabric*times), c.y(r.AboveCastOn)
		out = append(out, point{x, y + roundHeight(r)}, point{x, y})
	}
	return out
}

// drawThrough draws a line through points of the page.
func drawThrough(pen *draw.Pen, points []point) {
	for i, at := range points {
		if i == 0 {
			pen.Move(at.x, at.y)
		} else {
			pen.Line(at.x, at.y)
		}
	}
}

// stairs returns the path of the fabric's girth, with each profile by itself.
func (c *fitCurve) stairs(p *panel, rows []fit.Row) string {
	var pen draw.Pen
	for _, profile := range profiles(rows) {
		drawThrough(&pen, c.steps(p, profile, 1))
	}
	return pen.String()
}

// drawInterval shades the fabric's 95 % interval and draws its edges.
func (c *fitCurve) drawInterval(p *panel) {
	for _, profile := range profiles(p.rows) {
		high := c.steps(p, profile, 1+c.o.Half)
		slices.Reverse(high)
		var pen draw.Pen
		drawThrough(&pen, append(c.steps(p, profile, 1-c.o.Half), high...))
		pen.Close()
		c.s.Path(pen.String(), c.intervalStyle())
	}
}

// body returns the path through the body's girth at the upper edge of each round. The first
// girth of a profile also holds at the lower edge of its first round.
func (c *fitCurve) body(p *panel) string {
	var pen draw.Pen
	for _, profile := range profiles(p.rows) {
		first := profile[0]
		points := []point{{c.x(p, first.Body), c.y(first.AboveCastOn) + roundHeight(first)}}
		for _, r := range profile {
			points = append(points, point{c.x(p, r.Body), c.y(r.AboveCastOn)})
		}
		drawThrough(&pen, points)
	}
	return pen.String()
}

// keepOffCurves reserves the areas of a panel's curves against labels. In each round the curves
// reach from the girths of the round below to its own.
func (c *fitCurve) keepOffCurves(p *panel) {
	for _, rows := range [][]fit.Row{p.rows, c.onPage(p.other)} {
		for _, profile := range profiles(rows) {
			for i, r := range profile {
				low, high := c.girthsOf(r)
				if i > 0 {
					a, b := c.girthsOf(profile[i-1])
					low, high = min(low, a), max(high, b)
				}
				y := c.y(r.AboveCastOn)
				c.lines = append(c.lines, area{c.x(p, low) - 0.2*c.letter, y, c.x(p, high) + 0.2*c.letter, y + roundHeight(r)})
			}
		}
	}
}

// girthsOf returns the least and the greatest girth that a round is drawn with.
func (c *fitCurve) girthsOf(r fit.Row) (low, high float64) {
	return min(r.Body, r.Fabric*(1-c.o.Half)), max(r.Body, r.Fabric*(1+c.o.Half))
}
