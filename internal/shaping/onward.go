package shaping

// onward solves the rest of a problem of which some changes are worked. Their
// places are fixed, so their price is a plain sum; from the last of them on
// the choice is the solver's, with the interval before it known.
func (s *Solver) onward(p *Problem, sc scale, cost int64, dst []int) (Schedule, error) {
	worked := len(p.Changed)
	dst = append(dst, p.Changed...)
	s.backward(p, sc, worked)
	next, rest := 0, int64(0)
	if worked < p.Changes() {
		next, rest = s.resume(p, sc)
	}
	for i, round := range p.Changed {
		s.price(p, sc, i+1)
		cost += s.adds[round-p.first()-i*p.Gap]
		if i > 1 && round-p.Changed[i-1] != p.Changed[i-1]-p.Changed[i-2] {
			cost += sc.lambda
		}
	}
	if worked < p.Changes() {
		dst = s.follow(p, s.place(p), next, dst)
	}
	return Schedule{Rounds: dst, Cost: sc.cost(cost + rest)}, nil
}

// place is where the last change that was worked stands.
func (s *Solver) place(p *Problem) int {
	worked := len(p.Changed)
	return p.Changed[worked-1] - p.first() - (worked-1)*p.Gap
}

// resume chooses the excess after the last change that was worked, and gives
// what everything from there on costs. Equal costs go to the smaller excess.
func (s *Solver) resume(p *Problem, sc scale) (next int, cost int64) {
	worked, place := len(p.Changed), s.place(p)
	next, cost = int(s.nearest[worked*s.width+place]), s.least[place]
	if worked == 1 {
		return next, cost
	}
	cost += sc.lambda
	kept := p.Changed[worked-1] - p.Changed[worked-2] - p.Gap
	if place+kept < s.width {
		if same := s.table[kept*s.width+place]; same < cost || (same == cost && kept < next) {
			return kept, same
		}
	}
	return next, cost
}
