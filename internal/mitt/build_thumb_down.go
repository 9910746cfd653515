package mitt

import (
	"slices"

	"thenar/internal/stitch"
)

// thumbFromTip sets what a thumb that is worked first has otherwise: it ends with its
// m + c stitches, of which m come into the hand's round and c wait for the end, so that
// from its own t stitches
//
//	e = m + c − t
//
// are made, or decreased if that is negative, at the corners in its last round but one.
func (d *draft) thumbFromTip() {
	p, k, pace := &d.plan, d.progress, d.req.Make.pace()
	t := &p.Thumb
	t.PickedUp, t.FirstRound = p.Bridge.CastOn, t.Held+p.Bridge.CastOn
	t.Decreased, t.DecreaseRounds = t.FirstRound-t.Stitches.N, nil
	ends := t.ends(pace)
	if t.Decreased != 0 {
		t.DecreaseRounds = []int{ends}
	}
	t.EdgingStitches, t.EdgingRib, t.EdgingRounds = t.Stitches.N, p.Stitch.Rib, 0
	begun := k.begun(stitch.Thumb)
	t.Rounds = max(d.pins.ThumbRounds.Or(d.thumbWish(d.pins).rounds), ends)
	switch {
	case begun && k.past(stitch.Thumb), begun && k.in(stitch.Thumb) > k.ThumbRounds-ends:
		t.Rounds = k.ThumbRounds
	case begun:
		t.Rounds = max(t.Rounds, pace.up(k.in(stitch.Thumb))+ends, pace.up(k.thumbTip())+ends)
	}
	switch {
	case t.Closed && begun:
		t.Closing = k.ThumbEdging // a closed thumb has no edging; it is recorded in its place
	case t.Closed:
		t.Closing = min(pace.closing(t.Stitches.N), t.Rounds-ends)
	case begun:
		t.EdgingStitches, t.EdgingRib, t.EdgingRounds = k.ThumbEdged, k.thumb().rib, k.ThumbEdging
	default:
		t.EdgingRounds, t.EdgingStitches, t.EdgingRib = pace.edging(t.Stitches.N, p.Stitch.Rib, nearest(d.q*d.len.thumbEdging), t.Rounds-ends, true)
	}
}

// ends returns the rounds with which a thumb that is worked first ends: a plain one, and
// before it that of the corners if its count changes there; of rows a pair.
func (t *Thumb) ends(o pace) int { return max(int(o), 1+boolInt(t.Decreased != 0)) }

// thumbTip returns the rounds with which a thumb that is worked first begins: those that
// open its tip, or its edging with the round that leaves it.
func (k *Progress) thumbTip() int {
	return k.ThumbEdging + k.pace().takes(boolInt(k.TopRounds == 0 && k.ThumbEdged != k.Thumb))
}

