package picture

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"thenar/internal/fit"
	"thenar/internal/mitt"
	"thenar/internal/units"
)

// Ladder, hand and curves stand in one frame: a round has the same height in
// each, in mm of the hand: rounds over rounds per mm above the cast-on.
func TestABenchHasOneUnit(t *testing.T) {
	for _, p := range []*mitt.Plan{adult(t), child(t)} {
		for _, left := range []bool{false, true} {
			b := NewBench(p, HandOptions{Left: left, Unit: units.CM})
			assert.InDelta(t, b.Height, b.Hand.Height, 1e-9)
			hand, thumb := b.Rungs()
			for i, r := range hand {
				assert.InDelta(t, b.Foot-float64(i+1)/p.Gauge.Rounds, r.High*b.Height, 1e-9)
				assert.Greater(t, r.High, 0.0)
			}
			assert.Len(t, thumb, p.Thumb.Rounds)
			foot := p.Cuff.Rounds + p.Cuff.PlainRounds + p.Gusset.Rounds.N
			assert.InDelta(t, hand[foot-1].High, thumb[0].Low, 1e-9, "the thumb stands on the division")
			band := having(having(elements(t, b.Hand), "data-section", "cuff"), "data-from", "5")
			require.Len(t, band, 1)
			assert.InDelta(t, hand[4].High*b.Height, extent(t, band[0].attr["d"]).top, 0.01)
			for _, panel := range b.Curves(fitRows(t, p), fit.DefaultBands, FitOptions{Half: 0.03}) {
				assert.InDelta(t, b.Height, panel.Scene.Height, 1e-9)
				for _, e := range having(elements(t, panel.Scene), "class", "fit-fabric") {
					box := extent(t, e.attr["d"])
					assert.GreaterOrEqual(t, box.left, 0.0)
					assert.LessOrEqual(t, box.right, panel.Scene.Width+1e-6)
				}
			}
		}
	}
}

// Every number of a plan has a mark between its cast-on and its last round, in
// rising order.
func TestEveryNumberHappensSomewhere(t *testing.T) {
	for _, kind := range []mitt.Kind{mitt.Fingerless, mitt.Mitten, mitt.Thumbless} {
		p := planned(t, kind, 24, 32, adult(t).Hand)
		b := NewBench(p, HandOptions{})
		var own []mitt.Number
		for _, n := range mitt.Ladder() {
			if p.Number(n) != "" {
				own = append(own, n)
			}
		}
		marks := b.Marks(own)
		require.Len(t, marks, len(own))
		for i, m := range marks {
			assert.InDelta(t, 0.5, m.Level, 0.5, "%s of a %s", m.Of, kind.Words())
			if i > 0 {
				assert.LessOrEqual(t, m.Level, marks[i-1].Level)
			}
		}
		assert.Equal(t, mitt.CastOn, marks[0].Of)
	}
}

// What is spread keeps between its bounds with the least sum of squared moves;
// worked out by hand.
func TestSpreadKeepsItsBounds(t *testing.T) {
	assert.InDeltaSlice(t, []float64{0.9, 0.8, 0.5}, Spread([]float64{0.9, 0.88, 0.5}, 0.1, 0, 0.9), 1e-9, "the first can't go lower")
	assert.InDeltaSlice(t, []float64{0.2, 0.1, 0}, Spread([]float64{0.05, 0.02, 0}, 0.1, 0, 1), 1e-9, "the last can't go higher")
	assert.InDeltaSlice(t, []float64{1, 0.5, 0}, Spread([]float64{0.5, 0.5, 0.5}, 0.8, 0, 1), 1e-9, "what has no room shares it")
}
