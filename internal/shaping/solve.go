package shaping

// Schedule is the rounds of the changes and their cost.
type Schedule struct {
	Rounds []int
	Cost   Cost
}

// Solver finds schedules and reuses its memory from one problem to the next. Its
// zero value is ready to use; it is not safe for concurrent use.
//
// If every change is as early as allowed, change k stands in slot
// first + (k−1)·gap; unless Only leaves out every second round, slots are rounds.
// The place of a change is the number of slots by which it stands later than that.
// The excess of an interval is its length minus the gap. So a place is the sum of
// the excesses before it.
type Solver struct {
	rest        []int64  // Σ T(x) for x = r … R, scaled, by r
	adds        []int64  // v_k of the current change, by its place
	open        []int64  // least cost of all changes after the current one if the interval changes there, by its place
	least       []int64  // least cost of the current change and all after it, by the place of the change before
	table       []int64  // cost of the current change and all after it, by the excess before it and the place of the change before
	leastExcess []uint16 // excess after a change that attains least, by change and place
	kept        []uint64 // bits: whether the interval before a change is best repeated after it, by change, excess and place of the change before
	width       int      // W, the number of places

	layers []int    // under Quicken: index in chosen of each change
	chosen []uint16 // under Quicken: excess after a change, by change, excess before it and place
}

// Solve solves one problem; see Solver.Solve.
func Solve(p Problem) (Schedule, error) {
	var s Solver
	return s.Solve(&p, nil)
}

// Solve returns the schedule of least cost, among equal ones the
// lexicographically smallest list of rounds. It appends the rounds to dst[:0],
// so that nothing is allocated if dst is large enough. For a problem without a
// schedule it returns an *Impossible.
//
// The sum of squares splits into one term for each change. With c_k the count
// after k changes, change k in round r adds
//
//	v_k(r) = Σ_{x=r..R} ((c_k − T(x))² − (c_{k−1} − T(x))²) = Step · Σ_{x=r..R} (c_k + c_{k−1} − 2T(x))
//
// to the cost of the rounds without it. From the last change to the first, with
// s the place of change k, e the excess before it and W the number of places,
//
//	H(k, e, s) = v_k + min(H(k+1, e, s+e), M(k, s) + λ),  M(k, s) = min_e′ H(k+1, e′, s+e′)
//
// This dynamic programme takes K·W²/4 steps, since an interval can be repeated
// only where s + e < W. The cost of the schedule is that of no change,
// Σ (c_0 − T)², plus min_s (v_1 + M(1, s)). For Quicken see backwardFalling.
func (s *Solver) Solve(p *Problem, dst []int) (Schedule, error) {
	if err := p.check(); err != nil {
		return Schedule{}, err
	}
	sc, err := p.scale()
	if err != nil {
		return Schedule{}, err
	}
	cost := s.sumTargets(p, sc)
	k := p.Changes()
	if k == 0 {
		return Schedule{Rounds: dst[:0], Cost: sc.cost(cost)}, nil
	}
	if len(p.Changed) > 0 {
		return s.solveRest(p, sc, cost, dst[:0])
	}
	s.allocate(p)
	s.backward(p, sc, 1)
	s.price(p, sc, 1)
	place, added := s.chooseFirst(p.First != 0)
	dst = append(dst[:0], p.round(p.earliestFirst()+place))
	if k > 1 {
		dst = s.appendRest(p, place, int(s.leastExcess[s.width+place]), dst)
	}
	return Schedule{Rounds: dst, Cost: sc.cost(cost + added)}, nil
}

// backward goes from the last change down to the one after change. When it
// returns, table, least and leastExcess hold the values of that one.
func (s *Solver) backward(p *Problem, sc scale, change int) {
	k := p.Changes()
	if change >= k {
		return
	}
	if p.Quicken {
		s.backwardFalling(p, sc, change)
		return
	}
	s.price(p, sc, k)
	s.lastChange(k)
	for at := k - 1; at > change; at-- {
		s.price(p, sc, at)
		s.changeBefore(at, sc.lambda)
	}
}

// sumTargets fills rest and returns the cost of no change.
func (s *Solver) sumTargets(p *Problem, sc scale) (cost int64) {
	s.rest = grow(s.rest, p.Rounds+2)
	s.rest[p.Rounds+1] = 0
	from := int64(p.From) * sc.perStitch
	for r := p.Rounds; r >= 1; r-- {
		t := p.target(r, sc.perStitch)
		s.rest[r] = s.rest[r+1] + t
		cost += (from - t) * (from - t) * sc.factor
	}
	return cost
}

// allocate makes room for the changes and their places.
func (s *Solver) allocate(p *Problem) {
	k, width := p.Changes(), p.slack()+1
	s.width = width
	s.adds, s.open, s.least = grow(s.adds, width), grow(s.open, width), grow(s.least, width)
	s.leastExcess = grow(s.leastExcess, k*width)
	clear(s.least)
	if !p.Quicken {
		s.table = grow(s.table, pairedExcesses(width)*width)
		s.kept = grow(s.kept, s.wordIndex(k, 0))
	}
}

// pairedExcesses returns the number of excesses that fit twice into width
// places.
func pairedExcesses(width int) int { return (width + 1) / 2 }

func grow[T any](a []T, n int) []T {
	if cap(a) < n {
		return make([]T, n)
	}
	return a[:n]
}

// price fills adds with v_k of a change.
func (s *Solver) price(p *Problem, sc scale, change int) {
	counts := int64(2*p.From+(2*change-1)*p.Step) * sc.perStitch
	weight := int64(p.Step) * sc.perStitch * sc.factor
	first, stride := p.round(p.origin()+(change-1)*p.gap()), p.stride()
	for i := range s.adds {
		round := first + i*stride
		s.adds[i] = weight * (counts*int64(p.Rounds+1-round) - 2*s.rest[round])
	}
	if change == len(p.Changed)+1 {
		for i := 0; i < s.width && first+i*stride <= p.Worked; i++ {
			s.adds[i] = forbidden
		}
	}
}

// forbidden is the cost of a place in a round that is already worked: above any
// real cost, and small enough that adding one doesn't overflow.
const forbidden = maxProduct

// chooseFirst returns the place of the first change, and the cost of all
// changes: the least, among equal ones the earliest place. A fixed first change
// has place 0.
func (s *Solver) chooseFirst(fixed bool) (place int, added int64) {
	for i, v := range s.adds {
		if c := v + s.least[i]; i == 0 || (c < added && !fixed) {
			place, added = i, c
		}
	}
	return place, added
}

// excessAfter returns the chosen excess after a change that stands at a place
// with a known excess before it.
func (s *Solver) excessAfter(p *Problem, change, before, place int) int {
	if p.Quicken {
		return int(s.chosen[s.layers[change]+before*s.width+place])
	}
	from := place - before
	if place+before >= s.width || s.kept[s.wordIndex(change, before)+from/64]>>(from%64)&1 == 0 {
		return int(s.leastExcess[change*s.width+place])
	}
	return before
}

// appendRest appends the rounds of the remaining changes to dst. The last change
// in dst stands at a place, and next is the excess after it.
func (s *Solver) appendRest(p *Problem, place, next int, dst []int) []int {
	for k := p.Changes(); ; {
		place += next
		dst = append(dst, dst[len(dst)-1]+p.stride()*(p.gap()+next))
		if len(dst) == k {
			return dst
		}
		next = s.excessAfter(p, len(dst), next, place)
	}
}
