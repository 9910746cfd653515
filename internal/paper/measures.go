package paper

import (
	"strings"

	"thenar/internal/units"
)

// measure is what was measured on the hand, and what the mitt has there: girths and
// lengths in mm, 0 where there is none.
type measure struct {
	name        string
	hand, mitt  float64 // around
	along, long float64 // of the hand and the mitt
	doubt       [2]bool // the girth or the length of the hand was filled in
}

// measured lists the measures of hand and mitt. The whole length of the mitt stands apart
// from the hand's, since the cuff is a part of it and the fingers may not be.
func (h *handout) measured() []measure {
	p := h.Out.Plan
	round := func(stitches int) float64 { return float64(stitches) / p.Gauge.Stitches }
	long := func(rounds int) float64 { return float64(rounds) / p.Gauge.Rounds }
	list := []measure{{
		name: "hand", hand: p.Hand.Circumference.MM(), mitt: round(p.Body.Stitches.N),
		along: p.Hand.Length.MM(), doubt: h.filled("hand.hand_circumference", "hand.hand_length"),
	}, {name: "whole " + h.noun(), long: p.Whole()}}
	if p.Parted() {
		list = append(list, measure{
			name: "with thumb", hand: p.Hand.Palm.MM(), mitt: round(p.Body.Stitches.N + p.Gusset.Stitches - p.Gusset.Base),
			doubt: h.filled("hand.palm_and_thumb_circumference", ""),
		})
	}
	list = append(list, measure{name: "wrist, cuff", hand: p.Hand.Wrist.MM(), mitt: round(p.Cuff.Wrist.N), doubt: h.filled("hand.wrist_circumference", "")})
	if p.Thumbed() {
		list = append(list, measure{
			name: "thumb", hand: p.Hand.Thumb.MM(), mitt: round(p.Thumb.Stitches.N),
			along: p.Hand.ThumbLength.MM(), long: long(p.Thumb.Rounds), doubt: h.filled("hand.thumb_circumference", "hand.thumb_length"),
		}, measure{
			name: "bone to thumb", along: p.Hand.GussetLength.MM(), long: long(p.Gusset.Rounds.N), doubt: h.filled("", "hand.gusset_length"),
		}, measure{
			name: "crease to thumb", along: p.Hand.WristToCrotch.MM(), doubt: h.filled("", "hand.wrist_to_crotch"),
		})
	}
	return list
}

// filled reports which of two measures of the hand were filled in.
func (h *handout) filled(girth, length string) (doubt [2]bool) {
	for _, f := range h.Out.Plan.Filled {
		doubt[0] = doubt[0] || f.Field == girth
		doubt[1] = doubt[1] || f.Field == length
	}
	return doubt
}

// noun returns what the mitt is called in few words.
func (h *handout) noun() string {
	switch p := h.Out.Plan; {
	case p.Fingered():
		return p.Kind.Words()
	case p.Kind.Closed():
		return "mitten"
	case !p.Parted():
		return p.Kind.Words()
	}
	return "mitt"
}

// ease returns how much the mitt is looser (+) or closer (−) around than the hand, as the
// difference of the two figures that are printed.
func (h *handout) ease(m *measure) string {
	unit := h.Doc.Sheet.Unit()
	printed := func(mm float64) units.Length {
		l, _ := units.Parse(units.FromMM(mm).Format(unit), unit)
		return l
	}
	switch d := printed(m.mitt) - printed(m.hand); {
	case m.hand == 0 || m.mitt == 0:
		return ""
	case d > 0:
		return "+" + d.Format(unit)
	case d < 0:
		return "−" + (-d).Format(unit)
	}
	return "0"
}

// easeWords says what the signs of the ease mean, and why a ribbed cuff may be as wide as
// the wrist (common practice, no source).
func (h *handout) easeWords() string {
	if _, purls := h.Out.Plan.CuffRib(); !h.Out.Plan.Ribbed() || purls == 0 {
		return "+ looser, − closer"
	}
	return "+ looser, − closer; the ribbed cuff draws in"
}

// easeSaid says the ease around in a sentence, for large print.
func (h *handout) easeSaid() string {
	var list []string
	for _, r := range h.measureRows()[0] {
		list = append(list, inLarge(r.name)+" "+r.ease)
	}
	return "Ease, " + string(h.Doc.Sheet.Unit()) + ": " + strings.Join(list, ", ") + " (" + h.easeWords() + ")."
}

// measureText returns a measure without its unit, marked if it was filled in; empty if
// there is none.
func (h *handout) measureText(mm float64, doubt bool) string {
	switch unit := h.Doc.Sheet.Unit(); {
	case mm == 0:
		return ""
	case doubt:
		return "≈ " + units.FromMM(mm).Format(unit)
	default:
		return units.FromMM(mm).Format(unit)
	}
}
