package mitt

import (
	"math"
	"slices"

	"thenar/internal/fault"
	"thenar/internal/shaping"
	"thenar/internal/stitch"
)

// thumbRoundsFree returns the thumb's number of rounds when none is fixed.
func (d *draft) thumbRoundsFree() int { return max(1, nearest(d.q*d.len.thumb)) }

// thumbRounds returns the thumb's number of rounds: never fewer than the
// knitted ones and those that must still follow.
func (d *draft) thumbRounds(pins *Pins) int {
	least, ended := d.thumbLeast()
	if ended {
		return least
	}
	return max(pins.ThumbRounds.Or(d.thumbRoundsFree()), least)
}

// corners returns the greatest number of corner decreases that fit into a thumb
// of so many rounds; its first round picks up and takes none.
func corners(rounds int) int { return min(maxDecreases, maxInOneRound*max(0, rounds-1)) }

// thumb sets the thumb's rounds, its edging, and the rounds that decrease at its
// corners. Below the edging come the pick-up round, the decrease rounds, and
// one more if the edging has another count.
func (d *draft) thumb() {
	p, k := &d.plan, d.progress
	t := &p.Thumb
	t.Rounds, t.EdgingStitches, t.EdgingRib = d.thumbRounds(d.pins), t.Stitches.N, p.Stitch.Rib
	at := max(1, k.in(stitch.Thumb))
	settled := k.begun(stitch.Thumb) && k.cornered()
	switch before := at + decreaseRounds(t.Decreased); {
	case t.Closed:
	case settled && k.edged():
		t.EdgingStitches, t.EdgingRib, t.EdgingRounds = k.ThumbEdged, k.thumbRib(), t.Rounds-(k.ThumbRounds-k.ThumbEdging)
	default:
		if settled {
			before = max(at, last(k.corners()))
		}
		t.EdgingRounds, t.EdgingStitches, t.EdgingRib = edging(t.Stitches.N, p.Stitch.Rib, nearest(d.q*d.len.thumbEdging), t.Rounds-before)
	}
	if t.DecreaseRounds = cornerRounds(t.Decreased, at+1, t.lastCorner()); settled {
		t.DecreaseRounds = k.corners()
	}
}

// lastCorner returns the last round that can decrease at the corners. It lies
// below the edging and the change to its count, or below the rounds that close
// the thumb.
func (t *Thumb) lastCorner() int {
	if t.Closed {
		return max(t.Rounds-closingCount(t.Stitches.N), 1+decreaseRounds(t.Decreased))
	}
	return t.Rounds - t.EdgingRounds - boolInt(t.EdgingStitches != t.Stitches.N)
}

