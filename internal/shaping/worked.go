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
	if worked < p.Changes() {
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

// index returns the index in s.table of a change, by the place of the change
// before it and the excess between them.
func (s *Solver) index(p *Problem, excess, place int) int {
	if p.Quicken {
		return excess*s.width + place + excess
	}
	return excess*s.width + place
}
