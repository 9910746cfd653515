package mitt

import (
	"slices"

	"thenar/internal/stitch"
)

// gussetSection builds the gusset's rounds.
func (p *Plan) gussetSection() stitch.Section {
	g := &p.Gusset
	return stitch.Section{Part: stitch.Gusset, Rounds: p.gussetRounds(g.Rounds.N, g.IncreaseRounds), About: stitch.About{
		Shaping: &stitch.Shaping{
			Rounds: g.IncreaseRounds, From: g.Base, To: g.Stitches, Step: g.Step, Closed: p.Make.Increase.growth().closed,
		},
		Until: "where the thumb parts from the hand",
		Palm:  p.Make.Place == InPalm, Inset: g.Inset,
	}}
}

// GussetRounds returns n rounds of the plan's gusset as they would be with other
// increase rounds, each with the hand's stitches beside it.
func (p *Plan) GussetRounds(n int, increases []int) []stitch.Round {
	rounds := p.gussetRounds(n, increases)
	if p.Make.Flat {
		p.openRounds(rounds, p.palmEnd())
	}
	return rounds
}

// gussetRounds is that in the round.
func (p *Plan) gussetRounds(n int, increases []int) []stitch.Round {
	grow, rounds := p.Make.Increase.growth(), make([]stitch.Round, 0, n)
	rest := p.Body.Stitches.N - p.Gusset.Base
	var before []stitch.Op // the gusset's part of the round before
	for r, count := 1, p.Gusset.Base; r <= n; r++ {
		var ops []stitch.Op
		switch {
		case slices.Contains(increases, r):
			ops = grow.round(count, p.Gusset.Step == 1, count == p.Gusset.Base)
			count += p.Gusset.Step
		case grow.closed:
			ops = closing(before)
			ops = times(ops, stitch.Knit, count-len(ops))
		default:
			rounds = append(rounds, stitch.Round{Ops: allKnit(count + rest), Lead: count})
			continue
		}
		before = ops
		lead := len(ops)
		rounds = append(rounds, stitch.Round{Ops: times(slices.Clip(ops), stitch.Knit, rest), Lead: lead})
	}
	return rounds
}
