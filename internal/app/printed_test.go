package app

import (
	"net/url"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"thenar/internal/project"
	"thenar/internal/stitch"
	"thenar/internal/tryon"
)

// Every page of a mitt on the needles says at which round its knitter was, as it
// is on the page where it is knitted; the hand is named if the paper is of the
// other. Before the cast-on and after the last stitch no page says anything.
func TestPaperSaysWhereTheKnitterIs(t *testing.T) {
	t.Parallel()
	a := fresh(t)
	raw, err := project.Samples()[0].Encode() // of the right hand
	require.NoError(t, err)
	id, err := a.store.Create(t.Context(), raw)
	require.NoError(t, err)
	said := func(sheets Sheets, err error) string {
		t.Helper()
		require.NoError(t, err)
		pages, _, err := sheets.SVG(t.Context(), 0)
		require.NoError(t, err)
		all := map[string]bool{}
		for _, page := range pages {
			_, after, _ := strings.Cut(page, ">You were at ")
			at, _, _ := strings.Cut(after, "<")
			all[at] = true
		}
		require.Len(t, all, 1, "all pages say the same")
		for at := range all {
			return at
		}
		return ""
	}
	handout := func() string { return said(a.Handout(t.Context(), id, Layout{Asked: url.Values{"large": {"1"}}})) }
	assert.Empty(t, handout())
	for _, done := range []struct {
		part  stitch.Part
		round int
		want  string
	}{
		{stitch.Cuff, tryon.Opening, "round 1 of the cuff"},
		{stitch.Gusset, 12, "round 13 of the gusset"},
		{stitch.Hand, tryon.Ending, "the beginning of the thumb"},
		{stitch.Thumb, tryon.Ending, ""},
	} {
		_, err := a.Enter(t.Context(), id, NeedleEntry{Key: string(done.part), Side: "right", Section: done.part, Round: done.round})
		require.NoError(t, err)
		assert.Equal(t, done.want, handout(), "%s %d", done.part, done.round)
	}
	_, err = a.Enter(t.Context(), id, NeedleEntry{Key: "left", Side: "left", Section: stitch.Cuff, Round: 4})
	require.NoError(t, err)
	assert.Equal(t, "round 5 of the cuff, left hand", handout())
	wall, err := a.WallChart(t.Context(), id, Layout{Asked: url.Values{}})
	assert.Equal(t, "round 5 of the cuff, left hand", said(wall.Sheets, err))
}
