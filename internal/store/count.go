package store

import (
	"context"
	"time"

	"thenar/internal/fault"
)

// Count is the progress on one hand of a pair: after a round of a section,
// after the work that opens or ends it (tryon.Opening, Ending and Woven),
// or before the cast-on if the section is empty.
type Count struct {
	Key     string // chosen by the page, so that a repeated request is noted once
	Side    string // "right" or "left"
	Section string
	Round   int
	At      time.Time // of noting, in UTC

	id, mitt int64
}

// NoteCount notes the progress on one hand, and returns the mitt's newest
// revision. A key that is there already is not noted again, even if other
// counts came after it.
func (s *Store) NoteCount(ctx context.Context, mitt int64, c Count) (revision int64, err error) {
	defer fault.Wrap(&err, "store.NoteCount(%d)", mitt)
	done, err := s.Commit(ctx, mitt, Change{Counts: []Count{c}})
	return done.Revision, err
}

func (s *Store) count(ctx context.Context, tx *txn, mitt int64, c Count) error {
	_, err := tx.ExecContext(ctx, `
		INSERT INTO count (mitt, key, at, side, section, round) VALUES (?, ?, ?, ?, ?, ?)
		ON CONFLICT (mitt, key) DO NOTHING`, mitt, c.Key, s.stamp(), c.Side, c.Section, c.Round)
	return err
}

const counts = `SELECT c.id, c.mitt, c.key, c.at, c.side, c.section, c.round FROM count c`

// lastCounts selects the last count of each hand. It looks each up in the
// index, since a mitt may have thousands of counts.
const lastCounts = `
	SELECT c.id, c.mitt, c.key, c.at, c.side, c.section, c.round
	FROM mitt m CROSS JOIN (SELECT 'right' AS side UNION ALL SELECT 'left') s
	JOIN count c ON c.id = (SELECT max(id) FROM count WHERE mitt = m.id AND side = s.side)`

// lastCounted selects the number of the newest count of either hand of a mitt.
const lastCounted = `max(
	coalesce((SELECT max(id) FROM count WHERE mitt = ?1 AND side = 'right'), 0),
	coalesce((SELECT max(id) FROM count WHERE mitt = ?1 AND side = 'left'), 0))`

func scanCount(row interface{ Scan(...any) error }) (c Count, err error) {
	var at string
	if err := row.Scan(&c.id, &c.mitt, &c.Key, &at, &c.Side, &c.Section, &c.Round); err != nil {
		return Count{}, err
	}
	c.At, err = parseTime(at)
	return c, err
}
