package tally

import (
	"slices"

	"thenar/internal/written"
)

// A round is worked loosely where it isn't known where in it something is: after the work was
// turned within a row, or where markers were lost. Its stitches aren't compared with those there
// are, but how it changes their count still is: what is made less what is taken.

// turnLoosely turns the work where nobody knows.
func (p *pass) turnLoosely() { p.turned = p.loose && !p.open }

// loosens reports whether something is worked to where nobody knows.
func (w *needles) loosens(p *pass, i *written.Item) bool {
	if i.Reach == written.ToMarker && w.lost && p.next >= len(p.old) || i.Reach == written.ToTheGap && p.stretch == nil || i.Reach == written.ToNeedle && p.needle == 0 {
		p.loose = true
	}
	if p.loose && i.Reach == written.ToEnd && !i.Before.Written() {
		p.turned = false
	}
	return p.loose
}

// onNeedles works what is told for each of several needles: they share the round. It reports
// whether that could be done.
func (w *needles) onNeedles(p *pass, i *written.Item, times int) bool {
	if p.open || p.loose || times < 1 || !slices.ContainsFunc(i.Items, func(i written.Item) bool { return i.Reach == written.ToNeedle }) {
		return false
	}
	share := (p.in - p.at) / times
	if share*times != p.in-p.at {
		p.loose = true
		return false
	}
	for range times {
		p.needle = p.at + share
		if !w.items(p, i.Items) {
			return true
		}
	}
	return true
}

// looseFill works what takes so many and makes so many over and over: if it keeps the count,
// nothing is lost.
func (w *needles) looseFill(p *pass, in, out int) bool {
	if in != out || in == 0 {
		p.open = true
	}
	return true
}

// loosely takes over the count of a round, and no markers.
func (w *needles) loosely(p *pass) {
	w.lost = w.lost || len(w.markers) > 0
	w.n, w.known, w.markers, w.growing = p.in+p.out-p.at, true, nil, -1
}

// made returns how many stitches a list makes, or -1 if that depends on where it is worked.
func made(list []written.Item, size int) (n int) {
	for _, i := range list {
		times := 1
		if i.Times.Written() {
			times = max(0, i.Times.For(size))
		}
		switch {
		case i.Some, i.Reach != written.NoReach, i.Does == written.Hold, i.Does == written.Unread:
			return -1
		case i.Does == written.Together:
			one := made(i.Items, size)
			if one < 0 {
				return -1
			}
			n += times * one
		default:
			n += times * i.Out
		}
	}
	return n
}

// excused takes over a stated count that isn't what there is, where that can't be told: stitches
// wait beside those that are counted, or a chart changed them.
func (w *needles) excused(n int) bool {
	switch {
	case w.partial || w.apart:
		w.known, w.unsure = false, true
	case w.charted:
		w.n, w.markers, w.lost = n, nil, true
	default:
		return false
	}
	w.charted = false
	return true
}

// part works so many of the stitches for now, where others wait; where none do, it is a count
// that is stated.
func (w *needles) part(s *written.Statement, n int) {
	if w.stretched(n) {
		return
	}
	if !w.partial && !w.apart && n > w.n {
		w.tell(w.placed(w.notSo(s.At, s.To, n)))
	}
	w.apart, w.known, w.unsure = true, false, true
}

// doubts says that something isn't counted: stitches may have been put aside there, and those that
// wait may be taken up.
func (w *needles) doubts() {
	w.beside = true
	for i := range w.held {
		w.held[i].maybe = true
	}
}

// elsewhere begins or ends a piece that is told at another place.
func (w *needles) elsewhere(s *written.Statement) {
	w.settle()
	w.unnumbered, w.unsure, w.ever = true, true, true
	w.doubts()
	if s.All {
		w.closePlan()
		w.empty()
		w.partial, w.apart, w.other = false, false, nil
		w.finished++
		return
	}
	if w.live && w.known && w.n > 0 && len(w.rounds) > 0 && w.rounds[len(w.rounds)-1].Section == w.section {
		w.known, w.lost = false, true // it goes on as there
		return
	}
	w.leaves(s)
	w.start(0, false, s)
}

// keeps keeps a round under its numbers, for whatever section repeats it.
func (w *needles) keeps(s *written.Statement) {
	if w.told == nil {
		w.told = map[int]*written.Statement{}
	}
	from, to := s.Label.From.For(w.size), s.Label.To.For(w.size)
	if len(s.Label.List) > 0 {
		for _, n := range s.Label.List {
			w.told[n.For(0)] = s
		}
		return
	}
	for n := from; n <= to && n-from < most && from > 0; n++ {
		w.told[n] = s
	}
}

// panel takes a pattern that is told for itself: it is worked on so many stitches as it says,
// beside the piece, to which the next title leads back.
func (w *needles) panel(s *written.Statement) {
	w.comesOff()
	if s.Name != "pattern" {
		return
	}
	now := *w
	n := s.Many.For(w.size)
	known := s.Many.Written() && n > 0
	w.start(max(0, n), known, s)
	w.beneath, w.trace, w.unsure, w.edges = &now, nil, now.unsure, now.edges
}

// comesOff leads back to the piece from a pattern that was told for itself.
func (w *needles) comesOff() {
	if w.beneath == nil {
		return
	}
	now := *w
	*w = *w.beneath
	w.section, w.sections, w.told, w.names = now.section, now.sections, now.told, now.names
	w.round, w.bodies, w.later, w.others, w.named, w.past = 0, nil, nil, nil, nil, nil
}

// bodies are the rounds of a section by their numbers.
type bodies struct {
	section string
	rounds  map[int]*written.Statement
}
