package sheet

import (
	"strings"

	"thenar/internal/hand"
	"thenar/internal/units"
)

// Hand reads the hand alone, so that it can be drawn before the rest of the sheet
// is right. It fails if the hand can't be read, or can't be a hand.
func (s Sheet) Hand() (hand.Hand, error) {
	h, err := read(s, (*reader).hand)
	if err == nil {
		err = h.Check().Err()
	}
	return h, err
}

// Measured reads what is given of the hand, even if it is too little for a plan.
func (s Sheet) Measured() (hand.Hand, error) { return read(s, (*reader).measured) }

// hand reads the hand that a plan is made for.
func (r *reader) hand() hand.Hand {
	r.girthGiven()
	return r.measured()
}

// girthGiven asks for the circumference, unless it can be worked out from
// something else: a size, a breadth, or the length together with whose averages
// to take.
func (r *reader) girthGiven() {
	given := func(path string) bool { return r.sheet.Given(path) != "" }
	switch {
	case given(hand.FieldCircumference), given(hand.FieldSize), given(hand.FieldBreadth),
		given(hand.FieldReference) && given(hand.FieldLength):
	default:
		r.faults.Add(hand.FieldCircumference, "is missing; measure round the knuckles without the thumb")
	}
}

func (r *reader) measured() hand.Hand {
	h := hand.Hand{
		Circumference: r.length(hand.FieldCircumference),
		Wrist:         r.length(hand.FieldWrist), Thumb: r.length(hand.FieldThumb),
		Length: r.length(hand.FieldLength), GussetLength: r.length(hand.FieldGussetLength),
		ThumbLength: r.length(hand.FieldThumbLength), WristToCrotch: r.length(hand.FieldWristToCrotch),
		Palm: r.length(hand.FieldPalm), Breadth: r.length(hand.FieldBreadth),
		Size: r.number(hand.FieldSize, ""),
	}
	if ref := r.choice(hand.FieldReference, find(hand.FieldReference)); ref != "both" {
		h.Reference = hand.Reference(ref)
	}
	h.Profile = r.points(hand.FieldProfile, "the base of the gusset")
	h.Above = r.points(hand.FieldAbove, "where the thumb parts")
	h.Fingers = r.fingers()
	return h
}

// fingers reads what is measured of the four fingers.
func (r *reader) fingers() (f hand.Fingers) {
	for i := hand.Index; i <= hand.Little; i++ {
		f.Girth[i], f.Length[i] = r.length(i.FieldGirth()), r.length(i.FieldLength())
	}
	for i := hand.Index; i < hand.Little; i++ {
		f.Crotch[i] = r.length(i.FieldCrotch())
	}
	return f
}

// points reads the girths of a profile; from names the place where heights begin.
func (r *reader) points(path, from string) []hand.Point {
	var points []hand.Point
	for i := range r.sheet.Rows(path) {
		at := row(path, i)
		points = append(points, hand.Point{
			Height: r.height(at+".height", "give the height above "+from+", or leave the row out"),
			Girth:  r.required(at+".girth", "give the girth at this height, or leave the row out"),
		})
	}
	return points
}

// height reads a length that may be 0: the place where heights begin.
func (r *reader) height(path, why string) units.Length {
	text := r.sheet.Given(path)
	if strings.Trim(text, "0.,") == "" && strings.Contains(text, "0") {
		return 0
	}
	return r.required(path, why)
}
