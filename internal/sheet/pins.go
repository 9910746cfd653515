package sheet

import (
	"slices"
	"strings"

	"thenar/internal/mitt"
)

// pinKeys returns the keys of the numbers that can be fixed.
func pinKeys() []node {
	var pins node
	for _, n := range mitt.InSheet() {
		pins.plant(n.Key(), node{kind: kindOf(n)})
	}
	return pins.members
}

// kindOf returns the kind of value that a sheet takes for a number.
func kindOf(n mitt.Number) kind {
	switch {
	case !n.List():
		return whole
	case n.Measure() == mitt.Between:
		return rhythm
	}
	return rounds
}

// Pins reads the fixed numbers alone.
func (s Sheet) Pins() (mitt.Pins, error) { return read(s, (*reader).pins) }

// pins reads the fixed numbers; package mitt knows their names and ranges.
func (r *reader) pins() (pins mitt.Pins) {
	for _, n := range mitt.InSheet() {
		if r.sheet.Given(n.Path()) != "" {
			pins.Set(n, r.pin(n)...)
		}
	}
	return pins
}

// pin reads the values of one fixed number, and returns none if they can't be
// used.
func (r *reader) pin(n mitt.Number) []int {
	path := n.Path()
	text := r.sheet.Given(path)
	switch kindOf(n) {
	case rhythm:
		return r.rhythm(path, text)
	case rounds:
		return r.rounds(path)
	}
	v, ok := wholeOf(text)
	if low, high := n.Range(); !ok || v < low || v > high {
		r.faults.Add(path, "is %s; write a whole number from %d to %d", clip(text), low, high)
		return nil
	}
	return []int{v}
}

func (r *reader) rhythm(path, text string) []int {
	var intervals []int
	for _, part := range strings.Split(text, ",") {
		n, ok := wholeOf(strings.TrimSpace(part))
		if !ok || n < mitt.ShortestInterval {
			r.faults.Add(path, "is %s; write the rounds from increase to increase, 2 or more: 3, or 2, 3 in turn", clip(text))
			return nil
		}
		intervals = append(intervals, n)
	}
	if len(intervals) > maxProfile {
		r.faults.Add(path, "has %d intervals; %d are the most", len(intervals), maxProfile)
		return nil
	}
	return intervals
}

// rounds reads a list of rounds.
func (r *reader) rounds(path string) []int {
	text := r.sheet.Given(path)
	if text == "" {
		return nil
	}
	var list []int
	for _, part := range strings.Split(text, ",") {
		n, ok := wholeOf(strings.TrimSpace(part))
		if !ok || n < 1 || n > maxKnitted {
			r.faults.Add(path, "is %s; write the rounds, from the first to the last: 1, 4, 7", clip(text))
			return nil
		}
		list = append(list, n)
	}
	return list
}

// Fixed lists the fixed numbers of a sheet, in the order of a sheet.
func (s Sheet) Fixed() []mitt.Number {
	var list []mitt.Number
	for _, n := range mitt.InSheet() {
		if s.Given(n.Path()) != "" {
			list = append(list, n)
		}
	}
	return list
}

// OfOneHand lists the fixed numbers of a sheet that are counts of one hand, in
// the order of a sheet.
func (s Sheet) OfOneHand() []mitt.Number {
	return slices.DeleteFunc(s.Fixed(), mitt.Number.EveryHand)
}

// ForgetPins lets go of all fixed numbers.
func (s Sheet) ForgetPins() { s.move(mitt.PathPins, "", tree.find(mitt.PathPins)) }
