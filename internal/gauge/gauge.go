// Package gauge turns counted swatches into stitches and rounds per
// millimetre.
package gauge

import (
	"fmt"
	"math"

	"thenar/internal/fault"
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

// Swatch is one counted piece. Rounds and Height may be missing together
// (both zero). CountedTo is the fineness of the count: 1 or ½ stitch.
type Swatch struct {
	Stitches  float64
	Width     units.Length
	Rounds    float64
	Height    units.Length
	Flat      bool // worked back and forth; else in the round
	Washed    bool
	CountedTo float64
}

// Gauge is what the plan works with.
type Gauge struct {
	Stitches     float64 // g, stitches per mm
	Rounds       float64 // q, rounds per mm
	RoundsFilled bool    // no swatch had its rounds counted
	Treated      bool    // the swatches were worked in the round and washed
	Used         int     // how many swatches were combined
}

// ruler is the half-width of the reading error of a ruler, in mm
// (rectangular error, JCGM 100:2008, 4.3.7).
const ruler = 1.0

// Of combines the swatches that were worked and treated alike, best group
// first: in the round and washed, in the round, flat and washed, flat. Each
// swatch weighs with the inverse of its variance,
//
//	(σ_n/n)² + (σ_w/w)²,  σ = a/√3,  a = half the fineness of the count, or 1 mm
//
// (JCGM 100:2008, 4.3.7 and F.2.2.1). Errors are fault.Fields under path.
func Of(swatches []Swatch, path string) (Gauge, error) {
	var faults fault.Fields
	if len(swatches) == 0 {
		faults.Add(path, "is empty; give one swatch: stitches counted over a width")
		return Gauge{}, faults
	}
	for i, s := range swatches {
		s.check(fmt.Sprintf("%s[%d]", path, i), &faults)
	}
	if err := faults.Err(); err != nil {
		return Gauge{}, err
	}
	best := swatches[0].group()
	for _, s := range swatches {
		best = min(best, s.group())
	}
	var g Gauge
	var stitches, rounds mean
	for _, s := range swatches {
		if s.group() != best {
			continue
		}
		g.Used++
		stitches.add(s.Stitches, s.Width, s.CountedTo)
		if s.Rounds > 0 {
			rounds.add(s.Rounds, s.Height, s.CountedTo)
		}
	}
	g.Treated = best == 0
	g.Stitches = stitches.value()
	g.Rounds, g.RoundsFilled = rounds.value(), rounds.weight == 0
	if g.RoundsFilled {
		g.Rounds = RoundsPerStitch * g.Stitches
	}
	return g, nil
}

// group orders swatches by how near they are to the finished fabric.
func (s Swatch) group() int {
	n := 0
	if s.Flat {
		n += 2
	}
	if !s.Washed {
		n++
	}
	return n
}

func (s Swatch) check(path string, faults *fault.Fields) {
	if !s.count(path+".stitches", s.Stitches, faults) || s.Width <= 0 {
		return
	}
	inRange(path+".stitches", "stitches", s.Stitches, s.Width, faults)
	switch {
	case s.Rounds == 0 && s.Height == 0:
	case s.Height == 0:
		faults.Add(path+".height", "is missing; give the height over which the rounds were counted, or leave out both")
	case s.Rounds == 0:
		faults.Add(path+".rounds", "is missing; give the rounds counted over the height, or leave out both")
	case s.count(path+".rounds", s.Rounds, faults):
		inRange(path+".rounds", "rounds", s.Rounds, s.Height, faults)
	}
	if s.CountedTo != 0.5 && s.CountedTo != 1 {
		faults.Add(path+".counted_to", "is %g; write 0.5 for a count to the half stitch, or 1", s.CountedTo)
	}
}

// count refuses what is no number of stitches or rounds.
func (s Swatch) count(path string, n float64, faults *fault.Fields) bool {
	if math.IsNaN(n) || n <= 0 || n > 10_000 {
		faults.Add(path, "is %g; count at least half a stitch and at most 10000", n)
		return false
	}
	return true
}

func inRange(path, what string, n float64, over units.Length, faults *fault.Fields) {
	if per := n / over.MM(); per < Loosest || per > Finest {
		faults.Add(path, "makes %.4g %s over 10 cm; knitting lies between 2 and 500: check the count and the length", per*100, what)
	}
}

// mean is an inverse-variance mean of counts per mm. A single count is kept
// as it is, without the rounding of weighing.
type mean struct {
	sum, weight float64
	only        float64
	counts      int
}

func (m *mean) add(n float64, over units.Length, countedTo float64) {
	perMM := n / over.MM()
	relative := math.Hypot(countedTo/2/n, ruler/over.MM()) / math.Sqrt(3)
	w := 1 / (perMM * relative * perMM * relative)
	m.sum += w * perMM
	m.weight += w
	m.only = perMM
	m.counts++
}

func (m *mean) value() float64 {
	if m.counts <= 1 {
		return m.only
	}
	return m.sum / m.weight
}
