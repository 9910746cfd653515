// Package mitt computes the plan of a mitt: cuff, gusset, held stitches,
// bridge, thumb, hand and top, and turns it into rounds. It always speaks of
// the right hand; stitch.Mirror makes the left.
package mitt

import (
	"thenar/internal/division"
	"thenar/internal/gauge"
	"thenar/internal/hand"
	"thenar/internal/stitch"
	"thenar/internal/units"
)

// Request is what a plan is made from: what the person measured and decided. A
// zero length or a nil ease means the default below.
type Request struct {
	Kind     Kind
	Make     Make
	Gauge    gauge.Gauge
	Hand     hand.Hand
	Ease     Ease
	Lengths  Lengths
	Stitch   Stitches
	Pins     Pins
	Follow   Follow    // what the gusset's increases follow
	Lambda   *float64  // the price of a changed rhythm, stitches²; nil: DefaultLambda
	Progress *Progress // what is knitted already; nil: nothing
}

// Ease is fabric over body minus one (−0.5 < e < 1) at the hand, at the cuff,
// half-way up the gusset, at the palm where the thumb parts and in a cap over half
// fingers; for the thumb it is a length added to its girth.
type Ease struct {
	Hand       *float64
	Cuff       *float64
	Gusset     *float64
	Palm       *float64
	Cap        *float64
	ThumbAdded units.Length
}

// Lengths are the lengths of the parts; zero means the default.
type Lengths struct {
	Cuff        units.Length // of the ribbing, or of another cuff's fabric
	CuffPlain   units.Length // plain rounds between ribbing and gusset
	AboveGusset units.Length // from the division to the last round, edging included, top not
	Edging      units.Length // ribbed edging of the hand
	Thumb       units.Length // from the first full thumb round to the last, edging included
	ThumbEdging units.Length // ribbed edging of the thumb
	Cap         units.Length // a cap over half fingers, from where it is picked up to its end
}

// Stitches are the multiples that counts keep to: the hand's count is
// ≡ Offset (mod Repeat), the cuff's a multiple of Rib.
type Stitches struct {
	Repeat, Offset, Rib int
	Knits               int  // the knit stitches that begin each repeat of the rib; 0: half of it, the odd one too
	OneSided            bool // increases at the first edge only
}

// With returns the multiple that a hand keeps to so that it is a multiple of n, too, with
// the least offset; ok is false if none is both.
func (st Stitches) With(n int) (both Stitches, ok bool) {
	both = st
	for k := range n {
		if at := mod(st.Offset, st.Repeat) + k*st.Repeat; at%n == 0 {
			both.Repeat = st.Repeat / gcd(st.Repeat, n) * n
			both.Offset = at % both.Repeat
			return both, true
		}
	}
	return st, false
}

func mod(a, n int) int { return (a%n + n) % n }

func gcd(a, b int) int {
	for b != 0 {
		a, b = b, a%b
	}
	return a
}

// ribPattern returns the knits and then the purls of one repeat of a rib, which is
// the sheet's or one that takes its place. A multiple of 1 has no purls: it is
// stocking stitch.
func (st Stitches) ribPattern(rib int) (knits, purls int) {
	if rib == st.Rib && st.Knits > 0 {
		return st.Knits, rib - st.Knits
	}
	return rib - rib/2, rib / 2
}

// knits returns the knit stitches that begin each repeat of a rib.
func (st Stitches) knits(rib int) int {
	knits, _ := st.ribPattern(rib)
	return knits
}

// ribbing returns n stitches of rib: knits, then purls, over and over.
func (st Stitches) ribbing(n, rib int) []stitch.Op {
	knits, _ := st.ribPattern(rib)
	ops := make([]stitch.Op, n)
	for i := range min(rib, n) {
		ops[i] = stitch.Knit
		if i >= knits {
			ops[i] = stitch.Purl
		}
	}
	for done := rib; done < n; done *= 2 {
		copy(ops[done:], ops[:done])
	}
	return ops
}

// step returns the number of stitches that an increase round makes.
func (st Stitches) step() int {
	if st.OneSided {
		return 1
	}
	return 2
}

// Pin is a number that the person has fixed.
type Pin struct {
	N  int
	On bool
}

// Fix returns a pin that holds n.
func Fix(n int) Pin { return Pin{n, true} }

// Or returns the pinned number, or n if nothing is pinned.
func (p Pin) Or(n int) int {
	if p.On {
		return p.N
	}
	return n
}

// Allows reports whether n is the pinned number or nothing is pinned.
func (p Pin) Allows(n int) bool { return !p.On || p.N == n }

// Pins are all numbers that may be fixed. Rhythm holds the intervals between
// increase rounds, used in turn; a single n means every nth round.
// IncreaseRounds lists all increase rounds; they may stand closer together than
// the planner's own, and one may be the gusset's last round.
type Pins struct {
	CastOn, CuffRounds, CuffPlainRounds Pin
	HandStitches                        Pin
	GussetBase, Increases, GussetRounds Pin
	FirstIncrease                       Pin
	KeptOnHand, Held, Bridge            Pin
	RoundsAboveGusset, TopRounds        Pin
	PickedUp                            Pin
	ThumbDecreases, ThumbStitches       Pin
	ThumbRounds                         Pin
	Rhythm, IncreaseRounds              []int

	Fingers       [division.Fingers]FingerPins // of a glove, from the index on
	FingerBridges [division.Bridges]Pin
	LowerRounds   Pin // from the little finger to where the others part

	CapRounds, CapTopRounds Pin // of a cap, below its top and of it
}

// FingerPins are the numbers of one finger that may be fixed.
type FingerPins struct{ Palm, Back, Stitches, Decreases, Rounds Pin }

