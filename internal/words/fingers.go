package words

import (
	"fmt"

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
		list = append(list, onToLittle(s.Shift))
	}
	list = append(list, h.itsRound(s))
	switch {
	case count(s.Rounds[0], stitch.CastOn) == 0:
	case goesOn(s):
		list = append(list, "The bridge between fingers closes its round: join in the round there.")
	default:
		list = append(list, "The bridge between fingers closes its round: pull the stitch after it snug.")
	}
	return list
}

// onToLittle returns how the hand goes on to the little finger, n stitches further on.
func onToLittle(n int) string {
	const move = " Move the marker there."
	switch {
	case n > 0:
		return fmt.Sprintf("Knit %d more, on to the little finger: the round now begins there.", n) + move
	case n < 0:
		return fmt.Sprintf("The round now begins %s earlier, at the little finger: slip back that far, the yarn loose inside.", Plural(-n, "stitch")) + move
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
func (h Hands) alongFinger(edge string, picked int) []string {
	from, to := "right", "left"
	if h.FromLeft {
		from, to = to, from
	}
	loops := fmt.Sprintf("each of the bridge’s %d loops", picked)
	if picked == 1 {
		loops = "the bridge’s 1 loop"
	}
	return []string{
		fmt.Sprintf("Pick up along %s, from %s to %s: fold that finger down, outside towards you.", edge, from, to),
		fmt.Sprintf("Pick up one in %s. The half stitch left at each end goes in with the corner’s strand.", loops),
	}
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
