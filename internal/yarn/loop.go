package yarn

import (
	"math"

	"thenar/internal/mitt"
)

// How surely a swatch tells (common practice, no source): a kitchen scale
// reads to the whole gram, a band's metres per gram are off by up to 3 %, and
// unravelled yarn that is measured in lengths by 2 %.
const (
	scale     = 0.5 // g
	band      = 0.03
	unravel   = 0.02
	confident = 0.95 // of a rectangle lies within this share of its half-width
)

// geometry is the loop length by Munden's relation l = √(Ks/S), S stitches per
// mm². Half of the relative doubt of each of the two gauges goes into l; to it
// comes 10 %, since the constants were not found on hand knitting.
func geometry(p *mitt.Plan) (l, half float64, from Source) {
	ks := wetRelaxed
	if !p.Gauge.Treated {
		ks = dryRelaxed
	}
	l = math.Sqrt(ks / (p.Gauge.Stitches * p.Gauge.Rounds))
	doubt := math.Hypot(p.Gauge.StitchDoubt.Half(), p.Gauge.RoundDoubt.Half()) / 2
	return l, math.Hypot(leastHalf, doubt), Geometry
}

// counted is the loop length by a swatch of n stitches and m rounds:
//
//	(length − n · 9/g) / (n · m)
//
// since the two edges take 3 and 6 times their width. ok is false if no
// swatch tells it.
func counted(p *mitt.Plan, r Request) (l, half float64, from Source, ok bool) {
	s := r.Swatch
	if s.Stitches <= 0 || s.Rounds <= 0 {
		return 0, 0, 0, false
	}
	length := 0.0
	switch {
	case s.Unravelled > 0:
		length, half, from = s.Unravelled.MM(), unravel, UnravelledSwatch
	case s.Mass > 0 && r.Ball.known():
		length = s.Mass * r.Ball.Length.MM() / r.Ball.Mass
		half, from = math.Hypot(confident*scale/s.Mass, band), WeighedSwatch
	default:
		return 0, 0, 0, false
	}
	l = (length - s.Stitches*(castOnWidths+castOffWidths)/p.Gauge.Stitches) / (s.Stitches * s.Rounds)
	return l, max(half, leastHalf), from, l > 0
}
