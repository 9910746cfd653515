package fit

import (
	"math"

	"thenar/internal/mitt"
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
// gusset, hand and thumb where they are not shaped to an end.
func LeftOff(p *mitt.Plan, rows []Row, tolerance float64) []Left {
	var list []Left
	for _, part := range []stitch.Part{stitch.Cuff, stitch.Gusset, stitch.Hand, stitch.Thumb} {
		narrow, wide := Left{Section: part}, Left{Section: part}
		for _, r := range rows {
			if r.Section != part || part != stitch.Cuff && !fitted(p, r) {
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
	}
	return list
}
