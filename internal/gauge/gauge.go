// Package gauge turns counted swatches into stitches and rounds per
// millimetre, and says how far they may be off.
package gauge

import (
	"math"

	"thenar/internal/units"
)

// RoundsPerStitch fills a missing round gauge: 1.36 rounds for every stitch
// over the same length (common practice, no source; 22 sts × 30 rounds).
const RoundsPerStitch = 1.36

// The range in which a gauge is believed, in stitches or rounds per mm:
// 2 to 500 over 10 cm.
const (
	Loosest = 0.02
	Finest  = 5.0
)

// Gauge is what the plan works with.
type Gauge struct {
	Stitches     float64 // g, stitches per mm
	Rounds       float64 // q, rounds per mm
	RoundsFilled bool    // no swatch had its rounds counted
	Treated      bool    // in the round and washed, or brought to that
	Used         int     // how many swatches were combined

	StitchDoubt Doubt // of g
	RoundDoubt  Doubt // of q
	Washing     Ratio // what washing does to the stitches per mm
	Uses        []Use // what was done with each swatch, in their order
	Queries     []Query
	widest      units.Length // over which stitches were counted
	fineness    float64      // of the count on it
}

// Use says what was done with one swatch.
type Use struct {
	Combined bool   `json:"combined"`
	How      string `json:"how"` // "as counted", "converted …", "left out: …"
}

// Query is a swatch that is asked about, and used as it is.
type Query struct {
	Swatch  int    `json:"swatch"` // its place, from 0
	Message string `json:"message"`
}

// Of combines swatches into the gauge of the finished fabric: in the round
// and washed. Only like is combined with like, each swatch weighing with the
// inverse of its variance,
//
//	(σ_n/n)² + (σ_w/w)²,  σ = a/√3,  a = half the fineness of the count, or 1 mm
//
// (JCGM 100:2008, 4.3.7 and F.2.2.1). What was not washed is brought to the
// washed state by the person's own before-and-after ratio, if a piece was
// counted both ways; its doubt goes with it. Failing that, the best group is
// taken as it is: in the round, flat and washed, flat; Treated is then false,
// and 3 % is added to the doubt in quadrature (common practice, no source).
//
// What was counted on the needles is the mitt itself: it is combined even if
// washing is not known, with those 3 % in its own variance, and every other
// piece then has 3 % in its variance too, by which a mitt comes out off its
// swatch (common practice, no source).
//
// variation is the standard deviation of the hand's own unevenness, as a
// share; HandVariation by default. Errors are fault.Fields under path.
func Of(swatches []Swatch, variation float64, path string) (Gauge, error) {
	if err := checkAll(swatches, path); err != nil {
		return Gauge{}, err
	}
	c := combination{swatches: swatches}
	c.choose()
	g := Gauge{Treated: c.treated, Uses: c.uses, Washing: c.washing(countStitches)}
	untreated := 0.0
	if !c.treated {
		untreated = otherTreatment
	}
	var ok bool
	g.Stitches, g.StitchDoubt, _ = c.mean(countStitches)
	g.Rounds, g.RoundDoubt, ok = c.mean(countRounds)
	if !ok {
		g.Rounds, g.RoundsFilled = RoundsPerStitch*g.Stitches, true
		g.RoundDoubt = g.StitchDoubt
		g.RoundDoubt.Other = filledRounds
	}
	for _, d := range []*Doubt{&g.StitchDoubt, &g.RoundDoubt} {
		d.Variation = variation
		d.Other = math.Hypot(d.Other, untreated)
	}
	for i, use := range c.uses {
		if !use.Combined {
			continue
		}
		g.Used++
		if s := swatches[i]; s.Width > g.widest {
			g.widest, g.fineness = s.Width, s.CountedTo
		}
	}
	g.Queries = c.contradictions(variation)
	return g, nil
}

// Doubts that no count shows, as standard deviations (common practice, no
// source): a fabric worked or treated otherwise than the mitt, rounds that
// were never counted, and how unevenly a hand knits from day to day.
const (
	otherTreatment = 0.03
	filledRounds   = 0.05
	otherPiece     = 0.03 // what another piece than the mitt itself is off it
	HandVariation  = 0.015
)
