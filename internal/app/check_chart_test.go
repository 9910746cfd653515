package app

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// A row in which something was found is marked on its chart, as a round is.
func TestRowsWithSlipsAreMarked(t *testing.T) {
	for _, noun := range []string{"Row", "Rnd"} {
		c, err := CheckWritten("CO 10 sts.\n" + noun + " 1: Knit.\n" + noun + " 2: Purl. 12 sts\n" + noun + " 3: Knit.")
		require.NoError(t, err)
		charts, err := c.Charts("")
		require.NoError(t, err)
		require.Len(t, charts.List, 1)
		var marked []int
		for _, row := range charts.List[0].Grid.Rows {
			if row.Fault != "" {
				marked = append(marked, row.Round)
			}
		}
		assert.Equal(t, []int{2}, marked, noun)
	}
}
