package tally

import (
	"fmt"
	"slices"

	"thenar/internal/written"
)

// plans keeps what shaping is said to come to, until the section is over.
func (w *needles) plans(s *written.Statement) {
	w.settle()
	if n := len(s.Schedule.List); n > 0 {
		w.report.steps += n
		if w.plan != nil {
			w.plan.lists = append(w.plan.lists, s)
		}
		return
	}
	if s.Schedule.Total.Written() {
		w.sketch = s
		return
	}
	sketch := w.sketch
	w.closeSection()
	w.sketch = sketch
	w.plan = &planned{s: s, at: len(w.shaped)}
	if from := s.Schedule.From.For(w.size); s.Schedule.From.Written() && from != written.None && w.known && !w.lost {
		w.plan.within = from != w.n
		if n, ok := w.inside(); w.plan.within && ok && n != from {
			w.tell(Finding{Kind: Listed, At: s.At, To: s.To, Look: w.marked, Found: n, Expected: from, Message: fmt.Sprintf("It begins with %d, not %d.", n, from)})
		}
	}
}

// closeSection ends a section.
func (w *needles) closeSection() {
	w.closePlan()
	w.closeTables()
	w.closeSketch()
	w.shaped = nil
}

// closePlan compares what shaping was said to come to with what was worked.
func (w *needles) closePlan() {
	plan, worked := w.plan, w.shaped
	w.plan = nil
	if plan == nil || !w.known {
		return
	}
	now := w.size
	defer func() { w.size = now }()
	w.size = max(0, placeOf(plan.s, w.index))
	got := worked[min(plan.at, len(worked)):]
	if list := plan.list(); len(list) > 0 { // another shaping may follow in the section
		for len(got) > len(list) && got[len(got)-1].round > list[len(list)-1] {
			got = got[:len(got)-1]
		}
	}
	if said := plan.s.Schedule.Rounds.For(w.size); said > 0 && len(got) > said && len(plan.lists) == 0 {
		if last := got[said-1]; last.n == plan.s.Schedule.To.For(w.size) || last.inside == plan.s.Schedule.To.For(w.size) {
			got = got[:said]
		}
	}
	at := Finding{Kind: Listed, At: plan.s.At, To: plan.s.To}
	if to := plan.s.Schedule.To.For(w.size); plan.s.Schedule.To.Written() && to != written.None && len(got) > 0 && !w.lost {
		at.Found, at.Expected = got[len(got)-1].n, to
		if plan.within {
			at.Found = got[len(got)-1].inside
		}
		if at.Found != to {
			at.Message = fmt.Sprintf("It comes to %d, not %d.", at.Found, to)
			w.tell(at)
		}
	}
	if said := plan.s.Schedule.Rounds.For(w.size); plan.s.Schedule.Rounds.Written() && said != written.None && said != len(got) {
		at.Found, at.Expected = len(got), said
		at.Message = fmt.Sprintf("%d rounds of shaping are worked, not %d.", len(got), said)
		w.tell(at)
		return
	}
	if list := plan.list(); len(list) > 0 && !slices.EqualFunc(list, got, func(n int, s shaped) bool { return n == s.round }) {
		l := plan.lists[0]
		w.tell(Finding{Kind: Listed, At: l.At, To: l.To, Found: len(got), Expected: len(list), Message: "These are not the rounds in which it is shaped."})
	}
}

// list returns the rounds that a plan lists.
func (p *planned) list() (list []int) {
	for _, s := range p.lists {
		for _, n := range s.Schedule.List {
			list = append(list, n.For(0))
		}
	}
	return list
}

// planned is what shaping is said to come to.
type planned struct {
	s      *written.Statement
	at     int // rounds of the section that were worked before
	lists  []*written.Statement
	within bool // it counts what is between the markers
}
