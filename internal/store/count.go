package store

import (
	"context"
	"database/sql"
	"errors"
	"time"

	"thenar/internal/fault"
)

// Count is where the work on one hand of a pair stands: after a round of a
// section, or at its cast-on where the section is empty.
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
	return s.write(ctx, func(tx *sql.Tx) error {
		if _, err := stand(ctx, tx, mitt); err != nil {
			return err
		}
		_, err := tx.ExecContext(ctx, `
			INSERT INTO count (mitt, key, at, side, section, round) VALUES (?, ?, ?, ?, ?, ?)
			ON CONFLICT (mitt, key) DO NOTHING`, mitt, c.Key, s.stamp(), c.Side, c.Section, c.Round)
		return err
	})
}

// Standing is the last count of one hand; ok is false where none was noted.
func (s *Store) Standing(ctx context.Context, mitt int64, side string) (c Count, ok bool, err error) {
	defer fault.Wrap(&err, "store.Standing(%d, %s)", mitt, side)
	var at string
	err = s.read(ctx, func(tx *sql.Tx) error {
		return tx.QueryRowContext(ctx, `SELECT key, at, side, section, round FROM count WHERE mitt = ? AND side = ? ORDER BY id DESC LIMIT 1`, mitt, side).
			Scan(&c.Key, &at, &c.Side, &c.Section, &c.Round)
	})
	if errors.Is(err, sql.ErrNoRows) {
		return Count{}, false, nil
	}
	if err != nil {
		return Count{}, false, err
	}
	c.At, err = parseTime(at)
	return c, err == nil, err
}

// Counts lists all counts of one hand from the first on.
func (s *Store) Counts(ctx context.Context, mitt int64, side string) (list []Count, err error) {
	defer fault.Wrap(&err, "store.Counts(%d, %s)", mitt, side)
	err = s.read(ctx, func(tx *sql.Tx) error {
		list, err = collect(ctx, tx, func(rows *sql.Rows) (c Count, err error) {
			var at string
			if err := rows.Scan(&c.Key, &at, &c.Side, &c.Section, &c.Round); err != nil {
				return Count{}, err
			}
			c.At, err = parseTime(at)
			return c, err
		}, `SELECT key, at, side, section, round FROM count WHERE mitt = ? AND side = ? ORDER BY id`, mitt, side)
		return err
	})
	return list, err
}
