package app

import (
	"context"
	"errors"

	"thenar/internal/chart"
	"thenar/internal/fault"
	"thenar/internal/mitt"
	"thenar/internal/project"
	"thenar/internal/sheet"
	"thenar/internal/store"
)

// Drawn is what a page is told of a chart after a stroke.
type Drawn struct {
	Revision int64        `json:"revision"`
	Edits    []chart.Edit `json:"edits"`           // what an undo, a redo or a change of rounds did
	Between  []chart.Edit `json:"between"`         // what others did since "after"
	Later    []chart.Edit `json:"later,omitempty"` // what others did after a stroke that is sent again
	Said     string       `json:"said,omitempty"`  // what a change of rounds fixed, in words
	CanUndo  bool         `json:"can_undo"`
	CanRedo  bool         `json:"can_redo"`

	Reshaped bool       `json:"-"` // it was a change of rounds
	Names    mitt.Names `json:"-"` // what the numbers are called that it fixed
}

// Chart returns everything drawn on the chart of a mitt as one list of edits.
func (a *App) Chart(ctx context.Context, id int64) (Drawn, error) {
	w, err := a.store.ReadWork(ctx, id, store.Wants{Marks: true})
	if err != nil {
		return Drawn{}, err
	}
	return Drawn{Revision: w.Revision, Edits: list(w.Marks.Edits()), Between: []chart.Edit{}, CanUndo: w.CanUndo, CanRedo: w.CanRedo}, nil
}

// Stale reports whether a stroke was refused because it was drawn on the chart
// of another file, such as the one before a backup was put back. The page then
// has to read the chart anew.
func Stale(err error) bool { return errors.Is(err, store.ErrStale) }

// Draw takes one stroke, an undo or redo, or a change of the rounds, as a page
// sends it in JSON. It returns what that did, and what others did before it. Of
// two strokes on one cell the last wins. What is knitted stays as it is: where
// a change of the sheet would alter it, the same stroke puts it back, so that an undo goes
// on to the stroke before, and a redo is left. A round
// that is marked as the one on the needles is counted up to.
//
// A stroke sent again, under the same key, is not drawn again.
func (a *App) Draw(ctx context.Context, id int64, sent []byte) (Drawn, error) {
	stroke, err := chart.Parse(sent)
	if err != nil {
		return Drawn{}, err
	}
	request := store.Request{Kind: store.Do, After: stroke.After, Key: stroke.Key, Edits: stroke.Edits, Restored: stroke.Restored, Rewrite: project.Rewrite}
	wants := store.Wants{Key: stroke.Key}
	switch {
	case stroke.Undo:
		request.Kind, wants.Turn = store.Undo, store.Undo
	case stroke.Redo:
		request.Kind, wants.Turn = store.Redo, store.Redo
	case stroke.Change != nil:
		wants.Marks = true
	case chart.OnlyCells(stroke.Edits): // most strokes: the mitt need not be read for them
		done, err := a.store.Commit(ctx, id, store.Change{Strokes: []store.Request{request}})
		return drawn(done, false), err
	}
	var names mitt.Names
	done, err := a.changeTried(ctx, id, wants, func(w triedWork, pl *project.Planner) (store.Change, error) {
		names = w.doc.Sheet.Names()
		return w.redrawn(pl, stroke, request)
	})
	d := drawn(done, stroke.Change != nil)
	d.Names = names
	return d, err
}

// redrawn returns the change that draws a stroke that is more than cells, with
// what follows from it.
func (w triedWork) redrawn(pl *project.Planner, stroke chart.Stroke, r store.Request) (store.Change, error) {
	if w.Drawn {
		return store.Change{Strokes: []store.Request{r}}, nil
	}
	edits := r.Edits
	var err error
	switch {
	case stroke.Change != nil:
		if edits, err = pl.Reshape(w.doc, w.Marks, *stroke.Change); err != nil {
			return store.Change{}, err
		}
		r.Edits = edits
	case r.Kind != store.Do:
		if edits = w.Turn; chart.OnlyCells(edits) { // nothing follows, whatever came in between
			r.OnlyCells = true
			return store.Change{Strokes: []store.Request{r}}, nil
		}
	default:
		if edits, err = w.noted(pl, edits); err != nil {
			return store.Change{}, err
		}
		r.Edits = edits
	}
	c := store.Change{Base: &w.Base}
	if c.Counts, err = w.countMarked(pl, edits); err != nil {
		return store.Change{}, err
	}
	r.Also, err = w.putBack(pl, chart.OfSheet(edits))
	c.Strokes = []store.Request{r}
	return c, err
}

// noted adds to edits of repeats what becomes of these.
func (w triedWork) noted(pl *project.Planner, edits []chart.Edit) ([]chart.Edit, error) {
	list := chart.OfSheet(edits)
	if len(list) == 0 {
		return edits, nil
	}
	doc, err := w.rewritten(list)
	if err != nil {
		return nil, err
	}
	return append(edits, doc.Difference(pl.Noted(w.doc, doc))...), nil
}

// rewritten returns the document as edits of the sheet make it.
func (w triedWork) rewritten(edits []chart.Edit) (project.Document, error) {
	raw, _, err := project.Rewrite(w.Document, edits)
	if err != nil {
		return project.Document{}, err
	}
	return project.Decode(raw)
}

// putBack returns the edits that restore what is knitted, where edits of the
// sheet would alter it.
func (w triedWork) putBack(pl *project.Planner, edits []chart.Edit) ([]chart.Edit, error) {
	if len(edits) == 0 {
		return nil, nil
	}
	doc, err := w.rewritten(edits)
	if err != nil {
		return nil, err
	}
	kept, err := w.keep(pl, doc, false)
	return doc.Difference(kept), err
}

// drawn returns what came of a stroke.
func drawn(done store.Committed, reshaped bool) Drawn {
	if len(done.Applied) == 0 {
		return Drawn{}
	}
	one := done.Applied[0]
	return Drawn{
		Revision: one.Revision, Edits: list(one.Edits), Between: list(one.Between), Later: one.Later,
		CanUndo: one.CanUndo, CanRedo: one.CanRedo, Reshaped: reshaped,
	}
}

// list returns edits, or an empty list for nil, so that JSON never has null.
func list(edits []chart.Edit) []chart.Edit {
	if edits == nil {
		return []chart.Edit{}
	}
	return edits
}

// ChooseSecond decides how a hand that is not begun is worked: like the other
// one ("alike"), or planned anew from its cast-on ("anew").
func (a *App) ChooseSecond(ctx context.Context, id int64, how string) error {
	if how != "alike" && how != sheet.Anew {
		return fault.New(fault.Invalid, "second: is %.20q; write alike or anew", how)
	}
	edits := []chart.Edit{{Layer: chart.Sheet, Column: sheet.PathSecond, Value: how}}
	_, err := a.change(ctx, id, store.Wants{}, func(w *work, _ *project.Planner) (store.Change, error) {
		return w.stroke(edits), nil
	})
	return err
}