// What is added to the kind's ease of the hand (common practice, no source):
// below 16 stitches over 10 cm a mitt is 5 % larger. Without a gusset it is no smaller
// than 5 % larger than the hand.
const (
	easeThick    = 0.05
	easeStraight = 0.05 // at least, where no gusset makes room for the thumb's base
	thickBelow   = 0.16 // stitches per mm
)

// handEase returns the ease of the hand H, given or by default. A mitten without
// a thumb goes round hand and thumb and is 5 % larger than both. With P the palm
// with the thumb laid in (common practice, no source):
//
//	e = 1.05 P/H − 1, about 0.25
//
// If the palm was measured smaller than the hand, P is H.
func (r *Request) handEase(h *hand.Hand) float64 {
	if r.Ease.Hand != nil {
		return *r.Ease.Hand
	}
	kind := r.Kind.info()
	ease := kind.ease
	if kind.parts && !r.Gusseted() {
		ease = max(ease, easeStraight)
	}
	if kind.both {
		ease = (1+ease)*max(h.Palm.MM(), h.Circumference.MM())/h.Circumference.MM() - 1
	}
	if r.Gauge.Stitches < thickBelow {
		ease += easeThick
	}
	return ease
}

// palmEase returns the ease where the thumb parts, by default max(e_hand, 0): the
// mound of the thumb must not be pinched.
func (r *Request) palmEase(h *hand.Hand) float64 {
	if r.Ease.Palm != nil {
		return *r.Ease.Palm
	}
	return max(r.handEase(h), 0)
}

// gussetEase returns the ease half-way up the gusset, by default the mean of the
// hand's and the palm's.
func (r *Request) gussetEase(h *hand.Hand) float64 {
	if r.Ease.Gusset != nil {
		return *r.Ease.Gusset
	}
	return (r.handEase(h) + r.palmEase(h)) / 2
}

// cuffEase returns the ease of the cuff on the wrist, by default none.
func (r *Request) cuffEase() float64 {
	if r.Ease.Cuff != nil {
		return *r.Ease.Cuff
	}
	return 0
}

// thumbAdded returns the length added to the thumb's girth in mm, by default
// 0.08 T + 1.6/g: about 12 mm at 22 to 24 stitches over 10 cm (a thumb worked
// at its own girth is too tight; 0.5 in was added, designer's note of 2015). The thumb of
// a glove gets as little as its fingers, 0.02 T + 1.6/g.
func (r *Request) thumbAdded(h *hand.Hand) float64 {
	if r.Ease.ThumbAdded != 0 {
		return r.Ease.ThumbAdded.MM()
	}
	share := 0.08
	if r.Kind.info().fingered {
		share = fingerShare
	}
	return share*h.Thumb.MM() + 1.6/r.Gauge.Stitches
}

// lengths are all lengths in mm, given or by default (common practice, no
// source). The defaults, with L the hand's length:
//
//	cuff, fingerless mitt: 0.33 L, half of it rib
//	cuff, mittens: it has to grip, rib 0.33 L + 8 mm, plain 0.05 L, without a thumb 0
//	opening for the thumb: 0.28 L, the plain rounds longer up to it
//	hem, rolled edge: 0.12 L, the plain rounds longer by what it reaches up less
//	above the gusset, fingerless mitt: 0.21 L
//	above the cuff, wristlet: 0.39 L, so that with its ribbing it is 0.55 L long
//	above the gusset, mitten: L − crotch + 5 mm, top included
//	above the cuff, mitten without a thumb: L + 5 mm, top included
//	edgings: 0.06 L
//	above the gusset, glove: crotch of the little finger − crotch of the thumb
//	thumb, glove: the thumb's length + 2 mm; half of it 0.45 of that length
//	cap over half fingers: from 10 mm below the lowest crotch to L + 5 mm
//	thumb, fingerless mitt: 0.53 of the thumb's length, to the joint, edging included
//	thumb, mitten: the thumb's length + 4 mm
//	top, mittens: 0.19 L + 5 mm
type lengths struct {
	cuff, cuffPlain, above, edging, thumb, thumbEdging, top float64
	fingerEdging                                            float64 // of half fingers
	cap                                                     float64 // over half fingers, its top included
}

func (r *Request) lengths(h *hand.Hand) lengths {
	l, kind := h.Length.MM(), r.Kind.info()
	or := func(given units.Length, byDefault float64) float64 {
		if given != 0 {
			return given.MM()
		}
		return byDefault
	}
	out := lengths{
		edging:      or(r.Lengths.Edging, 0.06*l),
		thumbEdging: or(r.Lengths.ThumbEdging, 0.06*l),
		top:         TopLength(l),
	}
	out.cuff, out.cuffPlain = r.cuffLengths(l)
	if r.Construction() == Slit && r.Lengths.CuffPlain == 0 {
		out.cuffPlain += max(0, h.GussetLength.MM()-openingLength(l)) // up to the opening
	}
	switch {
	case kind.fingered:
		little, _ := r.Make.fingersFrom(h)
		out.above = or(r.Lengths.AboveGusset, max(0, little-h.WristToCrotch.MM()))
		out.cap = or(r.Lengths.Cap, l+TipRoom-(little-capBelow))
		r.fingeredThumb(h, &out)
		return out
	case !kind.topped:
		out.above = or(r.Lengths.AboveGusset, kind.above.of(l))
	case kind.parts:
		out.above = l - h.WristToCrotch.MM() + TipRoom // top included; the top takes it off
	default:
		out.above = l + TipRoom
	}
	switch {
	case !r.Thumbed():
	case kind.thumbClosed:
		out.thumb = or(r.Lengths.Thumb, h.ThumbLength.MM()+4)
	default:
		out.thumb = or(r.Lengths.Thumb, 0.53*h.ThumbLength.MM())
	}
	return out
}
