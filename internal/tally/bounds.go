package tally

import "thenar/internal/written"

// most is how often anything is repeated at most; nobody knits more.
const most = 5_000

// Bounds of the work on one text, far beyond what anybody knits: a step is an item that is
// worked, and a pattern in ten sizes takes some thousands; a round costs some more, so that
// its memory is bounded as well.
const (
	mostSteps    = 2_000_000
	roundSteps   = 40
	mostOnThem   = 100_000 // stitches on the needles
	mostMarkers  = 200
	mostHeld     = 500 // sets that wait
	mostFindings = 2_000
)

// tooMuch tells that a bound is reached.
const tooMuch = "All this is more than anybody knits: check it in parts."

// spends takes steps, and reports whether some are left.
func (w *needles) spends(p *pass, i *written.Item, steps int) bool {
	if w.report.steps += steps; w.report.steps <= mostSteps && p.out <= mostOnThem && len(p.new) <= mostMarkers && len(w.held) <= mostHeld {
		return true
	}
	if p.open = true; !w.report.spent { // it is told once
		w.report.spent = true
		p.fails(Unread, i, tooMuch)
	}
	return false
}

// goesOn reports whether a statement is still worked: over the bounds the text is left there,
// in every size.
func (w *needles) goesOn(s *written.Statement) bool {
	f := w.report
	f.steps++
	switch {
	case f.left:
	case len(f.list) >= mostFindings:
		f.left = true
		w.tell(Finding{Kind: Unread, At: s.At, To: s.To, Message: "There is more than can be told at a time: mend this first."})
	case f.steps > mostSteps || s.Kind == written.Excess:
		if f.left = true; !f.spent {
			f.spent = true
			w.tell(Finding{Kind: Unread, At: s.At, To: s.To, Message: tooMuch})
		}
	}
	w.unsure = w.unsure || f.left
	return !f.left
}
