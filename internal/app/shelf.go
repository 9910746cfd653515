package app

import (
	"context"
	"strings"
	"time"

	"thenar/internal/chart"
	"thenar/internal/mitt"
	"thenar/internal/picture"
	"thenar/internal/project"
	"thenar/internal/stitch"
	"thenar/internal/store"
	"thenar/internal/tryon"
)

// Shelved is a mitt on the shelf.
type Shelved struct {
	ID      int64
	Doc     project.Document
	Changed time.Time
	Plan    *mitt.Plan    // nil if it is not measured yet
	Worn    *picture.Worn // what it is knitted in; nil while it has no colour
	Next    *NextTask     // nil if it is not on the needles
}

// NextTask is the task to do next on a mitt.
type NextTask struct {
	tryon.Task
	Side project.Side
	Mitt stitch.Mitt // of that hand
}

// Shelf returns all mitts, the one changed last first.
func (a *App) Shelf(ctx context.Context) ([]Shelved, error) {
	worn := map[int64]*picture.Worn{}
	list, err := a.store.Shelf(ctx, func(m store.Mitt) bool {
		known, ok := a.worn.get(m.ID, wornOf(m))
		worn[m.ID] = known
		return !ok
	})
	if err != nil {
		return nil, err
	}
	pl, done := a.Planner()
	defer done()
	shelf := make([]Shelved, len(list))
	for i := range list {
		w, err := decoded(list[i], nil)
		if err != nil {
			return nil, err
		}
		shelf[i] = Shelved{ID: w.ID, Doc: w.doc, Changed: w.Changed, Next: w.next(pl)}
		p, err := pl.Plan(w.doc.Effective())
		if err == nil {
			shelf[i].Plan = p.Plan
		}
		if w.Marks != nil { // without a plan it wears nothing
			worn[w.ID] = nil
			if err == nil {
				worn[w.ID] = picture.NewWorn(p.Charts(w.doc, w.Marks))
			}
			a.worn.put(w.ID, wornOf(w.Mitt), worn[w.ID])
		}
		if err == nil {
			shelf[i].Worn = worn[w.ID]
		}
	}
	return shelf, nil
}

// next returns what to do next on a mitt that is on the needles: on the hand
// that the mitt shows, or on the other one if that is done or not begun.
func (w *work) next(pl *project.Planner) *NextTask {
	doc := w.doc
	for _, side := range []project.Side{w.doc.Side, w.doc.Side.Other()} {
		if w.Last[string(side)].Section == "" {
			continue
		}
		doc.Side = side
		p, err := pl.Plan(doc.Effective())
		if err != nil {
			return nil // it has no plan now
		}
		m := p.Mitt()
		list := tryon.Tasks(m)
		if done := w.done(side, list); done < len(list) {
			return &NextTask{list[done], side, m}
		}
	}
	return nil
}

// NewMitt begins a mitt, blank or with the numbers of the sample, and returns
// its number. An empty name stands for a default one.
func (a *App) NewMitt(ctx context.Context, name string, sample bool) (int64, error) {
	doc := project.New("A new mitt")
	if sample {
		doc = project.Samples()[0]
	}
	if name := strings.TrimSpace(name); name != "" {
		doc.Name = name
	}
	return a.create(ctx, doc, nil)
}

// CopyMitt begins a mitt with another's decisions and chart, and returns its
// number. Nothing of the copy is knitted yet.
func (a *App) CopyMitt(ctx context.Context, id int64) (int64, error) {
	return a.begin(ctx, id, func(doc project.Document) project.Document {
		doc.Name = suffixed(doc.Name, " (copy)")
		doc.Archived = false
		doc.Sheet = doc.Sheet.Clone()
		doc.Sheet.ForgetProgress()
		return doc
	})
}

// BeginFrom begins a mitt with another's hand, swatches, stitch patterns, eases,
// lengths and yarns, without its drawing, and returns its number. Its fixed
// numbers come along if pins is set. An empty name stands for one made from the
// other's.
func (a *App) BeginFrom(ctx context.Context, id int64, name string, pins bool) (int64, error) {
	w, err := decoded(a.store.ReadWork(ctx, id, store.Wants{}))
	if err != nil {
		return 0, err
	}
	if name = strings.TrimSpace(name); name == "" {
		name = NameAnew(w.doc.Name)
	}
	return a.create(ctx, w.doc.Begin(name, pins), nil)
}

// NameAnew returns the name of a mitt begun from another, unless the person gives
// it one.
func NameAnew(name string) string { return suffixed(name, " (new)") }

// begin creates a mitt from another's decisions, as changed by change, and its
// chart.
func (a *App) begin(ctx context.Context, id int64, change func(project.Document) project.Document) (int64, error) {
	w, err := decoded(a.store.ReadWork(ctx, id, store.Wants{Marks: true}))
	if err != nil {
		return 0, err
	}
	return a.create(ctx, change(w.doc), w.Marks.Edits())
}

// create saves a new mitt with the marks of its chart.
func (a *App) create(ctx context.Context, doc project.Document, marks []chart.Edit) (int64, error) {
	if err := doc.Check(); err != nil {
		return 0, err
	}
	raw, err := doc.Encode()
	if err != nil {
		return 0, err
	}
	return a.store.Create(ctx, raw, marks...)
}

// suffixed returns name with a suffix, shortened to the longest that a name may
// be.
func suffixed(name, suffix string) string {
	if letters := []rune(name); len(letters) > project.LongestName-len(suffix) {
		name = string(letters[:project.LongestName-len(suffix)])
	}
	return name + suffix
}

func (a *App) RenameMitt(ctx context.Context, id int64, name string) error {
	return a.changeDocument(ctx, id, func(doc *project.Document) { doc.Name = strings.TrimSpace(name) })
}

// ShowHand shows one hand of a pair, "right" or "left", on every page of its mitt from now on.
func (a *App) ShowHand(ctx context.Context, id int64, side string) error {
	return a.changeDocument(ctx, id, func(doc *project.Document) { doc.Side = project.Side(side) })
}

// ArchiveMitt puts a mitt away, or brings it back.
func (a *App) ArchiveMitt(ctx context.Context, id int64, archived bool) error {
	return a.changeDocument(ctx, id, func(doc *project.Document) { doc.Archived = archived })
}

// changeDocument saves a change of a mitt's document that does not affect its
// rounds.
func (a *App) changeDocument(ctx context.Context, id int64, edit func(*project.Document)) error {
	_, err := a.change(ctx, id, store.Wants{}, func(w *work, _ *project.Planner) (store.Change, error) {
		doc := w.doc
		edit(&doc)
		if err := doc.Check(); err != nil {
			return store.Change{}, err
		}
		return w.decision(doc)
	})
	return err
}
