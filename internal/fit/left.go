package fit

import (
	"math"

	"thenar/internal/stitch"
)

// Left is a girth that stays off what was wanted by more than a tolerance, in
// one direction: fabric minus wish in mm where it is furthest, and in how many
// of the rounds of its section that are looked at.
type Left struct {
	Section    stitch.Part
	MM         float64
	Rounds, Of int
}

// LeftOff lists what stays off by more than a tolerance in mm: the cuff, and
// gusset, hand and digits where they are not shaped to an end.
func LeftOff(rows []Row, tolerance float64) []Left {
	var list []Left
	for from := 0; from < len(rows); {
		to := from + sectionRows(rows[from:])
		part := rows[from].Section
		narrow, wide := Left{Section: part}, Left{Section: part}
		for _, r := range rows[from:to] {
			if part.Over() != stitch.OverWrist && !r.fitted {
				continue
			}
			off := r.Fabric - r.Wanted
			narrow.Of++
			switch {
			case off < -tolerance-1e-9:
				narrow.Rounds++
				narrow.MM = math.Min(narrow.MM, off)
			case off > tolerance+1e-9:
				wide.Rounds++
				wide.MM = math.Max(wide.MM, off)
			}
		}
		wide.Of = narrow.Of
		for _, one := range []Left{narrow, wide} {
			if one.Rounds > 0 {
				list = append(list, one)
			}
		}
		from = to
	}
	return list
}
