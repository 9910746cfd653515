package hand_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"thenar/internal/hand"
)

// Without girths in Above the hand is equally wide all the way up (common
// practice, no source), and narrower than the palm with the thumb.
func TestAboveGirthsUnmeasured(t *testing.T) {
	h, _ := hand.Hand{Circumference: 190 * mm, Palm: 226 * mm}.Fill()
	g, err := h.AboveGirths()
	require.NoError(t, err)
	for _, at := range []float64{-10, 0, 1, 40, 500} {
		assert.InDelta(t, 190, g.At(at), 0)
	}
	low, err := h.Girths()
	require.NoError(t, err)
	assert.InDelta(t, 226, low.At(h.GussetLength.MM()), 0, "the lower curve is another one")
}

func TestAboveGirthsInAStraightLine(t *testing.T) {
	h, _ := hand.Hand{Circumference: 190 * mm, Above: []hand.Point{{40 * mm, 180 * mm}}}.Fill()
	g, err := h.AboveGirths()
	require.NoError(t, err)
	for at, want := range map[float64]float64{-5: 190, 0: 190, 20: 185, 30: 182.5, 40: 180, 90: 180} {
		assert.InDelta(t, want, g.At(at), 1e-9, "%g mm", at)
	}
}

// A monotone cubic passes through every point and stays between the girths of
// two neighbours; through three points in a line it is that line. Fritsch and
// Butland (SIAM J. Sci. Stat. Comput. 5, 1984) require both.
func TestAboveGirthsAreMonotone(t *testing.T) {
	points := []hand.Point{{0, 188 * mm}, {12 * mm, 192 * mm}, {25 * mm, 190 * mm}, {40 * mm, 172 * mm}, {55 * mm, 170 * mm}}
	h, _ := hand.Hand{Circumference: 188 * mm, Above: points[1:]}.Fill()
	g, err := h.AboveGirths()
	require.NoError(t, err)
	for i, p := range points {
		assert.InDelta(t, p.Girth.MM(), g.At(p.Height.MM()), 1e-9)
		if i == 0 {
			continue
		}
		from := points[i-1]
		for at := from.Height.MM(); at <= p.Height.MM(); at += 0.25 {
			assert.GreaterOrEqual(t, g.At(at), min(from.Girth, p.Girth).MM()-1e-9)
			assert.LessOrEqual(t, g.At(at), max(from.Girth, p.Girth).MM()+1e-9)
		}
	}
	assert.InDelta(t, 188, g.At(-3), 1e-9)
	assert.InDelta(t, 170, g.At(56), 1e-9)

	h.Above = []hand.Point{{10 * mm, 186 * mm}, {30 * mm, 182 * mm}}
	g, err = h.AboveGirths()
	require.NoError(t, err)
	assert.InDelta(t, 185, g.At(15), 1e-9)
}
