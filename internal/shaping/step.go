package shaping

import "math"

// last begins the programme: after the last change nothing more is added.
func (s *Solver) last(k int) {
	for e := range halves(s.width) {
		copy(s.table[e*s.width:(e+1)*s.width], s.adds[e:])
	}
	nearest := s.nearest[(k-1)*s.width:]
	best := s.width - 1
	for place := s.width - 1; place >= 0; place-- {
		if s.adds[place] <= s.adds[best] {
			best = place
		}
		s.least[place], nearest[place] = s.adds[best], uint16(best-place)
	}
}

// step goes one change towards the first. Places run along the inner loop;
// excesses climb, so that the smallest of equally cheap ones stays.
func (s *Solver) step(change int, lambda int64) {
	w := s.width
	for i, m := range s.least {
		s.open[i] = m + lambda
		s.least[i] = math.MaxInt64
	}
	here := s.nearest[change*w : (change+1)*w]
	before := s.nearest[(change-1)*w : change*w]
	for e := range halves(w) {
		n := w - 2*e
		row := s.table[e*w : (e+1)*w]
		keep := s.keep[s.word(change, e):]
		for at := 0; at < n; at += 64 {
			m := min(64, n-at)
			keep[at/64] = meet(uint16(e), row[at+e:][:m], s.open[at+e:][:m], s.adds[at+e:][:m],
				here[at+e:][:m], row[at:][:m], s.least[at:][:m], before[at:][:m])
		}
	}
	s.once(before)
}

// meet works out up to 64 places of one excess, and says in its bits where
// the interval is kept.
func meet(e uint16, same, open, adds []int64, near []uint16, row, least []int64, nearest []uint16) (kept uint64) {
	n := len(same)
	open, adds, near, row, least, nearest = open[:n], adds[:n], near[:n], row[:n], least[:n], nearest[:n]
	for i, h := range same {
		o := open[i]
		stays := uint64(0)
		if h < o || (h == o && e < near[i]) {
			stays = 1
		}
		kept |= stays << (i & 63)
		h = min(h, o) + adds[i]
		row[i] = h
		if h < least[i] {
			least[i], nearest[i] = h, e
		}
	}
	return kept
}

// word is where the bits of a change and an excess begin in keep.
func (s *Solver) word(change, e int) int {
	return (change*halves(s.width) + e) * ((s.width + 63) / 64)
}

// once finishes a step where an interval has no room a second time.
func (s *Solver) once(before []uint16) {
	w := s.width
	for i := range s.open {
		s.open[i] += s.adds[i]
	}
	for e := range halves(w) {
		copy(s.table[e*w+w-2*e:], s.open[w-e:])
	}
	at, best := w, w-1
	for place := w - 1; place >= 0; place-- {
		for at > (w+place+1)/2 {
			at--
			if s.open[at] <= s.open[best] {
				best = at
			}
		}
		if at < w && s.open[best] < s.least[place] {
			s.least[place], before[place] = s.open[best], uint16(best-place)
		}
	}
}
