package mitt

import (
	"slices"

	"thenar/internal/stitch"
)

// From the fingertips a gauntlet grows from the wrist, and its edge comes last. Its rounds
// are those of the one from the cast-on read backwards, and so are its counts: the wrist's
// is knitted first and stays; what is free below is how far the edge gets.

// flareFromWrist plans a gauntlet below a wrist that is knitted, by the same solver. Once
// its edge is begun, what lies above stays as it is. Before that the rounds that are
// knitted stay, and those below reach the edge's count as nearly as they have room.
func (d *draft) flareFromWrist(pl *Planner, f *Flare) error {
	c, k := &d.plan.Cuff, d.progress
	wrist := k.wrist()
	c.Flare, c.Wrist = f, Count{N: wrist, Exact: c.Wrist.Exact, Below: wrist - 1, Above: wrist + 1, Knitted: true}
	c.CastOn = Count{N: k.CastOn, Exact: d.g * f.Girth, Pinned: d.req.Pins.CastOn.On, Knitted: k.edgedFlare()}
	if k.edgedFlare() {
		f.Edge, f.Step = c.Rounds-(k.CuffRounds-k.CuffEdge), k.CuffStep
		for _, r := range k.CuffDecreases {
			f.Rounds = append(f.Rounds, r-k.CuffEdge+f.Edge)
		}
	} else if err := d.widen(pl, f, wrist); err != nil {
		return err
	}
	c.CastOn.Below, c.CastOn.Above = c.CastOn.N-max(f.Step, 1), c.CastOn.N+max(f.Step, 1)
	if d.pins.CastOn.On {
		d.pins.CastOn.N = c.CastOn.N // which may have given way
	}
	return nil
}

// widen chooses how a gauntlet grows below its knitted rounds: its step, its edge's count
// and its rounds. If what is knitted is how the best schedule of the whole ends, that
// stays; else what lies below is solved by itself, with the same line.
func (d *draft) widen(pl *Planner, f *Flare, wrist int) error {
	c, k := &d.plan.Cuff, d.progress
	done := k.widened()
	w := funnel{
		rounds: c.Rounds - f.Edge, from: wrist, low: wrist, high: wrist, exact: float64(wrist), wide: d.g * f.Girth,
		turned: true, worked: k.pace().up(k.in(stitch.Cuff)), changed: done, pace: k.pace(),
	}
	if d.pins.CastOn.On {
		w.wide, w.likely = float64(d.pins.CastOn.N), k.CuffStep
	}
	if len(done) > 0 {
		w.step = k.CuffStep
	}
	w.choose(true)
	c.CastOn.N, f.Step = w.castOn, w.step
	if w.castOn == wrist {
		f.Step = 0
		return nil
	}
	p := w.problem()
	whole := *f
	if err := whole.schedule(pl, &p); err == nil && begins(w.pace.fromEnd(c.Rounds, whole.Rounds), done, w.worked) {
		*f = whole
		return nil
	}
	kept := w.pace.fromEnd(w.rounds, done)
	if left := p.Changes() - len(done); left > 0 {
		line := lineTarget(&p)
		p.To, p.Rounds, p.LeadOut = p.From+p.Step*left, w.highest(), 0
		p.Target = line[:p.Rounds]
		if err := f.schedule(pl, &p); err != nil {
			return err
		}
	}
	for _, r := range kept {
		f.Rounds = append(f.Rounds, r+f.Edge)
	}
	return nil
}

// highest returns the last round below what is knitted from the wrist that may be shaped.
func (w *funnel) highest() int {
	return highestBelow(w.rounds, max(w.worked, flareOut), w.pace.fromEnd(w.rounds, w.changed), flareGap)
}

// edgedFlare reports whether the edge of a gauntlet from the wrist is begun, above which
// all is knitted.
func (k *Progress) edgedFlare() bool {
	return k.flaresDown() && (k.past(stitch.Cuff) || k.in(stitch.Cuff) > k.CuffRounds-k.CuffEdge)
}

// flaresDown reports whether what is knitted from the fingertips has a gauntlet.
func (k *Progress) flaresDown() bool { return k != nil && k.Down && k.Cuff.info().flares }

// widened returns the rounds of a gauntlet from the wrist, counted as they are worked, in
// which increases are knitted.
func (k *Progress) widened() []int {
	if !k.flaresDown() {
		return nil
	}
	list := k.pace().fromEnd(k.CuffRounds, k.CuffDecreases)
	if k.past(stitch.Cuff) {
		return list
	}
	return slices.DeleteFunc(list, func(at int) bool { return at > k.in(stitch.Cuff) })
}

// narrowed returns the decrease rounds of a gauntlet that are knitted, counted from its
// edge; from the wrist all of them, once its count is knitted, which they tell.
func (k *Progress) narrowed() []int {
	switch {
	case !k.Down:
		return k.changed(stitch.Cuff, k.CuffDecreases)
	case k.cuffed():
		return k.CuffDecreases
	}
	return nil
}
