// Package gauge turns counted swatches into stitches and rounds per
// millimetre, and says how uncertain these are.
package gauge

import (
	"math"

	"thenar/internal/units"
)

// RoundsPerStitch is the number of rounds over the length of one stitch that
// fills a missing round gauge (common practice, no source; 22 stitches × 30
// rounds).
const RoundsPerStitch = 1.36

// The range of gauges that are accepted, in stitches or rounds per mm: 2 to 500
// over 10 cm.
const (
	minPerMM = 0.02
	maxPerMM = 5.0
)

// Gauge is the gauge of the finished fabric.
type Gauge struct {
	Stitches     float64 // g, stitches per mm
	Rounds       float64 // q, rounds per mm
	RoundsFilled bool    // no swatch had its rounds counted
	Treated      bool    // of fabric knitted in the round and washed, or converted to it
	Used         int     // number of swatches combined

	StitchDoubt Doubt // of g
	RoundDoubt  Doubt // of q
	Washing     Ratio // of stitches per mm
	Uses        []Use // what was done with each swatch, in their order
	Queries     []Query
	widest      units.Length // greatest width over which stitches were counted
	fineness    float64      // CountedTo of that swatch
}

// Use says what was done with one swatch.
type Use struct {
	Combined bool   `json:"combined"`
	How      string `json:"how"` // "as counted …", "brought to the washed state …", "left out: …"
}

// Query asks about a swatch that is unlikely but used as it is.
type Query struct {
	Swatch  int    `json:"swatch"` // index, from 0
	Message string `json:"message"`
}

// Of combines swatches into the gauge of the finished fabric, knitted in the
// round, or flat if they say so, and washed. Only swatches that were worked and treated alike are
// combined, each weighted by the inverse of its variance,
//
//	(σ_n/n)² + (σ_w/w)²,  σ = a/√3,  a = half the fineness of the count, or 1 mm
//
// (JCGM 100:2008, 4.3.7 and F.2.2.1). If a piece was counted before and after
// washing, unwashed swatches are converted by that ratio, and its doubt is added
// to theirs. Without a washed swatch or such a ratio the best group is used as
// it is: unwashed in the round, else flat and washed, else flat and unwashed.
// Then Treated is false, and 3 % is added to the doubt in quadrature (common
// practice, no source).
//
// A count on the needles is one of the mitt itself. It is combined even if the
// effect of washing is not known, with those 3 % in its own variance. Every other
// swatch then gets 3 % in its variance too, since a mitt comes out different from
// its swatch (common practice, no source).
//
// variation is the standard deviation of the hand's unevenness as a share,
// usually HandVariation. Errors are fault.Fields under path.
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

// Standard deviations, as shares, of what no count shows (common practice, no
// source).
const (
	otherTreatment = 0.03  // a fabric that is worked or treated otherwise than the mitt
	filledRounds   = 0.05  // a round gauge filled by RoundsPerStitch
	otherPiece     = 0.03  // a swatch beside a count of the mitt itself
	HandVariation  = 0.015 // an uneven hand, from day to day
)
