package tally

import (
	"slices"

	"thenar/internal/written"
)

// Rounds of shaping may be told with other numbers each time, "k7, k2tog", then "k6, k2tog", and
// go on "in this manner": what they make each time is known, though not how each is worked.

// made returns how many stitches rounds made when they were worked last; 0: nobody knows.
func (w *needles) made(list []*written.Statement) int {
	n, at := len(list), len(w.past)
	for at -= n; n > 0 && at >= 0; at-- {
		if slices.Equal(w.past[at:at+n], list) {
			break
		}
	}
	first := len(w.rounds) - len(w.past) + at
	if n == 0 || at < 0 || first < 0 || w.rounds[first].Before < 0 || w.rounds[first+n-1].After < 0 {
		return 0
	}
	return w.rounds[first+n-1].After - w.rounds[first].Before
}

// whole reports whether rounds end with "k to end", or do nothing else: they come out with
// other numbers, too, and are worked as they are.
func whole(list []*written.Statement) bool {
	return !slices.ContainsFunc(list, func(s *written.Statement) bool {
		if len(s.Items) == 0 {
			return true
		}
		end := s.Items[len(s.Items)-1]
		return end.Reach != written.ToEnd || end.Does != written.Stitch
	})
}

// variesAlready reports whether the last two rounds of shaping are the same stitches in other
// numbers.
func (w *needles) variesAlready() bool {
	last := w.shaping()
	if last == nil {
		return false
	}
	for i, s := range slices.Backward(w.past) {
		at := len(w.rounds) - len(w.past) + i
		if at < 0 || s == last || w.rounds[at].Before == w.rounds[at].After {
			continue
		}
		same, numbers := alike(s.Items, last.Items, w.size)
		return same && !numbers
	}
	return false
}

// alike reports whether items are the same stitches, and whether in the same numbers.
func alike(a, b []written.Item, size int) (same, numbers bool) {
	if len(a) != len(b) {
		return false, false
	}
	numbers = true
	for i := range a {
		x, y := &a[i], &b[i]
		within, equal := alike(x.Items, y.Items, size)
		if !within || x.Does != y.Does || x.Reach != y.Reach || x.Name != y.Name {
			return false, false
		}
		numbers = numbers && equal && x.Times.For(size) == y.Times.For(size) && x.Before.For(size) == y.Before.For(size)
	}
	return true, numbers
}

// varies takes over what rounds come to that are worked otherwise each time, by so many stitches.
func (w *needles) varies(s *written.Statement, by int) {
	w.unnumbered = true
	switch times := s.Repeat.Times.For(w.size); {
	case by == 0 || times < 0 && s.Repeat.Times.Written() || !s.Repeat.Times.Written() && len(s.Repeat.Until) == 0:
		w.known, w.unsure, w.lost = false, true, true
	case s.Repeat.Times.Written():
		if s.Repeat.InAll {
			times--
		}
		w.n, w.lost = w.n+by*times, true
		w.jumped(s)
	default:
		w.reckons(s, by)
		return
	}
	w.counts(s.Counts)
}
