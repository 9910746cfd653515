package picture

import (
	"math"
	"slices"

	"thenar/internal/draw"
	"thenar/internal/fit"
	"thenar/internal/mitt"
	"thenar/internal/stitch"
	"thenar/internal/units"
)

// FitOptions says how a fit curve is shown.
type FitOptions struct {
	Left bool       // the left hand: changes the words, not the curve
	Unit units.Unit // of the labels; cm if it is unknown

	// Half is half the 95 % interval of the fabric's girths, as a share of the girth;
	// 0 if it is unknown.
	Half float64

	// Letter is the size of all letters in mm, and Width that of the page; 0: shares of
	// the hand.
	Letter, Width float64

	// Height of the page and distance of the cast-on from its upper edge, in mm, as
	// Frame returns them. If both are 0, Frame is called.
	Height, Foot float64

	Other     []fit.Row // another variant to compare with; nil: none
	Tolerance float64   // mm: a round that differs more from its wanted girth says so; 0: none does
}

func (o *FitOptions) hand() HandOptions { return HandOptions{Left: o.Left, Unit: o.Unit} }

// Widths in the fit curve, as multiples of the letters' size.
const (
	fitWidth   = 31.0 // of the page
	fitGutter  = 5.9  // from the left edge to the spine
	fitColumn  = 1.5  // of the column of bands beside a spine
	fitBetween = 1.6  // between the hand's panel and the thumb's spine
	fitMargin  = 0.9  // at the right
	fitFingers = 4.0  // by which the page is broader where fingers stand above the hand
)

// fitCurve draws a fit curve on a page.
type fitCurve struct {
	s      *draw.Scene
	o      FitOptions
	unit   units.Unit
	letter float64
	foot   float64 // y of the cast-on
	step   float64 // mm of girth between two ticks
	hand   panel
	thumb  panel
	each   []panel // of the fingers, which stand above the hand's
	texts  []area  // the areas of labels, so that none covers another
	lines  []area  // the areas of the curves, so that no label covers them
}

// panel is a part of the page with a girth axis of its own.
type panel struct {
	rows, other []fit.Row
	low, high   float64 // girths at its left and right edge, in mm
	scale       float64 // mm on the page for a mm of girth
	spine       float64 // x of its spine; the column of bands is to the right of it
	column      float64 // the width of that column
	left, right float64 // its edges on the page
	finger      bool
}

func (p *panel) bottom() float64 { return p.rows[0].AboveCastOn - p.rows[0].Height }
func (p *panel) top() float64    { return p.rows[len(p.rows)-1].AboveCastOn }

// FitCurve draws the girths of fabric and hand by their height above the cast-on, upwards and
// to scale in mm, in the frame of Hand, so that both line up round by round at the same height.
// Across, girths have a scale of their own, the same for the hand and for the thumb, which has
// a panel beside the hand's that begins at the division. Fingers have panels above the hand's,
// with a scale of their own, the same for all.
//
// The fabric is a staircase with a step for each round and its interval round it, the body a
// dashed line, another variant dotted. The profiles below and above the parting are not joined.
// Beside each spine are the bands of stretch; tighter ones are hatched more densely.
//
// For a page's script, each section is a group of class "section" as in Hand; its invisible
// paths of class "band" have words for their round in data-says. Rows are those of fit.Rows, in
// knitting order; without rows the page is empty.
func FitCurve(rows []fit.Row, p *mitt.Plan, o FitOptions) *draw.Scene {
	c := &fitCurve{s: &draw.Scene{}, o: o, unit: o.hand().unit(), letter: letterSize(&p.Hand)}
	if c.o.Height == 0 && c.o.Foot == 0 {
		c.o.Height, c.o.Foot = Frame(p, o.hand())
	}
	c.foot = c.o.Foot
	c.s.Width, c.s.Height = fitWidth*c.letter, c.o.Height
	if p.Fingered() {
		c.s.Width += fitFingers * c.letter
	}
	if o.Letter > 0 {
		c.letter, c.s.Width = o.Letter, o.Width
	}
	c.s.Label = c.label(rows)
	c.take(rows)
	if len(c.hand.rows) == 0 {
		return c.s
	}
	c.layOut()
	c.s.Group("fit")
	for _, p := range c.panels() {
		if p.finger {
			c.drawFinger(p)
		} else {
			c.drawAxis(p)
		}
	}
	for _, p := range c.panels() {
		c.drawCurves(p)
		c.drawStretch(p)
		c.drawTicks(p)
	}
	c.drawHeights()
	for _, p := range c.panels() {
		c.drawLabels(p)
		c.drawWords(p)
	}
	c.drawKey()
	c.drawBands()
	c.s.End()
	return c.s
}

