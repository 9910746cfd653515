package makeup

import (
	"math/rand/v2"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"thenar/internal/testenv"
)

// A drawing shrinks in steps of 5 % from its wished height; its caption keeps its
// size, and no step is lower than its share, nor than the least.
func TestDrawingShrinksInSteps(t *testing.T) {
	var heights []int
	for s, w := range Drawing(Part{Height: 1013, Chart: 2}, 113, 80) {
		require.Equal(t, s, w.Shrunk)
		require.Equal(t, 2, w.Parts[0].Chart)
		heights = append(heights, w.Parts[0].Height)
	}
	assert.Equal(t, []int{1013, 968, 923, 878, 833}, heights, "113 + 900 · 1, 0.95, 0.9, 0.85, 0.8")
	assert.Len(t, Drawing(Part{Height: 100}, 0, 100), 1)
	assert.Len(t, Drawing(Part{Height: 100}, 0, 101), 1, "at least its wished size")
	assert.Len(t, Drawing(Part{Height: 100}, 0, 81), 4, "85 %")
	assert.Len(t, Drawing(Part{Height: 100}, 0, -5), 20, "5 %")
	for _, w := range Drawing(Part{Height: 33}, 50, 60) {
		assert.Equal(t, 33, w.Parts[0].Height, "all of it is fixed")
	}
	for height := 1; height < 300; height += 7 {
		for s, w := range Drawing(Part{Height: height}, 0, 5) {
			require.GreaterOrEqual(t, 20*w.Parts[0].Height, height*(20-s))
			require.Less(t, 20*(w.Parts[0].Height-1), height*(20-s), "rounded up to the next tenth")
		}
	}
}

// The first of several lines is kept with the second, and the last with that before
// it, so that three stay together.
func TestLinesKeepTheirEnds(t *testing.T) {
	keeps := func(list []Part) (keeps []bool) {
		for _, p := range list {
			keeps = append(keeps, p.Keep)
		}
		return keeps
	}
	assert.Empty(t, Lines())
	assert.Equal(t, []bool{false}, keeps(Lines(5)))
	assert.Equal(t, []bool{true, false}, keeps(Lines(5, 6)))
	assert.Equal(t, []bool{true, true, false}, keeps(Lines(5, 6, 7)))
	assert.Equal(t, []bool{true, false, true, false}, keeps(Lines(5, 6, 7, 8)))
	assert.Equal(t, []bool{true, false, false, true, false}, keeps(Lines(5, 6, 7, 8, 9)))
}

// Columns are as low as any division makes them, end where a page may, and the
// first ones are the fullest.
func TestColumnsAreTheLowest(t *testing.T) {
	rng := rand.New(rand.NewPCG(2, 22))
	for range testenv.Cases(500, 20_000) {
		parts := make([]Part, 1+rng.IntN(9))
		for k := range parts {
			parts[k] = Part{Height: 1 + rng.IntN(9), Keep: rng.IntN(3) == 0}
			if k > 0 {
				parts[k].Above = rng.IntN(4)
			}
		}
		n := 1 + rng.IntN(3)
		first, height := Columns(parts, n)
		require.Len(t, first, n)
		got, ok := columned(parts, append(first[1:], len(parts)))
		require.True(t, ok && first[0] == 0, "%v of %v", first, parts)
		require.Equal(t, height, got)
		for a := 0; a <= len(parts); a++ {
			for b := a; b <= len(parts); b++ {
				ends := [][]int{{len(parts)}, {a, len(parts)}, {a, b, len(parts)}}[n-1]
				if other, ok := columned(parts, ends); ok {
					require.GreaterOrEqual(t, other, height, "%v of %v", ends, parts)
				}
			}
		}
	}
	first, height := Columns(Lines(10, 10, 10), 2)
	assert.Equal(t, []int{0, 3}, first, "three lines stay together")
	assert.Equal(t, 30, height)
	first, height = Columns(nil, 2)
	assert.Equal(t, []int{0, 0}, first)
	assert.Zero(t, height)
}

// columned returns the height of columns that end before such parts; false if one
// ends where a page should not.
func columned(parts []Part, ends []int) (highest int, ok bool) {
	from := 0
	for _, end := range ends {
		height := 0
		for k := from; k < end; k++ {
			height += parts[k].Height
			if k > from {
				height += parts[k].Above
			}
		}
		if end > 0 && end < len(parts) && parts[end-1].Keep {
			return 0, false
		}
		highest, from = max(highest, height), end
	}
	return highest, true
}
