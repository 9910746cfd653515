package mitt

import (
	"slices"

	"thenar/internal/stitch"
)

// maxInOneRound is the number of corner decreases that fit into one round, one
// at each corner.
const maxInOneRound = 2

// fewestClosed is the count at or below which a closed thumb is drawn up; until
// then it is halved (common practice, no source).
const fewestClosed = 6

// decreaseRounds is the number of rounds over which d decreases are worked.
func decreaseRounds(d int) int { return (d + maxInOneRound - 1) / maxInOneRound }

// openThumb builds a thumb that ends in an edging and is bound off.
func (p *Plan) openThumb() stitch.Section { return p.openThumbOf(p.thumbOnHeld()) }

func (p *Plan) openThumbOf(s stitch.Section) stitch.Section {
	s.About.Until, s.About.Digit = "where the tip of the thumb is to be free", p.thumbInside()
	p.openTube(&s, &p.Thumb.Tube)
	return s
}

// openTube goes on with a tube from its round 1 to its edging, which is bound off.
func (p *Plan) openTube(s *stitch.Section, t *Tube) {
	p.tubeBelow(s, t, t.Rounds-t.EdgingRounds, t.EdgingStitches-t.Stitches.N)
	s.About.Ribbed, s.About.Rib, s.About.Knits = t.EdgingRounds, t.EdgingRib, p.Stitch.knits(t.EdgingRib)
	s.About.Site = max(t.Rounds-t.EdgingRounds-boolInt(t.EdgingStitches != t.Stitches.N), 1)
	n := s.Rounds[len(s.Rounds)-1].Out()
	for range t.EdgingRounds {
		s.Rounds = append(s.Rounds, stitch.Round{Ops: p.Stitch.ribbing(n, t.EdgingRib), Even: true})
	}
	s.Finish = stitch.Round{Ops: times(nil, stitch.BindOff, n)}
}

// closedThumb builds a thumb that is halved towards its tip and drawn up.
func (p *Plan) closedThumb() stitch.Section { return p.closedThumbOf(p.thumbOnHeld()) }

func (p *Plan) closedThumbOf(s stitch.Section) stitch.Section {
	s.About.Until, s.About.Digit = "the tip of the thumb", p.thumbInside()
	p.closedTube(&s, &p.Thumb.Tube)
	return s
}

// closedTube goes on with a tube from its round 1 to its tip.
func (p *Plan) closedTube(s *stitch.Section, t *Tube) {
	plain := t.lastCorner(p.Make.pace())
	p.tubeBelow(s, t, plain, 0)
	s.About.Site = max(last(t.DecreaseRounds), 1)
	t.close(s, s.Rounds[len(s.Rounds)-1].Out(), plain)
}

// thumbInside describes the thumb that fills the tube.
func (p *Plan) thumbInside() *stitch.Digit {
	return &stitch.Digit{Girth: p.Hand.Thumb.MM(), Added: p.Ease.ThumbAdded, Stitches: p.Thumb.Stitches.N, Closed: p.Thumb.Closed}
}

// thumbOnHeld begins the thumb on the held stitches. Round 1 picks up along the bridge
// and works the strand at each corner together with the held stitch beside it, to close
// the hole there.
func (p *Plan) thumbOnHeld() stitch.Section {
	return stitch.Section{Part: stitch.Thumb, From: []stitch.Set{stitch.ThumbSet}, Rounds: []stitch.Round{p.pickUpRound()}}
}

// tubeBelow goes on with a tube from its round 1 up to round plain, which
// changes the count by change. The corner decreases follow; after the last of them the
// tube has its final count.
func (p *Plan) tubeBelow(s *stitch.Section, t *Tube, plain, change int) {
	n, left, lead := t.FirstRound, t.Decreased, s.Rounds[0].LeadOut()
	first := lead
	s.Rounds = slices.Grow(s.Rounds, max(t.Rounds-1, 0))
	for r := 2; r <= min(plain, t.Rounds); r++ {
		round := stitch.Round{Ops: allKnit(n), Lead: min(lead, n)}
		if slices.Contains(t.DecreaseRounds, r) {
			round, left = cornerRound(n, first, lead, left)
			lead = round.Lead
		}
		if r == plain && change != 0 {
			round = stitch.Round{Ops: p.spread(s.Part, round.Ops, change), Even: true}
		}
		s.Rounds = append(s.Rounds, round)
		n = round.Out()
	}
}

// pickUpRound returns the thumb's first full round. If only one stitch was held,
// it is worked together with the strands of both corners.
func (p *Plan) pickUpRound() stitch.Round {
	ops := times(nil, stitch.PickUp, p.Thumb.PickedUp)
	ops = append(ops, stitch.GapK2tog)
	if p.Thumb.Held > 1 {
		ops = times(ops, stitch.Knit, p.Thumb.Held-2)
		ops = append(ops, stitch.GapSSK)
	}
	return stitch.Round{Ops: ops, Lead: p.Thumb.PickedUp}
}

// cornerRound returns a round over n stitches that decreases up to two of the
// left ones still to go, and how many are left after it. A single decrease is
// at the second corner (ssk at the end of the round); of two, the other is at
// the first corner (k2tog where the picked-up stitches end). In the round
// before it the first lead stitches are the picked-up ones.
func cornerRound(n, pickedUp, lead, left int) (stitch.Round, int) {
	if left == 1 || n < 4 {
		ops := times(nil, stitch.Knit, n-2)
		return stitch.Round{Ops: append(ops, stitch.SSK), Lead: min(lead, n-1)}, left - 1
	}
	first := max(min(pickedUp-1, n-4), 0)
	ops := times(nil, stitch.Knit, first)
	ops = append(ops, stitch.K2tog)
	ops = times(ops, stitch.Knit, n-first-4)
	return stitch.Round{Ops: append(ops, stitch.SSK), Lead: first}, left - 2
}

// close ends a closed tube of n stitches after its plain rounds: k2tog
// all round, then one plain round, over and over while more than 6 stitches
// are left; the rest is drawn up. If there are too few rounds for that, the last
// halvings are left out and more stitches are drawn up.
func (t *Tube) close(s *stitch.Section, n, plain int) {
	for r := plain + 1; r <= t.Rounds; r++ {
		round := stitch.Round{Ops: allKnit(n)}
		if (r-plain)%2 == 1 {
			round = halved(n)
		}
		s.Rounds = append(s.Rounds, round)
		n = round.Out()
	}
	s.Finish = stitch.Round{Ops: times(nil, stitch.DrawUp, n)}
}

// closing returns the number of rounds that close a thumb of n stitches: every 2nd of
// them, from the first on, halves it.
func (o pace) closing(n int) int {
	halved := 0
	for ; n > fewestClosed; n = (n + 1) / 2 {
		halved++
	}
	return max(0, 2*halved-1+min(halved, o.rest()))
}

// halved returns a round of k2tog over n stitches; an odd stitch is knitted.
func halved(n int) stitch.Round {
	return stitch.Round{Ops: times(times(nil, stitch.K2tog, n/2), stitch.Knit, n%2), Even: true}
}
