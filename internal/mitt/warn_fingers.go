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
		if width := float64(n) / d.g; math.Round(width) < math.Round(girth) { // in the mm that are told
			tight = append(tight, fmt.Sprintf("%s: glove %.0f mm, finger %.0f mm", name, width, girth))
		}
	}
	for i := range p.Fingers.Each {
		at(fingerParts[i].Words(), p.Fingers.Each[i].Stitches.N, p.Hand.Fingers.Girth[i].MM())
	}
	at("thumb", p.Thumb.Stitches.N, p.Hand.Thumb.MM())
	if len(tight) > 0 {
		p.say("finger_tight", "Narrower than the finger itself: %s. Tingling, cold or pale fingertips mean that it is too tight: take the glove off. This is general caution, not medical advice.",
			strings.Join(tight, "; "))
	}
}

// warnTips says where a thumb or finger of too few rounds is not closed: more stitches than
// close well are left for the yarn to be drawn through.
func (d *draft) warnTips() {
	p := &d.plan
	if p.Down() {
		return // a tip that is worked first always closes
	}
	at := func(name string, t *Tube) {
		pace := d.req.Make.pace()
		least := pace.cornered(1, t.Decreased) + pace.closing(t.Stitches.N)
		if !t.Closed || t.Rounds >= least {
			return
		}
		p.say("tip_open", "The %s isn’t closed in %s: the yarn would be drawn through %d stitches. Give it %d or more.",
			name, roundsOf(t.Rounds), t.leftOpen(pace), least)
	}
	if p.Fingered() {
		for i := range p.Fingers.Each {
			at(fingerParts[i].Words(), &p.Fingers.Each[i].Tube)
		}
	}
	if p.Thumbed() {
		at("thumb", &p.Thumb.Tube)
	}
}

// leftOpen returns how many stitches a closed tube has after its last round.
func (t *Tube) leftOpen(o pace) int {
	n := t.Stitches.N
	for r := t.lastCorner(o) + 1; r <= t.Rounds; r += 2 {
		n = (n + 1) / 2
	}
	return n
}

func roundsOf(n int) string {
	if n == 1 {
		return "1 round"
	}
	return fmt.Sprintf("%d rounds", n)
}

// A tube is long or wide by mistake where it is more than muchLonger times as long as the
// digit inside, or muchWider times as wide as it should be (common practice, no source).
const (
	muchLonger = 1.5
	muchWider  = 1.2
)

// warnLongFingers says which thumb or finger of a glove is far longer than what is in it.
func (d *draft) warnLongFingers() {
	p := &d.plan
	at := func(name string, t *Tube, digit float64) {
		if long := float64(t.Rounds) / d.q; long > muchLonger*digit+fingerRoom {
			p.say("finger_long", "The %s is %.0f mm long in %s, and the finger %.0f mm.", name, long, roundsOf(t.Rounds), digit)
		}
	}
	for i := range p.Fingers.Each {
		f := &p.Fingers.Each[i]
		if f.End != OpenFinger { // which is as long as its edging
			at(fingerParts[i].Words(), &f.Tube, d.lengthOfFinger(i))
		}
	}
	if p.Make.ThumbEnd != OpenFinger {
		at("thumb", &p.Thumb.Tube, p.Hand.ThumbLength.MM())
	}
}

// fewestBeside is the least number of the hand's stitches that should be a finger's; of
// fewer its bridges would be all that is between palm and back (common practice, no source).
const fewestBeside = 4

// warnFingers says which finger is more than a stitch off its wish without a number of its
// own in the way.
func (d *draft) warnFingers() {
	p := &d.plan
	for i := range p.Fingers.Each {
		f, name := &p.Fingers.Each[i], fingerParts[i].Words()
		if f.both() < fewestBeside {
			p.say("finger_few", "The %s gets %d of the palm’s stitches and %d of the back’s. A finer yarn would help.", name, f.Palm, f.Back)
		}
		if d.pins.Fingers[i].Stitches.On {
			girth := p.Hand.Fingers.Girth[i].MM()
			if width := float64(f.Stitches.N) / d.g; width > muchWider*(girth+p.fingerAdded(i)) {
				p.say("finger_wide", "The %s is wide with its fixed %d stitches: glove %.0f mm, finger %.0f mm.", name, f.FirstRound, width, girth)
			}
			continue
		}
		if math.Abs(float64(f.Stitches.N)-f.Stitches.Exact) <= 1+1e-9 {
			continue
		}
		why := "the hand’s stitches go no better"
		switch {
		case d.progress.begun(fingerParts[i]):
			why = "it is knitted so"
		case p.Pins.fixesFingers():
			why = "fixed numbers are in the way"
		case d.progress.begun(fingerParts[inOrderWorked[0]]):
			why = "what is knitted leaves no better"
		}
		p.say("finger_count", "The %s gets %d stitches, not %.1f: %s.", name, f.Stitches.N, f.Stitches.Exact, why)
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
