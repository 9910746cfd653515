package store

import (
	"database/sql"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"thenar/internal/fault"
)

// scribbleOver overwrites the middle of every page but the first, as a dying
// disk may.
func scribbleOver(t *testing.T, path string) {
	t.Helper()
	f, err := os.OpenFile(path, os.O_RDWR, 0)
	require.NoError(t, err)
	info, err := f.Stat()
	require.NoError(t, err)
	for at := int64(4096); at < info.Size(); at += 4096 {
		_, err := f.WriteAt([]byte(strings.Repeat("x", 600)), at)
		require.NoError(t, err)
	}
	require.NoError(t, f.Close())
}

// scribbleText makes a file that is no database.
func scribbleText(t *testing.T, path string) {
	t.Helper()
	require.NoError(t, os.WriteFile(path, []byte(strings.Repeat("dear reader ", 500)), 0o600))
}

// unavailable is what a save says while something is wrong with the file.
func unavailable(t *testing.T, s *Store) string {
	t.Helper()
	_, err := s.Create(t.Context(), []byte(`{"name": "lost?"}`))
	require.Error(t, err)
	require.Contains(t, []fault.Kind{fault.Unavailable, fault.Newer}, fault.KindOf(err), "%v", err)
	return fault.Message(err)
}

// A file that is moved away under a running program takes no more saves: they
// would go down with it. Put back, it takes them again.
func TestFileMovedAway(t *testing.T) {
	path := filepath.Join(t.TempDir(), "thenar.db")
	s := openAt(t, path)
	mittIn(t, s)
	require.NoError(t, os.Rename(path, path+".away"))
	assert.Contains(t, unavailable(t, s), "was moved or replaced")
	require.NoError(t, os.WriteFile(path, nil, 0o600))
	assert.Contains(t, unavailable(t, s), "was moved or replaced", "another file in its place is not it")
	require.NoError(t, os.Rename(path+".away", path))
	mittIn(t, s)
	for _, end := range []string{"", logEnd, mapEnd} {
		require.NoError(t, os.Rename(path+end, path+".away"+end))
	}
	assert.Contains(t, unavailable(t, s), "thenar.db was moved or replaced", "with its log")
	for _, end := range []string{"", logEnd, mapEnd} {
		require.NoError(t, os.Rename(path+".away"+end, path+end))
	}
	mittIn(t, s)
}

// A newer program may bring the file on while an older one runs, which then
// stops writing.
func TestFileMadeNewerMeanwhile(t *testing.T) {
	path := filepath.Join(t.TempDir(), "thenar.db")
	s := openAt(t, path)
	mittIn(t, s)
	database(`PRAGMA user_version = 9001`)(t, path)
	assert.Contains(t, unavailable(t, s), "A newer Thenar uses")
	assert.Equal(t, 1, rows(t, s, `SELECT 1 FROM mitt`))
}

// Another program that keeps the file locked is named, and waited for.
func TestFileLocked(t *testing.T) {
	path := filepath.Join(t.TempDir(), "thenar.db")
	s := openAt(t, path)
	mittIn(t, s)
	other, err := sql.Open("sqlite", uri(path)+"?_txlock=immediate")
	require.NoError(t, err)
	defer other.Close()
	lock, err := other.BeginTx(t.Context(), nil)
	require.NoError(t, err)
	execute(t, s, `PRAGMA busy_timeout = 50`)
	assert.Contains(t, unavailable(t, s), "is being written by another program")
	assert.Len(t, names(t, s), 1, "it can be read")
	require.NoError(t, lock.Rollback())
	mittIn(t, s)
}

// A file that can't be written any more says so, and can still be read.
func TestFileReadOnlyInUse(t *testing.T) {
	s := openAt(t, filepath.Join(t.TempDir(), "thenar.db"))
	mittIn(t, s)
	execute(t, s, `PRAGMA query_only = 1`)
	assert.Contains(t, unavailable(t, s), "can't be written. Give its owner that permission")
	assert.Len(t, names(t, s), 1)
	execute(t, s, `PRAGMA query_only = 0`)
	mittIn(t, s)
}

// Damage that comes up in use stops the reading of what is damaged, and says
// where the backups are.
func TestFileDamagedInUse(t *testing.T) {
	path := filepath.Join(t.TempDir(), "thenar.db")
	s := openAt(t, path)
	mittIn(t, s)
	execute(t, s, `PRAGMA wal_checkpoint(TRUNCATE)`)
	scribbleOver(t, path)
	fresh, err := sql.Open("sqlite", dsn(path, "_pragma=query_only(1)"))
	require.NoError(t, err)
	defer fresh.Close()
	s.reading = prepareFor(fresh) // that has no page in its memory
	_, err = s.List(t.Context())
	require.Equal(t, fault.Unavailable, fault.KindOf(err), "%v", err)
	assert.Contains(t, fault.Message(err), "put back a backup")
	assert.Equal(t, fault.Unavailable, fault.KindOf(s.Check(t.Context())))
}
