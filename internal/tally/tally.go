package tally

import (
	"cmp"
	"fmt"
	"slices"
	"strconv"
	"strings"

	"thenar/internal/written"
)

// findings gathers what is found; what several sizes share is told once.
type findings struct {
	list  []Finding
	seen  map[same]int
	steps int               // of the work so far
	spent bool              // it was told that there are no more
	left  bool              // the rest of the text is not worked
	words map[string]string // what words that were not understood were probably meant to be
}

// meant asks whether a word was meant that is like one that was not understood.
func (f *findings) meant(word string) string {
	if word == "" {
		return ""
	}
	like, ok := f.words[word]
	if !ok {
		like = written.Guess(word)
		f.words[word] = like
	}
	if like == "" {
		return ""
	}
	return "Is " + like + " meant?"
}

// same is what makes two findings the same but for their sizes.
type same struct {
	at      written.Spot
	kind    Kind
	message string
}

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

func newFindings() *findings { return &findings{seen: map[same]int{}, words: map[string]string{}} }

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

// tell adds a finding of this size.
func (w *needles) tell(f Finding) {
	f.Section = w.section
	key := same{f.At, f.Kind, f.Message}
	at, ok := w.report.seen[key]
	if !ok {
		at = len(w.report.list)
		w.report.seen[key] = at
		w.report.list = append(w.report.list, f)
	}
	if w.name != "" && !slices.Contains(w.report.list[at].Sizes, w.name) {
		w.report.list[at].Sizes = append(w.report.list[at].Sizes, w.name)
	}
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

// begins casts on a piece, or more stitches in a round that is not finished.
func (w *needles) begins(s *written.Statement) {
	n := s.Many.For(w.size)
	if n == written.None {
		return
	}
	if w.going != nil && w.live {
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
		w.tell(Finding{Kind: Miscounted, At: s.At, To: s.To, Look: w.since, Found: w.n, Expected: n, Message: there(w.n) + ", not " + count(n) + "."})
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
	w.live, w.n, w.known, w.markers = false, 0, true, nil
	w.finished++
}

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
