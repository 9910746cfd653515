package gauge_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"thenar/internal/fault"
	"thenar/internal/gauge"
	"thenar/internal/units"
)

const cm = units.Centimetre

func swatch(n float64, w units.Length, m float64, h units.Length) gauge.Swatch {
	return gauge.Swatch{Stitches: n, Width: w, Rounds: m, Height: h, Washed: true, CountedTo: 0.5}
}

func TestOf(t *testing.T) {
	g, err := gauge.Of([]gauge.Swatch{swatch(24, 10*cm, 32, 10*cm)}, gauge.HandVariation, "s")
	require.NoError(t, err)
	assert.InDelta(t, 0.24, g.Stitches, 1e-12)
	assert.InDelta(t, 0.32, g.Rounds, 1e-12)
	assert.True(t, g.Treated)

	// 4 in are 101.6 mm (25.4 mm an inch).
	g, err = gauge.Of([]gauge.Swatch{swatch(22, 4*units.Inch, 0, 0)}, gauge.HandVariation, "s")
	require.NoError(t, err)
	assert.InDelta(t, 22/101.6, g.Stitches, 1e-12)
	assert.True(t, g.RoundsFilled)
	assert.InDelta(t, 1.36*22/101.6, g.Rounds, 1e-12)
}

func TestOfCombinesLikeWithLike(t *testing.T) {
	flat := swatch(30, 10*cm, 40, 10*cm)
	flat.Flat = true
	g, err := gauge.Of([]gauge.Swatch{flat, swatch(24, 10*cm, 32, 10*cm), swatch(24, 10*cm, 0, 0)}, gauge.HandVariation, "s")
	require.NoError(t, err)
	assert.InDelta(t, 0.24, g.Stitches, 1e-12, "the flat swatch stays out")
	assert.Equal(t, 2, g.Used)

	// The larger swatch weighs more: the mean lies nearer to it.
	g, err = gauge.Of([]gauge.Swatch{swatch(12, 5*cm, 0, 0), swatch(50, 20*cm, 0, 0)}, gauge.HandVariation, "s")
	require.NoError(t, err)
	assert.Greater(t, g.Stitches, 0.245)
	assert.Less(t, g.Stitches, 0.25)
}

func TestOfRefuses(t *testing.T) {
	bad := func(change func(*gauge.Swatch)) []gauge.Swatch {
		s := swatch(24, 10*cm, 32, 10*cm)
		change(&s)
		return []gauge.Swatch{s}
	}
	cases := map[string][]gauge.Swatch{
		"s":               nil,
		"s[0].stitches":   bad(func(s *gauge.Swatch) { s.Stitches = 0.1 }),
		"s[0].rounds":     bad(func(s *gauge.Swatch) { s.Rounds = 0 }),
		"s[0].height":     bad(func(s *gauge.Swatch) { s.Height = 0 }),
		"s[0].counted_to": bad(func(s *gauge.Swatch) { s.CountedTo = 0.3 }),
	}
	for path, swatches := range cases {
		_, err := gauge.Of(swatches, gauge.HandVariation, "s")
		var faults fault.Fields
		require.ErrorAs(t, err, &faults, path)
		assert.True(t, faults.Has(path), "%s: %v", path, faults)
	}
}

// A flat piece is best counted on a swatch that was worked flat: of two washed ones it
// takes that, and needs no doubt added; in the round it takes the other.
func TestAFlatPieceTakesAFlatSwatch(t *testing.T) {
	for _, flat := range []bool{false, true} {
		list := []gauge.Swatch{
			{Stitches: 24, Width: 100_000, Washed: true, CountedTo: 0.5, ForFlat: flat},
			{Stitches: 22, Width: 100_000, Washed: true, CountedTo: 0.5, ForFlat: flat, Flat: true},
		}
		g, err := gauge.Of(list, gauge.HandVariation, "gauge.swatches")
		require.NoError(t, err)
		assert.True(t, g.Treated)
		assert.InDelta(t, map[bool]float64{false: 0.24, true: 0.22}[flat], g.Stitches, 1e-12)
	}
}
