package paper

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// For any length of chart and page: the parts cover the chart, none is longer than
// the page, neighbours share two columns, and all are equally long to within one.
func TestDivideCoversTheChart(t *testing.T) {
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

// Cells are as wide as fits up to 6 mm; below 3.5 mm the chart is divided. A width
// that is asked for is kept.
func TestFitCellsChoosesTheWidth(t *testing.T) {
	c := fitCells(21, 19, 0.75, roundNumbers, 182, 200, 0, maxFitCell)
	assert.InDelta(t, 6, c.width, 0)
	assert.Len(t, c.columns, 1)
	c = fitCells(44, 30, 0.75, roundNumbers, 182, 200, 0, maxFitCell)
	assert.InDelta(t, 182/(44+emptyEdge+roundNumbers), c.width, 1e-9)
	assert.Len(t, c.columns, 1, "as large as fits in one part")
	assert.Len(t, c.rows, 1)
	c = fitCells(90, 30, 0.75, roundNumbers, 182, 200, 0, maxFitCell)
	assert.InDelta(t, dividedCell, c.width, 0)
	assert.Greater(t, len(c.columns), 1)
	c = fitCells(21, 19, 0.75, roundNumbers, 182, 200, 12.5, maxFitCell)
	assert.InDelta(t, 12.5, c.width, 0)
	assert.Greater(t, len(c.columns), 1)
	c = fitCells(21, 19, 0.75, roundNumbers, 182, 200, 3, maxFitCell)
	assert.InDelta(t, 3, c.width, 0)
	assert.Len(t, c.columns, 1)
}
