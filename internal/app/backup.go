package app

import (
	"context"
	"slices"

	"thenar/internal/store"
)

// BackupFile is a backup kept beside the file.
type BackupFile = store.BackupFile

// BackupDaily makes today's backup unless there is one, removes those that are
// no longer kept, and returns the new backup's path, or "" if it made none.
func (a *App) BackupDaily(ctx context.Context) (made string, err error) {
	return a.store.BackupDaily(ctx)
}

// BackupNow makes a backup beside the file and returns its path.
func (a *App) BackupNow(ctx context.Context) (made string, err error) { return a.store.BackupNow(ctx) }

// Backup copies the whole file, as it stands now, to a new file at path. Others
// can go on reading and writing.
func (a *App) Backup(ctx context.Context, path string) error { return a.store.Backup(ctx, path) }

// Backups returns the backups beside the file, newest first.
func (a *App) Backups() ([]BackupFile, error) { return a.store.Backups() }

// LastBackup returns the newest backup of a list, leaving out files that a
// restore laid aside.
func LastBackup(list []BackupFile) (last BackupFile, found bool) {
	i := slices.IndexFunc(list, BackupFile.IsWhole)
	if i < 0 {
		return BackupFile{}, false
	}
	return list[i], true
}

// Restore replaces the file at path with a backup, even while an app serves it,
// and returns where the file that was there is kept.
func Restore(ctx context.Context, path, backup string) (kept string, err error) {
	return store.Restore(ctx, path, backup)
}
