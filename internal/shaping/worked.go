package shaping

// solveRest solves a problem with worked changes. Their rounds are fixed, so
// their costs are just summed; the changes above them are chosen as usual, with
// the interval before the last worked one known. cost is that of no change.
func (s *Solver) solveRest(p *Problem, sc scale, cost int64, dst []int) (Schedule, error) {
	worked := len(p.Changed)
	for i, round := range p.Changed {
		cost += s.costOf(p, sc, i+1, round)
		if i > 1 && round-p.Changed[i-1] != p.Changed[i-1]-p.Changed[i-2] {
			cost += sc.lambda
		}
	}
	dst = append(dst, p.Changed...)
	switch {
	case worked == p.Changes():
	case p.offBeat():
		s.allocate(p)
		s.backward(p, sc, worked+1)
		s.price(p, sc, worked+1)
		place, next, rest := s.chooseAcross(p, sc)
		cost += rest
		dst = append(dst, p.round(p.earliestNext()+place))
		if worked+1 < p.Changes() {
			dst = s.appendRest(p, place, next, dst)
		}
	default:
		s.allocate(p)
		s.backward(p, sc, worked)
		next, rest := s.chooseNext(p, sc)
		cost += rest
		dst = s.appendRest(p, p.workedPlace(), next, dst)
	}
	return Schedule{Rounds: dst, Cost: sc.cost(cost)}, nil
}

// costOf returns v_k of change k in a round (see Solve).
func (s *Solver) costOf(p *Problem, sc scale, change, round int) int64 {
	counts := int64(2*p.From+(2*change-1)*p.Step) * sc.perStitch
	return int64(p.Step) * sc.perStitch * sc.factor * (counts*int64(p.Rounds+1-round) - 2*s.rest[round])
}

// chooseNext returns the excess after the last worked change, and the cost of
// all changes above it. Among equal costs it chooses the smallest excess.
func (s *Solver) chooseNext(p *Problem, sc scale) (next int, cost int64) {
	worked, place, kept := len(p.Changed), p.workedPlace(), p.workedExcess()
	next, cost = int(s.leastExcess[worked*s.width+place]), s.least[place]
	if worked == 1 {
		return next, cost
	}
	cost += sc.lambda
	if kept >= 0 && place+kept < s.width {
		if same := s.table[s.index(p, kept, place)]; same < cost || (same == cost && kept < next) {
			return kept, same
		}
	}
	return next, cost
}

// chooseAcross chooses the first change after a worked one that stands in a round
// without a slot. The interval between the two is no whole number of slots, so no
// later interval can repeat it. It returns the place of the change, the excess after
// it, and the cost of all changes from there on: the least, among equal ones the
// earliest.
func (s *Solver) chooseAcross(p *Problem, sc scale) (place, next int, cost int64) {
	n := len(p.Changed)
	for i, v := range s.adds {
		interval := p.round(p.earliestNext()+i) - p.Changed[n-1]
		after, c := s.across(p, n+1, i, interval)
		if c += v; n > 1 && interval != p.lastInterval() {
			c += sc.lambda
		}
		if i == 0 || c < cost {
			place, next, cost = i, after, c
		}
	}
	if n+1 < p.Changes() {
		cost += sc.lambda // the interval after it is another one
	}
	return place, next, cost
}

// across returns the excess after a change at a place, and the cost of all changes
// after it. Under Quicken no interval may be longer than the one before the change.
func (s *Solver) across(p *Problem, change, place, interval int) (next int, cost int64) {
	switch {
	case change == p.Changes():
		return 0, 0
	case !p.Quicken:
		return int(s.leastExcess[change*s.width+place]), s.least[place]
	}
	for e := 0; e <= interval/p.stride()-p.gap() && place+e < s.width; e++ {
		if c := s.table[s.index(p, e, place)]; e == 0 || c < cost {
			next, cost = e, c
		}
	}
	return next, cost
}

// index returns the index in s.table of a change, by the place of the change
// before it and the excess between them.
func (s *Solver) index(p *Problem, excess, place int) int {
	if p.Quicken {
		return excess*s.width + place + excess
	}
	return excess*s.width + place
}
