package gauge

import (
	"fmt"
	"math"

	"thenar/internal/fault"
	"thenar/internal/units"
)

// Swatch is one count of a piece of knitting.
//
// The same Piece counted before and after washing gives the ratio of washing.
// Swatches without a name are of the same piece, except those on the needles:
// these are counts of the mitt itself.
type Swatch struct {
	Stitches  float64
	Width     units.Length
	Rounds    float64      // 0 together with Height: not counted
	Height    units.Length // of Rounds
	Flat      bool         // worked back and forth; else in the round
	Washed    bool
	OnNeedles bool    // counted on the needles; never washed
	CountedTo float64 // fineness of the count: 1 or ½ stitch
	Piece     string  // name of the piece
	ForFlat   bool    // the fabric that it stands for is worked back and forth
}

// unlike reports whether it was worked in another way than the finished fabric.
func (s Swatch) unlike() bool { return s.Flat != s.ForFlat }

// String returns how the swatch was worked and treated.
func (s Swatch) String() string {
	worked, treated := "in the round", "not washed"
	if s.Flat {
		worked = "flat"
	}
	switch {
	case s.OnNeedles:
		treated = "on the needles"
	case s.Washed:
		treated = "washed"
	}
	return worked + ", " + treated
}

// group ranks a swatch by how much it differs from the finished fabric: 0 worked like it
// and washed, 1 worked like it, 2 otherwise and washed, 3 otherwise.
func (s Swatch) group() int {
	n := 0
	if s.unlike() {
		n += 2
	}
	if !s.Washed {
		n++
	}
	return n
}

// samePiece reports whether s and o are counts of one piece of knitting.
func (s Swatch) samePiece(o Swatch) bool {
	if s.Piece == "" && (s.OnNeedles || o.OnNeedles) {
		return false
	}
	return s.Piece == o.Piece && s.Flat == o.Flat
}

func checkAll(swatches []Swatch, path string) error {
	var faults fault.Fields
	if len(swatches) == 0 {
		faults.Add(path, "is empty; give one swatch: stitches counted over a width")
	}
	for i, s := range swatches {
		s.check(fmt.Sprintf("%s[%d]", path, i), &faults)
	}
	return faults.Err()
}

func (s Swatch) check(path string, faults *fault.Fields) {
	if !checkCount(path+".stitches", s.Stitches, faults) || s.Width <= 0 {
		return
	}
	checkGauge(path+".stitches", "stitches", s.Stitches, s.Width, faults)
	switch {
	case s.Rounds == 0 && s.Height == 0:
	case s.Height == 0:
		faults.Add(path+".height", "is missing; give the height over which the rounds were counted, or leave out both")
	case s.Rounds == 0:
		faults.Add(path+".rounds", "is missing; give the rounds counted over the height, or leave out both")
	case checkCount(path+".rounds", s.Rounds, faults):
		checkGauge(path+".rounds", "rounds", s.Rounds, s.Height, faults)
	}
	if s.CountedTo != 0.5 && s.CountedTo != 1 {
		faults.Add(path+".counted_to", "is %g; write 0.5 for a count to the half stitch, or 1", s.CountedTo)
	}
	if s.OnNeedles && s.Washed {
		faults.Add(path+".on_needles", "is true beside washed; a piece on the needles is not washed: keep one of the two")
	}
}

// checkCount refuses a number that can't be a count of stitches or rounds.
func checkCount(path string, n float64, faults *fault.Fields) bool {
	if math.IsNaN(n) || n <= 0 || n > 10_000 {
		faults.Add(path, "is %g; count at least half a stitch and at most 10000", n)
		return false
	}
	return true
}

// checkGauge refuses a count that makes an impossible gauge.
func checkGauge(path, what string, n float64, over units.Length, faults *fault.Fields) {
	if per := n / over.MM(); per < minPerMM || per > maxPerMM {
		faults.Add(path, "makes %.4g %s over 10 cm; knitting lies between 2 and 500: check the count and the length", per*100, what)
	}
}
