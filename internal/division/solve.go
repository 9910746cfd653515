package division

// search goes through the bridges and keeps the best that it has met.
type search struct {
	p       *Problem
	sharing sharing
	bounds  bounds
	step    int // between the h_i of a finger that are tried: 1, or 2 if it is settled which are odd

	totals span          // of Σ x_j
	widest [Fingers]span // of n_i, whatever the bridges are

	best  Division // without palm and back
	both  [Fingers]int
	found bool
}

// solve returns the best division, or false if nothing keeps to the pins.
func (p *Problem) solve() (Division, bool) {
	if !p.inRange() {
		return Division{}, false
	}
	s := search{p: p, bounds: p.bounds(), step: 1}
	s.sharing = sharing{p.Wanted, p.Wanted[0] + p.Wanted[1] + p.Wanted[2] + p.Wanted[3]}
	var low, high [Bridges]int
	for j, x := range s.bounds.bridge {
		low[j], high[j] = x.low, x.high
		s.totals.low += x.low
		s.totals.high += x.high
	}
	s.widest = s.bounds.ofFinger(low, high)
	s.walk()
	if !s.found {
		return Division{}, false
	}
	palm, back, ok := p.sides(s.both)
	if !ok {
		s.found = false
		s.byParity()
		if !s.found {
			return Division{}, false
		}
		palm, back, _ = p.sides(s.both)
	}
	s.best.Palm, s.best.Back = palm, back
	return s.best, true
}

// walk tries every sum of bridges, from the one on which comes nearest to all
// fingers together.
func (s *search) walk() {
	near := (int(s.sharing.sum/PerStitch) - s.p.Stitches) / 2
	near = min(max(near, s.totals.low), s.totals.high)
	s.sum(near)
	for away := 1; away <= s.totals.high-s.totals.low; away++ {
		s.sum(near + away)
		s.sum(near - away)
	}
}

// sum tries all bridges of one sum. All n_i together have N′ + 2 Σ x_j stitches. If
// that is e more or less than all wishes together, the squares add up to e²/4 at
// least, evenly shared. The least that whole stitches cost doesn't depend on the
// single bridges either, as long as no h_i leaves its bounds. So most sums, and most
// bridges of a sum, are seen to cost more than the best before anything is tried.
func (s *search) sum(total int) {
	if !s.totals.has(total) {
		return
	}
	stitches := s.p.Stitches + 2*total
	e := int64(stitches)*PerStitch - s.sharing.sum
	if s.beyond(Cost(e * e / Fingers)) {
		return
	}
	spans := s.widest
	n, least, ok := s.sharing.out(&spans, stitches, 1)
	if !ok || s.beyond(least) {
		return
	}
	first, second, third := s.bounds.bridge[0], s.bounds.bridge[1], s.bounds.bridge[2]
	for a := first.low; a <= first.high; a++ {
		for b := max(second.low, total-a-third.high); b <= min(second.high, total-a-third.low); b++ {
			x := [Bridges]int{a, b, total - a - b}
			if uneven := unequal(x); !s.beyond(least + uneven) {
				s.try(x, n, least, uneven)
			}
		}
	}
}

// beyond reports whether a cost is above that of the best that is known.
func (s *search) beyond(cost Cost) bool { return s.found && cost > s.best.Cost }

// try shares the stitches out beside bridges, and keeps the division if it is the
// best. What is best for the sum of the bridges is best for them, too, if they allow
// it.
func (s *search) try(x [Bridges]int, n [Fingers]int, cost, uneven Cost) {
	spans := s.bounds.ofFinger(x, x)
	if s.step > 1 || !spans[0].has(n[0]) || !spans[1].has(n[1]) || !spans[2].has(n[2]) || !spans[3].has(n[3]) {
		var ok bool
		if n, cost, ok = s.shareBeside(x, &spans); !ok {
			return
		}
	}
	s.keep(Division{Bridge: x, Stitches: n, Cost: cost + uneven})
}

// shareBeside shares the stitches out. Every n_i is a whole number of steps from the
// least h_i with its bridges.
func (s *search) shareBeside(x [Bridges]int, spans *[Fingers]span) ([Fingers]int, Cost, bool) {
	total := s.p.Stitches
	for i, beside := range besides(x) {
		if over := (spans[i].low - s.bounds.both[i].low - beside) % s.step; over != 0 {
			spans[i].low += s.step - over
		}
		total += beside
	}
	return s.sharing.out(spans, total, s.step)
}

// keep keeps a division that comes before the best.
func (s *search) keep(d Division) {
	if s.found && !d.before(&s.best) {
		return
	}
	s.best, s.found = d, true
	for i, beside := range besides(d.Bridge) {
		s.both[i] = d.Stitches[i] - beside
	}
}

// before reports whether d is better than e in the order that Solve tells.
func (d *Division) before(e *Division) bool {
	if d.Cost != e.Cost {
		return d.Cost < e.Cost
	}
	if a, b := d.Bridge[0]+d.Bridge[1]+d.Bridge[2], e.Bridge[0]+e.Bridge[1]+e.Bridge[2]; a != b {
		return a < b
	}
	for i, n := range d.Stitches {
		if n != e.Stitches[i] {
			return n > e.Stitches[i]
		}
	}
	for j, x := range d.Bridge {
		if x != e.Bridge[j] {
			return x < e.Bridge[j]
		}
	}
	return false
}
