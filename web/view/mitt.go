package view

import (
	"time"

	"github.com/a-h/templ"

	"thenar/internal/app"
	"thenar/internal/fault"
	"thenar/internal/project"
)

// Mitt is one mitt at one of its desks.
type Mitt struct {
	ID       int64
	Doc      project.Document
	After    int64  // the newest decision when the form was made
	Restored int64  // tells the file from what it was before a backup was put back
	Revision int64  // the newest change when the page was made
	Made     string // when the mitt was begun, which tells it from another of its number
	Saved    string // when it was last saved
	Conflict string // why the form could not be saved
	Between  []Between
	Form     string // where the form is sent, below the address of the mitt
	Desk     Desk   // whose page it is
	Answer   Answer
	Habits   []Habit // that this mitt has use for
}

// inBetween is the Conflict of a form that was overtaken by another save.
const inBetween = "Another window saved this mitt in between."

// NewMitt returns a mitt at one of its desks, with its chart as asked for.
func NewMitt(m app.Mitt, desk Desk, ask ChartAsk) Mitt {
	p := Mitt{
		ID: m.ID, Desk: desk, Doc: m.Doc, After: m.Decided, Restored: m.Restored,
		Revision: m.Revision, Made: m.Created.Format(time.RFC3339Nano), Saved: Clock(m.Changed, time.Now()),
		Answer: AnswerOf(m, desk, ask),
	}
	if m.Out == nil {
		return p
	}
	for _, h := range HabitsFor(m.Habits, m.Doc, m.Out.Plan) {
		if h.Usable {
			p.Habits = append(p.Habits, h)
		}
	}
	return p
}

// NewContested returns the workspace of a form that could not be saved because
// another version was saved in between. It shows both; saving once more puts
// the typed one over the other.
func NewContested(u app.Unsaved) Mitt {
	p := NewMitt(u.Mitt, FitDesk, ChartAsk{})
	p.Conflict, p.Between = inBetween, Betweens(u.Doc, u.Saved, u.Was)
	return p
}

// preview returns the address that answers a change of the form with the parts
// that the page shows.
func (m Mitt) preview() string {
	to := string(m.href(m.Form + "/preview"))
	if m.Form == "" {
		to += "?desk=" + string(m.Desk)
	}
	return to
}

// page returns the address of the page itself, also when it answers a form.
func (m Mitt) page() string {
	if m.Form != "" {
		return string(m.href(m.Form))
	}
	return m.Desk.At(m.ID)
}

// at reports whether an answer has the parts of a desk: its own, or all.
func (m Mitt) at(d Desk) bool { return m.Desk == "" || m.Desk == d }

// AnswerOf returns the answer of a desk to the numbers of a mitt.
func AnswerOf(m app.Mitt, desk Desk, ask ChartAsk) Answer {
	a := NewAnswer(m.Doc, m.Out, desk, ask, m.Fault)
	a.Fit = templ.SafeURL(FitDesk.At(m.ID))
	if a.Chart.SVG != "" {
		c := &a.Chart.Page
		c.Revision, c.Decided, c.Marks = m.Revision, m.Decided, m.Out.Charts.Marks.Edits()
		c.CanUndo, c.CanRedo, c.Restored = m.CanUndo, m.CanRedo, m.Restored
		c.Mitt = m.Created.Format(time.RFC3339Nano)
		c.Href = MittAt(m.ID, "/chart")
	}
	a.put(m.Faults)
	return a
}

// AfterStroke is NewMitt for a page on whose chart something was painted:
// hand, fit and plan are unchanged, and the script has drawn the chart itself.
// Only the key is drawn anew.
func AfterStroke(m app.Mitt, desk Desk, ask ChartAsk) Mitt {
	a, _ := undrawn(m.Doc, m.Out, m.Fault)
	a.Fit = templ.SafeURL(FitDesk.At(m.ID))
	if m.Out != nil {
		a.Chart.Key = chartKey(m.Out.Grid(ask.Options), Symbols(m.Doc))
	}
	a.put(m.Faults)
	return Mitt{ID: m.ID, Doc: m.Doc, Desk: desk, Answer: a}
}

// put adds faults as the messages of their fields.
func (a Answer) put(faults fault.Fields) {
	for _, field := range faults {
		a.Faults[field.Path] = field.Message
	}
}
