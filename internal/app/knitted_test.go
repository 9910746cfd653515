package app

import (
	"maps"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"thenar/internal/sheet"
)

// layDots lays a motif of eight stitches round the hand, and keeps the hand to its multiple.
func layDots(t *testing.T, a *App, id int64) {
	t.Helper()
	require.NoError(t, a.LayMotif(t.Context(), id, Typed{"motif": {"..bb...."}, "name": {"Dots"}, "set": {"centred"}}))
	require.NoError(t, a.ChangeRepeat(t.Context(), id, 0, "", Typed{"set": {"multiple"}}))
}

// repeatsOf returns what a mitt's sheet has of the motifs that are laid.
func repeatsOf(t *testing.T, a *App, id int64) map[string]string {
	t.Helper()
	given := now(t, a, id).Sheet.GivenOfRepeat(0)
	delete(given, "was")
	return given
}

// Rounds are knitted with a count that a motif asks for. Each undo takes back the next stroke
// all the same, and what was taken back can be drawn again: what is knitted is put back by
// the stroke itself.
func TestTheWayBackStaysOpenOnceRoundsAreKnitted(t *testing.T) {
	t.Parallel()
	a, id := sampled(t)
	layDots(t, a, id)
	stood := repeatsOf(t, a, id)
	count(t, a, id, "gusset", 3)
	before, err := a.OpenMitt(t.Context(), id)
	require.NoError(t, err)
	turn := func(how string) Drawn {
		d, err := a.Draw(t.Context(), id, []byte(`{"after":1,"`+how+`":true}`))
		require.NoError(t, err, how)
		return d
	}
	assert.True(t, turn("undo").CanRedo)
	assert.Equal(t, "centred", repeatsOf(t, a, id)["set"], "the last stroke is taken back")
	last := turn("undo")
	assert.Empty(t, repeatsOf(t, a, id), "and the one before it")
	assert.False(t, last.CanUndo, "there were two")
	assert.Equal(t, "gusset", now(t, a, id).Sheet.Given(sheet.PathSection), "what is knitted is kept")
	turn("redo")
	assert.True(t, turn("redo").CanUndo)
	assert.True(t, maps.Equal(stood, repeatsOf(t, a, id)))
	after, err := a.OpenMitt(t.Context(), id)
	require.NoError(t, err)
	assert.Equal(t, before.Out.Planned.Section("gusset").Rounds[:3], after.Out.Planned.Section("gusset").Rounds[:3])
	assert.Equal(t, before.Out.Plan.Body.Stitches.N, after.Out.Plan.Body.Stitches.N)
}
