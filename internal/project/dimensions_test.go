package project

import (
	"fmt"
	"math/rand/v2"
	"testing"

	"github.com/stretchr/testify/require"

	"thenar/internal/mitt"
)

// The measures of any mitt: the whole length is how high its fabric is by the fit, which is
// counted round by round; each measure is there once, under a name of its own, and is not
// nothing; and every section has its length.
func TestMeasuresOfAnyMitt(t *testing.T) {
	rng, pl := rand.New(rand.NewPCG(26, 4)), NewPlanner()
	for i := range 60 {
		doc, _ := anyMitt(rng, pl)
		out, err := pl.Derive(doc, nil)
		require.NoError(t, err)
		high := 0.0
		for _, r := range out.Fit {
			if !r.Section.OnThumb() {
				high = max(high, r.AboveCastOn)
			}
		}
		require.InDelta(t, high, out.Plan.Whole(), 1e-6, "mitt %d: %v", i, doc.Sheet)
		names, lengths := map[string]bool{}, 0
		list := out.Plan.Dimensions()
		for k, m := range list {
			require.False(t, names[m.Name], "%s twice", m.Name)
			names[m.Name] = true
			require.Positive(t, m.MM, m.Name)
			if m.Part != "" && !m.Around {
				lengths++
			}
			for _, other := range list[:k] {
				require.False(t, m.Same(other), fmt.Sprintf("%s and %s", m.Name, other.Name))
			}
		}
		require.Len(t, out.Mitt.Upward(), lengths)
		require.True(t, list[len(list)-1].Same(mitt.Dimension{}))
	}
}
