package mitt

import "thenar/internal/stitch"

// topAtBridge closes a mitten with a thumb. The beginning of the round moves to
// the side line in the middle of the bridge; each side line has one stitch where
// the bridge is odd and two where it is even.
func (p *Plan) topAtBridge() stitch.Section {
	width := p.bridgeWidth()
	if width%2 == 1 {
		return p.topFrom(1, (width-1)/2)
	}
	return p.topFrom(2, width/2-1)
}

// topAlone closes a mitten without a thumb, whose round begins at the side line
// already.
func (p *Plan) topAlone() stitch.Section { return p.topFrom(2, 0) }

// topFrom is a top with side stitches on each side line, ssk after them and
// k2tog before the next, and the beginning of its round moved on by shift.
func (p *Plan) topFrom(side, shift int) stitch.Section {
	t := p.Top
	s := stitch.Section{
		Part: stitch.Top, Shift: shift, Rounds: make([]stitch.Round, 0, t.Rounds),
		About: stitch.About{Until: "the tip of the longest finger"},
	}
	if len(t.DecreaseRounds) > 0 {
		s.About.Shaping = &stitch.Shaping{Rounds: t.DecreaseRounds, From: t.Stitches, To: t.End, Step: -4}
	}
	n, done := t.Stitches, 0
	for r := 1; r <= t.Rounds; r++ {
		if done == len(t.DecreaseRounds) || t.DecreaseRounds[done] != r {
			s.Rounds = append(s.Rounds, stitch.Round{Ops: times(nil, stitch.Knit, n), Lead: side})
			continue
		}
		var ops []stitch.Op
		for range 2 {
			ops = times(ops, stitch.Knit, side)
			ops = append(ops, stitch.SSK)
			ops = times(ops, stitch.Knit, n/2-side-4)
			ops = append(ops, stitch.K2tog)
		}
		s.Rounds = append(s.Rounds, stitch.Round{Ops: ops, Lead: side})
		n -= 4
		done++
	}
	closing := stitch.DrawUp
	if n > maxDrawnUp {
		closing = stitch.Graft
	}
	s.Finish = stitch.Round{Ops: times(nil, closing, n)}
	return s
}

// maxDrawnUp is the most stitches that are drawn up; more are grafted
// (common practice, no source).
const maxDrawnUp = 12
