package mitt

import (
	"fmt"
	"math"
	"slices"

	"thenar/internal/fault"
	"thenar/internal/shaping"
	"thenar/internal/stitch"
)

// Of a mitt that is worked from the fingertips the thumb and the top are knitted first.
// The counts of a part that is begun stay, and with the thumb those of the gusset that
// joins it; what is free below are the rounds of hand and gusset, the rhythm of the
// gusset, and the cuff.

// order returns the part's place in the order worked.
func (k *Progress) order(part stitch.Part) int { return stitch.Order(part, k.Down) }

// tubed reports whether the hand's tube is begun, at its tip or its edging.
func (k *Progress) tubed() bool { return k.begun(stitch.Top) || k.begun(stitch.Hand) }

// holdDown fixes the numbers that are knitted from the fingertips.
func (k *Progress) holdDown(p *Pins) {
	pace := k.pace()
	least := func(pin *Pin, n int) {
		if pin.On {
			pin.N = max(pin.N, pace.up(n))
		}
	}
	if k.GussetBase > 0 {
		rounds, list := p.GussetRounds, p.IncreaseRounds
		k.holdDivision(p)
		p.GussetBase, p.ThumbStitches = Fix(k.GussetBase), Fix(k.Thumb)
		p.GussetRounds = rounds
		least(&p.GussetRounds, k.gussetLeast())
		if len(list) == len(k.Increases) && !k.past(stitch.Gusset) {
			p.IncreaseRounds = list
		}
		if k.past(stitch.Thumb) {
			p.ThumbRounds = Fix(k.ThumbRounds)
		}
		if k.past(stitch.Gusset) {
			p.GussetRounds = Fix(k.GussetRounds)
		}
	}
	if k.tubed() {
		p.HandStitches = Fix(k.HandStitches)
	}
	if k.begun(stitch.Top) {
		p.TopRounds = Fix(k.TopRounds)
	}
	least(&p.RoundsAboveGusset, k.handLeast())
	if k.handDone() {
		p.RoundsAboveGusset = Fix(k.RoundsAbove)
	}
	least(&p.CuffPlainRounds, k.plainLeast())
	if k.cuffed() {
		p.CuffPlainRounds = Fix(k.CuffPlainRounds)
		if !k.flaresDown() || k.edgedFlare() {
			p.CastOn = Fix(k.CastOn)
		}
	}
	least(&p.CuffRounds, k.in(stitch.Cuff))
}

// handDone reports whether all of the hand is knitted, from the fingertips; of rows, all
// that may be shaped.
func (k *Progress) handDone() bool {
	n := k.in(stitch.Hand)
	return k.past(stitch.Hand) || n > 0 && n >= k.RoundsAbove-k.pace().rest()
}

// cuffed reports whether the cuff's count is knitted: from the cuff at once, from the
// fingertips when the round that brings the hand to it is.
func (k *Progress) cuffed() bool {
	switch {
	case k == nil:
		return false
	case !k.Down:
		return true
	case k.past(stitch.CuffPlain), k.handDone() && k.JoinsAbove:
		return true
	}
	n := k.in(stitch.CuffPlain)
	return n > 0 && n >= k.CuffPlainRounds-k.pace().rest()
}

// plainLeast returns the least number of plain rounds above a cuff. From the fingertips
// the last of them, which brings the hand to the cuff's count, is still to come unless it
// is knitted.
func (k *Progress) plainLeast() int {
	n := k.in(stitch.CuffPlain)
	switch {
	case k == nil, !k.Down, k.cuffed():
	case n > 0, k.GussetBase == 0 && k.handDone() && k.CuffPlainRounds > 0:
		n = k.pace().up(n) + int(k.pace())
	}
	return n
}

// handLeast returns the least number of rounds of a hand that is begun: its edging, and
// the last round, which joins what lies below, are still to come or are knitted.
func (k *Progress) handLeast() int {
	n := k.in(stitch.Hand)
	if n == 0 {
		return 0
	}
	pace := k.pace()
	return pace.up(max(n, k.EdgingRounds+pace.takes(boolInt(k.EdgingRounds > 0)))) + pace.takes(boolInt(n < k.RoundsAbove-pace.rest()))
}

