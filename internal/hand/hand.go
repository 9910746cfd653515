// Package hand has the measurements of a hand. It refuses impossible ones, asks
// about unlikely ones, and fills missing ones from published averages.
package hand

import (
	"thenar/internal/fault"
	"thenar/internal/units"
)

// Hand is the measurements of one hand. Zero means not measured.
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

	Breadth   units.Length // straight over the heads of the knuckles, without the thumb (B)
	Size      float64      // glove size of EN 420 and EN ISO 21420, 4 to 13 in steps of ½
	Reference Reference    // whose averages fill missing measurements
	Above     []Point      // girths above where the thumb parts, without it
	Fingers   Fingers      // the four fingers
}

// Point is a girth at a height: in Profile above the base of the gusset, in Above
// above where the thumb parts.
type Point struct {
	Height units.Length
	Girth  units.Length
}

// The names of the measurements in a sheet.
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
	FieldBreadth       = "hand.hand_breadth"
	FieldSize          = "hand.size"
	FieldReference     = "hand.reference"
	FieldAbove         = "hand.profile_above"
)

// maxAbove is the most girths that Above may have.
const maxAbove = 50

// Check returns what can't be right: a circumference that is neither measured nor
// follows from breadth, size or length; a breadth of half the circumference or
// more; a thumb as wide as the hand, measured or filled, or wider; an unknown
// size or reference; a profile whose heights don't climb; fingers that can't be
// right. The range of a length is checked where it is parsed.
func (h Hand) Check() fault.Fields {
	var faults fault.Fields
	h.checkGirth(&faults)
	h.checkThumb(&faults)
	return append(faults, h.checkRest()...)
}

// CheckGiven checks a hand like Check, but accepts one without circumference,
// breadth and size. A thumb is not compared with such a hand.
func (h Hand) CheckGiven() fault.Fields {
	if h.Circumference == 0 && h.Breadth == 0 && h.Size == 0 {
		return h.checkRest()
	}
	return h.Check()
}

// checkRest checks all but circumference, breadth and thumb.
func (h Hand) checkRest() fault.Fields {
	var faults fault.Fields
	if h.Size != 0 && !isSize(h.Size) {
		faults.Add(FieldSize, "is %g; write a glove size from 4 to 13, whole or half: 7 or 7.5", h.Size)
	}
	if _, known := byReference[h.Reference]; !known {
		faults.Add(FieldReference, "is not known; write women or men, or leave it out for both")
	}
	h.checkProfile(&faults)
	h.checkAbove(&faults)
	return append(faults, h.CheckFingers()...)
}

// checkGirth checks the circumference and the breadth. A tape round the hand goes
// over it and back under it, so it is longer than twice the breadth.
func (h Hand) checkGirth(faults *fault.Fields) {
	given := h.Breadth != 0 || h.Size != 0 || h.Length > 0
	if h.Circumference < 0 || h.Circumference == 0 && !given {
		faults.Add(FieldCircumference, "is missing; measure round the knuckles without the thumb")
	}
	if h.Breadth < 0 {
		faults.Add(FieldBreadth, "is %s; measure straight over the knuckles without the thumb", h.Breadth)
	}
	if h.Circumference > 0 && h.Breadth > 0 && 2*h.Breadth >= h.Circumference {
		faults.Add(FieldBreadth, "is %s, half of the way round (%s) or more; measure both again",
			h.Breadth, h.Circumference)
		faults.Add(FieldCircumference, "is %s, not more than twice the breadth of the hand (%s); measure both again",
			h.Circumference, h.Breadth)
	}
}

func (h Hand) checkThumb(faults *fault.Fields) {
	girth := h.girth()
	if girth.value <= 0 || h.Thumb < girth.value {
		return
	}
	wide := girth.value.String()
	if girth.from != "" {
		wide += ", filled: " + girth.from
	}
	faults.Add(FieldThumb, "is %s, not narrower than the hand (%s); measure the thumb round its joint", h.Thumb, wide)
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

func (h Hand) checkAbove(faults *fault.Fields) {
	if len(h.Above) > maxAbove {
		faults.Add(FieldAbove, "has %d heights; %d are the most", len(h.Above), maxAbove)
		return
	}
	below := units.Length(0)
	for _, p := range h.Above {
		if p.Height <= below {
			faults.Add(FieldAbove, "goes from %s to %s; write the heights above where the thumb parts, upwards from there",
				below, p.Height)
			return
		}
		if p.Girth <= 0 {
			faults.Add(FieldAbove, "has no girth at %s; measure round the hand there, or leave the row out", p.Height)
			return
		}
		below = p.Height
	}
}
