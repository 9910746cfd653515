package project

import (
	"math"
	"slices"

	"thenar/internal/fit"
	"thenar/internal/hand"
	"thenar/internal/mitt"
	"thenar/internal/stitch"
	"thenar/internal/tryon"
)

// Leaves lists what is still off the wish by more than the tolerance if the mitt
// is gone on with in one way.
type Leaves struct {
	Tolerance float64 // mm
	Girths    []fit.Misfit
	Lengths   []LeftLength
	AsPlanned int // so many more were off before the try, and nobody spoke of them
}

// LeftLength is a length that stays off: fabric minus wish in mm, and in rounds.
type LeftLength struct {
	Section stitch.Part
	MM      float64
	Rounds  int
}

// leaves returns what a plan leaves off the wish by more than the tolerance. What was just
// so in the plan before the try, and of which no accepted correction speaks, is only counted.
func leaves(p, was *Planned, accepted []tryon.Correction) (Leaves, error) {
	out, err := allLeft(p)
	if err != nil {
		return out, err
	}
	before, err := allLeft(was)
	if err != nil {
		return out, err
	}
	all := len(out.Girths) + len(out.Lengths)
	out.Girths = slices.DeleteFunc(out.Girths, func(g fit.Misfit) bool {
		return slices.Contains(before.Girths, g) && len(unasked([]string{zoneOf(g.Section)}, accepted)) > 0
	})
	out.Lengths = slices.DeleteFunc(out.Lengths, func(l LeftLength) bool {
		return slices.Contains(before.Lengths, l) && len(unasked([]string{"length"}, accepted)) > 0
	})
	out.AsPlanned = all - len(out.Girths) - len(out.Lengths)
	return out, nil
}

// zoneOf returns the name of the zone to which the girth of a part belongs.
func zoneOf(part stitch.Part) string {
	if part.Over() == stitch.OverMound {
		return "gusset"
	}
	return part.Words()
}

// allLeft returns all that a plan leaves off the wish.
func allLeft(p *Planned) (Leaves, error) {
	out := Leaves{Tolerance: p.extra.tolerance}
	rows, err := fit.Rows(p.Plan, p.Mitt(), p.extra.bands)
	if err != nil {
		return out, err
	}
	for from := 0; from < len(rows); {
		to := from
		for to < len(rows) && rows[to].Section == rows[from].Section {
			to++
		}
		out.Girths = append(out.Girths, fit.Misfits(rows[from:to], p.within(rows[from].Section))...)
		from = to
	}
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
		if off := p.lengthOff(place); has && math.Abs(off) > out.Tolerance+1e-9 {
			out.Lengths = append(out.Lengths, LeftLength{part, off, int(math.Round(math.Abs(off) * p.Gauge.Rounds))})
		}
	}
	return out, nil
}

// within is by how much a part may be off in girth and fit.
func (p *Planned) within(part stitch.Part) float64 {
	if _, finger := mitt.FingerOf(part); finger {
		return min(p.extra.tolerance, fingerTolerance/p.Gauge.Stitches)
	}
	return p.extra.tolerance
}

// lengthOff returns by how much a length is off its wish, in mm. Where a finger ends before
// its tip is a matter of choice: a number of rounds that is fixed for it is the wish.
func (p *Planned) lengthOff(at mitt.Place) float64 {
	if !p.Fingered() {
		return p.Off[at]
	}
	is, wish := p.Thumb.Rounds, p.Pins.ThumbRounds
	ends := at == mitt.PlaceThumbLength && !p.Thumb.Closed
	for i := range p.Fingers.Each {
		if _, length := mitt.PlacesOfFinger(hand.Finger(i)); at == length {
			f := &p.Fingers.Each[i]
			is, wish, ends = f.Rounds, p.Pins.Fingers[i].Rounds, !f.Closed
		}
	}
	if !ends || !wish.On {
		return p.Off[at]
	}
	return float64(is-wish.N) / p.Gauge.Rounds
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
		} else if part == mitt.CapRounds.Part() && p.Fingers.Cap != nil {
			list = append(list, fingerPlace{part, mitt.PlaceCapLength})
		}
	}
	return list
}
