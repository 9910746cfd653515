package mitt

import (
	"slices"

	"thenar/internal/stitch"
)

// openHand builds an open hand from the division to its bind-off. The last round
// before an edging brings the hand to the edging's count.
func (p *Plan) openHand() stitch.Section { return p.openHandFrom(p.divisionRound()) }

func (p *Plan) openHandFrom(first stitch.Round) stitch.Section {
	s := p.handFrom(first)
	p.openEdge(&s)
	s.About.Until = "where the fingers are to be free"
	return s
}

// openEdge ends an open hand with its ribbing.
func (p *Plan) openEdge(s *stitch.Section) {
	s.About.Ribbed, s.About.Rib, s.About.Knits = p.Body.EdgingRounds, p.Body.EdgingRib, p.Stitch.knits(p.Body.EdgingRib)
	s.Finish = stitch.Round{Ops: times(nil, stitch.BindOff, p.Body.EdgingStitches)}
}

// openAlone builds a wristlet above its cuff: over the heel of the hand, to end below
// the base of the thumb, which stays outside (common practice, no source). The last
// round before its edging brings it to the edging's count.
func (p *Plan) openAlone() stitch.Section {
	s := stitch.Section{Part: stitch.Hand, Rounds: make([]stitch.Round, 0, p.Body.RoundsAbove), About: p.handFit()}
	plain, changed := p.belowEdging()
	for r := 1; r <= p.Body.RoundsAbove; r++ {
		ops := allKnit(p.Bridge.HandAfter)
		switch {
		case r > plain:
			ops = p.Stitch.ribbing(p.Body.EdgingStitches, p.Body.EdgingRib)
		case r > changed:
			ops = allKnit(p.Body.EdgingStitches)
		case r == changed:
			ops = p.spread(stitch.Hand, ops, p.Body.EdgingStitches-p.Bridge.HandAfter)
		}
		s.Rounds = append(s.Rounds, stitch.Round{Ops: ops, Even: true})
	}
	p.openEdge(&s)
	s.About.Until, s.About.Below = "the base of the thumb", true
	return s
}

// handToTop builds the hand from the division to the top.
func (p *Plan) handToTop() stitch.Section { return p.handFromToTop(p.divisionRound()) }

func (p *Plan) handFromToTop(first stitch.Round) stitch.Section {
	s := p.handFrom(first)
	p.belowTop(&s)
	return s
}

// handAlone builds a hand without a thumb, from the cuff to the top. If it
// follows the ribbing directly, its round 1 brings the cuff to the hand's count.
func (p *Plan) handAlone() stitch.Section {
	s := stitch.Section{Part: stitch.Hand, Rounds: make([]stitch.Round, 0, p.Body.RoundsAbove), About: p.handFit()}
	for r := 1; r <= p.Body.RoundsAbove; r++ {
		round := stitch.Round{Ops: allKnit(p.Bridge.HandAfter), Even: true}
		if r == 1 && p.Cuff.JoinsAbove && p.Cuff.Change != 0 {
			round = p.joiningRound()
		}
		s.Rounds = append(s.Rounds, round)
	}
	p.belowTop(&s)
	s.About.Inside = true
	return s
}

// handFrom builds the rounds above the gusset, or above where the thumb parts, from a
// first round that puts the thumb's stitches aside.
func (p *Plan) handFrom(first stitch.Round) stitch.Section {
	s := stitch.Section{Part: stitch.Hand, Rounds: make([]stitch.Round, 0, p.Body.RoundsAbove), About: p.handFit()}
	plain, changed := p.belowEdging()
	for r := 1; r <= p.Body.RoundsAbove; r++ {
		var round stitch.Round
		switch {
		case r == 1:
			round = first
		case r > changed && r <= plain && p.Body.EdgingStitches != p.Bridge.HandAfter:
			round = stitch.Round{Ops: allKnit(p.Body.EdgingStitches), Even: true}
		case r <= plain:
			round = stitch.Round{Ops: allKnit(p.Bridge.HandAfter), Lead: p.bridgeWidth()}
		default:
			round = stitch.Round{Ops: p.Stitch.ribbing(p.Body.EdgingStitches, p.Body.EdgingRib), Even: true}
		}
		if r == changed && p.Body.EdgingStitches != p.Bridge.HandAfter {
			round = stitch.Round{Ops: p.spread(stitch.Hand, round.Ops, p.Body.EdgingStitches-p.Bridge.HandAfter), Even: true}
		}
		if r == 1 {
			round.Keep(stitch.ThumbSet)
		}
		s.Rounds = append(s.Rounds, round)
	}
	return s
}

