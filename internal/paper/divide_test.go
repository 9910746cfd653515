package paper

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// However long a chart and however small a page: the parts cover it all, none
// is longer than a page takes, neighbours share two columns, and none is a
// mere remainder beside its neighbours.
func TestDivide(t *testing.T) {
	for n := 1; n <= 320; n++ {
		for most := overlap + 1; most <= 60; most++ {
			list := divide(n, most)
			require.Equal(t, 0, list[0].from)
			require.Equal(t, n, list[len(list)-1].to)
			shortest, longest := n, 0
			for i, s := range list {
				size := s.to - s.from
				require.LessOrEqual(t, size, most, "%d in parts of %d", n, most)
				require.Positive(t, size)
				shortest, longest = min(shortest, size), max(longest, size)
				if i > 0 {
					require.Equal(t, list[i-1].to-overlap, s.from, "%d in parts of %d", n, most)
				}
			}
			require.LessOrEqual(t, longest-shortest, 1, "%d in parts of %d", n, most)
			if n <= most {
				require.Len(t, list, 1)
			}
		}
	}
}

// A chart is as large as fits up to 6 mm a cell; below 3.5 it is divided; a
// width that is asked for is kept whatever it takes.
func TestFits(t *testing.T) {
	c := fits(21, 19, 0.75, numbers, 182, 200, 0, roomiest)
	assert.InDelta(t, 6, c.width, 0)
	assert.Len(t, c.columns, 1)
	c = fits(44, 30, 0.75, numbers, 182, 200, 0, roomiest)
	assert.InDelta(t, 182/(44+beside+numbers), c.width, 1e-9)
	assert.Len(t, c.columns, 1, "as large as fits is whole")
	assert.Len(t, c.rows, 1)
	c = fits(90, 30, 0.75, numbers, 182, 200, 0, roomiest)
	assert.InDelta(t, divided, c.width, 0)
	assert.Greater(t, len(c.columns), 1)
	c = fits(21, 19, 0.75, numbers, 182, 200, 12.5, roomiest)
	assert.InDelta(t, 12.5, c.width, 0)
	assert.Greater(t, len(c.columns), 1)
	c = fits(21, 19, 0.75, numbers, 182, 200, 3, roomiest)
	assert.InDelta(t, 3, c.width, 0)
	assert.Len(t, c.columns, 1)
}