// cornerRounds returns the rounds in which d corner decreases are worked: one or
// two in the first round, and a third and fourth two rounds later, or one
// round later if the thumb is too short.
func cornerRounds(d, first, last int) []int {
	switch {
	case d == 0:
		return nil
	case d <= maxInOneRound:
		return []int{first}
	}
	return []int{first, max(first+1, min(first+2, last))}
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
// stitches. Of the room, in rounds, a change of count takes one. Without
// room or stitches for an edging there are no rounds and the count stays n.
func edging(n, rib, wanted, room int) (rounds, stitches, of int) {
	stitches, of = edgingCount(n, rib)
	if stitches != n {
		room--
	}
	if rounds = min(max(1, wanted), room); rounds < 1 || stitches == 0 {
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
	p.Body.RoundsAbove = d.pins.RoundsAboveGusset.Or(max(1, nearest(d.q*d.len.above)))
	if d.progress.begun(stitch.Hand) {
		d.handOn()
		return nil
	}
	p.Body.EdgingRounds, p.Body.EdgingStitches, p.Body.EdgingRib = edging(p.Bridge.HandAfter, p.Stitch.Rib,
		nearest(d.q*d.len.edging), p.Body.RoundsAbove-1)
	return nil
}

// top plans the rounded top of a mitten (common practice, no source). With N′
// stitches and four decreases in a decrease round:
//
//	end = 8 + (N′ mod 4), N′ even; an odd N′ loses one stitch in the round before
//	K = (N′ − end)/4,  R = nearest to max(q(0.19 L + 5 mm), 1.5 K)
//	T(r) = N′ + (end − N′)·x^1.5 − 2,  x = (r − ½)/R
//
// so that the top narrows slowly at first and then ever faster. What is left
// of the hand's length plus 5 mm, less the top, is worked plain; N′ under 12 is
// drawn up as it is.
func (d *draft) top(pl *Planner) error {
	p := &d.plan
	n := p.Bridge.HandAfter
	top := &Top{Odd: n % 2}
	n -= top.Odd
	k := topDecreases(n)
	top.Stitches, top.End = n, n-4*k
	top.Rounds = max(d.pins.TopRounds.Or(max(1, nearest(max(d.q*d.len.top, 1.5*float64(k))))), d.topLeast(k))
	if d.progress.past(stitch.Top) {
		top.Rounds = d.progress.TopRounds
	}
	p.Top = top
	d.roundsBelowTop(top)
	if k == 0 {
		return nil
	}
	target := pl.target[:0]
	for r := 1; r <= top.Rounds; r++ {
		x := (float64(r) - 0.5) / float64(top.Rounds)
		t := float64(n) + float64(top.End-n)*math.Pow(x, 1.5) - 2
		target = append(target, int64(math.Round(t*10_000)))
	}
	pl.target = target
	problem := shaping.Problem{
		From: n, To: top.End, Step: -4, Rounds: top.Rounds, Gap: topGap, Lambda: DefaultLambda * 1000, Target: target,
		Quicken: true, // a top that slows down again bends the line of its decreases
	}
	found, err := d.topOnward(pl, problem)
	if err != nil {
		return fault.Fields{{Path: "hand.hand_length", Message: err.Error()}}
	}
	top.DecreaseRounds, top.Cost = found.Rounds, found.Cost.Float()
	return nil
}

// topOnward solves a top of which some rounds may be knitted. If those rounds
// are how the best schedule of the whole top begins, that schedule stays:
// solved anew from the present round, its first interval might grow.
func (d *draft) topOnward(pl *Planner, problem shaping.Problem) (shaping.Schedule, error) {
	dst := make([]int, 0, problem.Changes())
	found, err := pl.solver.Solve(&problem, dst)
	if !d.progress.begun(stitch.Top) {
		return found, err
	}
	problem.Worked, problem.Changed = d.topWorked(), d.progress.changed(stitch.Top, d.progress.Decreases)
	done := problem.Changed
	if err == nil && len(done) <= len(found.Rounds) && slices.Equal(done, found.Rounds[:len(done)]) &&
		(len(done) == len(found.Rounds) || found.Rounds[len(done)] > problem.Worked) {
		return found, nil
	}
	return pl.solver.Solve(&problem, dst)
}

// topDecreases returns the number of decrease rounds that close n stitches.
func topDecreases(n int) int {
	if n -= n % 2; n >= 12 {
		return (n - 8 - n%4) / 4
	}
	return 0
}

// roundsBelowTop sets the number of rounds between division and top. There is
// at least the division round, and by default a second one if an odd stitch
// must be taken off first. Without a thumb nothing is divided, so one round is
// enough and takes off that stitch too.
func (d *draft) roundsBelowTop(top *Top) {
	rounds := nearest(d.q*d.len.above) - top.Rounds
	if given := d.req.Lengths.AboveGusset; given != 0 {
		rounds = nearest(d.q * given.MM())
	}
	least := 1
	if d.plan.Thumbed() {
		least += top.Odd
	}
	above := d.pins.RoundsAboveGusset.Or(max(least, rounds))
	switch k := d.progress; {
	case k.past(stitch.Hand), k.in(stitch.Hand) == k.lastOfHand() && k.begun(stitch.Hand) && top.Odd == 1:
		above = k.RoundsAbove
	default:
		above = max(above, k.in(stitch.Hand)+boolInt(k.begun(stitch.Hand))*top.Odd)
	}
	d.plan.Body.RoundsAbove = above
}
