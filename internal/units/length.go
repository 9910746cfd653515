// Package units holds length, the only quantity that people type here, in
// one integer base unit, and the three units in which they type it.
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

// Longest is the greatest length that anybody may type: 2 m. Nothing that a
// hand or a swatch could need is longer, so what is longer is a slip.
const Longest = 2 * Metre

// MM gives the length in millimetres, for formulas that work in them.
func (l Length) MM() float64 { return float64(l) / 1000 }

// FromMM turns millimetres into a Length, rounded half away from zero.
// NaN gives 0; what does not fit is held at the end of the range.
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

// Size is the length of one of the unit; 0 for a unit that is not known.
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

// Format prints l in the unit without its name, at the fineness of a tape:
// whole millimetres, millimetres in centimetres, eighths of an inch.
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

// String prints l in millimetres with its unit.
func (l Length) String() string {
	return trimZeros(strconv.FormatFloat(l.MM(), 'f', 3, 64)) + " mm"
}

// With prints l in the unit with the unit's name: "19 cm", "7½ in".
func (l Length) With(u Unit) string { return l.Format(u) + " " + string(u) }

// Exact prints l in the unit with every digit that it has: for filling a
// field with a converted value. Three decimals of a millimetre are whole
// micrometres; an inch is given to four decimals.
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

// eighths prints inches as a tape has them: whole inches and the nearest
// eighth, the fraction in its lowest terms.
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

// Up is the length rounded up to the finest step that Format writes of a
// unit, a millimetre or an eighth of an inch: for what must not look smaller
// than it is, such as half of an interval.
func (l Length) Up(u Unit) Length {
	fine := Millimetre
	if u == IN {
		fine = Inch / 8
	}
	return (l + fine - 1) / fine * fine
}
