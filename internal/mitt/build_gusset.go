package mitt

import "thenar/internal/stitch"

// gussetSection builds the gusset's rounds, each with the hand's stitches beside
// it.
func (p *Plan) gussetSection() stitch.Section {
	g := &p.Gusset
	s := stitch.Section{Part: stitch.Gusset, Rounds: make([]stitch.Round, 0, g.Rounds.N), About: stitch.About{
		Shaping: &stitch.Shaping{Rounds: g.IncreaseRounds, From: g.Base, To: g.Stitches, Step: g.Step},
		Until:   "where the thumb parts from the hand",
	}}
	rest := p.Body.Stitches.N - g.Base
	count, done := g.Base, 0
	for r := 1; r <= g.Rounds.N; r++ {
		var ops []stitch.Op
		if done < g.Increases && g.IncreaseRounds[done] == r {
			ops = increaseRound(count, g.Base, g.Step, done == 0)
			count += g.Step
			done++
		} else {
			ops = times(ops, stitch.Knit, count)
		}
		lead := len(ops)
		s.Rounds = append(s.Rounds, stitch.Round{Ops: times(ops, stitch.Knit, rest), Lead: lead})
	}
	return s
}

// increaseRound returns the gusset's part of an increase round over count
// stitches: knit 1, M1L, knit to the last stitch, M1R, knit 1. On a base of 1
// or 2 stitches the first increase round puts M1L before and M1R after the
// base, and the made stitches are the gusset's edges from then on. A one-sided
// gusset has only the M1L after the first stitch.
func increaseRound(count, base, step int, first bool) []stitch.Op {
	if step == 1 {
		ops := []stitch.Op{stitch.Knit, stitch.M1L}
		return times(ops, stitch.Knit, count-1)
	}
	if first && base <= 2 {
		ops := times([]stitch.Op{stitch.M1L}, stitch.Knit, count)
		return append(ops, stitch.M1R)
	}
	ops := times([]stitch.Op{stitch.Knit, stitch.M1L}, stitch.Knit, count-2)
	return append(ops, stitch.M1R, stitch.Knit)
}
