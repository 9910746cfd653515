package store

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"thenar/internal/chart"
)

// The file itself refuses what the store never does, since other programs can
// open it as well, and do so without foreign keys.
func TestSchemaIsAppendOnly(t *testing.T) {
	s := fresh(t)
	id := mittIn(t, s)
	applied, err := s.Append(t.Context(), id, 1, purl(1, 1)) // revision 2
	require.NoError(t, err)
	require.EqualValues(t, 2, applied.Revision)
	require.NoError(t, s.Name(t.Context(), id, 1, "begun"))
	_, err = s.KeepMotif(t.Context(), chart.Motif{Name: "star"})
	require.NoError(t, err)
	try, err := s.NoteTry(t.Context(), id, "k", []byte(`{}`), nil)
	require.NoError(t, err)
	_, err = s.Commit(t.Context(), id, Change{After: 2, Answer: &Answer{Try: try, Text: []byte(`{}`)}, Counts: []Count{{Key: "k", Side: "right"}}})
	require.NoError(t, err)
	require.NoError(t, s.Unlearn(t.Context(), "cuff"))
	_, err = s.KeepPicture(t.Context(), []byte("jpeg"))
	require.NoError(t, err)
	_, err = s.AddVersion(t.Context(), id, 1, "sent to testers", []byte(`{}`))
	require.NoError(t, err)
	execute(t, s, `INSERT INTO access (id, key) VALUES (1, 'one that is long enough for it')`)
	_, d := letIn(t, s, "phone")
	require.NoError(t, s.NameDevice(t.Context(), d.ID, "Anne’s"))
	require.NoError(t, s.LetOut(t.Context(), d.ID))
	_, err = s.CreateClass(t.Context(), []byte(`{}`))
	require.NoError(t, err)
	execute(t, s, `PRAGMA foreign_keys = 0`)

	const decision = `INTO decision (mitt, revision, at, document) `
	const stroke = `INTO stroke (mitt, revision, at, kind, target, edits, inverse) `
	for _, c := range []struct{ what, statement, says string }{
		{"change a document", `UPDATE decision SET document = '{}'`, "a decision is not changed"},
		{"delete a document", `DELETE FROM decision`, "a decision is not deleted"},
		{"change a stroke", `UPDATE stroke SET edits = '[]'`, "a stroke is not changed"},
		{"delete a stroke", `DELETE FROM stroke`, "a stroke is not deleted"},
		{"change a mitt", `UPDATE mitt SET created = ''`, "a mitt is not changed"},
		{"delete a mitt", `DELETE FROM mitt`, "a mitt is not deleted"},
		{"change a moment", `UPDATE moment SET name = ''`, "a moment is not changed"},
		{"delete a moment", `DELETE FROM moment`, "a moment is not deleted"},
		{"change a motif", `UPDATE motif SET name = ''`, "a motif is not changed"},
		{"delete a motif", `DELETE FROM motif`, "a motif is not deleted"},
		{"change a try", `UPDATE try SET record = '{}'`, "a try is not changed"},
		{"delete a try", `DELETE FROM try`, "a try is not deleted"},
		{"change a verdict", `UPDATE verdict SET answer = '{}'`, "a verdict is not changed"},
		{"delete a verdict", `DELETE FROM verdict`, "a verdict is not deleted"},
		{"change a picture", `UPDATE picture SET photo = x'00'`, "a picture is not changed"},
		{"delete a picture", `DELETE FROM picture`, "a picture is not deleted"},
		{"replace a picture", `INSERT OR REPLACE INTO picture (id, at, name, photo) VALUES (1, '', 'another name that is long', x'00')`, "a picture is not replaced"},
		{"change a count", `UPDATE count SET round = 3`, "a count is not changed"},
		{"delete a count", `DELETE FROM count`, "a count is not deleted"},
		{"change what is unlearned", `UPDATE unlearned SET zone = ''`, "what was unlearned is not changed"},
		{"learn it again", `DELETE FROM unlearned`, "what was unlearned is not deleted"},
		{"change a version", `UPDATE version SET record = '[]'`, "a version is not changed"},
		{"delete a version", `DELETE FROM version`, "a version is not deleted"},
		{"replace a version", `INSERT OR REPLACE INTO version (id, mitt, number, at, revision, name, record) VALUES (1, 1, 2, '', 1, '', '{}')`, "a version is not replaced"},
		{"replace a version by its number", `INSERT OR REPLACE INTO version (mitt, number, at, revision, name, record) VALUES (1, 1, '', 1, '', '{}')`, "must follow"},
		{"a hole before a version", `INSERT INTO version (mitt, number, at, revision, name, record) VALUES (1, 3, '', 1, '', '{}')`, "must follow"},
		{"change the key", `UPDATE access SET key = 'another one that is long enough'`, "the key is not changed"},
		{"delete the key", `DELETE FROM access`, "the key is not deleted"},
		{"change a device", `UPDATE device SET secret = zeroblob(32)`, "a device is not changed"},
		{"delete a device", `DELETE FROM device`, "a device is not deleted"},
		{"rename a device in place", `UPDATE device_name SET name = ''`, "the name of a device is not changed"},
		{"delete a device's name", `DELETE FROM device_name`, "the name of a device is not deleted"},
		{"change a device's day", `UPDATE device_day SET day = ''`, "the day of a device is not changed"},
		{"delete a device's day", `DELETE FROM device_day`, "the day of a device is not deleted"},
		{"let in who is out", `DELETE FROM device_out`, "who was let out is not let in by that"},
		{"let in who is out, by a change", `UPDATE device_out SET device = 2`, "who was let out is not changed"},
		{"replace a device", `INSERT OR REPLACE INTO device (id, at, handle, secret, name) SELECT id, at, handle, zeroblob(32), name FROM device`, "a device is not replaced"},
		{"replace a device by its handle", `INSERT OR REPLACE INTO device (at, handle, secret, name) SELECT at, handle, zeroblob(32), name FROM device`, "a device is not replaced"},
		{"replace a device's name", `INSERT OR REPLACE INTO device_name (id, device, at, name) VALUES (1, 1, '', '')`, "the name of a device is not replaced"},
		{"replace who is out", `INSERT OR REPLACE INTO device_out (device, at) VALUES (1, '')`, "who was let out is not replaced"},
		{"a secret that is no hash", `INSERT INTO device (at, handle, secret, name) VALUES ('', 'another one that is long enough', x'00', '')`, "CHECK constraint"},
		{"replace a mitt", `INSERT OR REPLACE INTO mitt (id, created) VALUES (1, '')`, "a mitt is not replaced"},
		{"replace a class", `INSERT OR REPLACE INTO class (id, created) VALUES (1, '')`, "a class is not replaced"},
		{"replace a moment", `INSERT OR REPLACE INTO moment (id, mitt, revision, at, name) VALUES (1, 1, 1, '', '')`, "a moment is not replaced"},
		{"replace a motif", `INSERT OR REPLACE INTO motif (id, at, name, cells) VALUES (1, '', '', '[]')`, "a motif is not replaced"},
		{"replace a try", `INSERT OR REPLACE INTO try (id, mitt, key, at, revision, record) VALUES (1, 1, 'x', '', 1, '{}')`, "a try is not replaced"},
		{"replace a verdict", `INSERT OR REPLACE INTO verdict (id, try, at, before, revision, answer) VALUES (1, 1, '', 1, 1, '{}')`, "a verdict is not replaced"},
		{"replace a count", `INSERT OR REPLACE INTO count (id, mitt, key, at, side, section, round) VALUES (1, 1, 'x', '', 'left', '', 0)`, "a count is not replaced"},
		{"replace a document", `INSERT OR REPLACE ` + decision + `VALUES (1, 1, '', '{}')`, "must follow"},
		{"replace a stroke", `INSERT OR REPLACE ` + stroke + `VALUES (1, 2, '', 'do', NULL, '[]', '[]')`, "must follow"},
		{"a decision with a stroke's number", `INSERT ` + decision + `VALUES (1, 2, '', '{}')`, "must follow"},
		{"a stroke with a decision's number", `INSERT ` + stroke + `VALUES (1, 1, '', 'do', NULL, '[]', '[]')`, "must follow"},
		{"a hole before a decision", `INSERT ` + decision + `VALUES (1, 4, '', '{}')`, "must follow"},
		{"a hole before a stroke", `INSERT ` + stroke + `VALUES (1, 4, '', 'do', NULL, '[]', '[]')`, "must follow"},
		{"a mitt that begins with a stroke", `INSERT ` + stroke + `VALUES (2, 1, '', 'do', NULL, '[]', '[]')`, "needs a decision"},
		{"a document that is no JSON", `INSERT ` + decision + `VALUES (1, 3, '', '{')`, "CHECK constraint"},
		{"a document of bytes", `INSERT ` + decision + `VALUES (1, 3, '', x'7b7d')`, "cannot store BLOB"},
		{"edits that are no list", `INSERT ` + stroke + `VALUES (1, 3, '', 'do', NULL, '{}', '[]')`, "CHECK constraint"},
		{"another kind", `INSERT ` + stroke + `VALUES (1, 3, '', 'erase', NULL, '[]', '[]')`, "CHECK constraint"},
		{"an undo of nothing", `INSERT ` + stroke + `VALUES (1, 3, '', 'undo', NULL, '[]', '[]')`, "CHECK constraint"},
		{"an undo of a decision", `INSERT ` + stroke + `VALUES (1, 3, '', 'undo', 1, '[]', '[]')`, "a stroke that was drawn"},
		{"a do with a target", `INSERT ` + stroke + `VALUES (1, 3, '', 'do', 2, '[]', '[]')`, "CHECK constraint"},
	} {
		_, err := s.writer.Exec(c.statement)
		assert.ErrorContains(t, err, c.says, c.what)
	}
	execute(t, s, `INSERT `+stroke+`VALUES (1, 3, '', 'undo', 2, '[]', '[]')`)
	execute(t, s, `INSERT `+decision+`VALUES (1, 4, '', '{}')`)
}

// Every table holds the kinds of value that it names, and nothing else.
func TestTablesAreStrict(t *testing.T) {
	s := fresh(t)
	assert.Equal(t, 20, rows(t, s, `SELECT 1 FROM pragma_table_list WHERE type = 'table' AND schema = 'main' AND name NOT LIKE 'sqlite%'`))
	assert.Zero(t, rows(t, s, `SELECT 1 FROM pragma_table_list WHERE type = 'table' AND schema = 'main' AND name NOT LIKE 'sqlite%' AND NOT strict`))
}

// The newest decision of a mitt is found by its key, not by reading all.
func TestNewestIsFoundByKey(t *testing.T) {
	s := fresh(t)
	found, err := s.writer.Query(`EXPLAIN QUERY PLAN ` + mitts)
	require.NoError(t, err)
	defer found.Close()
	for found.Next() {
		var id, parent, unused int
		var detail string
		require.NoError(t, found.Scan(&id, &parent, &unused, &detail))
		assert.NotRegexp(t, `^SCAN [ds]`, detail)
		assert.NotContains(t, detail, "AUTOMATIC")
	}
	require.NoError(t, found.Err())
}
