package store

import (
	"context"
	"database/sql"
	"encoding/json"

	"thenar/internal/chart"
	"thenar/internal/fault"
)

// Motif is a motif that a person keeps for use on any chart.
type Motif struct {
	ID    int64
	Motif chart.Motif
}

// KeepMotif adds a motif and returns its number.
func (s *Store) KeepMotif(ctx context.Context, m chart.Motif) (id int64, err error) {
	defer fault.Wrap(&err, "store.KeepMotif")
	cells, err := json.Marshal(m.Cells)
	if err != nil {
		return 0, err
	}
	err = s.write(ctx, func(ctx context.Context, tx *txn) error {
		made, err := tx.ExecContext(ctx, `INSERT INTO motif (at, name, cells) VALUES (?, ?, ?)`, s.stamp(), m.Name, string(cells))
		if err != nil {
			return err
		}
		id, err = made.LastInsertId()
		return err
	})
	return id, err
}

// Motifs returns the motifs that are kept, by name.
func (s *Store) Motifs(ctx context.Context) (list []Motif, err error) {
	defer fault.Wrap(&err, "store.Motifs")
	err = s.read(ctx, func(tx *txn) error {
		list, err = collect(ctx, tx, func(rows *sql.Rows) (m Motif, err error) {
			var cells string
			if err := rows.Scan(&m.ID, &m.Motif.Name, &cells); err != nil {
				return Motif{}, err
			}
			return m, json.Unmarshal([]byte(cells), &m.Motif.Cells)
		}, `SELECT id, name, cells FROM motif WHERE id NOT IN (SELECT motif FROM motif_removed) ORDER BY name, id`)
		return err
	})
	return list, err
}

// RemoveMotif takes a motif off the list; fault.NotFound if it isn't on it.
func (s *Store) RemoveMotif(ctx context.Context, id int64) (err error) {
	defer fault.Wrap(&err, "store.RemoveMotif(%d)", id)
	return s.write(ctx, func(ctx context.Context, tx *txn) error {
		done, err := tx.ExecContext(ctx, `
			INSERT INTO motif_removed (motif, at) SELECT id, ? FROM motif
			WHERE id = ? AND id NOT IN (SELECT motif FROM motif_removed)`, s.stamp(), id)
		if err != nil {
			return err
		}
		if n, err := done.RowsAffected(); err != nil || n == 0 {
			return fault.New(fault.NotFound, "There is no motif %d.", id)
		}
		return nil
	})
}
