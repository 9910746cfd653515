package project

import (
	"math/rand/v2"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"thenar/internal/tryon"
)

// Whatever is changed of a mitt on the needles plans the rest: no round that is
// knitted, of either hand, is worked otherwise; what changes nothing of them is
// left as it is.
func TestKeepWhatIsKnitted(t *testing.T) {
	rng := rand.New(rand.NewPCG(5, 9))
	pl := NewPlanner()
	changed := 0
	for range 300 {
		d := knitter(rng)
		other := knitter(rng)
		other.Sheet["kind"] = d.Sheet["kind"] // the other kind may not be possible any more
		p, err := pl.Plan(d.Sheet)
		require.NoError(t, err)
		all := tryon.Places(p.Mitt())
		hands := []Progress{{Right, p, all[rng.IntN(len(all))]}, {Left, p, all[rng.IntN(len(all))]}}
		assert.Equal(t, d, pl.Keep(d, hands))
		kept := pl.Keep(other, hands)
		for _, h := range hands {
			kept.Side = h.Side
			is, err := pl.Plan(kept.Effective())
			require.NoError(t, err)
			require.True(t, alikeUpTo(p.Mitt(), is.Mitt(), h.At), "%s at %v", h.Side, h.At)
		}
		if len(kept.Sheet) > len(other.Sheet) {
			changed++
		}
	}
	assert.Greater(t, changed, 250)
}
