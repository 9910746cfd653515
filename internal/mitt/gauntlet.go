package mitt

import (
	"slices"

	"thenar/internal/fault"
	"thenar/internal/shaping"
	"thenar/internal/stitch"
	"thenar/internal/units"
)

// Flare is how a gauntlet narrows from its upper edge on the arm to the wrist.
type Flare struct {
	Girth     float64 // of what the upper edge goes round, in mm
	Edge      int     // the first rounds, in garter stitch
	EdgePerMM float64 // of them, over a mm that they reach up
	Rounds    []int   // those in which it is decreased, counted from the cast-on
	Step      int     // stitches taken off in each, spread evenly
	Cost      float64 // of the schedule, in stitches²
}

// What a gauntlet is by default (common practice, no source): its upper edge goes over
// a sleeve. It begins with two ridges of garter stitch, which lie flat and don't draw
// in as a rib would, and its decreases leave two plain rounds between them and at the
// wrist.
const (
	upperShare  = 1.4 // of the wrist
	gauntletTop = 4   // rounds of garter stitch
	flareGap    = 3
	flareOut    = 2
)

// upperGirth returns the girth of a gauntlet's upper edge, in mm.
func (r *Request) upperGirth(wrist units.Length) float64 {
	if r.Make.UpperGirth != 0 {
		return r.Make.UpperGirth.MM()
	}
	return upperShare * wrist.MM()
}

// flare plans a gauntlet: its cast-on, and the rounds that take it to the wrist's
// count, which should be from low to high. It leaves that count as it comes out.
//
// With a girth U at the upper edge, the cast-on is the count nearest to g·U that so
// many decreases of one size bring to the wrist's; a decrease round takes off the
// fewest stitches, 2, 4, 6 …, with which they have room, and the exact solver chooses
// their rounds. A fixed or knitted cast-on stays, and the wrist's count gives way; of a
// wrist that is knitted first, from the fingertips, it is the other way about.
func (d *draft) flare(pl *Planner, low, high int) error {
	c, k := &d.plan.Cuff, d.progress
	f := &Flare{Girth: d.req.upperGirth(d.plan.Hand.Wrist), Edge: d.flareEdge(c.Rounds), EdgePerMM: garterRows * d.g}
	if k != nil && k.Down && k.cuffed() {
		return d.flareFromWrist(pl, f)
	}
	w := funnel{
		rounds: c.Rounds - f.Edge, from: c.Wrist.N, fixed: d.pins.CastOn, low: low, high: high,
		exact: c.Wrist.Exact, wide: d.g * f.Girth, ended: k.past(stitch.Cuff), pace: d.req.Make.pace(),
	}
	if k.begun(stitch.Cuff) {
		w.worked = max(0, k.in(stitch.Cuff)-f.Edge)
		if w.ended {
			w.worked = w.rounds
		}
		for _, r := range k.changed(stitch.Cuff, k.CuffDecreases) {
			w.changed, w.step = append(w.changed, r-f.Edge), k.CuffStep
		}
	}
	w.choose(d.req.Pins.CuffRounds.On)
	c.Rounds = w.rounds + f.Edge // what is knitted may need more than its depth gives
	c.Flare, c.Wrist.N, f.Step = f, w.end, w.step
	c.CastOn = Count{
		N: w.castOn, Exact: w.wide, Below: w.castOn - max(w.step, 1), Above: w.castOn + max(w.step, 1),
		Pinned: d.pins.CastOn.On, Knitted: k != nil && !k.Down,
	}
	c.Wrist.Below, c.Wrist.Above, c.Wrist.Pinned = w.end-1, w.end+1, d.pins.CastOn.On
	if w.castOn == w.end {
		f.Step = 0
		return nil
	}
	p := w.problem()
	return f.schedule(pl, &p)
}

// schedule solves the rounds of a gauntlet's decreases, without its edge.
func (f *Flare) schedule(pl *Planner, p *shaping.Problem) error {
	found, err := pl.solver.Solve(p, make([]int, 0, p.Changes()))
	if err != nil {
		return fault.Fields{{Path: PathCuffDepth, Message: err.Error()}}
	}
	for _, r := range found.Rounds {
		f.Rounds = append(f.Rounds, r+f.Edge)
	}
	f.Cost = found.Cost.Float()
	return nil
}

// flareEdge returns the rounds of garter stitch that begin a gauntlet of so many
// rounds: as knitted, else whole ridges that leave room for a decrease.
func (d *draft) flareEdge(rounds int) int {
	k := d.progress
	if k.begun(stitch.Cuff) && !k.Down {
		return min(k.CuffEdge, rounds)
	}
	return max(0, min(gauntletTop, (rounds-1-flareOut)/2*2, (rounds-k.in(stitch.Cuff))/2*2))
}

// flareRounds returns the rounds of a gauntlet of a depth in mm, when none are fixed.
func (d *draft) flareRounds(depth float64) int {
	garter := garterRows * d.g
	if edge := gauntletTop / garter; depth > edge {
		return gauntletTop + nearestIn(d.q*(depth-edge), int(d.req.Make.pace()), 0)
	}
	return d.req.Make.pace().nearest(garter * depth)
}

