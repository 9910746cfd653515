package app

import (
	"context"
	"slices"

	"thenar/internal/store"
)

// BackupFile is a backup that lies beside the file.
type BackupFile = store.BackupFile

// BackupDaily makes today's backup unless there is one, takes away those that
// are no longer kept, and returns its path; "" where there was nothing to do.
func (a *App) BackupDaily(ctx context.Context) (made string, err error) {
	return a.store.BackupDaily(ctx)
}

// BackupNow makes a backup beside the file and returns its path.
func (a *App) BackupNow(ctx context.Context) (made string, err error) { return a.store.BackupNow(ctx) }

// Backup copies the whole file, as it stands now, to a new file at path, while
// others go on reading and writing.
func (a *App) Backup(ctx context.Context, path string) error { return a.store.Backup(ctx, path) }

// Backups returns the backups that lie beside the file, the newest first.
func (a *App) Backups() ([]BackupFile, error) { return a.store.Backups() }

// LastBackup returns the newest of a list that was made as a backup, rather
// than laid aside by a restore.
func LastBackup(list []BackupFile) (last BackupFile, found bool) {
	i := slices.IndexFunc(list, BackupFile.IsWhole)
	if i < 0 {
		return BackupFile{}, false
	}
	return list[i], true
}

// Restore puts a backup in the place of the file at path, also while an app
// serves it, and returns where what was there is kept.
func Restore(ctx context.Context, path, backup string) (kept string, err error) {
	return store.Restore(ctx, path, backup)
}
