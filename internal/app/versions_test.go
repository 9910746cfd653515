package app

import (
	"encoding/json"
	"strings"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"thenar/internal/project"
)

// What an earlier program printed otherwise is told apart from what the designer changed, and
// what readers have is what stands before a change.
func TestSinceAVersionOfAnEarlierProgram(t *testing.T) {
	a, ctx := fresh(t), t.Context()
	id, err := a.NewMitt(ctx, "", true)
	require.NoError(t, err)
	d, err := a.OpenDesign(ctx, id)
	require.NoError(t, err)
	d, err = a.SaveDesign(ctx, id, typedSizes(d, nil))
	require.NoError(t, err)
	v, w, err := a.versions(ctx, id)
	require.NoError(t, err)
	kept := v.record
	kept.Lines = append([]project.PrintedLine(nil), kept.Lines...)
	for i := range kept.Lines {
		switch kept.Lines[i].Key {
		case " cuff/cast-on-stitches-with-a/1":
			kept.Lines[i].Text = "As it was printed: cast on."
		case " hand/take-the-second-marker-off/1":
			kept.Lines[i].Text = "As it was printed: marker off."
		}
	}
	raw, err := json.Marshal(kept)
	require.NoError(t, err)
	n, err := a.store.AddVersion(ctx, id, w.Revision, "by an earlier program", raw)
	require.NoError(t, err)

	since, err := a.SinceVersion(ctx, id, n)
	require.NoError(t, err)
	assert.True(t, since.Changed.None(), "%v", since.Changed)
	require.Len(t, since.Program.Lines, 2)
	assert.Equal(t, "As it was printed: cast on.", since.Program.Lines[0].Before)

	_, err = a.SaveDesign(ctx, id, Typed{"stamp": {d.Stamp}, "sizes[0].hand.size": {"6"}})
	require.NoError(t, err)
	d, err = a.OpenDesign(ctx, id)
	require.NoError(t, err)
	since, err = a.SinceVersion(ctx, id, n)
	require.NoError(t, err)
	require.NotEmpty(t, since.Changed.Lines)
	for _, l := range since.Changed.Lines {
		if l.Key == " cuff/cast-on-stitches-with-a/1" {
			assert.Equal(t, "As it was printed: cast on.", l.Before)
			assert.Contains(t, l.After, "Cast on ")
		}
		assert.NotEqual(t, " hand/take-the-second-marker-off/1", l.Key)
	}
	assert.Contains(t, since.Errata(), ", size 7: ")

	// A mitt that can't be worked out any more still has its versions.
	_, err = a.SaveDesign(ctx, id, Typed{"stamp": {stamp(d.Texts)}, "sizes[0].hand.size": {"x"}})
	require.NoError(t, err)
	v, err = a.OpenVersions(ctx, id)
	require.NoError(t, err)
	require.Len(t, v.List, 1)
	assert.NotEmpty(t, v.Why)
}

// A pattern tells at its end which version it is, also after a change that prints nothing.
func TestAPatternTellsItsVersion(t *testing.T) {
	a, ctx := fresh(t), t.Context()
	id, err := a.NewMitt(ctx, "", true)
	require.NoError(t, err)
	d, err := a.OpenDesign(ctx, id)
	require.NoError(t, err)
	_, err = a.SaveDesign(ctx, id, typedSizes(d, nil))
	require.NoError(t, err)
	ends := func() string {
		var b strings.Builder
		_, err := a.PatternFile(ctx, id, PatternAsk{}, PlainText, &b)
		require.NoError(t, err)
		lines := strings.Split(strings.TrimSpace(b.String()), "\n")
		return lines[len(lines)-1]
	}
	before := ends()
	v, err := a.OpenVersions(ctx, id)
	require.NoError(t, err)
	_, err = a.SendVersion(ctx, id, "to testers", v.Stamp)
	require.NoError(t, err)
	today := time.Now().Format("2 January 2006")
	assert.NotContains(t, before, "ersion")
	assert.Contains(t, ends(), "Version 1 (to testers), "+today+".")

	d, err = a.OpenDesign(ctx, id)
	require.NoError(t, err)
	_, err = a.SaveDesign(ctx, id, Typed{"stamp": {d.Stamp}, "sizes[0].hand.size": {"6"}})
	require.NoError(t, err)
	assert.Contains(t, ends(), "Changed since version 1 (to testers) of "+today+".")

	d, err = a.OpenDesign(ctx, id)
	require.NoError(t, err)
	_, err = a.SaveDesign(ctx, id, Typed{"stamp": {d.Stamp}, "sizes[0].hand.size": {"7"}})
	require.NoError(t, err)
	assert.Contains(t, ends(), "Version 1 (to testers), "+today+".")
}
