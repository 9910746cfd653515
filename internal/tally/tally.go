package tally

import (
	"cmp"
	"fmt"
	"slices"
	"strconv"
	"strings"

	"thenar/internal/written"
)

// Work works a text, every size by itself.
func Work(t *written.Text) *Report { return work(t, newFindings()) }

func work(t *written.Text, f *findings) *Report {
	report := &Report{}
	hands := handsOf(t)
	for i, name := range t.Sizes {
		for _, hand := range hands {
			w := begun(i, name, f)
			w.all(t, hand)
			report.Sizes = append(report.Sizes, Size{Name: name, Hand: hand, Rounds: w.rounds, Open: w.unsure, Last: w.last, Edges: w.edges, Long: w.long})
		}
	}
	slices.SortStableFunc(f.list, func(a, b Finding) int {
		return cmp.Or(cmp.Compare(a.At.Line, b.At.Line), cmp.Compare(a.At.Column, b.At.Column))
	})
	report.Findings = f.list
	return report
}

// begun returns the needles of a size with nothing on them.
func begun(index int, name string, f *findings) *needles {
	return &needles{index: index, name: name, report: f, known: true, growing: -1}
}

// all works a whole text for one hand.
func (w *needles) all(t *written.Text, hand string) {
	skips := false
	for at := range t.Statements {
		s := &t.Statements[at]
		if !w.goesOn(s) {
			return
		}
		if s.Kind == written.Heading {
			skips = hand != "" && s.Hand != "" && s.Hand != hand
		}
		other := s.Kind != written.Heading && hand != "" && s.Hand != "" && s.Hand != hand
		if w.size = placeOf(s, w.index); w.size >= 0 && !skips && !other {
			w.statement(s, t.Statements[at+1:], w.index)
		} else if w.size < 0 && s.Label.From.Written() {
			w.unnumbered = true // the other sizes have rounds of these numbers
		}
	}
	w.over()
}

// handsOf returns the hands that a text is worked for, one after the other: both, if some of
// its sections stand in it for either, else one that has no name.
func handsOf(t *written.Text) []string {
	told := map[string]string{}
	for i := range t.Statements {
		s := &t.Statements[i]
		if s.Hand == "" {
			continue
		}
		title := ""
		if s.Kind == written.Heading {
			title = strings.Replace(s.Title, s.Hand, "", 1)
		}
		if other := told[title]; other != "" && other != s.Hand {
			return []string{"right", "left"}
		}
		told[title] = s.Hand
	}
	return []string{""}
}

// placeOf returns the place of a size among those of a statement, or -1.
func placeOf(s *written.Statement, size int) int {
	if s.For == nil {
		return size
	}
	return slices.Index(s.For, size)
}

func count(n int) string { return strconv.Itoa(n) }

// statement works one statement; ahead are those that follow.
func (w *needles) statement(s *written.Statement, ahead []written.Statement, size int) {
	if s.Stars > 0 || s.Ends > 0 {
		w.starred(s.Stars)
		defer w.starred(-s.Ends)
	}
	if s.Odd != nil && w.odd(s) {
		return
	}
	switch s.Kind {
	case written.Note:
	case written.Grows:
		w.settle()
		w.grows(s)
	case written.Heading:
		w.settle()
		w.closeSection()
		if len(w.bodies) > 0 {
			w.sections = append(w.sections, bodies{w.section, w.bodies})
		}
		w.section, w.round, w.bodies, w.later, w.others, w.named, w.past = strings.TrimRight(s.Title, " :;.,—–-"), 0, nil, nil, nil, nil, nil
		w.panel(s)
	case written.Unknown:
		w.settle()
		w.tell(Finding{Kind: Unread, At: s.At, To: s.To, Message: "This was not understood. Whatever it does to the stitches, what follows is open."})
		w.known, w.unsure, w.lost = false, true, true
		w.doubts()
		w.did(Step{Does: Jumps, Line: s.At.Line, Before: -1, After: -1, Open: true})
		w.counts(s.Counts)
	case written.Begin:
		w.begins(s)
	case written.Back:
		w.back(s)
		w.round, w.past = 0, nil
	case written.Finish:
		w.finish(s)
	case written.Onward:
		w.settle()
		w.onward(s)
	case written.Says:
		w.settle()
		w.counts(s.Counts)
	case written.Plan:
		w.plans(s)
	case written.Comes:
		w.settle()
		if n := s.Label.From.For(w.size); n != written.None && n != w.round+1 && w.round > 0 && !w.unnumbered {
			w.tell(Finding{Kind: Misnumbered, At: s.At, To: s.To, Look: w.line, Found: w.round + 1, Expected: n, Message: fmt.Sprintf("Round %d comes next, not %d.", w.round+1, n)})
		}
	case written.Markers:
		w.marks(s)
	case written.Rounds:
		w.roundsOf(s, ahead, size)
	case written.Again:
		w.settle()
		w.again(s)
	case written.Tabled:
		w.tables = append(w.tables, s)
	case written.Elsewhere:
		w.elsewhere(s)
	case written.Pace:
		w.pacing(s)
	}
}

// starred keeps where rounds begin, or end, that stand between so many asterisks.
func (w *needles) starred(n int) {
	if w.stars == nil {
		w.stars = map[int][2]int{}
	}
	switch {
	case n > 0:
		w.stars[n] = [2]int{len(w.past), 0}
	case n < 0:
		span := w.stars[-n]
		span[1] = len(w.past)
		w.stars[-n] = span
	}
}
