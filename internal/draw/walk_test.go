package draw

import (
	"testing"

	"github.com/stretchr/testify/assert"
)

// What a Pen writes is walked step by step; anything else ends the walk.
func TestWalk(t *testing.T) {
	d := new(Pen).Move(1, -2.5).Line(3, 4).Curve(5, 6, 7, 8, 9, 10).Close().Rect(0, 0, 2, 1).String()
	ops, sum := "", 0.0
	Walk(d, func(op byte, n []float64) {
		ops += string(op)
		for _, v := range n {
			sum += v
		}
	})
	assert.Equal(t, "MLCZMLLLZ", ops)
	assert.InDelta(t, 1-2.5+3+4+45+2+2+1+1, sum, 1e-9)
	assert.Equal(t, d, Map(d, func(x, y float64) (float64, float64) { return x, y }))
	assert.Equal(t, "M 2 5 L 6 9", Map("M 1 2 L 3 4", func(x, y float64) (float64, float64) { return 2 * x, 2*y + 1 }))
	for _, bad := range []string{"", "V 3", "M 1", "M 1 x", "M 1 2 Q 3 4"} {
		n := 0
		Walk(bad, func(byte, []float64) { n++ })
		assert.LessOrEqual(t, n, 1, bad)
	}
}

// Groups within groups move and scale what lies in them.
func TestEach(t *testing.T) {
	inner := &Scene{}
	inner.Text(1, 2, "a", TextStyle{Size: 1})
	mid := &Scene{}
	mid.Add(inner, 10, 0, 2)
	page := &Scene{}
	page.Group("g")
	page.Add(mid, 5, 7, 3)
	page.End()
	page.Text(1, 1, "b", TextStyle{Size: 1})
	seen := map[string][3]float64{}
	page.Each(Place{Scale: 1}, func(i *Item, at Place) {
		x, y := at.At(i.X, i.Y)
		seen[i.Text] = [3]float64{x, y, at.Scale}
	})
	assert.Equal(t, map[string][3]float64{"a": {5 + 3*(10+2), 7 + 3*4, 6}, "b": {1, 1, 1}}, seen)
}

// SVG 2 on stroke-dasharray: an odd list counts twice; a negative length, a
// sum of 0, and what is no list, make the line whole.
func TestDashes(t *testing.T) {
	for text, want := range map[string][]float64{
		"2 1.5": {4, 3}, "2, 1": {4, 2}, "0 3": {0, 6}, "1": {2, 2}, "2 1 3": {4, 2, 6, 4, 2, 6},
		"": nil, "0 0": nil, "2 -1": nil, "none": nil, "1 x": nil, "NaN 1": nil, "Inf 1": nil,
	} {
		assert.Equal(t, want, Dashes(text, 2), text)
	}
}
