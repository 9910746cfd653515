package project

import (
	"os"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"thenar/internal/stitch"
	"thenar/internal/words"
)

// A mitt as the program before this one kept it, its thumb knitted up to the
// edging's first round: decreased under the edging, and then made to 20 again.
// The rounds that are knitted read as they read then; what is left goes on over
// their stitches, and a change of the hand leaves them alone.
func TestAThumbOfTheEarlierProgramStays(t *testing.T) {
	raw, err := os.ReadFile("testdata/earlier_thumb.json")
	require.NoError(t, err)
	d, err := Decode(raw)
	require.NoError(t, err)
	pl := NewPlanner()
	read := func(d Document, part stitch.Part, to int) (list []string) {
		out, err := pl.Derive(d, nil)
		require.NoError(t, err)
		require.Empty(t, stitch.Ledger(out.Planned))
		for _, s := range words.Select(out.Words, part, 1, to)[0].Steps {
			list = append(list, s.Label()+": "+s.Text)
		}
		return list
	}
	was := []string{
		"Round 1: Pick up and knit 4, k2tog with the strand at corner 1, k13, ssk with the strand at corner 2 (19).",
		"Rounds 2–9: Knit (19).", "Round 10: k17, ssk (18).", "Round 11: (k9, M1) twice (20).", "Round 12: (k2, p2) 5 times (20).",
	}
	assert.Equal(t, was, read(d, stitch.Thumb, 12))
	assert.Equal(t, []string{"Round 1: (k5, M1, k4, M1) 4 times (44)."}, read(d, stitch.CuffPlain, 1))
	d.Sheet["hand.thumb_circumference"], d.Sheet["length.thumb_edging"] = "7", "2"
	assert.Equal(t, was, read(d, stitch.Thumb, 12))
	d.Sheet["worked.round"] = "9" // ripped back to where nothing of it was decreased
	assert.NotContains(t, read(d, stitch.Thumb, 40), "Round 11: (k9, M1) twice (20).")
	assert.Equal(t, was[:2], read(d, stitch.Thumb, 9))
}
