// Package hand holds the measurements of a hand, says which of them can't be
// right, and fills what is missing from published ratios.
package hand

import (
	"thenar/internal/fault"
	"thenar/internal/units"
)

// Hand is the measurements of one hand; zero means not measured.
type Hand struct {
	Circumference units.Length // over the knuckles, without the thumb (H)
	Wrist         units.Length // over the wrist bones (W)
	Thumb         units.Length // over the thumb's joint (T)
	Length        units.Length // wrist crease to tip of the middle finger (L)
	GussetLength  units.Length // along the thumb's side, wrist bone to where the thumb parts
	ThumbLength   units.Length // from where the thumb parts to its tip
	WristToCrotch units.Length // wrist crease to where the thumb parts
	Palm          units.Length // where the thumb parts, thumb laid along the palm (P)
	Profile       []Point      // girths between base and parting, thumb laid in
}

// Point is one girth of the profile at a height above the base of the gusset.
type Point struct {
	Height units.Length
	Girth  units.Length
}

// The names of the measurements as they stand in a sheet.
const (
	FieldCircumference = "hand.hand_circumference"
	FieldWrist         = "hand.wrist_circumference"
	FieldThumb         = "hand.thumb_circumference"
	FieldLength        = "hand.hand_length"
	FieldGussetLength  = "hand.gusset_length"
	FieldThumbLength   = "hand.thumb_length"
	FieldWristToCrotch = "hand.wrist_to_crotch"
	FieldPalm          = "hand.palm_and_thumb_circumference"
	FieldProfile       = "hand.profile"
)

// Query is a measurement that is unusual but possible: it is asked about and
// used as it is.
type Query struct {
	Field   string
	Message string
}

// Check refuses what can't be a hand: a missing or non-positive hand
// circumference, a thumb as wide as the hand or wider, a profile that does
// not climb. Lengths are checked for range where they are parsed.
func (h Hand) Check() fault.Fields {
	var faults fault.Fields
	if h.Circumference <= 0 {
		faults.Add(FieldCircumference, "is missing; measure round the knuckles without the thumb")
	} else if h.Thumb >= h.Circumference {
		faults.Add(FieldThumb, "is %s, not narrower than the hand (%s); measure the thumb round its joint", h.Thumb, h.Circumference)
	}
	h.checkProfile(&faults)
	return faults
}

func (h Hand) checkProfile(faults *fault.Fields) {
	if len(h.Profile) == 0 {
		return
	}
	if len(h.Profile) == 1 {
		faults.Add(FieldProfile, "has one height; give at least two, the last where the thumb parts")
	}
	for i := 1; i < len(h.Profile); i++ {
		if h.Profile[i].Height <= h.Profile[i-1].Height {
			faults.Add(FieldProfile, "goes from %s to %s; write the heights from the base of the gusset upwards",
				h.Profile[i-1].Height, h.Profile[i].Height)
			return
		}
	}
	if last := h.Profile[len(h.Profile)-1].Girth; h.Palm != 0 && h.Palm != last {
		faults.Add(FieldPalm, "is %s, but the profile ends at %s; leave one of them out", h.Palm, last)
	}
}

// window is a range of plausible values and where it comes from.
type window struct {
	field    string
	value    units.Length
	low, top units.Length
}

// grownUp is the hand length from which the adult windows hold.
const grownUp = 150 * units.Millimetre

// Queries asks about what is implausible in the measured values. For hands
// from 150 mm long the windows are the range of adults in ANSUR II (Gordon et
// al. 2014; 1,986 women, 4,082 men); for smaller ones the means ± 3 SD of
// children of 2 to 13½ years (Snyder et al. 1977), hand girth from breadth.
func (h Hand) Queries() []Query {
	var queries []Query
	windows := []window{
		{FieldCircumference, h.Circumference, 150, 250},
		{FieldLength, h.Length, 140, 240},
		{FieldWrist, h.Wrist, 120, 220},
	}
	if h.length() < grownUp {
		windows = []window{
			{FieldCircumference, h.Circumference, 94, 220},
			{FieldLength, h.Length, 83, 200},
			{FieldWrist, h.Wrist, 88, 182},
		}
	}
	for _, w := range windows {
		if low, top := w.low*units.Millimetre, w.top*units.Millimetre; w.value != 0 && (w.value < low || w.value > top) {
			queries = append(queries, Query{w.field, w.value.String() + " is outside the usual " +
				low.String() + " to " + top.String() + "; please measure again. It is used as it is."})
		}
	}
	if h.Wrist >= h.Circumference {
		queries = append(queries, Query{FieldWrist, "the wrist (" + h.Wrist.String() + ") is as wide as the hand (" +
			h.Circumference.String() + "); in 6,068 adults it never was. It is used as it is."})
	}
	return queries
}
