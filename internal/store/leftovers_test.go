package store

import (
	"os"
	"path/filepath"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

func init() {
	tasks["prepare"] = func(t *testing.T, path string) {
		s, err := Open(t.Context(), path)
		require.NoError(t, err)
		backup, err := s.BackupNow(t.Context())
		require.NoError(t, err)
		require.NoError(t, s.Close())
		_, _, err = upToDate(t.Context(), path, backup)
		require.NoError(t, err)
	}
}

func restoring(t *testing.T, path string) []string {
	t.Helper()
	list, err := filepath.Glob(path + ".restore-*")
	require.NoError(t, err)
	return list
}

// What a killed restore left is cleared at the next start, and not while the
// restore is under way.
func TestLeftByAKilledRestore(t *testing.T) {
	path := filepath.Join(t.TempDir(), "thenar.db")
	kill := program(t, "prepare", path)
	require.Len(t, restoring(t, path), 1)
	s := openAt(t, path)
	assert.Len(t, restoring(t, path), 1, "it is still at work")
	kill()
	require.NoError(t, s.Close())
	openAt(t, path)
	assert.Empty(t, restoring(t, path))
}

// Only what is surely this program's is cleared.
func TestLeftovers(t *testing.T) {
	path := filepath.Join(t.TempDir(), "thenar.db")
	s := openAt(t, path)
	mittIn(t, s)
	saved, err := s.BackupNow(t.Context())
	require.NoError(t, err)
	whole, err := os.ReadFile(saved)
	require.NoError(t, err)
	require.NoError(t, s.Close())
	folder := backupDir(path)
	for name, cleared := range map[string]bool{
		path + ".restore-17":                                        true,
		path + ".restore-17-journal":                                true,
		path + ".restore-plan":                                      false,
		filepath.Join(filepath.Dir(path), "other.db.restore-17"):    false,
		filepath.Join(filepath.Dir(path), "copy.db.part-17"):        true,
		filepath.Join(folder, "daily-2025-03-03.db.part-5"):         true,
		filepath.Join(folder, "daily-2025-03-03.db.part-5-journal"): true,
		filepath.Join(folder, "my.part-5"):                          false,
		filepath.Join(folder, "daily-2025-03-03.db"):                false,
	} {
		require.NoError(t, os.WriteFile(name, whole, 0o600))
		defer func() {
			_, err := os.Lstat(name)
			assert.Equal(t, cleared, os.IsNotExist(err), name)
		}()
	}
	begun := filepath.Join(filepath.Dir(path), "diary.part-2")
	require.NoError(t, os.WriteFile(begun, []byte("the second part of the diary, which is longer than a head of a database is"), 0o600))
	openAt(t, path)
	assert.FileExists(t, begun)
}
