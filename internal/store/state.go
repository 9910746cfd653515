package store

import (
	"context"
	"errors"
	"io/fs"
	"os"
	"time"

	"thenar/internal/fault"
)

// State is the condition of the database.
type State struct {
	Path           string
	Size           int64 // bytes, including the log
	Schema         int
	Mitts, Classes int
	Checked        time.Time // when the file was last checked
	Damage         string    // what was found then; empty: none
}

// checked is the result of the last check of the file.
type checked struct {
	at     time.Time
	damage string
}

// State returns the condition of the database. It does not check the file: see
// Check.
func (s *Store) State(ctx context.Context) (st State, err error) {
	defer fault.Wrap(&err, "store.State")
	st = State{Path: s.path, Schema: NewestSchema()}
	for _, beside := range []string{"", "-wal"} {
		info, err := os.Stat(s.path + beside)
		if errors.Is(err, fs.ErrNotExist) {
			continue
		}
		if err != nil {
			return st, err
		}
		st.Size += info.Size()
	}
	if c := s.checked.Load(); c != nil {
		st.Checked, st.Damage = c.at, c.damage
	}
	return st, s.read(ctx, func(tx *txn) error {
		return tx.QueryRowContext(ctx, `SELECT (SELECT count(*) FROM mitt), (SELECT count(*) FROM class)`).Scan(&st.Mitts, &st.Classes)
	})
}

// Savable returns nil if a save would work now, else why not: fault.Unavailable
// or fault.Newer. A full disk shows only when something is saved.
func (s *Store) Savable(ctx context.Context) (err error) {
	defer fault.Wrap(&err, "store.Savable")
	return s.write(ctx, func(context.Context, *txn) error { return nil })
}

// Check checks the whole file, which takes longer the larger it is. It fails
// with fault.Unavailable if the file is damaged.
func (s *Store) Check(ctx context.Context) (err error) {
	defer fault.Wrap(&err, "store.Check")
	err = check(ctx, s.reader, s.path)
	s.noteCheck(err)
	if err != nil && ctx.Err() == nil {
		return fault.New(fault.Unavailable, "%s", fault.Message(err)).Because(err)
	}
	return err
}

// noteCheck keeps the result of a check.
func (s *Store) noteCheck(err error) {
	c := &checked{at: s.Now()}
	if err != nil {
		c.damage = fault.Message(explain(s.path, err))
	}
	s.checked.Store(c)
}

// BackupNow makes a backup in the backup directory, and returns its path.
func (s *Store) BackupNow(ctx context.Context) (made string, err error) {
	defer fault.Wrap(&err, "store.BackupNow")
	if err := s.checkFiles(ctx); err != nil {
		return "", err
	}
	to, err := backupPath(s.path, "asked", s.Now())
	if err != nil {
		return "", err
	}
	return to, s.copyIntoFolder(ctx, to)
}
