package store

import (
	"fmt"
	"os"
	"path/filepath"
	"sync"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"thenar/internal/fault"
)

// A backup is taken while others save: it is whole, of one moment, and has
// every save that was acknowledged before it was begun.
//
//thenar:race
func TestBackupWhileSaving(t *testing.T) {
	s := fresh(t)
	s.Now = time.Now
	id := mittIn(t, s)
	stop := make(chan struct{})
	var mu sync.Mutex
	head := int64(1)
	var all sync.WaitGroup
	all.Go(func() {
		for {
			select {
			case <-stop:
				return
			default:
			}
			applied, err := s.Append(t.Context(), id, head, purl(1, int(head)%60+1))
			assert.NoError(t, err)
			mu.Lock()
			head = applied.Revision
			mu.Unlock()
		}
	})
	dir := t.TempDir()
	for i := range 5 {
		mu.Lock()
		before := head
		mu.Unlock()
		to := filepath.Join(dir, fmt.Sprintf("%d.db", i))
		require.NoError(t, s.Backup(t.Context(), to))
		copied := openAt(t, to)
		m, err := copied.Load(t.Context(), id)
		require.NoError(t, err)
		assert.GreaterOrEqual(t, m.Revision, before)
		assert.EqualValues(t, m.Revision, revisionsOf(t, copied, id))
	}
	close(stop)
	all.Wait()
}

// revisionsOf counts the revisions of a mitt, page by page.
func revisionsOf(t *testing.T, s *Store, id int64) (n int) {
	t.Helper()
	for page := read(t, s, id, Wants{History: true}).History; len(page) > 0; {
		n += len(page)
		if page[0].Revision == 1 {
			break
		}
		page = read(t, s, id, Wants{History: true, Before: page[0].Revision}).History
	}
	return n
}

// A backup is never written over a file, and leaves nothing behind where it
// can't be written.
func TestBackupNeedsANewFile(t *testing.T) {
	s := fresh(t)
	mittIn(t, s)
	dir := t.TempDir()
	there := filepath.Join(dir, "there.db")
	require.NoError(t, os.WriteFile(there, []byte("mine"), 0o600))
	for path, says := range map[string]string{
		there: "is there already", filepath.Join(dir, "no", "such.db"): "can't be written", dir: "is there already",
	} {
		err := s.Backup(t.Context(), path)
		assert.Equal(t, fault.Invalid, fault.KindOf(err), path)
		assert.Contains(t, fault.Message(err), says)
	}
	kept, err := os.ReadFile(there)
	require.NoError(t, err)
	assert.Equal(t, "mine", string(kept))
	left, err := os.ReadDir(dir)
	require.NoError(t, err)
	assert.Len(t, left, 1)
}

// One backup a day in use; of those that pile up, seven days are kept and
// before them the newest of each of four weeks.
func TestDailyBackups(t *testing.T) {
	s := fresh(t)
	mittIn(t, s)
	stale, err := backupPath(s.path, "daily", time.Now())
	require.NoError(t, err)
	require.NoError(t, os.WriteFile(stale+unfinished+"1", []byte("half"), 0o600))
	require.NoError(t, os.Chtimes(stale+unfinished+"1", time.Time{}, time.Date(2025, 3, 1, 0, 0, 0, 0, time.UTC)))
	day := time.Date(2025, 3, 3, 12, 0, 0, 0, time.UTC) // a Monday
	s.Now = func() time.Time { return day }
	for range 70 {
		made, err := s.BackupDaily(t.Context())
		require.NoError(t, err)
		assert.Equal(t, "daily-"+day.Format(dayFormat)+".db", filepath.Base(made))
		again, err := s.BackupDaily(t.Context())
		require.NoError(t, err)
		assert.Empty(t, again)
		day = day.AddDate(0, 0, 1)
	}
	list, err := s.Backups()
	require.NoError(t, err)
	names := map[string]bool{}
	for _, b := range list {
		names[filepath.Base(b.Path)] = true
		assert.Positive(t, b.Size)
	}
	want := map[string]bool{}
	for _, at := range []string{ // the last is Sunday the 11th of May
		"2025-05-11", "2025-05-10", "2025-05-09", "2025-05-08", "2025-05-07", "2025-05-06", "2025-05-05",
		"2025-05-04", "2025-04-27", "2025-04-20", "2025-04-13",
	} {
		want["daily-"+at+".db"] = true
	}
	assert.Equal(t, want, names)
	assert.NoFileExists(t, stale+unfinished+"1", "a copy that was never finished")
}

// Days without use make no hole in what is kept: the last seven days in use
// stay, however long ago.
func TestOutdated(t *testing.T) {
	assert.Empty(t, outdated([]string{"daily-2019-01-01.db", "daily-2020-02-29.db", "daily-2025-03-03.db"}))
	assert.Empty(t, outdated(nil))
	var names []string
	for d := range 9 {
		names = append(names, fmt.Sprintf("daily-2025-03-%02d.db", d+1))
	}
	assert.Equal(t, []string{"daily-2025-03-01.db"}, outdated(names), "the 1st and 2nd are of one week, and the 2nd is newer")
}

// What a person puts beside the backups is not theirs, and never taken away.
func TestBackupsAreKnownByName(t *testing.T) {
	for name, want := range map[string]string{
		"daily-2025-03-03.db": "daily", "schema-4-2025-03-03T101112.000Z.db": "schema-4", "replaced-2025-03-03T101112.123Z.db": "replaced",
		"mine.db": "", "daily-2025-13-03.db": "", "daily.db": "", "-2025-03-03.db": "", "daily-2025-03-03.db.part": "", "notes.txt": "",
	} {
		saved, ok := parseBackupName(name)
		assert.Equal(t, want != "", ok, name)
		assert.Equal(t, want, saved.Why, name)
	}
}
