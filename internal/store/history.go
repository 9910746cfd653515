package store

import (
	"context"
	"database/sql"
	"time"

	"thenar/internal/fault"
)

// Revision is one entry in the history of a mitt.
type Revision struct {
	Revision int64
	At       time.Time // UTC
	Kind     string    // "decision", or a stroke's "do", "undo" or "redo"
	Name     string    // given by the person; may be empty
}

func readHistory(ctx context.Context, tx *txn, id int64) ([]Revision, error) {
	return collect(ctx, tx, scanRevision, `
		SELECT revision, at, kind, coalesce(
			(SELECT name FROM moment WHERE mitt = ?1 AND revision = r.revision ORDER BY id DESC LIMIT 1), '')
		FROM (
			SELECT revision, at, 'decision' AS kind FROM decision WHERE mitt = ?1
			UNION ALL
			SELECT revision, at, kind FROM stroke WHERE mitt = ?1) AS r
		ORDER BY revision`, id)
}

func scanRevision(rows *sql.Rows) (r Revision, err error) {
	var at string
	if err := rows.Scan(&r.Revision, &at, &r.Kind, &r.Name); err != nil {
		return Revision{}, err
	}
	r.At, err = parseTime(at)
	return r, err
}

func noRevision(revision, newest int64) error {
	return fault.New(fault.NotFound, "This mitt has no revision %d; its newest is %d.", revision, newest)
}

// Name names a revision of a mitt; an empty name removes the earlier one.
func (s *Store) Name(ctx context.Context, id, revision int64, name string) (err error) {
	defer fault.Wrap(&err, "store.Name(%d, %d)", id, revision)
	return s.write(ctx, func(ctx context.Context, tx *txn) error {
		at, err := headOf(ctx, tx, id)
		if err != nil {
			return err
		}
		if revision < 1 || revision > at.head {
			return noRevision(revision, at.head)
		}
		return s.name(ctx, tx, id, revision, name)
	})
}

func (s *Store) name(ctx context.Context, tx *txn, id, revision int64, name string) error {
	_, err := tx.ExecContext(ctx, `INSERT INTO moment (mitt, revision, at, name) VALUES (?, ?, ?, ?)`, id, revision, s.stamp(), name)
	return err
}

// News is what was added to a mitt after a revision.
type News struct {
	Strokes  []Drawn // in order
	Revision int64   // the newest decision or stroke
	Decided  int64   // the newest decision
	CanUndo  bool
	CanRedo  bool
	Restored int64 // as Mitt.Restored
}

// Since returns what was added to a mitt after a revision; fault.NotFound if
// there is no such mitt.
func (s *Store) Since(ctx context.Context, id, after int64) (n News, err error) {
	defer fault.Wrap(&err, "store.Since(%d, %d)", id, after)
	err = s.read(ctx, func(tx *txn) error {
		at, err := headOf(ctx, tx, id)
		if err != nil {
			return err
		}
		n.Revision, n.Decided = at.head, at.decided
		if err := tx.QueryRowContext(ctx, `SELECT `+restored).Scan(&n.Restored); err != nil {
			return err
		}
		if at.head <= after {
			return nil
		}
		if n.Strokes, err = strokesSince(ctx, tx, id, after); err != nil {
			return err
		}
		t, err := undoStateOf(ctx, tx, id)
		n.CanUndo, n.CanRedo = t.undo > 0, t.redo > 0
		return err
	})
	if err != nil {
		return News{}, err
	}
	return n, nil
}
