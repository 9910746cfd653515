package store

import (
	"context"
	"database/sql"
	"errors"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"
	"strings"
	"time"

	sqlite3 "modernc.org/sqlite/lib"

	"thenar/internal/fault"
)

// Backup writes the whole database, as it is now, to a new file at path. Others
// may read and write meanwhile. When it returns, the copy has been checked and
// is on the disk. It fails with fault.Invalid, and leaves nothing behind, if
// path exists or can't be written.
func (s *Store) Backup(ctx context.Context, path string) (err error) {
	defer fault.Wrap(&err, "store.Backup(%q)", path)
	full, err := filepath.Abs(path)
	if err != nil {
		return err
	}
	if _, err := os.Lstat(full); err == nil {
		return fault.New(fault.Invalid, "FILE: %s is there already; name a new file", path)
	}
	if err := s.checkFiles(ctx); err != nil {
		return err
	}
	return copyTo(ctx, s.path, full)
}

// unfinished is the part of a file name that marks a copy in the making.
const unfinished = ".part-"

// copyTo copies the database at from to a new file at to. The copy appears
// whole or not at all.
func copyTo(ctx context.Context, from, to string) (err error) {
	defer copying(filepath.Dir(to))()
	// SQLite copies into an existing empty file. Making it here keeps it private
	// to its owner, and fails early where no file can be made.
	file, err := os.CreateTemp(filepath.Dir(to), filepath.Base(to)+unfinished+"*")
	if err != nil {
		return cantWrite(to, err)
	}
	part := file.Name()
	defer os.Remove(part)
	if err := file.Close(); err != nil {
		return cantWrite(to, err)
	}
	if err := vacuum(ctx, from, part); err != nil {
		return cantWrite(to, err)
	}
	if err := verify(ctx, part); err != nil {
		return err
	}
	if err := publish(part, to); err != nil {
		return cantWrite(to, err)
	}
	return nil
}

// cantWrite returns the fault of a copy that could not be written to path.
func cantWrite(path string, err error) error {
	var of *fs.PathError
	if errors.As(err, &of) {
		err = of.Err // leave out the name of the temporary file
	}
	return fault.New(fault.Invalid, "FILE: %s can't be written (%v); name a file on a disk with space that can be written", path, err).Because(err)
}

// vacuum copies the database at from, packed, into the empty file to. It
// retries while another program opens or closes from.
func vacuum(ctx context.Context, from, to string) error {
	for deadline := time.Now().Add(patience); ; {
		err := vacuumOnce(ctx, from, to)
		if c := code(err); c != sqlite3.SQLITE_CANTOPEN && c != sqlite3.SQLITE_BUSY || time.Now().After(deadline) {
			return err
		}
		select {
		case <-ctx.Done():
			return ctx.Err()
		case <-time.After(10 * time.Millisecond):
		}
	}
}

func vacuumOnce(ctx context.Context, from, to string) (err error) {
	db, err := sql.Open("sqlite", uri(from)+"?mode=ro&_pragma=busy_timeout("+milliseconds+")")
	if err != nil {
		return err
	}
	defer func() { err = errors.Join(err, db.Close()) }()
	_, err = db.ExecContext(ctx, `VACUUM INTO ?`, to)
	return err
}

// verify checks that the file at path is a whole database of this program.
func verify(ctx context.Context, path string) (err error) {
	if err := inspect(ctx, path); err != nil {
		return err
	}
	db, err := sql.Open("sqlite", uri(path)+"?mode=ro&_pragma=busy_timeout("+milliseconds+")")
	if err != nil {
		return err
	}
	defer func() { err = errors.Join(err, db.Close()) }()
	return check(ctx, db, path)
}

// publish flushes the finished file part to the disk and renames it to to.
func publish(part, to string) error {
	if err := flush(part); err != nil {
		return err
	}
	if err := os.Rename(part, to); err != nil {
		return err
	}
	return flushDir(filepath.Dir(to))
}

// flush waits until the contents of a file are on the disk.
func flush(path string) error {
	f, err := os.OpenFile(path, os.O_RDWR, 0)
	if err != nil {
		return err
	}
	return errors.Join(f.Sync(), f.Close())
}

// flushDir waits until the names in a directory are on the disk.
func flushDir(dir string) error {
	d, err := os.Open(dir)
	if err != nil {
		return err
	}
	_ = d.Sync() // not every system can flush a directory
	return d.Close()
}

// backupDir returns the directory of the automatic backups of the database at
// path.
func backupDir(path string) string {
	ending := filepath.Ext(path)
	return path[:len(path)-len(ending)] + "-backups"
}

// backupBeforeMigrating backs up a file that is about to be migrated to schema
// newest.
func (s *Store) backupBeforeMigrating(ctx context.Context, newest int) error {
	var version int
	if err := s.writer.QueryRowContext(ctx, `PRAGMA user_version`).Scan(&version); err != nil {
		return err
	}
	if version == 0 || version >= newest {
		return nil // an empty file, or no migration to run
	}
	to, err := backupPath(s.path, fmt.Sprintf("schema-%d", version), s.Now())
	if err == nil {
		err = copyTo(ctx, s.path, to)
	}
	if err != nil {
		return fault.New(fault.Invalid, "db: %s goes from schema %d to %d; no backup could be made before (%s): make space for %s", s.path, version, newest, strings.TrimSuffix(fault.Message(err), "."), backupDir(s.path)).Because(err)
	}
	return nil
}
