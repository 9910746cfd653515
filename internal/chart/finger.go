package chart

import (
	"slices"

	"thenar/internal/stitch"
)

// A finger's round goes over what it picked up or has gone on from beside one neighbour, its
// part of the back, the bridge to its other neighbour, and its part of the palm; the little
// finger's begins with its part of the palm. The upper hand is worked like a finger, with
// no other bridge. On the left hand palm and back change places.

// WaitingArea is the name of the stitches that wait while a finger is worked: they lie on
// none of its sides.
const WaitingArea = "waiting"

// sides returns on which side of a finger, the upper hand or a cap each column lies with
// which it begins; nil for any other section.
func (s *Source) sides(section *stitch.Section) map[string]string {
	if section.Part.Over() == stitch.OverCap {
		return s.sidesOfCap()
	}
	palm := s.worked.OfPalm(section)
	if palm == 0 {
		return nil
	}
	r, names := section.Rounds[0], s.names[section.Part][0]
	of := make(map[string]string, len(names))
	lead, begins := r.Lead, s.Mirrored // the palm is the first of palm and back
	if r.Ops[len(r.Ops)-1] == stitch.CastOn {
		lead, begins = 0, !s.Mirrored // the little finger picks nothing up
	}
	var rest []string
	for i, op := range r.Ops {
		switch {
		case i < lead:
			of[names[i]] = PickedArea
		case op == stitch.CastOn:
			of[names[i]] = BridgeArea
		case op == stitch.Hold:
			of[names[i]] = WaitingArea
		default:
			rest = append(rest, names[i])
		}
	}
	for k, name := range rest {
		of[name] = BackArea
		if begins && k < palm || !begins && k >= len(rest)-palm {
			of[name] = PalmArea
		}
	}
	return of
}

// sidesOfCap returns on which side of a cap each column lies: it is picked up along the back,
// and cast on for the palm.
func (s *Source) sidesOfCap() map[string]string {
	of := map[string]string{}
	for i := range s.worked.Sections {
		section := &s.worked.Sections[i]
		if section.Part.Over() != stitch.OverCap || len(section.Rounds) == 0 {
			continue
		}
		for j, op := range section.Rounds[0].Ops {
			switch op {
			case stitch.PickUp:
				of[s.names[section.Part][0][j]] = BackArea
			case stitch.CastOn:
				of[s.names[section.Part][0][j]] = PalmArea
			}
		}
	}
	return of
}

// sideOf returns on which side the column at place j of a round lies; one that was made on
// the way lies where the one before it does.
func sideOf(sides map[string]string, j int, column func(int) string) string {
	for ; j > 0; j-- {
		if side, known := sides[column(j)]; known {
			return side
		}
	}
	return sides[column(0)]
}

// fingerSides keeps the sides of the sections that a grid shows.
func (g *Grid) fingerSides(s *Source, sections []stitch.Section) {
	for i := range sections {
		if of := s.sides(&sections[i]); of != nil {
			if g.sides == nil {
				g.sides = map[stitch.Part]map[string]string{}
			}
			g.sides[sections[i].Part] = of
		}
	}
}

// waits reports whether a cell is of a stitch that waits while a finger is worked. It has no
// place in the finger's chart, which shows one tube.
func (r *Row) waits(j int) bool {
	return r.digit && r.Cells[j].Planned == stitch.Hold
}

// present returns the indexes of the cells that have a place in the chart; nil if all have.
func (r *Row) present() []int {
	if !r.digit || !slices.ContainsFunc(r.Cells, func(c Cell) bool { return c.Planned == stitch.Hold }) {
		return nil
	}
	var list []int
	for j := range r.Cells {
		if !r.waits(j) {
			list = append(list, j)
		}
	}
	return list
}

// Waiting is a run of stitches that are put aside in a round of a finger's chart. They
// would stand at the line between two columns that is the left edge of the column X.
type Waiting struct{ X, Count int }

// Waiting returns the stitches of the row that wait while a finger is worked.
func (r Row) Waiting(fromLeft bool) []Waiting {
	var list []Waiting
	x, n := 0, 0
	for j, c := range r.Cells {
		if c.Shown() {
			if n > 0 {
				list, n = append(list, Waiting{x, n}), 0
			}
			if x = c.X; fromLeft {
				x++
			}
			continue
		}
		if r.waits(j) {
			n++
		}
	}
	if n > 0 {
		list = append(list, Waiting{x, n})
	}
	return list
}

// withoutWaiting drops the columns that only wait in a finger's chart.
func (g *Grid) withoutWaiting(columns []string) []string {
	of := g.sides[g.Rows[0].Section]
	if !g.Rows[0].digit || of == nil {
		return columns
	}
	return slices.DeleteFunc(slices.Clone(columns), func(name string) bool { return of[name] == WaitingArea })
}
