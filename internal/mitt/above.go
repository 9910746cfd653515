package mitt

import (
	"thenar/internal/stitch"
)

// thumbWish returns how long the thumb should be.
func (d *draft) thumbWish(pins *Pins) tubeWish {
	wish := tubeWish{
		rounds: d.req.Make.pace().nearest(d.q * d.len.thumb), edging: nearest(d.q * d.len.thumbEdging),
		pin: pins.ThumbRounds, closed: d.req.thumbClosed(),
	}
	if given := &d.req.Lengths; d.req.Kind.Fingered() && given.Thumb == 0 && given.ThumbEdging == 0 {
		wish.makeRoom(&d.plan.Thumb.Tube, d.req.Make.pace(), d.plan.Stitch.Rib)
	}
	return wish
}

// makeRoom gives an open tube of a glove at least the rounds that it needs before its
// edging, so that a short one has all of that.
func (w *tubeWish) makeRoom(t *Tube, o pace, rib int) {
	if w.closed {
		return
	}
	edged, _ := edgingCount(t.Stitches.N, rib)
	w.rounds = max(w.rounds, o.cornered(1, t.Decreased)+boolInt(edged != t.Stitches.N)+max(1, w.edging))
}

// thumbRounds returns the thumb's number of rounds: never fewer than the
// knitted ones and those that must still follow.
func (d *draft) thumbRounds(pins *Pins) int {
	return d.tubeRounds(d.thumbBegun(), d.thumbWish(pins))
}

// thumbBegun returns what is knitted of the thumb; nil if it isn't begun.
func (d *draft) thumbBegun() *tubeWorked {
	if !d.progress.begun(stitch.Thumb) {
		return nil
	}
	return d.progress.thumb()
}

// tubeRounds returns a tube's number of rounds: never fewer than the knitted ones and
// those that must still follow. worked is nil if it isn't begun.
func (d *draft) tubeRounds(worked *tubeWorked, wish tubeWish) int {
	if worked == nil {
		return wish.pin.Or(wish.rounds)
	}
	least, ended := tubeLeast(worked, wish, d.plan.Stitch.Rib)
	if ended {
		return least
	}
	return max(wish.pin.Or(wish.rounds), least)
}

// corners returns the greatest number of corner decreases that fit into the rounds of a
// thumb after one, up to another; its first round picks up and takes none.
func (o pace) corners(after, to int) int {
	return min(maxDecreases, maxInOneRound*o.shapings(after, to))
}

// cornered returns the round that ends d corner decreases, begun after a round.
func (o pace) cornered(after, d int) int {
	if d == 0 {
		return o.up(after)
	}
	return o.shaped(after+1) + o.takes(decreaseRounds(d)) - 1
}

// thumb sets the thumb's rounds, its edging, and the rounds that decrease at its
// corners.
func (d *draft) thumb() {
	if d.plan.Down() {
		d.thumbFromTip()
		return
	}
	d.tube(&d.plan.Thumb.Tube, d.thumbBegun(), d.thumbRounds(d.pins), d.thumbWish(d.pins).edging)
}

// tube sets a tube's rounds, its edging of so many wanted rounds, and the rounds that
// decrease at its corners. Below the edging come the pick-up round, the decrease rounds,
// and one more if the edging has another count. worked is nil if it isn't begun.
func (d *draft) tube(t *Tube, worked *tubeWorked, rounds, edging int) {
	pace := d.req.Make.pace()
	t.Rounds, t.EdgingStitches, t.EdgingRib = rounds, t.Stitches.N, d.plan.Stitch.Rib
	at, settled := 1, false
	if worked != nil {
		at, settled = max(1, worked.at), worked.cornered()
	}
	switch before := pace.cornered(at, t.Decreased); {
	case t.Closed:
	case settled && worked.edgeBegun():
		t.EdgingStitches, t.EdgingRib, t.EdgingRounds = worked.edged, worked.rib, t.Rounds-(worked.rounds-worked.edging)
	default:
		if settled {
			before = pace.up(max(at, last(worked.corners())))
		}
		t.EdgingRounds, t.EdgingStitches, t.EdgingRib = pace.edging(t.Stitches.N, d.plan.Stitch.Rib, edging, t.Rounds-before, false)
	}
	if t.DecreaseRounds = pace.cornerRounds(t.Decreased, at, t.lastCorner(pace)); settled {
		t.DecreaseRounds = worked.corners()
	}
}

