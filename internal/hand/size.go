package hand

import (
	"fmt"
	"math"

	"thenar/internal/units"
)

// Size is one row of the glove sizes.
type Size struct {
	Size          float64
	Circumference units.Length
	Length        units.Length
	Source        string
}

// The glove sizes that can be given, in steps of ½.
const (
	smallestSize = 4
	largestSize  = 13
)

// tableLengths are the hand lengths of sizes 6 to 11 in mm. They don't grow
// with the circumference in proportion (EN 420:2003, quoted second-hand by
// three glove trade pages that agree; the standard itself was not seen).
var tableLengths = [...]float64{160, 171, 182, 192, 204, 215}

// The sizes between which the published table runs.
const (
	SmallestListed = 6
	LargestListed  = SmallestListed + len(tableLengths) - 1
)

// tableLine is the hand length by hand circumference as a straight line: it
// runs through the first and last row of the table and is within 1.5 mm of
// the four between.
var tableLine = line{0.433, 94.2}

const (
	en420    = "EN 420:2003, hand sizes 6 to 11, as three glove trade pages quote them"
	beyond   = "EN ISO 21420:2020 has sizes 4 to 13; this one from memory, by the rule of sizes 6 to 11 of EN 420:2003"
	tableFit = "the line fitted to the hand sizes 6 to 11 of EN 420:2003"
)

// Sizes gives the whole glove sizes 4 to 13 with the hand that each is for:
// 6 to 11 as in EN 420:2003, the others by its rule, which their source says.
// A half size lies between its neighbours.
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

// SizeOf is the glove size of a hand circumference H with its decimals:
// H / 25.4 mm, since the size is the circumference in inches (EN 420:2003,
// exact to the millimetre in its six rows). It is not held to 4 … 13.
func SizeOf(circumference units.Length) float64 {
	return float64(circumference) / float64(units.Inch)
}

// validSize tells whether there is such a size: 4 to 13, whole or half.
func validSize(size float64) bool {
	return size >= smallestSize && size <= largestSize && 2*size == math.Trunc(2*size)
}

// sizeGirth is the hand circumference of a valid size: 25.4 mm × size,
// rounded to whole millimetres.
func sizeGirth(size float64) estimate {
	mm := math.Round(size * float64(units.Inch) / float64(units.Millimetre))
	return estimate{units.FromMM(mm), fmt.Sprintf("25.4 × size %g, in whole mm", size), sizeSource(size)}
}

// sizeLength is the hand length of a valid size: the table's from 6 to 11,
// midway between two rows for a half size; elsewhere 94.2 mm + 0.433 × the
// size's circumference, the line fitted to the table.
func sizeLength(size float64) estimate {
	if size < SmallestListed || size > float64(LargestListed) {
		girth := sizeGirth(size).value
		return estimate{
			units.FromMM(tableLine.at(girth.MM())),
			tableLine.words(fmt.Sprintf("hand circumference of size %g (%s)", size, girth)), tableFit,
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

// sizeSource says where the figures of a size come from.
func sizeSource(size float64) string {
	switch {
	case size < SmallestListed || size > float64(LargestListed):
		return beyond
	case size != math.Trunc(size):
		return "between the rows of " + en420
	}
	return en420
}
