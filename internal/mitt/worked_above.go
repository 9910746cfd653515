package mitt

import "thenar/internal/stitch"

// handOn sets the rounds of an open hand that is begun. Before its edging is,
// both its parts are free above the present round; from then on the plain part
// is knitted, and the edging has its own length.
func (w *work) handOn() {
	b, k := &w.plan.Body, w.worked
	after, wanted := w.plan.Bridge.HandAfter, max(1, nearest(w.q*w.len.edging))
	plain, changes := k.RoundsAbove-k.EdgingRounds, k.Edging != after
	at := k.in(stitch.Hand)
	switch {
	case k.past(stitch.Hand):
		b.RoundsAbove, b.EdgingRounds, b.EdgingStitches, b.EdgingRib = k.RoundsAbove, k.EdgingRounds, k.Edging, k.edgingRib()
	case k.EdgingRounds > 0 && (at > plain || at == plain && changes):
		b.EdgingRounds, b.EdgingStitches, b.EdgingRib = max(at-plain, wanted), k.Edging, k.edgingRib()
		if w.pins.RoundsAboveGusset.On {
			b.EdgingRounds = max(at-plain, 1, w.pins.RoundsAboveGusset.N-plain)
		}
		b.RoundsAbove = plain + b.EdgingRounds
	default:
		stitches, _ := edgingCount(after, w.plan.Stitch.Rib)
		if !w.pins.RoundsAboveGusset.On {
			b.RoundsAbove = max(b.RoundsAbove, at+boolInt(stitches != after)+wanted)
		}
		b.RoundsAbove = max(b.RoundsAbove, at)
		b.EdgingRounds, b.EdgingStitches, b.EdgingRib = edging(after, w.plan.Stitch.Rib, wanted, b.RoundsAbove-at)
	}
}

// lastOfHand is the round of the hand below the top.
func (w *Worked) lastOfHand() int {
	if w == nil {
		return -1
	}
	return w.RoundsAbove
}

// topWorked is how many rounds of the top are knitted.
func (w *work) topWorked() int {
	if w.worked.past(stitch.Top) {
		return w.worked.TopRounds
	}
	return w.worked.in(stitch.Top)
}

// topLeast is the fewest rounds of a top of k decrease rounds: those that are
// knitted, and one for each decrease round that is not.
func (w *work) topLeast(k int) int {
	if !w.worked.begun(stitch.Top) {
		return 0
	}
	return w.topWorked() + k - len(w.worked.changed(stitch.Top, w.worked.Decreases))
}

// thumbLeast is the fewest rounds of a thumb of which some are knitted, and
// whether it can have no others: once a closed thumb is being halved it ends as
// it was planned, and once an open one has its edging its plain part is
// knitted, and the edging has its own length.
func (w *work) thumbLeast() (rounds int, ended bool) {
	k := w.worked
	at := k.in(stitch.Thumb)
	if at == 0 {
		return 0, false
	}
	before := at + decreaseRounds(k.ThumbDecreases)
	if k.cornered() {
		before = max(at, last(k.corners()))
	}
	plain := k.thumbPlain()
	wanted := max(1, nearest(w.q*w.len.thumbEdging))
	switch {
	case w.req.Kind.info().thumbClosed && at > plain, !w.req.Kind.info().thumbClosed && k.cornered() && k.ThumbEdging == 0:
		return k.ThumbRounds, true
	case w.req.Kind.info().thumbClosed:
		return before + closingCount(k.Thumb), false
	case k.edged() && w.pins.ThumbRounds.On:
		return max(at, plain+1), false
	case k.edged():
		return max(at, plain+wanted), true
	}
	stitches, _ := edgingCount(k.Thumb, k.Rib)
	return before + boolInt(stitches != k.Thumb) + min(wanted, max(1, k.ThumbEdging)), false
}

// thumbPlain is the rounds of the thumb below its edging, or below the rounds
// that close it.
func (w *Worked) thumbPlain() int {
	if w.TopRounds > 0 {
		return max(w.ThumbRounds-closingCount(w.Thumb), 1+decreaseRounds(w.ThumbDecreases))
	}
	return w.ThumbRounds - w.ThumbEdging
}
