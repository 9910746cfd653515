package hand

import "thenar/internal/units"

// Query is a measurement that is unusual but possible: it is asked about and
// used as it is.
type Query struct {
	Field   string
	Message string
}

// window is a range of plausible values, in mm.
type window struct {
	field    string
	value    units.Length
	low, top units.Length
}

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
// It also asks about a wrist as wide as the hand, a profile that narrows on
// its way to the parting, and a hand that is wider above the parting than at
// it with the thumb.
func (h Hand) Queries() []Query {
	var queries []Query
	for _, w := range h.windows() {
		if low, top := w.low*units.Millimetre, w.top*units.Millimetre; w.value != 0 && (w.value < low || w.value > top) {
			queries = append(queries, Query{w.field, w.value.String() + " is outside the usual " +
				low.String() + " to " + top.String() + "; please measure again. It is used as it is."})
		}
	}
	if girth := h.girth().value; h.Wrist != 0 && h.Wrist >= girth {
		queries = append(queries, Query{FieldWrist, "the wrist (" + h.Wrist.String() + ") is as wide as the hand (" +
			girth.String() + "); in 6,068 adults it never was. It is used as it is."})
	}
	queries = append(queries, h.queryProfile()...)
	return append(queries, h.queryAbove()...)
}

// windows are the plausible ranges for a hand of this length.
func (h Hand) windows() []window {
	if h.length().value < grownUp {
		return []window{
			{FieldCircumference, h.Circumference, 94, 220},
			{FieldBreadth, h.Breadth, 39, 92},
			{FieldLength, h.Length, 83, 200},
			{FieldWrist, h.Wrist, 88, 182},
		}
	}
	return []window{
		{FieldCircumference, h.Circumference, 150, 250},
		{FieldBreadth, h.Breadth, 67, 105},
		{FieldLength, h.Length, 140, 240},
		{FieldWrist, h.Wrist, 120, 220},
	}
}

// queryProfile asks about the first girth that lies under a lower one by more
// than the tape's slip: with the thumb laid in, a hand widens to the parting.
func (h Hand) queryProfile() []Query {
	var widest units.Length
	for _, p := range h.Profile {
		if widest-p.Girth > tapeSlip {
			return []Query{{FieldProfile, "narrows from " + widest.String() + " to " + p.Girth.String() + " at " + p.Height.String() +
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
		return []Query{{FieldAbove, "begins with " + first.String() + " without the thumb, but the palm with the thumb is " +
			full.Palm.String() + "; please measure again. It is used as it is."}}
	}
	return nil
}
