package store

import (
	"context"
	"database/sql"
	"errors"
	"time"

	"thenar/internal/fault"
)

// Class is a class at its newest revision.
type Class struct {
	ID       int64
	Revision int64
	Created  time.Time // of revision 1, in UTC
	Changed  time.Time // of Revision, in UTC
	Document []byte    // as it was saved, byte for byte
}

// classes selects each class with its newest revision.
const classes = `
	SELECT c.id, c.created, d.revision, d.at, d.document
	FROM class c
	CROSS JOIN class_decision d ON d.class = c.id
		AND d.revision = (SELECT max(revision) FROM class_decision WHERE class = c.id)`

func scanClass(row interface{ Scan(...any) error }) (c Class, err error) {
	var created, changed string
	if err := row.Scan(&c.ID, &created, &c.Revision, &changed, &c.Document); err != nil {
		return Class{}, err
	}
	if c.Created, err = parseTime(created); err != nil {
		return Class{}, err
	}
	c.Changed, err = parseTime(changed)
	return c, err
}

// CreateClass makes a class with document, a JSON text, as its revision 1, and
// returns the class's number.
func (s *Store) CreateClass(ctx context.Context, document []byte) (id int64, err error) {
	defer fault.Wrap(&err, "store.CreateClass")
	err = s.write(ctx, func(ctx context.Context, tx *txn) error {
		at := s.stamp()
		made, err := tx.ExecContext(ctx, `INSERT INTO class (created) VALUES (?)`, at)
		if err != nil {
			return err
		}
		if id, err = made.LastInsertId(); err != nil {
			return err
		}
		return decideClass(ctx, tx, id, 1, at, document)
	})
	if err != nil {
		return 0, err
	}
	return id, nil
}

// SaveClass adds document as the newest revision of a class and returns its
// number; after is the revision that it was made from. It fails with
// fault.NotFound for an unknown class and with fault.Conflict if after is not
// the newest revision. A document equal to the newest one, byte for byte, is
// not saved again.
func (s *Store) SaveClass(ctx context.Context, id, after int64, document []byte) (revision int64, err error) {
	defer fault.Wrap(&err, "store.SaveClass(%d)", id)
	err = s.write(ctx, func(ctx context.Context, tx *txn) error {
		now, err := loadClass(ctx, tx, id)
		switch {
		case err != nil:
			return err
		case string(now.Document) == string(document):
			revision = now.Revision
			return nil
		case after != now.Revision:
			return fault.New(fault.Conflict, "Another window saved this class meanwhile. Nothing of this one is saved yet, so that neither is lost.")
		}
		revision = now.Revision + 1
		return decideClass(ctx, tx, id, revision, s.stamp(), document)
	})
	if err != nil {
		return 0, err
	}
	return revision, nil
}

func decideClass(ctx context.Context, tx *txn, id, revision int64, at string, document []byte) error {
	_, err := tx.ExecContext(ctx, `INSERT INTO class_decision (class, revision, at, document) VALUES (?, ?, ?, ?)`,
		id, revision, at, string(document))
	return err
}

// LoadClass returns a class as it is now; fault.NotFound if there is none.
func (s *Store) LoadClass(ctx context.Context, id int64) (c Class, err error) {
	defer fault.Wrap(&err, "store.LoadClass(%d)", id)
	err = s.read(ctx, func(tx *txn) error {
		c, err = loadClass(ctx, tx, id)
		return err
	})
	return c, err
}

func loadClass(ctx context.Context, tx *txn, id int64) (Class, error) {
	c, err := scanClass(tx.QueryRowContext(ctx, classes+` WHERE c.id = ?`, id))
	if errors.Is(err, sql.ErrNoRows) {
		return Class{}, fault.New(fault.NotFound, "There is no class %d.", id)
	}
	return c, err
}

// ClassAndMitts returns a class and all mitts that its patterns may be made
// from, read in one transaction; fault.NotFound if there is no such class.
func (s *Store) ClassAndMitts(ctx context.Context, id int64) (c Class, mitts []Mitt, err error) {
	defer fault.Wrap(&err, "store.ClassAndMitts(%d)", id)
	err = s.read(ctx, func(tx *txn) error {
		if c, err = loadClass(ctx, tx, id); err != nil {
			return err
		}
		mitts, err = readMitts(ctx, tx)
		return err
	})
	return c, mitts, err
}

// Classes returns all classes, the last changed first, and all mitts that a new
// class may be made from.
func (s *Store) Classes(ctx context.Context) (list []Class, mitts []Mitt, err error) {
	defer fault.Wrap(&err, "store.Classes")
	err = s.read(ctx, func(tx *txn) error {
		list, err = collect(ctx, tx, func(rows *sql.Rows) (Class, error) { return scanClass(rows) },
			classes+` ORDER BY d.at DESC, c.id DESC`)
		if err != nil {
			return err
		}
		mitts, err = readMitts(ctx, tx)
		return err
	})
	return list, mitts, err
}
