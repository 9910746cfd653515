package view

import (
	"fmt"
	"time"

	"thenar/internal/app"
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
	return Moment{ID: m.ID, Revision: m.Revision, At: Clock(m.Changed, time.Now()), Doc: m.Doc, Answer: AnswerOf(m, ask)}
}

// History is the moments of a mitt, the newest first.
type History struct {
	ID      int64
	Doc     project.Document
	Moments []Past
}

// Past is a line of the history: a named moment, or several strokes in a row.
type Past struct {
	Revision int64
	At       string
	Name     string
	What     string
	Newest   bool
}

// pause is the least time without a stroke between two lines of the history.
const pause = 10 * time.Minute

// NewHistory groups the revisions into lines. Strokes that follow each other
// closely are one line, which brings back the last of them; a named revision
// ends its line.
func NewHistory(past app.History) History {
	h, entries, now := History{ID: past.ID, Doc: past.Doc}, past.Revisions, time.Now()
	for i := 0; i < len(entries); {
		last := i
		for last+1 < len(entries) && joins(entries[last], entries[last+1]) {
			last++
		}
		e := entries[last]
		h.Moments = append([]Past{{
			Revision: e.Revision, At: Clock(e.At, now), Name: e.Name, What: what(entries[i : last+1]), Newest: last == len(entries)-1,
		}}, h.Moments...)
		i = last + 1
	}
	return h
}

// joins reports whether next belongs to the line of e.
func joins(e, next app.Revision) bool {
	return e.Name == "" && (e.Kind == "decision") == (next.Kind == "decision") && next.At.Sub(e.At) < pause
}

// what says what was done in a group of revisions.
func what(group []app.Revision) string {
	switch {
	case group[0].Revision == 1 && len(group) == 1:
		return "begun"
	case group[0].Kind == "decision" && len(group) == 1:
		return "numbers saved"
	case group[0].Kind == "decision":
		return fmt.Sprintf("numbers saved, %d times", len(group))
	case len(group) == 1:
		return "one stroke of the chart"
	}
	return fmt.Sprintf("%d strokes of the chart", len(group))
}
