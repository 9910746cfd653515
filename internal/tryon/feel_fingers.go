package tryon

import (
	"fmt"
	"math"
	"strings"

	"thenar/internal/hand"
	"thenar/internal/mitt"
	"thenar/internal/sheet"
	"thenar/internal/stitch"
	"thenar/internal/units"
	"thenar/internal/words"
)

// fingerStep is by how much the girth of a finger is changed for one step of the scale, as
// a share: at least by a stitch, since less makes no difference (common practice, no
// source).
const fingerStep = 0.05

// tightFinger is the usual caution about a tight finger.
const tightFinger = "Tingling, cold or pale fingertips mean that it is too tight: take it off. This is general caution, not medical advice"

// feltFinger corrects the girth of one finger by what was felt, and leaves the hand alone.
// With F the girth and w how much wider or narrower its tube should be, the girth becomes
//
//	F + w / 1.02
//
// and where the tube is off its wish on the wrong side already, that is added: what was
// felt is the tube. What the measured gauge corrects is left out, as in felt.
func (c *corrector) feltFinger(zone Zone) {
	step := c.try.Steps[zone]
	if step == 0 || !c.hasZone(zone) {
		return
	}
	f, _ := mitt.FingerOf(stitch.Part(zone))
	p, sign := c.plan, math.Copysign(1, float64(step))
	girth, tube := p.Hand.Fingers.Girth[f].MM(), float64(p.Fingers.Each[f].Stitches.N)/p.Gauge.Stitches
	wider := max(fingerStep*math.Abs(float64(step))*girth, 1/p.Gauge.Stitches)
	wider = max(wider-sign*c.narrower*tube, 0)
	off := max(sign*p.Residual.Fingers[f], 0)
	is := units.FromMM(girth + sign*(wider+off)/tubeShare)
	u := c.sheet.Unit()
	one := Correction{
		Key: string(zone), Name: "girth of the " + zone.Words(), Was: typedLengthWithUnit(p.Hand.Fingers.Girth[f], u), Is: typedLengthWithUnit(is, u),
		Because: fmt.Sprintf("its tube is %s round and felt %s: %s for each step, and a stitch or more", words.Size(tube, u), FeelWords(step), percent(fingerStep)) +
			c.gaugeToo(sign*fingerStep*math.Abs(float64(step))),
	}
	switch {
	case step > 0:
		one.Caution = tightFinger
	case is < fewestGirth*p.Hand.Fingers.Girth[f]/100:
		one.Doubt = "so narrow a finger is unlikely: hold the tape round its middle joint again"
	}
	if wider < 0.05 {
		one.Is, one.Because = one.Was, one.Because+": nothing more is changed"
		c.add(one)
		return
	}
	if fixed := fixedOfFinger(c.sheet, f); len(fixed) > 0 {
		names := make([]string, len(fixed))
		for i, n := range fixed {
			names[i] = "“" + p.Names().Words(n) + "”"
		}
		one.Because += "; you fixed " + strings.Join(names, ", ")
	}
	one.Edits = []Edit{{f.FieldGirth(), typedLength(is, u)}}
	one.Later = c.try.Place.reached(stitch.Part(zone)) // what it is worked on is settled with its first round
	c.add(one)
}

// tubeShare is how much of its tube's width follows the girth of a finger.
const tubeShare = 1.02

// fewestGirth is below which share of its girth, in hundredths, a finger is asked about.
const fewestGirth = 85

// feltUpperHand corrects the ease of the hand by how the upper hand felt: it is what the
// hand has left once the little finger has its share. What was felt of the hand itself
// comes first.
func (c *corrector) feltUpperHand() {
	step := c.try.Steps[UpperHand]
	if step == 0 || !c.hasZone(UpperHand) {
		return
	}
	if c.try.Steps[Hand] == 0 {
		c.eased(UpperHand, step, "; it has the hand’s stitches, so the hand gets the same")
		return
	}
	_, ease, _ := c.easeOf(Hand)
	c.add(Correction{
		Key: string(UpperHand), Name: "room for the hand (ease), " + UpperHand.Words(), Was: signedPercent(ease), Is: signedPercent(ease),
		Because: fmt.Sprintf("it felt %s; it has the hand’s stitches, so what is changed there serves it too", FeelWords(step)),
	})
}

// fixedOfFinger returns the fixed numbers that settle what a finger is worked on.
func fixedOfFinger(s sheet.Sheet, f hand.Finger) []mitt.Number {
	list := []mitt.Number{mitt.OfFinger(mitt.FingerPalm, f), mitt.OfFinger(mitt.FingerBack, f), mitt.OfFinger(mitt.FingerStitches, f)}
	if f < hand.Little {
		list = append(list, mitt.OfBridge(int(f)))
	}
	if f > hand.Index {
		list = append(list, mitt.OfBridge(int(f)-1))
	}
	var fixed []mitt.Number
	for _, n := range list {
		if s.Given(n.Path()) != "" {
			fixed = append(fixed, n)
		}
	}
	return fixed
}
