package app

import (
	"bytes"
	"context"

	"thenar/internal/chart"
)

// Motif is a motif that a person keeps, to stamp on any chart.
type Motif struct {
	ID int64 `json:"id"`
	chart.Motif
}

// Motifs returns the kept motifs, by name.
func (a *App) Motifs(ctx context.Context) ([]Motif, error) {
	kept, err := a.store.Motifs(ctx)
	if err != nil {
		return nil, err
	}
	list := make([]Motif, 0, len(kept))
	for _, m := range kept {
		list = append(list, Motif{m.ID, m.Motif})
	}
	return list, nil
}

// KeepMotif reads a motif from JSON and keeps it.
func (a *App) KeepMotif(ctx context.Context, raw []byte) (Motif, error) {
	m, err := chart.ParseMotif(bytes.NewReader(raw))
	if err != nil {
		return Motif{}, err
	}
	id, err := a.store.KeepMotif(ctx, m)
	return Motif{id, m}, err
}

// RemoveMotif takes a motif off the list.
func (a *App) RemoveMotif(ctx context.Context, id int64) error { return a.store.RemoveMotif(ctx, id) }
