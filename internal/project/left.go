package project

import (
	"math"

	"thenar/internal/fit"
	"thenar/internal/mitt"
	"thenar/internal/stitch"
)

// Leaves lists what is still off the wish by more than the tolerance if the mitt
// is gone on with in one way.
type Leaves struct {
	Tolerance float64 // mm
	Girths    []fit.Misfit
	Lengths   []LeftLength
}

// LeftLength is a length that stays off: fabric minus wish in mm, and in rounds.
type LeftLength struct {
	Section stitch.Part
	MM      float64
	Rounds  int
}

// leaves returns what a plan leaves off the wish by more than the tolerance.
func leaves(p *Planned) (Leaves, error) {
	out := Leaves{Tolerance: p.extra.tolerance}
	rows, err := fit.Rows(p.Plan, p.Mitt(), p.extra.bands)
	if err != nil {
		return out, err
	}
	out.Girths = fit.Misfits(rows, out.Tolerance)
	at := map[stitch.Part]mitt.Place{stitch.Hand: mitt.PlaceHandLength}
	for _, one := range fingerPlaces(p) {
		at[one.part] = one.length
	}
	if p.Parted() {
		at[p.Mound()] = mitt.PlaceGussetLength
	}
	if p.Thumbed() {
		at[stitch.Thumb] = mitt.PlaceThumbLength
	}
	for _, part := range stitch.Parts() {
		place, has := at[part]
		if off := p.Off[place]; has && math.Abs(off) > out.Tolerance+1e-9 {
			out.Lengths = append(out.Lengths, LeftLength{part, off, int(math.Round(math.Abs(off) * p.Gauge.Rounds))})
		}
	}
	return out, nil
}

// fingerPlace is a part of a glove above the hand, and where its length is compared.
type fingerPlace struct {
	part   stitch.Part
	length mitt.Place
}

// fingerPlaces returns the parts above the hand of a glove, in the order worked; none of
// another mitt.
func fingerPlaces(p *Planned) []fingerPlace {
	if !p.Fingered() {
		return nil
	}
	var list []fingerPlace
	for _, part := range stitch.Parts() {
		if f, ok := mitt.FingerOf(part); ok {
			_, length := mitt.PlacesOfFinger(f)
			list = append(list, fingerPlace{part, length})
		} else if part == mitt.LittleLowerRounds.Part() && p.Fingers.Lower > 0 {
			list = append(list, fingerPlace{part, mitt.PlaceUpperHand})
		} else if part == stitch.Cap && p.Fingers.Cap != nil {
			list = append(list, fingerPlace{part, mitt.PlaceCapLength})
		}
	}
	return list
}
