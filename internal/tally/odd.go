package tally

import (
	"fmt"

	"thenar/internal/written"
)

// odd tells of numbers that are not one for each size: which is for which can't be known. It
// reports whether that leaves open what follows.
func (w *needles) odd(s *written.Statement) bool {
	w.settle()
	w.tell(Finding{
		Kind: Listed, At: s.Odd.At, To: s.Odd.To, Found: s.Odd.N, Expected: s.Odd.Sizes,
		Message: fmt.Sprintf("%d numbers stand together here, and they are for %d sizes. What follows is open.", s.Odd.N, s.Odd.Sizes),
	})
	switch w.unsure = true; s.Kind {
	case written.Note, written.Says:
		return true
	case written.Begin:
		w.leaves(s)
		w.round, w.past = 0, nil
		w.start(0, false, s)
	}
	w.known, w.lost = false, true
	w.doubts()
	w.did(Step{Does: Jumps, Line: s.At.Line, Before: -1, After: -1, Open: true})
	return true
}
