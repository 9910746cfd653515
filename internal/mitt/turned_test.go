package mitt

import (
	"math/rand/v2"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"thenar/internal/hand"
	"thenar/internal/shaping"
	"thenar/internal/stitch"
	"thenar/internal/testenv"
	"thenar/internal/units"
)

// runsOf are the plain stitches between the changes of a round, read round
// the tube: what stands after the last goes before the first.
func runsOf(ops []stitch.Op) (runs []int, first, last int) {
	run := 0
	for _, op := range ops {
		if op == stitch.Knit {
			run++
			continue
		}
		runs, run = append(runs, run), 0
	}
	first = runs[0]
	runs[0] += run
	return runs, first, run
}

// A change spread over a round stays even round the tube, and nothing is made
// beside the beginning of the round wherever a stitch is left to lie there.
func TestSpreadIsTurnedByHalfARun(t *testing.T) {
	for n := 8; n <= 100; n++ {
		for k := 1; k < n; k++ {
			ops := spread(times(nil, stitch.Knit, n), k)
			runs, first, last := runsOf(ops)
			require.Len(t, ops, n+k)
			require.NoError(t, shaping.CheckRuns(shaping.Spread{Stitches: n, Events: k}, runs), "%d + %d", n, k)
			require.Positive(t, first, "%d + %d", n, k)
			require.Positive(t, last, "%d + %d ends on a make one", n, k)
			require.LessOrEqual(t, first-last, 1)
		}
		for k := 1; 2*k <= n; k++ {
			runs, first, last := runsOf(spread(times(nil, stitch.Knit, n), -k))
			require.NoError(t, shaping.CheckRuns(shaping.Spread{Stitches: n, Events: k, Uses: 2}, runs), "%d − %d", n, k)
			require.LessOrEqual(t, first-last, 1)
			if n > 3*k {
				require.Positive(t, last, "%d − %d ends on a decrease", n, k)
			}
		}
	}
	ops := spread(times(nil, stitch.Knit, 38), 6)
	_, first, last := runsOf(ops)
	assert.Equal(t, []int{4, 3}, []int{first, last}, "7, 6, 6, 7, 6, 6 turned")
}

// mittens are some at random, of hands and gauges as they come.
func mittens(n int, yield func(*Request, *Plan)) {
	rng := rand.New(rand.NewPCG(8, 19))
	pl := New()
	for range n {
		r := request([]Kind{Mitten, Thumbless}[rng.IntN(2)], per10(18+16*rng.Float64(), 24+24*rng.Float64()),
			hand.Hand{Circumference: units.FromMM(140 + 110*rng.Float64())})
		if p, err := pl.Plan(r); err == nil {
			yield(r, p)
		}
	}
}

// A top never slows down again (common practice, no source).
func TestTopsNeverSlowDownAgain(t *testing.T) {
	seen := 0
	mittens(testenv.Cases(200, 2_000), func(_ *Request, p *Plan) {
		list := p.Top.DecreaseRounds
		for i := 2; i < len(list); i++ {
			require.LessOrEqual(t, list[i]-list[i-1], list[i-1]-list[i-2], "%v of %d rounds", list, p.Top.Rounds)
		}
		seen += len(list)
	})
	assert.Greater(t, seen, 500)
}

// A top that is gone on with, from any of its rounds, stays as it was planned.
func TestTopGoesOnAsPlanned(t *testing.T) {
	pl := New()
	mittens(testenv.Cases(30, 300), func(r *Request, p *Plan) {
		for at := 1; at <= p.Top.Rounds; at++ {
			onward := *r
			onward.Progress = p.ProgressAt(stitch.Top, at)
			now, err := pl.Plan(&onward)
			require.NoError(t, err)
			require.Equal(t, p.Top, now.Top, "from round %d", at)
		}
	})
}