// thumbDown builds a thumb that is worked first, from its tip or its edging to the
// stitches that join the hand. Its round begins with those that wait for the gap.
func (p *Plan) thumbDown() stitch.Section {
	t, pace := &p.Thumb, p.Make.pace()
	n := t.Stitches.N
	s := stitch.Section{Part: stitch.Thumb, Down: true, About: stitch.About{
		Until: "where the thumb parts from the hand", Digit: p.thumbInside(), Tip: t.Closed,
		Ribbed: t.EdgingRounds, Rib: t.EdgingRib, Knits: p.Stitch.knits(t.EdgingRib),
	}}
	if t.Closed {
		var tip stitch.Section // as it closes, from its own count
		t.close(&tip, n, t.Rounds-t.Closing)
		s.CastOn = len(tip.Finish.Ops)
		s.Rounds = pace.turnedRounds(tip.Rounds)
	} else {
		s.CastOn = t.EdgingStitches
		for range t.EdgingRounds {
			s.Rounds = append(s.Rounds, stitch.Round{Ops: p.Stitch.ribbing(t.EdgingStitches, t.EdgingRib), Even: true})
		}
		if t.EdgingStitches != n {
			s.Rounds = append(s.Rounds, stitch.Round{Ops: spread(times(nil, stitch.Knit, t.EdgingStitches), n-t.EdgingStitches), Even: true})
		}
	}
	lead := min(p.Bridge.CastOn, n)
	for len(s.Rounds) < t.Rounds-t.ends(pace) {
		s.Rounds = append(s.Rounds, stitch.Round{Ops: times(nil, stitch.Knit, n), Lead: lead})
	}
	s.About.Site = max(1, len(s.Rounds))
	if t.Decreased != 0 {
		s.Rounds = append(s.Rounds, cornersDown(n, lead, t.Decreased))
	}
	for len(s.Rounds) < t.Rounds {
		s.Rounds = append(s.Rounds, stitch.Round{Ops: times(nil, stitch.Knit, t.FirstRound), Lead: p.Bridge.CastOn})
	}
	waits := stitch.Round{Ops: times(nil, stitch.Hold, t.FirstRound), Lead: p.Bridge.CastOn}
	waits.Aside = slices.Concat(slices.Repeat([]stitch.Set{stitch.GapOfThumb}, p.Bridge.CastOn), slices.Repeat([]stitch.Set{stitch.ThumbSet}, t.Held))
	s.Finish = waits
	if p.Make.Flat {
		p.thumbInRows(&s)
	}
	return s
}

// thumbInRows turns a thumb that is worked first into rows. Its seam lies in the middle of
// what waits for the gap, so that half of that stands at either edge, and takes the edge
// stitches to its end.
func (p *Plan) thumbInRows(s *stitch.Section) {
	half := p.Bridge.CastOn / 2
	s.CastOn, s.Seam = s.CastOn+2*seamEdge, seamEdge
	for i, r := range s.Rounds {
		s.Rounds[i], _ = inRow(r, min(half, r.In()), stitch.Facing(i+1))
	}
	s.Finish, _ = inRow(s.Finish, half, stitch.AllRound)
	for _, edge := range []int{0, len(s.Finish.Ops) - 1} {
		s.Finish.Ops[edge] = stitch.BindOff
	}
}

// cornersDown returns the round over n stitches that makes so many, or takes off if that
// is negative, beside the corners, which lie at the ends of the first lead stitches. A
// single one is at the second corner, the end of the round. Where there is no room
// beside the corners they are spread.
func cornersDown(n, lead, made int) stitch.Round {
	rest := n - lead
	ops := times(nil, stitch.Knit, lead)
	switch {
	case made == 1 && rest >= 1:
		ops = append(times(ops, stitch.Knit, rest), stitch.M1R)
	case made == 2 && rest >= 1:
		ops = append(times(append(ops, stitch.M1L), stitch.Knit, rest), stitch.M1R)
	case made == 3 && rest >= 2:
		ops = append(times(append(ops, stitch.M1L), stitch.Knit, rest-1), stitch.M1R, stitch.Knit, stitch.M1R)
	case made == 4 && rest >= 2:
		ops = append(times(append(ops, stitch.M1L, stitch.Knit, stitch.M1L), stitch.Knit, rest-2), stitch.M1R, stitch.Knit, stitch.M1R)
	case made == -1 && rest >= 2:
		ops = append(times(ops, stitch.Knit, rest-2), stitch.SSK)
	case made == -2 && rest >= 4:
		ops = append(times(append(ops, stitch.K2tog), stitch.Knit, rest-4), stitch.SSK)
	default:
		return stitch.Round{Ops: spread(times(nil, stitch.Knit, n), made), Even: true}
	}
	return stitch.Round{Ops: ops, Lead: lead}
}

// gapSection ends a mitt whose thumb was worked first: the stitches of thumb and hand that
// waited beside each other are grafted.
func (p *Plan) gapSection() stitch.Section {
	c := p.Bridge.CastOn
	return stitch.Section{
		Part: stitch.Gap, From: []stitch.Set{stitch.GapOfThumb, stitch.GapOfHand}, Rounds: []stitch.Round{},
		Finish: stitch.Round{Ops: times(nil, stitch.Graft, 2*c), Lead: c},
	}
}
