package mitt

import (
	"slices"

	"thenar/internal/stitch"
)

// topAtBridge builds the top of a mitten with a thumb. The beginning of the
// round moves to the middle of the bridge, where one side line runs. A side
// line is one stitch wide if the bridge is odd, two if it is even. Above a thumb in the
// palm it moves back to the side line, which is one stitch of the back and one of the
// palm.
func (p *Plan) topAtBridge() stitch.Section {
	width := p.bridgeWidth()
	if p.Make.Place == InPalm {
		return p.topAtSide()
	}
	if width%2 == 1 {
		return p.topOf(width, 1, (width-1)/2)
	}
	return p.topOf(width, 2, width/2-1)
}

// topAtSide builds the top above a thumb in the palm: its round begins at the side line,
// as many stitches before the thumb as lie between the two.
func (p *Plan) topAtSide() stitch.Section { return p.topOf(p.bridgeWidth(), 2, -p.Gusset.Inset-1) }

// topAlone builds the top of a mitten without a thumb, whose round already
// begins at a side line.
func (p *Plan) topAlone() stitch.Section { return p.topOf(2, 2, 0) }

// topOf builds the kind of top that is wanted, above a round that begins with a block of
// stitches, the bridge, and where a side line of side stitches begins shift stitches later
// than the round. A band takes the side line's place, its middle on the line's.
func (p *Plan) topOf(block, side, shift int) stitch.Section {
	switch p.Make.Top {
	case WedgesTop, GatheredTop:
		return p.topAround()
	case BandedTop:
		band := p.Make.BandStitches()
		return p.topFrom(block, band, shift+(side-band)/2)
	}
	return p.topFrom(block, side, shift)
}

// topAround builds a top that is worked alike all round, on both hands: in wedges, with
// a k2tog at the end of each, or halved.
func (p *Plan) topAround() stitch.Section {
	t, n := p.Top, p.Top.Stitches
	s := stitch.Section{Part: stitch.Top, Rounds: make([]stitch.Round, 0, t.Rounds), About: p.topAbout()}
	for r := 1; r <= t.Rounds; r++ {
		round := stitch.Round{Ops: times(nil, stitch.Knit, n), Even: true}
		switch decreases := slices.Contains(t.DecreaseRounds, r); {
		case decreases && t.Step == 0:
			round = halved(n)
		case decreases:
			round.Ops = nil
			for range t.Step {
				round.Ops = append(times(round.Ops, stitch.Knit, n/t.Step-2), stitch.K2tog)
			}
		}
		s.Rounds = append(s.Rounds, round)
		n = round.Out()
	}
	s.Finish = drawnUp(n)
	return s
}

// topAbout says what a top reaches, and its decreases if each takes off as many.
func (p *Plan) topAbout() stitch.About {
	t, about := p.Top, stitch.About{Until: "the tip of the longest finger"}
	if len(t.DecreaseRounds) > 0 && t.Step > 0 {
		about.Shaping = &stitch.Shaping{Rounds: t.DecreaseRounds, From: t.Stitches, To: t.End, Step: -t.Step}
	}
	return about
}

// drawnUp closes n stitches: they are drawn up, or grafted if they are many.
func drawnUp(n int) stitch.Round {
	how := stitch.DrawUp
	if n > maxDrawnUp {
		how = stitch.Graft
	}
	return stitch.Round{Ops: times(nil, how, n)}
}

// topFrom builds a top whose round begins shift stitches later than the hand's; on the
// other hand, which works the block and the rest in the opposite order, it begins with
// the same stitches, of which the last comes first.
// Each side line is side stitches wide, with an ssk after it and a k2tog
// before the next.
func (p *Plan) topFrom(block, side, shift int) stitch.Section {
	t := p.Top
	s := stitch.Section{
		Part: stitch.Top, Shift: shift, Across: block - shift - side,
		Rounds: make([]stitch.Round, 0, t.Rounds), About: p.topAbout(),
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
	s.Finish = drawnUp(n)
	return s
}

// maxDrawnUp is the greatest number of stitches that are drawn up; more are
// grafted (common practice, no source).
const maxDrawnUp = 12
