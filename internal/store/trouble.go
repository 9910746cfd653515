package store

import (
	"context"
	"errors"
	"os"
	"slices"
	"strings"

	"modernc.org/sqlite"
	sqlite3 "modernc.org/sqlite/lib"

	"thenar/internal/fault"
)

// code returns SQLite's primary result code of an error; -1 for any other
// error.
func code(err error) int {
	var said *sqlite.Error
	if !errors.As(err, &said) {
		return -1
	}
	return said.Code() & 0xff
}

// busy reports whether another program is writing the file.
func busy(err error) bool { return code(err) == sqlite3.SQLITE_BUSY }

// fatal reports whether SQLite may have rolled back the whole transaction
// because of err (https://sqlite.org/lang_transaction.html, 3).
func fatal(err error) bool {
	switch code(err) {
	case -1, sqlite3.SQLITE_CONSTRAINT, sqlite3.SQLITE_ERROR, sqlite3.SQLITE_MISMATCH, sqlite3.SQLITE_TOOBIG, sqlite3.SQLITE_RANGE:
		return false
	}
	return true
}

// explain turns an error of opening path into a fault that tells a person what
// to do.
func explain(path string, err error) error {
	switch code(err) {
	case sqlite3.SQLITE_NOTADB:
		return fault.New(fault.Invalid, "db: %s is not a Thenar file, nor any other database; name another file with -db", path).Because(err)
	case sqlite3.SQLITE_CORRUPT:
		return damaged(path).Because(err)
	case sqlite3.SQLITE_BUSY:
		return fault.New(fault.Invalid, "db: %s is being written by another program for more than %v; end that, or name another file with -db", path, patience).Because(err)
	case sqlite3.SQLITE_FULL:
		return fault.New(fault.Invalid, "db: the disk that holds %s is full; free some space on it, or name another file with -db", path).Because(err)
	case sqlite3.SQLITE_IOERR:
		return fault.New(fault.Invalid, "db: the disk of %s is full or gives errors; free some space, or name another file with -db", path).Because(err)
	case sqlite3.SQLITE_CANTOPEN, sqlite3.SQLITE_READONLY, sqlite3.SQLITE_PERM:
		return closed(path).Because(err)
	}
	return err
}

// closed returns the fault of a file that can't be opened; it names what is in
// the way.
func closed(path string) *fault.Error {
	return fault.New(fault.Invalid, "db: %s can't be opened for reading and writing; give its owner that permission, or name another file with -db", blockers(path))
}

// blockers names the files that keep path from being written; path itself if
// none is found.
func blockers(path string) string {
	if list := inTheWay(path); len(list) > 0 {
		return strings.Join(list, " and ")
	}
	return path
}

// damaged returns the fault of a damaged file; it names the backup to restore.
func damaged(path string) *fault.Error {
	advice := "there is no backup beside it; name another file with -db"
	list, _ := backups(path) // no list, no backup to name
	if i := slices.IndexFunc(list, BackupFile.IsWhole); i >= 0 {
		advice = "put back the newest backup with: thenar restore -db " + path + " " + list[i].Path + " (the damaged file is kept)"
	}
	return fault.New(fault.Invalid, "db: %s is damaged; %s", path, advice)
}

// safe is the end of each message about trouble with an open file.
const safe = " What was saved before is safe; this is not saved yet."

// trouble turns an error of an open file into a fault that tells a person what
// to do: fault.Unavailable, since the same may work later.
func trouble(path string, err error) error {
	say := func(format string, args ...any) error {
		return fault.New(fault.Unavailable, format+safe, args...).Because(err)
	}
	switch code(err) {
	case sqlite3.SQLITE_FULL:
		return say("The disk that holds %s is full. Free some space on it.", path)
	case sqlite3.SQLITE_BUSY, sqlite3.SQLITE_LOCKED:
		return say("%s is being written by another program for more than %v. End that program, or wait for it.", path, patience)
	case sqlite3.SQLITE_READONLY, sqlite3.SQLITE_PERM:
		return say("%s can't be written. Give its owner that permission.", blockers(path))
	case sqlite3.SQLITE_CANTOPEN:
		return say("%s can't be opened any more. Look whether its disk is there and may be read and written.", path)
	case sqlite3.SQLITE_CORRUPT, sqlite3.SQLITE_NOTADB:
		return fault.New(fault.Unavailable, "%s is damaged: nothing more is written to it. Stop Thenar, then put back a backup from the status page.", path).Because(err)
	case sqlite3.SQLITE_IOERR:
		return say("The disk that holds %s is full or gives errors. Free some space on it, or look after it.", path)
	}
	return err
}

// checkUnchanged fails if the file is no longer the one that was opened: a save
// into a file that was moved away would be lost, and one into a file of a newer
// program might harm it.
func (s *Store) checkUnchanged(ctx context.Context, tx *txn) error {
	if err := s.checkFile(); err != nil {
		return err
	}
	if err := s.checkLog(); err != nil {
		return err
	}
	var version int
	if err := tx.QueryRowContext(ctx, `PRAGMA user_version`).Scan(&version); err != nil {
		return err
	}
	if version > NewestSchema() {
		return fault.New(fault.Newer, "A newer Thenar uses %s now (schema %d, here up to %d). Stop this one and start that.%s", s.path, version, NewestSchema(), safe)
	}
	return nil
}

// checkFiles fails if the file or its log is no longer the one that was opened.
// It must be called outside of a transaction.
func (s *Store) checkFiles(ctx context.Context) error {
	if err := s.checkFile(); err != nil {
		return err
	}
	return s.checkOrSaveLog(ctx)
}

// checkFile fails if the file is no longer the one that was opened.
func (s *Store) checkFile() error {
	now, err := os.Stat(s.path)
	if err != nil || !os.SameFile(now, s.file) {
		return fault.New(fault.Unavailable, "%s was moved or replaced while Thenar used it. Put it back, or start Thenar again.%s", s.path, safe)
	}
	return nil
}
