package gauge_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"thenar/internal/fault"
	"thenar/internal/gauge"
)

func gaugeOf(t *testing.T, swatches ...gauge.Swatch) gauge.Gauge {
	t.Helper()
	g, err := gauge.Of(swatches, gauge.HandVariation, "s")
	require.NoError(t, err)
	return g
}

// The same piece of 20 × 28 before and 21 × 30 after washing: work on the
// needles of 22 × 30.8 becomes 22 × 1.05 stitches and 30.8 × 30/28 rounds.
func TestWashingRatioConvertsUnwashed(t *testing.T) {
	before, after := swatch(20, 10*cm, 28, 10*cm), swatch(21, 10*cm, 30, 10*cm)
	before.Washed = false
	work := swatch(22, 10*cm, 30.8, 10*cm)
	work.Washed, work.OnNeedles = false, true

	g := gaugeOf(t, before, after)
	assert.InDelta(t, 0.21, g.Stitches, 1e-12, "the count before washing only serves the ratio")
	assert.InDelta(t, 1.05, g.Washing.Value, 1e-12)
	assert.Equal(t, 1, g.Used)

	g = gaugeOf(t, before, after, work)
	assert.True(t, g.Treated)
	assert.Equal(t, 2, g.Used)
	assert.False(t, g.Uses[0].Combined)
	assert.Contains(t, g.Uses[2].How, "your own before and after")
	assert.Greater(t, g.Stitches, 0.21)
	assert.Less(t, g.Stitches, 0.22*1.05)
	assert.Less(t, g.StitchDoubt.CountAndRuler(), gaugeOf(t, work).StitchDoubt.CountAndRuler()*2)

	// A flat piece gives the ratio if no piece in the round was counted twice.
	before.Flat, after.Flat = true, true
	g = gaugeOf(t, before, after, work)
	assert.InDelta(t, 0.22*1.05, g.Stitches, 1e-12)
	assert.InDelta(t, 0.308*30/28, g.Rounds, 1e-12)
	assert.True(t, g.Treated)
	assert.False(t, g.Uses[1].Combined, "what was worked flat stays out")
}

// A washed swatch may be 3 % off the mitt, and so may a count on the needles if
// the ratio of washing is not known. By hand: half-widths of 0.25/n and 1/100
// give u² = ((0.25/n)² + 0.01²)/3, and both have the weight 1/x² × 1/(u² + 0.03²).
func TestWeightsOfSwatchAndMitt(t *testing.T) {
	washed, work := swatch(24, 10*cm, 32, 10*cm), swatch(24, 10*cm, 32, 10*cm)
	work.Stitches, work.Washed, work.OnNeedles = 25, false, true
	g := gaugeOf(t, washed, work)
	assert.Equal(t, 2, g.Used)
	assert.Contains(t, g.Uses[1].How, "so 3\u00a0% more give or take")
	weight := func(n float64) float64 {
		return 1 / (n * n / 10_000 * ((0.25*0.25/n/n+0.01*0.01)/3 + 0.03*0.03))
	}
	a, b := weight(24), weight(25)
	assert.InDelta(t, (0.24*a+0.25*b)/(a+b), g.Stitches, 1e-12)
	assert.InDelta(t, 0.03*0.25*b/(0.24*a+0.25*b), g.StitchDoubt.Other, 1e-12)

	before, after := swatch(24, 10*cm, 32, 10*cm), swatch(24, 10*cm, 32, 10*cm)
	before.Washed = false
	assert.Greater(t, gaugeOf(t, before, after, work).Stitches, g.Stitches, "with the ratio the mitt weighs more")
}

// Without a ratio the best group is used as it is, so 3 % more doubt in
// quadrature.
func TestUnwashedAddsDoubt(t *testing.T) {
	washed, raw := swatch(24, 10*cm, 32, 10*cm), swatch(24, 10*cm, 32, 10*cm)
	raw.Washed = false
	a, b := gaugeOf(t, washed), gaugeOf(t, raw)
	assert.True(t, a.Treated)
	assert.False(t, b.Treated)
	assert.InDelta(t, a.StitchDoubt.CountAndRuler(), b.StitchDoubt.CountAndRuler(), 1e-15)
	square := func(x float64) float64 { return x * x }
	assert.InDelta(t, square(1.96*0.03), square(b.StitchDoubt.Half())-square(a.StitchDoubt.Half()), 1e-6)
	other := raw
	other.Piece = "second"
	assert.InDelta(t, 0.24, gaugeOf(t, washed, other).Stitches, 1e-12, "another piece, not washed, stays out")
}

func TestContradictionsAreQueried(t *testing.T) {
	assert.Empty(t, gaugeOf(t, swatch(24, 10*cm, 32, 10*cm), swatch(24.5, 10*cm, 33, 10*cm)).Queries)
	g := gaugeOf(t, swatch(24, 10*cm, 32, 10*cm), swatch(24, 10*cm, 32, 10*cm), swatch(28, 10*cm, 32, 10*cm))
	require.Len(t, g.Queries, 1)
	assert.Equal(t, 2, g.Queries[0].Swatch)
	assert.Contains(t, g.Queries[0].Message, "17\u00a0% more stitches than the others")
	g = gaugeOf(t, swatch(24, 10*cm, 32, 10*cm), swatch(24, 10*cm, 26, 10*cm))
	require.Len(t, g.Queries, 1, "one query for two that differ")
	assert.Contains(t, g.Queries[0].Message, "19\u00a0% fewer rounds than the other,")
}

func TestWashedOnTheNeedlesIsRefused(t *testing.T) {
	s := swatch(24, 10*cm, 32, 10*cm)
	s.OnNeedles = true
	_, err := gauge.Of([]gauge.Swatch{s}, gauge.HandVariation, "s")
	var faults fault.Fields
	require.ErrorAs(t, err, &faults)
	assert.True(t, faults.Has("s[0].on_needles"))
}
