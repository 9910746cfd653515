package app

import (
	"context"

	"thenar/internal/project"
	"thenar/internal/store"
)

// WhatIf is a mitt beside a second variant of it.
type WhatIf struct {
	First   Mitt
	Variant Mitt // with Habits
}

// beforeLastTryOfVariant does for the second variant what beforeLastTry does
// for the mitt.
func beforeLastTryOfVariant(w store.Work) (int64, bool) {
	doc, err := project.Decode(w.Document)
	if err != nil {
		return 0, false
	}
	return lastCorrected(w.Tries, doc.Variant()), false
}

// wantsBoth is what has to be read to show a mitt and its second variant.
func wantsBoth() store.Wants {
	wants := wantsPage()
	wants.Earlier = append(wants.Earlier, beforeLastTryOfVariant)
	return wants
}

// whatIf works out the mitt and its second variant.
func (w *work) whatIf(pl *project.Planner, variant project.Document) WhatIf {
	return WhatIf{Variant: w.page(pl, variant), First: w.mitt(pl, w.doc)}
}

// WhatIf returns a mitt and its second variant. A mitt without one is shown
// beside itself.
func (a *App) WhatIf(ctx context.Context, id int64) (WhatIf, error) {
	w, err := decoded(a.store.ReadWork(ctx, id, wantsBoth()))
	if err != nil {
		return WhatIf{}, err
	}
	pl, done := a.plannerOf(&w)
	defer done()
	return w.whatIf(pl, w.doc.Variant()), nil
}

// variant reads the form of the second variant, which shares the mitt's name
// and side.
func (w *work) variant(typed Typed) (form, error) {
	f, err := typed.over(w.doc.Variant(), w.Restored)
	f.doc.Name, f.doc.Side = w.doc.Name, w.doc.Side
	return f, err
}

// PreviewWhatIf returns a mitt beside its second variant with what was typed,
// without saving it. What can't be kept stands in Variant.Faults.
func (a *App) PreviewWhatIf(ctx context.Context, id int64, typed Typed) (WhatIf, error) {
	w, err := decoded(a.store.ReadWork(ctx, id, wantsBoth()))
	if err != nil {
		return WhatIf{}, err
	}
	f, err := w.variant(typed)
	faults, err := fieldsOf(err)
	if err != nil {
		return WhatIf{}, err
	}
	pl, done := a.plannerOf(&w)
	defer done()
	both := w.whatIf(pl, f.doc)
	both.Variant.Faults = faults
	return both, nil
}

// SaveWhatIf saves what was typed as the second variant of a mitt, and returns
// the revision. It fails as SaveNumbers does.
func (a *App) SaveWhatIf(ctx context.Context, id int64, typed Typed) (revision int64, err error) {
	done, err := a.change(ctx, id, store.Wants{}, func(w *work, _ *project.Planner) (store.Change, error) {
		f, err := w.variant(typed)
		if err != nil {
			return store.Change{}, err
		}
		doc := w.doc
		doc.WhatIf = f.doc.Sheet
		c, err := w.decision(doc)
		c.After = f.after
		return c, err
	})
	return done.Decided, err
}

// UnsavedWhatIf is a second variant that could not be saved, beside what is
// saved.
type UnsavedWhatIf struct {
	WhatIf
	Saved project.Document  // the second variant that is saved now
	Was   *project.Document // what the form was opened with; nil if that is not known
}

// UnsavedWhatIf returns a mitt and the second variant that was typed and could
// not be saved, to show beside what was saved in between.
func (a *App) UnsavedWhatIf(ctx context.Context, id int64, typed Typed) (UnsavedWhatIf, error) {
	w, err := decoded(a.store.ReadWork(ctx, id, typed.beside(wantsBoth())))
	if err != nil {
		return UnsavedWhatIf{}, err
	}
	f, err := w.variant(typed)
	if err != nil {
		return UnsavedWhatIf{}, err
	}
	pl, done := a.plannerOf(&w)
	defer done()
	u := UnsavedWhatIf{WhatIf: w.whatIf(pl, f.doc), Saved: w.doc.Variant()}
	if u.Was, err = w.document(f.after); err == nil && u.Was != nil {
		*u.Was = u.Was.Variant()
	}
	return u, err
}

// TakeWhatIf swaps the mitt and its second variant, so that nothing is lost. A
// mitt without one stays as it is.
func (a *App) TakeWhatIf(ctx context.Context, id int64) error {
	return a.changeWhatIf(ctx, id, func(doc *project.Document) { doc.Sheet, doc.WhatIf = doc.WhatIf, doc.Sheet })
}

func (a *App) DropWhatIf(ctx context.Context, id int64) error {
	return a.changeWhatIf(ctx, id, func(doc *project.Document) { doc.WhatIf = nil })
}

func (a *App) changeWhatIf(ctx context.Context, id int64, edit func(*project.Document)) error {
	_, err := a.change(ctx, id, store.Wants{}, func(w *work, _ *project.Planner) (store.Change, error) {
		doc := w.doc
		if doc.WhatIf == nil {
			return store.Change{}, nil
		}
		edit(&doc)
		return w.decision(doc)
	})
	return err
}

// CopyWhatIf begins a new mitt with the second variant and the chart of a mitt,
// and returns its number.
func (a *App) CopyWhatIf(ctx context.Context, id int64) (int64, error) {
	return a.begin(ctx, id, func(doc project.Document) project.Document {
		variant := doc.Variant()
		variant.Name = suffixed(doc.Name, " (second thought)")
		return variant
	})
}
