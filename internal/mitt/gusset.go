package mitt

import (
	"math"

	"thenar/internal/fault"
	"thenar/internal/stitch"
)

// gusset chooses base, increases, bridge and thumb, and schedules the
// increase rounds.
func (d *draft) gusset(pl *Planner) error {
	d.gussetRounds()
	s := d.search()
	best, ok := s.choose()
	if !ok {
		return d.conflict(s)
	}
	d.take(best, s)
	if err := d.inset(); err != nil {
		return err
	}
	if err := d.ways(pl); err != nil {
		return err
	}
	return d.waysDown(pl)
}

// gussetRounds sets R, the whole number of rounds nearest to q × gusset length,
// and at least two: an increase round and a plain one after it.
func (d *draft) gussetRounds() {
	n, step := d.freeGussetRounds(), int(d.req.Make.pace())
	c := Count{N: n, Exact: d.q * d.gussetLength(), Below: n - step, Above: n + step, Knitted: d.progress.past(d.plan.Mound())}
	c.pin(d.pins.GussetRounds)
	d.plan.Gusset.Rounds = c
}

// gussetLength returns the length that the gusset has to cover, in mm. A base
// that sits above its place on the hand leaves less.
func (d *draft) gussetLength() float64 {
	return d.plan.Hand.GussetLength.MM() - d.plan.BaseAbove.MM()
}

// freeGussetRounds returns the gusset's number of rounds when none is fixed. It
// is at least the number knitted, and a plain round follows the last knitted
// increase; under a fixed list of increase rounds only where that has to be closed.
func (d *draft) freeGussetRounds() int {
	pace := d.req.Make.pace()
	n := max(pace.nearest(d.q*d.gussetLength()), 1+gussetLeadOut, d.progress.in(d.plan.Mound()))
	if k := d.progress; k != nil && k.Down {
		return max(n, k.gussetLeast())
	}
	if made := d.made(); len(made) > 0 {
		leadOut := gussetLeadOut
		if len(d.pins.IncreaseRounds) > 0 {
			leadOut = d.req.Make.growth().leadOut
		}
		n = max(n, made[len(made)-1]+leadOut)
	}
	return pace.up(n)
}

// made returns the increase rounds that are knitted.
func (d *draft) made() []int {
	if d.progress == nil || d.progress.Down {
		return nil
	}
	return d.progress.changed(stitch.Gusset, d.progress.Increases)
}

// onward returns the first round in which an increase can still be made.
func (d *draft) onward() int {
	if k := d.progress; k != nil && k.Down {
		return 1
	}
	first := 1 + d.progress.in(stitch.Gusset)
	if made := d.made(); len(made) > 0 {
		first = max(first, made[len(made)-1]+gussetGap)
	}
	return d.req.Make.pace().shaped(first)
}

func (d *draft) search() *search {
	p := &d.plan
	s := &search{
		g: d.g, step: d.req.Stitch.step(),
		palm:         p.palmTarget(),
		palmMeasured: d.req.Hand.Palm != 0 || len(d.req.Hand.Profile) > 0 || d.req.Ease.Palm != nil, // or felt
		thumb:        d.g * (p.Hand.Thumb.MM() + p.Ease.ThumbAdded),
		stitch:       d.req.Stitch,
		make:         &d.req.Make,
		grow:         d.req.Make.growth(),
		topRounds:    maxRounds, roundsAbove: maxRounds,
	}
	d.equip(s, d.pins)
	return s
}

// equip gives a search its pins, and the rounds and the room that they leave.
func (d *draft) equip(s *search, pins *Pins) {
	s.pins = pins
	s.n = pins.HandStitches.Or(d.freeHand)
	s.after = s.n
	if k := d.progress; k.joined() && !k.Down {
		s.after = d.req.Pins.HandStitches.Or(d.freeHand) // what is knitted keeps its count; above it the count is free
	}
	s.straight, s.onPalm = !d.plan.Gusseted(), s.n/2
	if !s.straight {
		s.made, s.maxIncreases = d.increases(pins)
	}
	rounds, at := d.thumbRounds(pins), 1
	thumb := d.thumbBegun()
	if thumb != nil {
		at = thumb.at
	}
	s.thumbAt, s.thumbEnd, s.closed = at, rounds, d.req.thumbClosed()
	s.maxCorners = d.req.Make.pace().corners(at, rounds)
	if !s.closed {
		s.thumbEnd -= max(1, nearest(d.q*d.len.thumbEdging))
	}
	if s.cornered = thumb != nil && thumb.at > 1 && thumb.cornered(); s.cornered {
		s.maxCorners = maxDecreases
	}
	if d.req.Kind.info().topped {
		s.topRounds, s.roundsAbove = pins.TopRounds.Or(maxRounds), pins.RoundsAboveGusset.Or(maxRounds)
	}
}

