package chart

import (
	"slices"

	"thenar/internal/stitch"
)

// Differing returns the parts that two hands do not work alike: with the same painted
// stitches and yarns in every round.
func (s Source) Differing(other Source) []stitch.Part {
	list := stitch.Differing(s.worked, other.worked)
	if len(s.Marks) == 0 && len(other.Marks) == 0 {
		return list
	}
	for _, section := range s.worked.Sections {
		if !slices.Contains(list, section.Part) && !s.paintedAlike(section, other) {
			list = append(list, section.Part)
		}
	}
	slices.SortFunc(list, func(a, b stitch.Part) int { return a.Order() - b.Order() })
	return list
}

// paintedAlike reports whether another hand, which has as many rounds of a section, works
// the same stitches and yarns in each.
func (s Source) paintedAlike(section stitch.Section, other Source) bool {
	same := func(a, b Cell) bool { return a.Op == b.Op && a.Yarn == b.Yarn }
	for r := range section.Rounds {
		if !slices.EqualFunc(s.row(section, r).Cells, other.row(*other.worked.Section(section.Part), r).Cells, same) {
			return false
		}
	}
	return true
}
