package words

import (
	"fmt"
	"slices"

	"thenar/internal/stitch"
)

// What is said of the fingers of a glove. The hand goes on to the little finger with its
// own yarn; every other finger begins like the thumb, at what is picked up along the
// finger before it.

// fingerParts are the parts of a glove's fingers, in the order worked.
var fingerParts = []stitch.Part{stitch.Little, stitch.Ring, stitch.Middle, stitch.Index}

// goesOn reports whether a finger is the one to which the hand goes on: nothing is picked
// up for it, so that those that wait come right after its own stitches.
func goesOn(s *stitch.Section) bool {
	r := s.Rounds[0]
	return r.Lead < len(r.Ops) && r.Ops[r.Lead] == stitch.Hold
}

// finger returns what is said before a finger's first round, once its stitches are on the
// needles: how to come to it, what its round is made of, and how the round is closed.
func (h Hands) finger(s *stitch.Section) []string {
	var list []string
	if goesOn(s) {
		list = append(list, h.onToLittle(s.Shift))
	}
	list = append(list, h.itsRound(s))
	if cast := count(s.Rounds[0], stitch.CastOn); cast > 0 {
		list = append(list, h.overBridge(s, cast))
	}
	return list
}

// overBridge returns how a finger's round goes on over the loops of its bridge.
func (h Hands) overBridge(s *stitch.Section, cast int) string {
	if goesOn(s) {
		are := "loops are"
		if cast == 1 {
			are = "loop is"
		}
		return fmt.Sprintf("The %d %s the bridge between fingers. Go on with the first of the %d stitches: pulled snug, it closes the round.", cast, are, s.Rounds[0].Lead)
	}
	side := "palm"
	if h.Left != h.FromLeft {
		side = "back"
	}
	return fmt.Sprintf("After the %s knit on along the %s, and pull the first stitch snug.", Plural(cast, "loop"), side)
}

// onToLittle returns how the hand goes on to the little finger, n stitches further on.
func (h Hands) onToLittle(n int) string {
	switch {
	case n > 0:
		return fmt.Sprintf("Knit %s of the next round%s. The little finger begins here: move the marker here.", Plural(n, "stitch"), h.yarns.more)
	case n < 0:
		return h.backBy(-n, "at the little finger")
	}
	return "The round begins at the little finger already."
}

// itsRound returns what a finger's first round is made of, in its order: on one hand
// palm and back have changed places.
func (h Hands) itsRound(s *stitch.Section) string {
	r, first, then := s.Rounds[0], "palm", "back"
	palm, bridge := s.About.Digit.Palm, count(r, stitch.CastOn)
	if h.Left != h.FromLeft {
		first, then = then, first
	}
	shares := map[string]int{"palm": palm, "back": r.Out() - bridge - palm}
	if !goesOn(s) { // it begins with what is picked up, and goes round from there
		first, then = then, first
		shares["back"] -= r.Lead
	}
	own, other := fmt.Sprintf("%d of the %s", shares[first], first), fmt.Sprintf("%d of the %s", shares[then], then)
	cast := fmt.Sprintf("%d of the bridge", bridge)
	switch {
	case goesOn(s):
		return fmt.Sprintf("Its round: %s, %s, %s.", own, other, cast)
	case bridge == 0:
		return fmt.Sprintf("Its round: %d picked up, %s, %s.", r.Lead, own, other)
	}
	return fmt.Sprintf("Its round: %d picked up, %s, %s, %s.", r.Lead, own, cast, other)
}

// alongFinger returns where the stitches beside a finished finger are picked up, as it is
// held for that. The edge of its bridge is the lower end of the finger: with the finger
// folded down, its outside and that of the next one face the knitter together, and the
// round of the next runs as all rounds do.
func (h Hands) alongFinger(finger string, picked int) []string {
	from, _ := h.sides()
	return []string{
		fmt.Sprintf("Fold %s down, outside towards you. ", finger) + h.joinAt("its bridge’s "+from+" end"),
		fmt.Sprintf("Pick up along the bridge, %s. ", places(picked, picked)) + markFirst,
		strands,
	}
}

// tookUp returns how the stitches of a section are put back on the needles. Those that
// wait for a later finger lie between the others, and stay where they are.
func tookUp(s *stitch.Section) string {
	r := s.Rounds[0]
	stay := slices.Index(r.Ops, stitch.Hold)
	if stay < 0 {
		return fmt.Sprintf("Put the %s back on the needles.", taken(s))
	}
	before, n := stitch.Round{Ops: r.Ops[:stay]}.In(), r.Held()
	return fmt.Sprintf("Of the %d held%s take up the first%s and the last%s. The %d between them stay where they are.", r.In(), whose(s), several(before), several(r.In()-before-n), n)
}

// several follows "the first" and "the last" of those that were named.
func several(n int) string {
	if n == 1 {
		return ""
	}
	return fmt.Sprintf(" %d", n)
}

// finished returns what is done with a finger that is finished, and with its ends of yarn.
// The first of them tells whether all will fit.
func finished(s *stitch.Section, ends int) []Step {
	steps := []Step{{Text: wovenIn(s, ends)}}
	if goesOn(s) {
		steps = append(steps, Step{Text: "Try it on. Tingling, cold or pale means that it is too tight: take it off."})
	}
	return steps
}

func wovenIn(s *stitch.Section, ends int) string {
	its := "its end"
	if ends > 1 {
		its = fmt.Sprintf("its %d ends", ends)
	}
	if s.Closed() {
		return fmt.Sprintf("Turn it inside out and weave in %s: no loose thread may stay in the tip.", its)
	}
	return fmt.Sprintf("Weave in %s, inside, before you go on.", its)
}

// tied returns how many ends of yarn a section leaves: where it is joined, and where it is cut.
func tied(s *stitch.Section) (ends int) {
	if len(s.From) > 0 && len(s.Rounds) > 0 {
		ends++
	}
	if len(s.Finish.Ops) > 0 {
		ends++
	}
	return ends
}
