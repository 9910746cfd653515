package app

import (
	"context"
	"slices"
	"strings"

	"thenar/internal/chart"
	"thenar/internal/fault"
	"thenar/internal/plain"
	"thenar/internal/project"
	"thenar/internal/sheet"
	"thenar/internal/store"
)

// maxMoment is the most characters in a moment's name.
const maxMoment = 60

// Revision is one entry in the history of a mitt.
type Revision struct {
	store.Revision
	Doc *project.Document // of a decision; nil for a stroke
}

// History is one page of what happened to a mitt.
type History struct {
	ID        int64
	Doc       project.Document
	Newest    int64             // the newest revision of the mitt
	Revisions []Revision        // from the first of the page on
	Stood     *project.Document // before the first of the page; nil: that begins the mitt
	Named     []store.Revision  // earlier ones that have a name
	Tries     map[int64]string  // the date of each try
}

// History returns the revisions of a mitt before one of them, or the newest if
// before is 0: as many as make a page.
func (a *App) History(ctx context.Context, id, before int64) (History, error) {
	w, err := decoded(a.store.ReadWork(ctx, id, store.Wants{History: true, Before: before, Tries: true}))
	if err != nil {
		return History{}, err
	}
	h := History{ID: w.ID, Doc: w.doc, Newest: w.Revision, Named: w.Named}
	if h.Tries, err = w.dates(); err != nil {
		return h, err
	}
	if h.Stood, err = optional(w.Stood); err != nil {
		return h, err
	}
	for _, r := range w.History {
		one := Revision{Revision: r}
		if one.Doc, err = optional(r.Document); err != nil {
			return h, err
		}
		h.Revisions = append(h.Revisions, one)
	}
	return h, nil
}

// dates returns the date of each try.
func (w *work) dates() (map[int64]string, error) {
	list := map[int64]string{}
	for _, t := range w.Tries {
		entry, err := entryOf(w.doc, t)
		if err != nil {
			return list, err
		}
		list[t.ID] = entry.Try.Date
	}
	return list, nil
}

// optional returns a stored document; nil if there is none.
func optional(raw []byte) (*project.Document, error) {
	if raw == nil {
		return nil, nil
	}
	doc, err := project.Decode(raw)
	return &doc, err
}

// NameMoment names a revision, or the newest one if revision is nil. An empty
// name removes the name.
func (a *App) NameMoment(ctx context.Context, id int64, revision *int64, name string) error {
	name = strings.TrimSpace(name)
	if why := plain.Line(name, maxMoment); why != "" {
		return fault.New(fault.Invalid, "name: %s", why)
	}
	if revision != nil {
		return a.store.Name(ctx, id, *revision, name)
	}
	w, err := a.store.ReadWork(ctx, id, store.Wants{})
	if err != nil {
		return err
	}
	return a.store.Name(ctx, id, w.Revision, name)
}

// Moment is a mitt as it stood at a revision, and what it is now.
type Moment struct {
	Mitt
	Now   project.Document
	Cells []chart.Edit     // what was drawn on the chart since
	Stood []chart.Edit     // what stood there then
	Tries map[int64]string // the date of each try
}

// Moment returns a mitt as it stood at a revision.
func (a *App) Moment(ctx context.Context, id, revision int64) (Moment, error) {
	wants := store.Wants{Tries: true, Marks: true, Earlier: []store.Pick{
		func(store.Work) (int64, bool) { return revision, true },
		func(w store.Work) (int64, bool) {
			if then := w.At(revision); then != nil {
				w.Mitt = *then
			}
			return beforeLastTry(w)
		},
	}}
	w, err := decoded(a.store.ReadWork(ctx, id, wants))
	if err != nil {
		return Moment{}, err
	}
	m := Moment{Now: w.doc}
	if m.Tries, err = w.dates(); err != nil {
		return m, err
	}
	marks := w.Marks
	if err := w.goBack(revision); err != nil {
		return m, err
	}
	m.Cells, m.Stood = w.Marks.Difference(marks), marks.Difference(w.Marks)
	pl, done := a.Planner()
	defer done()
	m.Mitt = w.mitt(pl, w.doc)
	return m, nil
}

// goBack turns w into the mitt as it stood at a revision.
func (w *work) goBack(revision int64) error {
	then := w.At(revision)
	if then == nil {
		return fault.New(fault.NotFound, "This mitt has no moment %d; its newest is %d.", revision, w.Revision)
	}
	doc, err := project.Decode(then.Document)
	w.Mitt, w.doc = *then, doc
	return err
}

// BringBack makes an earlier moment the newest revision: sheet, side, chart and what was
// written for the pattern as they stood, as one stroke that can be undone. What is knitted stays, and so
// do the terms, which are a way of reading.
func (a *App) BringBack(ctx context.Context, id, revision int64) error {
	wants := store.Wants{Marks: true, Earlier: []store.Pick{func(store.Work) (int64, bool) { return revision, true }}}
	_, err := a.changeTried(ctx, id, wants, func(w triedWork, pl *project.Planner) (store.Change, error) {
		then := *w.work
		if err := then.goBack(revision); err != nil {
			return store.Change{}, err
		}
		then.doc.Sheet = then.doc.Sheet.Clone()
		then.doc.Sheet.Put(sheet.PathTerms, w.doc.Sheet.Given(sheet.PathTerms))
		before, err := w.keep(pl, then.doc, false)
		if err != nil {
			return store.Change{}, err
		}
		return w.stroke(slices.Concat(w.doc.Difference(before), w.doc.Pattern.Difference(then.doc.Pattern), w.Marks.Difference(then.Marks))), nil
	})
	return err
}
