package tally

import (
	"slices"

	"thenar/internal/written"
)

// fork is another count that there may be: where a text states another than its stitches come
// to, one of the two is a slip, and what follows shows which.
type fork struct {
	n       int
	markers []int
	lost    bool
}

// tried works a round with the count that there is; if that doesn't come out, with the other
// that there may be. It returns how the round went.
func (w *needles) tried(s *written.Statement) (*pass, bool) {
	if w.other == nil {
		return w.attempt(s)
	}
	other, held := w.other, slices.Clone(w.held)
	p, ok := w.attempt(s)
	now := *w
	w.n, w.markers, w.lost, w.held, w.other = other.n, slices.Clone(other.markers), other.lost, held, nil
	q, fine := w.attempt(s)
	switch {
	case fine && !ok:
		return q, true // it was the other one
	case fine && w.unfinished(q, s) == nil:
		w.end(q)
		now.other = &fork{w.n, w.markers, w.lost}
	default:
		now.other = nil
	}
	rest := now.other
	*w = now
	w.other = rest
	return p, ok
}

// attempt works a round, reading what may be read in two ways as it comes out.
func (w *needles) attempt(s *written.Statement) (*pass, bool) {
	either := hasEither(s.Items)
	var before []held
	if either {
		before = slices.Clone(w.held)
	}
	p := w.begin()
	p.from = s
	if ok := w.items(p, s.Items) && w.whole(p, s) && p.failed == nil; ok || !either {
		return p, ok
	}
	after := w.held
	w.held = before
	q := w.begin()
	q.from, q.either = s, true
	if w.items(q, s.Items) && w.whole(q, s) && q.failed == nil && w.agrees(q, s) {
		return q, true
	}
	w.held = after
	return p, false
}
