package picture

import (
	"thenar/internal/chart"
	"thenar/internal/draw"
)

// Tile is the columns Left … Right−1 and the rows Foot … Head−1 of a chart that is put
// together from several sheets. Its cells end where those of the next tile begin.
type Tile struct{ Left, Right, Foot, Head int }

// Has reports whether a tile shows anything of the rows of a chart: a stitch, or the
// number of a round, which stands beside its first stitch.
func (t Tile) Has(g chart.Grid) bool {
	for _, row := range g.Rows[t.Foot:t.Head] {
		low, high, ok := shownRange(row)
		if left := g.BeginsLeft(row); ok && left && low > 0 {
			low--
		} else if ok && !left && high < g.Width-1 {
			high++
		}
		if ok && low < t.Right && high >= t.Left {
			return true
		}
	}
	return false
}

// Room returns the room in mm that a tile takes at the left and the right of its cells,
// for the numbers of the rounds where they begin, and below them, for those of the
// stitches.
func (t Tile) Room(g chart.Grid, cell float64) (left, right, below float64) {
	room := numberRoom(g, Edge(cell))
	if (g.FromLeft || g.BothWays()) && t.Left == 0 {
		left = room
	}
	if (!g.FromLeft || g.BothWays()) && t.Right == g.Width {
		right = room
	}
	if t.Foot == 0 {
		below = belowCells(g)
	}
	return left, right, below * Edge(cell)
}

// ChartTile draws a tile of a chart. Rounds and stitches are numbered only at the
// outline of the whole.
func ChartTile(g chart.Grid, t Tile, l Look) (*draw.Scene, Geometry) {
	part := g.Part(t.Left, t.Right, t.Foot, t.Head)
	at, _ := place(g, l, 0)
	left, right, below := t.Room(g, l.Cell)
	at.Left = left
	at.Bottom = float64(len(part.Rows)) * at.CellHeight
	s := &draw.Scene{Width: at.x(part.Width) + right, Height: at.Bottom + below, Label: chartLabel(part)}
	drawColours(s, part, at, l)
	drawPlaces(s, gapsOf(g, t), at, IsKnitted(g)) // of the whole: those too between a stitch of the tile and one of another
	drawStitches(s, part, at, l)
	drawMarks(s, part, at, pastNumber)
	numberRounds(s, g, t, at, false)
	if t.Foot == 0 {
		edge := Edge(l.Cell)
		numberStitches(s, part.Rows[0].Numbers(), at, at.Bottom+edge)
		if areas := part.Areas(); len(areas) > 0 {
			nameAreas(s, areas, at, at.Bottom+1.4*edge)
		}
		nameWaiting(s, part, at, at.Bottom+below)
	}
	return s, at
}

// gapsOf returns the places without a stitch in each row of a tile, from its left.
func gapsOf(g chart.Grid, t Tile) [][]int {
	gaps := make([][]int, t.Head-t.Foot)
	for i := range gaps {
		for _, x := range g.Rows[t.Foot+i].Gaps() {
			if x >= t.Left && x < t.Right {
				gaps[i] = append(gaps[i], x-t.Left)
			}
		}
	}
	return gaps
}
