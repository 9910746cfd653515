package paper

import (
	"slices"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"thenar/internal/project"
)

// In large print the drawn steps stand before the chart only where that is laid better;
// in ordinary print, and in an order of a person's own, they stay in their place.
func TestStepsComeFirstWhereThatIsBetter(t *testing.T) {
	names := func(list []block) (names []string) {
		for _, b := range list {
			names = append(names, b.name)
		}
		return names
	}
	moved := 0
	for _, doc := range project.Samples() {
		s := derived(t, doc, nil)
		for _, sideways := range []bool{false, true} {
			o := Usual()
			o.Large, o.Double, o.Sideways = true, true, sideways
			h := newHandout(&s, o)
			got := h.blocks()
			cost, ok := h.cost(got)
			require.True(t, ok)
			for _, order := range [][]Piece{usual, stepsFirst} {
				made := map[Piece][]block{}
				for _, p := range order {
					for _, b := range h.piece(p) {
						if len(b.ways) > 0 && len(b.ways[0].parts) > 0 {
							made[p] = append(made[p], b)
						}
					}
				}
				other, ok := h.cost(inOrder(made, order))
				require.True(t, ok)
				assert.LessOrEqual(t, cost.Compare(other), 0, "%s sideways %v", doc.Name, sideways)
			}
			o.Large = false
			usualOrder := names(newHandout(&s, o).blocks())
			large := names(got)
			chart, steps := slices.Index(large, "Chart of the thumb gusset"), slices.Index(large, "How it is worked")
			if steps < chart {
				moved++
			}
			assert.Less(t, slices.Index(usualOrder, "Chart of the thumb gusset"), slices.Index(usualOrder, "How it is worked"))
		}
	}
	assert.Positive(t, moved, "large prints with the steps first")
}
