package tally

import "thenar/internal/written"

// mark works what a round tells of markers.
func (w *needles) mark(p *pass, i *written.Item) bool {
	if p.open || p.loose || w.lost && i.Does != written.Place {
		return true
	}
	switch i.Does {
	case written.Place:
		if p.at == 0 && p.out == 0 && p.idle && !p.from.Label.Written() {
			return true // where the round begins
		}
		p.new = append(p.new, p.out)
		return true
	case written.Pass, written.Remove:
		p.passed(p.at - 1)
		if p.next < len(p.old) && p.old[p.next] == p.at {
			if i.Does == written.Pass {
				p.new = append(p.new, p.out)
			}
			p.next, p.reached = p.next+1, -1
			return true
		}
		if p.at == 0 && p.out == 0 || p.at == p.in { // the marker at the round's beginning
			p.past = p.at > 0
			return true
		}
		if len(p.new) > 0 && p.new[len(p.new)-1] == p.out {
			return true // it was passed with the stitch before it
		}
		if len(p.old) == 0 {
			return p.fails(Misplaced, i, "No marker was placed that could be here.")
		}
		if p.next < len(p.old) {
			return p.fails(Misplaced, i, "The marker is not here: %s further on.", stitches(p.old[p.next]-p.at, "", ""))
		}
		return p.fails(Misplaced, i, "There is no marker here any more.")
	}
	return true
}

// marks places markers between rounds, or takes them off.
func (w *needles) marks(s *written.Statement) {
	w.settle()
	at := 0
	w.marked = s.At
	for _, i := range s.Items {
		switch i.Does {
		case written.Remove:
			w.markers, w.lost = nil, false
		case written.Place:
			at += max(0, i.Times.For(w.size))
			if w.known && at > w.n {
				w.tell(Finding{Kind: Misplaced, At: s.At, To: s.To, Found: w.n, Expected: at, Message: "The marker goes after stitch " + count(at) + ", and " + lower(there(w.n)) + "."})
				continue
			}
			w.markers, w.lost = append(w.markers, at), false
			if w.growing = 0; len(w.markers) > 1 {
				w.growing = 1
			}
		}
	}
}
