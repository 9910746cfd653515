package hand

import (
	"math"

	"thenar/internal/fault"
	"thenar/internal/units"
)

// Finger is one of the four fingers, counted from the thumb's side.
type Finger int

// The fingers. A thumb is none of them.
const (
	Index Finger = iota
	Middle
	Ring
	Little
	fingers
)

// crotches is the number of places at which two fingers part.
const crotches = fingers - 1

// Fingers is the measurements of the four fingers. Zero means not measured.
type Fingers struct {
	Girth  [fingers]units.Length  // round the middle joint (F)
	Length [fingers]units.Length  // from where it parts from its neighbours, half-way if they are not level, to its tip
	Crotch [crotches]units.Length // wrist crease to where the finger and the next one part
}

// The names of the fingers' measurements in a sheet.
var (
	girthFields  = [fingers]string{"hand.fingers.index.girth", "hand.fingers.middle.girth", "hand.fingers.ring.girth", "hand.fingers.little.girth"}
	lengthFields = [fingers]string{"hand.fingers.index.length", "hand.fingers.middle.length", "hand.fingers.ring.length", "hand.fingers.little.length"}
	crotchFields = [crotches]string{"hand.crotches.index_middle", "hand.crotches.middle_ring", "hand.crotches.ring_little"}
)

// FieldGirth returns the name of the finger's girth in a sheet.
func (f Finger) FieldGirth() string { return girthFields[f] }

// FieldLength returns the name of the finger's length in a sheet.
func (f Finger) FieldLength() string { return lengthFields[f] }

// FieldCrotch returns the name in a sheet of the height at which the finger and the
// next one part.
func (f Finger) FieldCrotch() string { return crotchFields[f] }

// FieldsOfFingers lists the names of all measurements of the fingers, in the order of a
// sheet.
func FieldsOfFingers() []string {
	list := make([]string, 0, 2*fingers+crotches)
	for i := range fingers {
		list = append(list, girthFields[i], lengthFields[i])
	}
	return append(list, crotchFields[:]...)
}

// The usual fingers of adults, both sexes: girth at the middle joint over the hand's
// circumference H; length and crotch over the hand's length L. They are ratios of the
// means of Greiner 1991 (1,304 women and 1,003 men); the lengths are differences of
// two distances from the wrist, good to a few mm. Index and middle finger of children
// from 2 years on have the same share of L (Snyder et al. 1977: 0.39 and 0.43); for the
// girths of children there is no source, and no standard deviation that can be
// trusted for anyone's.
var (
	girthOverHand    = [fingers]float64{0.324, 0.328, 0.306, 0.271}
	lengthOverHand   = [fingers]float64{0.385, 0.433, 0.418, 0.322}
	crotchOverLength = [crotches]float64{0.56, 0.56, 0.49}
)

// How what is filled follows from the hand, in words.
var (
	girthFrom  = formulas(girthOverHand[:], "hand circumference")
	lengthFrom = formulas(lengthOverHand[:], "hand length")
	crotchFrom = formulas(crotchOverLength[:], "hand length")
)

func formulas(ratios []float64, of string) []string {
	list := make([]string, len(ratios))
	for i, r := range ratios {
		list[i] = line{slope: r}.formula(of)
	}
	return list
}

// FillFingers returns the fingers with every missing measurement filled, and the list of
// filled values, finger by finger: the girth at the middle joint, the length from the
// mean height of its crotches to the tip, the height of the crotch after it. It never
// changes a measured value. The hand needs no more than Fill does, and Fill leaves the
// fingers alone: only a glove needs them.
func (h Hand) FillFingers() (Fingers, []Filled) {
	f, girth, length, source := h.Fingers, h.girth().value, h.length().value, greiner
	if length < BabyBelow {
		source = unsourced + source
	}
	filled := make([]Filled, 0, 2*fingers+crotches)
	set := func(field string, value *units.Length, ratio float64, of units.Length, from string) {
		if *value == 0 {
			*value = units.FromMM(line{slope: ratio}.at(of.MM()))
			filled = append(filled, Filled{field, *value, from, source})
		}
	}
	for i := range fingers {
		set(girthFields[i], &f.Girth[i], girthOverHand[i], girth, girthFrom[i])
		set(lengthFields[i], &f.Length[i], lengthOverHand[i], length, lengthFrom[i])
		if i < crotches {
			set(crotchFields[i], &f.Crotch[i], crotchOverLength[i], length, crotchFrom[i])
		}
	}
	return f, filled
}

