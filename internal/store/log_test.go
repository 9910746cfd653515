package store

import (
	"context"
	"errors"
	"io"
	"os"
	"path/filepath"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"thenar/internal/fault"
)

// asAfterAKill opens what lies on the disk now as a program does that is
// started after this one was killed: copies, since a process that opens its own
// file again finds what only its memory has.
func asAfterAKill(t *testing.T, path string) *Store {
	t.Helper()
	to := filepath.Join(t.TempDir(), "thenar.db")
	for _, end := range []string{"", logEnd} { // the map is made anew
		from, err := os.Open(path + end)
		if os.IsNotExist(err) {
			continue
		}
		require.NoError(t, err)
		copied, err := os.Create(to + end)
		require.NoError(t, err)
		_, err = io.Copy(copied, from)
		require.NoError(t, err)
		require.NoError(t, copied.Close())
		require.NoError(t, from.Close())
	}
	return openAt(t, to)
}

// inUse is a file with 20 acknowledged strokes, most of them in its log only.
func inUse(t *testing.T) (s *Store, id, head int64) {
	t.Helper()
	s = openAt(t, filepath.Join(t.TempDir(), "thenar.db"))
	id, head = mittIn(t, s), 1
	for range 20 {
		applied, err := s.Append(t.Context(), id, head, purl(1, int(head)))
		require.NoError(t, err)
		head = applied.Revision
	}
	return s, id, head
}

// A log that is removed under a running program takes no more saves: they would
// go down with it. What was acknowledged before is in the file then, whatever
// becomes of the program.
func TestLogRemoved(t *testing.T) {
	for name, remove := range map[string]func(t *testing.T, path string){
		"the log":               func(t *testing.T, path string) { require.NoError(t, os.Remove(path+logEnd)) },
		"the map, then the log": func(t *testing.T, path string) { removeBoth(t, path) },
		"another log in its place": func(t *testing.T, path string) {
			require.NoError(t, os.Remove(path+logEnd))
			require.NoError(t, os.WriteFile(path+logEnd, nil, 0o600))
		},
	} {
		t.Run(name, func(t *testing.T) {
			t.Parallel()
			s, id, head := inUse(t)
			remove(t, s.path)
			says := unavailable(t, s)
			assert.Contains(t, says, "was removed or replaced while Thenar used it. Start Thenar again.")
			assert.Contains(t, says, "thenar.db-")
			_, err := s.Append(t.Context(), id, head, purl(2, 1))
			assert.Equal(t, fault.Unavailable, fault.KindOf(err), "%v", err)
			m, err := s.Load(t.Context(), id)
			require.NoError(t, err, "it can still be read")
			assert.Equal(t, head, m.Revision)

			after := asAfterAKill(t, s.path)
			m, err = after.Load(t.Context(), id)
			require.NoError(t, err)
			assert.Equal(t, head, m.Revision, "every save that was acknowledged, and none that was not")
			assert.NoError(t, after.Check(t.Context()))
		})
	}
}

func removeBoth(t *testing.T, path string) {
	t.Helper()
	require.NoError(t, os.Remove(path+mapEnd))
	require.NoError(t, os.Remove(path+logEnd))
}

// The map of the log alone is noticed, too: another program would make its own,
// and each would write over the other's saves. The log is left as it is.
func TestMapOfTheLogRemoved(t *testing.T) {
	s, id, head := inUse(t)
	require.NoError(t, os.Remove(s.path+mapEnd))
	assert.Contains(t, unavailable(t, s), "thenar.db-shm was removed or replaced")
	m, err := asAfterAKill(t, s.path).Load(t.Context(), id)
	require.NoError(t, err)
	assert.Equal(t, head, m.Revision)
}

// A log that was moved away and back is the same one.
func TestLogPutBack(t *testing.T) {
	s, id, head := inUse(t)
	for range 2 {
		require.NoError(t, os.Rename(s.path+logEnd, s.path+".away"))
		assert.Contains(t, unavailable(t, s), "thenar.db-wal was removed or replaced")
		require.NoError(t, os.Rename(s.path+".away", s.path+logEnd))
		applied, err := s.Append(t.Context(), id, head, purl(2, int(head)%20+1))
		require.NoError(t, err)
		head = applied.Revision
	}
	require.NoError(t, os.Remove(s.path+logEnd))
	unavailable(t, s)
	m, err := asAfterAKill(t, s.path).Load(t.Context(), id)
	require.NoError(t, err)
	assert.Equal(t, head, m.Revision)
}

// It is also noticed while nobody saves: a kill hours later loses nothing.
//
//thenar:race
func TestLogRemovedWhileIdle(t *testing.T) {
	s, id, head := inUse(t)
	require.NoError(t, os.Remove(s.path+logEnd))
	s.looks.Reset(time.Millisecond)
	require.Eventually(t, func() bool { return s.folded.Load() }, 5*time.Second, time.Millisecond)
	m, err := asAfterAKill(t, s.path).Load(t.Context(), id)
	require.NoError(t, err)
	assert.Equal(t, head, m.Revision)
}

// A log that goes while a save is being committed has not lost it: it is called
// saved only once it is in the file.
//
//thenar:race
func TestLogRemovedAmidASave(t *testing.T) {
	s, id, head := inUse(t)
	require.NoError(t, s.write(t.Context(), func(ctx context.Context, tx *txn) error {
		_, err := s.commit(ctx, tx, id, Change{Strokes: []Request{{Kind: Do, After: head, Edits: purl(2, 1)}}})
		return errors.Join(err, os.Remove(s.path+logEnd))
	}))
	m, err := asAfterAKill(t, s.path).Load(t.Context(), id)
	require.NoError(t, err)
	assert.Equal(t, head+1, m.Revision)
}

// A page that is read by a connection of its own is shown with the log gone,
// and a backup is not made of half of what is there.
func TestReadWithTheLogGone(t *testing.T) {
	s, id, head := inUse(t)
	taken, err := s.reader.Conn(t.Context())
	require.NoError(t, err)
	defer taken.Close()
	require.NoError(t, os.Remove(s.path+logEnd))
	m, err := s.Load(t.Context(), id)
	require.NoError(t, err)
	assert.Equal(t, head, m.Revision)
	for name, backup := range map[string]func() error{
		"now":   func() error { _, err := s.BackupNow(t.Context()); return err },
		"daily": func() error { _, err := s.BackupDaily(t.Context()); return err },
		"file":  func() error { return s.Backup(t.Context(), filepath.Join(t.TempDir(), "copy.db")) },
	} {
		err := backup()
		assert.Equal(t, fault.Unavailable, fault.KindOf(err), "%s: %v", name, err)
		assert.Contains(t, fault.Message(err), "was removed or replaced", name)
	}
}

// Where another program has begun a map of its own, what it saved is not taken
// away when this one ends.
func TestLogOfAnotherProgram(t *testing.T) {
	s, id, head := inUse(t)
	require.NoError(t, os.Remove(s.path+mapEnd))
	program(t, "save", s.path)()
	unavailable(t, s)
	require.NoError(t, s.Close())
	after := asAfterAKill(t, s.path)
	assert.Equal(t, 2, rows(t, after, `SELECT 1 FROM mitt`))
	m, err := after.Load(t.Context(), id)
	require.NoError(t, err)
	assert.Equal(t, head, m.Revision)
}
