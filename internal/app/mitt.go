package app

import (
	"context"
	"errors"
	"fmt"
	"time"

	"thenar/internal/fault"
	"thenar/internal/project"
	"thenar/internal/sheet"
	"thenar/internal/store"
	"thenar/internal/tryon"
)

// Mitt is a mitt as it is shown: what was decided of it, saved or only typed,
// and all that follows.
type Mitt struct {
	ID       int64
	Revision int64 // the newest of all
	Decided  int64 // the newest decision
	Restored int64 // of the file that has these revisions
	Created  time.Time
	Changed  time.Time
	CanUndo  bool
	CanRedo  bool

	Doc    project.Document
	Out    *project.Outputs // nil where there is no plan; Fault says why
	Fault  error
	Faults fault.Fields  // what of a form can't be kept
	Lacks  error         // why it stands without what a try changed, or without habits
	Habits []tryon.Habit // of the person, where they were asked for
}

// mitt works out a document of the mitt. Where only what a try changed can't be
// told, it stands without.
func (w *work) mitt(pl *project.Planner, doc project.Document) Mitt {
	m := Mitt{
		ID: w.ID, Revision: w.Revision, Decided: w.Decided, Restored: w.Restored, Created: w.Created, Changed: w.Changed,
		CanUndo: w.CanUndo, CanRedo: w.CanRedo, Doc: doc,
	}
	var err error
	if m.Out, err = w.outputs(pl, doc); m.Out == nil {
		m.Fault = err
	} else if err != nil {
		m.Lacks = fmt.Errorf("what a try changed: %w", err)
	}
	return m
}

// whole is what has to be read to show the page of a mitt.
func whole() store.Wants {
	wants := shown()
	wants.Habits = true
	return wants
}

// page is mitt with the person's habits.
func (w *work) page(pl *project.Planner, doc project.Document) Mitt {
	m := w.mitt(pl, doc)
	if m.Out != nil {
		var err error
		if m.Habits, err = learned(w.Habits); err != nil {
			m.Lacks = errors.Join(m.Lacks, fmt.Errorf("habits: %w", err))
		}
	}
	return m
}

// OpenMitt returns a mitt as it stands, with the person's habits.
func (a *App) OpenMitt(ctx context.Context, id int64) (Mitt, error) {
	w, err := decoded(a.store.ReadWork(ctx, id, whole()))
	if err != nil {
		return Mitt{}, err
	}
	pl, done := a.plannerOf(&w)
	defer done()
	return w.page(pl, w.doc), nil
}

// SheetJSON returns the measure sheet of a mitt in its JSON format.
func (a *App) SheetJSON(ctx context.Context, id int64) ([]byte, error) {
	w, err := decoded(a.store.ReadWork(ctx, id, store.Wants{}))
	if err != nil {
		return nil, err
	}
	return w.doc.Sheet.JSON(), nil
}

// Preview returns a mitt with what was typed into its form, as far as it can be
// kept; what can't be stands in Faults. Nothing is saved.
func (a *App) Preview(ctx context.Context, id int64, typed Typed) (Mitt, error) {
	w, err := decoded(a.store.ReadWork(ctx, id, shown()))
	if err != nil {
		return Mitt{}, err
	}
	pl, done := a.plannerOf(&w)
	defer done()
	f, faults, err := w.typed(pl, typed)
	if err != nil {
		return Mitt{}, err
	}
	m := w.mitt(pl, f.doc)
	m.Faults = faults
	return m, nil
}

// typed reads a form over the mitt, and keeps in it what is knitted, unless
// there are faults.
func (w *work) typed(pl *project.Planner, typed Typed) (form, fault.Fields, error) {
	f, err := typed.over(w.doc, w.Restored)
	faults, err := fieldsOf(err)
	if faults != nil || err != nil {
		return f, faults, err
	}
	f.doc, err = w.keep(pl, f.doc, true)
	return f, nil, err
}

// SaveNumbers saves what was typed into the form of a mitt, whether its numbers
// make a plan or not, and returns the revision. What is knitted stays, unless
// the form lets go of it; then the count of that hand is at its cast-on again.
//
// It fails with fault.Fields for what can't be kept, and with fault.Conflict
// where another version was saved since the form was opened.
func (a *App) SaveNumbers(ctx context.Context, id int64, typed Typed) (revision int64, err error) {
	done, err := a.change(ctx, id, store.Wants{}, func(w *work, pl *project.Planner) (store.Change, error) {
		f, faults, err := w.typed(pl, typed)
		if err == nil {
			err = faults.Err()
		}
		if err != nil {
			return store.Change{}, err
		}
		c, err := w.decision(f.doc)
		c.After = f.after
		if letsGo(w.doc, f.doc, f.doc.Side) {
			c.Counts = []store.Count{castOn(f.doc.Side)}
		}
		return c, err
	})
	return done.Decided, err
}

// Unsaved is a form that was not saved, beside what is.
type Unsaved struct {
	Mitt                    // with what was typed
	Saved project.Document  // as it is now
	Was   *project.Document // from which the form was made; nil where that is not known
}

// Unsaved returns a mitt with what was typed into its form and could not be
// saved, to be shown beside what was saved in between.
func (a *App) Unsaved(ctx context.Context, id int64, typed Typed) (Unsaved, error) {
	w, err := decoded(a.store.ReadWork(ctx, id, typed.beside(whole())))
	if err != nil {
		return Unsaved{}, err
	}
	pl, done := a.plannerOf(&w)
	defer done()
	f, faults, err := w.typed(pl, typed)
	if err != nil {
		return Unsaved{}, err
	}
	u := Unsaved{Mitt: w.page(pl, f.doc), Saved: w.doc}
	u.Faults = faults
	u.Was, err = w.document(f.after)
	return u, err
}

// beside adds to what is read the revision from which a form was made. On a page
// from before a backup was put back it is not known.
func (t Typed) beside(wants store.Wants) store.Wants {
	wants.Earlier = append(wants.Earlier, func(w store.Work) (int64, bool) {
		f, _ := t.over(project.Document{}, w.Restored)
		return f.after, false
	})
	return wants
}

// document is that of an earlier revision that was read; nil where it was not.
func (w *work) document(revision int64) (*project.Document, error) {
	then := w.At(revision)
	if then == nil {
		return nil, nil
	}
	doc, err := project.Decode(then.Document)
	return &doc, err
}

// AnswerQuestion takes an answer about an unusual measurement of a mitt. What
// is knitted stays.
func (a *App) AnswerQuestion(ctx context.Context, id int64, path, text string, yes bool) error {
	_, err := a.change(ctx, id, store.Wants{}, func(w *work, pl *project.Planner) (store.Change, error) {
		is := w.doc
		is.Sheet, is.Sure = sheet.Answer(is.Sheet, is.Sure, is.Questions(), path, text, yes)
		is, err := w.keep(pl, is, false)
		if err != nil {
			return store.Change{}, err
		}
		return w.decision(is)
	})
	return err
}
