package store

import (
	"context"
	"database/sql"
	"errors"
	"time"

	"thenar/internal/chart"
	"thenar/internal/fault"
)

// Mitt is a mitt at one revision.
type Mitt struct {
	ID       int64
	Revision int64       // the newest decision or stroke
	Decided  int64       // the newest decision, which made Document
	Created  time.Time   // of revision 1, in UTC
	Changed  time.Time   // of Revision, in UTC
	Document []byte      // as it was saved, byte for byte
	Marks    chart.Marks // the result of all strokes; never nil after Load
	CanUndo  bool        // whether there is a stroke to undo
	CanRedo  bool        // whether there is an undone one to redo
	Restored int64       // identifies the file; changes when a backup is restored
}

// restored selects a number that changes when a backup is restored, after which
// a revision may have other contents. It is the number of the file's schema,
// which SQLite increases when all pages are replaced, so that every connection
// reads the schema anew (https://sqlite.org/pragma.html#pragma_schema_version).
const restored = `(SELECT schema_version FROM pragma_schema_version)`

// mitts selects each mitt with its newest decision and the time of its head.
// SQLite does not reorder a cross join, so it goes from each mitt to its newest
// decision only.
const mitts = `
	SELECT m.id, m.created, d.revision, d.document,
		max(d.revision, coalesce(s.revision, 0)),
		CASE WHEN s.revision > d.revision THEN s.at ELSE d.at END AS changed,
		` + restored + `
	FROM mitt m
	CROSS JOIN decision d ON d.mitt = m.id
		AND d.revision = (SELECT max(revision) FROM decision WHERE mitt = m.id)
	LEFT JOIN stroke s ON s.mitt = m.id
		AND s.revision = (SELECT max(revision) FROM stroke WHERE mitt = m.id)`

// scanMitt reads one row of mitts, which has no marks.
func scanMitt(row interface{ Scan(...any) error }) (m Mitt, err error) {
	var created, changed string
	if err := row.Scan(&m.ID, &created, &m.Decided, &m.Document, &m.Revision, &changed, &m.Restored); err != nil {
		return Mitt{}, err
	}
	if m.Created, err = parseTime(created); err != nil {
		return Mitt{}, err
	}
	m.Changed, err = parseTime(changed)
	return m, err
}

// List returns all mitts, the last changed first. It leaves out Marks, CanUndo
// and CanRedo, which need all strokes.
func (s *Store) List(ctx context.Context) (list []Mitt, err error) {
	defer fault.Wrap(&err, "store.List")
	err = s.read(ctx, func(tx *txn) error {
		list, err = readMitts(ctx, tx)
		return err
	})
	if err != nil {
		return nil, err
	}
	return list, nil
}

func readMitts(ctx context.Context, tx *txn) ([]Mitt, error) {
	return collect(ctx, tx, func(rows *sql.Rows) (Mitt, error) { return scanMitt(rows) }, mitts+` ORDER BY changed DESC, m.id DESC`)
}

// readMitt returns a mitt as it is now, without Marks, CanUndo and CanRedo,
// which need all strokes; fault.NotFound if there is none.
func readMitt(ctx context.Context, tx *txn, id int64) (Mitt, error) {
	m, err := scanMitt(tx.QueryRowContext(ctx, mitts+` WHERE m.id = ?`, id))
	if errors.Is(err, sql.ErrNoRows) {
		return Mitt{}, missing(id)
	}
	return m, err
}

// collect returns all rows of a query.
func collect[T any](ctx context.Context, tx *txn, scan func(*sql.Rows) (T, error), query string, args ...any) ([]T, error) {
	rows, err := tx.QueryContext(ctx, query, args...)
	if err != nil {
		return nil, err
	}
	defer rows.Close()
	var all []T
	for rows.Next() {
		one, err := scan(rows)
		if err != nil {
			return nil, err
		}
		all = append(all, one)
	}
	return all, rows.Err()
}
