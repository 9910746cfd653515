package fit

import (
	"math/rand/v2"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"thenar/internal/gauge"
	"thenar/internal/hand"
	"thenar/internal/mitt"
	"thenar/internal/stitch"
)

// By hand: above where the thumb parts 190 mm with an ease of −5 %, round the
// thumb 65 mm and 11.87 mm of room (0.08 × 65 + 1.6 ÷ 0.24).
func TestWantedGirths(t *testing.T) {
	_, list := rows(t, mitt.Fingerless)
	assert.InDelta(t, 190*0.95, ofPart(list, stitch.Hand)[0].Wanted, 1e-9)
	thumb := ofPart(list, stitch.Thumb)[0]
	assert.InDelta(t, 65+5.2+1.6/0.24, thumb.Wanted, 1e-9)
	assert.Equal(t, Easy, thumb.Band, "19 stitches are 79.2 mm round 76.9")
	gusset := ofPart(list, stitch.Gusset)
	share := 3.125 / 59.4
	assert.InDelta(t, gusset[0].Body*(1-0.05*(1-share)), gusset[0].Wanted, 1e-9, "the ease goes from −5 % to none")
	assert.InDelta(t, 157, ofPart(list, stitch.Cuff)[0].Wanted, 1e-9)
}

func TestBands(t *testing.T) {
	for stretch, want := range map[float64]Band{-0.3: TooLoose, -0.2: Easy, -0.01: Easy, 0: Snug, 0.15: Snug, 0.16: TooTight} {
		assert.Equal(t, want, DefaultBands.Of(stretch), "%g", stretch)
	}
	assert.Empty(t, DefaultBands.Check())
	assert.Len(t, Bands{0.1, 0, -0.1}.Check(), 2)
	assert.True(t, Bands{-2, 0, 0.1}.Check().Has("fit.loose_below"))
}

func rowsBySwatch(t *testing.T, kind mitt.Kind, s gauge.Swatch) (*mitt.Plan, []Row) {
	t.Helper()
	g, err := gauge.Of([]gauge.Swatch{s}, gauge.HandVariation, "s")
	require.NoError(t, err)
	return rowsAt(t, kind, g)
}

// The chances equal the shares of simulated errors of the gauge with which a site
// fits, or all of them.
func TestChanceIsTheShareThatFits(t *testing.T) {
	p, list := rowsBySwatch(t, mitt.Fingerless, gauge.Swatch{Stitches: 24, Width: 100 * mm, Rounds: 32, Height: 100 * mm, Washed: true, CountedTo: 0.5})
	const tolerance, draws = 6.0, 40_000
	s := Summarise(p, list, tolerance)
	require.Len(t, s.Sites, 4)
	rng := rand.New(rand.NewPCG(7, 70))
	fits := make([]int, len(s.Sites))
	all := 0
	a := []float64{0.25 / 24, 1.0 / 100}
	for range draws {
		e := a[0]*(2*rng.Float64()-1) + a[1]*(2*rng.Float64()-1) + gauge.HandVariation*rng.NormFloat64()
		every := true
		for i, site := range s.Sites {
			off := site.Fabric*(1+e) - site.Wanted
			if off <= tolerance && off >= -tolerance {
				fits[i]++
			} else {
				every = false
			}
		}
		if every {
			all++
		}
	}
	for i, site := range s.Sites {
		assert.InDelta(t, float64(fits[i])/draws, site.Chance, 0.01, site.Name)
		assert.InDelta(t, site.Fabric*s.Half, site.High-site.Fabric, 1e-9)
	}
	assert.InDelta(t, float64(all)/draws, s.Chance, 0.01)
	assert.Greater(t, s.Worst, s.Mean)
}

// The chance never falls with a wider tolerance, and is 0 or 1 for a gauge without
// doubt.
func TestChanceGrowsWithTheTolerance(t *testing.T) {
	p, list := rowsBySwatch(t, mitt.Mitten, gauge.Swatch{Stitches: 22, Width: 80 * mm, Washed: true, CountedTo: 1})
	before := 0.0
	for tolerance := 1.0; tolerance < 30; tolerance += 2 {
		now := Summarise(p, list, tolerance).Chance
		assert.GreaterOrEqual(t, now, before-1e-9)
		before = now
	}
	assert.Greater(t, before, 0.99)
	p, list = rows(t, mitt.Fingerless)
	for _, site := range Summarise(p, list, 3).Sites {
		assert.Contains(t, []float64{0, 1}, site.Chance)
	}
}

// A mitt 25 % smaller than the hand has rounds that are too tight.
func TestTightRoundsAreListed(t *testing.T) {
	ease := -0.25
	p, err := mitt.New().Plan(&mitt.Request{
		Kind: mitt.Fingerless, Gauge: gauge.Gauge{Stitches: 0.24, Rounds: 0.32}, Hand: hand.Hand{Circumference: 190 * mm},
		Ease: mitt.Ease{Hand: &ease}, Stitch: mitt.Stitches{Repeat: 2, Rib: 2},
	})
	require.NoError(t, err)
	list, err := Rows(p, p.Mitt(), DefaultBands)
	require.NoError(t, err)
	s := Summarise(p, list, Tolerance)
	require.NotEmpty(t, s.Tight)
	for _, r := range s.Tight {
		assert.Greater(t, r.Stretch, 0.15)
	}
}
