package mitt

import (
	"thenar/internal/division"
	"thenar/internal/hand"
	"thenar/internal/stitch"
)

// fingerRoom is how much longer than a finger its tube is, in mm, and halfFinger the
// share of a finger that a half one covers (common practice, no source).
const (
	fingerRoom = 2.0
	halfFinger = 0.45
)

// fingersFrom returns how high above the wrist crease, in mm, the little finger is begun,
// and how high the others are.
func (m *Make) fingersFrom(h *hand.Hand) (little, others float64) {
	c := &h.Fingers.Crotch
	others = c[division.IndexMiddle].MM()
	if little = c[division.RingLittle].MM(); m.Level || little > others {
		little = others
	}
	return little, others
}

// lengthOfFinger returns how much of a finger lies above where it is begun, in mm.
func (d *draft) lengthOfFinger(i int) float64 {
	little, others := d.req.Make.fingersFrom(&d.plan.Hand)
	from := others
	if i == division.Little {
		from = little
	}
	return max(0, d.plan.Hand.Fingers.Tip(hand.Finger(i)).MM()-from)
}

// fingerLength returns how long the tube of a finger should be, in mm, and its edging.
func (d *draft) fingerLength(i int, end FingerEnd) (length, edging float64) {
	return coverLength(d.lengthOfFinger(i), end, d.len.fingerEdging, d.q)
}

// fingeredThumb sets the lengths of the thumb of a glove, which ends like a finger.
func (r *Request) fingeredThumb(h *hand.Hand, out *lengths) {
	out.fingerEdging = out.edging
	length, edging := coverLength(h.ThumbLength.MM(), r.Make.ThumbEnd, out.thumbEdging, r.Gauge.Rounds)
	if out.thumb = length; r.Lengths.Thumb != 0 {
		out.thumb = r.Lengths.Thumb.MM()
	}
	if r.Make.ThumbEnd == OpenFinger && r.Lengths.ThumbEdging == 0 {
		out.thumbEdging = edging
	}
}

// coverLength returns how long a tube with an end should be on a finger of a length, and
// the edging, usually edge, that it then has, at q rounds over a mm.
func coverLength(finger float64, end FingerEnd, edge, q float64) (length, edging float64) {
	switch or(end, FullFinger) {
	case HalfFinger:
		return halfFinger * finger, edge
	case OpenFinger:
		return openRounds / q, (openRounds - 1) / q
	}
	return finger + fingerRoom, 0
}

// fingerRounds returns the wished rounds of a finger.
func (d *draft) fingerRounds(i int, f *Finger) tubeWish {
	length, edging := d.fingerLength(i, f.End)
	return tubeWish{
		rounds: d.req.Make.pace().nearest(d.q * length), edging: nearest(d.q * edging),
		pin: d.pins.Fingers[i].Rounds, closed: f.Closed,
	}
}

// lowerRounds returns the rounds from the little finger to where the others part: never
// fewer than the knitted ones.
func (d *draft) lowerRounds() int {
	k := d.progress
	switch {
	case k.begun(stitch.Ring):
		return k.LowerRounds
	case d.req.Make.Level:
		return 0
	}
	return max(d.pins.LowerRounds.Or(d.lowerWish()), k.in(stitch.UpperHand))
}

func (d *draft) lowerWish() int {
	little, others := d.req.Make.fingersFrom(&d.plan.Hand)
	return max(0, nearest(d.q*(others-little)))
}

// offsOfFingers works out how far the fingers are off the wish.
func (d *draft) offsOfFingers() {
	p := &d.plan
	for i := range p.Fingers.Each {
		f := &p.Fingers.Each[i]
		girth, long := PlacesOfFinger(hand.Finger(i))
		wish, _ := d.fingerLength(i, f.End)
		p.Off[girth], p.Off[long] = p.Residual.Fingers[i], float64(f.Rounds)/d.q-wish
	}
	if little, others := d.req.Make.fingersFrom(&p.Hand); !d.req.Make.Level {
		p.Off[PlaceUpperHand] = float64(p.Fingers.Lower)/d.q - (others - little)
	}
	if c := p.Fingers.Cap; c != nil {
		p.Off[PlaceCap] = float64(c.Stitches())/d.g - p.Hand.Circumference.MM()*(1+p.Ease.Cap)
		p.Off[PlaceCapLength] = float64(c.Rounds+c.Top.Rounds)/d.q - d.len.cap
	}
}
