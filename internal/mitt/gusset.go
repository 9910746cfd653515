package mitt

import (
	"math"

	"thenar/internal/stitch"
)

// gusset chooses base, increases, bridge and thumb, and schedules the
// increase rounds.
func (w *work) gusset(pl *Planner) error {
	w.gussetRounds()
	s := w.search()
	best, ok := s.choose()
	if !ok {
		return w.conflict(s)
	}
	w.take(best, s)
	return w.ways(pl)
}

// gussetRounds is R, the whole number of rounds nearest to q × gusset length;
// two at the least, since a gusset has an increase round and, after it, a
// plain one.
func (w *work) gussetRounds() {
	n := w.freeGussetRounds()
	c := Count{N: n, Exact: w.q * w.gussetLength(), Below: n - 1, Above: n + 1, Knitted: w.worked.past(stitch.Gusset)}
	c.pin(w.pins.GussetRounds)
	w.plan.Gusset.Rounds = c
}

// gussetLength is what the gusset has to cover, in mm: a base that sits above
// its place leaves less.
func (w *work) gussetLength() float64 {
	return w.plan.Hand.GussetLength.MM() - w.plan.BaseAbove.MM()
}

// freeGussetRounds is no fewer than are knitted, and one more after an
// increase in the last of them, unless a fixed list ends there.
func (w *work) freeGussetRounds() int {
	n := max(nearest(w.q*w.gussetLength()), 1+gussetLeadOut, w.worked.in(stitch.Gusset))
	if made := w.made(); len(made) > 0 && len(w.pins.IncreaseRounds) == 0 {
		n = max(n, made[len(made)-1]+gussetLeadOut)
	}
	return n
}

// made are the increase rounds that are knitted.
func (w *work) made() []int {
	if w.worked == nil {
		return nil
	}
	return w.worked.changed(stitch.Gusset, w.worked.Increases)
}

// onward is the first round in which an increase can still be made.
func (w *work) onward() int {
	first := 1 + w.worked.in(stitch.Gusset)
	if made := w.made(); len(made) > 0 {
		first = max(first, made[len(made)-1]+gussetGap)
	}
	return first
}

func (w *work) search() *search {
	p := &w.plan
	s := &search{
		g: w.g, step: w.req.Stitch.step(),
		palm:         p.palmTarget(),
		palmMeasured: w.req.Hand.Palm != 0 || len(w.req.Hand.Profile) > 0 || w.req.Ease.Palm != nil, // or felt
		thumb:        w.g * (p.Hand.Thumb.MM() + p.Ease.ThumbAdded),
		stitch:       w.req.Stitch,
		topRounds:    maxRounds, roundsAbove: maxRounds,
	}
	w.equip(s, w.pins)
	return s
}

// equip gives a search pins, and the rounds and the room that they leave.
func (w *work) equip(s *search, pins *Pins) {
	s.pins = pins
	s.n = pins.HandStitches.Or(w.freeHand)
	s.after = s.n
	if w.worked.joined() {
		s.after = w.req.Pins.HandStitches.Or(w.freeHand) // the count of what is knitted stays, that above it is free
	}
	s.made, s.most = w.increases(pins)
	rounds, at := w.thumbRounds(pins), max(1, w.worked.in(stitch.Thumb))
	s.maxCorners, s.closed, s.beforeEnd = corners(rounds-at+1), w.req.Kind.info().thumbClosed, rounds-at
	if !s.closed {
		s.beforeEnd -= max(1, nearest(w.q*w.len.thumbEdging))
	}
	if s.cornered = w.worked.in(stitch.Thumb) > 1 && w.worked.cornered(); s.cornered {
		s.maxCorners = maxDecreases
	}
	if w.req.Kind.info().topped {
		s.topRounds, s.roundsAbove = pins.TopRounds.Or(maxRounds), pins.RoundsAboveGusset.Or(maxRounds)
	}
}

// take writes what a search has chosen into the plan.
func (w *work) take(x choice, s *search) {
	p := &w.plan
	p.Gusset.Base, p.Gusset.Step, p.Gusset.Increases, p.Gusset.Kept = x.b, s.step, x.k, x.o
	p.Gusset.Stitches = x.b + s.step*x.k
	p.Bridge = Bridge{CastOn: x.c, HandAfter: p.Body.Stitches.N - x.b + x.o + x.c}
	p.Thumb.Held, p.Thumb.PickedUp, p.Thumb.Closed = x.held(s.step), x.p, s.closed
	p.Thumb.FirstRound, p.Thumb.Decreased = x.held(s.step)+x.p, x.d
	p.Thumb.Stitches = Count{N: x.t, Exact: s.thumb, Below: x.t - 2, Above: x.t + 2, Pinned: w.pins.ThumbStitches.On}
}

// profileTarget is the ideal count of the gusset after each round, from the
// hand's own profile, in 1/10 000 stitch:
//
//	T(r) = b + g(1 + e)·C(h_r) − N, kept within b … b + sK, h_r = r/q
//
// with the ease e of EaseAt. A base that sits above its place puts every round
// higher on the hand.
func (w *work) profileTarget(scratch []int64) ([]int64, error) {
	p := &w.plan
	girths, err := p.Hand.Girths()
	if err != nil {
		return nil, err
	}
	target := scratch[:0]
	low, high := float64(p.Gusset.Base), float64(p.Gusset.Stitches)
	for r := 1; r <= p.Gusset.Rounds.N; r++ {
		h := float64(r)/w.q + p.BaseAbove.MM()
		ease := p.EaseAt(h)
		t := low + w.g*(1+ease)*girths.At(h) - float64(p.Body.Stitches.N)
		target = append(target, int64(math.Round(min(max(t, low), high)*10_000)))
	}
	return target, nil
}

// EaseAt is the ease wanted at a height in mm above the base of the thumb:
// from the hand's ease at the base evenly to the gusset's half-way up, and on
// to the palm's where the thumb parts. By default that is one line to
// max(ease, 0).
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
