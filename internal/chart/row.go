package chart

import (
	"slices"

	"thenar/internal/wale"
)

// A piece with a seam is worked in rows from one edge to the other. The gusset or the
// bridge stands inside them, with the back of the hand at its one side and the palm at
// its other.

// inside returns where the columns of a gusset, a bridge or a thumb stand in a row: the
// number before them, and theirs with what is made among them.
func inside(names []string) (before, lead int) {
	ofHand := func(name string) bool {
		return name == "" || name[0] == wale.Hand || name[0] == wale.Seam || name[0] == wale.Made
	}
	from := slices.IndexFunc(names, func(name string) bool { return !ofHand(name) })
	if from < 0 {
		return 0, 0
	}
	to := len(names)
	for ofHand(names[to-1]) {
		to--
	}
	return from, to - from
}

// inBlock reports whether a cell is one of the gusset or the bridge.
func (r *Row) inBlock(j int) bool { return j >= r.before && j < r.before+r.lead }

// beside returns the range of a row's cells that lie within so many of its block; all
// if there are fewer, or if neighbours is negative.
func (r *Row) beside(neighbours int) (from, to int) {
	if neighbours < 0 {
		return 0, len(r.Cells)
	}
	return max(0, r.before-neighbours), min(len(r.Cells), r.before+r.lead+neighbours)
}

// cutRow drops all columns of the hand but the nearest to the gusset.
func cutRow(order []string) []string {
	before, lead := inside(order)
	return slices.Clone(order[max(0, before-Neighbours):min(len(order), before+lead+Neighbours)])
}

// seamed reports whether a view shows a piece with a seam, which can't be turned.
func (s Source) seamed(v View) bool {
	for _, section := range s.sections(v) {
		if section.Seam > 0 {
			return true
		}
	}
	return false
}

// rowArea returns which half of the hand a cell of a row lies on. The right hand's rows
// begin with the back, the left hand's with the palm; from the fingertips it is the other
// way about. A thumb in the palm has inset
// stitches of it on its side of the back. Without a gusset or a bridge the row is
// halved; an odd stitch is the palm's, or the back's if the thumb sits in the palm. With
// the seam on the thumb's side the right hand's rows begin with the palm.
func (g Grid) rowArea(row Row, j int) string {
	n, before := len(row.Cells), row.before
	if g.Mirrored != g.down {
		j, before = n-1-j, n-row.before-row.lead
	}
	switch {
	case row.lead == 0:
		before = backOf(n, g.palm)
	case g.palm:
		before -= g.inset
	}
	if g.byThumb {
		j = n - 1 - j
	}
	if j < before {
		return BackArea
	}
	return PalmArea
}

// backOf returns how many of n stitches of a row lie on the back.
func backOf(n int, palm bool) int {
	if palm {
		return n - n/2
	}
	return n / 2
}

// asRound puts what a row of the right hand shows into the order of a round: the gusset,
// the bridge or what was picked up, then the palm, then the back, without the seam.
func (s Source) asRound(all []PalmStitch, names []string) ([]PalmStitch, []string) {
	before, lead := inside(names)
	from := before
	switch {
	case lead > 0:
	case s.worked.SeamByThumb():
		from = 0
	case s.palm:
		from = backOf(len(names), true) + s.inset
	default:
		from = backOf(len(names), false)
	}
	for at := before + lead; at > before && names[at-1] != "" && names[at-1][0] == wale.Picked; {
		at--
		from = at // a thumb's row ends with what a round begins with
	}
	out, order := make([]PalmStitch, 0, len(all)), make([]string, 0, len(all))
	for k := range names {
		if i := (from + k) % len(names); names[i] == "" || names[i][0] != wale.Seam {
			out, order = append(out, all[i]), append(order, names[i])
		}
	}
	return out, order
}
