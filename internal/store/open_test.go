package store

import (
	"database/sql"
	"os"
	"path/filepath"
	"strconv"
	"strings"
	"sync"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"thenar/internal/fault"
)

// A path that is nothing yet becomes a file of the newest schema, readable by
// its owner only, with its directories.
func TestOpenMakesFileAndDirectories(t *testing.T) {
	dir := filepath.Join(t.TempDir(), "data", "thenar")
	path := filepath.Join(dir, "thenar.db")
	s := openAt(t, path)
	assert.Equal(t, NewestSchema(), s.Schema())
	var version, id int
	require.NoError(t, s.writer.QueryRow(`SELECT user_version, application_id FROM pragma_user_version, pragma_application_id`).Scan(&version, &id))
	assert.Equal(t, NewestSchema(), version)
	assert.Equal(t, applicationID, id)
	mittIn(t, s)
	for name, want := range map[string]os.FileMode{dir: 0o700, path: 0o600, path + "-wal": 0o600, path + "-shm": 0o600} {
		info, err := os.Stat(name)
		require.NoError(t, err)
		assert.Equal(t, want, info.Mode().Perm(), name)
	}
}

// Every character that a name may have is part of the name, also those that
// mean something in the address by which SQLite opens a file.
func TestOpenTakesAnyName(t *testing.T) {
	for _, name := range []string{"a b.db", "what?.db", "n#1.db", "100%.db", "%41.db", "a?mode=memory", "x&y=z;.db", "ä—.db", ":memory:", "file:q.db", "a+b.db"} {
		t.Run(name, func(t *testing.T) {
			dir := t.TempDir()
			t.Chdir(dir)
			s, err := Open(t.Context(), name)
			require.NoError(t, err)
			id := mittIn(t, s)
			require.NoError(t, s.Close())
			found, err := os.ReadDir(dir)
			require.NoError(t, err)
			require.Len(t, found, 1, "after closing, one file and nothing beside it")
			assert.Equal(t, name, found[0].Name())
			_, err = openAt(t, filepath.Join(dir, name)).Load(t.Context(), id)
			assert.NoError(t, err)
		})
	}
}

// What is asked for holds on every connection, of both sides.
func TestPragmasHoldOnEveryConnection(t *testing.T) {
	s := fresh(t)
	for _, db := range []*sql.DB{s.writer, s.reader} {
		for range db.Stats().MaxOpenConnections {
			conn, err := db.Conn(t.Context())
			require.NoError(t, err)
			defer conn.Close()
			for _, p := range pragmas {
				var got string
				require.NoError(t, conn.QueryRowContext(t.Context(), "PRAGMA "+p.name).Scan(&got))
				assert.Equal(t, p.answer, got, p.name)
			}
		}
	}
	// A connection that can't do what is asked is refused: nothing but
	// memory is journaled in memory.
	_, err := pool(t.Context(), "file::memory:?_pragma=busy_timeout(5000)&_pragma=foreign_keys(1)&_pragma=journal_mode(WAL)", 1)
	assert.ErrorContains(t, err, `journal_mode is "memory" there, not "wal"`)
}

// The reading side can't write, whatever it is asked.
func TestReaderDoesNotWrite(t *testing.T) {
	s := fresh(t)
	_, err := s.reader.Exec(`INSERT INTO mitt (created) VALUES ('')`)
	assert.ErrorContains(t, err, "readonly")
}

// database makes a file by SQL, past the store.
func database(script string) func(t *testing.T, path string) {
	return func(t *testing.T, path string) {
		db, err := sql.Open("sqlite", uri(path))
		require.NoError(t, err)
		_, err = db.Exec(script)
		require.NoError(t, err)
		require.NoError(t, db.Close())
	}
}

