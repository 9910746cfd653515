package words

import (
	"fmt"

	"thenar/internal/mitt"
	"thenar/internal/units"
)

// rhythmValue returns the intervals of the increase rounds.
func rhythmValue(g *mitt.Gusset) string {
	if len(g.IncreaseRounds) < 2 {
		return "one increase round"
	}
	low, high := 0, 0
	for i := 1; i < len(g.IncreaseRounds); i++ {
		d := g.IncreaseRounds[i] - g.IncreaseRounds[i-1]
		if i == 1 || d < low {
			low = d
		}
		high = max(high, d)
	}
	if low == high {
		return everyWords(low)
	}
	return fmt.Sprintf("%d to %d rounds", low, high)
}

// listValue returns the rounds of the increases.
func listValue(rounds []int) string {
	if len(rounds) == 1 {
		return fmt.Sprintf("round %d", rounds[0])
	}
	return "rounds " + List(rounds)
}

// firstWhy returns why the increases begin in a round.
func firstWhy(p *mitt.Plan, first int) string {
	switch {
	case p.Pins.FirstIncrease.On || len(p.Pins.IncreaseRounds) > 0:
		return "a fixed number asks for it."
	case first == 1:
		return "the gusset begins with it."
	}
	return fmt.Sprintf("with %s below it the gusset lies nearer to the hand.", Plural(first-1, "plain round"))
}

// rhythmWhy returns how closely the chosen increases follow the hand.
func rhythmWhy(p *mitt.Plan, u units.Unit) string {
	way := &p.Gusset.Way
	changes := "the rhythm changes " + times(way.Changes)
	if len(p.Hand.Profile) == 0 {
		return changes + "; measure girths up the mound, and it can follow them."
	}
	return fmt.Sprintf("%s off the hand’s own shape on average, %s at worst; %s.",
		Size(way.Mean, u), Size(way.Worst, u), changes)
}

func times(n int) string {
	switch n {
	case 0:
		return "nowhere"
	case 1:
		return "once"
	}
	return fmt.Sprintf("%d times", n)
}

func kept(o int) string {
	if o == 0 {
		return ""
	}
	return fmt.Sprintf(" less the %d that stay on the hand", o)
}