// wrist returns the count of the cuff on the needles, or that with which it ended.
func (k *Progress) wrist() int {
	if k.Down {
		return k.CastOn - k.CuffStep*len(k.CuffDecreases)
	}
	return k.CastOn - k.CuffStep*len(k.changed(stitch.Cuff, k.CuffDecreases))
}

// funnel is the narrowing part of a gauntlet while its counts are chosen. Its rounds
// are counted without the edge.
type funnel struct {
	rounds, worked int
	changed        []int // the decrease rounds that are knitted
	turned         bool  // these are counted from the wrist, which is knitted first
	step, likely   int   // stitches taken off in a round, and the first that are tried; 0: still to be chosen
	ended          bool  // all of it is knitted
	pace           pace

	from        int     // the wrist's count as it should be
	low, high   int     // and as it may be
	exact, wide float64 // the exact counts at wrist and upper edge
	fixed       Pin     // the cast-on

	castOn, end int // what is chosen
}

// choose settles the cast-on, the wrist's count and the step. Rounds are added where
// they are free and knitted ones need more.
func (w *funnel) choose(fixedRounds bool) {
	if w.ended {
		w.castOn, w.end = w.fixed.N, w.fixed.N-w.step*len(w.changed)
		return
	}
	steps := []int{w.step}
	if w.step == 0 {
		steps = steps[:0]
		if w.likely > 0 {
			steps = append(steps, w.likely)
		}
		for s := 2; s <= max(2, w.high); s += 2 {
			steps = append(steps, s)
		}
	}
	best := -1
	for _, step := range steps {
		castOn, end := w.counts(step)
		k := (castOn-end)/step - len(w.changed)
		if !fixedRounds && len(w.changed) > 0 && k > 0 {
			w.rounds = w.pace.up(max(w.rounds, w.earliest()+w.gap()*(k-1)+flareOut))
		}
		fits := k <= w.room() && step <= end
		if !fits { // as near as it comes
			k = max(0, min(k, w.room()))
			if w.fixed.On {
				end = castOn - step*(len(w.changed)+k)
			} else {
				castOn = end + step*(len(w.changed)+k)
			}
			if step > end && k > 0 {
				continue
			}
		}
		off := abs(castOn-nearest(w.wide)) + abs(end-nearest(w.exact))
		if best < 0 || off < best || fits {
			best, w.castOn, w.end, w.step = off, castOn, end, step
		}
		if fits {
			return
		}
	}
}

// counts returns the cast-on and the wrist's count that decreases of one size join.
func (w *funnel) counts(step int) (castOn, end int) {
	if !w.fixed.On {
		return max(w.from+step*len(w.changed), nearestIn(w.wide, step, w.from%step)), w.from
	}
	now := w.fixed.N - step*len(w.changed)
	end = nearestIn(w.exact, step, now%step)
	for end > w.high && end-step >= 1 {
		end -= step
	}
	for end < w.low {
		end += step
	}
	return w.fixed.N, min(now, end)
}

// earliest returns the first round in which the next decrease may stand.
func (w *funnel) earliest() int {
	if w.turned {
		return w.pace.shaped(1)
	}
	if n := len(w.changed); n > 0 {
		return w.pace.shaped(max(w.worked+1, w.changed[n-1]+flareGap))
	}
	return w.pace.shaped(w.worked + 1)
}

// gap returns the least number of rounds from one decrease to the next.
func (w *funnel) gap() int { return w.pace.up(flareGap) }

// room returns how many decreases have room in the rounds to come.
func (w *funnel) room() int {
	highest := w.rounds - flareOut
	if w.turned {
		highest = w.highest()
	}
	return max(0, (highest-w.earliest()+w.gap())/w.gap())
}

// problem returns what the solver is asked.
func (w *funnel) problem() shaping.Problem {
	p := shaping.Problem{
		From: w.castOn, To: w.end, Step: -w.step, Rounds: w.rounds, Gap: flareGap, LeadOut: flareOut, Lambda: DefaultLambda * 1000,
		Only: w.pace.only(),
	}
	if !w.turned { // of one from the wrist what is knitted lies above; see widen
		p.Worked, p.Changed = w.worked, w.changed
	}
	return p
}

// fabric returns round r of a gauntlet over n stitches. Garter stitch is purled in odd
// rounds, from the hand in the second; of rows, all knitted, the even ones look so.
func (f *Flare) fabric(r, n int, m *Make) []stitch.Op {
	purled := (r%2 == 1) != m.Flat
	if m.Direction == Down && !m.Flat {
		purled = (f.Edge-r)%2 == 1
	}
	switch {
	case r <= f.Edge && purled:
		return times(nil, stitch.Purl, n)
	case slices.Contains(f.Rounds, r):
		return spread(times(nil, stitch.Knit, n), -f.Step)
	}
	return allKnit(n)
}

// flare returns how the cuff narrows; nothing for one that doesn't.
func (c *Cuff) flare() *Flare {
	if c.Flare == nil {
		return &Flare{}
	}
	return c.Flare
}
