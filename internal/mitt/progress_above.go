package mitt

import "thenar/internal/stitch"

// handOn sets the rounds of an open hand that is begun. Until the edging begins,
// the plain part and the edging are both free above the present round; from
// then on only the edging's length is.
func (d *draft) handOn() {
	b, k, pace := &d.plan.Body, d.progress, d.req.Make.pace()
	if k.Down {
		d.handBelow()
		return
	}
	after, wanted := d.plan.Bridge.HandAfter, max(1, nearest(d.q*d.len.edging))
	plain, changes := k.RoundsAbove-k.EdgingRounds, k.Edging != after
	at := k.in(stitch.Hand)
	switch {
	case d.plan.Kind.Fingered() && k.past(stitch.Hand):
		b.RoundsAbove = k.RoundsAbove
	case d.plan.Kind.Fingered():
		b.RoundsAbove = max(b.RoundsAbove, at)
	case k.past(stitch.Hand):
		b.RoundsAbove, b.EdgingRounds, b.EdgingStitches, b.EdgingRib = k.RoundsAbove, k.EdgingRounds, k.Edging, k.edgingRib()
	case k.EdgingRounds > 0 && (at > plain || at == plain && changes):
		b.EdgingRounds, b.EdgingStitches, b.EdgingRib = max(at-plain, wanted), k.Edging, k.edgingRib()
		if d.pins.RoundsAboveGusset.On {
			b.EdgingRounds = max(at-plain, 1, d.pins.RoundsAboveGusset.N-plain)
		}
		b.RoundsAbove = pace.up(plain + b.EdgingRounds)
		b.EdgingRounds = b.RoundsAbove - plain
	default:
		stitches, _ := edgingCount(after, d.plan.Stitch.Rib)
		if !d.pins.RoundsAboveGusset.On {
			b.RoundsAbove = max(b.RoundsAbove, at+boolInt(stitches != after)+wanted)
		}
		b.RoundsAbove = pace.up(max(b.RoundsAbove, at))
		b.EdgingRounds, b.EdgingStitches, b.EdgingRib = pace.edging(after, d.plan.Stitch.Rib, wanted, b.RoundsAbove-at, false)
	}
}

// lastOfHand returns the last round of the hand, or −1 if nothing is knitted.
func (k *Progress) lastOfHand() int {
	if k == nil {
		return -1
	}
	return k.RoundsAbove
}

// topWorked returns the number of rounds of the top that are knitted.
func (d *draft) topWorked() int {
	if d.progress.past(stitch.Top) {
		return d.progress.TopRounds
	}
	return d.progress.in(stitch.Top)
}

// topLeast returns the least number of rounds of a top with k decrease rounds:
// the knitted ones, and one for each decrease round that is still to come.
func (d *draft) topLeast(k int) int {
	if !d.progress.begun(stitch.Top) || d.progress.Down {
		return 0
	}
	pace := d.req.Make.pace()
	return pace.up(d.topWorked()) + pace.takes(k-len(d.progress.changed(stitch.Top, d.progress.Decreases)))
}

// tubeWish is how long a tube and its edging should be, in rounds, and the pin of
// its rounds.
type tubeWish struct {
	rounds, edging int
	pin            Pin
	closed         bool
}

// tubeLeast returns the least number of rounds of a tube that is begun, and
// whether it can have no other number. A closed one that is being halved ends
// as it was planned; an open one whose edging is begun has its plain part
// knitted, and the edging its wanted length.
func tubeLeast(t *tubeWorked, wish tubeWish, rib int) (rounds int, ended bool) {
	switch {
	case t.past:
		return t.rounds, true
	case t.at == 0:
		return 0, false
	}
	pace, plain, wanted := t.pace, t.plain(), max(1, wish.edging)
	before := pace.cornered(t.at, t.decreases)
	if t.cornered() {
		before = pace.up(max(t.at, last(t.corners())))
	}
	switch {
	case wish.closed && t.at > plain, !wish.closed && t.cornered() && t.edging == 0:
		return t.rounds, true
	case wish.closed:
		return before + pace.closing(t.stitches), false
	case t.edgeBegun() && wish.pin.On:
		return pace.up(max(t.at, plain+1)), false
	case t.edgeBegun() && wish.rounds == t.rounds && t.edgesFor(wanted, rib):
		return t.rounds, true
	case t.edgeBegun():
		return pace.up(max(t.at, plain+wanted)), true
	}
	stitches, _ := edgingCount(t.stitches, rib)
	return pace.up(before + boolInt(stitches != t.stitches) + min(wanted, max(1, t.edging))), false
}
