package hand

import (
	"fmt"

	"gonum.org/v1/gonum/interp"
)

// Girths is the girth of a hand by height: either of the two profiles, the
// lower with the thumb laid in, the upper without it. They are never joined,
// since the girth drops at once where the thumb parts.
type Girths struct {
	low, top  float64 // heights in mm between which the curve was measured
	predictor interp.Predictor
}

// Girths gives the lower curve of a filled hand, by height above the base of
// the gusset. With a profile of more than two points it is the monotone
// piecewise cubic of Fritsch and Butland (SIAM J. Sci. Stat. Comput. 5, 1984,
// a later form of Fritsch and Carlson 1980; gonum interp.FritschButland),
// with two points a straight line. Without a profile it runs straight from
// the hand's circumference at the base to P at the parting (common practice,
// no source).
func (h Hand) Girths() (Girths, error) {
	xs, ys := []float64{0, h.GussetLength.MM()}, []float64{h.Circumference.MM(), h.Palm.MM()}
	if len(h.Profile) > 0 {
		xs, ys = points(nil, nil, h.Profile)
	}
	g, err := through(xs, ys)
	if err != nil {
		return Girths{}, fmt.Errorf("hand.Girths: %w", err)
	}
	return g, nil
}

// AboveGirths gives the upper curve of a filled hand that passes Check, without the thumb, by
// height above where the thumb parts: from the hand's circumference H at
// height 0 through the girths of Above, by the same monotone cubic as Girths,
// or in a straight line if Above has one girth. Without Above it is H at
// every height (common practice, no source). At a height under 0 it gives H,
// over the last measured height the last girth: neither is carried on as a
// slope, since nothing was measured there.
func (h Hand) AboveGirths() (Girths, error) {
	if len(h.Above) == 0 {
		return Girths{predictor: interp.Constant(h.Circumference.MM())}, nil
	}
	g, err := through(points([]float64{0}, []float64{h.Circumference.MM()}, h.Above))
	if err != nil {
		return Girths{}, fmt.Errorf("hand.AboveGirths: %w", err)
	}
	return g, nil
}

// points appends the heights and girths of a profile in mm.
func points(xs, ys []float64, profile []Point) (heights, girths []float64) {
	for _, p := range profile {
		xs, ys = append(xs, p.Height.MM()), append(ys, p.Girth.MM())
	}
	return xs, ys
}

// through lays the curve through two or more points with rising heights.
func through(xs, ys []float64) (Girths, error) {
	var f interp.FittablePredictor = new(interp.PiecewiseLinear)
	if len(xs) > 2 {
		f = new(interp.FritschButland)
	}
	if err := f.Fit(xs, ys); err != nil {
		return Girths{}, err
	}
	return Girths{xs[0], xs[len(xs)-1], f}, nil
}

// At is the girth in mm at a height in mm: above the base of the gusset for
// Girths, above the parting for AboveGirths. Below the first and above the
// last measured height the end value goes on.
func (g Girths) At(height float64) float64 {
	return g.predictor.Predict(min(max(height, g.low), g.top))
}
