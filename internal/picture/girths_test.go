package picture

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"thenar/internal/draw"
	"thenar/internal/fit"
	"thenar/internal/mitt"
	"thenar/internal/units"
)

// The girths stand at the heights of the mitt that is drawn beside them at the same scale:
// the steps go from the cast-on to the last round, and each round's is as far right of the
// axis' beginning as its stitches are wide at the gauge.
func TestGirthsStandAtTheHeightsOfTheMitt(t *testing.T) {
	const x, foot, width, scale, letter = 10.0, 90.0, 40.0, 0.5, 3.4
	for _, kind := range []mitt.Kind{mitt.Fingerless, mitt.Mitten, mitt.Thumbless} {
		p := plan(t, kind, 186)
		rows, err := fit.Rows(p, p.Mitt(), fit.DefaultBands)
		require.NoError(t, err)
		g := NewGirths(rows, units.CM, "mitt")
		var s draw.Scene
		g.Draw(&s, x, foot, width, scale, letter)
		var ys, xs []float64
		for _, i := range s.Items {
			if i.Style.Width == 0.35 { // the steps
				draw.Walk(i.Path, func(_ byte, n []float64) { xs, ys = append(xs, n[0]), append(ys, n[1]) })
			}
		}
		require.NotEmpty(t, ys)
		assert.InDelta(t, foot, ys[0], 1e-6)
		last := g.rows[len(g.rows)-1]
		assert.InDelta(t, foot-last.AboveCastOn*scale, ys[len(ys)-1], 1e-3)
		low, high, _ := g.axis(width, letter)
		var lowX, highX float64 // where the labels of the ends stand, in the middle of their ticks
		for _, i := range s.Items {
			switch i.Text {
			case units.FromMM(low).Format(units.CM):
				lowX = i.X
			case units.FromMM(high).Format(units.CM):
				highX = i.X
				assert.LessOrEqual(t, i.X+draw.Measure(i.Text, letter, draw.Regular)/2, x+width+1e-6, "the last label is within the width")
			}
		}
		assert.InDelta(t, x, lowX, 1e-3)
		assert.InDelta(t, x+(float64(p.Cuff.CastOn.N)/p.Gauge.Stitches-low)/(high-low)*(highX-x), xs[0], 1e-3)
		for _, i := range s.Items {
			if i.Kind == draw.TextItem {
				assert.LessOrEqual(t, i.Y, foot+g.Below(width, letter))
			}
		}
	}
}

// A dressed hand is drawn to scale: its cast-on at the height that is asked for, and so far
// above and below it as it says.
func TestDressedHandIsToScale(t *testing.T) {
	for _, left := range []bool{false, true} {
		p := plan(t, mitt.Fingerless, 186)
		d := NewDressed(p, HandOptions{Left: left})
		assert.Greater(t, d.Above(), p.Hand.Length.MM()-p.Hand.WristToCrotch.MM())
		assert.Greater(t, d.Width(), p.Hand.Circumference.MM()/2.4, "the palm is 1/2.4 of its girth broad")
		var s draw.Scene
		d.Draw(&s, 5, 100, 0.5)
		least, most, top := 1e9, -1e9, 1e9
		s.Each(draw.Place{Scale: 1}, func(i *draw.Item, at draw.Place) {
			assert.NotEqual(t, draw.TextItem, i.Kind, "no letters, which would shrink")
			draw.Walk(i.Path, func(_ byte, n []float64) {
				for k := 0; k+1 < len(n); k += 2 {
					x, y := at.At(n[k], n[k+1])
					least, most, top = min(least, x), max(most, x), min(top, y)
				}
			})
		})
		assert.InDelta(t, 5, least, 0.01)
		assert.InDelta(t, 5+d.Width()/2, most, 0.01)
		assert.InDelta(t, 100-d.Above()/2, top, 0.01)
	}
}
