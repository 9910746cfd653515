package mitt

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"thenar/internal/hand"
	"thenar/internal/units"
)

// What a neighbour costs is what fixing it is told to cost once it is fixed; a value that
// can't be is none.
func TestANeighbourCostsWhatFixingItDoes(t *testing.T) {
	pl := New()
	req := request(Glove, per10(24, 32), hand.Hand{Circumference: units.FromMM(190)})
	p, err := pl.Plan(req)
	require.NoError(t, err)
	seen := 0
	for _, n := range Divided() {
		for _, one := range pl.Beside(req, p, n) {
			if !one.Can {
				continue
			}
			seen++
			trial := *req
			trial.Pins.Set(n, one.Value)
			fixed, err := pl.Plan(&trial)
			require.NoError(t, err)
			costs := pl.PinCosts(&trial, fixed)
			require.Len(t, costs, 1)
			assert.InDelta(t, costs[0].MM, one.MM, 1e-9, "%s = %d", n, one.Value)
		}
	}
	assert.Greater(t, seen, 20)
	low := *req
	low.Pins.Set(OfBridge(0), 1)
	p, err = pl.Plan(&low)
	require.NoError(t, err)
	assert.False(t, pl.Beside(&low, p, OfBridge(0))[0].Can, "no bridge of none")
}
