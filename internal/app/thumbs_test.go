package app

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// The other ways to make a mitt take a plan each: Fit, which shows them, has them, and the
// other desks go without.
func TestOnlyFitPlansTheOtherWays(t *testing.T) {
	t.Parallel()
	a, id := sampled(t)
	for name, c := range map[string]struct {
		show func() (Mitt, error)
		ways bool
	}{
		"opened":           {func() (Mitt, error) { return a.OpenMitt(t.Context(), id) }, false},
		"opened at Fit":    {func() (Mitt, error) { return a.OpenFit(t.Context(), id) }, true},
		"typed into":       {func() (Mitt, error) { return a.Preview(t.Context(), id, Typed{"after": {"1"}}) }, false},
		"typed into Fit's": {func() (Mitt, error) { return a.PreviewFit(t.Context(), id, Typed{"after": {"1"}}) }, true},
	} {
		m, err := c.show()
		require.NoError(t, err, name)
		require.NotNil(t, m.Out, name)
		assert.Equal(t, c.ways, len(m.Out.Thumbs) > 1, name)
	}
}
