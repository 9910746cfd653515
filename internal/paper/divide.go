package paper

import (
	"math"

	"thenar/internal/picture"
)

// overlap is the number of columns or rows that two neighbouring parts of a chart
// share. The parts are cut or folded between them.
const overlap = 2

// span is a range of columns or rows, from … to−1.
type span struct{ from, to int }

// divide divides n columns or rows into spans of at most size, each sharing overlap
// with the next, of equal length to within one. Size must be above overlap.
func divide(n, size int) []span {
	if n <= size {
		return []span{{0, n}}
	}
	step := max(size-overlap, 1)
	parts := int(math.Ceil(float64(n-overlap) / float64(step)))
	list := make([]span, parts)
	for i := range list {
		list[i] = span{i * (n - overlap) / parts, (i+1)*(n-overlap)/parts + overlap}
	}
	return list
}

// The room that a chart takes round its cells, in units of picture.Edge.
const (
	emptyEdge     = 1.0
	roundNumbers  = 2.6
	sectionNames  = 5.0 // where sections meet and are named
	boxCounts     = 2.2 // beside the boxes of rounds
	emptyHead     = 1.0
	columnNumbers = 3.0 // with the names of the areas
)

// Widths of a chart's cell in mm if none is asked for: as large as fits from 6 down
// to 3.5, and 5 if the chart has to be divided (common practice, no source).
const (
	maxFitCell  = 6.0
	minFitCell  = 3.5
	dividedCell = 5.0
)

// cells is the division of a chart into parts.
type cells struct {
	width         float64 // of a cell in mm
	columns, rows []span  // from the edge where rounds begin, and from the foot
}

// fitCells divides a chart of so many columns and rows for pages of width by height
// mm. Ratio is the height of a cell over its width, side the room for the numbers
// of rounds in units of picture.Edge, asked the width of a cell in mm, 0 for as
// large as fits up to maxCell.
func fitCells(columns, rows int, ratio, side, width, height, asked, maxCell float64) cells {
	cell := asked
	if cell == 0 {
		cell = min(maxCell, width/(float64(columns)+emptyEdge+side), height/(float64(rows)*ratio+emptyHead+columnNumbers))
		if cell < minFitCell {
			cell = min(dividedCell, maxCell)
		}
	}
	edge := picture.Edge(cell)
	return cells{
		width:   cell,
		columns: divide(columns, max(int((width+1e-9-(emptyEdge+side)*edge)/cell), overlap+1)),
		rows:    divide(rows, max(int((height+1e-9-(emptyHead+columnNumbers)*edge)/(cell*ratio)), overlap+1)),
	}
}
