package shaping

// quicken goes from the last change to the one after change, as backward does,
// where no interval may be longer than the one before it:
//
//	F(k, e, s) = v_k + min(F(k+1, e, s+e), λ + min_{e′<e} F(k+1, e′, s+e′))
//
// with s the place of change k and e the excess before it. The first interval
// is free. The excesses fall, so s is at least k − change times e beyond the
// place where they begin, which leaves W²·(1 + ½ + ⅓ + …) cells in all. It
// leaves F of the change after in table, by excess and place, and the cheapest
// in least and nearest, by the place of change; chosen has the excess that
// follows a cell, the smallest of equally cheap ones.
func (s *Solver) quicken(p *Problem, sc scale, change int) {
	k, w, begin := p.Changes(), s.width, p.place()
	s.layout(k, change, begin)
	s.price(p, sc, k)
	for e := 0; e <= s.longest(k-change, begin); e++ {
		copy(s.table[e*w:(e+1)*w], s.adds)
	}
	for at := k - 1; at > change; at-- {
		s.price(p, sc, at)
		s.falling(at, at-change, begin, sc.lambda)
	}
	nearest := s.nearest[change*w : (change+1)*w]
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

// longest is the greatest excess before the nth change after the first
// interval's, when they begin at a place.
func (s *Solver) longest(n, begin int) int { return (s.width - 1 - begin) / n }

// layout makes room for the table and the choices of all changes.
func (s *Solver) layout(k, change, begin int) {
	s.table = grow(s.table, (s.longest(1, begin)+1)*s.width)
	s.layers = grow(s.layers, k)
	size := 0
	for at := change + 1; at < k; at++ {
		s.layers[at] = size
		size += (s.longest(at-change, begin) + 1) * s.width
	}
	s.chosen = grow(s.chosen, size)
}

// falling works out one change, the nth after the first interval's. Excesses
// climb, and open keeps the cheapest of those that are shorter.
func (s *Solver) falling(change, n, begin int, lambda int64) {
	w := s.width
	shorter := s.nearest[change*w : (change+1)*w] // the excess of open
	upper := s.longest(n+1, begin)
	for e := 0; e <= s.longest(n, begin); e++ {
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
