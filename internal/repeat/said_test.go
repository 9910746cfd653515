package repeat

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// What is noted of a motif tells what changed, and nothing where nothing did.
func TestSince(t *testing.T) {
	was := Came{Across: 6, Up: 4, Before: 0, After: 2, Left: 1}
	assert.Empty(t, was.Since(was.Note()))
	assert.Empty(t, was.Since(""))
	assert.Empty(t, was.Since("6 times"), "what can't be read is not compared")
	assert.Equal(t, "6 → 7 times, 2 → 5 plain", Came{Across: 7, Up: 4, Before: 3, After: 2, Left: 1}.Since(was.Note()))
}

// The best offset makes a motif that is its own mirror image the same on both sides of the
// middle of the back: of 24 stitches the back's middle lies between its 6th and 7th.
func TestTheBestOffset(t *testing.T) {
	r := Usual(motif(t, "bccb", ".bb."))
	for _, offset := range []int{0, 1, 2, -1} {
		r.Offset = offset
		s, ok := StripOf(r, tube(24, 4))
		require.True(t, ok)
		assert.Equal(t, s.Of, s.Same, "it is symmetrical")
		assert.Equal(t, 0, s.Best, "the middle lies between two motifs")
		assert.Equal(t, 18.0, s.Back)
		assert.Equal(t, 6.0, s.Palm)
		assert.Equal(t, 12.0, s.Side)
		require.Len(t, s.Rows, 2)
		assert.Len(t, s.Rows[0], 24)
	}
	r.Motif, r.Offset = motif(t, "bbcc"), 0
	s, _ := StripOf(r, tube(24, 4))
	assert.Equal(t, [2]int{6, 6}, [2]int{s.Same, s.Of})
	assert.Equal(t, 1, abs(s.Best), "moved by one, two of a colour lie on the middle")
	r.Motif = motif(t, "bcd")
	s, _ = StripOf(r, tube(24, 4))
	assert.Less(t, s.Same, s.Of, "three colours in a row are never their own mirror image")
	r.Over = Gusset
	_, ok := StripOf(r, tube(24, 4))
	assert.False(t, ok)
}

func abs(n int) int { return max(n, -n) }
