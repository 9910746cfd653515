package picture

import (
	"math"
	"slices"
	"strings"

	"thenar/internal/draw"
	"thenar/internal/fit"
	"thenar/internal/stitch"
	"thenar/internal/units"
)

// Measures of the fingers' panels, as multiples of the letters' size. Their axis is above
// them, the same for all, since the hand's curves end below them.
const (
	fingerTicks  = 0.75 // from a panel's edge to its spine
	fingerColumn = 0.6  // the column of bands
	fingerHead   = 0.5  // from the highest tip to the axis
	fingerRoom   = 4.6  // of name, girth and axis above the highest tip
)

// fingerRange returns the least and the greatest girth that the panels of fingers show: their
// tips are narrower.
func fingerRange(fingers [][]fit.Row, half float64) (low, high float64) {
	low, high = math.Inf(1), math.Inf(-1)
	for _, rows := range fingers {
		for _, r := range rows[:uptoTip(rows)] {
			low, high = min(low, r.Body, r.Fabric*(1-half)), max(high, r.Body, r.Fabric*(1+half))
		}
	}
	return low, high
}

// uptoTip returns how many rounds of a digit lie round it before its tip closes.
func uptoTip(rows []fit.Row) int {
	n := len(rows)
	for n > 1 && rows[n-1].Body < 0.98*rows[0].Body {
		n--
	}
	return n
}

// BelowTip returns the last round of a digit before its tip closes.
func BelowTip(rows []fit.Row, part stitch.Part) (row fit.Row) {
	for _, s := range sections(rows) {
		if s[0].Section == part {
			return s[uptoTip(s)-1]
		}
	}
	return row
}

// layFingers divides the width of the hand's panel between those of the fingers: the little
// finger at the right, since it begins lower, where the hand's curves are at the left.
func (c *fitCurve) layFingers() {
	if len(c.each) == 0 {
		return
	}
	fingers := make([][]fit.Row, 0, len(c.each))
	for i := range c.each {
		fingers = append(fingers, c.each[i].rows)
	}
	low, high := fingerRange(fingers, c.o.Half)
	step := fitSteps(c.unit)[1]
	low, high = math.Floor(low/step)*step, math.Ceil(high/step)*step
	cell := (c.hand.right - c.hand.spine) / float64(len(c.each))
	for i := range c.each {
		p := &c.each[len(c.each)-1-i]
		p.low, p.high = low, high
		p.spine, p.column = c.hand.spine+float64(i)*cell+fingerTicks*c.letter, fingerColumn*c.letter
		p.left = p.spine + p.column + 0.2*c.letter
		p.right = c.hand.spine + (float64(i)+1)*cell - 0.2*c.letter
		p.scale = (p.right - p.left) / (high - low)
	}
}

// head returns the y of the fingers' axis.
func (c *fitCurve) head() float64 {
	top := math.Inf(-1)
	for i := range c.each {
		top = max(top, c.each[i].top())
	}
	return c.y(top) - fingerHead*c.letter
}

// fingerTick returns the ticks of the fingers' axis: as fine as its labels allow, or its ends
// alone.
func (c *fitCurve) fingerTick(p *panel) (list []float64) {
	for _, step := range fitSteps(c.unit) {
		list = nil
		for g := math.Ceil(p.low/step) * step; g < p.high+step/2; g += step {
			list = append(list, g)
		}
		wide := 0.0
		for _, g := range list {
			wide = max(wide, draw.Measure(units.FromMM(g).Format(c.unit), c.small(), draw.Regular))
		}
		if step*p.scale >= wide+0.4*c.letter && len(list) > 1 {
			return list
		}
	}
	return []float64{p.low, p.high}
}

// drawFinger draws the grid of a finger's panel, its axis above it, and its spine.
func (c *fitCurve) drawFinger(p *panel) {
	l, head := c.letter, c.head()
	foot := c.y(p.bottom())
	var grid, axis draw.Pen
	for _, g := range c.fingerTick(p) {
		grid.Move(c.x(p, g), foot).Line(c.x(p, g), head)
		axis.Move(c.x(p, g), head).Line(c.x(p, g), head-0.3*l)
	}
	axis.Move(p.left, head).Line(p.right, head)
	c.s.Path(grid.String(), draw.Style{Class: "fit-grid", Stroke: gridColour, Width: l / 25})
	c.s.Path(axis.String(), draw.Style{Class: "spine", Stroke: inkColour, Width: l / 16})
	c.drawRounds(p)
}

// drawHead writes above a finger's panel the girths of its axis, what its fabric measures
// below the tip, and its name. Where letters are large for that, the names stand by turns on
// two lines, without the girth.
func (c *fitCurve) drawHead(p *panel) {
	l := c.letter
	style := draw.TextStyle{Class: "soft fit-over", Size: c.small(), Anchor: draw.Middle, Halo: groundColour}
	y := c.head() - 0.6*l
	for _, g := range c.fingerTick(p) {
		c.write(c.x(p, g), y, units.FromMM(g).Format(c.unit), style)
	}
	name, line := fingerName(p.rows[0].Section), 2.5
	if c.staggers() {
		if p == &c.each[0] || len(c.each) > 2 && p == &c.each[2] {
			line = 1.3
		}
	} else {
		style.Face, style.Class = draw.Semibold, "fit-over"
		girth := p.rows[uptoTip(p.rows)-1].Fabric
		c.write((p.spine+p.right)/2, y-1.3*l, units.FromMM(girth).Format(c.unit), style)
		style.Face, style.Class = draw.Regular, "soft fit-over"
	}
	c.write((p.spine+p.right)/2, y-line*l, name, style)
}

// fingerName is a finger's name where the drawing shows that it is one.
func fingerName(part stitch.Part) string {
	name, _, _ := strings.Cut(part.Words(), " ")
	return name
}

// staggers reports whether the names of the fingers don't fit beside each other.
func (c *fitCurve) staggers() bool {
	cell := (c.hand.right - c.hand.spine) / float64(len(c.each))
	return slices.ContainsFunc(c.each, func(p panel) bool {
		return draw.Measure(fingerName(p.rows[0].Section), c.small(), draw.Regular)+0.3*c.letter > cell
	})
}
