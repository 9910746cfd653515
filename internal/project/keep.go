package project

import (
	"reflect"

	"thenar/internal/stitch"
	"thenar/internal/tryon"
)

// Progress is what is on the needles of one hand: the plan by which it was
// knitted, up to a place.
type Progress struct {
	Side Side
	Plan *Planned
	At   tryon.Place
}

// Keep protects what is knitted from a change of the document. If the change
// would alter a knitted round of either hand, or leaves no plan, Keep returns the
// document with the work of both hands put into it; else the document itself. Knitted
// rounds that motifs would colour otherwise stay as they were worked.
func (pl *Planner) Keep(d Document, hands []Progress) Document {
	if pl.spoils(d, hands) {
		d = withProgress(d, hands)
	}
	return pl.withColours(d, hands)
}

// WithProgress returns a document with what is knitted put into its sheet, in its colours.
func (pl *Planner) WithProgress(d Document, hands []Progress) Document {
	return pl.withColours(withProgress(d, hands), hands)
}

func withProgress(d Document, hands []Progress) Document {
	d.Sheet = d.Sheet.Clone()
	for _, h := range hands {
		if h.At.Begun() {
			d.Sheet.SetProgress(h.At.Progress(h.Plan.Plan), string(h.Side))
		}
	}
	return d
}

// spoils reports whether a document would alter any knitted round, or leaves no
// plan.
func (pl *Planner) spoils(d Document, hands []Progress) bool {
	for _, h := range hands {
		if !h.At.Begun() {
			continue
		}
		d.Side = h.Side
		planned, err := pl.Plan(d.Effective())
		if err != nil || !alikeUpTo(h.Plan.Mitt(), planned.Mitt(), h.At) {
			return true
		}
	}
	return false
}

// alikeUpTo reports whether two mitts have the same rounds up to a place.
func alikeUpTo(a, b stitch.Mitt, at tryon.Place) bool {
	for i, s := range a.Sections {
		if i >= len(b.Sections) || b.Sections[i].Part != s.Part || b.Sections[i].CastOn != s.CastOn {
			return false
		}
		n, other := len(s.Rounds), len(b.Sections[i].Rounds)
		if s.Part == at.Part && !at.Ended {
			n = at.Round
		} else if n != other {
			return false
		}
		if other < n || !reflect.DeepEqual(s.Rounds[:n], b.Sections[i].Rounds[:n]) {
			return false
		}
		if s.Part == at.Part {
			return true
		}
	}
	return true
}
