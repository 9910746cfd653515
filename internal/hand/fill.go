package hand

import (
	"fmt"

	"thenar/internal/units"
)

// Filled is a value that was not measured, with the ratio that gave it.
type Filled struct {
	Field  string
	Value  units.Length
	From   string // the formula in words: "0.355 × hand length"
	Source string
}

// The sources of the ratios, as they are shown.
const (
	ansur    = "ANSUR II, mean of both sexes (Gordon et al. 2014)"
	greiner  = "Greiner 1991, ratio of means (NATICK/TR-92/011)"
	snyder   = "Snyder et al. 1977 (UM-HSRI-77-17)"
	practice = "common practice, no source"
)

// The hand lengths that part the ages: below Baby the ratios are not sourced
// (under 2 years), below Toddler and Small wrists are thicker.
const (
	Baby    = 95 * units.Millimetre
	Toddler = 120 * units.Millimetre
	Small   = 145 * units.Millimetre
)

// Fill gives the hand with every missing measurement filled, and the list of
// what was filled. Wrist W, thumb T and palm P are filled from the hand's
// circumference H, lengths from the hand's length L:
//
//	L = 0.94 H            W = 0.83 H (0.90 H below 120 mm of hand length,
//	T = 0.34 H                0.84 H from 120 to 145 mm)
//	P = H + 0.55 T        gusset length = 0.33 L
//	thumb = 0.355 L       wrist to crotch = 0.35 L
//
// Sources stand beside each value. A profile gives P, and the gusset length
// if that is missing.
func (h Hand) Fill() (Hand, []Filled) {
	filled := make([]Filled, 0, 7)
	set := func(field string, value *units.Length, of units.Length, ratio float64, what, source string) {
		if *value != 0 {
			return
		}
		*value = units.FromMM(ratio * of.MM())
		if h.Length != 0 && h.Length < Baby {
			source = "not sourced under 2 years; " + source
		}
		filled = append(filled, Filled{field, *value, fmt.Sprintf("%g × %s", ratio, what), source})
	}
	set(FieldLength, &h.Length, h.Circumference, lengthRatio, "hand circumference", ansur)
	wrist, source := wristRatio(h.Length)
	set(FieldWrist, &h.Wrist, h.Circumference, wrist, "hand circumference", source)
	set(FieldThumb, &h.Thumb, h.Circumference, 0.34, "hand circumference", greiner)
	if n := len(h.Profile); n > 0 {
		h.Palm = h.Profile[n-1].Girth
		if h.GussetLength == 0 {
			h.GussetLength = h.Profile[n-1].Height
		}
	}
	set(FieldGussetLength, &h.GussetLength, h.Length, 0.33, "hand length", practice)
	set(FieldThumbLength, &h.ThumbLength, h.Length, 0.355, "hand length", snyder)
	set(FieldWristToCrotch, &h.WristToCrotch, h.Length, 0.35, "hand length", greiner)
	if h.Palm == 0 {
		h.Palm = units.FromMM(h.Circumference.MM() + 0.55*h.Thumb.MM())
		filled = append(filled, Filled{FieldPalm, h.Palm, "hand circumference + 0.55 × thumb circumference, give or take 5 %", practice})
	}
	return h, filled
}

// lengthRatio is hand length over hand circumference, sex unknown.
const lengthRatio = 0.94

// length is the hand's length, filled if it was not measured.
func (h Hand) length() units.Length {
	if h.Length != 0 {
		return h.Length
	}
	return units.FromMM(lengthRatio * h.Circumference.MM())
}

// wristRatio is the wrist's share of the hand's circumference by hand length:
// small children have thicker wrists.
func wristRatio(length units.Length) (float64, string) {
	switch {
	case length < Toddler:
		return 0.90, snyder
	case length < Small:
		return 0.84, snyder
	}
	return 0.83, ansur
}

// Passage is the girth that a cuff must reach to let the hand through, as a
// factor of the hand's circumference: 1.07 for adults, 1.09 and 1.12 for
// small hands. It is π × the clearance diameter over 2.40 × hand breadth
// (Snyder et al. 1977; that clearance is the smallest round hole that the
// hand passes is from memory).
func (h Hand) Passage() float64 {
	switch {
	case h.Length < Toddler:
		return 1.12
	case h.Length < Small:
		return 1.09
	}
	return 1.07
}
