package mitt

import (
	"slices"

	"thenar/internal/shaping"
)

// The rhythms that one text for several sizes may have: every 2nd to every 8th
// round (common practice, no source: beyond that nobody speaks of a rhythm).
const (
	closestRhythm = ShortestInterval
	widestRhythm  = 8
)

// Choice is one way to make gusset, bridge and thumb of a hand: the numbers that
// a reader meets in a text, whatever the hand's own counts are. One choice of
// them leaves one number of increases.
type Choice struct {
	Base, Bridge, PickedUp, Decreases int
	Every                             int // increases in every nth round; 0: in rounds of their own

	Increases int   // K
	Gusset    int   // G, the gusset's stitches after the last of them
	Rounds    []int // of the increases
	Cost      int64 // in 10⁻⁹ mm²

	of choice
}

// Choices returns every way to make gusset, bridge and thumb of a hand that keeps
// the hand's count and the thumb's as Plan has them, with its cost: that of the
// search, and that of the schedule,
//
//	Σ_{r=1..R} (S(r) − T(r))² / (g²R) in mm²
//
// over the gusset's R rounds with g stitches to a mm, so that sizes of several
// gauges can be added. The order is that of base, bridge, stitches picked up,
// decreases, and rhythm, rounds of their own first. Fixed numbers are kept. A
// mitt that has no gusset has no choices. What is knitted is not looked at:
// sizes are planned from the cast-on.
func (pl *Planner) Choices(req *Request) ([]Choice, error) {
	own := *req
	own.Progress = nil
	d := newDraft(&own)
	if err := d.check(); err != nil {
		return nil, d.inRows(err)
	}
	d.measure()
	if err := d.tubes(pl); err != nil {
		return nil, d.inRows(err)
	}
	if !d.plan.Parted() || d.plan.Construction() != ByGusset {
		return nil, nil
	}
	d.gussetRounds()
	s := d.search()
	best, ok := s.choose()
	if !ok {
		return nil, d.inRows(d.conflict(s))
	}
	return d.choices(pl, s, s.alike(best))
}

// choices prices the choices of a search in every rhythm.
func (d *draft) choices(pl *Planner, s *search, found []choice) ([]Choice, error) {
	var list []Choice
	priced := map[[2]int][]Choice{}
	for _, x := range found {
		ways, ok := priced[[2]int{x.b, x.k}]
		if !ok {
			d.take(x, s)
			if d.inset() == nil { // else the base is too wide for a thumb in the palm
				var err error
				if ways, err = d.rhythms(pl); err != nil {
					return nil, d.inRows(err)
				}
			}
			priced[[2]int{x.b, x.k}] = ways
		}
		for _, way := range ways {
			way.Base, way.Bridge, way.PickedUp, way.Decreases = x.b, x.c, x.p, x.d
			way.Increases, way.Gusset = x.k, x.b+s.step*x.k
			way.Cost += x.cost
			way.of = x
			list = append(list, way)
		}
	}
	if d.plan.Down() {
		return fromTip(list), nil
	}
	return list, nil
}

// fromTip returns the choices of a mitt that is begun at its tip. Nothing is picked up
// for its thumb, and its decreases are none: of those that a reader can't tell apart
// the plan takes the cheapest.
func fromTip(list []Choice) []Choice {
	var told []Choice
	for _, x := range list {
		x.PickedUp, x.Decreases = 0, 0
		same := func(y Choice) bool { return y.Base == x.Base && y.Bridge == x.Bridge && y.Every == x.Every }
		if at := slices.IndexFunc(told, same); at < 0 {
			told = append(told, x)
		} else if x.of.before(told[at].of) {
			told[at] = x
		}
	}
	return told
}

// alike lists the choices for the thumb of the best one, by the first rule of the
// bridge that gives any.
func (s *search) alike(best choice) []choice {
	s.every = []choice{}
	defer func() { s.every = nil }()
	for _, bridge := range []bridgeRule{handAgain, handAllowed, handAny} {
		if _, ok := s.cheapest(bridge, best.t); ok {
			break
		}
	}
	return s.every
}

// rhythms lists the schedules of a gusset that is taken into the plan, each with
// its own cost alone: of rounds of its own, and of every rhythm that has room. A
// fixed schedule is the only one.
func (d *draft) rhythms(pl *Planner) ([]Choice, error) {
	g := &d.plan.Gusset
	g.Ways = nil
	if err := d.ways(pl); err != nil {
		return nil, err
	}
	problem := d.problem()
	if g.Way.Follows == FollowProfile || len(d.req.Hand.Profile) > 0 {
		problem.Target = pl.target[:g.Rounds.N]
	}
	problem.Lambda = 0 // its price puts schedules of one size in order, not sizes
	price := func(rounds []int) (int64, error) {
		cost, err := shaping.CostOf(problem, rounds)
		return toNano(cost.Float() / (d.g * d.g * float64(g.Rounds.N))), err
	}
	cost, err := price(g.Way.Rounds)
	if err != nil {
		return nil, err
	}
	list := []Choice{{Rounds: g.Way.Rounds, Cost: cost}}
	if d.pins.scheduled() {
		if r := d.pins.Rhythm; len(r) == 1 && len(d.pins.IncreaseRounds) == 0 {
			list[0].Every = r[0]
		}
		return list, nil
	}
	for every := closestRhythm; every <= widestRhythm; every++ {
		if every%int(d.req.Make.pace()) != 0 {
			continue // it would increase on the wrong side
		}
		pins := *d.pins
		pins.Rhythm = []int{every}
		if _, most := d.increases(&pins); most < g.Increases {
			break
		}
		rounds := d.inRhythm(g.Increases, &pins)
		cost, err := price(rounds)
		if err != nil {
			return nil, err
		}
		list = append(list, Choice{Every: every, Rounds: rounds, Cost: cost})
	}
	return list, nil
}
