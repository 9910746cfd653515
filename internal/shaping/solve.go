package shaping

// Schedule is the rounds of the changes, and what they cost.
type Schedule struct {
	Rounds []int
	Cost   Cost
}

// Solver finds schedules and keeps its scratch between them. The zero value
// is ready; one Solver serves one goroutine.
type Solver struct {
	targets []int64  // T(1) … T(R), scaled
	prefix  []int64  // Σ of squared deviations at one number of changes
	table   []int64  // cheapest from a change on, by interval, then place
	least   []int64  // cheapest from a change on, whatever the interval
	spare   []int64  // the same, of the next change
	nearest []uint16 // the interval that is cheapest by itself, by place
	choice  []uint16 // the next interval, by change, interval and place
}

// Solve finds the schedule of one problem.
func Solve(p Problem) (Schedule, error) {
	var s Solver
	return s.Solve(&p, nil)
}

// Solve finds the schedule of least cost; among equal ones the
// lexicographically smallest list of rounds. The rounds are appended to
// dst[:0], so that a caller with room in dst allocates nothing.
//
// It is a dynamic programme from the last change to the first. With every
// change as early as it may be, change k stands in round first + (k−1)·gap;
// it is moved by a slack s that never falls from one change to the next, and
// e is the slack added by an interval. Then
//
//	A(k, s, e) = cost of change k's rounds + min(A(k+1, s+e, e), min_e′ A(k+1, s+e, e′) + λ)
//
// takes K·W² steps for a slack of W rounds in all. The table is laid out by
// interval, so that the inner loop runs along the places.
func (s *Solver) Solve(p *Problem, dst []int) (Schedule, error) {
	if err := p.check(); err != nil {
		return Schedule{}, err
	}
	sc, err := p.scale()
	if err != nil {
		return Schedule{}, err
	}
	s.targets = grow(s.targets, p.Rounds)
	for r := range s.targets {
		s.targets[r] = p.target(r+1, sc.line)
	}
	den := sc.line * sc.line * sc.unit
	k := p.Changes()
	if k == 0 {
		s.sums(p, sc, 0)
		return Schedule{Rounds: dst[:0], Cost: Cost{s.prefix[p.Rounds], den}}, nil
	}
	width := p.slack() + 1
	s.prepare(k, width)
	s.tail(p, sc, k, width)
	for change := k - 1; change >= 1; change-- {
		s.sums(p, sc, change)
		s.step(p, sc, change, change == k-1, width)
	}
	s.sums(p, sc, 0)
	place, cost := s.begin(p, width)
	return Schedule{Rounds: s.follow(p, place, width, dst[:0]), Cost: Cost{cost, den}}, nil
}

func grow[T any](a []T, n int) []T {
	if cap(a) < n {
		return make([]T, n)
	}
	return a[:n]
}

func (s *Solver) prepare(k, width int) {
	s.table = grow(s.table, width*width)
	s.least, s.spare = grow(s.least, width), grow(s.spare, width)
	s.nearest = grow(s.nearest, width)
	s.choice = grow(s.choice, (k+1)*width*width)
}

// sums fills prefix[r] with the cost of rounds 1 … r at a number of changes.
func (s *Solver) sums(p *Problem, sc scale, changes int) {
	s.prefix = grow(s.prefix, p.Rounds+1)
	count := int64(p.From+p.Step*changes) * sc.line
	sum := int64(0)
	s.prefix[0] = 0
	for r, t := range s.targets {
		off := count - t
		sum += off * off * sc.unit
		s.prefix[r+1] = sum
	}
}

// tail is the cost from the last change to the end, by place.
func (s *Solver) tail(p *Problem, sc scale, k, width int) {
	s.sums(p, sc, k)
	before := p.first() + (k-1)*p.Gap - 1
	for place := range width {
		s.least[place] = s.prefix[p.Rounds] - s.prefix[before+place]
	}
}

// step goes one change towards the first: table, least and nearest are those
// of the next change, and become those of this one. For the interval after
// the next change, choice keeps what follows best on each interval before it.
func (s *Solver) step(p *Problem, sc scale, change int, last bool, width int) {
	from := s.prefix[p.first()+(change-1)*p.Gap-1:]
	to := from[p.Gap:]
	next := s.spare[:width]
	copy(next, s.least)
	choice := s.choice[(change+1)*width*width:]
	const endless = 1<<63 - 1
	for i := range s.least {
		s.least[i] = endless
	}
	for e := range width {
		row := s.table[e*width : (e+1)*width]
		chosen := choice[e*width : (e+1)*width]
		// Beyond half the slack the same interval has no room a second time.
		same := width - e
		if last {
			same = 0
		}
		lambda := sc.lambda
		if last {
			lambda = 0
		}
		for place := 0; place+e < width; place++ {
			at := place + e
			rest, follow := next[at]+lambda, s.nearest[at]
			if at < same {
				if v := row[at]; v < rest || (v == rest && uint16(e) < follow) {
					rest, follow = v, uint16(e)
				}
			}
			chosen[at] = follow
			row[place] = to[at] - from[place] + rest
		}
	}
	for e := range width {
		row := s.table[e*width : (e+1)*width]
		for place := 0; place+e < width; place++ {
			if row[place] < s.least[place] {
				s.least[place], s.nearest[place] = row[place], uint16(e)
			}
		}
	}
}

// begin chooses the place of the first change: the cheapest, the earliest
// among equal ones.
func (s *Solver) begin(p *Problem, width int) (place int, cost int64) {
	places := width
	if p.First != 0 {
		places = 1
	}
	for i := range places {
		c := s.prefix[p.first()-1+i] + s.least[i]
		if i == 0 || c < cost {
			place, cost = i, c
		}
	}
	return place, cost
}

// follow reads the rounds off the choices.
func (s *Solver) follow(p *Problem, place, width int, dst []int) []int {
	k := p.Changes()
	round := p.first() + place
	dst = append(dst, round)
	e := 0
	if k > 1 {
		e = int(s.nearest[place])
	}
	for change := 2; change <= k; change++ {
		place += e
		round += p.Gap + e
		dst = append(dst, round)
		if change < k {
			e = int(s.choice[change*width*width+e*width+place])
		}
	}
	return dst
}
