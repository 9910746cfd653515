package hand

import (
	"fmt"

	"thenar/internal/units"
)

// Reference names the people whose averages fill a missing measurement.
type Reference string

// The references. Both has plain ratios, the mean of the two sexes; Women and
// Men have regression lines, which are more accurate for hands that are far from
// the mean.
const (
	Both  Reference = ""
	Women Reference = "women"
	Men   Reference = "men"
)

// line is a straight line in mm: slope × x + offset.
type line struct{ slope, offset float64 }

// at returns the line's value at x mm.
func (l line) at(x float64) float64 { return l.slope*x + l.offset }

// formula returns the line in words, with x named: "0.641 × hand circumference +
// 61.5 mm".
func (l line) formula(x string) string {
	if l.offset == 0 {
		return fmt.Sprintf("%g × %s", l.slope, x)
	}
	return fmt.Sprintf("%g × %s + %g mm", l.slope, x, l.offset)
}

// averages are the lines of one reference and their source.
type averages struct {
	girth  line // hand circumference from hand breadth
	back   line // hand circumference from hand length
	length line // hand length from hand circumference
	wrist  line // wrist circumference from hand circumference
	source string
}

// byReference has the averages of each reference, from the individual data of
// ANSUR II (Gordon et al. 2014, NATICK/TR-15/007; 1,986 women and 4,082 men aged
// 17 to 58): for Both the mean of the two sexes' mean ratios, for Women and Men
// least squares. The standard errors of estimate of the lines are, for women and
// men: girth 4.0 and 4.0 mm, length 8.3 and 8.0 mm, wrist 5.3 and 5.7 mm.
var byReference = map[Reference]averages{
	Both:  {girth: line{2.40, 0}, back: line{1 / 0.94, 0}, length: line{0.94, 0}, wrist: line{0.83, 0}, source: ansur},
	Women: {girth: line{2.051, 26.3}, back: line{0.493, 97.3}, length: line{0.641, 61.5}, wrist: line{0.655, 32.7}, source: ansurWomen},
	Men:   {girth: line{2.152, 22.4}, back: line{0.608, 94.8}, length: line{0.573, 71.6}, wrist: line{0.675, 32.6}, source: ansurMen},
}

// estimate is a value with its formula and source. Both texts are empty for a
// measured value, and for a zero value that can't be estimated.
type estimate struct {
	value        units.Length
	from, source string
}

// byRatio returns ratio × x. what names x in the formula.
func byRatio(ratio float64, x units.Length, what, source string) estimate {
	l := line{slope: ratio}
	return estimate{units.FromMM(l.at(x.MM())), l.formula(what), source}
}

// girth returns the hand's circumference H as measured, else from the first of
// breadth B, size and length L that is given, else zero:
//
//	both 2.40 B, women 2.051 B + 26.3 mm, men 2.152 B + 22.4 mm
//	25.4 mm × size, in whole millimetres
//	1.14 L below 120 mm, 1.11 L below 145 mm
//	else both L / 0.94, women 0.493 L + 97.3 mm, men 0.608 L + 94.8 mm
//
// The children's two are breadth over length (Snyder et al. 1977: 0.475 at 2
// to 5½ years, 0.463 at 5½ to 9½) × 2.40, since that study has no hand
// circumference; whether the adult 2.40 holds for plump hands is not known.
func (h Hand) girth() estimate {
	mean := byReference[h.Reference]
	switch {
	case h.Circumference != 0:
		return estimate{value: h.Circumference}
	case h.Breadth > 0:
		return estimate{units.FromMM(mean.girth.at(h.Breadth.MM())), mean.girth.formula("hand breadth"), mean.source}
	case isSize(h.Size):
		return sizeGirth(h.Size)
	case h.Length <= 0:
		return estimate{}
	case h.Length < toddlerBelow:
		return byRatio(1.14, h.Length, "hand length", snyderBreadth)
	case h.Length < smallBelow:
		return byRatio(1.11, h.Length, "hand length", snyderBreadth)
	}
	words := mean.back.formula("hand length")
	if h.Reference == Both {
		words = "hand length ÷ 0.94"
	}
	return estimate{units.FromMM(mean.back.at(h.Length.MM())), words, mean.source}
}

// length returns the hand's length L as measured, else that of the size, else
// from the circumference H, measured or filled: both 0.94 H, women 0.641 H +
// 61.5 mm, men 0.573 H + 71.6 mm.
func (h Hand) length() estimate {
	switch {
	case h.Length != 0:
		return estimate{value: h.Length}
	case isSize(h.Size):
		return sizeLength(h.Size)
	}
	mean := byReference[h.Reference]
	return estimate{units.FromMM(mean.length.at(h.girth().value.MM())), mean.length.formula("hand circumference"), mean.source}
}

// wrist returns the wrist's circumference, estimated from the hand's
// circumference H and length. Small children have thicker wrists, 0.90 H below
// 120 mm of length and 0.84 H below 145 mm; above, both 0.83 H, women 0.655 H +
// 32.7 mm, men 0.675 H + 32.6 mm.
func (h Hand) wrist() estimate {
	girth, length := h.girth().value, h.length().value
	switch {
	case length < toddlerBelow:
		return byRatio(0.90, girth, "hand circumference", snyder)
	case length < smallBelow:
		return byRatio(0.84, girth, "hand circumference", snyder)
	}
	mean := byReference[h.Reference]
	return estimate{units.FromMM(mean.wrist.at(girth.MM())), mean.wrist.formula("hand circumference"), mean.source}
}
