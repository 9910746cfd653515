package mitt

import (
	"slices"
	"strings"

	"thenar/internal/fault"
	"thenar/internal/hand"
	"thenar/internal/units"
)

// Kind is the kind of mitt.
type Kind string

// The kinds that are planned.
const (
	Fingerless Kind = "fingerless"
	Mitten     Kind = "mitten"
	Thumbless  Kind = "mitten_without_thumb"
	Wristlet   Kind = "wristlet"
	Glove      Kind = "glove"
)

// kindInfo is everything in which one kind of mitt differs from another. The
// rest of the package asks these fields, never the kind itself.
type kindInfo struct {
	kind     Kind
	words    string
	builders map[Construction][]builder // by how it is made round the thumb; the thumb, if there is one, comes last

	parts       bool // its thumb leaves the hand, through a thumb of its own or an opening
	thumbClosed bool // its thumb is closed, if it has one
	topped      bool // it ends in a top; else it is open
	both        bool // its hand goes round hand and thumb
	fingered    bool // its hand is divided into four fingers
	without     Kind // what it is without a thumb; empty: the same
	small       Kind // what a baby gets instead; empty: the same

	ease               float64 // of the hand; see handEase
	easeFrom           string
	ribbing, plainCuff portion
	above              portion // of an open kind: the length above the gusset, or above the cuff
	aboveFrom          string  // the rule for the length above the gusset, or above the cuff
}

// portion is a usual length: a share of the hand's length, plus more in mm.
type portion struct {
	share, more float64
	from        string
}

// of returns the portion for a hand of length l, in mm.
func (s portion) of(l float64) float64 { return s.share*l + s.more }

// kinds is the table of kinds, with their usual eases and lengths (common
// practice, no source). What all kinds share is in request.go. A kind that is not
// in it is planned as the first.
var kinds = []*kindInfo{
	{
		kind: Fingerless, words: "fingerless mitt",
		builders: map[Construction][]builder{
			ByGusset: {(*Plan).cuffSection, (*Plan).plainCuff, (*Plan).gussetSection, (*Plan).openHand, (*Plan).openThumb},
			Straight: {(*Plan).cuffSection, (*Plan).plainCuff, (*Plan).belowThumb, (*Plan).openHandOnWaste, (*Plan).openStraightThumb},
			Slit:     {(*Plan).cuffSection, (*Plan).plainCuffToOpening, (*Plan).openingSection, (*Plan).openHandJoined},
		},
		parts: true, without: Wristlet,
		ease: -0.05, easeFrom: eachFrom,
		ribbing:   portion{0.165, 0, "0.165 × hand length"},
		plainCuff: portion{0.165, 0, "0.165 × hand length"},
		above:     portion{share: 0.21},
		aboveFrom: "0.21 × hand length",
	},
	{
		kind: Mitten, words: "mitten",
		builders: map[Construction][]builder{
			ByGusset: {(*Plan).cuffSection, (*Plan).plainCuff, (*Plan).gussetSection, (*Plan).handToTop, (*Plan).topAtBridge, (*Plan).closedThumb},
			Straight: {(*Plan).cuffSection, (*Plan).plainCuff, (*Plan).belowThumb, (*Plan).handOnWasteToTop, (*Plan).topAtSide, (*Plan).closedStraightThumb},
		},
		parts: true, thumbClosed: true, topped: true, without: Thumbless,
		ease: 0.05, easeFrom: eachFrom,
		ribbing:   gripping,
		plainCuff: portion{0.05, 0, "0.05 × hand length"},
		aboveFrom: "hand length − wrist to crotch + 5 mm, less the top",
	},
	{
		kind: Thumbless, words: "mitten without a thumb",
		builders: map[Construction][]builder{
			NoThumb: {(*Plan).cuffSection, (*Plan).plainCuffAlone, (*Plan).handAlone, (*Plan).topAlone},
		},
		topped: true, both: true,
		ease: 0.05, easeFrom: "1.05 × palm with thumb ÷ hand − 1, so that it goes round both",
		ribbing:   gripping,
		plainCuff: portion{0, 0, "none: the hand follows the cuff"},
		aboveFrom: "hand length + 5 mm, less the top",
	},
	{
		kind: Wristlet, words: "wristlet",
		builders: map[Construction][]builder{
			NoThumb: {(*Plan).cuffSection, (*Plan).plainCuffAlone, (*Plan).openAlone},
		},
		ease: -0.05, easeFrom: eachFrom,
		ribbing:   portion{0.165, 0, "0.165 × hand length"},
		plainCuff: portion{0, 0, "none: the hand follows the cuff"},
		above:     portion{share: 0.39},
		aboveFrom: "0.39 × hand length: with its ribbing a palm’s length up to the base of the thumb",
	},
	{
		kind: Glove, words: "glove",
		builders: map[Construction][]builder{
			ByGusset: {(*Plan).cuffSection, (*Plan).plainCuff, (*Plan).gussetSection, (*Plan).handToFingers, (*Plan).littleFinger, (*Plan).upperHand, (*Plan).ringFinger, (*Plan).middleFinger, (*Plan).indexFinger, (*Plan).thumbToEnd, (*Plan).capSection, (*Plan).capTop},
			Straight: {(*Plan).cuffSection, (*Plan).plainCuff, (*Plan).belowThumb, (*Plan).handOnWasteToFingers, (*Plan).littleFinger, (*Plan).upperHand, (*Plan).ringFinger, (*Plan).middleFinger, (*Plan).indexFinger, (*Plan).straightThumbToEnd, (*Plan).capSection, (*Plan).capTop},
		},
		parts: true, thumbClosed: true, fingered: true, small: Thumbless,
		ease: -0.05, easeFrom: "−0.05 for a glove",
		ribbing:   gripping,
		plainCuff: portion{0.05, 0, "0.05 × hand length"},
		aboveFrom: "crotch of ring and little finger − wrist to crotch",
	},
}

