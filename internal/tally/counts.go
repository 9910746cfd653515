package tally

import (
	"fmt"
	"slices"

	"thenar/internal/written"
)

// counts compares what is stated with what there is, and goes on with what is stated.
func (w *needles) counts(list []written.Count) {
	for _, c := range list {
		n := c.For(w.size)
		if n == written.None {
			continue
		}
		at, to := c.At, c.To
		if c.Change != 0 {
			w.changed(c, n)
			continue
		}
		if c.Inside {
			if have, ok := w.inside(); ok && have != n && !w.between(n) {
				w.tell(w.placed(Finding{Kind: Miscounted, At: at, To: to, Look: w.marked, Found: have, Expected: n, Message: fmt.Sprintf("Between the markers %s, not %d.", lower(there(have)), n)}))
			}
			continue
		}
		if !w.live && len(w.rounds) == 0 {
			w.live = true
			w.known = false
			w.began = at
		}
		if !w.known && (w.partial || w.apart) {
			continue // others wait beside them
		}
		if !w.known {
			w.n, w.known = n, true
			if at := len(w.rounds) - 1; at >= 0 && w.rounds[at].After < 0 {
				w.rounds[at].After = n
			}
			w.now(n)
			continue
		}
		if w.n == n {
			w.other = nil
			continue
		}
		if o := w.other; o != nil && o.n == n {
			w.n, w.markers, w.lost, w.other = o.n, o.markers, o.lost, nil
			continue
		}
		if w.stretches(n) {
			continue
		}
		if w.excused(n) {
			continue
		}
		if w.n != n {
			w.tell(w.placed(w.notSo(at, to, n)))
			w.since = at
			w.other = &fork{n: n, lost: true}
		}
	}
}

// notSo is that there is another count than is stated.
func (w *needles) notSo(at, to written.Spot, stated int) Finding {
	return Finding{Kind: Miscounted, At: at, To: to, Look: w.since, Found: w.n, Expected: stated, Message: fmt.Sprintf("%s, not %d.", there(w.n), stated)}
}

// changed compares how many stitches the last round made or took with what is stated.
func (w *needles) changed(c written.Count, n int) {
	if len(w.rounds) == 0 || !w.known {
		return
	}
	last := w.rounds[len(w.rounds)-1]
	if last.Before < 0 || last.After < 0 {
		return
	}
	if made := (last.After - last.Before) * c.Change; made != n {
		w.tell(w.placed(Finding{Kind: Miscounted, At: c.At, To: c.To, Found: made, Expected: n, Message: fmt.Sprintf("The round changes the count by %d, not %d.", made, n)}))
	}
}

// between reports whether so many stitches are between any two markers.
func (w *needles) between(n int) bool {
	if w.growing >= 0 || len(w.markers) == 2 {
		return false
	}
	from := 0
	for _, at := range append(slices.Clone(w.markers), w.n) {
		if at-from == n {
			return true
		}
		from = at
	}
	return false
}
