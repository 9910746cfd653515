package mitt

import (
	"math"
	"math/rand/v2"
	"slices"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"thenar/internal/hand"
	"thenar/internal/units"
)

// shaped is a hand of the survey with a thumb spread by 5 % and three to six
// girths of a mound of our own drawing: from 90 to 100 % of the hand at the
// base to the palm with the thumb of common practice, give or take 5 %, and
// between them over the straight line by up to 0.35 of the rise. The mound is
// fullest at a third of its height and never narrows upwards: the slope of
// x + b·(1 − x)·sin πx is above 1 − 1.4 b.
func shaped(rng *rand.Rand, h hand.Hand) hand.Hand {
	full, _ := h.Fill()
	h.Thumb = units.FromMM(full.Thumb.MM() * (1 + 0.05*rng.NormFloat64()))
	full, _ = h.Fill()
	low := full.Circumference.MM() * (0.90 + 0.10*rng.Float64())
	high := full.Palm.MM() * (0.95 + 0.10*rng.Float64())
	bulge, n := 0.6*rng.Float64(), 3+rng.IntN(4)
	for i := range n {
		x := float64(i) / float64(n-1)
		girth := low + (x+bulge*(1-x)*math.Sin(math.Pi*x))*(high-low)
		h.Profile = append(h.Profile, hand.Point{Height: units.FromMM(x * full.GussetLength.MM()), Girth: units.FromMM(girth)})
	}
	return h
}

// measured works out from its definition what a way says of itself, and gives
// its Σ (S(r) − T(r))² in 10⁻⁸ stitch².
func measured(t *testing.T, p *Plan, way Way) int64 {
	t.Helper()
	off := offs(p, wanted(t, p), way.Rounds)
	mean, worst := 0.0, 0.0
	for _, o := range off {
		mm := math.Abs(float64(o)) / 10_000 / p.Gauge.Stitches
		mean += mm / float64(len(off))
		worst = max(worst, mm)
	}
	require.InDelta(t, mean, way.Mean, 1e-9)
	require.InDelta(t, worst, way.Worst, 1e-9)
	require.EqualValues(t, changes(way.Rounds), way.Changes)
	return squares(off)
}

// bothWays plans a hand at one price, and holds its two ways against what must
// be so whatever the hand: the plain rhythm is one of the lists that the other
// way may take, so that it is never cheaper against the hand's own shape; and
// no mean is above the root of the mean square.
func bothWays(t *testing.T, pl *Planner, r *Request, lambda float64) (shape, rhythm Way, off int64) {
	t.Helper()
	r.Lambda = &lambda
	p, err := pl.Plan(r)
	require.NoError(t, err)
	require.Len(t, p.Gusset.Ways, 2)
	shape, rhythm = p.Gusset.Ways[0], p.Gusset.Ways[1]
	require.Equal(t, []Follow{FollowProfile, FollowRhythm}, []Follow{shape.Follows, rhythm.Follows})
	require.Equal(t, shape, p.Gusset.Way)
	price := int64(lambda) * 1e8
	off = measured(t, p, shape)
	plain := measured(t, p, rhythm) + price*int64(rhythm.Changes)
	cost := off + price*int64(shape.Changes)
	require.LessOrEqual(t, cost, plain)
	require.InDelta(t, float64(cost)/1e8, shape.Cost, 1e-9)
	require.LessOrEqual(t, shape.Mean, math.Sqrt(float64(plain)/1e8/float64(p.Gusset.Rounds.N))/p.Gauge.Stitches+1e-9)
	return shape, rhythm, off
}

// What following the hand saves against a plain rhythm, in mm of girth, on
// 1,000 hands of the survey (ANSUR II, Gordon et al. 2014) with mounds of our
// own drawing. A dearer change of rhythm never brings a gusset closer to the
// hand, nor makes it change its rhythm more often.
func TestSavingOverRhythm(t *testing.T) {
	rng := rand.New(rand.NewPCG(1000, 8))
	hands := ansur(t)
	pl := New()
	saved := map[float64][2][]float64{}
	for range 1000 {
		stitches := 18 + 18*rng.Float64()
		kind := []Kind{Fingerless, Mitten}[rng.IntN(2)]
		r := request(kind, per10(stitches, stitches*(1.25+0.2*rng.Float64())), shaped(rng, hands[rng.IntN(len(hands))]))
		closest, _, least := bothWays(t, pl, r, 0)
		for _, lambda := range []float64{0, DefaultLambda} {
			shape, rhythm, off := bothWays(t, pl, r, lambda)
			require.LessOrEqual(t, least, off)
			require.GreaterOrEqual(t, closest.Changes, shape.Changes)
			s := saved[lambda]
			saved[lambda] = [2][]float64{append(s[0], rhythm.Mean-shape.Mean), append(s[1], rhythm.Worst-shape.Worst)}
		}
	}
	for _, lambda := range []float64{0, DefaultLambda} {
		mean, worst := saved[lambda][0], saved[lambda][1]
		slices.Sort(mean)
		slices.Sort(worst)
		lost, _ := slices.BinarySearch(mean, 0)
		t.Logf("λ %v: mean off saved: median %.2f mm, least %.2f, most %.2f, below 0 on %d of 1000; worst round: median %.2f mm, least %.2f, most %.2f",
			lambda, mean[500], mean[0], mean[999], lost, worst[500], worst[0], worst[999])
		assert.Greater(t, mean[500], 1.0, "half of all hands gain more than a millimetre")
	}
}
