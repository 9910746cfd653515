package tally

import (
	"fmt"

	"thenar/internal/written"
)

// grows works shaping that is told by how often it comes, or by what it comes to. Where it isn't
// told where in the round that is, only the count is taken over, and markers are lost.
func (w *needles) grows(s *written.Statement) {
	if w.settle(); s.Label.Written() {
		if from := s.Label.From.For(w.size); s.Label.From.Written() && !s.Label.Next {
			w.reach(s, from)
		}
	} else {
		w.unnumbered, w.unsure = true, true
	}
	by, ok := w.by(s)
	if !s.Repeat.Shaping && (!ok || by == 0) {
		return
	}
	w.since = s.At
	if s.Repeat.Shaping && (s.Repeat.Varied || w.variesAlready()) {
		if last := []*written.Statement{w.shaping()}; last[0] != nil && !whole(last) {
			w.varies(s, w.made(last))
			return
		}
	}
	if one := w.shapingRound(s, by); one != nil && w.known {
		w.paces(s, one)
		w.counts(s.Counts)
		return
	}
	w.reckons(s, by*w.places(s.Where))
}

// by returns how many stitches shaping makes at a time; below 0 it takes them.
func (w *needles) by(s *written.Statement) (n int, ok bool) {
	n = s.By.For(w.size)
	if !s.By.Written() || n == written.None {
		return 0, false
	}
	if s.Less {
		n = -n
	}
	return n, true
}

// places returns how often shaping comes in a round.
func (w *needles) places(at written.Where) int {
	switch at {
	case written.Edges, written.Inside, written.Outside:
		return 2
	case written.Around:
		return 2 * max(1, len(w.markers))
	}
	return 1
}

// reckons takes over what shaping comes to.
func (w *needles) reckons(s *written.Statement, by int) {
	w.lost = w.lost || len(w.markers) > 0
	times, told := 0, false
	for _, step := range s.Steps {
		times, told = times+max(0, step.Times.For(w.size)), true
	}
	switch {
	case len(s.Repeat.Until) > 0:
		to := s.Repeat.Until[0].For(w.size)
		if to == written.None || s.Repeat.Until[0].Inside || by == 0 {
			w.known = false
			break
		}
		if w.known && ((to-w.n)%by != 0 || (to-w.n)/by < 0) {
			w.tell(Finding{Kind: Miscounted, At: s.At, To: s.To, Found: w.n, Expected: to, Message: fmt.Sprintf("From %d stitches it never comes to %d, by %d at a time.", w.n, to, max(by, -by))})
		}
		w.n, w.known = to, true
	case told:
		w.n += by * times
	default:
		w.n += by
	}
	w.jumped(s)
	w.counts(s.Counts)
}

// jumped goes on from a count that no stitch was worked for; below 0 it is not known.
func (w *needles) jumped(s *written.Statement) {
	if w.n < 0 {
		w.n, w.known, w.unsure = 0, false, true
	}
	w.did(Step{Does: Jumps, Line: s.At.Line, Before: -1, After: w.n})
}

// shapingRound returns the round in which it is shaped, or nothing if it isn't told where.
func (w *needles) shapingRound(s *written.Statement, by int) *written.Statement {
	if s.Repeat.Shaping {
		return w.shaping()
	}
	items := w.shapingItems(s.Where, by)
	if items == nil {
		return nil
	}
	for i := range items {
		items[i].At, items[i].To = s.At, s.To
	}
	return &written.Statement{Kind: written.Rounds, At: s.At, To: s.To, Items: items, Label: written.Label{Next: true}}
}

func (w *needles) shapingItems(where written.Where, by int) []written.Item {
	to := func(r written.Reach, before int) written.Item {
		i := written.Item{Does: written.Stitch, Name: "k", In: 1, Out: 1, Reach: r, Even: true}
		if before > 0 {
			i.Before = written.Is(before)
		}
		return i
	}
	pass := written.Item{Does: written.Pass}
	inc := written.Item{Does: written.Stitch, Name: "M1", Out: 1, Times: written.Is(by)}
	edge, before := written.Item{Does: written.Stitch, Name: "inc", In: 1, Out: 1 + by}, 0
	if by < 0 {
		edge = written.Item{Does: written.Stitch, Name: "dec", In: 1 - by, Out: 1}
		inc, before = edge, 1-by
	}
	two := len(w.markers) == 2 && !w.lost
	switch {
	case where == written.Edges && w.rows:
		return []written.Item{edge, to(written.ToEnd, edge.In), edge}
	case where == written.AtStart:
		return []written.Item{edge, to(written.ToEnd, 0)}
	case where == written.AtEnd:
		return []written.Item{to(written.ToEnd, edge.In), edge}
	case where == written.Inside && two:
		return []written.Item{to(written.ToMarker, 0), pass, inc, to(written.ToMarker, before), inc, pass, to(written.ToEnd, 0)}
	case where == written.Outside && two:
		return []written.Item{to(written.ToMarker, before), inc, pass, to(written.ToMarker, 0), pass, inc, to(written.ToEnd, 0)}
	case where == written.Around && len(w.markers) > 0 && !w.lost:
		var items []written.Item
		for range w.markers {
			items = append(items, to(written.ToMarker, before), inc, pass, inc)
		}
		return append(items, to(written.ToEnd, 0))
	}
	return nil
}

// paces works shaping rounds with the plain ones between, as often as it is told.
func (w *needles) paces(s, one *written.Statement) {
	steps := s.Steps
	if len(steps) == 0 {
		steps = []written.Step{{Every: written.Is(1)}}
		if len(s.Repeat.Until) == 0 {
			steps[0].Times = written.Is(1)
		}
	}
	plain := w.plainRound(s)
	shapes := func(every int) bool {
		for range min(every-1, most) {
			if !w.one(plain) {
				return false
			}
		}
		return w.one(one)
	}
	for at, step := range steps {
		every, times := max(1, step.Every.For(w.size)), step.Times.For(w.size)
		if last := at == len(steps)-1; last && len(s.Repeat.Until) > 0 {
			w.untilThere(s.Repeat.Until[0], func() bool { return shapes(every) })
			return
		}
		if !step.Times.Written() {
			w.known, w.unsure = false, true // as often as it takes, and nobody says how often
			return
		}
		if at > 0 && !step.More && w.comesEarlier(s, times, at == len(steps)-1) {
			times--
		}
		for range min(max(0, times), most) {
			if !shapes(every) {
				return
			}
		}
	}
}

// comesEarlier reports whether "next and every 4th row 5 times" are five in all: what is stated
// shows it.
func (w *needles) comesEarlier(s *written.Statement, times int, last bool) bool {
	by, _ := w.by(s)
	by *= w.places(s.Where)
	for _, c := range s.Counts {
		if n := c.For(w.size); last && !c.Inside && c.Change == 0 && n != written.None {
			return n == w.n+(times-1)*by
		}
	}
	return false
}
