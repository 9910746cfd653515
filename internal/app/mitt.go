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

// Mitt is a mitt as it is shown: its decisions, saved or only typed, and all
// that follows from them.
type Mitt struct {
	ID       int64
	Revision int64 // the newest revision
	Decided  int64 // the newest decision
	Restored int64 // tells the file from what it was before a backup was put back
	Created  time.Time
	Changed  time.Time
	CanUndo  bool
	CanRedo  bool

	Doc    project.Document
	Out    *project.Outputs // nil where there is no plan; Fault says why
	Fault  error
	Faults fault.Fields  // what can't be kept of a form
	Lacks  error         // why Out lacks what a try changed, or Habits is missing
	Habits []tryon.Habit // of the person; only on the mitt's own page
}

// mitt works out a document of the mitt. If only what a try changed can't be
// worked out, the rest stands without it.
func (w *work) mitt(pl *project.Planner, doc project.Document) Mitt {
	out, err := w.outputs(pl, doc)
	return w.shown(doc, out, err)
}

// shown is mitt for a document that is worked out already.
func (w *work) shown(doc project.Document, out *project.Outputs, err error) Mitt {
	m := Mitt{
		ID: w.ID, Revision: w.Revision, Decided: w.Decided, Restored: w.Restored, Created: w.Created, Changed: w.Changed,
		CanUndo: w.CanUndo, CanRedo: w.CanRedo, Doc: doc, Out: out,
	}
	if out == nil {
		m.Fault = err
	} else if err != nil {
		m.Lacks = fmt.Errorf("what a try changed: %w", err)
	}
	return m
}

// wantsPage is what has to be read to show the page of a mitt.
func wantsPage() store.Wants {
	wants := wantsChart()
	wants.Habits = true
	return wants
}

// page is like mitt, and adds the person's habits.
func (w *work) page(pl *project.Planner, doc project.Document) Mitt {
	return w.withHabits(w.mitt(pl, doc))
}

// withThumbs adds the ways to make a mitt round its thumb, the kinds that it may be, and what
// else the numbers of its fingers may be, if it has a plan. They take a plan each, so only
// what shows them asks.
func (w *work) withThumbs(pl *project.Planner, m Mitt) Mitt {
	if m.Out != nil {
		var err error
		if m.Out.Told, err = w.told(); err != nil {
			m.Lacks = errors.Join(m.Lacks, fmt.Errorf("tries: %w", err))
		}
		m.Out.Thumbs, m.Out.Kinds = pl.Thumbs(m.Doc, w.Marks, m.Out), pl.Kinds(m.Doc, w.Marks, m.Out)
		m.Out.Beside = pl.Beside(m.Doc, m.Out)
	}
	return m
}

// withCounts adds to a mitt that has a plan the counts that take its motifs whole. They take a plan each, so only what shows them asks.
func (w *work) withCounts(pl *project.Planner, m Mitt) Mitt {
	if m.Out != nil {
		m.Out.Counts = pl.CountsOf(m.Doc, m.Out)
	}
	return m
}

// withHabits adds the person's habits to a mitt that has a plan.
func (w *work) withHabits(m Mitt) Mitt {
	if m.Out != nil {
		var err error
		if m.Habits, err = learned(w.Habits); err != nil {
			m.Lacks = errors.Join(m.Lacks, fmt.Errorf("habits: %w", err))
		}
	}
	return m
}

// more is what a desk shows of a mitt beside its plan, at the cost of plans of its own.
type more func(w *work, pl *project.Planner, m Mitt) Mitt

func noMore(_ *work, _ *project.Planner, m Mitt) Mitt { return m }

// OpenMitt returns a mitt as it is saved, with the person's habits.
func (a *App) OpenMitt(ctx context.Context, id int64) (Mitt, error) {
	return a.open(ctx, id, noMore)
}

// OpenFit is OpenMitt with the ways to make the mitt round its thumb.
func (a *App) OpenFit(ctx context.Context, id int64) (Mitt, error) {
	return a.open(ctx, id, (*work).withThumbs)
}

// OpenChart is OpenMitt with the counts of the hand that take its motifs whole.
func (a *App) OpenChart(ctx context.Context, id int64) (Mitt, error) {
	return a.open(ctx, id, (*work).withCounts)
}

func (a *App) open(ctx context.Context, id int64, with more) (Mitt, error) {
	w, err := decoded(a.store.ReadWork(ctx, id, wantsPage()))
	if err != nil {
		return Mitt{}, err
	}
	pl, done := a.plannerOf(&w)
	defer done()
	return with(&w, pl, w.page(pl, w.doc)), nil
}

