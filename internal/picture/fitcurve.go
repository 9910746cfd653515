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
	Left bool       // the left hand; the curve is the same, its words are not
	Unit units.Unit // of the labels; centimetres if it is not known

	// Half is half the 95 % interval of every girth of the fabric as a share
	// of it; 0: none is known.
	Half float64

	// Height of the page and Foot, the cast-on below its upper edge, in mm, as
	// Frame gives them. Both 0: those of Frame.
	Height, Foot float64

	Other     []fit.Row // a second variant to compare with; nil: none
	Tolerance float64   // mm: a round further from the girth that was wanted says so; 0: none does
}

func (o *FitOptions) hand() HandOptions { return HandOptions{Left: o.Left, Unit: o.Unit} }

// The fit curve's places across, in letters.
const (
	fitWidth   = 31.0 // of the page
	fitGutter  = 5.9  // from the left edge to the spine
	fitColumn  = 1.5  // of the column of bands beside a spine
	fitBetween = 1.6  // between the hand's panel and the thumb's spine
	fitMargin  = 0.9  // at the right
)

// fitCurve is the page on which a fit curve is drawn.
type fitCurve struct {
	s      *draw.Scene
	o      FitOptions
	unit   units.Unit
	letter float64
	foot   float64
	scale  float64 // page mm over a mm of girth
	step   float64 // mm of girth between two ticks
	hand   panel
	thumb  panel
	texts  []area // the labels, so that none covers another
	lines  []area // what of the page the curves take
}

// panel is a part of the page with a girth axis of its own.
type panel struct {
	rows, other []fit.Row
	low, high   float64 // girths at its left and right edge, in mm
	spine       float64 // where its rounds are ticked, the column of bands at the right of it
	left, right float64 // its edges on the page
}

func (p *panel) bottom() float64 { return p.rows[0].AboveCastOn - p.rows[0].Height }
func (p *panel) top() float64    { return p.rows[len(p.rows)-1].AboveCastOn }

// FitCurve draws the girths of fabric and hand by their height above the
// cast-on, upwards and to scale in mm, in the frame of Hand: both line up
// round by round when they are shown equally high. Across, girth has a scale
// of its own, the same for the hand and, in a panel beside it that begins at
// the division, for the thumb.
//
// The fabric is a staircase of one step for each round with its interval
// around it, the body a dashed line, a second variant dotted. The profiles
// below and above the parting are never joined. Beside each spine stand the
// bands of stretch, hatched the denser the tighter.
//
// For a page's script, each section is a group of class "section" like those
// of Hand; its invisible paths of class "band" say in data-says what they
// show. Rows are those of fit.Rows in the order knitted; without rows the
// page is empty.
func FitCurve(rows []fit.Row, p *mitt.Plan, o FitOptions) *draw.Scene {
	c := &fitCurve{s: &draw.Scene{}, o: o, unit: o.hand().unit(), letter: letters(&p.Hand)}
	if c.o.Height == 0 && c.o.Foot == 0 {
		c.o.Height, c.o.Foot = Frame(p, o.hand())
	}
	c.foot = c.o.Foot
	c.s.Width, c.s.Height = fitWidth*c.letter, c.o.Height
	c.s.Label = c.label(rows)
	c.hand.rows, c.thumb.rows = parted(rows)
	c.hand.other, c.thumb.other = parted(o.Other)
	if len(c.hand.rows) == 0 {
		return c.s
	}
	c.layOut()
	c.s.Group("fit")
	for _, p := range c.panels() {
		c.drawAxis(p)
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

// panels are those that have rounds.
func (c *fitCurve) panels() []*panel {
	if len(c.thumb.rows) == 0 {
		return []*panel{&c.hand}
	}
	return []*panel{&c.hand, &c.thumb}
}

// parted takes the thumb's rounds out of the others.
func parted(rows []fit.Row) (hand, thumb []fit.Row) {
	for _, r := range rows {
		if r.Section.Over() == stitch.OverDigit {
			thumb = append(thumb, r)
		} else {
			hand = append(hand, r)
		}
	}
	return hand, thumb
}

// profiles cuts rows where the thumb parts, after the gusset: below it is in
// the girth, above it is not, so no line leads from one to the other.
func profiles(rows []fit.Row) [][]fit.Row {
	return cut(rows, func(a, b fit.Row) bool { return a.Section.Over() == stitch.OverMound && a.Section != b.Section })
}

// sections cuts rows into sections.
func sections(rows []fit.Row) [][]fit.Row {
	return cut(rows, func(a, b fit.Row) bool { return a.Section != b.Section })
}

// bandRuns cuts rows into runs of equal bands.
func bandRuns(rows []fit.Row) [][]fit.Row {
	return cut(rows, func(a, b fit.Row) bool { return a.Band != b.Band })
}

// cut parts rows between neighbours that differ.
func cut(rows []fit.Row, differ func(a, b fit.Row) bool) [][]fit.Row {
	var out [][]fit.Row
	for i, r := range rows {
		if i == 0 || differ(rows[i-1], r) {
			out = append(out, nil)
		}
		out[len(out)-1] = append(out[len(out)-1], r)
	}
	return out
}

// y is a height above the cast-on on the page.
func (c *fitCurve) y(above float64) float64 { return c.foot - above }

// x is a girth on the page.
func (c *fitCurve) x(p *panel, girth float64) float64 { return p.left + (girth-p.low)*c.scale }

// span is the least and the greatest girth that a panel shows.
func (c *fitCurve) span(p *panel) (low, high float64) {
	low, high = math.Inf(1), math.Inf(-1)
	for _, r := range slices.Concat(p.rows, p.other) {
		low, high = min(low, r.Body, r.Fabric), max(high, r.Body, r.Fabric)
	}
	for _, r := range p.rows {
		low, high = min(low, r.Fabric*(1-c.o.Half)), max(high, r.Fabric*(1+c.o.Half))
	}
	return low, high
}