const eachFrom = "−0.05 for a fingerless mitt, +0.05 for a mitten"

// gripping is the ribbing of a closed kind, which has to hold the mitten on the
// hand.
var gripping = portion{0.33, 8, "0.33 × hand length + 8 mm, so that the cuff grips"}

// info returns the kind's line of the table.
func (k Kind) info() *kindInfo {
	for _, one := range kinds {
		if one.kind == k {
			return one
		}
	}
	return kinds[0]
}

// By returns the kind that is made of k by a construction: without a thumb some are
// a kind by themselves.
func (k Kind) By(c Construction) Kind {
	if c == NoThumb {
		return or(k.info().without, k)
	}
	return k
}

// Whole returns the kind that k is when its thumb is left out; k itself if there is none.
func (k Kind) Whole() Kind {
	for _, one := range kinds {
		if k != "" && one.without == k {
			return one.kind
		}
	}
	return k
}

// Closed reports whether the kind ends in a top; other kinds are open.
func (k Kind) Closed() bool { return k.info().topped }

// For returns the kind that a hand of a length gets: k itself, or what is made instead for a
// baby.
func (k Kind) For(length units.Length) Kind {
	if length < hand.BabyBelow {
		return or(k.info().small, k)
	}
	return k
}

// Words returns what the kind is called.
func (k Kind) Words() string {
	if i := k.info(); i.kind == k {
		return i.words
	}
	return string(k)
}

// TipRoom is the length in mm by which a mitten is longer than the hand (common
// practice, no source).
const TipRoom = 5.0

// withoutThumb leaves out gusset, bridge and thumb: the hand goes on from the
// cuff to the top with one count, and the thumb lies inside. The thumb's length
// is no longer listed as filled, since nothing uses it; the palm with the thumb
// still is, since the fit needs it.
func (d *draft) withoutThumb() error {
	p := &d.plan
	p.Bridge.HandAfter = p.Body.Stitches.N
	d.unlist(hand.FieldThumbLength)
	if !p.Kind.Closed() { // a wristlet, which ends below the thumb
		d.unlist(hand.FieldThumb, hand.FieldPalm)
		return nil
	}
	return d.topFits()
}

// bigEnough refuses what is not made for so small a hand.
func (d *draft) bigEnough() error {
	p := &d.plan
	instead := p.Kind.For(p.Hand.Length)
	if instead == p.Kind {
		return nil
	}
	var faults fault.Fields
	if d.req.Hand.Length == 0 {
		works(&faults, "kind", string(instead), "is %s, but the hand would be %s long, and a glove needs %s: measure %s, or write %s",
			p.Kind, p.Hand.Length, hand.BabyBelow, hand.FieldLength, instead)
		return faults
	}
	works(&faults, "kind", string(instead), "is %s, but so small a hand (%s) gets no fingers: write %s, a %s",
		p.Kind, p.Hand.Length, instead, instead.Words())
	return faults
}

// unlist leaves fields of the hand that nothing uses out of those that are filled.
func (d *draft) unlist(fields ...string) {
	d.plan.Filled = slices.DeleteFunc(d.plan.Filled, func(f hand.Filled) bool { return slices.Contains(fields, f.Field) })
}

// warnWithoutEffect names the fixed numbers that a mitt that is made so has no
// use for: first the counts, then the numbers that say when to increase.
func (d *draft) warnWithoutEffect() {
	var names, times []string
	for _, n := range d.req.Pins.fixed() {
		switch {
		case !d.plan.without(n):
		case n == LittleLowerRounds && d.plan.Fingered():
			d.plan.say("pins_without_effect", "%s is kept without use while the fingers part at one height (%s is false).", n.Path(), PathLower)
		case n.Measure() >= AtRounds:
			times = append(times, n.Words())
		default:
			names = append(names, n.Words())
		}
	}
	if names = append(names, times...); len(names) > 0 {
		what := "A " + d.plan.Kind.Words()
		switch {
		case d.plan.Down():
			what += " from the fingertips"
		case d.plan.Gusseted():
		case d.plan.Thumbed():
			what = "A thumb without a gusset"
		case d.plan.OpeningRows() > 0:
			what = "An opening for the thumb"
		}
		d.plan.say(PinsWithoutEffect, "%s has no use for these fixed numbers; they are kept: %s.", what, strings.Join(names, ", "))
	}
}