// handBelow sets the rounds of an open hand that is begun at its edging, which stays.
func (d *draft) handBelow() {
	b, k := &d.plan.Body, d.progress
	b.EdgingRounds, b.EdgingStitches, b.EdgingRib = k.EdgingRounds, k.Edging, k.edgingRib()
	if !k.handDone() {
		b.RoundsAbove = max(b.RoundsAbove, k.handLeast())
	}
}

// boundsDown returns the bounds of all numbers of the parts that are begun.
func (k *Progress) boundsDown() []bound {
	var list []bound
	if k.GussetBase > 0 {
		made := k.made()
		list = append(list, bound{GussetBase, 1, maxBase}, bound{IncreaseRounds, 1, maxRounds},
			bound{Held, max(1, k.GussetBase+made), k.GussetBase + made},
			bound{BridgeStitches, 0, maxBridge},
			bound{ThumbStitches, 1, maxStitches})
		if k.begun(stitch.Thumb) {
			list = append(list, bound{ThumbEdgingRounds, 0, k.ThumbRounds - 1}, bound{ThumbEdgingStitches, (k.Thumb + 1) / 2, 2 * k.Thumb})
		}
	}
	if k.tubed() {
		list = append(list, bound{HandStitches, fewestStitches, maxStitches})
		after := k.HandStitches
		if k.GussetBase > 0 {
			after += k.Bridge - k.GussetBase
		}
		if k.TopRounds > 0 {
			c := k.madeTop().closes(after)
			list = append(list, bound{DecreaseRounds, c.k, c.k})
		} else {
			list = append(list, bound{EdgingStitches, (after + 1) / 2, 2 * after}, bound{EdgingRounds, 0, max(0, k.RoundsAbove-1)})
		}
	}
	if k.past(stitch.Hand) {
		list = append(list, bound{RoundsAboveGusset, 1, maxRounds})
	}
	if k.past(stitch.Gusset) && k.GussetBase > 0 {
		list = append(list, bound{GussetRounds, 1 + gussetLeadOut, maxRounds})
	}
	if k.begun(stitch.Cuff) {
		list = append(list, bound{Rib, 1, maxStitches}, bound{CuffPlainRounds, 0, maxRounds})
		if !k.flaresDown() || k.edgedFlare() {
			list = append(list, bound{CastOn, 1, maxStitches})
		}
	}
	return list
}

// keepsDown refuses a plan that differs from what is knitted from the fingertips.
func (d *draft) keepsDown() error {
	k := d.progress
	planned := d.plan.ProgressAt(k.Part, k.Round)
	for _, b := range k.boundsDown() {
		if was, now := k.value(b.of), planned.value(b.of); was != now {
			return fault.Fields{{Path: b.of.knittedPath(), Message: fmt.Sprintf("is %d, but by the other counts it can only be %d; write what is on the needles", was, now)}}
		}
	}
	if k.begun(stitch.Top) && !slices.Equal(k.Decreases, planned.Decreases) ||
		!slices.Equal(k.undone(), planned.undone()) || !slices.Equal(k.widened(), planned.widened()) {
		return fault.Fields{{Path: "worked.round", Message: "doesn't go with the increase and decrease rounds; write those of the mitt on the needles"}}
	}
	return nil
}

// undone returns the rounds of the gusset, counted as they are worked from above, in
// which decreases are knitted.
func (k *Progress) undone() []int {
	worked := k.in(stitch.Gusset)
	if k.past(stitch.Gusset) {
		worked = k.GussetRounds
	}
	list := k.pace().fromEnd(k.GussetRounds, k.Increases)
	return slices.DeleteFunc(list, func(at int) bool { return at > worked })
}

