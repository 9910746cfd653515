package app

import (
	"maps"
	"strconv"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"thenar/internal/project"
	"thenar/internal/repeat"
	"thenar/internal/sheet"
	"thenar/internal/stitch"
	"thenar/internal/store"
	"thenar/internal/tryon"
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

// A motif is turned off, moved and removed once part of it is knitted, by a press, by undo and
// redo, and with another hand measured: what is knitted stays as it was worked, on both hands,
// and what is not yet knitted follows.
func TestWhatIsKnittedKeepsItsColours(t *testing.T) {
	t.Parallel()
	a, id := sampled(t)
	layDots(t, a, id)
	count(t, a, id, "gusset", 3)
	knitted := func(side project.Side) (list []repeat.Look, rest int) {
		n, err := a.Needles(t.Context(), id, string(side))
		require.NoError(t, err)
		for _, at := range tryon.Places(n.Out.Planned) {
			looks := n.Out.Charts.Looks(at.Part, at.Round)
			if at.Part == stitch.Cuff || at.Part == stitch.CuffPlain || at.Part == stitch.Gusset && at.Round <= 3 {
				list = append(list, looks...)
				continue
			}
			for _, look := range looks {
				if look.Yarn != "a" {
					rest++
				}
			}
		}
		return list, rest
	}
	was, above := knitted(project.Right)
	other, _ := knitted(project.Left)
	require.Contains(t, was, repeat.Look{Yarn: "b"}, "the dots begin at once")
	require.Positive(t, above)
	stays := func(what string) int {
		left, _ := knitted(project.Left)
		assert.Equal(t, other, left, "%s, and the left hand is worked like it", what)
		is, rest := knitted(project.Right)
		assert.Equal(t, was, is, what)
		return rest
	}
	require.NoError(t, a.ChangeRepeat(t.Context(), id, 0, RepeatOff, nil))
	assert.Zero(t, stays("turned off"), "above it is plain")
	for _, how := range []string{"undo", "redo", "undo"} {
		_, err := a.Draw(t.Context(), id, []byte(`{"after":1,"`+how+`":true}`))
		require.NoError(t, err)
		stays(how)
	}
	assert.Nil(t, now(t, a, id).Sheet.Knitted("right"), "it is laid as it was: nothing has to be kept")
	require.NoError(t, a.ChangeRepeat(t.Context(), id, 0, "", Typed{"offset": {"3"}, "motif": {"ccbb...."}}))
	assert.Positive(t, stays("moved and drawn anew"))
	saved, err := a.SaveNumbers(t.Context(), id, Typed{"after": {strconv.FormatInt(decided(t, a, id), 10)}, "hand.hand_circumference": {"23"}})
	require.NoError(t, err, saved)
	stays("another hand")
	require.NoError(t, a.LayMotif(t.Context(), id, Typed{"motif": {"dd"}}))
	stays("another motif over it")
	require.NoError(t, a.ChangeRepeat(t.Context(), id, 0, RepeatRemove, nil))
	require.NoError(t, a.ChangeRepeat(t.Context(), id, 1, RepeatRemove, nil))
	assert.Zero(t, stays("removed"))
}

// decided is the revision of a mitt's newest document.
func decided(t *testing.T, a *App, id int64) int64 {
	t.Helper()
	w, err := a.store.ReadWork(t.Context(), id, store.Wants{})
	require.NoError(t, err)
	return w.Decided
}
