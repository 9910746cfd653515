package store

import (
	"os"
	"path/filepath"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"thenar/internal/fault"
	"thenar/internal/testenv"
)

// A disk that runs full refuses the saves that no longer fit, in words, and
// loses none that it acknowledged; with space again it goes on where it
// stopped, also after the program was started anew.
func TestDiskRunsFull(t *testing.T) {
	dir := testenv.Disk(t, 2<<20)
	path := filepath.Join(dir, "thenar.db")
	s, err := Open(t.Context(), path)
	require.NoError(t, err)
	id := mittIn(t, s)
	ballast := filepath.Join(dir, "ballast")
	require.NoError(t, os.WriteFile(ballast, make([]byte, 1<<20), 0o600))

	head, refused := int64(1), 0
	for round := 0; refused < 20; round++ {
		applied, err := s.Append(t.Context(), id, head, purl(1, round%60+1))
		if err == nil {
			head = applied.Revision
			continue
		}
		refused++
		require.Equal(t, fault.Unavailable, fault.KindOf(err), "%v", err)
		require.Contains(t, fault.Message(err), "full")
	}
	require.Greater(t, head, int64(20))
	m, err := s.Load(t.Context(), id)
	require.NoError(t, err)
	assert.Equal(t, head, m.Revision)
	assert.Equal(t, fault.Invalid, fault.KindOf(s.Backup(t.Context(), filepath.Join(dir, "backup.db"))), "a backup doesn't fit, either")

	require.NoError(t, os.Remove(ballast))
	applied, err := s.Append(t.Context(), id, head, purl(2, 1))
	require.NoError(t, err)
	require.Equal(t, head+1, applied.Revision)
	require.NoError(t, s.Close())
	again := openAt(t, path)
	m, err = again.Load(t.Context(), id)
	require.NoError(t, err)
	assert.Equal(t, head+1, m.Revision)
	left, err := filepath.Glob(filepath.Join(dir, "*.part-*"))
	require.NoError(t, err)
	assert.Empty(t, left)
}
