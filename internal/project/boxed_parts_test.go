package project

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"thenar/internal/chart"
)

// However a boxed chart is divided, each part counts its stitches as the whole does, those of
// a thumb that is put aside on another part too, and tells of the boxes that stand on it.
func TestPartsOfABoxedChart(t *testing.T) {
	cut := 0
	for _, side := range []Side{Right, Left} {
		for _, narrow := range []bool{false, true} {
			d := squares(map[string]string{"name": "steps"})
			d.Side = side
			out, err := NewPlanner().Derive(d, nil)
			require.NoError(t, err)
			alone := false
			for _, g := range out.Charts.Boxed(chart.Options{View: chart.TubeView, Narrow: narrow}) {
				alone = alone || strings.HasPrefix(g.BoxedRounds(), "hand, round 1") && len(g.Rows) == 1
				for wide := 3; wide < g.Width; wide++ {
					columns := map[int]int{} // of each fold, over all parts
					for left := 0; left < g.Width; left += wide {
						part := g.Part(left, left+wide, 0, len(g.Rows))
						for i, row := range part.Rows {
							whole := g.Rows[i].Numbers()
							for x, n := range row.Numbers() {
								require.Equal(t, whole[left+x], n, "%s, from %d, round %d", g.BoxedRounds(), left, row.Round)
							}
						}
						for _, f := range part.Across {
							columns[f.Times] += f.Count
							require.Equal(t, 4, f.Whole())
							if f.Count < 4 {
								cut++
								require.Contains(t, part.BoxWords(), "; this part has ")
							}
						}
						require.Equal(t, len(part.Across), strings.Count(part.BoxWords(), "Work the box of 4 stitches (steps)"))
					}
					for _, f := range g.Across {
						require.Equal(t, 4, columns[f.Times])
					}
				}
				for high := 1; high < len(g.Rows); high++ {
					for foot := 0; foot < len(g.Rows); foot += high {
						part := g.Part(0, g.Width, foot, foot+high)
						for _, f := range part.Up {
							require.Equal(t, g.Up[0].Count, f.Whole())
							require.Contains(t, g.BoxWords(), part.BoxWords(), "the rounds that a box has are told as in the whole")
						}
					}
				}
			}
			assert.True(t, alone == (narrow || side == Right), "round 1, which puts the thumb aside, stands alone on narrow pages")
		}
	}
	assert.Positive(t, cut)
}
