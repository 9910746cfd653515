package mitt

import (
	"math"
	"math/rand/v2"
	"testing"

	"github.com/stretchr/testify/require"
)

// pinned returns a request in which a choice is fixed.
func (x *Choice) pinned(r *Request) *Request {
	own := *r
	own.Pins.GussetBase, own.Pins.Bridge = Fix(x.Base), Fix(x.Bridge)
	if r.Make.Direction != Down {
		own.Pins.PickedUp, own.Pins.ThumbDecreases = Fix(x.PickedUp), Fix(x.Decreases)
	}
	own.Pins.ThumbStitches = Pin{}
	if x.Every > 0 {
		own.Pins.Rhythm = []int{x.Every}
	}
	return &own
}

// Every choice is a plan: with its numbers fixed it comes out as the choice says,
// with the hand's count and the thumb's untouched, and the plan that is free is one
// of them, the cheapest but for the schedule.
func TestChoicesArePlans(t *testing.T) {
	rng := rand.New(rand.NewPCG(26, 1))
	pl := New()
	hands, tried := 0, 0
	for range 1500 {
		r := wild(rng)
		r.Pins, r.Progress = Pins{}, nil
		if rng.IntN(4) == 0 {
			r.Make.Direction = Down
		}
		free, err := pl.Plan(r)
		if err != nil || free.Construction() != ByGusset || !free.Parted() {
			continue
		}
		list, err := pl.Choices(r)
		require.NoError(t, err, "%+v", r)
		require.NotEmpty(t, list, "%+v", r)
		hands++
		best, own := int64(math.MaxInt64), -1
		for i, x := range list {
			if x.Every == 0 && x.Base == free.Gusset.Base && x.Bridge == free.Bridge.CastOn && x.PickedUp == free.Count(PickedUp) && x.Decreases == free.Count(ThumbDecreases) {
				own = i
			}
			best = min(best, x.Cost)
		}
		require.GreaterOrEqual(t, own, 0, "the free plan is none of its choices: %+v", r)
		require.Equal(t, free.Gusset.IncreaseRounds, list[own].Rounds)
		for range min(6, len(list)) {
			x := list[rng.IntN(len(list))]
			p, err := pl.Plan(x.pinned(r))
			require.NoError(t, err, "%+v of %+v", x, r)
			tried++
			require.Equal(t, [...]int{x.Base, x.Bridge, x.PickedUp, x.Decreases, x.Increases, x.Gusset},
				[...]int{p.Gusset.Base, p.Bridge.CastOn, p.Count(PickedUp), p.Count(ThumbDecreases), p.Gusset.Increases, p.Gusset.Stitches}, "%+v of %+v", x, r)
			require.Equal(t, [2]int{free.Body.Stitches.N, free.Thumb.Stitches.N}, [2]int{p.Body.Stitches.N, p.Thumb.Stitches.N}, "%+v of %+v", x, r)
			require.Equal(t, x.Rounds, p.Gusset.IncreaseRounds, "%+v of %+v", x, r)
		}
	}
	t.Logf("%d hands, %d choices planned", hands, tried)
	require.Greater(t, hands, 150)
}
