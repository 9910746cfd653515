package store

import (
	"context"
	"database/sql"
	"time"

	"thenar/internal/fault"
)

// Version is a pattern that went out: a revision of its mitt with a name.
type Version struct {
	Number   int64 // from 1, in the order in which they went out
	At       time.Time
	Revision int64
	Name     string // may be empty
	Record   []byte // what it printed, a JSON text
}

// AddVersion keeps a revision of a mitt as a version and returns its number. A version that
// is the newest already, with the same name and record, is not kept again, so that sending a
// form twice does no harm.
func (s *Store) AddVersion(ctx context.Context, id, revision int64, name string, record []byte) (number int64, err error) {
	defer fault.Wrap(&err, "store.AddVersion(%d, %d)", id, revision)
	err = s.write(ctx, func(ctx context.Context, tx *txn) error {
		at, err := headOf(ctx, tx, id)
		if err != nil {
			return err
		}
		if revision < 1 || revision > at.head {
			return noRevision(revision, at.head)
		}
		list, err := readVersions(ctx, tx, id)
		if err != nil {
			return err
		}
		if n := len(list); n > 0 && list[n-1].Revision == revision && list[n-1].Name == name && string(list[n-1].Record) == string(record) {
			number = list[n-1].Number
			return nil
		}
		number = int64(len(list)) + 1
		return addVersion(ctx, tx, id, s.stamp(), revision, name, record)
	})
	return number, err
}

// addVersion adds a version with the next number.
func addVersion(ctx context.Context, tx *txn, id int64, at string, revision int64, name string, record []byte) error {
	_, err := tx.ExecContext(ctx, `
		INSERT INTO version (mitt, number, at, revision, name, record)
		SELECT ?1, 1 + coalesce((SELECT max(number) FROM version WHERE mitt = ?1), 0), ?2, ?3, ?4, ?5`,
		id, at, revision, name, string(record))
	return err
}

// readVersions returns the versions of a mitt, the oldest first.
func readVersions(ctx context.Context, tx *txn, id int64) ([]Version, error) {
	return collect(ctx, tx, func(rows *sql.Rows) (v Version, err error) {
		var at, record string
		if err = rows.Scan(&v.Number, &at, &v.Revision, &v.Name, &record); err != nil {
			return v, err
		}
		v.Record = []byte(record)
		v.At, err = parseTime(at)
		return v, err
	}, `SELECT number, at, revision, name, record FROM version WHERE mitt = ? ORDER BY number`, id)
}
