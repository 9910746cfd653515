package hand

import (
	"math"

	"thenar/internal/units"
)

// Query is a measurement that is unusual but possible: it is asked about and
// used as it is.
type Query struct {
	Field   string
	Message string

	Low, Top units.Length // the usual range of a measurement outside it; else 0
}

// Outside reports whether it asks about a measurement outside its usual range.
func (q Query) Outside() bool { return q.Top != 0 }

// window is a range of plausible values of a measurement.
type window struct {
	field    string
	value    *units.Length
	low, top units.Length
}

func (w window) outside() bool { return *w.value != 0 && !w.holds(*w.value) }

func (w window) holds(l units.Length) bool { return l >= w.low && l <= w.top }

// grownUp is the hand length from which the adult windows hold.
const grownUp = 150 * units.Millimetre

// tapeSlip is how much a girth may fall from one height of the profile to a
// higher one before it is asked about: as much as two goes with a tape may
// differ (common practice, no source).
const tapeSlip = 5 * units.Millimetre

// Queries asks about what is implausible in the measured values. For hands
// from 150 mm long the windows are the range of adults in ANSUR II (Gordon et
// al. 2014; 1,986 women, 4,082 men); for smaller ones the means ± 3 SD of
// children of 2 to 13½ years (Snyder et al. 1977), hand girth from breadth.
// The other measurements of a hand that is plausible are asked about below half
// and above twice of what fills them (common practice, no source): that is no
// odd hand but another unit.
// It also asks about a wrist as wide as the hand, a profile that narrows on
// its way to the parting, and a hand that is wider above the parting than at
// it with the thumb.
func (h Hand) Queries() []Query {
	var queries []Query
	for _, w := range h.outside() {
		queries = append(queries, Query{w.field, w.value.String() + " is outside the usual " +
			w.low.String() + " to " + w.top.String() + "; please measure again. It is used as it is.", w.low, w.top})
	}
	if girth := h.girth().value; h.Wrist != 0 && h.Wrist >= girth {
		queries = append(queries, Query{Field: FieldWrist, Message: "the wrist (" + h.Wrist.String() + ") is as wide as the hand (" +
			girth.String() + "); in 6,068 adults it never was. It is used as it is."})
	}
	queries = append(queries, h.queryProfile()...)
	return append(queries, h.queryAbove()...)
}

// windows are the plausible ranges for a hand of this length.
func (h *Hand) windows() []window {
	const mm = units.Millimetre
	if h.length().value < grownUp {
		return []window{
			{FieldCircumference, &h.Circumference, 94 * mm, 220 * mm},
			{FieldBreadth, &h.Breadth, 39 * mm, 92 * mm},
			{FieldLength, &h.Length, 83 * mm, 200 * mm},
			{FieldWrist, &h.Wrist, 88 * mm, 182 * mm},
		}
	}
	return []window{
		{FieldCircumference, &h.Circumference, 150 * mm, 250 * mm},
		{FieldBreadth, &h.Breadth, 67 * mm, 105 * mm},
		{FieldLength, &h.Length, 140 * mm, 240 * mm},
		{FieldWrist, &h.Wrist, 120 * mm, 220 * mm},
	}
}

// shares are the ranges of what is measured beside a plausible hand: from half
// to twice of what would fill it, in whole millimetres.
func (h *Hand) shares() []window {
	bare := *h
	bare.Thumb, bare.GussetLength, bare.ThumbLength, bare.WristToCrotch, bare.Palm, bare.Profile = 0, 0, 0, 0, 0, nil
	usual, _ := bare.Fill()
	var list []window
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
		half := units.FromMM(math.Round(w.usual.MM() / 2))
		list = append(list, window{w.field, w.value, half, 4 * half})
	}
	return list
}

// outside are the windows in which a measurement does not lie.
func (h *Hand) outside() []window {
	var list []window
	for _, w := range h.windows() {
		if w.outside() {
			list = append(list, w)
		}
	}
	if len(list) > 0 {
		return list
	}
	for _, w := range h.shares() {
		if w.outside() {
			list = append(list, w)
		}
	}
	return list
}

// slips are by how much a length is wrong that was typed in another unit than
// the one it is read in, or with its decimal sign one place off.
var slips = map[units.Unit][]float64{
	units.MM: {10, 25.4, 1 / 10.0},
	units.CM: {1 / 10.0, 10, 2.54},
	units.IN: {1 / 2.54, 1 / 25.4, 1 / 10.0, 10},
}

// Instead is the length that may be meant by one that is asked about as outside
// its range: after the first slip of the unit in which it was typed with which
// it lies inside; 0 without one.
func (h Hand) Instead(q Query, typed units.Unit) units.Length {
	list := func() []window { return append(h.windows(), h.shares()...) } // depend on each other
	for i, w := range list() {
		if w.field != q.Field {
			continue
		}
		was := *w.value
		for _, slip := range slips[typed] {
			*w.value = units.FromMM(was.MM() * slip)
			if list()[i].holds(*w.value) {
				return *w.value
			}
		}
	}
	return 0
}

// queryProfile asks about the first girth that lies under a lower one by more
// than the tape's slip: with the thumb laid in, a hand widens to the parting.
func (h Hand) queryProfile() []Query {
	var widest units.Length
	for _, p := range h.Profile {
		if widest-p.Girth > tapeSlip {
			return []Query{{Field: FieldProfile, Message: "narrows from " + widest.String() + " to " + p.Girth.String() + " at " + p.Height.String() +
				"; with the thumb laid in, a hand widens up to where the thumb parts. It is used as it is."}}
		}
		widest = max(widest, p.Girth)
	}
	return nil
}

// queryAbove asks about a first girth above the parting that is wider than
// the palm with the thumb.
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
