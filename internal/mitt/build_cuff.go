package mitt

import "thenar/internal/stitch"

// cuffSection builds the cuff. If no plain round follows, not even one of the hand, its
// last round brings it to the hand's count.
func (p *Plan) cuffSection() stitch.Section {
	s := stitch.Section{Part: stitch.Cuff, Rounds: make([]stitch.Round, 0, p.Cuff.Rounds), About: p.cuffAbout()}
	n, changed := p.Cuff.CastOn.N, p.Cuff.Rounds-p.Make.pace().rest()
	if p.Cuff.PlainRounds > 0 || p.Cuff.JoinsAbove || p.Cuff.Change == 0 {
		changed = maxRounds + 1
	}
	for r := 1; r <= p.Cuff.Rounds; r++ {
		ops := p.cuffFabric(r, n)
		switch {
		case r == changed:
			ops = p.spread(stitch.Cuff, ops, p.Cuff.Change)
		case r > changed && p.Ribbed():
			ops = asTheyLook(s.Rounds[r-2].Ops)
		}
		s.Rounds = append(s.Rounds, stitch.Round{Ops: ops, Even: true})
		n = s.Rounds[r-1].Out()
	}
	return s
}

// plainCuff builds the plain rounds below the gusset; the first of them brings
// the cuff to the hand's count.
func (p *Plan) plainCuff() stitch.Section { return p.plainCuffUntil("the bone at the wrist") }

// plainCuffAlone builds the plain rounds below a hand without a gusset.
func (p *Plan) plainCuffAlone() stitch.Section { return p.plainCuffUntil("the wrist") }

func (p *Plan) plainCuffUntil(place string) stitch.Section {
	s := stitch.Section{Part: stitch.CuffPlain, Rounds: make([]stitch.Round, 0, p.Cuff.PlainRounds), About: stitch.About{Until: place}}
	for r := 1; r <= p.Cuff.PlainRounds; r++ {
		ops := allKnit(p.Body.Stitches.N)
		if r == 1 {
			ops = p.spread(stitch.Cuff, times(nil, stitch.Knit, p.Cuff.Wrist.N), p.Cuff.Change)
		}
		s.Rounds = append(s.Rounds, stitch.Round{Ops: ops, Even: true})
	}
	return s
}
