package mitt

import (
	"math"
	"slices"

	"thenar/internal/fault"
	"thenar/internal/shaping"
	"thenar/internal/stitch"
)

// Follow is what the increase rounds of a gusset follow.
type Follow string

// What the increases may follow. The default is the hand's girths if they were
// measured, else a plain rhythm.
const (
	FollowDefault Follow = ""
	FollowProfile Follow = "profile"
	FollowRhythm  Follow = "rhythm"
)

// Way is one schedule of a gusset's increases, measured against the hand. Mean
// and Worst are how far the fabric's girth is from the hand's own with its ease,
// in mm, on average over the rounds and in the worst of them.
type Way struct {
	Follows Follow
	Fixed   bool // the person fixed its rhythm or its rounds
	Rounds  []int
	Cost    float64 // of the schedule, in stitches², the price of its rhythm included
	Mean    float64
	Worst   float64
	Changes int // how often the interval between increase rounds changes
}

// DefaultLambda is the price of a changed rhythm in stitches² if the person
// names none, and MaxLambda the highest that may be named (common practice, no
// source). At 0 the increases follow the hand as closely as they can; from about
// a hundred on the rhythm hardly ever changes.
const (
	DefaultLambda = 8.0
	MaxLambda     = 1000.0
)

// ways schedules the gusset and takes the schedule that was asked for. If the
// hand's girths were measured it keeps both, along the girths and in a plain
// rhythm, so that the person sees what each costs.
func (d *draft) ways(pl *Planner) error {
	g := &d.plan.Gusset
	shape, err := d.profileTarget(pl.target)
	if err != nil {
		return err
	}
	pl.target = shape
	measured := len(d.req.Hand.Profile) > 0
	follow := d.req.Follow
	if follow == FollowDefault {
		if follow = FollowRhythm; measured {
			follow = FollowProfile
		}
	}
	list := []Follow{follow}
	if measured {
		list = []Follow{FollowProfile, FollowRhythm}
	}
	for _, f := range list {
		way, err := d.way(pl, f, shape)
		if err != nil && d.pins.scheduled() {
			continue // a fixed list may stand where no schedule has room
		}
		if err != nil {
			return err
		}
		g.Ways = append(g.Ways, way)
		if f == follow {
			g.Way = way
		}
	}
	if d.pins.scheduled() {
		g.Way, err = d.fixedWay(shape)
		g.Ways = append(g.Ways, g.Way)
	}
	g.IncreaseRounds, g.Cost = g.Way.Rounds, g.Way.Cost
	return err
}

// scheduled reports whether the increase rounds are fixed, as a list or by a
// rhythm.
func (p *Pins) scheduled() bool { return len(p.Rhythm)+len(p.IncreaseRounds) > 0 }

// boundsThumb reports whether a fixed number may keep the thumb's count from the
// nearest one, even if the gusset has rounds enough.
func (p *Pins) boundsThumb() bool {
	return p.scheduled() || slices.ContainsFunc([]Pin{
		p.FirstIncrease, p.GussetBase, p.Increases, p.KeptOnHand, p.Held, p.Bridge, p.PickedUp, p.ThumbDecreases,
		p.ThumbRounds, p.TopRounds,
	}, func(pin Pin) bool { return pin.On })
}

// problem returns what the solver is asked for a plain rhythm. The first increase
// is in round 1, unless another round is fixed or rounds are knitted already.
func (d *draft) problem() shaping.Problem {
	g := &d.plan.Gusset
	p := shaping.Problem{
		From: g.Base, To: g.Stitches, Step: g.Step, Rounds: g.Rounds.N,
		Gap: gussetGap, LeadOut: gussetLeadOut, Only: d.req.Make.pace().only(), Lambda: d.lambda(), First: d.pins.FirstIncrease.Or(1),
		Worked: d.progress.in(stitch.Gusset), Changed: d.made(),
	}
	if k := d.progress; k != nil && k.Down {
		p.Worked = 0 // what is knitted lies above; see waysDown
		return p
	}
	if d.progress.past(stitch.Gusset) {
		p.Worked = p.Rounds
	}
	if p.Worked > 0 {
		p.First = 0
		if len(p.Changed) == 0 {
			p.First = d.pins.FirstIncrease.Or(0)
		}
	}
	return p
}

// lambda returns the price of a changed rhythm in thousandths of a stitch².
func (d *draft) lambda() int64 {
	if l := d.req.Lambda; l != nil {
		return int64(math.Round(*l * 1000))
	}
	return DefaultLambda * 1000
}

// way solves one schedule. If it follows the hand's girths, the first increase
// round is free too, unless it is fixed.
func (d *draft) way(pl *Planner, follow Follow, shape []int64) (Way, error) {
	problem := d.problem()
	if follow == FollowProfile {
		problem.Target = shape
		if !d.pins.FirstIncrease.On {
			problem.First = 0
		}
	}
	found, err := pl.solver.Solve(&problem, make([]int, 0, d.plan.Gusset.Increases))
	if err != nil {
		return Way{}, fault.Fields{{Path: "hand.gusset_length", Message: err.Error()}}
	}
	return d.against(Way{Follows: follow, Rounds: found.Rounds, Cost: found.Cost.Float()}, shape), nil
}

// fixedWay returns the schedule that the person fixed.
func (d *draft) fixedWay(shape []int64) (Way, error) {
	rounds := d.pins.IncreaseRounds
	if len(rounds) == 0 {
		rounds = d.inRhythm(d.plan.Gusset.Increases, d.pins)
	}
	cost, err := shaping.CostOf(d.problem(), rounds)
	return d.against(Way{Follows: FollowRhythm, Fixed: true, Rounds: rounds, Cost: cost.Float()}, shape), err
}

// against fills in how far a way is from shape, the hand's ideal count after each
// round in 1/10 000 stitch, and how often its interval changes.
func (d *draft) against(way Way, shape []int64) Way {
	g := &d.plan.Gusset
	count, done := float64(g.Base), 0
	for r, t := range shape {
		if done < len(way.Rounds) && way.Rounds[done] == r+1 {
			count += float64(g.Step)
			done++
		}
		off := math.Abs(count-float64(t)/10_000) / d.g
		way.Mean += off / float64(len(shape))
		way.Worst = max(way.Worst, off)
	}
	for i := 2; i < len(way.Rounds); i++ {
		if way.Rounds[i]-way.Rounds[i-1] != way.Rounds[i-1]-way.Rounds[i-2] {
			way.Changes++
		}
	}
	return way
}
