package app

import (
	"context"
	"errors"
	"maps"
	"slices"
	"strconv"

	"thenar/internal/chart"
	"thenar/internal/fault"
	"thenar/internal/project"
	"thenar/internal/stitch"
	"thenar/internal/store"
	"thenar/internal/tryon"
)

// work is a mitt as a request found it. Everything the request needs was read
// at once.
type work struct {
	store.Work
	doc  project.Document
	made *made // the stored document worked out, if it is
}

// triedWork is a mitt that was read with its tries: they say, beside the counts, what is
// knitted. Only readTried and changeTried make one.
type triedWork struct{ *work }

// readTried reads a mitt with its tries, and with what else is wanted.
func (a *App) readTried(ctx context.Context, id int64, wants store.Wants) (triedWork, error) {
	wants.Tries = true
	w, err := decoded(a.store.ReadWork(ctx, id, wants))
	return triedWork{&w}, err
}

// made is what the stored document comes to, read in one direction.
type made struct {
	fromLeft bool
	out      *project.Outputs
	err      error
}

// stored works the stored document out, once for each direction in turn.
func (w *work) stored(pl *project.Planner, fromLeft bool) (*project.Outputs, error) {
	if w.made == nil || w.made.fromLeft != fromLeft {
		doc := w.doc
		doc.FromLeft = fromLeft
		out, err := w.outputs(pl, doc)
		w.made = &made{fromLeft, out, err}
	}
	return w.made.out, w.made.err
}

// decoded adds the decoded document to what the store read.
func decoded(w store.Work, err error) (work, error) {
	if err != nil {
		return work{}, err
	}
	doc, err := project.Decode(w.Document)
	return work{Work: w, doc: doc}, err
}

// wantsChart is what has to be read to show a mitt with its chart.
func wantsChart() store.Wants {
	return store.Wants{Marks: true, Tries: true, Earlier: []store.Pick{beforeLastTry}}
}

// beforeLastTry picks the revision before the last try whose corrections are in
// the mitt.
func beforeLastTry(w store.Work) (int64, bool) {
	doc, err := project.Decode(w.Document)
	if err != nil {
		return 0, false // the caller decodes it again, and tells
	}
	return lastCorrected(w.Tries, doc), false
}

// lastCorrected returns the revision before the last of the tries whose
// corrections are in a document, or 0 if there is none.
func lastCorrected(tries []store.Try, doc project.Document) int64 {
	for _, t := range slices.Backward(tries) {
		if t.Answer != nil && slices.Contains(doc.Sheet.Tried(), t.ID) {
			return t.Answer.Before
		}
	}
	return 0
}

// outputs works out a document of the mitt, and marks on its chart the rounds
// that a try changed and the round that is on the needles. If only the former
// can't be worked out, the outputs are returned beside the error.
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

// changed returns the rounds, of the hand that is shown, that the corrections
// of the last try changed.
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
		return nil, nil // the earlier document no longer has a plan
	}
	return project.Differing(p.Mitt(), out.Planned), nil
}

// markNeedles marks the round that is knitted next, as the count at the needles
// has it. It replaces a round that was marked by hand.
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

// reached returns how many tasks a count says are done. A round that the plan
// no longer has stands for the last one of its section.
func reached(c store.Count, list []tryon.Task) int {
	return tryon.TasksDone(list, stitch.Part(c.Section), c.Round)
}

// done returns how many tasks of a hand are done; 0 if it was never counted.
func (w *work) done(side project.Side, list []tryon.Task) int {
	c, counted := w.Last[string(side)]
	if !counted {
		return 0
	}
	return reached(c, list)
}

// place returns where the work on a hand stands in a mitt.
func (w *work) place(side project.Side, m stitch.Mitt) tryon.Place {
	return tryon.PlaceAfter(m, w.done(side, tryon.Tasks(m)))
}

// knitted returns what is on the needles of one hand, by its count, its open
// tries and the plan that a document makes for it. A hand that is not begun
// needs no plan.
func (w triedWork) knitted(pl *project.Planner, doc project.Document, side project.Side) (project.Progress, error) {
	h := project.Progress{Side: side}
	said, err := w.saidKnitted(side)
	if c, begun := w.Last[string(side)]; err != nil || (!begun || c.Section == "") && len(said) == 0 {
		return h, err
	}
	doc.Side = side
	if h.Plan, err = pl.Plan(doc.Effective()); err != nil {
		return h, err
	}
	m := h.Plan.Mitt()
	h.At = w.place(side, m)
	places := tryon.Places(m)
	for _, t := range said {
		round, _ := strconv.Atoi(t.Round) // 0, which no part has, if it is no number
		if at, ok := tryon.At(places, stitch.Part(t.Section), round); ok && at.Nth > h.At.Nth {
			h.At = at
		}
	}
	return h, nil
}

// saidKnitted returns the open tries of a hand that were noted after its last
// count. They say what is knitted until another count does.
func (w triedWork) saidKnitted(side project.Side) ([]tryon.Try, error) {
	var list []tryon.Try
	last := w.Last[string(side)].At
	for _, one := range w.Tries {
		t, err := entryOf(w.doc, one)
		if err != nil {
			return nil, err
		}
		if t.Try.Side == string(side) && !t.Answered && !t.Back && !t.Answer.Aside && t.Noted.After(last) {
			list = append(list, t.Try)
		}
	}
	return list, nil
}

// keep returns the changed document doc with the counted rounds of both hands
// as they were knitted by the document before, so that a change only plans the
// rest. If form is set, the change may let go of the work on a hand; then all
// of it is planned anew.
func (w triedWork) keep(pl *project.Planner, doc project.Document, form bool) (project.Document, error) {
	var hands []project.Progress
	for _, side := range []project.Side{doc.Side.Other(), doc.Side} {
		if form && letsGo(w.doc, doc, side) {
			doc.Sheet = doc.Sheet.Clone()
			doc.Sheet.SetKnitted(string(side), nil)
			continue
		}
		h, err := w.knitted(pl, w.doc, side)
		var fields fault.Fields
		switch {
		case errors.As(err, &fields): // there was no plan to knit by
		case err != nil:
			return doc, err
		default:
			hands = append(hands, h)
		}
	}
	return pl.Keep(doc, hands), nil
}

// letsGo reports whether a change removes the rounds of a hand that were kept
// because they are knitted.
func letsGo(was, now project.Document, side project.Side) bool {
	return was.Sheet.InForce(string(side)) != "" && now.Sheet.InForce(string(side)) == ""
}
