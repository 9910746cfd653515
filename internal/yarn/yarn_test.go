package yarn

import (
	"math"
	"math/rand/v2"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"thenar/internal/gauge"
	"thenar/internal/hand"
	"thenar/internal/mitt"
	"thenar/internal/units"
)

const mm = units.Millimetre

func planned(t *testing.T, kind mitt.Kind, stitches, rounds float64, treated bool) *mitt.Plan {
	t.Helper()
	return plannedOf(t, kind, stitches, rounds, treated, mitt.Make{})
}

// plannedOf is that of a mitt that is made in some way.
func plannedOf(t *testing.T, kind mitt.Kind, stitches, rounds float64, treated bool, how mitt.Make) *mitt.Plan {
	t.Helper()
	p, err := mitt.New().Plan(&mitt.Request{
		Kind: kind, Make: how, Gauge: gauge.Gauge{Stitches: stitches / 100, Rounds: rounds / 100, Treated: treated},
		Hand:   hand.Hand{Circumference: 190 * mm, Thumb: 65 * mm, Length: 180 * mm, Wrist: 157 * mm},
		Stitch: mitt.Stitches{Repeat: 2, Rib: 2},
	})
	require.NoError(t, err)
	return p
}

// Munden's relation with the constants of plain wool fabric that textbooks
// give (Ks 19.0 dry, 21.6 wet-relaxed; Munden 1959, J. Text. Inst. 50, T448,
// from memory): loop lengths in mm worked out by hand for five gauges.
func TestLoopByGeometry(t *testing.T) {
	for _, c := range []struct {
		stitches, rounds float64
		washed           bool
		want             float64
	}{
		{22, 30, false, 16.97},
		{22, 30, true, 18.09},
		{28, 36, true, 14.64},
		{18, 24, true, 22.36},
		{32, 44, true, 12.39},
	} {
		p := planned(t, mitt.Fingerless, c.stitches, c.rounds, c.washed)
		e := Of(p, p.Mitt(), Request{})
		assert.InDelta(t, c.want, e.Loop, 0.006, "%v × %v", c.stitches, c.rounds)
		assert.Equal(t, Geometry, e.From)
		assert.InDelta(t, 0.10, e.Half, 1e-9, "the least interval, since the gauge has no doubt")
	}
}

// A rule of thumb of a knitter's notebook (2012): metres = π × needle (mm) ×
// stitches × rows × 1.5 / 1000, that is 18.8 mm a stitch with 4 mm needles,
// usual at 22 stitches over 10 cm. Geometry agrees within its interval.
func TestLoopAgainstARuleOfThumb(t *testing.T) {
	p := planned(t, mitt.Fingerless, 22, 30, true)
	assert.InEpsilon(t, 18.8, Of(p, p.Mitt(), Request{}).Loop, 0.10)
}

// Worked by hand. 24 × 32 over 10 cm: loops of √(21.6/0.0768) = 16.771 mm.
// The cast-on of 38 and the bridge of 3 take 3 × 41/0.24 = 512.5 mm, the
// cast-offs over 44 and 18 take 6 × 62/0.24 = 1,550 mm, four tails 800 mm.
func TestEstimateByHand(t *testing.T) {
	p := planned(t, mitt.Fingerless, 24, 32, true)
	m := p.Mitt()
	loops := 0
	for _, s := range m.Sections {
		for _, r := range s.Rounds {
			loops += r.Out()
		}
	}
	e := Of(p, m, Request{Ball: Ball{Length: 175 * units.Metre, Mass: 50}})
	assert.Equal(t, loops, e.Loops)
	assert.InDelta(t, float64(loops)*16.7705+512.5+1550+800, e.One.Mean, 1)
	assert.InDelta(t, 2*e.One.Mean, e.Pair.Mean, 1e-9)
	assert.InDelta(t, e.One.Mean/1000*50/175, e.One.Grams(Ball{Length: 175 * units.Metre, Mass: 50}).Mean, 1e-9)
	assert.InDelta(t, e.One.Metres().Mean/0.9144, e.One.Yards().Mean, 1e-9, "international yard, 1959")
	assert.Equal(t, 1, e.Balls)
	assert.Zero(t, e.One.Grams(Ball{Length: 5}))
}

