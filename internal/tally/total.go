package tally

import (
	"fmt"

	"thenar/internal/written"
)

// total compares how many rounds are said to be worked with those that are, where some were worked
// again: these, with those that were told once, or all of the section.
func (w *needles) total(s *written.Statement, told, again int) {
	n := s.Many.For(w.size)
	if !s.Many.Written() || n == written.None || n == again || n == told+again || n == w.round || n > told+again && w.unnumbered {
		return
	}
	w.tell(w.placed(Finding{Kind: Listed, At: s.At, To: s.To, Found: told + again, Expected: n, Message: fmt.Sprintf("This comes to %d rounds, not %d.", told+again, n)}))
}

// faced is a row of which it was told which side it is worked on.
type faced struct {
	n       int
	side    written.Side
	section string
}

// faces tells of rows that can't be on the sides that are told: each is on the other side than the
// one before.
func (w *needles) faces(s *written.Statement, from int) {
	if !s.Label.Row || s.Side == written.NoSide || from < 1 {
		return
	}
	last := w.faced
	w.faced = faced{from, s.Side, w.section}
	if last.side == written.NoSide || last.n >= from || last.section != w.section {
		return
	}
	same := s.Side == last.side
	if same == ((from-last.n)%2 == 0) {
		return
	}
	text := fmt.Sprintf("Rows %d and %d can't be on the same side.", last.n, from)
	if !same {
		text = fmt.Sprintf("Rows %d and %d must be on the same side.", last.n, from)
	}
	w.tell(Finding{Kind: Misnumbered, At: s.At, To: s.To, Look: w.line, Message: text})
}
