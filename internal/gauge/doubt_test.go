package gauge_test

import (
	"math"
	"math/rand/v2"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"gonum.org/v1/gonum/stat/distuv"

	"thenar/internal/gauge"
	"thenar/internal/units"
)

// A rectangle of half-width a holds 95 % within 0.95 a; two equal ones make a
// triangle, whose 95 % lie within 2a(1 − √0.05) (JCGM 100:2008, 4.3.9, has
// the triangle's density).
func TestExactQuantiles(t *testing.T) {
	assert.InDelta(t, 0.95, gauge.Doubt{Rectangles: []float64{1}}.CountAndRuler(), 1e-12)
	assert.InDelta(t, 2*(1-math.Sqrt(0.05)), gauge.Doubt{Rectangles: []float64{1, 1}}.CountAndRuler(), 1e-12)
	assert.InDelta(t, 0.95, gauge.Doubt{Rectangles: []float64{1, 0.01}}.CountAndRuler(), 1e-12)
	// A third rectangle of almost no width changes nothing: the general method
	// agrees with the closed form.
	for _, b := range []float64{1, 0.5, 0.06, 0.04} {
		two := gauge.Doubt{Rectangles: []float64{1, b}}.CountAndRuler()
		three := gauge.Doubt{Rectangles: []float64{1, b, 1e-7}}.CountAndRuler()
		assert.InDelta(t, two, three, 2e-4, "b = %g", b)
	}
	// Twelve equal rectangles are close to the normal distribution of their
	// variance (central limit theorem).
	var many gauge.Doubt
	for range 12 {
		many.Rectangles = append(many.Rectangles, 1)
	}
	assert.InEpsilon(t, 1.96*2, many.CountAndRuler(), 0.01)
}

// Without rectangles Within agrees with gonum's normal distribution; with them
// it is the share of simulated sums.
func TestWithin(t *testing.T) {
	normal := distuv.Normal{Mu: 0, Sigma: 0.015}
	d := gauge.Doubt{Variation: 0.015}
	for _, x := range []float64{0.001, 0.01, 0.03, 0.05} {
		assert.InDelta(t, normal.CDF(x)-normal.CDF(-x/2), within(d, -x/2, x), 1e-6)
	}
	d = gauge.Doubt{Rectangles: []float64{0.02, 0.03}, Variation: 0.012, Other: 0.009}
	rng := rand.New(rand.NewPCG(5, 50))
	const draws = 200_000
	in := 0
	for range draws {
		x := 0.02*(2*rng.Float64()-1) + 0.03*(2*rng.Float64()-1) + 0.015*rng.NormFloat64()
		if x > -0.01 && x < 0.025 {
			in++
		}
	}
	assert.InDelta(t, float64(in)/draws, within(d, -0.01, 0.025), 0.005)
	assert.Zero(t, within(d, 0.1, -0.1))
	assert.InDelta(t, 1, within(d, -1, 1), 1e-9)
}

// counted returns a simulated count of a fabric of exactly g stitches per mm.
// The ruler reads w, the fabric under it is up to 1 mm longer or shorter, and the
// count is rounded to the fineness.
func counted(rng *rand.Rand, g float64, w units.Length, fineness float64) gauge.Swatch {
	under := w.MM() + 2*rng.Float64() - 1
	n := math.Round(g*under/fineness) * fineness
	return gauge.Swatch{Stitches: n, Width: w, Washed: true, CountedTo: fineness}
}

// Of 10,000 simulated swatches of every fineness and width, 93 to 97 % have the
// true girth inside the stated 95 % interval of count and ruler. Of two and three
// swatches combined at least 93 % have: equal counts over the same width were
// rounded alike, so their error is counted once.
func TestIntervalsContainTheTrueGirth(t *testing.T) {
	rng := rand.New(rand.NewPCG(95, 10_000))
	for _, fineness := range []float64{0.5, 1} {
		for _, w := range []units.Length{5 * cm, 10 * cm, 20 * cm} {
			for _, pieces := range []int{1, 2, 3} {
				inside, runs := 0, 10_000
				if pieces > 1 {
					runs = 300
				}
				for range runs {
					g := 0.16 + 0.20*rng.Float64()
					var swatches []gauge.Swatch
					for range pieces {
						swatches = append(swatches, counted(rng, g, w, fineness))
					}
					got, err := gauge.Of(swatches, 0, "s")
					require.NoError(t, err)
					girth, truth := 48/got.Stitches, 48/g
					if math.Abs(truth-girth) <= girth*got.StitchDoubt.CountAndRuler() {
						inside++
					}
				}
				share := float64(inside) / float64(runs)
				t.Logf("to %g over %s, %d swatches: %.1f %%", fineness, w, pieces, 100*share)
				assert.GreaterOrEqual(t, share, 0.93)
				if pieces == 1 {
					assert.LessOrEqual(t, share, 0.97)
				}
			}
		}
	}
}

// With a hand that varies by 1.5 % from piece to piece, the whole interval
// contains the true girth about as often, a little more because of the
// quadrature.
func TestHalfCoversAnUnevenHand(t *testing.T) {
	rng := rand.New(rand.NewPCG(15, 1000))
	inside := 0
	const runs = 10_000
	for range runs {
		g := 0.16 + 0.20*rng.Float64()
		got, err := gauge.Of([]gauge.Swatch{counted(rng, g, 10*cm, 0.5)}, gauge.HandVariation, "s")
		require.NoError(t, err)
		truth := 48 / (g * (1 + gauge.HandVariation*rng.NormFloat64()))
		if girth := 48 / got.Stitches; math.Abs(truth-girth) <= girth*got.StitchDoubt.Half() {
			inside++
		}
	}
	t.Logf("%.1f %%", 100*float64(inside)/runs)
	assert.InDelta(t, 0.955, float64(inside)/runs, 0.02)
}

// A swatch of 12 stitches over 5 cm, counted to the half: ¼ of 12 and 1 mm of
// 50 are 2.08 and 2 %, together 3.17 % at 95 %: 7 mm of a palm of 226 mm.
// Over 10 cm it is half of that.
func TestWiderSwatch(t *testing.T) {
	g, err := gauge.Of([]gauge.Swatch{swatch(12, 5*cm, 0, 0)}, gauge.HandVariation, "s")
	require.NoError(t, err)
	now, then, over, ok := g.WiderSwatch(226)
	require.True(t, ok)
	assert.InDelta(t, 7.2, now, 0.05)
	assert.InDelta(t, 3.6, then, 0.05)
	assert.Equal(t, 10*cm, over)
	g, err = gauge.Of([]gauge.Swatch{swatch(48, 20*cm, 0, 0)}, gauge.HandVariation, "s")
	require.NoError(t, err)
	_, _, _, ok = g.WiderSwatch(226)
	assert.False(t, ok)
}

func within(d gauge.Doubt, low, high float64) float64 {
	c := d.Chances()
	return c.Within(low, high)
}
