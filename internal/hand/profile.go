package hand

import (
	"fmt"

	"gonum.org/v1/gonum/interp"
)

// Girths is the girth of a hand by height, as a curve. A hand has two, the lower
// with the thumb laid in and the upper without it, since the girth drops
// abruptly where the thumb parts.
type Girths struct {
	low, top  float64 // heights in mm of the first and the last measured girth
	predictor interp.Predictor
}

// Girths returns the lower curve of a filled hand, by height above the base of
// the gusset. Through a profile of more than two points it is the monotone
// piecewise cubic of Fritsch and Butland (SIAM J. Sci. Stat. Comput. 5, 1984,
// a later form of Fritsch and Carlson 1980; gonum interp.FritschButland),
// through two points a straight line. Without a profile it is a straight line
// from the hand's circumference at the base to P where the thumb parts (common
// practice, no source).
func (h Hand) Girths() (Girths, error) {
	xs, ys := []float64{0, h.GussetLength.MM()}, []float64{h.Circumference.MM(), h.Palm.MM()}
	if len(h.Profile) > 0 {
		xs, ys = appendPoints(nil, nil, h.Profile)
	}
	g, err := fitCurve(xs, ys)
	if err != nil {
		return Girths{}, fmt.Errorf("hand.Girths: %w", err)
	}
	return g, nil
}

// AboveGirths returns the upper curve of a filled hand that passes Check, without
// the thumb, by height above where the thumb parts: from the hand's circumference
// H at height 0 through the girths of Above, with the same monotone cubic as
// Girths, or a straight line if Above has one girth. Without Above it is H at
// every height (common practice, no source).
func (h Hand) AboveGirths() (Girths, error) {
	if len(h.Above) == 0 {
		return Girths{predictor: interp.Constant(h.Circumference.MM())}, nil
	}
	g, err := fitCurve(appendPoints([]float64{0}, []float64{h.Circumference.MM()}, h.Above))
	if err != nil {
		return Girths{}, fmt.Errorf("hand.AboveGirths: %w", err)
	}
	return g, nil
}

// appendPoints appends the heights of a profile to xs and its girths to ys, in
// mm.
func appendPoints(xs, ys []float64, profile []Point) (heights, girths []float64) {
	for _, p := range profile {
		xs, ys = append(xs, p.Height.MM()), append(ys, p.Girth.MM())
	}
	return xs, ys
}

// fitCurve returns the curve through two or more points with rising heights.
func fitCurve(xs, ys []float64) (Girths, error) {
	var f interp.FittablePredictor = new(interp.PiecewiseLinear)
	if len(xs) > 2 {
		f = new(interp.FritschButland)
	}
	if err := f.Fit(xs, ys); err != nil {
		return Girths{}, err
	}
	return Girths{xs[0], xs[len(xs)-1], f}, nil
}

// At returns the girth in mm at a height in mm: above the base of the gusset for
// the lower curve, above where the thumb parts for the upper one. Below the first
// and above the last measured height it returns the girth there, since no slope
// was measured beyond.
func (g Girths) At(height float64) float64 {
	return g.predictor.Predict(min(max(height, g.low), g.top))
}