// take divides rows, and those of another variant, among the panels.
func (c *fitCurve) take(rows []fit.Row) {
	var thumb, other, fingers, others [][]fit.Row
	c.hand.rows, thumb, fingers = splitDigits(rows)
	c.hand.other, other, others = splitDigits(c.o.Other)
	c.thumb.rows, c.thumb.other = slices.Concat(thumb...), slices.Concat(other...)
	for _, rows := range fingers {
		one := panel{rows: rows, finger: true}
		for _, beside := range others {
			if beside[0].Section == rows[0].Section {
				one.other = beside
			}
		}
		c.each = append(c.each, one)
	}
}

// panels returns the panels that have rounds.
func (c *fitCurve) panels() []*panel {
	list := []*panel{&c.hand}
	if len(c.thumb.rows) > 0 {
		list = append(list, &c.thumb)
	}
	for i := range c.each {
		list = append(list, &c.each[i])
	}
	return list
}

// wide returns the panels side by side on the page: those of hand and thumb.
func (c *fitCurve) wide() []*panel {
	list := c.panels()
	return list[:len(list)-len(c.each)]
}

// splitDigits separates the rounds of the thumb and those of each finger from the others. Of
// thumb there is one at most. A cap has no curve: it lies over fingers that have theirs.
func splitDigits(rows []fit.Row) (hand []fit.Row, thumb, fingers [][]fit.Row) {
	for _, part := range sections(rows) {
		switch over := part[0].Section.Over(); {
		case over == stitch.OverCap:
		case over != stitch.OverDigit:
			hand = append(hand, part...)
		case part[0].Section.OnThumb():
			thumb = append(thumb, part)
		default:
			fingers = append(fingers, part)
		}
	}
	return hand, thumb, fingers
}

// profiles splits rows where the thumb parts, after the gusset, and where a finger does. The
// girth below includes thumb or finger and the one above does not, so no line joins them.
func profiles(rows []fit.Row) [][]fit.Row {
	return split(rows, func(a, b fit.Row) bool {
		parts := a.Section.Over() == stitch.OverMound || a.Section.Over() == stitch.OverHand && b.Section.Over() == stitch.OverHand
		return parts && a.Section != b.Section
	})
}

// sections splits rows into sections.
func sections(rows []fit.Row) [][]fit.Row {
	return split(rows, func(a, b fit.Row) bool { return a.Section != b.Section })
}

// bandRuns splits rows into runs of equal bands.
func bandRuns(rows []fit.Row) [][]fit.Row {
	return split(rows, func(a, b fit.Row) bool { return a.Band != b.Band })
}

// split splits rows between neighbours that differ.
func split(rows []fit.Row, differ func(a, b fit.Row) bool) [][]fit.Row {
	var out [][]fit.Row
	for i, r := range rows {
		if i == 0 || differ(rows[i-1], r) {
			out = append(out, nil)
		}
		out[len(out)-1] = append(out[len(out)-1], r)
	}
	return out
}

// y returns the y on the page of a height above the cast-on.
func (c *fitCurve) y(above float64) float64 { return c.foot - above }

// x returns the x on the page of a girth.
func (c *fitCurve) x(p *panel, girth float64) float64 {
	if p.finger { // its tip is narrower than its panel shows
		girth = min(max(girth, p.low), p.high)
	}
	return p.left + (girth-p.low)*p.scale
}

// girthRange returns the least and the greatest girth that a panel shows.
func (c *fitCurve) girthRange(p *panel) (low, high float64) {
	low, high = math.Inf(1), math.Inf(-1)
	for _, r := range slices.Concat(p.rows, p.other) {
		low, high = min(low, r.Body, r.Fabric), max(high, r.Body, r.Fabric)
	}
	for _, r := range p.rows {
		low, high = min(low, r.Fabric*(1-c.o.Half)), max(high, r.Fabric*(1+c.o.Half))
	}
	return low, high
}
