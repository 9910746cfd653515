package hand

import (
	"math"

	"thenar/internal/units"
)

// Query asks about a measurement that is unusual but possible, and used as it
// is.
type Query struct {
	Field   string
	Message string

	Low, Top units.Length // the usual range, if the measurement lies outside it; else 0
}

// Outside reports whether q is about a measurement outside its usual range.
func (q Query) Outside() bool { return q.Top != 0 }

// usualRange is the range of usual values of a measurement.
type usualRange struct {
	field    string
	value    *units.Length
	low, top units.Length
}

// query asks about a value outside the range.
func (w usualRange) query() Query {
	return Query{w.field, w.value.String() + " is outside the usual " +
		w.low.String() + " to " + w.top.String() + "; please measure again. It is used as it is.", w.low, w.top}
}

func (w usualRange) excludesValue() bool { return *w.value != 0 && !w.contains(*w.value) }

func (w usualRange) contains(l units.Length) bool { return l >= w.low && l <= w.top }

// adultFrom is the hand length from which the usual ranges are those of adults.
const adultFrom = 150 * units.Millimetre

// tapeTolerance is by how much a girth of the profile may be smaller than one
// below it: two measurements with a tape may differ so much (common practice, no
// source).
const tapeTolerance = 5 * units.Millimetre

// Queries asks about unusual measurements. For hands of 150 mm and more the usual
// ranges are those of the adults in ANSUR II (Gordon et al. 2014; 1,986 women,
// 4,082 men); for shorter ones the means ± 3 SD of children of 2 to 13½ years
// (Snyder et al. 1977), the girth estimated from the breadth. If these
// measurements are usual, the others may be from half to twice of what would fill
// them (common practice, no source): outside, they were probably typed in another
// unit.
//
// It also asks about a wrist as wide as the hand, a profile that narrows towards
// where the thumb parts, and a hand that is wider above that place than at it
// with the thumb.
func (h Hand) Queries() []Query {
	var queries []Query
	for _, w := range h.outsideRanges() {
		queries = append(queries, w.query())
	}
	if girth := h.girth().value; h.Wrist != 0 && h.Wrist >= girth {
		queries = append(queries, Query{Field: FieldWrist, Message: "the wrist (" + h.Wrist.String() + ") is as wide as the hand (" +
			girth.String() + "); in 6,068 adults it never was. It is used as it is."})
	}
	queries = append(queries, h.queryProfile()...)
	return append(queries, h.queryAbove()...)
}

// usualRanges returns the ranges for a hand of this length.
func (h *Hand) usualRanges() []usualRange {
	const mm = units.Millimetre
	if h.length().value < adultFrom {
		return []usualRange{
			{FieldCircumference, &h.Circumference, 94 * mm, 220 * mm},
			{FieldBreadth, &h.Breadth, 39 * mm, 92 * mm},
			{FieldLength, &h.Length, 83 * mm, 200 * mm},
			{FieldWrist, &h.Wrist, 88 * mm, 182 * mm},
		}
	}
	return []usualRange{
		{FieldCircumference, &h.Circumference, 150 * mm, 250 * mm},
		{FieldBreadth, &h.Breadth, 67 * mm, 105 * mm},
		{FieldLength, &h.Length, 140 * mm, 240 * mm},
		{FieldWrist, &h.Wrist, 120 * mm, 220 * mm},
	}
}

// rangesByFilling returns the ranges of the other measurements: from half to
// twice of what would fill them, in whole millimetres.
func (h *Hand) rangesByFilling() []usualRange {
	bare := *h
	bare.Thumb, bare.GussetLength, bare.ThumbLength, bare.WristToCrotch, bare.Palm, bare.Profile = 0, 0, 0, 0, 0, nil
	usual, _ := bare.Fill()
	var list []usualRange
	for _, w := range []struct {
		field        string
		value, usual *units.Length
	}{
		{FieldThumb, &h.Thumb, &usual.Thumb},
		{FieldGussetLength, &h.GussetLength, &usual.GussetLength},
		{FieldThumbLength, &h.ThumbLength, &usual.ThumbLength},
		{FieldWristToCrotch, &h.WristToCrotch, &usual.WristToCrotch},
		{FieldPalm, &h.Palm, &usual.Palm},
	} {
		list = append(list, halfToTwice(w.field, w.value, *w.usual))
	}
	return append(list, h.rangesOfFingers()...)
}

// halfToTwice returns the range from half to twice of the usual value, in whole
// millimetres.
func halfToTwice(field string, value *units.Length, usual units.Length) usualRange {
	half := units.FromMM(math.Round(usual.MM() / 2))
	return usualRange{field, value, half, 4 * half}
}

// outsideRanges returns the ranges that exclude their measurement.
func (h *Hand) outsideRanges() []usualRange {
	var list []usualRange
	for _, w := range h.usualRanges() {
		if w.excludesValue() {
			list = append(list, w)
		}
	}
	if len(list) > 0 {
		return list
	}
	for _, w := range h.rangesByFilling() {
		if w.excludesValue() {
			list = append(list, w)
		}
	}
	return list
}

// unitSlips are the factors that correct a length typed in another unit than the
// one in which it is read, or with the decimal sign one place off.
var unitSlips = map[units.Unit][]float64{
	units.MM: {10, 25.4, 1 / 10.0},
	units.CM: {1 / 10.0, 10, 2.54},
	units.IN: {1 / 2.54, 1 / 25.4, 1 / 10.0, 10},
}

// Instead returns the length that was probably meant by one outside its usual
// range: corrected by the first of unitSlips that brings it inside, 0 if none
// does. typed is the unit in which it is read.
func (h Hand) Instead(q Query, typed units.Unit) units.Length {
	list := func() []usualRange { return append(h.usualRanges(), h.rangesByFilling()...) } // a new value may change the ranges
	for i, w := range list() {
		if w.field != q.Field {
			continue
		}
		was := *w.value
		for _, slip := range unitSlips[typed] {
			*w.value = units.FromMM(was.MM() * slip)
			if list()[i].contains(*w.value) {
				return *w.value
			}
		}
	}
	return 0
}

// queryProfile asks about the first girth that is smaller than one below it by
// more than tapeTolerance: with the thumb laid in, a hand widens up to where the
// thumb parts.
func (h Hand) queryProfile() []Query {
	var widest units.Length
	for _, p := range h.Profile {
		if widest-p.Girth > tapeTolerance {
			return []Query{{Field: FieldProfile, Message: "narrows from " + widest.String() + " to " + p.Girth.String() + " at " + p.Height.String() +
				"; a hand widens up to where the thumb parts. It is used as it is."}}
		}
		widest = max(widest, p.Girth)
	}
	return nil
}

// queryAbove asks about a first girth of Above that is wider than the palm with
// the thumb.
func (h Hand) queryAbove() []Query {
	if len(h.Above) == 0 {
		return nil
	}
	full, _ := h.Fill()
	if first := h.Above[0].Girth; first > full.Palm {
		return []Query{{Field: FieldAbove, Message: "begins with " + first.String() + " without the thumb, but the palm with the thumb is " +
			full.Palm.String() + "; please measure again. It is used as it is."}}
	}
	return nil
}
