package mitt

import "thenar/internal/stitch"

// topAtBridge builds the top of a mitten with a thumb. The beginning of the
// round moves to the middle of the bridge, where one side line runs. A side
// line is one stitch wide if the bridge is odd, two if it is even.
func (p *Plan) topAtBridge() stitch.Section {
	width := p.bridgeWidth()
	if width%2 == 1 {
		return p.topFrom(1, (width-1)/2)
	}
	return p.topFrom(2, width/2-1)
}

// topAlone builds the top of a mitten without a thumb, whose round already
// begins at a side line.
func (p *Plan) topAlone() stitch.Section { return p.topFrom(2, 0) }

// topFrom builds a top whose round begins shift stitches later than the hand's.
// Each side line is side stitches wide, with an ssk after it and a k2tog
// before the next.
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

// maxDrawnUp is the greatest number of stitches that are drawn up; more are
// grafted (common practice, no source).
const maxDrawnUp = 12