// A refused file keeps every byte, and the message says what it is.
func TestOpenRefuses(t *testing.T) {
	content := func(text string) func(t *testing.T, path string) {
		return func(t *testing.T, path string) { require.NoError(t, os.WriteFile(path, []byte(text), 0o600)) }
	}
	for name, c := range map[string]struct {
		make func(t *testing.T, path string)
		kind fault.Kind
		says string
	}{
		"tables of another program":   {database(`CREATE TABLE t (x)`), fault.Invalid, "is not a Thenar file: another program keeps its data there"},
		"mark of another program":     {database(`PRAGMA application_id = 7; CREATE TABLE t (x)`), fault.Invalid, "is not a Thenar file: another program"},
		"mark, but no table yet":      {database(`PRAGMA application_id = 7`), fault.Invalid, "is not a Thenar file: another program"},
		"a log of its own":            {database(`PRAGMA journal_mode = WAL; CREATE TABLE t (x)`), fault.Invalid, "is not a Thenar file: another program"},
		"text":                        {content(strings.Repeat("knit 2, purl 2\n", 100)), fault.Invalid, "is not a Thenar file, nor any other database"},
		"a few letters":               {content("k2p2"), fault.Invalid, "is not a Thenar file, nor any other database"},
		"cut off after the first 100": {content("SQLite format 3\x00" + strings.Repeat("\x00", 84)), fault.Invalid, "is not a Thenar file"},
		"newer":                       {newerFile, fault.Newer, "is of a newer Thenar (schema 9001, here up to " + strconv.Itoa(NewestSchema()) + "); start that one"},
		"a directory":                 {func(t *testing.T, path string) { require.NoError(t, os.Mkdir(path, 0o700)) }, fault.Invalid, "can't be used (it is no file)"},
	} {
		t.Run(name, func(t *testing.T) {
			path := filepath.Join(t.TempDir(), "file.db")
			c.make(t, path)
			before, _ := os.ReadFile(path)
			_, err := Open(t.Context(), path)
			require.Error(t, err)
			assert.Equal(t, c.kind, fault.KindOf(err), err.Error())
			assert.Contains(t, fault.Message(err), "db: "+path+" "+c.says)
			after, _ := os.ReadFile(path)
			assert.Equal(t, before, after, "a refused file is left as it was")
		})
	}
}

// newerFile makes a file as a program might that knows more schemas, and
// another journal.
func newerFile(t *testing.T, path string) {
	s, err := Open(t.Context(), path)
	require.NoError(t, err)
	require.NoError(t, s.Close())
	database(`PRAGMA journal_mode = DELETE; CREATE TABLE later (x INT) STRICT; PRAGMA user_version = 9001`)(t, path)
}

// Places where no file can be made are named with the reason.
func TestOpenSaysWhyAPlaceIsNoGood(t *testing.T) {
	dir := t.TempDir()
	file := filepath.Join(dir, "file")
	require.NoError(t, os.WriteFile(file, nil, 0o600))
	_, err := Open(t.Context(), "")
	assert.Equal(t, "db: no file is named; name one with -db", fault.Message(err))
	_, err = Open(t.Context(), filepath.Join(file, "thenar.db"))
	assert.Equal(t, fault.Invalid, fault.KindOf(err))
	assert.Contains(t, fault.Message(err), "can't be used")
}

// An empty file is a new one, as a person or another program may make it.
func TestOpenTakesAnEmptyFile(t *testing.T) {
	path := filepath.Join(t.TempDir(), "thenar.db")
	require.NoError(t, os.WriteFile(path, nil, 0o600))
	mittIn(t, openAt(t, path))
}

// Opening again changes nothing, and many may open a new file at one time.
//
//thenar:race
func TestOpenAtOneTime(t *testing.T) {
	path := filepath.Join(t.TempDir(), "new", "thenar.db")
	var all sync.WaitGroup
	stores := make([]*Store, 8)
	errs := make([]error, len(stores))
	for i := range stores {
		all.Go(func() { stores[i], errs[i] = Open(t.Context(), path) })
	}
	all.Wait()
	for i, s := range stores {
		require.NoError(t, errs[i])
		mittIn(t, s)
	}
	for _, s := range stores {
		list, err := s.List(t.Context())
		require.NoError(t, err)
		assert.Len(t, list, len(stores))
		require.NoError(t, s.Close())
	}
}
