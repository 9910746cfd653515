package view

import (
	"fmt"

	"thenar/internal/mitt"
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
		return "The increases, as fixed"
	case g.Way.Follows == mitt.FollowProfile:
		return "The increases, by the hand’s own shape"
	}
	return "The increases, evenly spaced"
}

// increaseWords says in which rounds the increases are: "Increase every 3rd
// round, six times."
func (a Answer) increaseWords() string {
	rounds := a.Out.Plan.Gusset.IncreaseRounds
	n := len(rounds)
	if n == 1 {
		return fmt.Sprintf("Increase once, in round %d.", rounds[0])
	}
	for _, r := range a.Out.Reasons {
		if r.Of == mitt.Rhythm && r.Number != "" && a.Out.Plan.Gusset.Way.Changes == 0 {
			return fmt.Sprintf("Increase %s, %s times.", r.Value, inLetters(n))
		}
	}
	return fmt.Sprintf("Increase %s times, in rounds %s.", inLetters(n), words.List(rounds))
}

// onlyWay says why there is no other schedule to choose, and what to measure for one.
func (a Answer) onlyWay() (why, measure string) {
	if a.Out.Plan.Gusset.Way.Follows == mitt.FollowProfile {
		return "They go by your hand as far as it is measured.", "Measure more of its own shape"
	}
	return "They can go by the hand’s own shape instead, once that is measured.", "Measure it"
}
