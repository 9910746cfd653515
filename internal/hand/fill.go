package hand

import (
	"thenar/internal/units"
)

// Filled is a value that was not measured, with the formula that gave it.
type Filled struct {
	Field  string
	Value  units.Length
	From   string // the formula in words: "0.355 × hand length"
	Source string
}

// The sources of the formulas, as shown to people.
const (
	ansur         = "ANSUR II, mean of both sexes (Gordon et al. 2014)"
	ansurWomen    = "ANSUR II, 1,986 women (Gordon et al. 2014)"
	ansurMen      = "ANSUR II, 4,082 men (Gordon et al. 2014)"
	greiner       = "Greiner 1991, ratio of means (NATICK/TR-92/011)"
	snyder        = "Snyder et al. 1977 (UM-HSRI-77-17)"
	snyderBreadth = "hand breadth of Snyder et al. 1977 (UM-HSRI-77-17) × 2.40 of ANSUR II (Gordon et al. 2014)"
	practice      = "common practice, no source"
	unsourced     = "not sourced under 2 years; " // prefix of a source
)

// The hand lengths that divide the ages: below BabyBelow (under 2 years) the
// ratios are not sourced, below the other two wrists are thicker.
const (
	BabyBelow    = 95 * units.Millimetre
	toddlerBelow = 120 * units.Millimetre
	smallBelow   = 145 * units.Millimetre
)

// The ratios that all references share; see Fill.
var (
	thumbGirth, gussetLength    = ratio(0.34, "hand circumference"), ratio(0.33, "hand length")
	thumbLength, thumbFromWrist = ratio(0.355, "hand length"), ratio(0.35, "hand length")
)

// Fill returns the hand with every missing measurement filled, and the list of
// filled values. It never changes a measured value. The hand's circumference H
// comes from the breadth B, else from the size, else from the length L; L comes
// from the size, else from H; wrist W, thumb T and palm P come from H, the other
// lengths from L:
//
//	H = 2.40 B, else 25.4 mm × size, else from L: 1.14 L below 120 mm, 1.11 L
//	    below 145 mm, else L / 0.94
//	L = the length of the size, else 0.94 H
//	W = 0.83 H (0.90 H below 120 mm of hand length, 0.84 H below 145 mm)
//	T = 0.34 H            gusset length = 0.33 L
//	P = H + 0.55 T        thumb = 0.355 L
//	                      wrist to crotch = 0.35 L
//
// The references Women and Men have lines of their own in place of 2.40 B,
// 0.94 H and 0.83 H. Every filled value names its source, or says that there is
// none for a hand below 95 mm. A profile gives P, and the gusset length if that
// is missing. Breadth and size are not filled, since nothing follows from them
// once H and L are known.
func (h Hand) Fill() (Hand, []Filled) {
	filled := make([]Filled, 0, 8)
	set := func(field string, value *units.Length, e estimate) {
		if *value != 0 || e.from == "" {
			return
		}
		*value = e.value
		filled = append(filled, Filled{field, e.value, e.from, e.source})
	}
	set(FieldCircumference, &h.Circumference, h.girth())
	set(FieldLength, &h.Length, h.length())
	set(FieldWrist, &h.Wrist, h.wrist())
	set(FieldThumb, &h.Thumb, thumbGirth.of(h.Circumference, greiner))
	if n := len(h.Profile); n > 0 {
		h.Palm = h.Profile[n-1].Girth
		if h.GussetLength == 0 {
			h.GussetLength = h.Profile[n-1].Height
		}
	}
	set(FieldGussetLength, &h.GussetLength, gussetLength.of(h.Length, practice))
	set(FieldThumbLength, &h.ThumbLength, thumbLength.of(h.Length, snyder))
	set(FieldWristToCrotch, &h.WristToCrotch, thumbFromWrist.of(h.Length, greiner))
	if h.Length != 0 && h.Length < BabyBelow {
		for i := range filled {
			filled[i].Source = unsourced + filled[i].Source
		}
	}
	set(FieldPalm, &h.Palm, estimate{
		units.FromMM(h.Circumference.MM() + 0.55*h.Thumb.MM()),
		"hand circumference + 0.55 × thumb circumference, give or take 5\u00a0%", practice,
	})
	return h, filled
}

// Passage returns the girth to which a cuff must stretch to let the hand
// through, divided by the hand's circumference: 1.07 for adults, 1.09 and 1.12
// for small hands. It is π × clearance diameter / (2.40 × hand breadth) (Snyder
// et al. 1977; from memory, the clearance is the smallest round hole through
// which the hand passes).
func (h Hand) Passage() float64 {
	switch {
	case h.Length < toddlerBelow:
		return 1.12
	case h.Length < smallBelow:
		return 1.09
	}
	return 1.07
}
