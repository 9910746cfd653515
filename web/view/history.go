package view

import (
	"slices"
	"time"

	"github.com/a-h/templ"

	"thenar/internal/app"
	"thenar/internal/chart"
	"thenar/internal/project"
)

// Moment is a mitt as it stood at a revision.
type Moment struct {
	ID       int64
	Revision int64
	At       string
	Doc      project.Document
	Answer   Answer
}

// NewMoment returns the page of a mitt as it stood, with its chart as asked
// for.
func NewMoment(m app.Mitt, ask ChartAsk) Moment {
	return Moment{ID: m.ID, Revision: m.Revision, At: Clock(m.Changed, time.Now()), Doc: m.Doc, Answer: AnswerOf(m, ChartDesk, ask)}
}

// History is a page of the moments of a mitt, the newest first.
type History struct {
	ID      int64
	Doc     project.Document
	Moments []Past
	Earlier int64         // the revision before which there are more; 0: none
	Named   []Past        // earlier moments that have a name, the newest first
	Latest  templ.SafeURL // the page of the newest moments; empty on that page
}

// Past is a line of the history: a named moment, or several changes in a row.
type Past struct {
	Revision int64
	At       string
	Name     string
	What     string
	Newest   bool
}

// pause is the least time without a change between two lines of the history.
const pause = 10 * time.Minute

// NewHistory groups the revisions into lines, and says what each changed.
// Changes of one kind that follow each other closely are one line, which brings
// back the last of them; a named revision ends its line. A decision that a
// stroke made belongs to that stroke.
func NewHistory(past app.History) History {
	h, entries, now := History{ID: past.ID, Doc: past.Doc}, whole(past.Revisions), time.Now()
	was := project.Document{}
	if past.Stood != nil {
		was = *past.Stood
	}
	for i := 0; i < len(entries); {
		last := lineEnd(entries, i)
		e := entries[last]
		m := changes{was: was, now: was, tries: past.Tries}
		what := m.what(entries[i : last+1])
		was = m.now
		h.Moments = append(h.Moments, Past{Revision: e.Revision.Revision, At: Clock(e.At, now), Name: e.Name, What: what, Newest: e.Revision.Revision == past.Newest})
		i = last + 1
	}
	slices.Reverse(h.Moments)
	if len(entries) > 0 && entries[0].Revision.Revision > 1 {
		h.Earlier = entries[0].Revision.Revision
	}
	if n := len(entries); n == 0 || entries[n-1].Revision.Revision < past.Newest {
		h.Latest = historyURL(past.ID)
	}
	for _, r := range slices.Backward(past.Named) {
		h.Named = append(h.Named, Past{Revision: r.Revision, Name: r.Name})
	}
	return h
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

// what says what the revisions of a line changed.
func (m *changes) what(line []app.Revision) string {
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
	says := sentence(m.list())
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
		return "done and undone"
	case only == "" && says == "":
		return "as it was before"
	case only == "":
		return says
	case says == "":
		return only
	}
	return only + ": " + says
}
