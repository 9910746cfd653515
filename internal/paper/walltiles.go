package paper

import (
	"math"

	"thenar/internal/chart"
	"thenar/internal/picture"
)

// The widths in mm among which that of a wall chart's cells is chosen: wallCell is read
// from some 3 m, the others from half a metre more or less (common practice, no source).
const (
	wallCell      = 15.0
	largeWallCell = 18.0 // and as much less
)

// tiling is the division of a wall chart into parts, one on each sheet. Parts are cut
// where their cells end: what lies under a neighbour is the margin, so that no stitch is
// printed twice.
type tiling struct {
	cell       float64
	across, up int            // parts side by side, and one above the other
	tiles      []picture.Tile // those that show anything, from where rounds begin, row by row from the foot
	places     [][2]int       // of each tile: how many parts lie before it in its row, and below it
	wide, high float64        // of a sheet's room in mm
	shown      int            // how many cells the chart shows
}

// tile divides a chart in cells of a width for sheets that have wide by high mm. Parts
// are as full as can be from the foot up and from where rounds begin, so that what is
// left over lies together on the last.
func tile(g chart.Grid, cell, ratio, wide, high float64) tiling {
	t := tiling{cell: cell, wide: wide, high: high}
	first := picture.Tile{Right: g.Width, Head: len(g.Rows)}
	left, right, below := first.Room(g, cell)
	other := 0.0 // on the sheets after the first, whose last has numbers too if rows go both ways
	if g.BothWays() {
		other = max(left, right)
	}
	columns := fillSpans(g.Width, int((wide-left-right+1e-9)/cell), int((wide-other+1e-9)/cell))
	rows := fillSpans(len(g.Rows), int((high-below+1e-9)/(cell*ratio)), int((high+1e-9)/(cell*ratio)))
	t.across, t.up = len(columns), len(rows)
	for y, r := range rows {
		for x, c := range columns {
			one := picture.Tile{Left: c.from, Right: c.to, Foot: r.from, Head: r.to}
			if !g.FromLeft {
				one.Left, one.Right = g.Width-c.to, g.Width-c.from
			}
			if one.Has(g) {
				t.tiles, t.places = append(t.tiles, one), append(t.places, [2]int{x, y})
			}
		}
	}
	for _, row := range g.Rows {
		t.shown += len(row.Shown())
	}
	return t
}

// fillSpans divides n columns or rows: so many in the first span, and in each of the
// others.
func fillSpans(n, first, each int) []span {
	first, each = max(first, 1), max(each, 1)
	list := []span{{0, min(n, first)}}
	for at := first; at < n; at += each {
		list = append(list, span{at, min(n, at+each)})
	}
	return list
}

// chooseCells takes the tiling whose cells, all of one width, use their sheets most
// fully, that of the key included. Of equal ones, that with cells nearest to wallCell.
func (w *wall) chooseCells() {
	best, most := tiling{}, -1.0
	for d := 0.0; d <= largeWallCell-wallCell; d += 0.5 {
		for _, cell := range []float64{wallCell - d, wallCell + d} {
			w.divide(cell)
			if fill := w.fill(); fill > most+1e-9 {
				best, most = w.tiling, fill
			}
		}
	}
	w.tiling = best
}

// fill returns the share of all sheets' room that cells take.
func (w *wall) fill() float64 {
	return float64(w.shown) * w.cell * w.cell * w.ratio / (float64(w.sheets()) * w.tiling.wide * w.tiling.high)
}

// partAt returns the number of the part at a place, from 1; 0 if there is none.
func (t tiling) partAt(x, y int) int {
	for i, at := range t.places {
		if at == [2]int{x, y} {
			return i + 1
		}
	}
	return 0
}

// size returns how wide and high the cells are in all, in whole cm.
func (t tiling) size(g chart.Grid, ratio float64) (wide, high float64) {
	return math.Round(float64(g.Width) * t.cell / 10), math.Round(float64(len(g.Rows)) * t.cell * ratio / 10)
}
