package words

import (
	"fmt"

	"thenar/internal/hand"
	"thenar/internal/mitt"
)

// fingers gives the reasons of a glove's fingers, in the order worked.
func (r *reasons) fingers() {
	p := r.p
	for i := hand.Little; i >= hand.Index; i-- {
		r.finger(i)
		if i > hand.Index {
			r.add(mitt.OfBridge(int(i)-1), fmt.Sprintf("%s wide, cast on here and picked up by the next finger. Bridges are alike where that costs the fingers little.", r.within(p.Fingers.Bridge[i-1])))
		}
		if i == hand.Little && p.Names().Has(mitt.LittleLowerRounds) {
			r.add(mitt.LittleLowerRounds, fmt.Sprintf("The little finger parts %s lower than the others.", r.length(p.Hand.Fingers.Crotch[hand.Index].MM()-p.Hand.Fingers.Crotch[hand.Ring].MM())))
		}
	}
}

// finger gives the reasons of one finger.
func (r *reasons) finger(i hand.Finger) {
	f, p := &r.p.Fingers.Each[i], r.p
	name, girth := mitt.PartOfFinger(i).Words(), p.Hand.Fingers.Girth[i].MM()
	half := "as many of the palm as of the back."
	if f.Palm != f.Back {
		half = "odd stitches go to palm and back in turn."
	}
	r.add(mitt.OfFinger(mitt.FingerPalm, i), fmt.Sprintf("%d stitches of the hand: %s", f.Palm+f.Back, half))
	r.add(mitt.OfFinger(mitt.FingerBack, i), fmt.Sprintf("%d stitches of the hand: %s", f.Palm+f.Back, half))
	room := "2 % and 1.6 stitches more"
	why := fmt.Sprintf("%s of the hand and %d of the bridges, for %s round the %s with %s. ", Plural(f.Palm+f.Back, "stitch"), f.FirstRound-f.Palm-f.Back, r.length(girth), name, room)
	r.add(mitt.OfFinger(mitt.FingerStitches, i), why+r.near(f.Stitches, p.Gauge.Stitches)+".")
	decreased := "None: the finger has its width from the start."
	if f.Decreased > 0 {
		decreased = fmt.Sprintf("From %d to %d stitches; this number is fixed.", f.FirstRound, f.Stitches.N)
	}
	r.add(mitt.OfFinger(mitt.FingerDecreases, i), decreased)
	r.add(mitt.OfFinger(mitt.FingerRounds, i), r.fingerLength(f, i))
}

// fingerLength says where the rounds of a finger come from.
func (r *reasons) fingerLength(f *mitt.Finger, i hand.Finger) string {
	long := r.length(float64(f.Rounds) / r.p.Gauge.Rounds)
	name := mitt.PartOfFinger(i).Words()
	switch f.End {
	case mitt.HalfFinger:
		return fmt.Sprintf("%s long: 0.45 of the %s, edging included.", long, name)
	case mitt.OpenFinger:
		return fmt.Sprintf("%s long: bound off soon, so that the %s is free.", long, name)
	}
	return fmt.Sprintf("%s long: the %s and 2 mm, the last %s closing it.", long, name, Plural(f.Closing, "round"))
}

// cap gives the reasons of a cap over half fingers.
func (r *reasons) cap() {
	p, c := r.p, r.p.Fingers.Cap
	r.add(mitt.CapRounds, fmt.Sprintf("%s round: %d picked up along the back and %d cast on for the palm. It is %s long to its top.",
		Plural(c.Stitches(), "stitch"), c.Back, c.Palm, r.length(float64(c.Rounds)/p.Gauge.Rounds)))
	r.add(mitt.CapTopRounds, topWhy(p.OverFingers()))
}
