package app

import (
	"context"

	"thenar/internal/project"
	"thenar/internal/store"
)

// Stage is how far a mitt has come.
type Stage int

// The stages of a mitt, in order.
const (
	Unplanned Stage = iota // its measures don't make a plan yet
	Planned
	Knitting // a hand of the pair is on the needles
)

// Name returns what a mitt is called.
func (a *App) Name(ctx context.Context, id int64) (string, error) {
	w, err := decoded(a.store.ReadWork(ctx, id, store.Wants{}))
	return w.doc.Name, err
}

// Stage returns how far a mitt has come.
func (a *App) Stage(ctx context.Context, id int64) (Stage, error) {
	w, err := decoded(a.store.ReadWork(ctx, id, store.Wants{}))
	if err != nil {
		return Unplanned, err
	}
	pl, done := a.plannerOf(&w)
	defer done()
	if _, err := pl.Plan(w.doc.Effective()); err != nil {
		return Unplanned, nil
	}
	for _, side := range []project.Side{project.Right, project.Left} {
		if w.Last[string(side)].Section != "" {
			return Knitting, nil
		}
	}
	return Planned, nil
}
