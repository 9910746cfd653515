package mitt

import "thenar/internal/stitch"

// plainCuffToOpening builds the plain rounds below an opening for the thumb.
func (p *Plan) plainCuffToOpening() stitch.Section {
	return p.plainCuffUntil("a little above the bone at the wrist")
}

// openingSection builds the rows of an opening for the thumb. They begin and end at the
// thumb's side. On the wrong side the edges are knitted, too: there they look purled.
func (p *Plan) openingSection() stitch.Section {
	n, edge, rows := p.Body.Stitches.N, p.OpeningEdge(), p.Gusset.Rounds.N
	s := stitch.Section{Part: stitch.Opening, Rounds: make([]stitch.Round, 0, rows), About: stitch.About{
		Ends: edge, Above: p.Hand.GussetLength.MM() - float64(rows)/p.Gauge.Rounds,
		Until: "where the thumb parts from the hand",
	}}
	for r := 1; r <= rows; r++ {
		row := stitch.Round{Ops: times(nil, stitch.Knit, n), Even: true, Side: stitch.Facing(r)}
		if row.Side == stitch.WrongSide {
			for i := range edge {
				row.Ops[i], row.Ops[n-1-i] = stitch.Purl, stitch.Purl
			}
		}
		s.Rounds = append(s.Rounds, row)
	}
	return s
}

// openHandJoined builds an open hand from where the opening is joined again.
func (p *Plan) openHandJoined() stitch.Section {
	return p.openHandFrom(stitch.Round{Ops: times(nil, stitch.Knit, p.Body.Stitches.N), Even: true})
}
