package gauge

import (
	"math"

	"thenar/internal/units"
)

// Doubt is the uncertainty of a count per mm, in shares of it: the half-widths
// of reading errors that are equally likely within them (rectangles), and the
// standard deviations of what no count shows. A girth is stitches divided by
// stitches per mm, so it has the same shares. The zero Doubt is certainty.
type Doubt struct {
	Rectangles []float64 // half-widths of count and ruler
	Variation  float64   // standard deviation of an uneven hand
	Other      float64   // standard deviation of another treatment or a filled count
}

// confidence is the share of cases that lie in an interval.
const confidence = 0.95

// normal95 is the 97.5 % quantile of the normal distribution.
const normal95 = 1.959963984540054

// CountAndRuler returns the half-width of the 95 % interval of count and ruler
// alone, the exact quantile of the sum of the rectangles. For two half-widths
// a ≥ b it is
//
//	a + b − √(0.2 a b) if b ≥ 0.05 a,  else 0.95 a
//
// (from the trapezoid that two rectangles make; JCGM 101:2008, 6.4.4 has its
// density). For more it is found by bisection on the distribution.
func (d Doubt) CountAndRuler() float64 {
	switch r := d.Rectangles; len(r) {
	case 0:
		return 0
	case 1:
		return confidence * r[0]
	case 2:
		a, b := max(r[0], r[1]), min(r[0], r[1])
		if b >= 0.05*a {
			return a + b - math.Sqrt(4*(1-confidence)*a*b)
		}
		return confidence * a
	}
	curve := d.curve(0)
	low, high := 0.0, d.reach()
	for range 32 {
		mid := (low + high) / 2
		if 2*curve.at(mid)-1 < confidence {
			low = mid
		} else {
			high = mid
		}
	}
	return high
}

// Half returns the half-width of the whole 95 % interval, as a share: that of
// count and ruler, with 1.96 standard deviations of the rest in quadrature.
func (d Doubt) Half() float64 {
	return math.Sqrt(square(d.CountAndRuler()) + square(normal95*d.Variation) + square(normal95*d.Other))
}

// Chances is the distribution of a value's error, computed once for many calls
// of Within.
type Chances struct{ curve curve }

// Chances returns the distribution of the error, rectangles and normal
// deviations together.
func (d Doubt) Chances() Chances { return Chances{d.curve(math.Hypot(d.Variation, d.Other))} }

// Within returns the chance that the error, as a share of the value, lies
// between low and high.
func (c *Chances) Within(low, high float64) float64 {
	if high <= low {
		return 0
	}
	return min(max(c.curve.at(high)-c.curve.at(low), 0), 1)
}

func square(x float64) float64 { return x * x }

// reach returns the largest sum of the rectangles.
func (d Doubt) reach() (sum float64) {
	for _, a := range d.Rectangles {
		sum += a
	}
	return sum
}

// curve is the distribution function of the sum of the rectangles and a normal
// deviation of standard deviation σ, from the characteristic function
// (Gil-Pelaez, Biometrika 38, 1951):
//
//	F(x) = ½ + (1/π) ∫ sin(tx)/t · ∏ sin(a_i t)/(a_i t) · exp(−σ²t²/2) dt
//
// by the mid-point rule, which for a bounded sum is exact except for the cut-off
// of the integral. The terms hold what doesn't depend on x.
type curve struct {
	reach, step float64
	terms       []term
}

type term struct{ t, factor float64 }

func (d Doubt) curve(sigma float64) curve {
	const maxTerms, negligible = 100_000, 1e-7
	c := curve{reach: d.reach() + 9*sigma}
	if c.reach == 0 {
		return c // certainty: a step at 0
	}
	c.step = math.Pi / (2 * c.reach)
	c.terms = make([]term, 0, 64)
	for k := range maxTerms {
		t := (float64(k) + 0.5) * c.step
		envelope := math.Exp(-square(sigma*t) / 2)
		factor := envelope
		for _, a := range d.Rectangles {
			factor *= math.Sin(a*t) / (a * t)
			envelope *= min(1, 1/(a*t))
		}
		c.terms = append(c.terms, term{t, factor})
		if envelope/t*c.step < negligible {
			break
		}
	}
	return c
}

// at returns F(x).
func (c *curve) at(x float64) float64 {
	if x >= c.reach {
		return 1
	}
	if x <= -c.reach {
		return 0
	}
	sum := 0.0
	for _, term := range c.terms {
		sum += math.Sin(term.t*x) / term.t * term.factor
	}
	return 0.5 + sum*c.step/math.Pi
}

// WiderSwatch returns what a wider swatch would gain for a girth in mm: the
// half-width of the girth's 95 % interval of count and ruler now, and then, with
// one swatch counted over a greater width to the same fineness. ok is false if
// the widest swatch is that wide already.
func (g *Gauge) WiderSwatch(girth float64) (now, then float64, over units.Length, ok bool) {
	now = girth * g.StitchDoubt.CountAndRuler()
	over = 10 * units.Centimetre
	if g.widest >= over {
		over = 20 * units.Centimetre
	}
	if g.widest == 0 || g.widest >= over {
		return now, now, g.widest, false
	}
	wide := Doubt{Rectangles: []float64{g.fineness / 2 / (g.Stitches * over.MM()), rulerHalfWidth / over.MM()}}
	return now, girth * wide.CountAndRuler(), over, true
}

// Widest returns the greatest width over which stitches were counted.
func (g *Gauge) Widest() units.Length { return g.widest }
