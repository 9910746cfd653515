package mitt

import (
	"strings"

	"thenar/internal/stitch"
)

// What a plan calls its numbers, and where pages show them: what they are depends on how
// the mitt is made.

// saidDown is what numbers are called in a mitt from the fingertips, where they are named
// otherwise.
var saidDown = map[Number]string{
	CastOn: "bind off", Increases: "decrease rounds", FirstIncrease: "last decrease", IncreaseRounds: "decreases in",
	Held: "into the hand", BridgeStitches: "gap",
}

// Rung returns the short name of n on the ladder of this plan, before the bare number.
func (p *Plan) Rung(n Number) string {
	if said, ok := saidDown[n]; ok && p.Down() {
		return said
	}
	if n == CuffRounds && !p.Make.Cuff.info().ribbed {
		word, _, _ := strings.Cut(p.Make.Cuff.Words(), " ")
		return p.Make.InRows(word + " rounds")
	}
	switch {
	case n == GussetRounds && p.Construction() == Slit:
		return "opening rows"
	case n == GussetRounds && !p.Gusseted():
		return p.Make.InRows("rounds to thumb")
	}
	return p.Make.InRows(n.Rung())
}

// Said returns what the reasons of this plan call n, before its value.
func (p *Plan) Said(n Number) string {
	if said, ok := saidDown[n]; ok && p.Down() {
		return said
	}
	if n == CuffRounds {
		return p.Make.Cuff.Words()
	}
	switch {
	case n == GussetRounds && p.Construction() == Slit:
		return "opening"
	case n == GussetRounds && !p.Gusseted():
		return "to the thumb"
	case n == RoundsAboveGusset && !p.Parted():
		return "above the cuff"
	case n == RoundsAboveGusset && !p.Gusseted():
		return "above the thumb"
	}
	return n.Said()
}

// PartOf returns the section of this plan with which pages show n. Without a gusset its
// numbers belong to the hand that takes its place.
func (p *Plan) PartOf(n Number) stitch.Part {
	part := n.Part()
	switch {
	case !part.Marked() || p.Gusseted():
		return part
	case p.Parted():
		return p.Mound()
	}
	return stitch.Hand
}
