package exportfile

import (
	"bytes"
	"strings"
	"testing"

	"thenar/internal/testenv"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// Written files are valid by the schema, judged by a JSON Schema library, and
// Read refuses what the schema refuses.
func TestReadAndWriteAgreeWithTheSchema(t *testing.T) {
	s := testenv.Schema(t, "export.schema.json")
	f, err := Read(t.Context(), whole(t))
	require.NoError(t, err)
	var b bytes.Buffer
	require.NoError(t, Write(&b, f))
	require.NoError(t, testenv.Validate(t, s, b.Bytes()))
	b.Reset()
	require.NoError(t, Write(&b, File{Format: Format}))
	require.NoError(t, testenv.Validate(t, s, b.Bytes()), "lists are never null")

	good := string(whole(t))
	for old, becomes := range map[string]string{
		"thenar/export@1": "thenar/sheet@1", `"kind": "undo"`: `"kind": "erase"`, `"target": 2`: `"target": 0`, `"side": "left", "section"`: `"side": "both", "section"`,
		`"revision": 2,`: `"revision": 0,`, `"zone": "cuff"`: `"zone": ""`, `"left": 1`: `"left": -1`, `"name": "star"`: `"name": ""`, `"revision": 4, "name": "sent`: `"revision": 0, "name": "sent`, "2025-03-09T11:00:00.000000000Z": "noon",
	} {
		wrong := []byte(strings.Replace(good, old, becomes, 1))
		assert.Error(t, testenv.Validate(t, s, wrong), becomes)
		_, err := Read(t.Context(), wrong)
		assert.Error(t, err, becomes)
	}
}

// The drawing of a motif may be as long as a motif may be large, in the document and in a
// stroke; other texts stay short.
func TestADrawingIsAsLongAsItsMotif(t *testing.T) {
	s := testenv.Schema(t, "export.schema.json")
	good := string(whole(t))
	large := strings.TrimSuffix(strings.Repeat(strings.Repeat("b", 120)+"/", 120), "/")
	stroke := `{"section": "", "round": 0, "column": "unit", "layer": "sheet", "value": "in"}`
	for _, c := range []struct {
		old, becomes string
		ok           bool
	}{
		{`"repeats[0].motif": "..b./.b.b"`, `"repeats[0].motif": "` + large + `"`, true},
		{`"repeats[0].motif": "..b./.b.b"`, `"repeats[0].stitches": "` + strings.ReplaceAll(large, "b", "p") + `"`, true},
		{`"repeats[0].was": "5 times"`, `"repeats[0].was": "` + large + `"`, false},
		{stroke, strings.ReplaceAll(strings.ReplaceAll(stroke, "unit", "repeats[3].motif"), "in", large), true},
		{stroke, strings.ReplaceAll(stroke, `"in"`, `"`+large+`"`), false},
		{`"notes": "one\ntwo", "line`, `"notes": "` + large[:4000] + `", "line`, true},
		{`"notes": "one\ntwo", "line`, `"notes": "` + large[:4001] + `", "line`, false},
		{`"line gusset/increase/1": "Grow`, `"line GUSSET": "Grow`, false},
		{`"line gusset/increase/1": "Grow`, `"after gusset/increase/1~k2tog.b": "Grow`, true},
		{`"title": "Ear"`, `"wording": "long"`, false},
		{`"section": "hand", "round": 2`, `"section": "upper_hand", "round": 2`, true},
	} {
		require.Contains(t, good, c.old)
		changed := []byte(strings.ReplaceAll(good, c.old, c.becomes))
		_, err := Read(t.Context(), changed)
		assert.Equal(t, c.ok, err == nil, "%.60s: %v", c.becomes, err)
		assert.Equal(t, c.ok, testenv.Validate(t, s, changed) == nil, "%.60s by the schema", c.becomes)
	}
}
