package view

import (
	"strconv"

	"github.com/a-h/templ"

	"thenar/internal/mitt"
	"thenar/internal/project"
)

// Desk is one of the stations of the work on a mitt, each a page of its own.
type Desk string

// The desks, in the order of the work.
const (
	FitDesk     Desk = "fit"
	ChartDesk   Desk = "chart"
	PatternDesk Desk = "pattern"
	KnitDesk    Desk = "knit"
	TryDesk     Desk = "try"
)

// desks are the marks on the tape.
var desks = []struct {
	Desk  Desk
	Words string
}{{FitDesk, "Fit"}, {ChartDesk, "Chart"}, {PatternDesk, "Pattern"}, {KnitDesk, "Knit"}, {TryDesk, "Try on"}}

// IsDesk reports whether there is a desk of that name.
func IsDesk(name string) bool {
	for _, d := range desks {
		if string(d.Desk) == name {
			return true
		}
	}
	return false
}

// words returns the name of a desk on the tape.
func (d Desk) words() string {
	for _, one := range desks {
		if one.Desk == d {
			return one.Words
		}
	}
	return "the mitt"
}

// At returns the address of a desk of a mitt.
func (d Desk) At(id int64) string { return MittAt(id, "/desk/"+string(d)) }

// MittAt returns the address of a page of a mitt, or of the mitt itself.
func MittAt(id int64, below string) string { return "/mitts/" + strconv.FormatInt(id, 10) + below }

// Bar is what stands at the head of every page of a mitt.
type Bar struct {
	ID    int64
	Name  string
	Desk  Desk          // whose page it is, or whose side room
	Room  bool          // a side room: the tape leads back to its desk
	Line  []planNumber  // the plan in one line; empty without a plan
	Fixed []mitt.Number // those of the plan that the person fixed
	Saved string        // when the form of the page was last saved; empty if it has none
	Sides []SideMark
}

// SideMark is one hand of the pair in the bar. A press on it shows that hand on every desk: it
// is a choice in the mitt's form, or, where a page has none, a form of its own.
type SideMark struct {
	Side project.Side
	Now  bool
	Own  bool // a form of its own
}

// bothSides returns the marks of a pair; own on a page without the mitt's form.
func bothSides(now project.Side, own bool) []SideMark {
	return []SideMark{{project.Right, now == project.Right, own}, {project.Left, now == project.Left, own}}
}

// current marks the desk of the page on the tape, or that of a side room: F8
// leads there.
func (b Bar) current(d Desk) templ.Attributes {
	switch {
	case d != b.Desk:
		return nil
	case b.Room:
		return templ.Attributes{"aria-current": "true", "aria-keyshortcuts": "F8"}
	}
	return templ.Attributes{"aria-current": "page", "aria-keyshortcuts": "F8"}
}

func (b Bar) href(rest string) templ.SafeURL {
	return templ.SafeURL(MittAt(b.ID, rest))
}

// Bar returns the bar of a desk that has the mitt's form.
func (m Mitt) Bar() Bar {
	b := Bar{ID: m.ID, Name: m.Doc.Name, Desk: m.Desk, Saved: m.Saved, Sides: bothSides(m.Doc.Side, false)}
	if m.Form != "" {
		b.Sides, b.Room = nil, true
	}
	if m.Answer.Out != nil {
		b.Line, b.Fixed = planNumbers(m.Answer.Out.Plan), m.Doc.Sheet.Fixed()
	}
	return b
}

// Bar returns the bar of the page of a mitt on the needles.
func (n Needles) Bar() Bar {
	return Bar{ID: n.ID, Name: n.Doc.Name, Desk: KnitDesk, Sides: bothSides(n.Doc.Side, true)}
}

// Bar returns the bar of the page of a mitt's tries.
func (t Tries) Bar() Bar {
	b := Bar{ID: t.ID, Name: t.Doc.Name, Desk: TryDesk, Sides: bothSides(t.Doc.Side, true)}
	if t.Plan != nil {
		b.Line, b.Fixed = planNumbers(t.Plan), t.Doc.Sheet.Fixed()
	}
	return b
}

// RoomBar returns the bar of a page that belongs to a desk.
func RoomBar(id int64, name string, desk Desk) *Bar {
	b := roomBar(id, name, desk)
	return &b
}

// roomBar returns the bar of a side room of a desk.
func roomBar(id int64, name string, desk Desk) Bar {
	return Bar{ID: id, Name: name, Desk: desk, Room: true}
}
