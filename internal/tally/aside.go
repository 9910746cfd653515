package tally

import (
	"strings"

	"thenar/internal/written"
)

// provisional is what stitches are called that are cast on so that they can be worked again.
const provisional = "provisional"

func abs(n int) int { return max(n, -n) }

// noneWait is told where stitches are wanted that wait, and there are none.
const noneWait = "There are no stitches that wait: they are worked already, or were never put aside."

// hold puts stitches aside; without a number those up to the next marker.
func (w *needles) hold(p *pass, i *written.Item, times int) bool {
	n := times
	if i.Reach == written.ToEnd && !p.open && !p.loose {
		n = max(0, p.in-p.at-i.Before.For(w.size))
	} else if !i.Times.Written() {
		if p.open || p.loose {
			p.open = true
			w.aside(p, held{name: i.Name, at: i.At, to: i.To})
			return true
		}
		p.passed(p.at)
		to := p.in
		if p.next < len(p.old) {
			to = p.old[p.next]
		}
		n = to - p.at
		if len(p.old) == 0 {
			p.open = true
			return p.fails(Unread, i, "How many are put aside isn't told, and no marker shows it.")
		}
	}
	if n == 0 {
		return true
	}
	out := p.out
	p.passed(p.at)
	if !w.eats(p, i, n, 1, 0) {
		return p.short(i, p.in-p.at, n)
	}
	p.out = out
	for at := range w.held {
		if h := &w.held[at]; h.of == p && h.name == i.Name && i.Name != "" {
			h.n += n // in two places of the round
			p.of(h)
			return true
		}
	}
	w.aside(p, held{name: i.Name, n: n, known: !p.open || i.Times.Written(), at: i.At, to: i.To, of: p})
	return true
}

// aside adds a set that waits.
func (w *needles) aside(p *pass, h held) {
	w.sets++
	h.id = w.sets
	w.held = append(w.held, h)
	p.of(&h)
}

// find returns which of the held sets is meant: by its name, else by its number, else the
// last one; -1 if there is none. What is on waste yarn that was knitted in is meant where it
// is taken out, and nowhere else.
func (w *needles) find(name string, n int) int {
	byName, byNumber, last := -1, -1, -1
	for at, h := range w.held {
		if h.waste != (name == wasteSet) {
			continue
		}
		last = at
		named := name != "" && h.name != "" && (strings.Contains(h.name, name) || strings.Contains(name, h.name))
		switch {
		case named && h.n == n:
			return at
		case named && byName < 0:
			byName = at
		case h.n == n && byNumber < 0:
			byNumber = at
		}
	}
	switch {
	case byName >= 0:
		return byName
	case byNumber >= 0:
		return byNumber
	}
	return last
}

// taken returns the set from which so many are knitted in: that of the stitches before them,
// else one of just so many, else the largest.
func (w *needles) taken(p *pass, n int) int {
	best := -1
	for at, h := range w.held {
		switch {
		case h.of == p || h.n < n:
		case h.into == p:
			return at
		case best < 0 || h.n == n && w.held[best].n != n || w.held[best].n != n && h.n > w.held[best].n:
			best = at
		}
	}
	return best
}

// drop takes a held set away.
func (w *needles) drop(at int) held {
	h := w.held[at]
	if w.dropped == nil {
		w.dropped = map[int]bool{}
	}
	w.dropped[h.n] = true
	w.held = append(append([]held{}, w.held[:at]...), w.held[at+1:]...)
	return h
}

// leave checks what stays aside.
func (w *needles) leave(p *pass, i *written.Item, n int) bool {
	at := w.find(i.Name, n)
	if fresh := p.idle && !p.open && !p.loose && p.in > 0; fresh && (i.Reach == written.ToEnd || p.in == n) && (at < 0 || w.held[at].n != n) {
		return w.hold(p, i, n) // "break yarn and leave the 14 sts on a holder"
	}
	if i.Reach == written.ToEnd {
		return true
	}
	if at < 0 {
		return p.fails(Forgotten, i, "There are no stitches that wait.")
	}
	if h := &w.held[at]; h.known && h.n != n {
		return p.fails(Miscounted, i, "%s there, not %d.", stitches(h.n, "waits", "wait"), n)
	} else if i.Name != "" {
		h.name = i.Name
	}
	return true
}

