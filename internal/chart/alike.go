package chart

import (
	"slices"

	"thenar/internal/stitch"
)

// Alike reports whether two hands are worked alike: with the same painted
// stitches and yarns in every round.
func (s Source) Alike(other Source) bool {
	if !stitch.Alike(s.worked, other.worked) {
		return false
	}
	if len(s.Marks) == 0 && len(other.Marks) == 0 {
		return true
	}
	for i, section := range s.worked.Sections {
		for r := range section.Rounds {
			same := func(a, b Cell) bool { return a.Op == b.Op && a.Yarn == b.Yarn }
			if !slices.EqualFunc(s.row(section, r).Cells, other.row(other.worked.Sections[i], r).Cells, same) {
				return false
			}
		}
	}
	return true
}
