package paper

import (
	"math"

	"thenar/internal/picture"
)

// overlap is how many columns and rows two neighbouring parts of a chart
// share: the parts are cut or folded between the two.
const overlap = 2

// span is a run of columns or rows, from … to−1.
type span struct{ from, to int }

// divide divides n columns or rows into runs of at most most, each sharing
// overlap with the next, as equally long as that allows. Most must be above
// overlap, or 1 at the least where everything fits.
func divide(n, most int) []span {
	if n <= most {
		return []span{{0, n}}
	}
	step := max(most-overlap, 1)
	parts := int(math.Ceil(float64(n-overlap) / float64(step)))
	list := make([]span, parts)
	for i := range list {
		list[i] = span{i * (n - overlap) / parts, (i+1)*(n-overlap)/parts + overlap}
	}
	return list
}

// The room that a chart takes beside and below its cells, in picture.Edge: an
// empty one at the edge, the numbers of the rounds, those of the columns.
const (
	beside  = 1.0
	numbers = 2.6
	named   = 5.0 // where sections meet and are named
	above   = 1.0
	below   = 1.6
)

// The widths of a chart's cell as long as none was asked for, in mm: 6 where
// there is room, and down to 3.5 before the chart is divided, then 5.
const (
	roomiest = 6.0
	tightest = 3.5
	divided  = 5.0
)

// cells is how a chart comes on pages.
type cells struct {
	width         float64 // of a cell in mm
	columns, rows []span  // from the edge where rounds begin, and from the foot
}

// fits gives the cells of a chart of so many columns and rows on an area: asked
// is the width of a cell that was asked for, 0 for none, ratio its height over
// its width, side the room of the numbers in cells.
func fits(columns, rows int, ratio, side, width, height, asked, largest float64) cells {
	cell := asked
	if cell == 0 {
		cell = min(largest, width/(float64(columns)+beside+side), height/(float64(rows)*ratio+above+below))
		if cell < tightest {
			cell = min(divided, largest)
		}
	}
	edge := picture.Edge(cell)
	return cells{
		width:   cell,
		columns: divide(columns, max(int((width+1e-9-(beside+side)*edge)/cell), overlap+1)),
		rows:    divide(rows, max(int((height+1e-9-(above+below)*edge)/(cell*ratio)), overlap+1)),
	}
}
