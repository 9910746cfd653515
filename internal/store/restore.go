package store

import (
	"context"
	"database/sql"
	"errors"
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"time"

	"modernc.org/sqlite"
	sqlite3 "modernc.org/sqlite/lib"

	"thenar/internal/fault"
)

// Restore replaces the database at path by the one in the file backup, even
// while other programs use it: they read the old one until the new one is
// whole. The backup is first checked and brought to the newest schema, in a
// copy. Restore keeps the old database as a backup, with every save up to the
// replacement, and returns its path ("" if there was none).
//
// It fails with fault.Invalid if backup is not a whole database of this program
// or path holds another program's, and with fault.Newer if a newer program
// wrote either; then nothing is changed.
func Restore(ctx context.Context, path, backup string) (kept string, err error) {
	defer fault.Wrap(&err, "store.Restore(%q, %q)", path, backup)
	full, err := filepath.Abs(path)
	if err != nil {
		return "", err
	}
	if backup, err = filepath.Abs(backup); err != nil {
		return "", err
	}
	fresh, done, err := upToDate(ctx, full, backup)
	if err != nil {
		return "", err
	}
	defer done()
	if _, err := os.Stat(full); errors.Is(err, os.ErrNotExist) {
		if err := letInOnly(ctx, fresh, nil); err != nil { // nobody knows who was let out since
			return "", err
		}
		return "", publish(fresh, full)
	}
	s, err := Open(ctx, full)
	if code := fault.KindOf(err); code == fault.Newer || err != nil && !isDamaged(ctx, full) {
		return "", err
	}
	if err != nil {
		if err := letInOnly(ctx, fresh, nil); err != nil {
			return "", err
		}
		return replace(full, fresh)
	}
	kept, err = s.takeOver(ctx, fresh)
	return kept, errors.Join(err, s.Close())
}

// takeOver replaces the open file by a backup that lets in the devices that are
// let in now.
func (s *Store) takeOver(ctx context.Context, fresh string) (kept string, err error) {
	for {
		in, err := s.letInNow(ctx)
		if err != nil {
			return "", explain(s.path, err)
		}
		if err := letInOnly(ctx, fresh, in); err != nil {
			return "", err
		}
		kept, err = s.exchange(ctx, fresh, in)
		if !errors.Is(err, errLetOut) || ctx.Err() != nil {
			return kept, err
		}
	}
}

// upToDate returns the path of a copy of backup beside path, checked and in the
// newest schema. done removes it and unlocks the directory.
func upToDate(ctx context.Context, path, backup string) (fresh string, done func(), err error) {
	if err := fitsAsBackup(ctx, backup); err != nil {
		return "", nil, err
	}
	if err := os.MkdirAll(filepath.Dir(path), 0o700); err != nil {
		return "", nil, cantWrite(path, err)
	}
	unlock := copying(filepath.Dir(path))
	fresh = fmt.Sprintf("%s%s%d", path, preparing, time.Now().UnixNano())
	done = func() {
		os.Remove(fresh)
		unlock()
	}
	defer func() {
		if err != nil {
			done()
		}
	}()
	if err := createEmpty(fresh); err != nil { // readable by its owner only
		return "", nil, cantWrite(fresh, err)
	}
	if err := vacuum(ctx, backup, fresh); err != nil {
		return "", nil, cantWrite(fresh, err)
	}
	db, err := sql.Open("sqlite", uri(fresh))
	if err != nil {
		return "", nil, err
	}
	defer func() { err = errors.Join(err, db.Close()) }()
	steps, err := builtIn()
	if err != nil {
		return "", nil, err
	}
	return fresh, done, migrate(ctx, db, fresh, steps)
}

// fitsAsBackup fails if a file can't be restored from.
func fitsAsBackup(ctx context.Context, backup string) error {
	info, err := os.Stat(backup)
	if err != nil {
		return fault.New(fault.Invalid, "FILE: %v; name a backup that can be read", err)
	}
	if !info.Mode().IsRegular() {
		return fault.New(fault.Invalid, "FILE: %s is no file; name a backup", backup)
	}
	if info.Size() == 0 { // to SQLite it is a database with nothing in it
		return fault.New(fault.Invalid, "FILE: %s is empty; name a whole backup", backup)
	}
	if err := verify(ctx, backup); err != nil {
		return asFile(explain(backup, err))
	}
	return nil
}

// asFile rewords a fault of a database as one of the backup.
func asFile(err error) error {
	kind := fault.KindOf(err)
	if kind == fault.Internal {
		return err
	}
	why := strings.TrimPrefix(fault.Message(err), "db: ")
	why, _, _ = strings.Cut(why, "; ") // the advice is for a database
	return fault.New(kind, "FILE: %s; name a whole backup", why).Because(err)
}

// isDamaged reports whether a file is damaged, or no database any more. A file
// that can't be opened now or is another program's is not damaged.
func isDamaged(ctx context.Context, path string) bool {
	err := verify(ctx, path)
	switch code(err) {
	case sqlite3.SQLITE_CORRUPT, sqlite3.SQLITE_NOTADB:
		return true
	case -1:
		return fault.KindOf(err) == fault.Invalid && !errors.Is(err, errNotOurs)
	}
	return false
}

// replace moves a damaged file and its side files to a backup, and fresh into
// its place.
func replace(path, fresh string) (kept string, err error) {
	if kept, err = backupPath(path, damagedFile, time.Now()); err != nil {
		return "", err
	}
	for _, beside := range []string{"-wal", "-shm", ""} {
		if err := os.Rename(path+beside, kept+beside); err != nil && !errors.Is(err, os.ErrNotExist) {
			return "", cantWrite(kept, err)
		}
	}
	return kept, publish(fresh, path)
}

// exchange overwrites the pages of the open file with those of fresh, in one
// transaction. It writes the first page before it copies the old state: from
// then on nobody else can save, so the copy has every acknowledged save. If the
// devices in are no longer those that are let in, it changes nothing and fails
// with errLetOut.
func (s *Store) exchange(ctx context.Context, fresh string, in []Device) (kept string, err error) {
	conn, err := s.writer.Conn(ctx)
	if err != nil {
		return "", err
	}
	defer func() { err = errors.Join(err, conn.Close()) }()
	err = conn.Raw(func(driver any) error {
		to, ok := driver.(interface {
			NewRestore(from string) (*sqlite.Backup, error)
		})
		if !ok {
			return errors.New("the driver can't restore")
		}
		b, err := to.NewRestore(uri(fresh))
		if err != nil {
			return err
		}
		if _, err = b.Step(1); err == nil {
			err = s.checkLetIn(ctx, in)
		}
		if err == nil {
			if kept, err = backupPath(s.path, replaced, s.Now()); err == nil {
				err = copyTo(ctx, s.path, kept)
			}
		}
		if err == nil {
			_, err = b.Step(-1)
		}
		return errors.Join(err, b.Finish())
	})
	if errors.Is(err, errLetOut) {
		return "", err
	}
	if err != nil {
		return "", explain(s.path, err)
	}
	return kept, nil
}
