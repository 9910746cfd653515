package mitt

import "math"

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
	c := Count{N: n, Exact: w.q * w.plan.Hand.GussetLength.MM(), Below: n - 1, Above: n + 1}
	c.pin(w.pins.GussetRounds)
	w.plan.Gusset.Rounds = c
}

func (w *work) freeGussetRounds() int {
	return max(nearest(w.q*w.plan.Hand.GussetLength.MM()), 1+gussetLeadOut)
}

func (w *work) search() *search {
	p := &w.plan
	s := &search{
		g: w.g, step: w.req.Stitch.step(),
		palm:         palmTarget(&p.Hand, p.Ease.Hand),
		palmMeasured: w.req.Hand.Palm != 0 || len(w.req.Hand.Profile) > 0,
		thumb:        w.g * (p.Hand.Thumb.MM() + p.Ease.ThumbAdded),
		stitch:       w.req.Stitch,
		topRounds:    mostRounds, roundsAbove: mostRounds,
	}
	w.equip(s, w.pins)
	return s
}

// equip gives a search pins, and the rounds and the room that they leave.
func (w *work) equip(s *search, pins *Pins) {
	s.pins = pins
	s.n = pins.HandStitches.Or(w.freeHand)
	s.most = room(pins.GussetRounds.Or(w.freeGussetRounds()), pins.Rhythm)
	s.mostCorners = corners(pins.ThumbRounds.Or(w.thumbRoundsFree()))
	if w.req.Kind == Mitten {
		s.topRounds, s.roundsAbove = pins.TopRounds.Or(mostRounds), pins.RoundsAboveGusset.Or(mostRounds)
	}
}

// room is the number of increase rounds that fit into rounds 1 … R − 1, the
// first in round 1, at least two apart or in the pinned rhythm.
func room(rounds int, rhythm []int) int {
	last := rounds - gussetLeadOut
	if last < 1 {
		return 0
	}
	if len(rhythm) == 0 {
		return (last-1)/gussetGap + 1
	}
	n := 1
	for at := 1 + rhythm[0]; at <= last; n++ {
		at += rhythm[n%len(rhythm)]
	}
	return n
}

// take writes what a search has chosen into the plan.
func (w *work) take(x choice, s *search) {
	p := &w.plan
	p.Gusset.Base, p.Gusset.Step, p.Gusset.Increases, p.Gusset.Kept = x.b, s.step, x.k, x.o
	p.Gusset.Stitches = x.b + s.step*x.k
	p.Bridge = Bridge{CastOn: x.c, HandAfter: p.Body.Stitches.N - x.b + x.o + x.c}
	p.Thumb.Held, p.Thumb.PickedUp = x.held(s.step), x.p
	p.Thumb.FirstRound, p.Thumb.Decreased = x.held(s.step)+x.p, x.d
	p.Thumb.Stitches = Count{N: x.t, Exact: s.thumb, Below: x.t - 2, Above: x.t + 2, Pinned: w.pins.ThumbStitches.On}
}

// inRhythm lists k increase rounds from round 1 with the intervals in turn.
func inRhythm(k int, rhythm []int) []int {
	rounds := make([]int, 0, k)
	for at, i := 1, 0; i < k; i++ {
		rounds = append(rounds, at)
		at += rhythm[i%len(rhythm)]
	}
	return rounds
}

// profileTarget is the ideal count of the gusset after each round, from the
// hand's own profile, in 1/10 000 stitch:
//
//	T(r) = b + g(1 + e)·C(h_r) − N, kept within b … b + sK, h_r = r/q
//
// with e going evenly from the ease of the hand at the base to max(e, 0)
// where the thumb parts.
func (w *work) profileTarget(scratch []int64) ([]int64, error) {
	p := &w.plan
	girths, err := p.Hand.Girths()
	if err != nil {
		return nil, err
	}
	target := scratch[:0]
	low, high := float64(p.Gusset.Base), float64(p.Gusset.Stitches)
	for r := 1; r <= p.Gusset.Rounds.N; r++ {
		h := float64(r) / w.q
		ease := p.EaseAt(h)
		t := low + w.g*(1+ease)*girths.At(h) - float64(p.Body.Stitches.N)
		target = append(target, int64(math.Round(min(max(t, low), high)*10_000)))
	}
	return target, nil
}

// EaseAt is the ease wanted at a height in mm above the base of the gusset:
// from the hand's ease at the base evenly to max(ease, 0) where the thumb
// parts, since the mound must not be pinched.
func (p *Plan) EaseAt(height float64) float64 {
	share := 1.0
	if length := p.Hand.GussetLength.MM(); length > 0 {
		share = min(max(height/length, 0), 1)
	}
	return p.Ease.Hand + share*(max(p.Ease.Hand, 0)-p.Ease.Hand)
}
