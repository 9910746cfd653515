package mitt

import (
	"fmt"
	"math"
	"strings"
)

// warnTightFingers gives the usual caution where the tube of a finger is narrower than the
// finger itself, which stops the blood sooner than a tight hand does.
func (d *draft) warnTightFingers() {
	p := &d.plan
	var tight []string
	at := func(name string, n int, girth float64) {
		if width := float64(n) / d.g; width < girth-1e-9 {
			tight = append(tight, fmt.Sprintf("%s %.0f mm round %.0f mm", name, width, girth))
		}
	}
	for i := range p.Fingers.Each {
		at(fingerParts[i].Words(), p.Fingers.Each[i].Stitches.N, p.Hand.Fingers.Girth[i].MM())
	}
	at("thumb", p.Thumb.Stitches.N, p.Hand.Thumb.MM())
	if len(tight) > 0 {
		p.say("finger_tight", "Narrower than the finger itself: %s. Tingling, cold or pale fingertips mean that it is too tight: take the glove off. This is general caution, not medical advice.",
			strings.Join(tight, ", "))
	}
}

// warnFingers says which finger is more than a stitch off its wish without a number of its
// own in the way.
func (d *draft) warnFingers() {
	p := &d.plan
	for i := range p.Fingers.Each {
		f := &p.Fingers.Each[i]
		if math.Abs(float64(f.Stitches.N)-f.Stitches.Exact) <= 1+1e-9 || d.pins.Fingers[i].Stitches.On {
			continue
		}
		why := "the hand’s stitches go no better"
		if d.pins.fixesFingers() {
			why = "fixed numbers are in the way"
		}
		p.say("finger_count", "The %s gets %d stitches, not %.1f: %s.", fingerParts[i].Words(), f.Stitches.N, f.Stitches.Exact, why)
	}
}

// fixesFingers reports whether any number of the division is fixed.
func (p *Pins) fixesFingers() bool {
	for n := firstOfFingers; n < LittleLowerRounds; n++ {
		if pin := p.Pin(n); pin != nil && pin.On && n.Measure() == InStitches {
			return true
		}
	}
	return false
}

// fingerEdgings says of every tube that ends open whether it has its edging.
func (d *draft) fingerEdgings(edging func(name string, has, wanted int)) {
	p := &d.plan
	if !p.Thumb.Closed {
		edging("thumb", p.Thumb.EdgingRounds, d.thumbWish(d.pins).edging)
	}
	for i := range p.Fingers.Each {
		if f := &p.Fingers.Each[i]; !f.Closed {
			edging(fingerParts[i].Words(), f.EdgingRounds, d.fingerRounds(i, f).edging)
		}
	}
}

// listFingers lists what the person left open of the fingers and the thumb of a glove.
func (d *draft) listFingers() {
	given := &d.req.Lengths
	d.length("length.above_gusset", given.AboveGusset == 0, d.len.above, d.plan.Kind.info().aboveFrom)
	from := map[FingerEnd]string{
		FullFinger: "thumb length + 2 mm", HalfFinger: "0.45 × thumb length, edging included", OpenFinger: "3 rounds",
	}[or(d.req.Make.ThumbEnd, FullFinger)]
	d.length("length.thumb", given.Thumb == 0, d.len.thumb, from)
	if d.req.Make.ThumbEnd == HalfFinger {
		d.length("length.thumb_edging", given.ThumbEdging == 0, d.len.thumbEdging, "0.06 × hand length")
	}
	if d.plan.Fingers.Cap == nil {
		return
	}
	if d.req.Ease.Cap == nil {
		d.ratio(PathCapEase, d.plan.Ease.Cap, "+0.05, as of a mitten")
	}
	d.length(PathCapLength, given.Cap == 0, d.len.cap, "from 10 mm below the lowest crotch to 5 mm above the middle finger")
}
