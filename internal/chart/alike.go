package chart

import (
	"slices"

	"thenar/internal/stitch"
)

// Differing returns the parts that two hands do not work alike: with the same painted
// stitches and yarns in every round.
func (s Source) Differing(other Source) []stitch.Part {
	list := stitch.Differing(s.worked, other.worked)
	if s.bare() && other.bare() {
		return list
	}
	for i := range s.worked.Sections {
		if section := &s.worked.Sections[i]; !slices.Contains(list, section.Part) && !s.paintedAlike(section, other) {
			list = append(list, section.Part)
		}
	}
	slices.SortFunc(list, func(a, b stitch.Part) int { return a.Order() - b.Order() })
	return list
}

// DifferingHands returns the parts that the two hands of this mitt do not work alike.
// Columns are named for the other hand only if there is something on them.
func (s Source) DifferingHands() []stitch.Part {
	other := s
	other.Mirrored = !s.Mirrored
	if !s.bare() {
		return s.Differing(other.Prepare())
	}
	if other.worked = s.Mitt; other.Mirrored {
		other.worked = stitch.Mirror(s.Mitt)
	}
	return s.Differing(other)
}

// paintedAlike reports whether another hand, which has as many rounds of a section, works
// the same stitches and yarns in each.
func (s Source) paintedAlike(section *stitch.Section, other Source) bool {
	same := func(a, b Row) bool {
		return slices.EqualFunc(a.Cells, b.Cells, func(a, b Cell) bool { return a.Op == b.Op && a.Yarn == b.Yarn })
	}
	return slices.EqualFunc(s.rows(*section), other.rows(*other.worked.Section(section.Part)), same)
}
