package draw

import (
	"image/color"
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// spans are where the pieces of a level line begin and end.
func spans(list []run) [][2]float64 {
	var out [][2]float64
	for _, r := range list {
		out = append(out, [2]float64{r.at[0].x, r.at[len(r.at)-1].x})
	}
	return out
}

// Dashes and gaps come by turns from the beginning of a line on, round its
// corners, and the last ends with the line; a dash of no length is a dot
// (SVG 2, stroke-dasharray).
func TestDashed(t *testing.T) {
	level := runs("M 0 0 L 4 0 L 10 0", Place{Scale: 1})[0]
	assert.Equal(t, [][2]float64{{0, 2}, {3, 5}, {6, 8}, {9, 10}}, spans(level.dashed([]float64{2, 1})))
	assert.Equal(t, [][2]float64{{0, 0}, {4, 4}, {8, 8}}, spans(level.dashed([]float64{0, 4})))
	assert.Equal(t, []run{level}, level.dashed(nil))
	square := runs("M 0 0 L 4 0 L 4 4 L 0 4 Z", Place{Scale: 1})[0]
	pieces := square.dashed([]float64{5, 3})
	require.Len(t, pieces, 2, "16 round, its closing side too")
	assert.Equal(t, []point{{0, 0}, {4, 0}, {4, 1}}, pieces[0].at)
	assert.Equal(t, []point{{4, 4}, {0, 4}, {0, 3}}, pieces[1].at)
}

// The shapes of a line never turn against each other, wherever it goes: what
// lies on each other would else take itself away.
func TestStrokedTurnsOneWay(t *testing.T) {
	for _, d := range []string{
		"M 0 0 L 10 0 L 0 1 L 10 1 L 3 9", "M 0 0 L 5 0 L 0 0", "M 0 0 L 10 0 L 10 10 L 0 10 Z", "M 0 0 C 9 0 9 9 0 9 C -9 9 2 3 0 0 Z",
	} {
		for _, r := range runs(d, Place{Scale: 3}) {
			for _, shape := range r.stroked(2, true) {
				area := 0.0
				for i, c := range shape {
					area += c.cross(shape[(i+1)%len(shape)]) / 2
				}
				assert.Greater(t, area, -1e-9, "%s: %v", d, shape)
			}
		}
	}
}

// Straight pieces are at most flat off a circle of four cubics, which is itself
// within 3 in 10,000 of its radius of one.
func TestCurveIsFlatEnough(t *testing.T) {
	for _, radius := range []float64{0.3, 5, 400} {
		circle := runs("M 1 0 C 1 0.5522847498 0.5522847498 1 0 1 C -0.5522847498 1 -1 0.5522847498 -1 0", Place{Scale: radius})[0]
		for i := 1; i < len(circle.at); i++ {
			middle := circle.at[i-1].plus(circle.at[i]).times(0.5)
			assert.InDelta(t, radius, middle.length(), flat+radius*3e-4)
		}
		assert.Less(t, len(circle.at), 8+int(12*math.Sqrt(radius)), "and no more of them than that takes")
	}
}

// A line through a whole picture has no seam where it is filled in bands.
func TestBandsLeaveNoSeam(t *testing.T) {
	s := &Scene{Width: 120, Height: 120}
	s.Rect(10, 10, 100, 100, Style{Fill: "#FF0000", Stroke: "#0000FF", Width: 2})
	s.Line(10, 10, 110, 110, Style{Stroke: "#00FF00", Width: 1})
	img := picture(t, s)
	for y := 12.0; y < 108; y += 1 / dotsPerMM {
		at := func(x float64) color.Color { return img.At(int(x*dotsPerMM), int(y*dotsPerMM)) }
		require.Equal(t, color.RGBA{0, 0, 255, 255}, color.RGBAModel.Convert(at(109.8)))
		require.Equal(t, color.RGBA{0, 255, 0, 255}, color.RGBAModel.Convert(at(y)))
		if y < 95 {
			require.Equal(t, color.RGBA{255, 0, 0, 255}, color.RGBAModel.Convert(at(y+5)))
		}
	}
}
