package mitt

import (
	"slices"
	"strings"

	"thenar/internal/fault"
	"thenar/internal/hand"
)

// Closed tells a kind that ends in a top from one that is open.
func (k Kind) Closed() bool { return k == Mitten || k == Thumbless }

// Words is what the kind is called.
func (k Kind) Words() string {
	switch k {
	case Fingerless:
		return "fingerless mitt"
	case Thumbless:
		return "mitten without a thumb"
	}
	return string(k)
}

// Thumbed tells whether the mitt has a thumb, and with it a gusset.
func (p *Plan) Thumbed() bool { return p.Kind != Thumbless }

// TipRoom is what a mitten is longer than the hand, in mm (common practice,
// no source).
const TipRoom = 5.0

// pinsOfTheThumb are those that a mitten without a thumb does not have.
var pinsOfTheThumb = []string{
	"gusset_base", "increases", "gusset_rounds", "kept_on_hand", "held", "bridge", "picked_up",
	"thumb_decreases", "thumb_stitches", "thumb_rounds", "first_increase", rhythmPin, listPin,
}

// withoutThumb leaves out gusset, bridge and thumb: the hand goes on from the
// cuff to the top with its own count, and the thumb lies inside. Where it lies and
// how wide it makes the palm is filled all the same: the fit asks for it.
func (w *work) withoutThumb() error {
	p := &w.plan
	p.Bridge.HandAfter = p.Body.Stitches.N
	p.Filled = slices.DeleteFunc(p.Filled, func(f hand.Filled) bool { return f.Field == hand.FieldThumbLength })
	return w.topFits()
}

// topFits refuses fixed rounds in which the top can't be closed.
func (w *work) topFits() error {
	n := w.plan.Body.Stitches.N
	needs := topDecreases(n)
	if top := w.pins.TopRounds; !top.On || top.N >= needs {
		return nil
	}
	var faults fault.Fields
	faults.Add("pins.top_rounds", "is %d; %d stitches close in no fewer than %d rounds", w.pins.TopRounds.N, n, needs)
	faults[0].Works = Fix(needs).text()
	if most := Fix(4*w.pins.TopRounds.N + 11); w.pins.HandStitches.On {
		faults.Add("pins.hand_stitches", "is %d; in %d rounds of the top at most %s stitches close", n, w.pins.TopRounds.N, most.text())
		faults[1].Works = most.text()
	}
	return faults
}

// warnWithoutEffect names the fixed numbers that this kind has no use for.
func (w *work) warnWithoutEffect() {
	var names []string
	for _, name := range pinsOfTheThumb {
		if w.req.Pins.Fixed(name) {
			names = append(names, strings.ReplaceAll(name, "_", " "))
		}
	}
	if len(names) > 0 {
		w.plan.say("pins_without_effect", "A mitten without a thumb has no use for these fixed numbers; they are kept: %s.", strings.Join(names, ", "))
	}
}
