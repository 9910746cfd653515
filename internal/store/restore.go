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

// Restore puts the database in the file backup in the place of the one at
// path, also while others use that: they read the old one until the new one is
// whole. The backup is looked through and brought to the newest schema first,
// in a copy; the database that was there is kept as a backup itself, as it was
// at the very moment of the change, and its path is given ("" where there was
// none).
//
// It fails with fault.Invalid where backup is no whole database of this
// program, or path holds another program's, and with fault.Newer where one of
// them was written by a newer program; nothing is changed then.
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
		if err := letInOnly(ctx, fresh, nil); err != nil { // who was let out since can't be known
			return "", err
		}
		return "", settle(fresh, full)
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

// takeOver puts a backup in the place of the open file, with the devices that
// are let in now.
func (s *Store) takeOver(ctx context.Context, fresh string) (kept string, err error) {
	for {
		in, err := s.inNow(ctx)
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

// upToDate is a copy of a backup beside path, whole and of the newest schema;
// done takes it away, and says to other programs that nobody needs it.
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
	if err := reserve(fresh); err != nil { // for its owner only, too
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
	steps, err := known()
	if err != nil {
		return "", nil, err
	}
	return fresh, done, migrate(ctx, db, fresh, steps)
}

// fitsAsBackup refuses what is no whole backup.
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
	if err := look(ctx, backup); err != nil {
		return asFile(explain(backup, err))
	}
	return nil
}

// asFile says of the backup what is said of a database.
func asFile(err error) error {
	kind := fault.KindOf(err)
	if kind == fault.Internal {
		return err
	}
	why := strings.TrimPrefix(fault.Message(err), "db: ")
	why, _, _ = strings.Cut(why, "; ") // what to do about a database
	return fault.New(kind, "FILE: %s; name a whole backup", why).Because(err)
}

// isDamaged tells whether a file is no longer whole, or no database at all any
// more: not one that only can't be opened now, and not another program's.
func isDamaged(ctx context.Context, path string) bool {
	err := look(ctx, path)
	switch code(err) {
	case sqlite3.SQLITE_CORRUPT, sqlite3.SQLITE_NOTADB:
		return true
	case -1:
		return fault.KindOf(err) == fault.Invalid && !errors.Is(err, errNotOurs)
	}
	return false
}

// replace puts a file in the place of a damaged one, which is kept with what
// lies beside it.
func replace(path, fresh string) (kept string, err error) {
	if kept, err = place(path, damagedFile, time.Now()); err != nil {
		return "", err
	}
	for _, beside := range []string{"-wal", "-shm", ""} {
		if err := os.Rename(path+beside, kept+beside); err != nil && !errors.Is(err, os.ErrNotExist) {
			return "", cantWrite(kept, err)
		}
	}
	return kept, settle(fresh, path)
}

// exchange writes the pages of another file over the open one, in a single
// transaction. Its first page is written before the old state is copied, and
// from then on nobody else can save: so the copy has every save that was
// acknowledged. It fails with errLetOut, and nothing is changed, where others
// than in are let in by then.
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
			err = s.stillTheSame(ctx, in)
		}
		if err == nil {
			if kept, err = place(s.path, replaced, s.Now()); err == nil {
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