// lastCorner returns the last round that can decrease at the corners. It lies
// below the edging and the change to its count, or below the rounds that close
// the tube.
func (t *Tube) lastCorner(o pace) int {
	if t.Closed {
		return max(t.Rounds-o.closing(t.Stitches.N), o.cornered(1, t.Decreased))
	}
	return t.Rounds - t.EdgingRounds - boolInt(t.EdgingStitches != t.Stitches.N)
}

// cornerRounds returns the rounds in which d corner decreases are worked after a
// round: one or two in the first that may be shaped, and a third and fourth two rounds
// later, or one round later if the thumb is too short and not in rows.
func (o pace) cornerRounds(d, after, last int) []int {
	first := o.shaped(after + 1)
	switch {
	case d == 0:
		return nil
	case d <= maxInOneRound:
		return []int{first}
	}
	return []int{first, max(first+int(o), min(first+2, last))}
}

// last returns the last of a list of rounds, or 0 if the list is empty.
func last(rounds []int) int {
	if len(rounds) == 0 {
		return 0
	}
	return rounds[len(rounds)-1]
}

// oneByOne is the multiple of 1 × 1 rib, which stands in where another rib
// doesn't fit.
const oneByOne = 2

// drawnIn reports whether an edging of so many stitches has over 15 % fewer than
// the n stitches before it (common practice, no source).
func drawnIn(n, stitches int) bool { return 100*(n-stitches) > 15*n }

// edgingCount returns the count of an edging after n stitches, and its rib.
// Edgings draw in and never flare, so it is the largest multiple of the rib
// up to n. Where that leaves nothing, or takes away more than 15 %, the edging
// is 1 × 1 rib on the largest even count up to n.
func edgingCount(n, rib int) (stitches, of int) {
	if stitches = n / rib * rib; stitches > 0 && !drawnIn(n, stitches) {
		return stitches, rib
	}
	return n / oneByOne * oneByOne, oneByOne
}

// edging returns the rounds, the count and the rib of an edging after n
// stitches. Of the room, in rounds, a change of count takes one; in rows that is the
// first of a pair, so that the edging has an odd number of them, else an even one. An
// edging that is worked first always has an even one, and the change a pair of its own.
// Without room or stitches for an edging there are no rounds and the count stays n.
func (o pace) edging(n, rib, wanted, room int, first bool) (rounds, stitches, of int) {
	stitches, of = edgingCount(n, rib)
	odd := stitches != n
	switch {
	case odd && first:
		room -= int(o)
	case odd:
		room--
	}
	rounds = min(max(1, wanted), room)
	if o == toAndFro && (rounds%2 == 1) != (odd && !first) {
		if rounds++; rounds > room {
			rounds -= 2
		}
	}
	if rounds < 1 || stitches == 0 {
		return 0, n, rib
	}
	return rounds, stitches, of
}

// above plans what lies above the division: a fingerless mitt's edging, or a
// mitten's top.
func (d *draft) above(pl *Planner) error {
	p := &d.plan
	p.Body.EdgingStitches, p.Body.EdgingRib = p.Bridge.HandAfter, p.Stitch.Rib
	if p.Kind.info().topped {
		return d.top(pl)
	}
	p.Body.RoundsAbove = d.pins.RoundsAboveGusset.Or(d.req.Make.pace().nearest(d.q * d.len.above))
	if d.progress.begun(stitch.Hand) {
		d.handOn()
	}
	switch {
	case p.Kind.Fingered():
		if err := d.divide(); err != nil {
			return err
		}
		return d.capOver(pl)
	case d.progress.begun(stitch.Hand):
		return nil
	}
	p.Body.EdgingRounds, p.Body.EdgingStitches, p.Body.EdgingRib = d.req.Make.pace().edging(p.Bridge.HandAfter, p.Stitch.Rib,
		nearest(d.q*d.len.edging), p.Body.RoundsAbove-1, p.Down())
	return nil
}
