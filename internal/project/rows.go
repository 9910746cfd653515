package project

import (
	"slices"
	"strconv"

	"thenar/internal/chart"
	"thenar/internal/fault"
	"thenar/internal/mitt"
	"thenar/internal/stitch"
)

// pairOf returns the two rows, the first of the right side, of which a row is one.
func pairOf(row int) (first, last int) {
	first = (row-1)/2*2 + 1
	return first, first + 1
}

// pairChanged puts in or takes out two rows, one of either side, so that the others face
// as they did. Rows change no count here: a row that does is refused.
func pairChanged(rounds []stitch.Round, c chart.Change) ([]stitch.Round, []chart.Edit, error) {
	first, last := pairOf(c.Round)
	last = min(last, len(rounds))
	pair := rounds[first-1 : last]
	for _, r := range pair {
		if r.In() != r.Out() || r.Held() > 0 {
			return nil, nil, fault.New(fault.Invalid, "Row %d changes the stitches. Rows go in or out two by two: choose another pair.", c.Round)
		}
	}
	out := slices.Concat(rounds[:last], pair, rounds[last:])
	if c.Kind == chart.Remove {
		if len(rounds) <= len(pair) {
			return nil, nil, fault.New(fault.Invalid, "The %s has only these rows.", c.Section.Words())
		}
		out = slices.Concat(rounds[:first-1], rounds[last:])
	}
	n, ok := mitt.RoundsOf(c.Section)
	if !ok {
		return nil, nil, fault.New(fault.Invalid, "The rows of the %s are no number that can be fixed.", c.Section.Words())
	}
	return out, []chart.Edit{fix(n, strconv.Itoa(len(out)))}, nil
}
