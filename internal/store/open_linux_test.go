package store

import (
	"os"
	"path/filepath"
	"runtime"
	"syscall"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"thenar/internal/fault"
)

// nobody is a user that owns nothing here.
const nobody = 65534

// asNobody runs f without root's right to write anywhere: the user by whom
// Linux judges access to files belongs to a thread (setfsuid(2)).
func asNobody(t *testing.T, f func()) {
	t.Helper()
	if os.Getuid() != 0 {
		f()
		return
	}
	runtime.LockOSThread()
	defer runtime.UnlockOSThread()
	require.NoError(t, syscall.Setfsuid(nobody))
	defer func() { require.NoError(t, syscall.Setfsuid(0)) }()
	f()
}

// Where a file may be read and not written, or not even made, Open says so.
func TestOpenNeedsToWrite(t *testing.T) {
	dir := t.TempDir()
	require.NoError(t, os.Chmod(filepath.Dir(dir), 0o755))
	old := filepath.Join(dir, "old.db")
	s, err := Open(t.Context(), old)
	require.NoError(t, err)
	mittIn(t, s)
	require.NoError(t, s.Close())
	require.NoError(t, os.Chmod(old, 0o444))
	require.NoError(t, os.Chmod(dir, 0o555))
	t.Cleanup(func() { require.NoError(t, os.Chmod(dir, 0o700)) })
	for path, says := range map[string]string{
		filepath.Join(dir, "new.db"):        "can't be used",
		filepath.Join(dir, "sub", "new.db"): "can't be used",
		old:                                 "and " + dir + " can't be opened for reading and writing",
	} {
		asNobody(t, func() { _, err = Open(t.Context(), path) })
		require.Error(t, err, path)
		assert.Equal(t, fault.Invalid, fault.KindOf(err), err.Error())
		assert.Contains(t, fault.Message(err), "db: "+path+" "+says)
	}
}

// A file that was made writable again, and what lies beside it was not: Open
// names what is still in the way, and only that. A file that may not be written
// gets nothing put beside it.
func TestOpenNamesWhatIsInTheWay(t *testing.T) {
	dir := t.TempDir()
	require.NoError(t, os.Chmod(filepath.Dir(dir), 0o755))
	path := filepath.Join(dir, "thenar.db")
	s, err := Open(t.Context(), path)
	require.NoError(t, err)
	mittIn(t, s)
	require.NoError(t, s.Close())
	require.NoError(t, os.Chmod(path, 0o444))
	require.NoError(t, os.Chmod(dir, 0o777))
	refused := func() string {
		t.Helper()
		asNobody(t, func() { _, err = Open(t.Context(), path) })
		require.Error(t, err)
		require.Equal(t, fault.Invalid, fault.KindOf(err), err.Error())
		return fault.Message(err)
	}
	const says = " can't be opened for reading and writing; give its owner that permission"
	assert.Contains(t, refused(), "db: "+path+says)
	for _, end := range []string{logEnd, mapEnd} {
		assert.NoFileExists(t, path+end)
		require.NoError(t, os.WriteFile(path+end, nil, 0o600))
		require.NoError(t, os.Chmod(path+end, 0o444))
	}
	require.NoError(t, os.Chmod(path, 0o666))
	assert.Contains(t, refused(), "db: "+path+logEnd+" and "+path+mapEnd+says)
	require.NoError(t, os.Chmod(path+logEnd, 0o666))
	assert.Contains(t, refused(), "db: "+path+mapEnd+says)
	require.NoError(t, os.Remove(path+mapEnd))
	require.NoError(t, os.Chmod(dir, 0o555))
	t.Cleanup(func() { require.NoError(t, os.Chmod(dir, 0o700)) })
	assert.Contains(t, refused(), "db: "+dir+says)
}
