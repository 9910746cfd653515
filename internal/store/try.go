package store

import (
	"context"
	"database/sql"
	"errors"
	"time"

	"thenar/internal/fault"
)

// Try is what a person noted with a mitt on the hand.
type Try struct {
	ID       int64
	Mitt     int64
	Key      string
	At       time.Time // of saving, in UTC
	Revision int64     // of the mitt that was tried on
	Record   []byte    // JSON
	Photo    bool      // whether there is a photograph
	Answer   *Answer   // the newest; nil: not answered yet
}

// Answer is what a person decided after a try. To note one, set Try and Text.
type Answer struct {
	ID       int64
	Try      int64
	At       time.Time
	Before   int64  // the revision before the corrections
	Revision int64  // the revision with them
	Text     []byte // JSON
}

// NoteTry stores a try with its photograph, if there is one, and returns its
// number. A repeated request, with the same key and record, is stored once.
// Another record under the same key, from a page that the person went back to,
// is another try.
func (s *Store) NoteTry(ctx context.Context, mitt int64, key string, record, photo []byte) (id int64, err error) {
	defer fault.Wrap(&err, "store.NoteTry(%d)", mitt)
	err = s.write(ctx, func(ctx context.Context, tx *txn) error {
		at, err := headOf(ctx, tx, mitt)
		if err != nil {
			return err
		}
		var there string
		own := key
		err = tx.QueryRowContext(ctx, `SELECT id, record FROM try WHERE mitt = ? AND key = ?`, mitt, key).Scan(&id, &there)
		switch {
		case errors.Is(err, sql.ErrNoRows):
		case err != nil || there == string(record):
			return err
		default:
			own += " " + s.stamp()
		}
		made, err := tx.ExecContext(ctx, `INSERT INTO try (mitt, key, at, revision, record, photo) VALUES (?, ?, ?, ?, ?, ?)`,
			mitt, own, s.stamp(), at.head, string(record), photo)
		if err != nil {
			return err
		}
		id, err = made.LastInsertId()
		return err
	})
	return id, err
}

// tries selects each try with its newest answer.
const tries = `
	SELECT t.id, t.mitt, t.key, t.at, t.revision, t.record, t.photo IS NOT NULL,
		coalesce(v.id, 0), coalesce(v.at, ''), coalesce(v.before, 0), coalesce(v.revision, 0), coalesce(v.answer, '')
	FROM try t LEFT JOIN verdict v ON v.id = (SELECT max(id) FROM verdict WHERE try = t.id)`

func scanTry(row interface{ Scan(...any) error }) (t Try, err error) {
	var at, answered, record, answer string
	var v Answer
	if err := row.Scan(&t.ID, &t.Mitt, &t.Key, &at, &t.Revision, &record, &t.Photo, &v.ID, &answered, &v.Before, &v.Revision, &answer); err != nil {
		return Try{}, err
	}
	t.Record = []byte(record)
	if t.At, err = parseTime(at); err != nil || v.ID == 0 {
		return t, err
	}
	v.Try, v.Text = t.ID, []byte(answer)
	v.At, err = parseTime(answered)
	t.Answer = &v
	return t, err
}

// readTries returns the tries of a mitt, or of all mitts if mitt is 0, the
// oldest first.
func readTries(ctx context.Context, tx *txn, mitt int64) ([]Try, error) {
	return collect(ctx, tx, func(rows *sql.Rows) (Try, error) { return scanTry(rows) },
		tries+` WHERE ?1 = 0 OR t.mitt = ?1 ORDER BY t.id`, mitt)
}

// Photo returns the photograph of a try; fault.NotFound if there is none.
func (s *Store) Photo(ctx context.Context, mitt, try int64) (photo []byte, err error) {
	defer fault.Wrap(&err, "store.Photo(%d, %d)", mitt, try)
	err = s.read(ctx, func(tx *txn) error {
		return tx.QueryRowContext(ctx, `SELECT photo FROM try WHERE mitt = ? AND id = ? AND photo IS NOT NULL`, mitt, try).Scan(&photo)
	})
	if errors.Is(err, sql.ErrNoRows) {
		return nil, fault.New(fault.NotFound, "This try has no photograph.")
	}
	return photo, err
}

// answer adds the answer to a try, with the revisions before and after it.
func (s *Store) answer(ctx context.Context, tx *txn, a Answer, before, revision int64) error {
	_, err := tx.ExecContext(ctx, `INSERT INTO verdict (try, at, before, revision, answer) VALUES (?, ?, ?, ?, ?)`,
		a.Try, s.stamp(), before, revision, string(a.Text))
	return err
}

// drawn reports whether a stroke with this key is stored.
func drawn(ctx context.Context, tx *txn, mitt int64, key string) (done bool, err error) {
	err = tx.QueryRowContext(ctx, `SELECT count(*) > 0 FROM stroke WHERE mitt = ? AND key = ?`, mitt, key).Scan(&done)
	return done, err
}

// Unlearn drops what was learned of a zone from all answers so far.
func (s *Store) Unlearn(ctx context.Context, zone string) (err error) {
	defer fault.Wrap(&err, "store.Unlearn(%s)", zone)
	return s.write(ctx, func(ctx context.Context, tx *txn) error {
		_, err := tx.ExecContext(ctx, `INSERT INTO unlearned (at, zone, verdict) SELECT ?, ?, max(id) FROM verdict HAVING max(id) IS NOT NULL`, s.stamp(), zone)
		return err
	})
}

// Habits is what habits are learned from.
type Habits struct {
	Tries     []Try            // of all mitts, the oldest first
	Mitts     []Mitt           // without Marks, CanUndo and CanRedo; nil if there are no tries
	Unlearned map[string]int64 // by zone: the number of the last answer that no longer counts
}

func readHabits(ctx context.Context, tx *txn) (h Habits, err error) {
	if h.Tries, err = readTries(ctx, tx, 0); err != nil || len(h.Tries) == 0 {
		return h, err
	}
	if h.Mitts, err = readMitts(ctx, tx); err != nil {
		return h, err
	}
	h.Unlearned, err = readUnlearned(ctx, tx)
	return h, err
}

func readUnlearned(ctx context.Context, tx *txn) (map[string]int64, error) {
	type one struct {
		zone    string
		verdict int64
	}
	list, err := collect(ctx, tx, func(rows *sql.Rows) (o one, err error) { return o, rows.Scan(&o.zone, &o.verdict) },
		`SELECT zone, max(verdict) FROM unlearned GROUP BY zone`)
	upTo := map[string]int64{}
	for _, o := range list {
		upTo[o.zone] = o.verdict
	}
	return upTo, err
}
