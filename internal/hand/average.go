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

// usual is a line that fills a measurement, with its formula, which is put into words
// once: a hand is filled more than once for each plan.
type usual struct {
	line
	from string
}

func usualLine(slope, offset float64, x string) usual {
	l := line{slope, offset}
	return usual{l, l.formula(x)}
}

// ratio returns the usual line without an offset.
func ratio(slope float64, x string) usual { return usualLine(slope, 0, x) }

// of returns the line's estimate at x.
func (u usual) of(x units.Length, source string) estimate {
	return estimate{units.FromMM(u.at(x.MM())), u.from, source}
}

// averages are the lines of one reference and their source.
type averages struct {
	girth  usual // hand circumference from hand breadth
	back   usual // hand circumference from hand length
	length usual // hand length from hand circumference
	wrist  usual // wrist circumference from hand circumference
	source string
}

// averagesOf returns the averages of four lines, each with its slope and offset.
func averagesOf(girth, back, length, wrist line, source string) averages {
	return averages{
		usualLine(girth.slope, girth.offset, "hand breadth"), usualLine(back.slope, back.offset, "hand length"),
		usualLine(length.slope, length.offset, "hand circumference"), usualLine(wrist.slope, wrist.offset, "hand circumference"), source,
	}
}

// byReference has the averages of each reference, from the individual data of
// ANSUR II (Gordon et al. 2014, NATICK/TR-15/007; 1,986 women and 4,082 men aged
// 17 to 58): for Both the mean of the two sexes' mean ratios, for Women and Men
// least squares. The standard errors of estimate of the lines are, for women and
// men: girth 4.0 and 4.0 mm, length 8.3 and 8.0 mm, wrist 5.3 and 5.7 mm.
var byReference = map[Reference]averages{
	Both:  averagesOf(line{2.40, 0}, line{1 / 0.94, 0}, line{0.94, 0}, line{0.83, 0}, ansur),
	Women: averagesOf(line{2.051, 26.3}, line{0.493, 97.3}, line{0.641, 61.5}, line{0.655, 32.7}, ansurWomen),
	Men:   averagesOf(line{2.152, 22.4}, line{0.608, 94.8}, line{0.573, 71.6}, line{0.675, 32.6}, ansurMen),
}

// The girths of children from their length, and their wrists from their girths; see
// girth and wrist.
var (
	toddlerGirth, smallGirth = ratio(1.14, "hand length"), ratio(1.11, "hand length")
	toddlerWrist, smallWrist = ratio(0.90, "hand circumference"), ratio(0.84, "hand circumference")
)

// estimate is a value with its formula and source. Both texts are empty for a
// measured value, and for a zero value that can't be estimated.
type estimate struct {
	value        units.Length
	from, source string
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
		return mean.girth.of(h.Breadth, mean.source)
	case isSize(h.Size):
		return sizeGirth(h.Size)
	case h.Length <= 0:
		return estimate{}
	case h.Length < toddlerBelow:
		return toddlerGirth.of(h.Length, snyderBreadth)
	case h.Length < smallBelow:
		return smallGirth.of(h.Length, snyderBreadth)
	}
	e := mean.back.of(h.Length, mean.source)
	if h.Reference == Both {
		e.from = "hand length ÷ 0.94"
	}
	return e
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
	return mean.length.of(h.girth().value, mean.source)
}

// wrist returns the wrist's circumference, estimated from the hand's
// circumference H and length. Small children have thicker wrists, 0.90 H below
// 120 mm of length and 0.84 H below 145 mm; above, both 0.83 H, women 0.655 H +
// 32.7 mm, men 0.675 H + 32.6 mm.
func (h Hand) wrist() estimate {
	girth, length := h.girth().value, h.length().value
	switch {
	case length < toddlerBelow:
		return toddlerWrist.of(girth, snyder)
	case length < smallBelow:
		return smallWrist.of(girth, snyder)
	}
	mean := byReference[h.Reference]
	return mean.wrist.of(girth, mean.source)
}
