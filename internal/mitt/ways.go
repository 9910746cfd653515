package mitt

import (
	"math"
	"slices"

	"thenar/internal/fault"
	"thenar/internal/shaping"
	"thenar/internal/stitch"
)

// Follow says what the increase rounds of a gusset follow.
type Follow string

// What the increases may follow: by default the hand's girths where they were
// measured, else a plain rhythm.
const (
	FollowDefault Follow = ""
	FollowProfile Follow = "profile"
	FollowRhythm  Follow = "rhythm"
)

// Way is one schedule of a gusset's increases, measured against the hand: by
// how much the fabric's girth is off what the hand's own shape asks for with
// its ease, on the mean of the rounds and at the worst of them, in mm.
type Way struct {
	Follows Follow
	Fixed   bool // in a rhythm, or a list of rounds, that the person fixed
	Rounds  []int
	Cost    float64 // of the schedule that it solves, in stitches² with its rhythm's price
	Mean    float64
	Worst   float64
	Changes int // of the interval from one increase round to the next
}

// DefaultLambda is the price of a changed rhythm in stitches², where the
// person names none, and MaxLambda the most that may be named (common
// practice, no source): 0 follows the hand as closely as it goes, from some
// hundred on the rhythm hardly ever changes.
const (
	DefaultLambda = 8.0
	MaxLambda     = 1000.0
)

// ways schedules the gusset along the hand's girths and in a plain rhythm, and
// takes the one that was asked for. The other stays beside it, where the
// girths were measured, so that the person sees what each costs.
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

// scheduled reports whether the increase rounds are fixed, as a list or by their
// rhythm.
func (p *Pins) scheduled() bool { return len(p.Rhythm)+len(p.IncreaseRounds) > 0 }

// boundsThumb reports whether a number is fixed that may keep the thumb's count
// from the nearest one, whatever room the gusset's rounds have.
func (p *Pins) boundsThumb() bool {
	return p.scheduled() || slices.ContainsFunc([]Pin{
		p.FirstIncrease, p.GussetBase, p.Increases, p.KeptOnHand, p.Held, p.Bridge, p.PickedUp, p.ThumbDecreases,
		p.ThumbRounds, p.TopRounds,
	}, func(pin Pin) bool { return pin.On })
}

// problem is what the gusset's schedule solves in a plain rhythm: its round 1
// is the first increase round, unless another is fixed, or rounds are knitted
// already.
func (d *draft) problem() shaping.Problem {
	g := &d.plan.Gusset
	p := shaping.Problem{
		From: g.Base, To: g.Stitches, Step: g.Step, Rounds: g.Rounds.N,
		Gap: gussetGap, LeadOut: gussetLeadOut, Lambda: d.lambda(), First: d.pins.FirstIncrease.Or(1),
		Worked: d.progress.in(stitch.Gusset), Changed: d.made(),
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

// lambda is the price of a changed rhythm in thousandths.
func (d *draft) lambda() int64 {
	if l := d.req.Lambda; l != nil {
		return int64(math.Round(*l * 1000))
	}
	return DefaultLambda * 1000
}

// way solves one schedule. Along the hand's girths the first increase round is
// free too, unless it is fixed.
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

// fixedWay is the way that the person fixed.
func (d *draft) fixedWay(shape []int64) (Way, error) {
	rounds := d.pins.IncreaseRounds
	if len(rounds) == 0 {
		rounds = d.inRhythm(d.plan.Gusset.Increases, d.pins)
	}
	cost, err := shaping.CostOf(d.problem(), rounds)
	return d.against(Way{Follows: FollowRhythm, Fixed: true, Rounds: rounds, Cost: cost.Float()}, shape), err
}

// against measures a way against the shape that the hand asks for.
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
