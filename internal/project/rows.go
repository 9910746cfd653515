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

// pairChanged puts in two plain rows above the pair of a row, or takes that pair out, so
// that the others face as they did. A pair that changes the count is not taken out.
func pairChanged(p *mitt.Plan, rounds []stitch.Round, c chart.Change) ([]stitch.Round, []chart.Edit, error) {
	first, last := pairOf(c.Round)
	last = min(last, len(rounds))
	out := slices.Concat(rounds[:last], pairBetween(rounds, last), rounds[last:])
	if c.Kind == chart.Remove {
		for _, r := range rounds[first-1 : last] {
			if !keeps(r) {
				return nil, nil, fault.New(fault.Invalid, "Rows %d and %d change the stitches. Rows come out two by two: choose another pair.", first, last)
			}
		}
		if last-first+1 == len(rounds) {
			return nil, nil, fault.New(fault.Invalid, "The %s has only these rows.", c.Section.Words())
		}
		out = slices.Concat(rounds[:first-1], rounds[last:])
	}
	n, ok := mitt.RoundsOf(c.Section)
	if !ok {
		return nil, nil, fault.New(fault.Invalid, "The rows of the %s are no number that can be fixed.", c.Section.Words())
	}
	edits := []chart.Edit{fix(n, strconv.Itoa(len(out)))}
	if c.Section.Marked() {
		list := p.FromBase(len(out), changes(out))
		out, edits = p.GussetWorked(len(out), list), append(edits, listed(list))
	}
	return out, edits, nil
}

// keeps reports whether a row keeps the count and all its stitches.
func keeps(r stitch.Round) bool { return r.In() == r.Out() && r.Held() == 0 }

// pairBetween returns two rows to put in above row at, the second of a pair: they are
// worked like the pair above or like that pair itself, if it keeps the count, else plain.
func pairBetween(rounds []stitch.Round, at int) []stitch.Round {
	for _, i := range []int{at, at - 2} {
		if i < 0 || i+2 > len(rounds) {
			continue
		}
		if pair := rounds[i : i+2]; keeps(pair[0]) && keeps(pair[1]) && pair[0].In() == rounds[at-1].Out() {
			return pair
		}
	}
	wrong := rounds[at-1]
	if ops := make([]stitch.Op, wrong.Out()); !keeps(wrong) {
		for i := range ops {
			ops[i] = stitch.Knit
		}
		wrong = stitch.Round{Ops: ops, Lead: wrong.LeadOut(), Before: wrong.Before, Even: wrong.Even, Side: wrong.Side}
	}
	right := wrong
	right.Side = stitch.RightSide
	return []stitch.Round{right, wrong}
}
