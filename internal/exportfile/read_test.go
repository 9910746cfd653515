package exportfile

import (
	"bytes"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"thenar/internal/fault"
)

// whole returns a file with something of everything, written by hand.
func whole(t testing.TB) []byte {
	t.Helper()
	raw, err := os.ReadFile(filepath.Join("testdata", "whole.json"))
	require.NoError(t, err)
	return raw
}

// A file that is read and written again is the same to the byte.
func TestWriteThenReadChangesNothing(t *testing.T) {
	f, err := Read(t.Context(), whole(t))
	require.NoError(t, err)
	var once, twice bytes.Buffer
	require.NoError(t, Write(&once, f))
	again, err := Read(t.Context(), once.Bytes())
	require.NoError(t, err)
	require.NoError(t, Write(&twice, again))
	assert.Equal(t, once.String(), twice.String())
	assert.Equal(t, f, again)
	document, marks := f.Mitts[0].Newest()
	assert.Contains(t, string(document), `"name":"Reading mitts \u0026 more"`, "the spelling of a document stays")
	assert.Contains(t, string(document), `"repeats[0].motif":"..b./.b.b"`, "and its motifs")
	assert.Len(t, marks, 1)
}

// Each kind of fault is reported with its place in the file.
func TestReadNamesThePlaceOfAFault(t *testing.T) {
	good := string(whole(t))
	for _, c := range []struct{ what, old, becomes, says string }{
		{"another form", "thenar/export@1", "thenar/export@2", `format: is "thenar/export@2"; this reads`},
		{"an unknown key", `"classes"`, `"clases"`, `FILE: can't be read at line 1`},
		{"a key twice", `"made"`, `"format"`, "duplicate"},
		{"a number as text", `"revision": 2`, `"revision": "2"`, `"/mitts/0/revisions/1/revision" is not what belongs there`},
		{"cut off", "\n}\n", "\n", "FILE: ends too early, at line"},
		{"more behind it", "\n}\n", "\n}\n{}", "goes on after the document"},
		{"a hole", `"revision": 2,`, `"revision": 3,`, "mitts[0].revisions[1].revision: is 3; write 2"},
		{"no decision first", `"kind": "decision"`, `"kind": "do"`, "mitts[0].revisions: don't begin with a decision"},
		{"another kind", `"kind": "undo"`, `"kind": "erase"`, "mitts[0].revisions[2].kind"},
		{"an undo of nothing", `"target": 2`, `"target": 1`, "mitts[0].revisions[2].target"},
		{"a time of another form", "2025-03-09T10:00:00.000000000Z", "yesterday", "mitts[0].created"},
		{"a stitch that there is not", `"value": "p"`, `"value": "zz"`, "mitts[0].revisions[1].edits[0].value"},
		{"a column that there is not", `"column": "A1"`, `"column": "Q1"`, "edits[0].column"},
		{"a field that there is not", `"column": "unit"`, `"column": "elbow"`, "column: is"},
		{"a document without a name", `"name": "Reading mitts \u0026 more"`, `"name": ""`, "mitts[0].revisions[0].document.name"},
		{"a side that is none", `"side": "right",`, `"side": "middle",`, "document.side"},
		{"a moment of later", `"revision": 1, "at": "2025-03-09T10:05`, `"revision": 99, "at": "2025-03-09T10:05`, "mitts[0].moments[0].revision: is 99"},
		{"a record that is none", `"key": "T3", "date": "2025-03-09"`, `"key": "T3", "date": 7`, "mitts[0].tries[0].record"},
		{"a photograph that is none", `"photo": "`, `"photo": "PHN2Zz48L3N2Zz4A`, "mitts[0].tries[0].photo"},
		{"a verdict before itself", `"before": 1, "revision": 5`, `"before": 5, "revision": 1`, "verdicts[0].revision"},
		{"a count of no hand", `"side": "left", "section"`, `"side": "both", "section"`, "mitts[0].counts[0].side"},
		{"a section that there is not", `"section": "cuff"`, `"section": "elbow"`, "mitts[0].counts[0].section"},
		{"a class without a name", `"name": "Tuesday"`, `"name": " "`, "classes[0].revisions[0].document.name"},
		{"a motif far away", `"left": 1`, `"left": 100000`, "motifs[0].cells[1]"},
		{"control letters", `"zone": "cuff"`, `"zone": "cu\u0007ff"`, "unlearned[0].zone"},
	} {
		require.Contains(t, good, c.old, c.what)
		_, err := Read(t.Context(), []byte(strings.Replace(good, c.old, c.becomes, 1)))
		require.Error(t, err, c.what)
		assert.Equal(t, fault.Invalid, fault.KindOf(err), c.what)
		assert.Contains(t, err.Error(), c.says, c.what)
	}
}

// The message says what a file is that is not an export.
func TestReadOfOtherFiles(t *testing.T) {
	for text, says := range map[string]string{
		"": "FILE: is empty", " \n": "FILE: is empty", "dear reader": "can't be read at line 1, column 1", "[]": "can't be read at line 1, column 1",
		`{"format": "thenar/sheet@1"}`: `format: is "thenar/sheet@1"`, "{": "FILE: ends too early, at line 1, column 2", "{}": `format: is missing`,
		"SQLite format 3\x00\x10": "thenar restore FILE",
	} {
		_, err := Read(t.Context(), []byte(text))
		require.Error(t, err, text)
		assert.Contains(t, err.Error(), says, text)
	}
}

func TestIsLooksAtTheFormat(t *testing.T) {
	assert.True(t, Is(whole(t)))
	for _, no := range []string{"", "{}", "[]", `{"format": "thenar/sheet@1"}`, `{"format": 3}`, `{"gauge": {"format": "thenar/export@1"}}`, `{"a": `, "cast on"} {
		assert.False(t, Is([]byte(no)), no)
	}
}

// Whatever a file holds, Read returns a file or faults of fields. What was read
// can be written and read again, with the same fingerprints.
func FuzzRead(f *testing.F) {
	f.Add(whole(f))
	f.Add([]byte(`{"format": "thenar/export@1"}`))
	f.Add([]byte(`{"format": "thenar/export@1", "mitts": [{"id": 1, "created": "2025-03-09T10:00:00.000000000Z", "revisions": [{}]}]}`))
	f.Fuzz(func(t *testing.T, raw []byte) {
		Is(raw)
		file, err := Read(t.Context(), raw)
		if err != nil {
			require.Equal(t, fault.Invalid, fault.KindOf(err), "%v", err)
			return
		}
		var b bytes.Buffer
		require.NoError(t, Write(&b, file))
		again, err := Read(t.Context(), b.Bytes())
		require.NoError(t, err)
		for i, m := range file.Mitts {
			before, err := m.Fingerprints()
			require.NoError(t, err)
			after, err := again.Mitts[i].Fingerprints()
			require.NoError(t, err)
			require.Equal(t, before, after)
			_, err = m.Renumbered(map[int64]int64{1: 2})
			require.NoError(t, err)
			m.Newest()
		}
		for i, c := range file.Classes {
			before, err := c.Fingerprints()
			require.NoError(t, err)
			after, err := again.Classes[i].Fingerprints()
			require.NoError(t, err)
			require.Equal(t, before, after)
		}
	})
}