// SheetJSON returns the measure sheet of a mitt as JSON.
func (a *App) SheetJSON(ctx context.Context, id int64) ([]byte, error) {
	w, err := decoded(a.store.ReadWork(ctx, id, store.Wants{}))
	if err != nil {
		return nil, err
	}
	return w.doc.Sheet.JSON(), nil
}

// Preview returns a mitt with what was typed into its form, without saving it.
// What can't be kept stands in Faults.
func (a *App) Preview(ctx context.Context, id int64, typed Typed) (Mitt, error) {
	return a.preview(ctx, id, typed, noMore)
}

// PreviewFit is Preview with the ways to make the mitt round its thumb.
func (a *App) PreviewFit(ctx context.Context, id int64, typed Typed) (Mitt, error) {
	return a.preview(ctx, id, typed, (*work).withThumbs)
}

// PreviewChart is Preview with the counts of the hand that take its motifs whole.
func (a *App) PreviewChart(ctx context.Context, id int64, typed Typed) (Mitt, error) {
	return a.preview(ctx, id, typed, (*work).withCounts)
}

func (a *App) preview(ctx context.Context, id int64, typed Typed, with more) (Mitt, error) {
	w, err := a.readTried(ctx, id, wantsChart())
	if err != nil {
		return Mitt{}, err
	}
	pl, done := a.plannerOf(w.work)
	defer done()
	f, faults, err := w.typed(pl, typed)
	if err != nil {
		return Mitt{}, err
	}
	m := with(w.work, pl, w.mitt(pl, f.doc))
	m.Faults = faults
	return m, nil
}

// typed lays a form over the mitt. Unless there are faults, the rounds that are
// knitted keep their numbers.
func (w triedWork) typed(pl *project.Planner, typed Typed) (form, fault.Fields, error) {
	f, err := typed.over(w.doc, w.Restored)
	faults, err := fieldsOf(err)
	if faults != nil || err != nil {
		return f, faults, err
	}
	f.doc, err = w.keep(pl, f.doc, true)
	f.doc = pl.Noted(w.doc, f.doc)
	return f, nil, err
}

// SaveNumbers saves what was typed into the form of a mitt, whether its numbers
// make a plan or not, and returns the revision. What is knitted stays unless
// the form lets go of it; then the count of that hand starts at its cast-on
// again.
//
// It fails with fault.Fields for what can't be kept, and with fault.Conflict
// where another version was saved since the form was opened.
func (a *App) SaveNumbers(ctx context.Context, id int64, typed Typed) (revision int64, err error) {
	done, err := a.changeTried(ctx, id, store.Wants{}, func(w triedWork, pl *project.Planner) (store.Change, error) {
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

// Unsaved is a form that could not be saved, beside what is saved.
type Unsaved struct {
	Mitt                    // with what was typed
	Saved project.Document  // what is saved now
	Was   *project.Document // what the form was opened with; nil if that is not known
}

// Unsaved returns a mitt with what was typed into its form and could not be
// saved, to show beside what was saved in between.
func (a *App) Unsaved(ctx context.Context, id int64, typed Typed) (Unsaved, error) {
	w, err := a.readTried(ctx, id, typed.beside(wantsPage()))
	if err != nil {
		return Unsaved{}, err
	}
	pl, done := a.plannerOf(w.work)
	defer done()
	f, faults, err := w.typed(pl, typed)
	if err != nil {
		return Unsaved{}, err
	}
	u := Unsaved{Mitt: w.withThumbs(pl, w.page(pl, f.doc)), Saved: w.doc}
	u.Faults = faults
	u.Was, err = w.document(f.after)
	return u, err
}

// beside adds the revision that a form was opened with to what is read. On a
// page from before a backup was put back, that is not known.
func (t Typed) beside(wants store.Wants) store.Wants {
	wants.Earlier = append(wants.Earlier, func(w store.Work) (int64, bool) {
		f, _ := t.over(project.Document{}, w.Restored)
		return f.after, false
	})
	return wants
}

// document returns the document of an earlier revision, or nil if that was not
// read.
func (w *work) document(revision int64) (*project.Document, error) {
	then := w.At(revision)
	if then == nil {
		return nil, nil
	}
	doc, err := project.Decode(then.Document)
	return &doc, err
}

// AnswerQuestion takes the answer to a question about an unusual measurement of
// a mitt. What is knitted stays.
func (a *App) AnswerQuestion(ctx context.Context, id int64, path, text string, yes bool) error {
	_, err := a.changeTried(ctx, id, store.Wants{}, func(w triedWork, pl *project.Planner) (store.Change, error) {
		doc := w.doc
		doc.Sheet, doc.Sure = sheet.Answer(doc.Sheet, doc.Sure, doc.Questions(), path, text, yes)
		doc, err := w.keep(pl, doc, false)
		if err != nil {
			return store.Change{}, err
		}
		return w.decision(doc)
	})
	return err
}
