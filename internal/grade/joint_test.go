package grade

import (
	"math/rand/v2"
	"testing"

	"github.com/stretchr/testify/require"

	"thenar/internal/mitt"
)

// everyWay goes through all ways to choose, and returns the least cost by number of
// changes, as the definition has it.
func everyWay(sizes [][]mitt.Choice, mayFall []bool) map[int]int64 {
	least := map[int]int64{}
	var own []int64
	for _, list := range sizes {
		best := list[0].Cost
		for _, x := range list {
			best = min(best, x.Cost)
		}
		own = append(own, best)
	}
	var walk func(i, changes int, cost int64, last *mitt.Choice)
	walk = func(i, changes int, cost int64, last *mitt.Choice) {
		if i == len(sizes) {
			if was, ok := least[changes]; !ok || cost < was {
				least[changes] = cost
			}
			return
		}
		for v := range sizes[i] {
			x, more := &sizes[i][v], 0
			if last != nil {
				if x.Gusset < last.Gusset && !mayFall[i] {
					continue
				}
				for _, pair := range [][2]int{{x.Base, last.Base}, {x.Bridge, last.Bridge}, {x.PickedUp, last.PickedUp}, {x.Decreases, last.Decreases}} {
					if pair[0] != pair[1] {
						more++
					}
				}
				if x.Every != last.Every || x.Every == 0 {
					more++
				}
			}
			walk(i+1, changes+more, cost+x.Cost-own[i], x)
		}
	}
	walk(0, 0, 0, nil)
	return least
}

// The joint choice equals all ways gone through, at every price: for each whole
// price, and at each notch, the notch's sum is the least.
func TestJointEqualsEveryWay(t *testing.T) {
	rng := rand.New(rand.NewPCG(26, 2))
	steps, notMore := 0, 0
	for range 400 {
		sizes, mayFall := make([][]mitt.Choice, 1+rng.IntN(4)), make([]bool, 4)
		for i := range sizes {
			mayFall[i] = rng.IntN(5) == 0
			for range 1 + rng.IntN(7) {
				sizes[i] = append(sizes[i], mitt.Choice{
					Base: 3 + rng.IntN(2), Bridge: 3 + rng.IntN(2), PickedUp: 4 + rng.IntN(2), Decreases: rng.IntN(2), Every: rng.IntN(4),
					Gusset: 9 + 2*i + 2*rng.IntN(4), Cost: int64(rng.IntN(40)) * nano,
				})
			}
		}
		least := everyWay(sizes, mayFall)
		found, barred := Notches(sizes, mayFall)
		if len(least) == 0 {
			require.False(t, barred)
			continue
		}
		require.True(t, barred)
		at := func(mu int64) (best int64) { // in 10⁻⁹ mm²
			best = 1 << 62
			for changes, cost := range least {
				best = min(best, cost+mu*int64(changes))
			}
			return best
		}
		for i, n := range found {
			steps++
			require.Equal(t, least[n.Changes], int64(n.Cost*nano+0.5), "notch %d of %+v", i, sizes)
			require.True(t, i == 0 || found[i-1].Changes > n.Changes && found[i-1].From < n.From, "%+v", found)
		}
		require.Zero(t, found[0].From)
		for mu := int64(0); mu < 45; mu++ {
			n := found[0]
			for _, next := range found {
				if next.from.changes == 0 || next.from.atMost(mu*nano) {
					n = next
				}
			}
			require.Equal(t, at(mu*nano), int64(n.Cost*nano+0.5)+mu*nano*int64(n.Changes), "price %d of %+v", mu, sizes)
		}
		notMore += len(found)
	}
	t.Logf("%d notches compared", steps)
	require.Greater(t, notMore, 600)
}

// A rhythm that a person fixed may be of any length; it is never taken for another, nor
// for that of other decreases.
func TestLongRhythmsAreNotMistaken(t *testing.T) {
	of := func(decreases, every int) []mitt.Choice {
		return []mitt.Choice{{Base: 3, Bridge: 3, PickedUp: 4, Decreases: decreases, Every: every, Gusset: 9}}
	}
	for every := 2; every < 140; every++ {
		found, _ := Notches([][]mitt.Choice{of(2, 1), of(0, every)}, make([]bool, 2))
		require.Equal(t, 2, found[0].Changes, "every %dth round", every)
	}
}
