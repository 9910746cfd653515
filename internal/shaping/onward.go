package shaping

// onward solves the rest of a problem of which some changes are worked. Their
// places are fixed, so their price is a plain sum; from the last of them on
// the choice is the solver's, with the interval before it known.
func (s *Solver) onward(p *Problem, sc scale, cost int64, dst []int) (Schedule, error) {
	worked := len(p.Changed)
	for i, round := range p.Changed {
		cost += s.added(p, sc, i+1, round)
		if i > 1 && round-p.Changed[i-1] != p.Changed[i-1]-p.Changed[i-2] {
			cost += sc.lambda
		}
	}
	dst = append(dst, p.Changed...)
	if worked < p.Changes() {
		s.prepare(p)
		s.backward(p, sc, worked)
		next, rest := s.resume(p, sc)
		cost += rest
		dst = s.follow(p, p.place(), next, dst)
	}
	return Schedule{Rounds: dst, Cost: sc.cost(cost)}, nil
}

// added is v_k of a change in a round.
func (s *Solver) added(p *Problem, sc scale, change, round int) int64 {
	counts := int64(2*p.From+(2*change-1)*p.Step) * sc.line
	return int64(p.Step) * sc.line * sc.unit * (counts*int64(p.Rounds+1-round) - 2*s.rest[round])
}

// resume chooses the excess after the last change that was worked, and gives
// what everything from there on costs. Equal costs go to the smaller excess.
func (s *Solver) resume(p *Problem, sc scale) (next int, cost int64) {
	worked, place, kept := len(p.Changed), p.place(), p.excess()
	next, cost = int(s.nearest[worked*s.width+place]), s.least[place]
	if worked == 1 {
		return next, cost
	}
	cost += sc.lambda
	if kept >= 0 && place+kept < s.width {
		if same := s.table[s.cell(p, kept, place)]; same < cost || (same == cost && kept < next) {
			return kept, same
		}
	}
	return next, cost
}

// cell is where the table has the change after one at a place, with an excess
// between them.
func (s *Solver) cell(p *Problem, excess, place int) int {
	if p.Quicken {
		return excess*s.width + place + excess
	}
	return excess*s.width + place
}
