package yarn

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"thenar/internal/mitt"
)

// The trade body's standard yarn weight system, stocking stitch over 4 in
// (several pages that quote the Craft Yarn Council's table agree): 0 lace
// 33–40, 1 super fine 27–32, 2 fine 23–26, 3 light 21–24, 4 medium 16–20,
// 5 bulky 12–15, 6 super bulky 7–11, 7 jumbo 6 and fewer.
func TestWeightOf(t *testing.T) {
	for stitches, want := range map[int]int{45: 0, 33: 0, 32: 1, 27: 1, 26: 2, 23: 2, 22: 3, 21: 3, 20: 4, 16: 4, 15: 5, 12: 5, 11: 6, 7: 6, 6: 7, 1: 7} {
		assert.Equal(t, want, WeightOf(float64(stitches)/101.6).Number, "%d over 4 in", stitches)
	}
}

// By hand, at 24 stitches over 10 cm: 36 stitches are 150 mm wide, so the
// cast-on takes 3 × 150 + 200 mm; 42 are 175 mm, 6 × 175 + 200 mm to bind off.
func TestTailsOf(t *testing.T) {
	p := planned(t, mitt.Fingerless, 24, 32, true)
	tails := TailsOf(p, p.Mitt())
	width := func(n int) float64 { return float64(n) / p.Gauge.Stitches }
	assert.InDelta(t, 3*width(p.Cuff.CastOn.N)+200, tails.CastOn, 1e-9)
	assert.InDelta(t, 6*width(p.Body.EdgingStitches)+200, tails.Hand, 1e-9)
	require.InDelta(t, 200, tails.End, 0)
	assert.Greater(t, tails.CastOn, 500.0)
}
