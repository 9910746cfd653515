package picture

import (
	"slices"

	"thenar/internal/draw"
	"thenar/internal/fit"
)

// drawCurves draws what a panel compares: the interval of the fabric's girth,
// the other variant, the fabric, the body.
func (c *fitCurve) drawCurves(p *panel) {
	if c.o.Half > 0 {
		c.drawInterval(p)
	}
	if len(p.other) > 0 {
		c.s.Path(c.stairs(p, c.within(p.other)), c.otherStyle())
	}
	c.s.Path(c.stairs(p, p.rows), c.fabricStyle())
	body, style := c.body(p), c.bodyStyle()
	// A free edge, so that the body is seen where it lies on the fabric.
	c.s.Path(body, draw.Style{Class: "fit-free", Stroke: groundColour, Width: c.letter / 3, Dash: style.Dash})
	c.s.Path(body, style)
	c.see(p)
}

// The lines differ in kind and weight, not only in colour: fabric unbroken,
// body dashed, another variant dotted.
func (c *fitCurve) fabricStyle() draw.Style {
	return draw.Style{Class: "fit-fabric", Stroke: inkColour, Width: c.letter / 6, Round: true}
}

func (c *fitCurve) bodyStyle() draw.Style {
	return draw.Style{Class: "fit-body", Stroke: softColour, Width: c.letter / 8, Dash: c.dash(0.55, 0.3)}
}

func (c *fitCurve) otherStyle() draw.Style {
	return draw.Style{Class: "fit-other", Stroke: inkColour, Width: c.letter / 9, Dash: c.dash(0, 0.3), Round: true}
}

func (c *fitCurve) intervalStyle() draw.Style {
	return draw.Style{Class: "fit-interval", Fill: clothColour, Stroke: lineColour, Width: c.letter / 20}
}

// dash is a pattern of marks and gaps in letters.
func (c *fitCurve) dash(mark, gap float64) string {
	return draw.Number(mark*c.letter) + " " + draw.Number(gap*c.letter)
}

// within leaves out the rounds of a variant that rise over the page.
func (c *fitCurve) within(rows []fit.Row) []fit.Row {
	var out []fit.Row
	for _, r := range rows {
		if c.y(r.AboveCastOn) >= 0 {
			out = append(out, r)
		}
	}
	return out
}

// tall is the height in mm of a round; another variant's may be another.
func tall(r fit.Row) float64 { return r.Height / float64(max(r.Round, 1)) }

// steps goes up a profile through the girths of the fabric, times a factor:
// level from round to round, upright through each. Points are on the page.
func (c *fitCurve) steps(p *panel, profile []fit.Row, times float64) []point {
	var out []point
	for _, r := range profile {
		x, y := c.x(p, r.Fabric*times), c.y(r.AboveCastOn)
		out = append(out, point{x, y + tall(r)}, point{x, y})
	}
	return out
}

// through leads a pen through points of the page.
func through(pen *draw.Pen, points []point) {
	for i, at := range points {
		if i == 0 {
			pen.Move(at.x, at.y)
		} else {
			pen.Line(at.x, at.y)
		}
	}
}

// stairs is the fabric's girth, each profile apart.
func (c *fitCurve) stairs(p *panel, rows []fit.Row) string {
	var pen draw.Pen
	for _, profile := range profiles(rows) {
		through(&pen, c.steps(p, profile, 1))
	}
	return pen.String()
}

// drawInterval shades the fabric's 95 % interval and draws its edges.
func (c *fitCurve) drawInterval(p *panel) {
	for _, profile := range profiles(p.rows) {
		high := c.steps(p, profile, 1+c.o.Half)
		slices.Reverse(high)
		var pen draw.Pen
		through(&pen, append(c.steps(p, profile, 1-c.o.Half), high...))
		pen.Close()
		c.s.Path(pen.String(), c.intervalStyle())
	}
}

// body leads through the body's girth at the upper edge of each round; a
// profile begins with its first girth.
func (c *fitCurve) body(p *panel) string {
	var pen draw.Pen
	for _, profile := range profiles(p.rows) {
		first := profile[0]
		points := []point{{c.x(p, first.Body), c.y(first.AboveCastOn) + tall(first)}}
		for _, r := range profile {
			points = append(points, point{c.x(p, r.Body), c.y(r.AboveCastOn)})
		}
		through(&pen, points)
	}
	return pen.String()
}

// see keeps labels off the curves of a panel: in each round they reach from
// the girths of the round below to its own.
func (c *fitCurve) see(p *panel) {
	for _, rows := range [][]fit.Row{p.rows, c.within(p.other)} {
		for _, profile := range profiles(rows) {
			for i, r := range profile {
				low, high := c.reach(r)
				if i > 0 {
					a, b := c.reach(profile[i-1])
					low, high = min(low, a), max(high, b)
				}
				y := c.y(r.AboveCastOn)
				c.lines = append(c.lines, area{c.x(p, low) - 0.2*c.letter, y, c.x(p, high) + 0.2*c.letter, y + tall(r)})
			}
		}
	}
}

// reach is the least and the greatest girth that a round is drawn with.
func (c *fitCurve) reach(r fit.Row) (low, high float64) {
	return min(r.Body, r.Fabric*(1-c.o.Half)), max(r.Body, r.Fabric*(1+c.o.Half))
}
