package view

import (
	"fmt"

	"thenar/internal/mitt"
	"thenar/internal/stitch"
	"thenar/internal/words"
)

// wayName says what a way follows.
func wayName(w mitt.Way) string {
	switch {
	case w.Fixed:
		return "what is fixed"
	case w.Follows == mitt.FollowProfile:
		return "the hand’s own shape"
	}
	return "a plain rhythm"
}

// wayName heads the schedule of the increases.
func (a Answer) wayName() string {
	g := &a.Out.Plan.Gusset
	switch {
	case g.Way.Fixed:
		return "The " + a.changes() + "s, as fixed"
	case g.Way.Follows == mitt.FollowProfile:
		return "The " + a.changes() + "s, by the hand’s own shape"
	}
	return "The " + a.changes() + "s, evenly spaced"
}

// changes is what the changes of a gusset's count are called, as it is worked.
func (a Answer) changes() string {
	if a.Out.Plan.Down() {
		return "decrease"
	}
	return "increase"
}

// increaseWords says in which rounds the increases are, as they are worked: "Increase every
// 3rd round, six times."
func (a Answer) increaseWords() string {
	p := a.Out.Plan
	rounds, change, noun := p.FromBase(p.Gusset.Rounds.N, p.Gusset.IncreaseRounds), capital(a.changes()), a.Names.NounOf(stitch.Gusset)
	n := len(rounds)
	if n == 1 {
		return fmt.Sprintf("%s once, in %s %d.", change, noun, rounds[0])
	}
	for _, r := range a.Out.Reasons {
		if r.Of == mitt.Rhythm && r.Number != "" && a.Out.Plan.Gusset.Way.Changes == 0 {
			return fmt.Sprintf("%s %s, %s times.", change, r.Value, inLetters(n))
		}
	}
	return fmt.Sprintf("%s %s times, in %s %s.", change, inLetters(n), plural(noun), words.List(rounds))
}

// onlyWay says why there is no other schedule to choose, and what to measure for one.
func (a Answer) onlyWay() (why, measure string) {
	if a.Out.Plan.Gusset.Way.Follows == mitt.FollowProfile {
		return "They go by your hand as far as it is measured.", "Measure more of its own shape"
	}
	return "They can go by the hand’s own shape instead, once that is measured.", "Measure it"
}
