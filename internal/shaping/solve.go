package shaping

// Schedule is the rounds of the changes, and what they cost.
type Schedule struct {
	Rounds []int
	Cost   Cost
}

// Solver finds schedules and keeps its scratch between them. The zero value
// is ready; one Solver serves one goroutine.
//
// With every change as early as it may be, change k stands in round
// first + (k−1)·gap; its place is the rounds by which it stands later, and
// the excess of an interval is its length less the gap, so that a place is
// the sum of the excesses before it.
type Solver struct {
	rest    []int64  // Σ of T over rounds r … R, scaled, by r
	adds    []int64  // what the change adds, by its place
	open    []int64  // cheapest from the change on when the interval changes, by place
	least   []int64  // cheapest after the change before it, by the place of that
	table   []int64  // cheapest from the change on, by excess before it and place of the change before
	nearest []uint16 // excess after a change that is cheapest by itself, by change and place
	keep    []uint64 // bits: whether an interval is kept after a change, by change, excess and place of the change before
	width   int      // number of places

	layers []int    // under Quicken: where the choices of a change begin in chosen, by change
	chosen []uint16 // and the excess after a change, by layer, excess before it and place
}

// Solve finds the schedule of one problem; see Solver.Solve.
func Solve(p Problem) (Schedule, error) {
	var s Solver
	return s.Solve(&p, nil)
}

// Solve finds the schedule of least cost; among equal ones the
// lexicographically smallest list of rounds. The rounds are appended to
// dst[:0], so that a caller with room in dst allocates nothing. What can't be
// scheduled is refused with an *Impossible.
//
// The squares fall apart into one term for each change. With c_k the count
// after k changes, change k in round r adds
//
//	v_k(r) = Σ_{x=r..R} ((c_k − T(x))² − (c_{k−1} − T(x))²) = Step · Σ_{x=r..R} (c_k + c_{k−1} − 2T(x))
//
// to what the rounds cost without it. From the last change to the first, with
// s the place of change k, e the excess before it and W places in all,
//
//	H(k, e, s) = v_k + min(H(k+1, e, s+e), M(k, s) + λ),  M(k, s) = min_e′ H(k+1, e′, s+e′)
//
// which is a dynamic programme of K·W²/4 steps, since an interval has room a
// second time only where s + e < W. The cost is that of no change, Σ (c_0 − T)²,
// with min_s (v_1 + M(1, s)) added. Under Quicken see quicken.
func (s *Solver) Solve(p *Problem, dst []int) (Schedule, error) {
	if err := p.check(); err != nil {
		return Schedule{}, err
	}
	sc, err := p.scale()
	if err != nil {
		return Schedule{}, err
	}
	cost := s.sums(p, sc)
	k := p.Changes()
	if k == 0 {
		return Schedule{Rounds: dst[:0], Cost: sc.cost(cost)}, nil
	}
	if len(p.Changed) > 0 {
		return s.onward(p, sc, cost, dst[:0])
	}
	s.prepare(p)
	s.backward(p, sc, 1)
	s.price(p, sc, 1)
	place, added := s.begin(p.First != 0)
	dst = append(dst[:0], p.first()+place)
	if k > 1 {
		dst = s.follow(p, place, int(s.nearest[s.width+place]), dst)
	}
	return Schedule{Rounds: dst, Cost: sc.cost(cost + added)}, nil
}

// backward goes from the last change to the one after change, and leaves in
// table and least what it costs from there on.
func (s *Solver) backward(p *Problem, sc scale, change int) {
	k := p.Changes()
	if change >= k {
		return
	}
	if p.Quicken {
		s.quicken(p, sc, change)
		return
	}
	s.price(p, sc, k)
	s.last(k)
	for at := k - 1; at > change; at-- {
		s.price(p, sc, at)
		s.step(at, sc.lambda)
	}
}

// sums fills rest and gives the cost without a change.
func (s *Solver) sums(p *Problem, sc scale) (cost int64) {
	s.rest = grow(s.rest, p.Rounds+2)
	s.rest[p.Rounds+1] = 0
	from := int64(p.From) * sc.line
	for r := p.Rounds; r >= 1; r-- {
		t := p.target(r, sc.line)
		s.rest[r] = s.rest[r+1] + t
		cost += (from - t) * (from - t) * sc.unit
	}
	return cost
}

// prepare makes the scratch large enough for the changes and their places.
func (s *Solver) prepare(p *Problem) {
	k, width := p.Changes(), p.slack()+1
	s.width = width
	s.adds, s.open, s.least = grow(s.adds, width), grow(s.open, width), grow(s.least, width)
	s.nearest = grow(s.nearest, k*width)
	clear(s.least)
	if !p.Quicken {
		s.table = grow(s.table, halves(width)*width)
		s.keep = grow(s.keep, s.word(k, 0))
	}
}

// halves is how many excesses have room twice within width places.
func halves(width int) int { return (width + 1) / 2 }

func grow[T any](a []T, n int) []T {
	if cap(a) < n {
		return make([]T, n)
	}
	return a[:n]
}

// price fills adds with v_k of one change.
func (s *Solver) price(p *Problem, sc scale, change int) {
	counts := int64(2*p.From+(2*change-1)*p.Step) * sc.line
	weight := int64(p.Step) * sc.line * sc.unit
	first := p.origin() + (change-1)*p.Gap
	rest := s.rest[first : first+s.width]
	for i := range s.adds {
		s.adds[i] = weight * (counts*int64(p.Rounds+1-first-i) - 2*rest[i])
	}
	if change == len(p.Changed)+1 {
		for i := 0; i < s.width && first+i <= p.Worked; i++ {
			s.adds[i] = barred
		}
	}
}

// barred is the price of a place in a round that is worked already: more than
// any cost, and little enough that one of it may be added to any.
const barred = largest

// begin chooses the place of the first change: the cheapest, the earliest
// among equal ones.
func (s *Solver) begin(fixed bool) (place int, added int64) {
	for i, v := range s.adds {
		if c := v + s.least[i]; i == 0 || (c < added && !fixed) {
			place, added = i, c
		}
	}
	return place, added
}

// after reads the excess that follows a change off the choices: the change
// stands at a place, with an excess before it.
func (s *Solver) after(p *Problem, change, before, place int) int {
	if p.Quicken {
		return int(s.chosen[s.layers[change]+before*s.width+place])
	}
	from := place - before
	if place+before >= s.width || s.keep[s.word(change, before)+from/64]>>(from%64)&1 == 0 {
		return int(s.nearest[change*s.width+place])
	}
	return before
}

// follow appends the changes after those in dst, the last of which stands at a
// place; next is the excess that follows it.
func (s *Solver) follow(p *Problem, place, next int, dst []int) []int {
	for k := p.Changes(); ; {
		place += next
		dst = append(dst, dst[len(dst)-1]+p.Gap+next)
		if len(dst) == k {
			return dst
		}
		next = s.after(p, len(dst), next, place)
	}
}
