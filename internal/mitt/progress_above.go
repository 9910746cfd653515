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

// thumbLeast returns the least number of rounds of a thumb that is begun, and
// whether it can have no other number. A closed thumb that is being halved ends
// as it was planned; an open one whose edging is begun has its plain part
// knitted, and the edging its wanted length.
func (d *draft) thumbLeast() (rounds int, ended bool) {
	k := d.progress
	at := k.in(stitch.Thumb)
	if at == 0 {
		return 0, false
	}
	pace := k.pace()
	before := pace.cornered(at, k.ThumbDecreases)
	if k.cornered() {
		before = pace.up(max(at, last(k.corners())))
	}
	plain := k.thumbPlain()
	wanted := max(1, nearest(d.q*d.len.thumbEdging))
	switch {
	case d.req.Kind.info().thumbClosed && at > plain, !d.req.Kind.info().thumbClosed && k.cornered() && k.ThumbEdging == 0:
		return k.ThumbRounds, true
	case d.req.Kind.info().thumbClosed:
		return before + pace.closing(k.Thumb), false
	case k.edged() && d.pins.ThumbRounds.On:
		return pace.up(max(at, plain+1)), false
	case k.edged() && d.thumbRoundsFree() == k.ThumbRounds && k.edgesFor(wanted):
		return k.ThumbRounds, true
	case k.edged():
		return pace.up(max(at, plain+wanted)), true
	}
	stitches, _ := edgingCount(k.Thumb, k.Rib)
	return pace.up(before + boolInt(stitches != k.Thumb) + min(wanted, max(1, k.ThumbEdging))), false
}

// edgesFor reports whether the thumb's edging is as long as it gets if so many rounds of it
// are wanted: a short thumb has no room for more.
func (k *Progress) edgesFor(wanted int) bool {
	rounds, _, _ := k.pace().edging(k.Thumb, k.Rib, wanted, k.ThumbRounds-k.pace().cornered(1, k.ThumbDecreases), false)
	return rounds == k.ThumbEdging
}

// thumbPlain returns the number of rounds of the thumb below its edging, or
// below the rounds that close it.
func (k *Progress) thumbPlain() int {
	if k.TopRounds > 0 {
		return max(k.ThumbRounds-k.pace().closing(k.Thumb), k.pace().cornered(1, k.ThumbDecreases))
	}
	return k.ThumbRounds - k.ThumbEdging
}
