package store

import (
	"context"

	"thenar/internal/chart"
	"thenar/internal/fault"
)

// heads are the numbers of a mitt's newest revision and of its newest decision.
type heads struct{ head, decided int64 }

// headOf returns the heads of a mitt; fault.NotFound if there is no such mitt.
func headOf(ctx context.Context, tx *txn, id int64) (heads, error) {
	var decided, drawn int64
	err := tx.QueryRowContext(ctx, `
		SELECT coalesce((SELECT max(revision) FROM decision WHERE mitt = ?1), 0),
			coalesce((SELECT max(revision) FROM stroke WHERE mitt = ?1), 0)`, id).Scan(&decided, &drawn)
	if err == nil && decided == 0 {
		err = missing(id)
	}
	return heads{max(decided, drawn), decided}, err
}

func missing(id int64) error { return fault.New(fault.NotFound, "There is no mitt %d.", id) }

// Create makes a mitt with document, a JSON text, as its revision 1 and marks
// as its first stroke, and returns the mitt's number. The document is kept byte
// for byte.
func (s *Store) Create(ctx context.Context, document []byte, marks ...chart.Edit) (id int64, err error) {
	defer fault.Wrap(&err, "store.Create")
	err = s.write(ctx, func(ctx context.Context, tx *txn) error {
		at := s.stamp()
		made, err := tx.ExecContext(ctx, `INSERT INTO mitt (created) VALUES (?)`, at)
		if err != nil {
			return err
		}
		if id, err = made.LastInsertId(); err != nil {
			return err
		}
		if err = decide(ctx, tx, id, 1, at, document); err != nil || len(marks) == 0 {
			return err
		}
		_, err = s.draw(ctx, tx, id, Request{Kind: Do, Newest: true, Edits: marks}, heads{1, 1})
		return err
	})
	if err != nil {
		return 0, err
	}
	return id, nil
}

// Save adds document as the newest decision of a mitt and returns its revision;
// after is the revision that the person saw.
//
// It fails with fault.NotFound for an unknown mitt, and with fault.Conflict if
// another document was saved since, or if the mitt has no revision after;
// strokes since after don't matter. A document equal to the newest one, byte
// for byte, is not saved again, so sending a form twice does no harm: Save then
// returns the revision that it has already.
func (s *Store) Save(ctx context.Context, id, after int64, document []byte) (revision int64, err error) {
	defer fault.Wrap(&err, "store.Save(%d)", id)
	done, err := s.Commit(ctx, id, Change{Document: document, After: after})
	return done.Decided, err
}

// has reports whether document is the newest one already. It fails with
// fault.Conflict if the page that sent it is older than the newest decision, or
// of another file.
func (at heads) has(ctx context.Context, tx *txn, id, after int64, document []byte) (bool, error) {
	var newest string
	err := tx.QueryRowContext(ctx, `SELECT document FROM decision WHERE mitt = ? AND revision = ?`, id, at.decided).Scan(&newest)
	switch {
	case err != nil:
		return false, err
	case after > at.head:
		return false, fault.New(fault.Conflict, "This page knows moment %d, and this mitt ends at %d. Nothing was saved; load the page again.", after, at.head)
	case newest == string(document):
		return true, nil
	case after < at.decided:
		return false, fault.New(fault.Conflict, "Another window saved this mitt meanwhile. Nothing of this one is saved yet, so that neither is lost.")
	}
	return false, nil
}

func decide(ctx context.Context, tx *txn, id, revision int64, at string, document []byte) error {
	_, err := tx.ExecContext(ctx, `INSERT INTO decision (mitt, revision, at, document) VALUES (?, ?, ?, ?)`,
		id, revision, at, string(document))
	return err
}

// Load returns a mitt as it is now; fault.NotFound if there is none.
func (s *Store) Load(ctx context.Context, id int64) (m Mitt, err error) {
	defer fault.Wrap(&err, "store.Load(%d)", id)
	err = s.read(ctx, func(tx *txn) error {
		m, err = s.load(ctx, tx, id)
		return err
	})
	if err != nil {
		return Mitt{}, err
	}
	return m, nil
}

func (s *Store) load(ctx context.Context, tx *txn, id int64) (Mitt, error) {
	m, err := readMitt(ctx, tx, id)
	if err != nil {
		return Mitt{}, err
	}
	if m.Marks, err = s.marksAt(ctx, tx, id, m.Revision); err != nil {
		return Mitt{}, err
	}
	t, err := undoStateOf(ctx, tx, id)
	m.CanUndo, m.CanRedo = t.undo > 0, t.redo > 0
	return m, err
}