// handFit says that the hand's fit is judged at the last round that is sure to
// have the hand's count.
func (p *Plan) handFit() stitch.About {
	_, changed := p.belowEdging()
	return stitch.About{Site: max(changed-1, 1)}
}

// belowEdging returns the last round of an open hand below its edging, and that which
// changes to the edging's count: the same, but of rows that are worked from the edging,
// where that is the first of a pair.
func (p *Plan) belowEdging() (plain, changed int) {
	plain = p.Body.RoundsAbove - p.Body.EdgingRounds
	if p.Down() {
		return plain, plain - p.Make.pace().rest()
	}
	return plain, plain
}

// belowTop ends the hand below a top. The last round takes off what the top can't use:
// a single stitch at its end, on the back of the hand, several spread over palm and
// back.
func (p *Plan) belowTop(s *stitch.Section) {
	s.About.Until = "the tip of the longest finger"
	s.About.Short = max(float64(p.Top.Rounds)/p.Gauge.Rounds-TipRoom, 0)
	n := len(s.Rounds) - p.Make.pace().rest()
	last := &s.Rounds[n-1]
	switch off := last.Out() - p.Top.Stitches; {
	case off > 1 && last.Held() == 0 && len(last.Ops)-last.Lead < 2*off:
		last.Ops, last.Lead = spread(last.Ops, -off), 0
	case off > 1:
		last.Ops = append(slices.Clone(last.Ops[:last.Lead]), spread(last.Ops[last.Lead:], -off)...)
		last.Aside = last.Aside[:min(len(last.Aside), len(last.Ops))]
	case off == 1:
		last.Ops = append(slices.Clip(last.Ops[:len(last.Ops)-2]), stitch.K2tog)
		last.Lead = min(last.Lead, len(last.Ops)-1)
		last.Aside = last.Aside[:min(len(last.Aside), len(last.Ops))]
	}
	for i := n; i < len(s.Rounds); i++ {
		s.Rounds[i] = stitch.Round{Ops: allKnit(last.Out()), Lead: last.LeadOut(), Even: last.Even}
	}
}

// joiningRound returns the hand's first round, worked over the cuff's stitches.
// If it is also the last round below the top, an odd stitch is not made at all.
func (p *Plan) joiningRound() stitch.Round {
	change := p.Cuff.Change
	if p.Body.RoundsAbove == int(p.Make.pace()) {
		change -= p.Top.Odd
	}
	return stitch.Round{Ops: p.spread(stitch.Cuff, times(nil, stitch.Knit, p.Cuff.Wrist.N), change), Even: true}
}

// bridgeWidth is the number of stitches between palm and back once the
// thumb's stitches are set aside.
func (p *Plan) bridgeWidth() int { return p.Gusset.Kept + p.Bridge.CastOn + p.Thumb.OnWaste }

// divisionRound puts the thumb's stitches aside and casts on the bridge; the gusset
// stitches that stay on the hand stand on both sides of it.
func (p *Plan) divisionRound() stitch.Round {
	first := (p.Gusset.Kept + 1) / 2
	ops := times(nil, stitch.Knit, first)
	ops = times(ops, stitch.Hold, p.Thumb.Held)
	ops = times(ops, stitch.CastOn, p.Bridge.CastOn)
	ops = times(ops, stitch.Knit, p.Gusset.Kept-first)
	lead := len(ops)
	return stitch.Round{Ops: times(ops, stitch.Knit, p.Body.Stitches.N-p.Gusset.Base), Lead: lead}
}
