package picture

import (
	"fmt"
	"strconv"

	"thenar/internal/draw"
	"thenar/internal/hand"
	"thenar/internal/mitt"
	"thenar/internal/units"
)

// HandOptions says how a hand is shown.
type HandOptions struct {
	Left    bool // the left hand
	Unit    units.Unit
	Example bool // nobody's hand: where the tapes go, without their values
}

func number(n int) string { return strconv.Itoa(n) }

func decimal(n float64) string { return strconv.FormatFloat(round3(n), 'f', -1, 64) }

// letterShare is the size of the letters as a share of the hand's length.
const letterShare = 0.034

// Hand draws the hand to scale, palm towards the viewer, with the mitt on it,
// the spine of its rounds at the side away from the thumb, and the tapes with
// which it was measured.
func Hand(p *mitt.Plan, o HandOptions) *draw.Scene {
	q := p.Gauge.Rounds
	cuff := float64(p.Cuff.Rounds+p.Cuff.PlainRounds) / q
	above := float64(p.Gusset.Rounds.N+p.Body.RoundsAbove) / q
	if p.Top != nil {
		above += float64(p.Top.Rounds) / q
	}
	base := p.Hand.WristToCrotch.MM() - p.Hand.GussetLength.MM()
	letter := letterShare * p.Hand.Length.MM()
	f := newFrame(p.Hand, max(cuff-base, 0)+0.06*p.Hand.Length.MM(), base+above, o.Left)
	s := f.scene(letter, true)
	s.Label = fmt.Sprintf("The %s hand to scale, palm towards you, with the mitt: cast on %d, %d stitches round the hand, %d for the thumb", side(o.Left),
		p.Cuff.CastOn.N, p.Body.Stitches.N, p.Thumb.Stitches.N)
	s.Path(outline(f), draw.Style{Class: "skin", Stroke: lineColour, Width: 0.5})
	m := &fabric{f: f, p: p, s: s, half: flat(float64(p.Body.Stitches.N)/p.Gauge.Stitches) / 2, foot: f.base - cuff}
	m.draw()
	s.Path(outline(f), draw.Style{Class: "skin over", Stroke: lineColour, Width: 0.3, Dash: "1.5 1.5"})
	spine(s, f, p, o.Unit, letter)
	tapes(s, f, o, filledFields(p.Filled), letter)
	return s
}

// Example is a hand to show where the tapes go: size 7 of EN 420 (178 mm
// round, 171 mm long; read second-hand), the rest filled.
func Example() hand.Hand {
	h, _ := hand.Hand{Circumference: 178 * units.Millimetre, Length: 171 * units.Millimetre}.Fill()
	return h
}

// Bare draws the hand with its tapes alone, for a form without a plan. The
// hand is filled.
func Bare(h hand.Hand, o HandOptions) *draw.Scene {
	letter := letterShare * h.Length.MM()
	f := newFrame(h, 0.2*h.Length.MM(), 0, o.Left)
	s := f.scene(letter, false)
	s.Label = fmt.Sprintf("The %s hand to scale, palm towards you, with the tapes that measure it", side(o.Left))
	if o.Example {
		s.Label = fmt.Sprintf("An example of a %s hand, palm towards you, with the tapes to measure", side(o.Left))
	}
	s.Path(outline(f), draw.Style{Class: "skin", Stroke: lineColour, Width: 0.5})
	tapes(s, f, o, nil, letter)
	return s
}

func side(left bool) string {
	if left {
		return "left"
	}
	return "right"
}

// scene opens a page with room for labels, and for the spine if there is one.
func (f *frame) scene(letter float64, withSpine bool) *draw.Scene {
	spine := letter
	if withSpine {
		spine = 10.5 * letter
	}
	f.page(spine, 13*letter, 2*letter, 1.5*letter)
	return &draw.Scene{Width: f.pageWidth, Height: f.pageHigh}
}

func filledFields(list []hand.Filled) map[string]bool {
	out := map[string]bool{}
	for _, f := range list {
		out[f.Field] = true
	}
	return out
}

// Small is the silhouette of a mitt for the shelf, in a fixed frame of 150 by
// 300 mm, so that mitts can be compared with each other.
func Small(p *mitt.Plan, left bool) *draw.Scene {
	q := p.Gauge.Rounds
	cuff := float64(p.Cuff.Rounds+p.Cuff.PlainRounds) / q
	h := p.Hand
	base := h.WristToCrotch.MM() - h.GussetLength.MM()
	f := newFrame(h, max(cuff-base, 0), 0, left)
	f.page(4, 4, 4, 4)
	inner := &draw.Scene{Width: f.pageWidth, Height: f.pageHigh}
	m := &fabric{f: f, p: p, s: inner, half: flat(float64(p.Body.Stitches.N)/p.Gauge.Stitches) / 2, foot: f.base - cuff}
	m.draw()
	const wide, high = 150.0, 300.0
	scale := min(1, wide/inner.Width, high/inner.Height)
	s := &draw.Scene{Width: wide, Height: high, Label: "Small picture of the mitt"}
	s.Add(inner, (wide-inner.Width*scale)/2, high-inner.Height*scale, scale)
	return s
}
