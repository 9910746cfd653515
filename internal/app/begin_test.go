package app

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"thenar/internal/chart"
	"thenar/internal/fault"
	"thenar/internal/project"
	"thenar/internal/store"
)

// save saves texts of the measure form of a mitt.
func save(t *testing.T, a *App, id int64, texts map[string]string) {
	t.Helper()
	typed := Typed{}
	for path, text := range texts {
		typed[path] = []string{text}
	}
	_, err := a.SaveNumbers(t.Context(), id, typed)
	require.NoError(t, err)
}

// stroke sends a stroke to a chart.
func stroke(t *testing.T, a *App, id int64, stroke string) {
	t.Helper()
	_, err := a.Draw(t.Context(), id, []byte(stroke))
	require.NoError(t, err)
}

const rustAndNote = `{"after":1,"edits":[{"section":"gusset","round":3,"column":"B1","layer":"colour","value":"b"},{"section":"gusset","round":3,"column":"","layer":"note","value":"tight"}]}`

// A mitt begun from another has its numbers and yarns, and nothing that was
// drawn, noted, counted or tried on there; the other one stays as it is.
func TestBeginFromWithoutTheDrawing(t *testing.T) {
	t.Parallel()
	a, id := sampled(t)
	before := now(t, a, id).Sheet
	save(t, a, id, map[string]string{"after": "1", "pins.cast_on": "40", "chart.yarns[1].name": "moss", "ease.hand": "-4"})
	stroke(t, a, id, rustAndNote)
	count(t, a, id, "cuff", 3)
	was := now(t, a, id)
	for pins, castOn := range map[bool]string{true: "40", false: ""} {
		made, err := a.BeginFrom(t.Context(), id, "  Harbour ", pins)
		require.NoError(t, err)
		w, err := decoded(a.store.ReadWork(t.Context(), made, store.Wants{Marks: true, Tries: true, Counts: true}))
		require.NoError(t, err)
		want := before.Clone()
		want["chart.yarns[1].name"], want["ease.hand"] = "moss", "-4"
		want.Put("pins.cast_on", castOn)
		assert.Equal(t, project.Document{Name: "Harbour", Side: was.Side, Sheet: want}, w.doc)
		assert.Empty(t, w.Marks)
		assert.False(t, w.CanUndo)
		assert.Empty(t, w.Counts)
		assert.Empty(t, w.Tries)
	}
	assert.Equal(t, was, now(t, a, id))
	made, err := a.BeginFrom(t.Context(), id, " ", false)
	require.NoError(t, err)
	assert.Equal(t, "Moss (new)", now(t, a, made).Name)
	for name, why := range map[string]string{"two\nlines": "name: ", strings.Repeat("x", 121): "name: "} {
		_, err := a.BeginFrom(t.Context(), id, name, false)
		assert.Contains(t, fault.Message(err), why)
		assert.Equal(t, fault.Invalid, fault.KindOf(err))
	}
	_, err = a.BeginFrom(t.Context(), 99, "x", false)
	assert.Equal(t, fault.NotFound, fault.KindOf(err))
}

// The yarns of another mitt come as one stroke, which one undo takes out again;
// what is painted keeps its yarn, also while the work is on the needles.
func TestBringYarnsIsOneStroke(t *testing.T) {
	t.Parallel()
	a, from := sampled(t)
	save(t, a, from, map[string]string{"after": "1", "chart.yarns[0].name": "oat", "chart.yarns[0].colour": "#DDD3BE", "chart.yarns[1].name": "sloe", "chart.yarns[1].colour": "#2E2F4F"})
	id, err := a.NewMitt(t.Context(), "Plain", true)
	require.NoError(t, err)
	stroke(t, a, id, rustAndNote)
	count(t, a, id, "cuff", 3)
	before, err := a.OpenMitt(t.Context(), id)
	require.NoError(t, err)
	offer, err := a.Palettes(t.Context(), id)
	require.NoError(t, err)
	yarns := chart.Palette{{ID: "a", Name: "oat", Fill: "#DDD3BE"}, {ID: "b", Name: "sloe", Fill: "#2E2F4F"}}
	assert.Equal(t, Palettes{id, "Plain", []OtherPalette{{from, "Moss", yarns, 2}}}, offer)

	require.NoError(t, a.BringYarns(t.Context(), id, from))
	after, err := a.OpenMitt(t.Context(), id)
	require.NoError(t, err)
	assert.Equal(t, before.Revision+2, after.Revision, "a document and its stroke")
	assert.Equal(t, before.Out.Charts.Marks, after.Out.Charts.Marks)
	assert.Equal(t, chart.Palette{chart.Yarns[0], chart.Yarns[1], {ID: "c", Name: "oat", Fill: "#DDD3BE"}, {ID: "d", Name: "sloe", Fill: "#2E2F4F"}}, after.Out.Charts.Palette)
	err = a.BringYarns(t.Context(), id, from)
	assert.Contains(t, fault.Message(err), "from: nothing of")

	stroke(t, a, id, `{"after":1,"undo":true}`)
	back, err := a.OpenMitt(t.Context(), id)
	require.NoError(t, err)
	assert.Equal(t, before.Doc, back.Doc)
	assert.Equal(t, before.Out.Charts.Marks, back.Out.Charts.Marks)
}

// What can't be brought is told with the name of the field.
func TestBringYarnsFromNowhere(t *testing.T) {
	t.Parallel()
	a, id := sampled(t)
	none, err := a.NewMitt(t.Context(), "Bare", false)
	require.NoError(t, err)
	was := now(t, a, id)
	for from, why := range map[int64]string{id: "from: is this mitt itself", 99: "from: there is no such mitt", none: `from: "Bare" names no yarns`} {
		err := a.BringYarns(t.Context(), id, from)
		assert.Contains(t, fault.Message(err), why)
		assert.Equal(t, fault.Invalid, fault.KindOf(err))
	}
	offer, err := a.Palettes(t.Context(), id)
	require.NoError(t, err)
	assert.Empty(t, offer.Others)
	assert.Equal(t, was, now(t, a, id))
}
