package tryon

import (
	"thenar/internal/mitt"
	"thenar/internal/stitch"
)

// Place is how far a mitt is knitted: up to and with a round. The zero Place is
// before the cast-on.
type Place struct {
	Part          stitch.Part
	Round         int
	Side          stitch.Side // of the round, if it is a row
	Before, After int         // stitches on the needles before and after the round, without those on waste yarn
	Nth           int         // the round's number from the cast-on; 1 is the first
	Ended         bool        // the part's finish is worked, too
	Down          bool        // the mitt is worked from the fingertips
}

// reached reports whether the work is in a part or past it, in the order worked.
func (p Place) reached(part stitch.Part) bool {
	return stitch.Order(p.Part, p.Down) >= stitch.Order(part, p.Down)
}

// counted reports whether the counts of a part are knitted: from the cuff once it is past,
// from the fingertips as soon as the hand is begun, whose counts are those of all that
// joins it.
func (p Place) counted(part stitch.Part) bool {
	if p.Down {
		return p.reached(stitch.Top)
	}
	return p.past(part)
}

// past reports whether the work is past a part.
func (p Place) past(part stitch.Part) bool { return p.reached(part) && p.Part != part }

// Begun reports whether anything is on the needles.
func (p Place) Begun() bool { return p.Part != "" }

// Progress returns what is knitted at the place, as the planner takes it. After the
// finish of a part no round can be added to it, so the work is at the part that is worked
// next: after that of the hand at the thumb, after that of a finger at what follows it.
func (p Place) Progress(by *mitt.Plan) *mitt.Progress {
	if p.Ended {
		m := by.Mitt()
		for i := range m.Sections[:len(m.Sections)-1] {
			if m.Sections[i].Part == p.Part && len(m.Sections[i+1].Rounds) > 0 {
				return by.ProgressAt(m.Sections[i+1].Part, 0)
			}
		}
	}
	return by.ProgressAt(p.Part, p.Round)
}

// Places returns a place for each round of a mitt, in knitting order.
func Places(m stitch.Mitt) []Place {
	var list []Place
	for _, s := range m.Sections {
		for i, r := range s.Rounds {
			list = append(list, Place{Part: s.Part, Round: i + 1, Side: r.Side, Before: r.In(), After: r.Out(), Nth: len(list) + 1, Down: m.Down()})
		}
	}
	return list
}

// At returns the place after a round of a part; ok is false if there is none.
func At(list []Place, part stitch.Part, round int) (Place, bool) {
	for _, p := range list {
		if p.Part == part && p.Round == round {
			return p, true
		}
	}
	return Place{}, false
}

// WithCount returns the places of a part with so many stitches on the needles.
// Plain rounds in between leave the same count, so there may be several.
func WithCount(list []Place, part stitch.Part, stitches int) []Place {
	var found []Place
	for _, p := range list {
		if p.Part == part && p.After == stitches {
			found = append(found, p)
		}
	}
	return found
}

// Nearest returns the place whose round is nearest to the nth; ok is false for
// an empty list.
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
