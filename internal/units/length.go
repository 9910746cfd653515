// Package units has the type Length, a whole number of micrometres, and reads
// and prints it in millimetres, centimetres and inches.
package units

import (
	"math"
	"strconv"
	"strings"
)

// Length is a length in micrometres. The base unit makes the inch exact:
// 1 in = 25 400 µm (international yard and pound agreement, 1959).
type Length int64

// The multiples in which lengths are given and printed.
const (
	Micrometre Length = 1
	Millimetre Length = 1_000
	Centimetre Length = 10_000
	Inch       Length = 25_400
	Metre      Length = 1_000_000
)

// MaxLength is the longest length that Parse accepts. No hand and no swatch
// is longer, so a longer one is a typing error.
const MaxLength = 2 * Metre

// MM returns the length in millimetres, for formulas that work in them.
func (l Length) MM() float64 { return float64(l) / 1000 }

// FromMM returns a number of millimetres as a Length, rounded half away from
// zero. It returns 0 for NaN, and the nearest Length for a number out of range.
func FromMM(mm float64) Length {
	um := math.Round(mm * 1000)
	switch {
	case math.IsNaN(um):
		return 0
	case um >= math.MaxInt64:
		return math.MaxInt64
	case um <= math.MinInt64:
		return math.MinInt64
	}
	return Length(um)
}

// Unit is one of the units in which lengths are typed and shown.
type Unit string

// The units that a measure sheet may name.
const (
	MM Unit = "mm"
	CM Unit = "cm"
	IN Unit = "in"
)

// Size returns the length of one unit, 0 for an unknown unit.
func (u Unit) Size() Length {
	switch u {
	case MM:
		return Millimetre
	case CM:
		return Centimetre
	case IN:
		return Inch
	}
	return 0
}

// Format returns l in the unit without the unit's name, rounded as a tape is
// divided: to a millimetre, a tenth of a centimetre or an eighth of an inch.
func (l Length) Format(u Unit) string {
	switch u {
	case IN:
		return eighths(l)
	case CM:
		return trimZeros(strconv.FormatFloat(float64(roundTo(l, Millimetre))/float64(Centimetre), 'f', 1, 64))
	default:
		return strconv.FormatInt(int64(roundTo(l, Millimetre)/Millimetre), 10)
	}
}

// String returns l in millimetres: "2.5 mm".
func (l Length) String() string {
	return trimZeros(strconv.FormatFloat(l.MM(), 'f', 3, 64)) + " mm"
}

// With returns l in the unit with the unit's name: "19 cm", "7½ in".
func (l Length) With(u Unit) string { return l.Format(u) + " " + string(u) }

// Exact returns l in the unit with all its digits, to fill a field with a
// converted value. Millimetres and centimetres are exact; inches are rounded to
// four decimals.
func (l Length) Exact(u Unit) string {
	decimals := map[Unit]int{MM: 3, CM: 4, IN: 4}[u]
	return trimZeros(strconv.FormatFloat(float64(l)/float64(u.Size()), 'f', decimals, 64))
}

func trimZeros(s string) string {
	if !strings.Contains(s, ".") {
		return s
	}
	return strings.TrimRight(strings.TrimRight(s, "0"), ".")
}

// roundTo rounds l to a whole number of steps, half away from zero.
func roundTo(l, step Length) Length {
	if l < 0 {
		return -roundTo(-l, step)
	}
	return (l + step/2) / step * step
}

// eighths returns l in whole inches and the nearest eighth, the fraction in its
// lowest terms.
func eighths(l Length) string {
	if l < 0 {
		return "−" + eighths(-l)
	}
	n := (l*8 + Inch/2) / Inch
	whole, part := int64(n/8), n%8
	fraction := [8]string{"", "⅛", "¼", "⅜", "½", "⅝", "¾", "⅞"}[part]
	if whole == 0 && part != 0 {
		return fraction
	}
	return strconv.FormatInt(whole, 10) + fraction
}

// RoundUp rounds l up to the finest step that Format prints, a millimetre or an
// eighth of an inch: half of an interval must not look smaller than it is.
func (l Length) RoundUp(u Unit) Length {
	step := Millimetre
	if u == IN {
		step = Inch / 8
	}
	return (l + step - 1) / step * step
}
