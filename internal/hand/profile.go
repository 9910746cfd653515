package hand

import (
	"fmt"

	"gonum.org/v1/gonum/interp"
)

// Girths is the girth of a hand by height above the base of the gusset, with
// the thumb laid in: the lower of the two profiles. It is never joined to
// the hand above the parting, where the girth drops at once.
type Girths struct {
	low, top  float64 // heights in mm between which the curve was measured
	predictor interp.Predictor
}

// Girths gives the curve of a filled hand. With a profile of more than two
// points it is the monotone piecewise cubic of Fritsch and Butland (SIAM J.
// Sci. Stat. Comput. 5, 1984, a later form of Fritsch and Carlson 1980; gonum
// interp.FritschButland), with two points a straight line. Without a profile
// it runs straight from the hand's circumference at the base to P at the
// parting (common practice, no source).
func (h Hand) Girths() (Girths, error) {
	xs, ys := []float64{0, h.GussetLength.MM()}, []float64{h.Circumference.MM(), h.Palm.MM()}
	if len(h.Profile) > 0 {
		xs, ys = xs[:0], ys[:0]
		for _, p := range h.Profile {
			xs, ys = append(xs, p.Height.MM()), append(ys, p.Girth.MM())
		}
	}
	var f interp.FittablePredictor = new(interp.PiecewiseLinear)
	if len(xs) > 2 {
		f = new(interp.FritschButland)
	}
	if err := f.Fit(xs, ys); err != nil {
		return Girths{}, fmt.Errorf("hand.Girths: %w", err)
	}
	return Girths{xs[0], xs[len(xs)-1], f}, nil
}

// At is the girth in mm at a height in mm above the base of the gusset. Below
// the first and above the last measured height the end value goes on.
func (g Girths) At(height float64) float64 {
	return g.predictor.Predict(min(max(height, g.low), g.top))
}
