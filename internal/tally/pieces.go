package tally

import "thenar/internal/written"

// begins casts on a piece, or more stitches in a round that is not finished.
func (w *needles) begins(s *written.Statement) {
	n := s.Many.For(w.size)
	if n == written.None {
		return
	}
	if p := w.going; p != nil && (w.live || p.in == 0 && p.out > 0 && p.from.At.Line == s.At.Line) { // "Pick up 20 sts. Cast on 20 sts and join"
		w.going.out, w.going.on = w.going.out+n, w.going.on+n
		w.going.does(Run{Does: written.CastOn, Times: n, Out: 1})
		return
	}
	if w.live && w.known && w.n > 0 && w.round > 0 {
		w.going = w.begin()
		w.going.from = s
		w.going.out, w.going.on = n, n
		w.going.does(Run{Does: written.CastOn, Times: n, Out: 1})
		return
	}
	w.comesOff()
	if w.leaves(s); s.Name == provisional {
		w.cast = n
	}
	w.edges.CastOn += n
	w.round, w.past = 0, nil
	w.start(n, true, s)
	w.did(Step{Does: Casts, Line: s.At.Line, After: n, Runs: []Run{{Does: written.CastOn, Times: n, Out: 1}}})
	w.counts(s.Counts)
}

// onward works a part of a round, and begins the round there.
func (w *needles) onward(s *written.Statement) {
	n := s.Many.For(w.size)
	if !w.known || n < 0 {
		return
	}
	if n > w.n {
		w.tell(Finding{Kind: Short, At: s.At, To: s.To, Look: w.since, Found: w.n, Expected: n, Message: there(w.n) + " in the round, and this takes " + count(n) + "."})
		return
	}
	w.further(n)
	w.growing = -1
	w.did(Step{Does: Shifts, Line: s.At.Line, Before: w.n, After: w.n, Runs: []Run{{Does: written.Leave, Times: n, In: 1, Out: 1}}})
}

// finish binds off or draws up what is on the needles.
func (w *needles) finish(s *written.Statement) {
	if p := w.going; p != nil && p.out == p.at && p.failed == nil && s.Name == "graft" {
		w.going = nil // some are worked on, to where it ends
	}
	w.settle()
	n := -1
	if s.Many.Written() {
		n = s.Many.For(w.size)
	}
	if w.finishStretch(s, n) {
		return
	}
	if w.partial || w.apart { // a part of the stitches; the others go on
		w.partial, w.apart, w.known, w.unsure = false, false, false, true
		return
	}
	if !s.All && w.known && n < w.n {
		w.ended(s, n)
		w.n -= n
		w.edges.CastOff += max(0, n)
		return
	}
	w.closePlan()
	if !w.live && n < 0 && s.Name == "" {
		return // the yarn is fastened off
	}
	w.edges.Ends++
	if s.Name == "graft" && (!w.live || w.n == 0) {
		w.graft(s, n)
		return
	}
	if s.Name == "graft" {
		n = w.sides(s, n)
	}
	if !w.live {
		if n > 0 && !w.beside {
			w.tell(Finding{Kind: Miscounted, At: s.At, To: s.To, Found: 0, Expected: n, Message: "There is nothing on the needles to finish."})
		}
		return
	}
	if s.Name == "graft" && n > 0 && 2*n == w.n {
		n = w.n // so many on each of two needles
	}
	if n >= 0 && w.known && n != w.n && (w.other == nil || w.other.n != n) {
		w.tell(w.notSo(s.At, s.To, n))
	}
	if s.Name == "" {
		w.edges.CastOff += w.n
	}
	if w.last = w.n; w.other != nil && w.other.n == n {
		w.last = n
	} else if !w.known {
		w.last = -1
	}
	w.other = nil
	w.ended(s, w.last)
	w.empty()
	w.finished++
}

// empty leaves no stitch on the needles.
func (w *needles) empty() { w.live, w.n, w.known, w.markers = false, 0, true, nil }

// graft ends sets that wait opposite each other.
func (w *needles) graft(s *written.Statement, n int) {
	w.edges.Ends++
	for range 2 {
		at := w.find("gap", n)
		if at < 0 {
			w.tell(Finding{Kind: Forgotten, At: s.At, To: s.To, Message: noneWait})
			return
		}
		if h := w.drop(at); h.known && n >= 0 && h.n != n {
			w.tell(Finding{Kind: Miscounted, At: s.At, To: s.To, Found: h.n, Expected: n, Message: stitches(h.n, "waits", "wait") + ", not " + count(n) + "."})
		} else {
			w.did(Step{Does: Ends, Line: s.At.Line, Runs: []Run{h.taken(h.n)}})
		}
	}
}

// sides returns how many stitches on the needles are grafted, where so many are told of the one
// side: those of both, or of the one if the other waits.
func (w *needles) sides(s *written.Statement, n int) int {
	if len(s.Items) < 2 || n < 0 {
		return n
	}
	other := s.Items[1].Times.For(w.size)
	if at := w.find("", other); w.known && w.n == n && at >= 0 && w.held[at].n == other {
		h := w.drop(at)
		w.did(Step{Does: Ends, Line: s.At.Line, Runs: []Run{h.taken(other)}})
		return n
	}
	return n + max(0, other)
}

// over tells what comes to no end.
func (w *needles) over() {
	w.settle()
	w.comesOff()
	w.closeSection()
	if w.live && w.n > 0 && w.known {
		w.last = w.n
	}
	for _, h := range w.held {
		if h.maybe || w.beside && (h.less || w.dropped[h.n]) {
			continue // another piece that is told elsewhere takes them up
		}
		n := stitches(h.n, "was", "were")
		if !h.known {
			n = "Stitches were"
		}
		w.tell(Finding{Kind: Forgotten, At: h.at, To: h.to, Found: h.n, Message: n + " put aside here and never taken up again."})
	}
	if w.live && w.known && w.n > 0 && len(w.rounds) > 0 && w.finished > 0 { // a text that finishes no piece is a part of a pattern
		w.tell(Finding{Kind: Forgotten, At: w.began, To: w.began, Found: w.n, Message: "At the end " + stitches(w.n, "is", "are") + " still on the needles."})
	}
}
