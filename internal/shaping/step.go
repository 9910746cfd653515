package shaping

import "math"

// lastChange fills the table for change k, the last one, after which nothing
// more is added.
func (s *Solver) lastChange(k int) {
	for e := range pairedExcesses(s.width) {
		copy(s.table[e*s.width:(e+1)*s.width], s.adds[e:])
	}
	nearest := s.leastExcess[(k-1)*s.width:]
	best := s.width - 1
	for place := s.width - 1; place >= 0; place-- {
		if s.adds[place] <= s.adds[best] {
			best = place
		}
		s.least[place], nearest[place] = s.adds[best], uint16(best-place)
	}
}

// changeBefore replaces the table of change + 1 by that of change. It goes through
// the excesses upwards, so that among equal costs the smallest one stays.
func (s *Solver) changeBefore(change int, lambda int64) {
	w := s.width
	for i, m := range s.least {
		s.open[i] = m + lambda
		s.least[i] = math.MaxInt64
	}
	here := s.leastExcess[change*w : (change+1)*w]
	before := s.leastExcess[(change-1)*w : change*w]
	for e := range pairedExcesses(w) {
		n := w - 2*e
		row := s.table[e*w : (e+1)*w]
		kept := s.kept[s.wordIndex(change, e):]
		for at := 0; at < n; at += 64 {
			m := min(64, n-at)
			kept[at/64] = repeatOrChange(uint16(e), row[at+e:][:m], s.open[at+e:][:m], s.adds[at+e:][:m],
				here[at+e:][:m], row[at:][:m], s.least[at:][:m], before[at:][:m])
		}
	}
	s.unrepeatable(before)
}

// repeatOrChange fills up to 64 cells of one excess e with the cheaper choice,
// repeating the interval or changing it, and returns the cells that repeat it as
// bits.
func repeatOrChange(e uint16, same, open, adds []int64, near []uint16, row, least []int64, nearest []uint16) (kept uint64) {
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

// wordIndex returns the index in kept of the bits of a change and an excess.
func (s *Solver) wordIndex(change, e int) int {
	return (change*pairedExcesses(s.width) + e) * ((s.width + 63) / 64)
}

// unrepeatable finishes changeBefore for the cells whose interval can't be
// repeated, since a second one would go beyond the last place.
func (s *Solver) unrepeatable(before []uint16) {
	w := s.width
	for i := range s.open {
		s.open[i] += s.adds[i]
	}
	for e := range pairedExcesses(w) {
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