// A swatch of 30 stitches and 40 rounds at 24 stitches over 10 cm that
// unravels to 21.325 m: its edges take 30 × 9/0.24 = 1,125 mm, so that each of
// the 1,200 loops has 16.833 mm. Weighed, 6.0929 g at 175 m to 50 g are as long.
func TestLoopBySwatch(t *testing.T) {
	p := planned(t, mitt.Mitten, 24, 32, true)
	m := p.Mitt()
	s := Swatch{Stitches: 30, Rounds: 40, Unravelled: units.FromMM(21_325)}
	e := Of(p, m, Request{Swatch: s})
	assert.InDelta(t, 16.8333, e.Loop, 0.0001)
	assert.Equal(t, UnravelledSwatch, e.From)
	assert.False(t, e.Unlikely)
	weighed := Swatch{Stitches: 30, Rounds: 40, Mass: 21.325 * 50 / 175}
	ball := Ball{Length: 175 * units.Metre, Mass: 50}
	assert.InDelta(t, e.Loop, Of(p, m, Request{Ball: ball, Swatch: weighed}).Loop, 0.0001)
	assert.Equal(t, Geometry, Of(p, m, Request{Swatch: weighed}).From, "a mass alone says nothing without the band")
	s.Kept = true
	kept := Of(p, m, Request{Swatch: s})
	assert.InDelta(t, 21_325, kept.Swatch.Mean, 0.01, "what was unravelled comes back")
	assert.InDelta(t, e.Pair.Mean+21_325, kept.Pair.Mean, 0.01)
	s.Unravelled *= 2
	assert.True(t, Of(p, m, Request{Swatch: s}).Unlikely)
}

// For any yarn and mitt: the interval is ±10 % or more around the estimate, a pair
// takes twice a mitt, a longer mitt takes more, and the balls are just enough.
func TestEstimatesOfAnyMitt(t *testing.T) {
	rng := rand.New(rand.NewPCG(7, 10))
	for range 300 {
		p := planned(t, []mitt.Kind{mitt.Fingerless, mitt.Mitten}[rng.IntN(2)], 16+20*rng.Float64(), 22+26*rng.Float64(), rng.IntN(2) == 0)
		r := Request{Ball: Ball{Length: units.Length(50+rng.IntN(300)) * units.Metre, Mass: float64(25 + rng.IntN(100))}}
		if rng.IntN(2) == 0 {
			r.Swatch = Swatch{Stitches: float64(20 + rng.IntN(30)), Rounds: float64(20 + rng.IntN(40)), Mass: 3 + 9*rng.Float64(), Kept: rng.IntN(2) == 0}
		}
		m := p.Mitt()
		e := Of(p, m, r)
		require.GreaterOrEqual(t, e.Half, 0.10)
		require.InDelta(t, e.One.Mean*(1+e.Half), e.One.High, 1e-6)
		require.InDelta(t, e.One.Mean*(1-e.Half), e.One.Low, 1e-6)
		require.InDelta(t, 2*e.One.Mean+e.Swatch.Mean, e.Pair.Mean, 1e-6)
		require.GreaterOrEqual(t, float64(e.Balls)*r.Ball.Length.MM(), e.Pair.High)
		require.Less(t, float64(e.Balls-1)*r.Ball.Length.MM(), e.Pair.High)
		shorter := m
		shorter.Sections = m.Sections[1:]
		require.Less(t, Of(p, shorter, r).One.Mean, e.One.Mean)
	}
}

// Parts in whole metres add up to the whole as it is shown.
func TestPartsAddUp(t *testing.T) {
	for _, parts := range [][]float64{{83.4, 6.4, 0.4}, {82.6, 7.6}, {0.5, 0.5, 0.5}, {12}, {}} {
		var list []Amount
		sum, shown := 0.0, 0
		for _, mean := range parts {
			list = append(list, Amount{Mean: mean})
			sum += mean
		}
		for i, n := range Whole(list) {
			shown += n
			assert.InDelta(t, parts[i], n, 1)
		}
		assert.InDelta(t, math.Round(sum), shown, 0, "%v", parts)
	}
}
