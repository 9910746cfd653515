package app

import (
	"strings"

	"thenar/internal/fault"
	"thenar/internal/shaping"
	"thenar/internal/words"
)

// Spreading is a number of increases or decreases to spread evenly.
type Spreading struct {
	Stitches           int    // on the needles
	Increase, Decrease *int   // how many; exactly one of the two is set
	Flat               bool   // back and forth, with plain stitches at both ends
	With               string // m1 or kfb, k2tog or ssk; empty: m1, k2tog
}

// Spread is the runs of plain stitches between the changes, in the order
// worked, and the instructions in words.
type Spread struct {
	Intervals []int  `json:"intervals"`
	Words     string `json:"words"`
}

// Evenly returns the most even spread over a round, or over a row if ask.Flat.
func Evenly(ask Spreading) (Spread, error) {
	var faults fault.Fields
	if ask.Stitches < 1 || ask.Stitches > maxShapeStitches {
		faults.Add("stitches", "is %d; write a whole number from 1 to %d", ask.Stitches, maxShapeStitches)
	}
	if (ask.Increase == nil) == (ask.Decrease == nil) {
		faults.Add("increase", "or decrease: give exactly one of the two")
	}
	s, how := ask.spread(&faults)
	if err := faults.Err(); err != nil {
		return Spread{}, err
	}
	runs, err := shaping.Evenly(s)
	if err != nil {
		return Spread{}, fault.Fields{{Path: ask.event(), Message: err.Error()}}
	}
	return Spread{append([]int{}, runs...), words.Evenly(runs, how, ask.Flat)}, nil
}

// event returns the name of the field that says how many changes there are.
func (a Spreading) event() string {
	if a.Decrease != nil {
		return "decrease"
	}
	return "increase"
}

// spread checks a, and returns the spread to solve and the stitch to work it
// with.
func (a Spreading) spread(faults *fault.Fields) (s shaping.Spread, with string) {
	s = shaping.Spread{Stitches: a.Stitches, Flat: a.Flat}
	uses, usual, events := map[string]int{"m1": 0, "kfb": 1}, "m1", a.Increase
	if a.Decrease != nil {
		uses, usual, events = map[string]int{"k2tog": 2, "ssk": 2}, "k2tog", a.Decrease
	}
	if events != nil {
		s.Events = *events
	}
	if with = strings.ToLower(a.With); with == "" {
		with = usual
	}
	var known bool
	if s.Uses, known = uses[with]; !known {
		faults.Add("with", "is %q; write m1 or kfb to increase, k2tog to decrease", with)
	}
	if s.Events < 1 || s.Events > maxShapeStitches {
		faults.Add(a.event(), "is %d; write a whole number from 1 to %d", s.Events, maxShapeStitches)
	}
	return s, with
}
