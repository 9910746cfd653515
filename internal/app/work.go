package app

import (
	"errors"
	"maps"
	"slices"

	"thenar/internal/chart"
	"thenar/internal/fault"
	"thenar/internal/project"
	"thenar/internal/stitch"
	"thenar/internal/store"
	"thenar/internal/tryon"
)

// work is one mitt as a request found it: all that it needs was read at once.
type work struct {
	store.Work
	doc project.Document
}

// decoded reads the document of what the store found.
func decoded(w store.Work, err error) (work, error) {
	if err != nil {
		return work{}, err
	}
	doc, err := project.Decode(w.Document)
	return work{w, doc}, err
}

// shown is what has to be read of a mitt to show it with its chart.
func shown() store.Wants {
	return store.Wants{Marks: true, Tries: true, Earlier: []store.Pick{beforeLastTry}}
}

// beforeLastTry picks the revision that the last try corrected whose
// corrections stand.
func beforeLastTry(w store.Work) (int64, bool) {
	doc, err := project.Decode(w.Document)
	if err != nil {
		return 0, false // who shows it tells
	}
	return lastCorrected(w.Tries, doc), false
}

// lastCorrected is the revision before the last of some tries whose corrections
// stand in a document; 0 if there is none.
func lastCorrected(tries []store.Try, doc project.Document) int64 {
	for _, t := range slices.Backward(tries) {
		if t.Answer != nil && slices.Contains(doc.Sheet.Tried(), t.ID) {
			return t.Answer.Before
		}
	}
	return 0
}

// outputs works out a document of the mitt, with what is known of its knitting:
// the rounds that a try changed, and the round that is on the needles. Where
// only the former can't be told, the outputs stand beside the error.
func (w *work) outputs(pl *project.Planner, doc project.Document) (*project.Outputs, error) {
	out, err := pl.Derive(doc, w.Marks)
	if err != nil {
		return nil, err
	}
	if out.Changed, err = w.changed(pl, doc, out); err != nil {
		return out, err
	}
	w.markNeedles(doc, out)
	return out, nil
}

// changed returns the rounds that the last try whose corrections stand has
// changed, of the hand that is shown.
func (w *work) changed(pl *project.Planner, doc project.Document, out *project.Outputs) (project.Changed, error) {
	before := w.At(lastCorrected(w.Tries, doc))
	if before == nil {
		return nil, nil
	}
	then, err := project.Decode(before.Document)
	if err != nil {
		return nil, err
	}
	then.Side = doc.Side
	p, err := pl.Plan(then.Effective())
	if err != nil {
		return nil, nil // what was there before has no plan any more
	}
	return project.Differing(p.Mitt(), out.Planned), nil
}

// markNeedles marks the round that is knitted next in the chart, as the count
// at the needles has it, in the place of one that was marked by hand.
func (w *work) markNeedles(doc project.Document, out *project.Outputs) {
	if _, counted := w.Last[string(doc.Side)]; !counted {
		return
	}
	marks := maps.Clone(out.Charts.Marks)
	for at, mark := range marks {
		if mark.Needles = ""; mark == (chart.Mark{}) {
			delete(marks, at)
		} else {
			marks[at] = mark
		}
	}
	nth := w.place(doc.Side, out.Planned).Nth
	if list := tryon.Places(out.Planned); nth < len(list) {
		next := chart.Anchor{Section: list[nth].Part, Round: list[nth].Round}
		mark := marks[next]
		mark.Needles = "here"
		marks[next] = mark
	}
	out.Charts.Marks = marks
}

// reached is the number of tasks of a mitt that a count comes to. A round that
// the plan no longer has is taken as the last one of its section.
func reached(c store.Count, list []tryon.Task) int {
	return tryon.TasksDone(list, stitch.Part(c.Section), c.Round)
}

// done is the number of tasks of a hand that are done; 0 where it was never
// counted.
func (w *work) done(side project.Side, list []tryon.Task) int {
	c, counted := w.Last[string(side)]
	if !counted {
		return 0
	}
	return reached(c, list)
}

// place is where the work on a hand stands in a mitt.
func (w *work) place(side project.Side, m stitch.Mitt) tryon.Place {
	return tryon.PlaceAfter(m, w.done(side, tryon.Tasks(m)))
}

// knitted is what is on the needles of one hand, by its count and by the plan
// that a document has for it. A hand that is not begun needs no plan.
func (w *work) knitted(pl *project.Planner, doc project.Document, side project.Side) (project.Progress, error) {
	h := project.Progress{Side: side}
	c, begun := w.Last[string(side)]
	if !begun || c.Section == "" {
		return h, nil
	}
	doc.Side = side
	var err error
	if h.Plan, err = pl.Plan(doc.Effective()); err != nil {
		return h, err
	}
	h.At = w.place(side, h.Plan.Mitt())
	return h, nil
}

// keep returns a changed document with the rounds that are counted already, of
// both hands, as they were knitted by the document before: whatever is changed
// plans the rest. A form may let go of a hand's work: then it is planned anew.
func (w *work) keep(pl *project.Planner, is project.Document, form bool) (project.Document, error) {
	var hands []project.Progress
	for _, side := range []project.Side{is.Side.Other(), is.Side} {
		if form && letsGo(w.doc, is, side) {
			continue
		}
		h, err := w.knitted(pl, w.doc, side)
		var fields fault.Fields
		switch {
		case errors.As(err, &fields): // there was no plan to knit by
		case err != nil:
			return is, err
		default:
			hands = append(hands, h)
		}
	}
	return pl.Keep(is, hands), nil
}

// letsGo reports whether a change takes out the work that a hand's plan kept.
func letsGo(was, is project.Document, side project.Side) bool {
	return was.Sheet.InForce(string(side)) != "" && is.Sheet.InForce(string(side)) == ""
}
