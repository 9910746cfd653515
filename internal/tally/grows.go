package tally

import (
	"fmt"

	"thenar/internal/written"
)

// grows takes shaping that is told by how often it comes, or by what it comes to. Where in the
// round it is worked isn't told, so that markers are lost; and how many rounds it takes isn't
// counted.
func (w *needles) grows(s *written.Statement) {
	r := s.Repeat
	by := s.By.For(w.size)
	w.unnumbered, w.unsure = true, true
	if by == written.None || by == 0 {
		return
	}
	w.lost = len(w.markers) > 0
	w.since = s.At
	switch {
	case len(r.Until) > 0:
		to := r.Until[0].For(w.size)
		if to == written.None || r.Until[0].Inside {
			w.known = false
			break
		}
		if w.known && ((to-w.n)%by != 0 || (to-w.n)/by < 0) {
			w.tell(Finding{Kind: Miscounted, At: s.At, To: s.To, Found: w.n, Expected: to, Message: fmt.Sprintf("From %d stitches it never comes to %d, by %d at a time.", w.n, to, max(by, -by))})
		}
		w.n, w.known = to, true
	case r.Times.Written():
		w.n += by * max(0, r.Times.For(w.size))
	default:
		w.n += by
	}
	w.did(Step{Does: Jumps, Line: s.At.Line, Before: -1, After: w.n})
	w.counts(s.Counts)
}
