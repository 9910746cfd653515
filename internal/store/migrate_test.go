package store

import (
	"testing"
	"testing/fstest"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"thenar/internal/fault"
)

func sqlFiles(scripts map[string]string) fstest.MapFS {
	files := fstest.MapFS{}
	for name, script := range scripts {
		files[name] = &fstest.MapFile{Data: []byte(script)}
	}
	return files
}

// What brings a file on is done wholly or not at all.
func TestMigrationIsWholeOrNothing(t *testing.T) {
	s := fresh(t)
	id := mittIn(t, s)
	all, err := builtIn()
	require.NoError(t, err)
	next := append(all[:len(all):len(all)],
		step{"good", `CREATE TABLE good (x) STRICT`},
		step{"bad", `CREATE TABLE half (x INT) STRICT; INSERT INTO half VALUES (1); SELECT nothing`})
	next[len(all)].script = `CREATE TABLE good (x INT) STRICT`
	err = migrate(t.Context(), s.writer, "file.db", next)
	require.ErrorContains(t, err, "migration bad")
	assert.Equal(t, 1, rows(t, s, `SELECT 1 FROM pragma_user_version WHERE user_version = ?`, len(all)))
	assert.Zero(t, rows(t, s, `SELECT 1 FROM sqlite_schema WHERE name IN ('good', 'half')`))
	require.NoError(t, migrate(t.Context(), s.writer, "file.db", next[:len(all)+1]))
	_, err = s.Load(t.Context(), id)
	assert.NoError(t, err)

	err = migrate(t.Context(), s.writer, "file.db", all)
	assert.Equal(t, fault.Newer, fault.KindOf(err), "the file has a step more by now")
}

// Numbers say the order, so a hole or a doublet is a mistake.
func TestStepsAreNumbered(t *testing.T) {
	found, err := steps(sqlFiles(map[string]string{"0002_b.sql": "b", "0001_a.sql": "a"}))
	require.NoError(t, err)
	assert.Equal(t, []step{{"0001_a.sql", "a"}, {"0002_b.sql", "b"}}, found)
	for _, names := range []map[string]string{
		{"0002_b.sql": ""},
		{"0001_a.sql": "", "0003_c.sql": ""},
		{"0001_a.sql": "", "0001_b.sql": ""},
		{"1.sql": ""},
	} {
		_, err := steps(sqlFiles(names))
		assert.ErrorContains(t, err, "should begin with", names)
	}
}
