package store

import (
	"os"
	"path/filepath"
	"sync"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"thenar/internal/chart"
	"thenar/internal/fault"
)

// names are the mitts of a file, by their documents.
func names(t *testing.T, s *Store) (list []string) {
	t.Helper()
	all, err := s.List(t.Context())
	require.NoError(t, err)
	for _, m := range all {
		list = append(list, string(m.Document))
	}
	return list
}

// A backup is put back while a server has the file open: it sees the old
// state, then the new one, and goes on; what was there is kept.
//
//thenar:race
func TestRestoreWhileOpen(t *testing.T) {
	dir := t.TempDir()
	path := filepath.Join(dir, "thenar.db")
	s := openAt(t, path)
	id := mittIn(t, s)
	_, err := s.Append(t.Context(), id, 1, purl(1, 1))
	require.NoError(t, err)
	backup := filepath.Join(dir, "backup.db")
	require.NoError(t, s.Backup(t.Context(), backup))
	before := read(t, s, id, Wants{})
	_, err = s.Append(t.Context(), id, 2, purl(2, 2)) // revision 3, to be gone
	require.NoError(t, err)
	_, err = s.Create(t.Context(), []byte(`{"name": "later"}`))
	require.NoError(t, err)

	kept, err := Restore(t.Context(), path, backup)
	require.NoError(t, err)
	assert.Equal(t, []string{`{"name": "first"}`}, names(t, s))
	assert.Len(t, names(t, openAt(t, kept)), 2, "the old file is whole, with its last save")

	after := read(t, s, id, Wants{})
	assert.Greater(t, after.Restored, before.Restored)
	news, err := s.Since(t.Context(), id, 3)
	require.NoError(t, err)
	assert.Equal(t, after.Restored, news.Restored)

	// The same revision is drawn again, with something else: the line that the
	// writer remembers is another one.
	other := cell(2, 2, chart.Colours, "b")
	_, err = s.Append(t.Context(), id, 2, []chart.Edit{other})
	require.NoError(t, err)
	m, err := s.Load(t.Context(), id)
	require.NoError(t, err)
	assert.Equal(t, marksOf(append(purl(1, 1), other)...), m.Marks)
	back, err := s.Undo(t.Context(), id, 3)
	require.NoError(t, err)
	assert.Equal(t, []chart.Edit{cell(2, 2, chart.Colours, "")}, back.Edits)
}

// Saves go on while a backup is put back: each that was acknowledged is in the
// file that was kept, or in the one that stands.
//
//thenar:race
func TestRestoreAmidSaves(t *testing.T) {
	dir := t.TempDir()
	path := filepath.Join(dir, "thenar.db")
	s := openAt(t, path)
	backup := filepath.Join(dir, "backup.db")
	require.NoError(t, s.Backup(t.Context(), backup))
	var all sync.WaitGroup
	stop := make(chan struct{})
	acknowledged := map[string]bool{}
	all.Go(func() {
		for {
			select {
			case <-stop:
				return
			default:
			}
			document := `{"name": "` + time.Now().Format(time.RFC3339Nano) + `"}`
			if _, err := s.Create(t.Context(), []byte(document)); assert.NoError(t, err) {
				acknowledged[document] = true
			}
		}
	})
	there := map[string]bool{}
	for range 5 {
		kept, err := Restore(t.Context(), path, backup)
		require.NoError(t, err)
		for _, name := range names(t, openAt(t, kept)) {
			there[name] = true
		}
	}
	close(stop)
	all.Wait()
	for _, name := range names(t, s) {
		there[name] = true
	}
	assert.Equal(t, acknowledged, there)
}

