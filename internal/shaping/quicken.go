package shaping

// backwardFalling is backward under Quicken, where no interval may be longer than
// the one before it:
//
//	F(k, e, s) = v_k + min(F(k+1, e, s+e), λ + min_{e′<e} F(k+1, e′, s+e′))
//
// with s the place of change k and e the excess before it. The first interval
// after change is free. Since the excesses fall, s is at least (k − change)·e
// above the place of change, which leaves W²·(1 + ½ + ⅓ + …) cells in all.
//
// When it returns, table has F of the change after change, by excess and place;
// least and leastExcess have its least cost and the excess that attains it, by
// the place of change; chosen has the excess after each cell. Among equal costs
// the smallest excess is chosen.
func (s *Solver) backwardFalling(p *Problem, sc scale, change int) {
	k, w, begin := p.Changes(), s.width, p.workedPlace()
	s.allocateLayers(k, change, begin)
	s.price(p, sc, k)
	for e := 0; e <= s.maxExcess(k-change, begin); e++ {
		copy(s.table[e*w:(e+1)*w], s.adds)
	}
	for at := k - 1; at > change; at-- {
		s.price(p, sc, at)
		s.fallingChange(at, at-change, begin, sc.lambda)
	}
	nearest := s.leastExcess[change*w : (change+1)*w]
	for place := begin; place < w; place++ {
		best := 0
		for e := 1; place+e < w; e++ {
			if s.table[e*w+place+e] < s.table[best*w+place+best] {
				best = e
			}
		}
		s.least[place], nearest[place] = s.table[best*w+place+best], uint16(best)
	}
}

// maxExcess returns the largest excess that n intervals can all have, starting
// from a place.
func (s *Solver) maxExcess(n, begin int) int { return (s.width - 1 - begin) / n }

// allocateLayers makes room for the table and for the choices of all changes.
func (s *Solver) allocateLayers(k, change, begin int) {
	s.table = grow(s.table, (s.maxExcess(1, begin)+1)*s.width)
	s.layers = grow(s.layers, k)
	size := 0
	for at := change + 1; at < k; at++ {
		s.layers[at] = size
		size += (s.maxExcess(at-change, begin) + 1) * s.width
	}
	s.chosen = grow(s.chosen, size)
}

// fallingChange fills the table for the nth change after the one from which
// backwardFalling starts. It goes through the excesses upwards; open has the
// least cost with a smaller excess after the change.
func (s *Solver) fallingChange(change, n, begin int, lambda int64) {
	w := s.width
	shorter := s.leastExcess[change*w : (change+1)*w] // the excess that attains open
	upper := s.maxExcess(n+1, begin)
	for e := 0; e <= s.maxExcess(n, begin); e++ {
		row := s.table[e*w : (e+1)*w]
		chosen := s.chosen[s.layers[change]+e*w:][:w]
		for place := begin + n*e; place < w; place++ {
			cost, next := int64(0), e
			keeps := e <= upper && place+e < w
			if keeps {
				cost = row[place+e]
			}
			if e == 0 {
				s.open[place], shorter[place] = cost, 0
			} else {
				o, near := s.open[place]+lambda, shorter[place]
				if keeps && cost < s.open[place] {
					s.open[place], shorter[place] = cost, uint16(e)
				}
				if !keeps || o <= cost {
					cost, next = o, int(near)
				}
			}
			row[place], chosen[place] = cost+s.adds[place], uint16(next)
		}
	}
}
