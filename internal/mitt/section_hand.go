package mitt

import "thenar/internal/stitch"

// handSection goes from the division to the last round, or to the top. Without
// a thumb it may follow the ribbing, and round 1 brings the cuff to the hand's
// count. Else round 1 puts the thumb's stitches aside and casts on the bridge; the made
// stitches that stay on the hand stand on both sides of it. The last round
// before an edging brings the hand to the edging's count; the last round
// before a top takes off an odd stitch, at the end of the round (the back).
func (p *Plan) handSection() stitch.Section {
	s := stitch.Section{Part: stitch.Hand}
	plain := p.Body.RoundsAbove - p.Body.EdgingRounds
	for r := 1; r <= p.Body.RoundsAbove; r++ {
		var round stitch.Round
		switch {
		case r == 1 && p.Cuff.JoinsAbove && p.Cuff.Change != 0:
			round = p.joiningRound()
		case !p.Thumbed():
			round = stitch.Round{Ops: times(nil, stitch.Knit, p.Bridge.HandAfter), Even: true}
		case r == 1:
			round = p.divisionRound()
		case r <= plain:
			round = stitch.Round{Ops: times(nil, stitch.Knit, p.Bridge.HandAfter), Lead: p.bridgeWidth()}
		default:
			round = stitch.Round{Ops: ribbing(p.Body.EdgingStitches, p.Body.EdgingRib), Even: true}
		}
		if r == plain && p.Body.EdgingStitches != p.Bridge.HandAfter {
			round = stitch.Round{Ops: p.spread(stitch.Hand, round.Ops, p.Body.EdgingStitches-p.Bridge.HandAfter), Even: true}
		}
		s.Rounds = append(s.Rounds, round)
	}
	if p.Top == nil {
		s.Finish = stitch.Round{Ops: times(nil, stitch.BindOff, p.Body.EdgingStitches)}
		return s
	}
	if n := len(s.Rounds); p.Top.Odd == 1 && s.Rounds[n-1].Out() > p.Top.Stitches {
		last := &s.Rounds[len(s.Rounds)-1]
		last.Ops = append(last.Ops[:len(last.Ops)-2], stitch.K2tog)
		last.Lead = min(last.Lead, len(last.Ops)-1)
	}
	return s
}

// joiningRound is the hand's first round over the cuff's stitches. If it is the
// last one, too, an odd stitch is not made at all.
func (p *Plan) joiningRound() stitch.Round {
	change := p.Cuff.Change
	if p.Body.RoundsAbove == 1 {
		change -= p.Top.Odd
	}
	return stitch.Round{Ops: p.spread(stitch.Cuff, times(nil, stitch.Knit, p.Cuff.CastOn.N), change), Even: true}
}

// bridgeWidth is the number of stitches between palm and back once the
// thumb's are aside.
func (p *Plan) bridgeWidth() int { return p.Gusset.Kept + p.Bridge.CastOn }

func (p *Plan) divisionRound() stitch.Round {
	first := (p.Gusset.Kept + 1) / 2
	ops := times(nil, stitch.Knit, first)
	ops = times(ops, stitch.Hold, p.Thumb.Held)
	ops = times(ops, stitch.CastOn, p.Bridge.CastOn)
	ops = times(ops, stitch.Knit, p.Gusset.Kept-first)
	lead := len(ops)
	return stitch.Round{Ops: times(ops, stitch.Knit, p.Body.Stitches.N-p.Gusset.Base), Lead: lead}
}

// topSection closes a mitten. The beginning of the round moves to the side
// line in the middle of the bridge; each side line has one stitch where the
// bridge is odd and two where it is even, with ssk after it and k2tog before
// the next.
func (p *Plan) topSection() stitch.Section {
	t := p.Top
	width := p.bridgeWidth()
	side, shift := 1, (width-1)/2
	if width%2 == 0 {
		side, shift = 2, width/2-1
	}
	if !p.Thumbed() {
		shift = 0 // the round begins at the side line already
	}
	s := stitch.Section{Part: stitch.Top, Shift: shift}
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