// What can't be put back changes nothing.
func TestRestoreRefuses(t *testing.T) {
	dir := t.TempDir()
	path := filepath.Join(dir, "thenar.db")
	s := openAt(t, path)
	mittIn(t, s)
	good := filepath.Join(dir, "good.db")
	require.NoError(t, s.Backup(t.Context(), good))
	file := func(name string, change func(*testing.T, string)) string {
		to := filepath.Join(dir, name)
		raw, err := os.ReadFile(good)
		require.NoError(t, err)
		require.NoError(t, os.WriteFile(to, raw, 0o600))
		change(t, to)
		return to
	}
	torn := func(t *testing.T, path string) { require.NoError(t, os.Truncate(path, 20_000)) }
	scribbled := func(t *testing.T, path string) { scribbleOver(t, path) }
	empty := func(t *testing.T, path string) { require.NoError(t, os.Truncate(path, 0)) }
	for backup, says := range map[string]string{
		file("empty.db", empty):                                    "is empty",
		filepath.Join(dir, "none.db"):                              "no such file",
		file("letter.db", scribbleText):                            "nor any other database",
		file("torn.db", torn):                                      "damaged",
		file("scribbled.db", scribbled):                            "damaged",
		file("newer.db", database(`PRAGMA user_version = 9001`)):   "newer Thenar",
		file("foreign.db", database(`PRAGMA application_id = 77`)): "another program",
		dir: "",
	} {
		_, err := Restore(t.Context(), path, backup)
		require.Error(t, err, backup)
		assert.NotEqual(t, fault.Internal, fault.KindOf(err), "%s: %v", backup, err)
		assert.Contains(t, fault.Message(err), "FILE: ")
		assert.Contains(t, fault.Message(err), says)
	}
	assert.Len(t, names(t, s), 1)
	left, err := filepath.Glob(path + ".restore*")
	require.NoError(t, err)
	assert.Empty(t, left)

	foreign := file("theirs.db", database(`PRAGMA application_id = 77`))
	before, err := os.ReadFile(foreign)
	require.NoError(t, err)
	_, err = Restore(t.Context(), foreign, good)
	require.Error(t, err)
	after, err := os.ReadFile(foreign)
	require.NoError(t, err)
	assert.Equal(t, before, after, "another program's file is not replaced")
}

// A damaged file says so with the way back, and that way is open: the damaged
// one is kept.
func TestRestoreOverADamagedFile(t *testing.T) {
	dir := t.TempDir()
	path := filepath.Join(dir, "thenar.db")
	s, err := Open(t.Context(), path)
	require.NoError(t, err)
	mittIn(t, s)
	backup, err := s.BackupDaily(t.Context())
	require.NoError(t, err)
	require.NoError(t, s.Close())
	scribbleOver(t, path)
	_, err = Open(t.Context(), path)
	require.Error(t, err)
	assert.Contains(t, fault.Message(err), "thenar restore -db "+path+" "+backup)
	kept, err := Restore(t.Context(), path, backup)
	require.NoError(t, err)
	assert.Contains(t, kept, "damaged-")
	assert.FileExists(t, kept)
	again, err := Open(t.Context(), path)
	require.NoError(t, err)
	assert.Len(t, names(t, again), 1)
	require.NoError(t, again.Close())

	scribbleOver(t, path)
	_, err = Open(t.Context(), path)
	assert.Contains(t, fault.Message(err), "thenar restore -db "+path+" "+backup, "not what was laid aside, though it is newer")
}

// A file that is whole, or not there, is not taken for a damaged one.
func TestWhatIsDamaged(t *testing.T) {
	dir := t.TempDir()
	path := filepath.Join(dir, "thenar.db")
	s := openAt(t, path)
	mittIn(t, s)
	require.False(t, isDamaged(t.Context(), path))
	require.NoError(t, os.WriteFile(filepath.Join(dir, "letter"), []byte("dear reader"), 0o600))
	assert.False(t, isDamaged(t.Context(), filepath.Join(dir, "none.db")))
	assert.True(t, isDamaged(t.Context(), filepath.Join(dir, "letter")))
}

// A backup may be put where nothing is yet.
func TestRestoreToANewPlace(t *testing.T) {
	s := fresh(t)
	mittIn(t, s)
	backup := filepath.Join(t.TempDir(), "backup.db")
	require.NoError(t, s.Backup(t.Context(), backup))
	path := filepath.Join(t.TempDir(), "sub", "thenar.db")
	kept, err := Restore(t.Context(), path, backup)
	require.NoError(t, err)
	assert.Empty(t, kept)
	assert.Len(t, names(t, openAt(t, path)), 1)
}
