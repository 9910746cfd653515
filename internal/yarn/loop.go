package yarn

import (
	"math"

	"thenar/internal/gauge"
)

// The errors of a swatch (common practice, no source).
const (
	scale      = 0.5  // g; a kitchen scale reads whole grams
	band       = 0.03 // share of a band's metres per gram
	unravel    = 0.02 // share of a length of unravelled yarn
	confidence = 0.95 // share of a rectangle's half-width that holds 95 % of it
)

// byGeometry returns the loop length by Munden's relation l = √(Ks/S), with S
// stitches per mm². Its interval has half of the relative doubt of each of the two
// gauges, and 10 % in quadrature, since the constants are not those of hand
// knitting.
func byGeometry(g *gauge.Gauge) (l, half float64, from Source) {
	ks := wetRelaxed
	if !g.Treated {
		ks = dryRelaxed
	}
	l = math.Sqrt(ks / (g.Stitches * g.Rounds))
	doubt := math.Hypot(g.StitchDoubt.Half(), g.RoundDoubt.Half()) / 2
	return l, math.Hypot(minHalf, doubt), Geometry
}

// bySwatch returns the loop length from a swatch of n stitches and m rounds:
//
//	(length − n · 9/g) / (n · m)
//
// since the two edges take 3 and 6 times their width. ok is false if the swatch
// doesn't give a length.
func bySwatch(g *gauge.Gauge, r Request) (l, half float64, from Source, ok bool) {
	s := r.Swatch
	if s.Stitches <= 0 || s.Rounds <= 0 {
		return 0, 0, 0, false
	}
	length := 0.0
	switch {
	case s.Unravelled > 0:
		length, half, from = s.Unravelled.MM(), unravel, UnravelledSwatch
	case s.Mass > 0 && r.Ball.hasBoth():
		length = s.Mass * r.Ball.Length.MM() / r.Ball.Mass
		half, from = math.Hypot(confidence*scale/s.Mass, band), WeighedSwatch
	default:
		return 0, 0, 0, false
	}
	l = (length - s.Stitches*(castOnWidths+castOffWidths)/g.Stitches) / (s.Stitches * s.Rounds)
	return l, max(half, minHalf), from, l > 0
}
