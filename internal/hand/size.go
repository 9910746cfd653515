package hand

import (
	"fmt"
	"math"

	"thenar/internal/units"
)

// Size is a glove size and the hand that it is for.
type Size struct {
	Size          float64
	Circumference units.Length
	Length        units.Length
	Source        string
}

// The range of glove sizes that are accepted, in steps of ½.
const (
	smallestSize = 4
	largestSize  = 13
)

// tableLengths are the hand lengths of sizes 6 to 11 in mm, which don't grow in
// proportion to the circumference (EN 420:2003, from three glove trade pages that
// agree; the standard itself was not seen).
var tableLengths = [...]float64{160, 171, 182, 192, 204, 215}

// The first and last size of the published table.
const (
	SmallestListed = 6
	LargestListed  = SmallestListed + len(tableLengths) - 1
)

// tableLine is the hand length from the hand circumference, as a straight line
// through the first and last row of the table. The four rows between are within
// 1.5 mm of it.
var tableLine = line{0.433, 94.2}

const (
	en420       = "EN 420:2003, hand sizes 6 to 11, as three glove trade pages quote them"
	beyondTable = "EN ISO 21420:2020 has sizes 4 to 13. This one is from memory, by the rule of sizes 6 to 11 of EN 420:2003"
	tableFit    = "the line fitted to the hand sizes 6 to 11 of EN 420:2003"
)

// Sizes returns the whole glove sizes 4 to 13: 6 to 11 as in EN 420:2003, the
// others by the same rule, as their source says. A half size lies between its
// neighbours.
func Sizes() []Size {
	var sizes []Size
	for n := float64(smallestSize); n <= largestSize; n++ {
		girth, length := sizeGirth(n), sizeLength(n)
		source := girth.source
		if length.source != source {
			source += "; hand length by " + length.source
		}
		sizes = append(sizes, Size{n, girth.value, length.value, source})
	}
	return sizes
}

// SizeOf returns the glove size of a hand circumference H with decimals:
// H / 25.4 mm, since the size is the circumference in inches (EN 420:2003, whose
// six rows agree to the millimetre). It may lie outside 4 … 13.
func SizeOf(circumference units.Length) float64 {
	return float64(circumference) / float64(units.Inch)
}

// isSize reports whether size is a glove size: 4 to 13, whole or half.
func isSize(size float64) bool {
	return size >= smallestSize && size <= largestSize && 2*size == math.Trunc(2*size)
}

// sizeGirth returns the hand circumference of a glove size: 25.4 mm × size,
// rounded to whole millimetres.
func sizeGirth(size float64) estimate {
	mm := math.Round(size * float64(units.Inch) / float64(units.Millimetre))
	return estimate{units.FromMM(mm), fmt.Sprintf("25.4 × size %g, in whole mm", size), sizeSource(size)}
}

// sizeLength returns the hand length of a glove size: from 6 to 11 that of the
// table, midway between two rows for a half size; outside 94.2 mm + 0.433 × the
// size's circumference, the line fitted to the table.
func sizeLength(size float64) estimate {
	if size < SmallestListed || size > float64(LargestListed) {
		girth := sizeGirth(size).value
		return estimate{
			units.FromMM(tableLine.at(girth.MM())),
			tableLine.formula(fmt.Sprintf("hand circumference of size %g (%s)", size, girth)), tableFit,
		}
	}
	row := int(size) - SmallestListed
	if size == math.Trunc(size) {
		return estimate{units.FromMM(tableLengths[row]), fmt.Sprintf("the hand length of size %g", size), sizeSource(size)}
	}
	return estimate{
		units.FromMM((tableLengths[row] + tableLengths[row+1]) / 2),
		fmt.Sprintf("midway between the hand lengths of sizes %d and %d", int(size), int(size)+1), sizeSource(size),
	}
}

// sizeSource returns the source of a size's figures.
func sizeSource(size float64) string {
	switch {
	case size < SmallestListed || size > float64(LargestListed):
		return beyondTable
	case size != math.Trunc(size):
		return "between the rows of " + en420
	}
	return en420
}
