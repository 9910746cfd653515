package store

import (
	"context"
	"errors"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"time"

	"thenar/internal/fault"
)

// The numbers of daily backups that are kept: one for each of the last days,
// then one for each week before those.
const (
	keptDays  = 7
	keptWeeks = 4
)

// daily is the prefix of the name of a day's backup.
const daily = "daily"

// The formats of the times in the names of backups.
const (
	dayFormat     = "2006-01-02"
	instantFormat = "2006-01-02T150405.000Z"
)

// BackupFile is an automatic backup.
type BackupFile struct {
	Path string
	Why  string // daily, asked, schema-4 (before migrating from 4), replaced or damaged (by a restore)
	At   time.Time
	Size int64 // bytes
}

// backupPath returns the path of a new backup of the database at path, and
// makes its directory if it is missing.
func backupPath(path, why string, now time.Time) (string, error) {
	dir := backupDir(path)
	if err := os.MkdirAll(dir, 0o700); err != nil {
		return "", folderFault(dir, err)
	}
	at := now.UTC().Format(instantFormat)
	if why == daily {
		at = now.Format(dayFormat)
	}
	return filepath.Join(dir, why+"-"+at+".db"), nil
}

// backups returns the backups of the database at path, the newest first.
func backups(path string) ([]BackupFile, error) {
	dir := backupDir(path)
	entries, err := os.ReadDir(dir)
	if _, there := os.Lstat(dir); errors.Is(err, fs.ErrNotExist) && there != nil {
		return nil, nil
	}
	if err != nil {
		return nil, folderFault(dir, err)
	}
	var list []BackupFile
	for _, e := range entries {
		saved, ok := parseBackupName(e.Name())
		info, err := e.Info()
		if !ok || err != nil || !info.Mode().IsRegular() {
			continue // not a backup, or removed just now
		}
		saved.Path, saved.Size = filepath.Join(dir, e.Name()), info.Size()
		if saved.Why == daily {
			saved.At = info.ModTime()
		}
		list = append(list, saved)
	}
	slices.SortFunc(list, func(a, b BackupFile) int { return b.At.Compare(a.At) })
	return list, nil
}

// copyIntoFolder makes a backup at to, a path in the backup directory.
func (s *Store) copyIntoFolder(ctx context.Context, to string) error {
	err := copyTo(ctx, s.path, to)
	if fault.KindOf(err) == fault.Invalid { // its message asks for another file name, which nobody chose here
		return folderFault(filepath.Dir(to), errors.Unwrap(err))
	}
	return err
}

// folderFault returns the fault that says why no backup can be kept in dir.
func folderFault(dir string, err error) error {
	why := "it can't be used"
	info, stat := os.Stat(dir)
	linked, lstat := os.Lstat(dir)
	var of *fs.PathError
	switch {
	case stat == nil && !info.IsDir():
		why = "it is a file"
	case stat != nil && lstat == nil && linked.Mode()&fs.ModeSymlink != 0:
		why = "it is a link that leads nowhere"
	case errors.As(err, &of):
		why = of.Err.Error()
	case err != nil:
		why = err.Error()
	}
	return fault.New(fault.Unavailable, "No backup can be kept in %s: %s. Make it a folder with space that its owner may write.", dir, why).Because(err)
}

// parseBackupName parses the name of a backup.
func parseBackupName(name string) (BackupFile, bool) {
	stem, ok := strings.CutSuffix(name, ".db")
	if !ok {
		return BackupFile{}, false
	}
	for _, format := range []string{instantFormat, dayFormat} {
		cut := len(stem) - len(format)
		if cut < 2 || stem[cut-1] != '-' {
			continue
		}
		if at, err := time.Parse(format, stem[cut:]); err == nil {
			return BackupFile{Why: stem[:cut-1], At: at}, true
		}
	}
	return BackupFile{}, false
}

// IsWhole reports whether a backup was made as one. What a restore laid aside
// may be damaged.
func (b BackupFile) IsWhole() bool { return b.Why != replaced && b.Why != damagedFile }

// The prefixes of the names of files that a restore lays aside.
const (
	replaced    = "replaced"
	damagedFile = "damaged"
)

// Backups returns the automatic backups, the newest first.
func (s *Store) Backups() ([]BackupFile, error) { return backups(s.path) }

// BackupDaily makes today's backup unless there is one, and removes outdated
// ones: it keeps the newest of each of the last 7 days and of the 4 weeks
// before those in which the database was used. It returns the path of the new
// backup, or "" if there was nothing to do.
func (s *Store) BackupDaily(ctx context.Context) (made string, err error) {
	defer fault.Wrap(&err, "store.BackupDaily")
	if err := s.checkFiles(ctx); err != nil {
		return "", err
	}
	to, err := backupPath(s.path, daily, s.Now())
	if err != nil {
		return "", err
	}
	if _, err := os.Lstat(to); err == nil {
		return "", nil
	}
	if st, err := s.State(ctx); err != nil || st.Mitts+st.Classes == 0 {
		return "", err
	}
	if err := s.copyIntoFolder(ctx, to); err != nil {
		return "", err
	}
	return to, s.removeOutdated()
}

// removeOutdated removes outdated daily backups, and unfinished copies older
// than a day. Other backups stay until a person removes them.
func (s *Store) removeOutdated() error {
	entries, err := os.ReadDir(backupDir(s.path))
	if err != nil {
		return err
	}
	var days, gone []string
	for _, e := range entries {
		info, err := e.Info()
		if err != nil {
			continue // removed just now
		}
		if saved, ok := parseBackupName(e.Name()); ok && saved.Why == daily {
			days = append(days, e.Name())
		} else if leftover.MatchString(e.Name()) && s.Now().Sub(info.ModTime()) > 24*time.Hour {
			gone = append(gone, e.Name())
		}
	}
	for _, name := range append(gone, outdated(days)...) {
		err = errors.Join(err, os.Remove(filepath.Join(backupDir(s.path), name)))
	}
	return err
}

// outdated returns those of the names of daily backups that need not be kept.
func outdated(names []string) (old []string) {
	slices.Sort(names)
	slices.Reverse(names) // the newest first
	weeks := map[string]bool{}
	for i, name := range names {
		if i < keptDays {
			continue
		}
		saved, ok := parseBackupName(name)
		if !ok {
			continue
		}
		year, week := saved.At.ISOWeek()
		of := fmt.Sprintf("%d-%d", year, week)
		if weeks[of] || len(weeks) == keptWeeks {
			old = append(old, name)
			continue
		}
		weeks[of] = true
	}
	return old
}
