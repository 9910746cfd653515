package fit

import (
	"math"

	"thenar/internal/stitch"
)

// Misfit is a section that is narrower, or wider, than wanted by more than a
// tolerance.
type Misfit struct {
	Section stitch.Part
	MM      float64 // fabric minus wanted girth in the worst round
	Rounds  int     // number of such rounds
	Of      int     // number of rounds of the section that were compared
}

// Misfits returns the sections that miss the wanted girth by more than a tolerance
// in mm. It compares the rounds of the cuff, and those rounds of gusset, hand and
// digits that are not shaped to an end.
func Misfits(rows []Row, tolerance float64) []Misfit {
	var list []Misfit
	for from := 0; from < len(rows); {
		to := from + rowsOfSection(rows[from:])
		part := rows[from].Section
		narrow, wide := Misfit{Section: part}, Misfit{Section: part}
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
		for _, m := range []Misfit{narrow, wide} {
			if m.Rounds > 0 {
				list = append(list, m)
			}
		}
		from = to
	}
	return list
}
