package hand_test

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"gonum.org/v1/gonum/stat"

	"thenar/internal/hand"
	"thenar/internal/units"
)

// The hand sizes of EN 420:2003, in mm, as three glove trade pages quote them
// (granberg.no, focal-gloves.com, kimyuan86.com); the standard itself was not
// seen.
var en420 = []struct {
	size          float64
	circumference units.Length
	length        units.Length
}{
	{6, 152, 160},
	{7, 178, 171},
	{8, 203, 182},
	{9, 229, 192},
	{10, 254, 204},
	{11, 279, 215},
}

func TestSizesOfTheTable(t *testing.T) {
	sizes := map[float64]hand.Size{}
	for _, s := range hand.Sizes() {
		sizes[s.Size] = s
	}
	for _, row := range en420 {
		s := sizes[row.size]
		assert.Equal(t, row.circumference*mm, s.Circumference, "size %g", row.size)
		assert.Equal(t, row.length*mm, s.Length, "size %g", row.size)
		assert.Contains(t, s.Source, "EN 420:2003")
		assert.NotContains(t, s.Source, "memory")

		h, filled := hand.Hand{Size: row.size}.Fill()
		assert.Equal(t, row.circumference*mm, h.Circumference, "size %g", row.size)
		assert.Equal(t, row.length*mm, h.Length, "size %g", row.size)
		assert.Equal(t, s.Source, filled[0].Source)
		assert.InDelta(t, row.size, math.Round(hand.SizeOf(row.circumference*mm)), 0)
	}
}

// EN ISO 21420:2020 has sizes 4 to 13 (guidegloves.com). The hand
// circumferences of 4, 5, 12 and 13, 101, 127, 304 and 329 mm, and that 4 and
// 5 are shorter than 160 mm and 12 and 13 longer than 215 mm, are from
// memory. The rule of the other rows is within 1 mm of them.
func TestSizesBeyondTheTable(t *testing.T) {
	all := hand.Sizes()
	assert.Len(t, all, 10)
	for i, s := range all {
		assert.InDelta(t, 4+i, s.Size, 0)
		if i > 0 {
			assert.Greater(t, s.Circumference, all[i-1].Circumference)
			assert.Greater(t, s.Length, all[i-1].Length)
		}
	}
	for i, girth := range map[int]float64{0: 101, 1: 127, 8: 304, 9: 329} {
		assert.InDelta(t, girth, all[i].Circumference.MM(), 1.0)
		assert.Contains(t, all[i].Source, "from memory")
		assert.Contains(t, all[i].Source, "the line fitted")
	}
	assert.Less(t, all[1].Length, 160*mm)
	assert.Greater(t, all[8].Length, 215*mm)
}

// The line 94.2 + 0.433 × circumference runs through the first and the last
// row of the table, to the rounding of its two figures, and is within 1.5 mm of
// all six. Least squares on the rows (gonum stat.LinearRegression) give a line
// that is within half a millimetre of it from size 4 to 13.
func TestLineOfTheSizes(t *testing.T) {
	var xs, ys []float64
	for _, row := range en420 {
		xs, ys = append(xs, float64(row.circumference)), append(ys, float64(row.length))
		assert.InDelta(t, float64(row.length), 94.2+0.433*float64(row.circumference), 1.5)
	}
	slope := (ys[5] - ys[0]) / (xs[5] - xs[0])
	assert.InDelta(t, 0.433, slope, 0.0005)
	assert.InDelta(t, 94.2, ys[0]-slope*xs[0], 0.05)
	offset, slope := stat.LinearRegression(xs, ys, nil, false)
	for _, circumference := range []float64{102, 330} {
		assert.InDelta(t, offset+slope*circumference, 94.2+0.433*circumference, 0.5)
	}
	// The sizes 5 (127 mm) and 13 (330 mm) lie on it.
	for size, circumference := range map[float64]float64{5: 127, 13: 330} {
		h, filled := hand.Hand{Size: size}.Fill()
		assert.InDelta(t, 94.2+0.433*circumference, h.Length.MM(), 1e-3)
		assert.Contains(t, filled[1].Source, "the line fitted")
	}
}

// A half size has a circumference in inches like the whole ones, and a length
// midway between its neighbours'.
func TestHalfSizes(t *testing.T) {
	for i, row := range en420[1:] {
		low := en420[i]
		h, filled := hand.Hand{Size: row.size - 0.5}.Fill()
		assert.InDelta(t, float64(low.circumference+row.circumference)/2, h.Circumference.MM(), 0.5)
		assert.Equal(t, (low.length+row.length)*mm/2, h.Length)
		assert.Contains(t, filled[0].Source, "between the rows")
		assert.Contains(t, filled[1].Source, "between the rows")
	}
	h, _ := hand.Hand{Size: 7.5}.Fill()
	assert.Equal(t, 191*mm, h.Circumference) // 190.5, half away from zero
}

// The mean hands of ANSUR II (Gordon et al. 2014): women 186.55 mm round are
// size 7.34, men 212.28 mm 8.36.
func TestSizeOf(t *testing.T) {
	assert.InDelta(t, 7.34, hand.SizeOf(186_550), 0.005)
	assert.InDelta(t, 8.36, hand.SizeOf(212_280), 0.005)
	assert.InDelta(t, 7, hand.SizeOf(7*units.Inch), 0)
}

func TestUnknownSizesAreRefused(t *testing.T) {
	for _, size := range []float64{3.5, 13.5, 7.25, 7.1, -7, 0.5, 1e300, math.NaN(), math.Inf(1), math.Inf(-1)} {
		faults := hand.Hand{Size: size}.Check()
		assert.True(t, faults.Has(hand.FieldSize), "size %g", size)
		assert.Len(t, faults, 1, "size %g", size)
	}
	for size := 4.0; size <= 13; size += 0.5 {
		assert.Empty(t, hand.Hand{Size: size}.Check(), "size %g", size)
	}
}
