package picture

import (
	"math"

	"thenar/internal/draw"
	"thenar/internal/units"
)

// fitSteps returns possible distances of ticks in mm, as on a tape in the unit.
func fitSteps(u units.Unit) []float64 {
	if u == units.IN {
		return []float64{6.35, 12.7, 25.4, 50.8, 101.6, 203.2}
	}
	return []float64{5, 10, 20, 50, 100, 200}
}

// layOut divides the page's width between the panels, which have the same scale of girth. Their
// axes begin and end at ticks, and the ticks are as fine as their labels allow.
func (c *fitCurve) layOut() {
	l := c.letter
	c.hand.spine = fitGutter * l
	room := c.s.Width - c.hand.spine - (fitColumn+fitMargin)*l
	if len(c.thumb.rows) > 0 {
		room -= (fitBetween + fitColumn) * l
	}
	for _, c.step = range fitSteps(c.unit) {
		whole, scale := 0.0, 0.0
		for _, p := range c.wide() {
			low, high := c.girthRange(p)
			p.low, p.high = math.Floor(low/c.step)*c.step, math.Ceil(high/c.step)*c.step
			whole += p.high - p.low
		}
		scale = room / whole
		for _, p := range c.wide() {
			p.scale = scale
		}
		if c.step*scale >= c.widestTick(c.wide(), c.step)+0.5*l {
			break
		}
	}
	at := c.hand.spine
	for _, p := range c.wide() {
		p.spine, p.column = at, 1.1*l
		p.left = at + fitColumn*l
		p.right = p.left + (p.high-p.low)*p.scale
		at = p.right + fitBetween*l
	}
	c.layFingers()
}

// widestTick returns the width of the widest label of a tick on some panels.
func (c *fitCurve) widestTick(on []*panel, step float64) float64 {
	widest := 0.0
	for _, p := range on {
		for g := p.low; g < p.high+step/2; g += step {
			widest = max(widest, draw.Measure(units.FromMM(g).Format(c.unit), c.small(), draw.Regular))
		}
	}
	return widest
}

// small returns the size of small labels in mm.
func (c *fitCurve) small() float64 {
	if c.o.Letter > 0 {
		return c.letter
	}
	return 0.9 * c.letter
}

// drawAxis draws a panel's girth axis along its lower edge, its grid, and its spine.
func (c *fitCurve) drawAxis(p *panel) {
	l := c.letter
	bottom, top := c.y(p.bottom()), c.y(p.top())
	var grid, axis draw.Pen
	for g := p.low; g < p.high+c.step/2; g += c.step {
		x := c.x(p, g)
		grid.Move(x, bottom).Line(x, top)
		axis.Move(x, bottom).Line(x, bottom+0.4*l)
	}
	for _, s := range sections(p.rows) {
		y := c.y(s[len(s)-1].AboveCastOn)
		grid.Move(p.left, y).Line(p.right, y)
	}
	axis.Move(p.spine, bottom).Line(p.right, bottom)
	c.s.Path(grid.String(), draw.Style{Class: "fit-grid", Stroke: gridColour, Width: l / 25})
	c.s.Path(axis.String(), draw.Style{Class: "spine", Stroke: inkColour, Width: l / 16})
	c.drawRounds(p)
}

// drawTicks writes the girths below a panel's axis.
func (c *fitCurve) drawTicks(p *panel) {
	if p.finger {
		c.drawHead(p)
		return
	}
	y := c.y(p.bottom()) + 1.35*c.letter
	style := draw.TextStyle{Class: "soft fit-over", Size: c.small(), Anchor: draw.Middle, Halo: groundColour}
	for g := p.low; g < p.high+c.step/2; g += c.step {
		c.write(c.x(p, g), y, units.FromMM(g).Format(c.unit), style)
	}
	if p == &c.hand {
		style.Anchor = draw.End
		c.write(p.spine-0.9*c.letter, y, "girth, "+string(c.unit), style)
	}
}

// drawRounds draws a panel's spine with a tick for every round, longer for every fifth from the
// cast-on, as beside the hand.
func (c *fitCurve) drawRounds(p *panel) {
	l := c.letter
	var each, fifth draw.Pen
	for _, r := range p.rows {
		y := c.y(r.AboveCastOn)
		if n := int(math.Round(r.AboveCastOn / roundHeight(r))); n%5 == 0 {
			fifth.Move(p.spine-0.6*l, y).Line(p.spine, y)
		} else {
			each.Move(p.spine-0.35*l, y).Line(p.spine, y)
		}
	}
	c.s.Path(each.String(), draw.Style{Class: "spine tick", Stroke: fifthColour, Width: l / 25})
	c.s.Path(fifth.String(), draw.Style{Class: "spine tick", Stroke: inkColour, Width: l / 20})
	c.s.Line(p.spine, c.y(p.bottom()), p.spine, c.y(p.top()), draw.Style{Class: "spine", Stroke: inkColour, Width: l / 12, Round: true})
}

// drawHeights writes the length from the cast-on beside the end of each section. The labels are
// spread so that none covers another.
func (c *fitCurve) drawHeights() {
	l, p := c.letter, &c.hand
	var want, size []float64
	for _, s := range sections(p.rows) {
		want, size = append(want, s[len(s)-1].AboveCastOn), append(size, leading*l)
	}
	for i, above := range spread(want, size) {
		own, y := c.y(want[i]), c.y(above)
		end := p.spine - 1.1*l
		if math.Abs(own-y) < 0.3*l {
			y = own
		}
		c.s.Path(new(draw.Pen).Move(p.spine, own).Line(p.spine-0.6*l, own).Line(end, y).String(), draw.Style{Class: "spine tick", Stroke: inkColour, Width: l / 20})
		c.write(end-0.2*l, y+0.33*l, units.FromMM(want[i]).With(c.unit), draw.TextStyle{Size: c.small(), Anchor: draw.End})
	}
}
