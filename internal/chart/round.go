package chart

import "thenar/internal/stitch"

// Numbers returns the number in its round of the stitch at every place that the
// view shows, by X. Stitches are counted from 1 in the order worked, those that
// the view leaves out too; a cell painted as no stitch has no number, nor has one that
// is only set aside for what the view does not show.
func (r Row) Numbers() map[int]int {
	at, n := map[int]int{}, 0
	for _, i := range r.order() {
		c := r.Cells[i]
		if c.Op == stitch.NoStitch && c.Said == "" || c.Op == stitch.Hold && !c.Shown() && c.X != elsewhere {
			continue
		}
		if n++; c.Shown() {
			at[c.X] = n
		}
	}
	return at
}

// The names of the areas of a mitt along the foot of a chart.
const (
	PalmArea   = "palm"
	BackArea   = "back"
	GussetArea = "gusset"
	BridgeArea = "bridge"
	PickedArea = "picked up" // along the finger before
)

// Area is a run of columns, From and To included, that lie on one area of the
// mitt.
type Area struct {
	Words    string
	From, To int
}

// Areas returns the areas that the row at the foot stands on, from the left, with
// the columns that are made between its stitches further up. A chart of a thumb has
// none, and so has a box across, which stands for columns on several.
func (g Grid) Areas() []Area {
	if len(g.Rows) == 0 || g.placeless || g.sideless(g.Rows[0]) {
		return nil
	}
	at := make([]string, g.Width)
	for _, row := range g.Rows { // from the foot up: the lowest cell of a column counts
		for j, c := range row.Cells {
			if c.Shown() && at[c.X] == "" {
				at[c.X] = g.area(row, j)
			}
		}
	}
	for _, f := range g.Across {
		clear(at[f.From : f.From+f.Count])
	}
	foot := g.Rows[0].Shown()
	if len(foot) == 0 {
		return nil
	}
	var list []Area
	for x := foot[0].X; x <= foot[len(foot)-1].X; x++ {
		n := len(list)
		switch {
		case at[x] == "":
		case n > 0 && at[x] == list[n-1].Words && list[n-1].To == x-1:
			list[n-1].To = x
		default:
			list = append(list, Area{at[x], x, x})
		}
	}
	return list
}

// sideless reports whether nobody asks on which side of the hand a row's cells lie: those of a
// thumb.
func (g Grid) sideless(row Row) bool {
	return row.Section.Over() == stitch.OverDigit && g.sides[row.Section] == nil
}

// area returns the area that a cell of a row lies on. The round begins with the
// gusset or the bridge; the right hand then crosses the palm and comes back over
// the back, the left hand, or a mitt from the fingertips, the other way round. An odd stitch is the back's,
// and so it is where the tube is cut open. A bridge at the foot of a chart is the side between
// them and has no name.
func (g Grid) area(row Row, j int) string {
	switch {
	case g.sides[row.Section] != nil || !row.inBlock(j):
		return g.handArea(row, j)
	case g.Rows[0].Section.Marked():
		return GussetArea
	}
	return ""
}

// handArea returns which half of the hand a cell after the leading block lies on.
func (g Grid) handArea(row Row, j int) string {
	if of := g.sides[row.Section]; of != nil {
		return sideOf(of, j, func(j int) string { return row.Cells[j].Column })
	}
	if row.flat {
		return g.rowArea(row, j)
	}
	if g.palm {
		return g.palmArea(row, j)
	}
	first, last := PalmArea, BackArea
	hand := len(row.Cells) - row.lead
	half := hand / 2 // the palm's
	if g.Mirrored != g.down {
		first, last, half = BackArea, PalmArea, hand-half
	}
	if j < row.lead+half {
		return first
	}
	return last
}

// palmArea is handArea of a mitt whose thumb sits in the palm: half of the hand's
// stitches are the palm's, an odd one the back's. They are the block of the thumb, the
// inset stitches beside it at the round's one end, and the rest at its other.
func (g Grid) palmArea(row Row, j int) string {
	hand, block := len(row.Cells)-row.lead, 0
	for _, c := range row.Cells[:row.lead] {
		if g.down {
			block += c.Planned.In() // what comes in is the thumb's
		} else {
			block += c.Planned.Out() // what is put aside is the thumb's
		}
	}
	if row.Section.Marked() {
		block = g.base
	}
	if row.lead == 0 { // below the gusset its base is not parted off
		block = min(g.base, hand)
		hand, j = hand-block, j-block
	}
	rest := max((hand+block)/2-block-g.inset, 0)
	first, last := rest, g.inset
	if g.Mirrored != g.down {
		first, last = g.inset, rest
	}
	if k := j - row.lead; k < first || k >= hand-last {
		return PalmArea
	}
	return BackArea
}

// areasOf returns on which areas of the mitt the cells of a round lie, in the
// order worked. A round of a thumb has none.
func (g Grid) areasOf(row Row) []PageArea {
	if g.sideless(row) {
		return nil
	}
	block := BridgeArea
	if row.Section.Marked() {
		block = GussetArea
	}
	var list []PageArea
	for j := range row.Cells {
		words := block
		if g.sides[row.Section] != nil || !row.inBlock(j) {
			words = g.handArea(row, j)
		}
		if n := len(list); n > 0 && list[n-1].Words == words {
			list[n-1].Count++
		} else {
			list = append(list, PageArea{words, 1})
		}
	}
	return list
}
