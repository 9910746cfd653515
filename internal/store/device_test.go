package store

import (
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"thenar/internal/fault"
)

// letIn lets a device in.
func letIn(t *testing.T, s *Store, name string) (token string, d Device) {
	t.Helper()
	token, err := s.LetIn(t.Context(), name)
	require.NoError(t, err)
	return token, isIn(t, s, token, true)
}

// isIn reports whether the device of a token is let in.
func isIn(t *testing.T, s *Store, token string, want bool) Device {
	t.Helper()
	d, known, err := s.FindDevice(t.Context(), token)
	require.NoError(t, err)
	assert.Equal(t, want, known && !d.Out, "%s is let in", d.Name)
	in, err := s.IsIn(t.Context(), d.ID)
	require.NoError(t, err)
	assert.Equal(t, want, in)
	return d
}

// Each device has a secret of its own, which the file does not hold, and is let
// out by itself, for good.
func TestDevices(t *testing.T) {
	s := fresh(t)
	s.Now = func() time.Time { return time.Date(2025, 3, 9, 10, 0, 0, 0, time.Local) }
	phone, p := letIn(t, s, "Android phone")
	tablet, _ := letIn(t, s, "iPad")
	assert.Equal(t, "2025-03-09", p.Day)
	handle, secret, _ := strings.Cut(phone, ".")
	assert.GreaterOrEqual(t, len(secret), 26, "26 letters of base 32 are 130 bits")
	_, other, _ := strings.Cut(tablet, ".")
	for _, wrong := range []string{"", ".", handle, handle + ".", handle + "." + other, "." + secret, phone + "A", strings.ToLower(phone)} {
		_, known, err := s.FindDevice(t.Context(), wrong)
		require.NoError(t, err)
		assert.False(t, known, wrong)
	}
	raw, err := os.ReadFile(s.path)
	require.NoError(t, err)
	wal, err := os.ReadFile(s.path + "-wal")
	require.NoError(t, err)
	assert.Contains(t, string(append(raw, wal...)), handle)
	assert.NotContains(t, string(append(raw, wal...)), secret)

	for range 2 {
		require.NoError(t, s.NoteUse(t.Context(), p.ID))
	}
	s.Now = func() time.Time { return time.Date(2025, 3, 11, 23, 0, 0, 0, time.Local) }
	require.NoError(t, s.NoteUse(t.Context(), p.ID))
	assert.Equal(t, 2, rows(t, s, `SELECT 1 FROM device_day WHERE device = ?`, p.ID), "one for each day")
	require.NoError(t, s.NameDevice(t.Context(), p.ID, "Anne’s phone"))
	list, err := s.Devices(t.Context())
	require.NoError(t, err)
	require.Len(t, list, 2)
	assert.Equal(t, []string{"iPad", "Anne’s phone", "2025-03-11"}, []string{list[0].Name, list[1].Name, list[1].Day})

	require.NoError(t, s.LetOut(t.Context(), p.ID))
	isIn(t, s, phone, false)
	isIn(t, s, tablet, true)
	assert.Equal(t, fault.NotFound, fault.KindOf(s.LetOut(t.Context(), p.ID)))
	assert.Equal(t, fault.NotFound, fault.KindOf(s.NameDevice(t.Context(), p.ID, "x")))
	assert.Equal(t, fault.NotFound, fault.KindOf(s.LetOut(t.Context(), 99)))
	n, err := s.LetAllOut(t.Context())
	require.NoError(t, err)
	assert.EqualValues(t, 1, n)
	isIn(t, s, tablet, false)
	again, _ := letIn(t, s, "Android phone")
	isIn(t, s, again, true)
}

func TestNotTooManyDevices(t *testing.T) {
	s := fresh(t)
	execute(t, s, fmt.Sprintf(`WITH RECURSIVE n (i) AS (SELECT 1 UNION ALL SELECT i + 1 FROM n WHERE i < %d)
		INSERT INTO device (at, handle, secret, name) SELECT '', printf('%%026d', i), zeroblob(32), '' FROM n`, maxDevices))
	_, err := s.LetIn(t.Context(), "one more")
	assert.Equal(t, fault.Conflict, fault.KindOf(err))
	require.NoError(t, s.LetOut(t.Context(), 1))
	_, err = s.LetIn(t.Context(), "one more")
	assert.NoError(t, err)
}

// A backup that is put back lets in whom the file let in just before: nobody
// who was let out since, everybody who came since, by the names they have now.
func TestRestoreLetsNobodyBackIn(t *testing.T) {
	dir := t.TempDir()
	path, backup := filepath.Join(dir, "thenar.db"), filepath.Join(dir, "backup.db")
	s := openAt(t, path)
	lost, l := letIn(t, s, "lost")
	kept, k := letIn(t, s, "kept")
	require.NoError(t, s.Backup(t.Context(), backup))
	require.NoError(t, s.LetOut(t.Context(), l.ID))
	require.NoError(t, s.NameDevice(t.Context(), k.ID, "named"))
	late, _ := letIn(t, s, "late")
	mittIn(t, s)
	for range 2 {
		replaced, err := Restore(t.Context(), path, backup)
		require.NoError(t, err)
		isIn(t, s, lost, false)
		assert.Equal(t, "named", isIn(t, s, kept, true).Name)
		isIn(t, s, late, true)
		assert.Empty(t, names(t, s))

		// Nor does the state before the restore, put back in turn.
		_, d := letIn(t, s, "later still")
		require.NoError(t, s.LetOut(t.Context(), d.ID))
		_, err = Restore(t.Context(), path, replaced)
		require.NoError(t, err)
		isIn(t, s, lost, false)
		isIn(t, s, late, true)
	}

	// While a backup is prepared somebody is let out: it is prepared again.
	in, err := s.letInNow(t.Context())
	require.NoError(t, err)
	_, err = s.exchange(t.Context(), backup, append(in, l))
	require.ErrorIs(t, err, errLetOut)
	assert.Len(t, names(t, s), 1, "nothing is changed")

	// Of a file of its own nobody knows who was let out since.
	elsewhere := filepath.Join(dir, "elsewhere.db")
	_, err = Restore(t.Context(), elsewhere, backup)
	require.NoError(t, err)
	isIn(t, openAt(t, elsewhere), kept, false)
	damaged := filepath.Join(dir, "damaged.db")
	require.NoError(t, os.WriteFile(damaged, []byte(strings.Repeat("no database ", 500)), 0o600))
	_, err = Restore(t.Context(), damaged, backup)
	require.NoError(t, err)
	isIn(t, openAt(t, damaged), kept, false)
}
