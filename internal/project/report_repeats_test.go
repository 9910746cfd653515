package project

import (
	"encoding/json"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"thenar/internal/sheet"
	"thenar/internal/testenv"
)

// The plan's JSON says of each motif how often it stands and what stays plain, or why it is
// laid nowhere, and warns of it; a sheet without motifs has no such list.
func TestReportTellsOfMotifs(t *testing.T) {
	s, pl := testenv.Schema(t, "plan.schema.json"), NewPlanner()
	base := `{"unit": "cm", "gauge": {"swatches": [{"stitches": 24, "width": 10, "rounds": 32, "height": 10}]},
		"hand": {"hand_circumference": 19, "thumb_circumference": 6.5}`
	type doc struct {
		Repeats  json.RawMessage
		Warnings []reportWarning
	}
	read := func(text string) (of doc) {
		sh, err := sheet.Parse([]byte(base + text + "}"))
		require.NoError(t, err)
		p, err := pl.Plan(sh)
		require.NoError(t, err)
		raw, err := pl.Report(p, true)
		require.NoError(t, err)
		require.NoError(t, testenv.Validate(t, s, raw), "%s", raw)
		require.NoError(t, json.Unmarshal(raw, &of))
		return of
	}
	bare := read("")
	assert.Nil(t, bare.Repeats)
	for text, want := range map[string]struct {
		repeats  string
		warnings []reportWarning
	}{
		`{"motif": ["b"], "section": "index"}, {"motif": ["b"], "from": 9, "to": 2}, {"name": "wide", "motif": ["bbbbbbbbbbbbbbbbbbbbbbbbbbbbbbbbbbbbbbbbbbbbbbbbbb"]}, {"motif": ["b"], "over": "columns", "columns": ["H80", "H90"]}, {"motif": ["b"], "section": "index", "off": true}`: {
			`[{"number":1,"times":0,"up":0,"plain_before":0,"plain_after":0,"rounds_left_over":0,"nowhere":"this mitt has no index finger"},` +
				`{"number":2,"times":0,"up":0,"plain_before":0,"plain_after":0,"rounds_left_over":0,"nowhere":"its rounds are not there"},` +
				`{"number":3,"name":"wide","times":0,"up":0,"plain_before":0,"plain_after":0,"rounds_left_over":0,"nowhere":"it is wider than what it is laid across"},` +
				`{"number":4,"times":0,"up":0,"plain_before":0,"plain_after":0,"rounds_left_over":0,"nowhere":"its columns are not there"},` +
				`{"number":5,"times":0,"up":0,"plain_before":0,"plain_after":0,"rounds_left_over":0,"nowhere":"it is turned off"}]`,
			[]reportWarning{
				{"motif_nowhere", "Motif 1 is laid nowhere: this mitt has no index finger."},
				{"motif_nowhere", "Motif 2 is laid nowhere: its rounds are not there."},
				{"motif_nowhere", "“wide” is laid nowhere: it is wider than what it is laid across."},
				{"motif_nowhere", "Motif 4 is laid nowhere: its columns are not there."},
			},
		},
		`{"motif": ["bbbc"], "section": "hand", "to": 40, "cut": true, "set": "centred"}, {"motif": ["b", "c", "c", "c", "c"], "section": "hand"}`: {
			`[{"number":1,"times":11,"up":12,"plain_before":0,"plain_after":0,"rounds_left_over":0},{"number":2,"times":44,"up":2,"plain_before":0,"plain_after":0,"rounds_left_over":2}]`,
			[]reportWarning{
				{"motif_clipped", "Motif 1 is laid in 12 of 40 rounds: there are no more."},
				{"motif_left_over", "Motif 2 leaves 2 rounds at the top."},
			},
		},
		`{"motif": ["bbbbc", "ccccc", "bbbbb", "ccccc", "bbbbb"], "section": "hand", "cut": true, "set": "centred"}, {"motif": ["b"], "over": "back", "set": "centred_palm"}, {"motif": ["bb"], "over": "gusset", "gusset": "grow"}`: {
			`[{"number":1,"times":8,"up":2,"plain_before":2,"plain_after":2,"rounds_left_over":2},{"number":2,"times":21,"up":40,"plain_before":0,"plain_after":0,"rounds_left_over":0},{"number":3,"times":1,"up":19,"plain_before":0,"plain_after":0,"rounds_left_over":0}]`,
			[]reportWarning{
				{"motif_left_over", "Motif 1 leaves 4 plain stitches, 2 before and 2 after."},
				{"motif_clipped", "Motif 1 is cut at the top, after 2 rounds."},
				{"motif_not_centred", "Motif 2 is to be centred on the palm, where it isn't laid: it stands between its ends."},
				{"motif_beside", "Motif 3 stands half a stitch off the gusset’s middle."},
			},
		},
	} {
		of := read(`, "repeats": [` + text + `]`)
		assert.Equal(t, want.repeats, string(of.Repeats))
		assert.Equal(t, append(bare.Warnings, want.warnings...), of.Warnings)
	}
}

// A hand of few rounds is counted on its own stitches, though more of its rounds are ribbed on
// fewer, or though its only round brings the cuff's to them.
func TestMotifsOnAHandOfFewRounds(t *testing.T) {
	for _, text := range []string{
		`{"kind": "fingerless", "unit": "cm", "cuff": {"kind": "rolled"}, "gauge": {"swatches": [{"stitches": 20, "width": 10, "rounds": 30, "height": 10}]}, "hand": {"hand_circumference": 16.73, "gusset_length": 6.82},
			"length": {"above_gusset": 1.92}, "pins": {"cast_on": 40}, "stitch": {"repeat": 1, "rib": 4}, "thumb": {"construction": "none"}, "repeats": [{"motif": ["b..b.b."], "set": "multiple"}]}`,
		`{"kind": "mitten_without_thumb", "unit": "cm", "gauge": {"swatches": [{"stitches": 24, "width": 4, "rounds": 33, "height": 4}]}, "hand": {"hand_circumference": 23, "hand_length": 5.38, "wrist_circumference": 5.5},
			"pins": {"cuff_plain_rounds": 0}, "repeats": [{"motif": ["bbbb.b.b"], "set": "multiple"}]}`,
	} {
		s, err := sheet.Parse([]byte(text))
		require.NoError(t, err)
		out, err := NewPlanner().Derive(Document{Sheet: s, Side: Right}, nil)
		require.NoError(t, err)
		assert.Zero(t, out.Repeats[0].Came.Plain())
		assert.Equal(t, out.Plan.Body.Stitches.N, out.Repeats[0].Came.Stitches)
	}
}