// take writes what a search has chosen into the plan.
func (d *draft) take(x choice, s *search) {
	p := &d.plan
	p.Gusset.Base, p.Gusset.Step, p.Gusset.Increases, p.Gusset.Kept = x.b, s.step, x.k, x.o
	p.Gusset.Stitches = x.b + s.step*x.k
	p.Bridge = Bridge{CastOn: x.c, HandAfter: p.Body.Stitches.N - x.b + x.o + x.c}
	p.Thumb.Held, p.Thumb.PickedUp, p.Thumb.Closed = x.held(s.step), x.p, s.closed
	p.Thumb.FirstRound, p.Thumb.Decreased = x.held(s.step)+x.p, x.d
	p.Thumb.Stitches = Count{N: x.t, Exact: s.thumb, Below: x.t - 2, Above: x.t + 2, Pinned: d.pins.ThumbStitches.On}
}

// insetShare is how far a thumb in the palm lies from the side line, as a share of the
// hand's count: 3 of 48 stitches cure a twisted back (designer's note of 2015).
const insetShare = 1.0 / 16

// straightInset is how far a thumb without a gusset lies from the side line, if it is
// not wanted further in (common practice, no source).
const straightInset = 1

// inset sets how many stitches of the palm lie between the side line and a gusset in the
// palm, or a thumb without one. With N stitches of the hand and b under the thumb,
//
//	⌊N/2⌋ = inset + b + the rest of the palm
//
// and the others are the back.
func (d *draft) inset() error {
	p := &d.plan
	if p.Make.Place != InPalm && p.Gusseted() {
		return nil
	}
	under := p.UnderThumb()
	most := p.Body.Stitches.N/2 - under
	wish := straightInset
	if p.Make.Place == InPalm {
		wish = nearest(insetShare * float64(p.Body.Stitches.N))
	}
	wish = min(wish, most)
	p.Gusset.Inset = p.Make.Inset.Or(wish)
	var faults fault.Fields
	switch {
	case most < 0:
		works(&faults, PathPlace, string(AtSide), "is palm, but a base of %d is wider than the palm's %d stitches; write side", under, p.Body.Stitches.N/2)
	case p.Gusset.Inset > most:
		works(&faults, PathInset, Fix(most).text(), "is %d; beside a base of %d the palm's %d stitches leave %d at most", p.Gusset.Inset, under, p.Body.Stitches.N/2, most)
	}
	return faults.Err()
}

// profileTarget returns the ideal count of the gusset after each round, from the
// hand's own profile, in 1/10 000 stitch:
//
//	T(r) = b + g(1 + e)·C(h_r) − N, kept within b … b + sK, h_r = r/q
//
// with the ease e of EaseAt. A base that sits above its place on the hand puts
// every round higher by as much.
func (d *draft) profileTarget(scratch []int64) ([]int64, error) {
	p := &d.plan
	girths, err := p.Hand.Girths()
	if err != nil {
		return nil, err
	}
	target := scratch[:0]
	low, high := float64(p.Gusset.Base), float64(p.Gusset.Stitches)
	for r := 1; r <= p.Gusset.Rounds.N; r++ {
		h := float64(r)/d.q + p.BaseAbove.MM()
		ease := p.EaseAt(h)
		t := low + d.g*(1+ease)*girths.At(h) - float64(p.Body.Stitches.N)
		target = append(target, int64(math.Round(min(max(t, low), high)*10_000)))
	}
	return target, nil
}

// EaseAt returns the ease wanted at a height in mm above the base of the thumb.
// It runs in a straight line from the hand's ease at the base to the gusset's
// half-way up, and in another to the palm's where the thumb parts. By default
// both are one line to max(ease, 0).
func (p *Plan) EaseAt(height float64) float64 {
	share := 1.0
	if length := p.Hand.GussetLength.MM(); length > 0 {
		share = min(max(height/length, 0), 1)
	}
	if e := &p.Ease; share < 0.5 {
		return e.Hand + 2*share*(e.Gusset-e.Hand)
	}
	return p.Ease.Gusset + (2*share-1)*(p.Ease.Palm-p.Ease.Gusset)
}
