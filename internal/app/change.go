package app

import (
	"context"
	"errors"

	"thenar/internal/chart"
	"thenar/internal/fault"
	"thenar/internal/project"
	"thenar/internal/store"
)

// maxAttempts is how often a change is worked out anew, because others saved in
// the meantime, before the person is told.
const maxAttempts = 3

// change reads a mitt, has its change worked out outside any transaction, and
// writes it. Where the mitt was changed in the meantime, it starts over.
func (a *App) change(ctx context.Context, id int64, wants store.Wants, workOut func(*work, *project.Planner) (store.Change, error)) (done store.Committed, err error) {
	for range maxAttempts {
		done, err = a.attempt(ctx, id, wants, workOut)
		if !errors.Is(err, store.ErrMoved) || ctx.Err() != nil {
			break
		}
	}
	return done, err
}

// changeTried is change for what depends on what is knitted.
func (a *App) changeTried(ctx context.Context, id int64, wants store.Wants, workOut func(triedWork, *project.Planner) (store.Change, error)) (store.Committed, error) {
	wants.Tries = true
	return a.change(ctx, id, wants, func(w *work, pl *project.Planner) (store.Change, error) { return workOut(triedWork{w}, pl) })
}

func (a *App) attempt(ctx context.Context, id int64, wants store.Wants, workOut func(*work, *project.Planner) (store.Change, error)) (store.Committed, error) {
	w, err := decoded(a.store.ReadWork(ctx, id, wants))
	if err != nil {
		return store.Committed{}, err
	}
	pl, done := a.plannerOf(&w)
	c, err := workOut(&w, pl)
	done()
	if err != nil {
		return store.Committed{}, err
	}
	if c.Document == nil && len(c.Strokes)+len(c.Counts) == 0 && c.Answer == nil {
		return store.Committed{Revision: w.Revision, Decided: w.Decided}, nil // there is nothing to change
	}
	return a.store.Commit(ctx, id, c)
}

// stroke returns the change that draws edits as one stroke that can be undone.
// The server itself makes these edits, of the sheet or of the chart.
func (w *work) stroke(edits []chart.Edit) store.Change {
	return store.Change{Base: &w.Base, Strokes: []store.Request{{Kind: store.Do, Newest: true, Edits: edits, Rewrite: project.Rewrite}}}
}

// decision returns the change that saves a document made from the newest one.
func (w *work) decision(doc project.Document) (store.Change, error) {
	raw, err := doc.Encode()
	return store.Change{Base: &w.Base, Document: raw, After: w.Decided}, err
}

// fieldsOf returns the faults of single fields if err holds some, else err
// itself.
func fieldsOf(err error) (fault.Fields, error) {
	var fields fault.Fields
	if errors.As(err, &fields) {
		return fields, nil
	}
	return nil, err
}
