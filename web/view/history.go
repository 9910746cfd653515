package view

import (
	"slices"
	"time"

	"github.com/a-h/templ"

	"thenar/internal/app"
	"thenar/internal/chart"
	"thenar/internal/project"
	"thenar/internal/sheet"
	"thenar/internal/words"
)

// Moment is a mitt as it stood at a revision.
type Moment struct {
	ID       int64
	Revision int64
	At       string
	Doc      project.Document
	Name     string // of the mitt as it is now
	Answer   Answer
	Since    []string   // what was changed since
	Whole    *WholeThen // nil without a plan
}

// NewMoment returns the page of a mitt as it stood, with its chart as asked
// for: otherwise with that on which most was drawn since.
func NewMoment(m app.Moment, ask ChartAsk) Moment {
	since := changes{was: m.Doc, now: m.Now, tries: m.Tries}
	since.net.Add(m.Cells, m.Stood)
	if ask.View == "" {
		ask.View = since.mostDrawn()
	}
	one := Moment{
		ID: m.ID, Revision: m.Revision, At: Clock(m.Changed, time.Now()), Doc: m.Doc, Name: m.Now.Name, Answer: AnswerOf(m.Mitt, ChartDesk, ask),
	}
	for _, t := range since.list() {
		one.Since = append(one.Since, t.text)
	}
	if m.Out != nil {
		one.Whole = newWholeThen(m.Doc, m.Out, one.Answer.Chart.noun())
	}
	return one
}

// Brought is what is said on the page of the moments after one was brought
// back.
type Brought struct {
	At   string // when it was
	Line string // the plan as it is now
}

// NewBrought returns what is said after a moment was brought back, given the
// mitt as it is now.
func NewBrought(then app.Moment, now app.Mitt) *Brought {
	b := &Brought{At: Clock(then.Changed, time.Now())}
	if now.Out != nil {
		b.Line = planLine(now.Out.Plan) + " · " + termsName(now.Doc.Sheet.Given(sheet.PathTerms))
	}
	return b
}

// termsName names terms as the bar of the page says them.
func termsName(terms string) string {
	if words.TermsOf(terms) == words.UK {
		return "UK terms"
	}
	return "US terms"
}

// History is a page of the moments of a mitt, the newest first.
type History struct {
	ID       int64
	Doc      project.Document
	Sittings []Sitting
	Earlier  int64         // the revision before which there are more; 0: none
	Named    []Past        // moments that have a name, the newest first; on the newest page only
	Brought  *Brought      // a moment was just brought back; nil: none
	Latest   templ.SafeURL // the page of the newest moments; empty on that page
}

// Past is a line of the history: a named moment, or several changes in a row.
type Past struct {
	Revision int64
	Time     time.Time
	At       string // the time of day
	Name     string
	What     string
	Rest     []string   // what else was changed, less telling
	View     chart.View // the chart that it changed most; empty if it drew nothing
	Newest   bool
}

// pause is the least time without a change between two lines of the history.
const pause = 10 * time.Minute

// NewHistory groups the revisions into lines, and says what each changed.
// Changes of one kind that follow each other closely are one line, which brings
// back the last of them; a named revision ends its line. A decision that a
// stroke made belongs to that stroke.
func NewHistory(past app.History) History {
	h, entries := History{ID: past.ID, Doc: past.Doc}, whole(past.Revisions)
	var moments []Past
	was := project.Document{}
	if past.Stood != nil {
		was = *past.Stood
	}
	for i := 0; i < len(entries); {
		last := lineEnd(entries, i)
		e := entries[last]
		m := changes{was: was, now: was, tries: past.Tries}
		what, rest := m.what(entries[i : last+1])
		was = m.now
		moments = append(moments, Past{
			Revision: e.Revision.Revision, Time: e.At, At: e.At.Local().Format("15:04"), Name: e.Name,
			What: what, Rest: rest, View: m.mostDrawn(), Newest: e.Revision.Revision == past.Newest,
		})
		i = last + 1
	}
	slices.Reverse(moments)
	h.Sittings = sittings(moments, time.Now())
	if len(entries) > 0 && entries[0].Revision.Revision > 1 {
		h.Earlier = entries[0].Revision.Revision
	}
	if n := len(entries); n == 0 || entries[n-1].Revision.Revision < past.Newest {
		h.Latest = historyURL(past.ID)
	}
	if h.Latest == "" {
		h.Named = namedMoments(moments, past)
	}
	return h
}

// namedMoments returns the moments of a page that have a name, and the earlier ones.
func namedMoments(page []Past, past app.History) (list []Past) {
	for _, m := range page {
		if m.Name != "" {
			list = append(list, m)
		}
	}
	for _, r := range slices.Backward(past.Named) {
		list = append(list, Past{Revision: r.Revision, Name: r.Name})
	}
	return list
}

// whole leaves out a first stroke whose decision is on the page before, where
// both are told.
func whole(entries []app.Revision) []app.Revision {
	if len(entries) > 1 && entries[0].Doc == nil && len(chart.OfSheet(entries[0].Edits)) > 0 {
		return entries[1:]
	}
	return entries
}

// lineEnd returns the index of the last revision of the line that begins at i.
func lineEnd(entries []app.Revision, i int) int {
	last := i
	for last+1 < len(entries) && joins(entries[i:last+1], entries[last+1:]) {
		last++
	}
	return last
}

// joins reports whether the next revision belongs to a line.
func joins(line, next []app.Revision) bool {
	e, n := line[len(line)-1], next[0]
	if e.Name != "" {
		return false
	}
	if madeBy(e, n) {
		return true
	}
	drawn := n.Doc == nil || len(next) > 1 && madeBy(n, next[1])
	return (e.Doc == nil) == drawn && n.At.Sub(e.At) < pause
}

// madeBy reports whether a stroke made the decision before it.
func madeBy(e, stroke app.Revision) bool {
	return e.Doc != nil && stroke.Doc == nil && len(chart.OfSheet(stroke.Edits)) > 0
}

// what says what the revisions of a line changed, the most telling first, and
// what else.
func (m *changes) what(line []app.Revision) (text string, rest []string) {
	kinds := map[string]bool{}
	if line[0].Revision.Revision == 1 {
		m.was, m.now = *line[0].Doc, *line[0].Doc
	}
	for i, r := range line {
		if i+1 == len(line) || !madeBy(r, line[i+1]) {
			kinds[r.Kind] = true
		}
		m.add(r)
	}
	list := m.list()
	says := sentence(list)
	for _, one := range list[min(maxTold, len(list)):] {
		rest = append(rest, one.text)
	}
	only := ""
	switch {
	case line[0].Revision.Revision == 1:
		only = "begun"
	case len(kinds) == 1 && kinds["undo"]:
		only = "undone"
	case len(kinds) == 1 && kinds["redo"]:
		only = "done again"
	}
	switch {
	case only == "" && says == "" && kinds["undo"]:
		return "done and undone", nil
	case only == "" && says == "":
		return "as it was before", nil
	case only == "":
		return says, rest
	case says == "":
		return only, nil
	}
	return only + ": " + says, rest
}