// Tip returns the height of a finger's tip above the wrist crease, of filled fingers: the
// mean height of its crotches and its length. So a tube that begins at one height has
// Tip less that height to cover. The ring finger needs this: its crotch on the little
// finger's side is lower by 0.07 of the hand's length.
func (f *Fingers) Tip(i Finger) units.Length {
	before, after := f.Crotch[max(i-1, 0)], f.Crotch[min(i, crotches-1)]
	return units.FromMM((before.MM()+after.MM())/2) + f.Length[i]
}

// WithoutLittle returns the girth of a tape round the index, middle and ring finger, over
// that of one round all four: taut round circles that stand in a row (our own, no
// source). It is 1 if the fingers are unknown.
func (f *Fingers) WithoutLittle() float64 {
	round := func(to Finger) float64 {
		sum := 0.0 // of the fingers' breadths, without the outer half of the first and the last
		for i := range to + 1 {
			sum += f.Girth[i].MM() / math.Pi
		}
		ends := f.Girth[Index].MM() + f.Girth[to].MM()
		return 2*sum - ends/math.Pi + ends/2
	}
	if f.Girth[Little] == 0 {
		return 1
	}
	return round(Ring) / round(Little)
}

// CheckFingers returns what can't be right of the measured fingers: a negative
// measurement, a finger as wide as the hand or wider, fingers that part above the
// hand's end.
func (h Hand) CheckFingers() fault.Fields {
	var faults fault.Fields
	f, girth, length := h.Fingers, h.girth().value, h.length().value
	for i := range fingers {
		switch g := f.Girth[i]; {
		case g < 0:
			faults.Add(i.FieldGirth(), "is %s; measure the finger round its middle joint", g)
		case girth > 0 && g >= girth:
			faults.Add(i.FieldGirth(), "is %s, not narrower than the hand (%s); measure the finger round its middle joint", g, girth)
		}
		if l := f.Length[i]; l < 0 {
			faults.Add(i.FieldLength(), "is %s; measure from where the fingers part to the tip", l)
		}
	}
	for i := range crotches {
		switch c := f.Crotch[i]; {
		case c < 0:
			faults.Add(i.FieldCrotch(), "is %s; measure from the wrist crease to where the fingers part", c)
		case length > 0 && c >= length:
			faults.Add(i.FieldCrotch(), "is %s, not below the tip of the middle finger (%s); measure from the wrist crease", c, length)
		}
	}
	return faults
}

// QueryFingers asks about the measured fingers, as Queries does about all of the hand.
func (h Hand) QueryFingers() []Query {
	var queries []Query
	for _, w := range h.rangesOfFingers() {
		if w.excludesValue() {
			queries = append(queries, w.query())
		}
	}
	return queries
}

// rangesOfFingers returns the ranges of the fingers: from half to twice of what would
// fill them (common practice, no source). What lies outside was probably typed in
// another unit. There are none for a hand whose fingers were not measured.
func (h *Hand) rangesOfFingers() []usualRange {
	if h.Fingers == (Fingers{}) {
		return nil
	}
	bare := *h
	bare.Fingers = Fingers{}
	usual, _ := bare.FillFingers()
	list := make([]usualRange, 0, 2*fingers+crotches)
	add := func(field string, value *units.Length, usual units.Length) {
		list = append(list, halfToTwice(field, value, usual))
	}
	for i := range fingers {
		add(i.FieldGirth(), &h.Fingers.Girth[i], usual.Girth[i])
		add(i.FieldLength(), &h.Fingers.Length[i], usual.Length[i])
		if i < crotches {
			add(i.FieldCrotch(), &h.Fingers.Crotch[i], usual.Crotch[i])
		}
	}
	return list
}