// gussetLeast returns the least number of rounds of a gusset whose increases are fixed by
// the thumb: there is room for the decreases still to come.
func (k *Progress) gussetLeast() int {
	done, worked, pace := k.undone(), k.in(stitch.Gusset), k.pace()
	left := len(k.Increases) - len(done)
	next := pace.shaped(max(worked, gussetLeadOut-pace.rest()) + 1) // of the decreases
	switch {
	case k.past(stitch.Gusset):
		return k.GussetRounds
	case left == 0:
		return pace.up(max(worked, last(done), 1+gussetLeadOut))
	case len(done) > 0:
		next = max(last(done)+gussetGap, next)
	}
	return pace.up(next + gussetGap*(left-1))
}

// waysDown schedules a gusset that is begun from above. If what is knitted is how the best
// schedule of the whole gusset ends, that stays; else what lies below is solved by itself,
// with the same line.
func (d *draft) waysDown(pl *Planner) error {
	g, k := &d.plan.Gusset, d.progress
	if k == nil || !k.Down || !k.begun(stitch.Gusset) {
		return nil
	}
	shape := pl.target[:g.Rounds.N]
	done := k.undone()
	planned := k.pace().fromEnd(g.Rounds.N, g.IncreaseRounds)
	if begins(planned, done, k.in(stitch.Gusset)) {
		return nil
	}
	kept := k.pace().fromEnd(g.Rounds.N, done)
	rounds := kept
	if left := g.Increases - len(done); left > 0 {
		p := d.problem()
		highest := highestBelow(g.Rounds.N, max(k.pace().up(k.in(stitch.Gusset)), gussetLeadOut), kept, gussetGap)
		p.Target = shape
		if g.Way.Follows != FollowProfile {
			p.Target = lineTarget(&p)
		}
		p.To, p.Rounds, p.LeadOut = p.From+p.Step*left, highest, 0
		p.Target = p.Target[:highest]
		found, err := pl.solver.Solve(&p, make([]int, 0, left))
		if err != nil {
			return fault.Fields{{Path: "hand.gusset_length", Message: err.Error()}}
		}
		rounds = append(slices.Clone(found.Rounds), kept...)
	}
	g.Way = d.against(Way{Follows: g.Way.Follows, Rounds: rounds, Cost: g.Way.Cost}, shape)
	g.Ways = []Way{g.Way}
	g.IncreaseRounds = rounds
	return nil
}

// begins reports whether a schedule begins with what is knitted: rounds counted as they are
// worked, of which so many are done and no other one has been passed.
func begins(schedule, done []int, worked int) bool {
	n := len(done)
	return n <= len(schedule) && slices.Equal(done, schedule[:n]) && (n == len(schedule) || schedule[n] > worked)
}

// highestBelow returns the last of n rounds, counted from the lower end, that may be shaped
// below so many others: with a gap to the lowest of those that are kept there.
func highestBelow(n, others int, kept []int, gap int) int {
	if len(kept) > 0 {
		return min(n-others, kept[0]-gap)
	}
	return n - others
}

// lineTarget returns the middle line of a gusset's staircase after each round, in 1/10 000
// stitch, as the solver has it by itself.
func lineTarget(p *shaping.Problem) []int64 {
	line := make([]int64, p.Rounds)
	for r := range line {
		line[r] = int64(math.Round(1e4 * (float64(p.From) + float64(p.To-p.From)*(float64(r)+0.5)/float64(p.Rounds) + float64(p.Step)/2)))
	}
	return line
}

// checkPairs refuses rows from the fingertips that don't come in pairs, the shaped one
// first: they could not be read from the cuff.
func (k *Progress) checkPairs(faults *fault.Fields) {
	if !k.Down || !k.Flat {
		return
	}
	for _, n := range knittable {
		switch list := k.Numbers(n); {
		case list != nil:
			if slices.ContainsFunc(*list, func(r int) bool { return r%2 == 0 }) && n != ThumbDecreaseRounds {
				faults.Add(n.knittedPath(), "are %s; flat, only the odd rows are shaped", commas(*list))
			}
		case n.Measure() == InRounds && n != CuffFacing && *k.Number(n)%2 != 0:
			faults.Add(n.knittedPath(), "is %d; a part that is worked flat has an even number of rows", *k.Number(n))
		}
	}
}
