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
		`"revision": 2,`: `"revision": 0,`, `"zone": "cuff"`: `"zone": ""`, `"left": 1`: `"left": -1`, `"name": "star"`: `"name": ""`, "2025-03-09T11:00:00.000000000Z": "noon",
	} {
		wrong := []byte(strings.Replace(good, old, becomes, 1))
		assert.Error(t, testenv.Validate(t, s, wrong), becomes)
		_, err := Read(t.Context(), wrong)
		assert.Error(t, err, becomes)
	}
}
