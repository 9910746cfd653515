package store

import (
	"context"
	"database/sql"
	"errors"
	"time"

	"thenar/internal/fault"
)

// Count is where the work on one hand of a pair stands: after a round of a
// section, after what opens or ends it (tryon.Opening and Ending), or before
// its cast-on where the section is empty.
type Count struct {
	Key     string // the page's own name of the count, so that it is noted once
	Side    string // "right" or "left"
	Section string
	Round   int
	At      time.Time // of noting, in UTC
}

// NoteCount notes where the work stands. A key that is there already is not
// noted again, whatever came after it.
func (s *Store) NoteCount(ctx context.Context, mitt int64, c Count) (err error) {
	defer fault.Wrap(&err, "store.NoteCount(%d)", mitt)
	return s.write(ctx, func(ctx context.Context, tx *txn) error {
		if _, err := stand(ctx, tx, mitt); err != nil {
			return err
		}
		_, err := tx.ExecContext(ctx, `
			INSERT INTO count (mitt, key, at, side, section, round) VALUES (?, ?, ?, ?, ?, ?)
			ON CONFLICT (mitt, key) DO NOTHING`, mitt, c.Key, s.stamp(), c.Side, c.Section, c.Round)
		return err
	})
}

// counts reads the counts of one hand.
const counts = `SELECT key, at, side, section, round FROM count WHERE mitt = ? AND side = ?`

func scanCount(row interface{ Scan(...any) error }) (c Count, err error) {
	var at string
	if err := row.Scan(&c.Key, &at, &c.Side, &c.Section, &c.Round); err != nil {
		return Count{}, err
	}
	c.At, err = parseTime(at)
	return c, err
}

// Standing is the last count of one hand; ok is false where none was noted.
func (s *Store) Standing(ctx context.Context, mitt int64, side string) (c Count, ok bool, err error) {
	defer fault.Wrap(&err, "store.Standing(%d, %s)", mitt, side)
	err = s.read(ctx, func(tx *txn) error {
		c, err = scanCount(tx.QueryRowContext(ctx, counts+` ORDER BY id DESC LIMIT 1`, mitt, side))
		return err
	})
	if errors.Is(err, sql.ErrNoRows) {
		return Count{}, false, nil
	}
	return c, err == nil, err
}

// Counts lists all counts of one hand from the first on.
func (s *Store) Counts(ctx context.Context, mitt int64, side string) (list []Count, err error) {
	defer fault.Wrap(&err, "store.Counts(%d, %s)", mitt, side)
	err = s.read(ctx, func(tx *txn) error {
		list, err = collect(ctx, tx, func(rows *sql.Rows) (Count, error) { return scanCount(rows) }, counts+` ORDER BY id`, mitt, side)
		return err
	})
	return list, err
}
