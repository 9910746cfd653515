package mitt

import "thenar/internal/stitch"

// plainCuffToOpening builds the plain rounds below an opening for the thumb.
func (p *Plan) plainCuffToOpening() stitch.Section {
	return p.plainCuffUntil("a little above the bone at the wrist")
}

// openingSection builds the rows of an opening for the thumb. They begin and end at the
// thumb's side, in the round between the same two stitches.
func (p *Plan) openingSection() stitch.Section {
	n, edge, rows := p.Body.Stitches.N, p.OpeningEdge(), p.Gusset.Rounds.N
	s := stitch.Section{Part: stitch.Opening, Rounds: make([]stitch.Round, 0, rows), About: stitch.About{
		Ends: edge, Above: p.Hand.GussetLength.MM() - float64(rows)/p.Gauge.Rounds,
		Until: "where the thumb parts from the hand",
	}}
	for r := 1; r <= rows; r++ {
		s.Rounds = append(s.Rounds, stitch.Round{Ops: times(nil, stitch.Knit, n), Even: true, Side: stitch.Facing(r)})
	}
	if !p.Make.Flat { // whose rows have an edge more
		p.knitEnds(s.Rounds)
	}
	return s
}

// knitEnds knits the edges of an opening on the wrong side, too: there they look purled.
func (p *Plan) knitEnds(rows []stitch.Round) {
	for _, row := range rows {
		if row.Side != stitch.WrongSide {
			continue
		}
		for i := range p.OpeningEdge() {
			row.Ops[i], row.Ops[len(row.Ops)-1-i] = stitch.Purl, stitch.Purl
		}
	}
}

// openHandJoined builds an open hand from where the opening is joined again.
func (p *Plan) openHandJoined() stitch.Section {
	return p.openHandFrom(stitch.Round{Ops: times(nil, stitch.Knit, p.Body.Stitches.N), Even: true})
}