// takeIn knits held stitches into the round.
func (w *needles) takeIn(p *pass, i *written.Item, n int) bool {
	at := w.taken(p, n)
	if at < 0 {
		return p.fails(Forgotten, i, "So many stitches don't wait: they are worked already, or were never put aside.")
	}
	p.out += n
	h := &w.held[at]
	p.does(h.taken(n))
	p.closed = len(p.runs)
	if h.n -= n; h.n == 0 {
		w.drop(at)
		return true
	}
	h.less = true
	h.into = p
	return true
}

// back puts held stitches on the needles, as the beginning of a new piece.
func (w *needles) back(s *written.Statement) {
	if s.Unsure && w.live && (w.n > 0 || !w.known) {
		return // stitches that are worked are moved to other needles
	}
	if s.Name == provisional {
		if w.settle(); !w.live && w.cast > 0 {
			w.start(w.cast, true, s)
		}
		return
	}
	w.leaves(s)
	n := -1
	if s.Many.Written() {
		n = s.Many.For(w.size)
	}
	at := w.find(s.Name, n)
	if at < 0 {
		if !w.beside {
			w.tell(Finding{Kind: Forgotten, At: s.At, To: s.To, Message: noneWait})
		}
		w.start(max(0, n), n >= 0, s)
		w.did(Step{Does: Takes, Line: s.At.Line, After: n, Open: true})
		return
	}
	h := w.drop(at)
	all := h.n
	if n >= 0 && h.known && h.n != n {
		w.tell(Finding{Kind: Miscounted, At: s.At, To: s.To, Look: h.at, Found: h.n, Expected: n, Message: stitches(h.n, "waits", "wait") + " for this, not " + count(n) + "."})
	}
	known := h.known
	if !known && n >= 0 {
		all, known = n, true
	}
	var parts []int
	for _, i := range s.Items {
		parts = append(parts, i.Times.For(w.size))
	}
	switch {
	case h.waste && len(parts) == 1: // the loops above it come last
		above := h.n - 1
		if !s.All && abs(parts[0]-h.n) <= 1 {
			above = parts[0] // with half a loop at either end, or without
		}
		if parts[0] != above {
			w.tell(Finding{Kind: Miscounted, At: s.At, To: s.To, Found: h.n - 1, Expected: parts[0], Message: "Above the waste yarn there is one loop fewer than below: " + count(h.n-1) + ", not " + count(parts[0]) + "."})
		}
		all += above
	case len(parts) > 0 && s.Items[0].Does == written.TakeIn:
		taken := 0
		for _, part := range parts {
			taken += part
		}
		if taken > all {
			w.tell(Finding{Kind: Miscounted, At: s.At, To: s.To, Found: all, Expected: taken, Message: "Only " + stitches(all, "waits", "wait") + ", and " + count(taken) + " are taken up."})
		}
		h.n, h.less = max(0, all-taken), true
		w.held = append(w.held, h)
		all = taken
	}
	w.start(all, known, s)
	took := Step{Does: Takes, Line: s.At.Line, After: all, Runs: []Run{h.taken(all)}}
	if !known {
		took.After, took.Runs = -1, nil
	}
	w.did(took)
}

// start begins a piece with stitches on the needles.
func (w *needles) start(n int, known bool, s *written.Statement) {
	w.live, w.n, w.known, w.markers, w.growing, w.began = true, n, known, nil, -1, s.At
	w.ever, w.partial, w.apart, w.charted = true, false, false, false
	w.stretch, w.joined = nil, false
	w.edges.Ends++
	w.piece = len(w.rounds)
	w.lost, w.since, w.other = false, s.At, nil
	w.unsure = w.unsure || !known
}

// leaves tells of stitches that are still on the needles when another piece begins.
func (w *needles) leaves(s *written.Statement) {
	w.settle()
	if w.live && w.known && w.n > 0 {
		w.tell(Finding{Kind: Forgotten, At: s.At, To: s.To, Look: w.since, Found: w.n, Message: stitches(w.n, "is", "are") + " still on the needles when this begins."})
	}
	w.live, w.n, w.known = false, 0, true
}
