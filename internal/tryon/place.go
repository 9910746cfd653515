package tryon

import (
	"thenar/internal/mitt"
	"thenar/internal/stitch"
)

// Place is a round in a mitt: the work stands after it. Before and After are
// the stitches on the needles below it and above it; what waits on waste yarn
// is not among them.
type Place struct {
	Part          stitch.Part
	Round         int
	Before, After int
	Nth           int  // from the cast-on, 1 the first
	Ended         bool // what ends the part is done, too
}

// Begun reports whether anything is on the needles.
func (p Place) Begun() bool { return p.Part != "" }

// Worked is what of a plan's mitt is knitted. Where the hand is ended, no round
// can be added to it any more: the thumb is next.
func (p Place) Worked(by *mitt.Plan) *mitt.Worked {
	if p.Ended && p.Part != stitch.Thumb && by.Thumbed() {
		return by.Worked(stitch.Thumb, 0)
	}
	return by.Worked(p.Part, p.Round)
}

// Places are all rounds of a mitt in the order knitted.
func Places(m stitch.Mitt) []Place {
	var list []Place
	for _, s := range m.Sections {
		for i, r := range s.Rounds {
			list = append(list, Place{Part: s.Part, Round: i + 1, Before: r.In(), After: r.Out(), Nth: len(list) + 1})
		}
	}
	return list
}

// At is the place after a round of a part; ok is false if there is no such.
func At(list []Place, part stitch.Part, round int) (Place, bool) {
	for _, p := range list {
		if p.Part == part && p.Round == round {
			return p, true
		}
	}
	return Place{}, false
}

// Counting are the places of a part with a number of stitches on the needles.
// Of rounds that follow each other with the same count, only a tape tells which
// it is, so all of them are there.
func Counting(list []Place, part stitch.Part, stitches int) []Place {
	var found []Place
	for _, p := range list {
		if p.Part == part && p.After == stitches {
			found = append(found, p)
		}
	}
	return found
}

// Nearest is the place of a list that is nearest to a number of rounds.
func Nearest(list []Place, nth int) (Place, bool) {
	if len(list) == 0 {
		return Place{}, false
	}
	best := list[0]
	for _, p := range list[1:] {
		if abs(p.Nth-nth) < abs(best.Nth-nth) {
			best = p
		}
	}
	return best, true
}

func abs(n int) int { return max(n, -n) }
