package picture

import (
	"math"
	"slices"
	"strconv"

	"thenar/internal/chart"
	"thenar/internal/draw"
)

// drawGapCells draws the places without a stitch between the cells of a row: a tone
// beside blank cells; beside coloured ones, dots from which the round goes on.
func drawGapCells(s *draw.Scene, g chart.Grid, at Geometry) {
	gaps := make([][]int, len(g.Rows))
	for i, row := range g.Rows {
		gaps[i] = row.Gaps()
	}
	drawPlaces(s, gaps, at, IsKnitted(g))
}

// drawPlaces draws the places without a stitch of each row from the foot.
func drawPlaces(s *draw.Scene, gaps [][]int, at Geometry, knitted bool) {
	var tone, dots draw.Pen
	for i, list := range gaps {
		for k := 0; k < len(list); {
			n := 1
			for k+n < len(list) && list[k+n] == list[k]+n {
				n++
			}
			x, y, w := at.x(list[k]), at.y(i+1), float64(n)*at.CellWidth
			tone.Rect(x, y, w, at.CellHeight)
			dots.Move(x+at.CellWidth/4, y+at.CellHeight/2).Line(x+w-at.CellWidth/4, y+at.CellHeight/2)
			k += n
		}
	}
	if knitted {
		s.Path(dots.String(), draw.Style{Class: "gap-dots", Stroke: pencilColour, Width: at.CellWidth / 7, Dash: draw.Number(at.CellWidth/7) + " " + draw.Number(at.CellWidth*5/14)})
		return
	}
	s.Path(tone.String(), draw.Style{Class: "gap", Fill: gapColour})
}

// drawLines draws the outlines of the cells, each line in one piece. Every fifth round
// and the edges of the gusset are heavier.
func drawLines(s *draw.Scene, g chart.Grid, at Geometry, l Look) {
	var fine, border draw.Pen
	open := make([]int, g.Width+1) // row at which the upright line at x began; 0: none
	for i := 0; i <= len(g.Rows); i++ {
		stands := make([]bool, g.Width+1)
		if i < len(g.Rows) {
			rowLines(g, i, at, &fine, &border, stands)
		}
		for x := range stands {
			switch {
			case stands[x] && open[x] == 0:
				open[x] = i + 1
			case !stands[x] && open[x] > 0:
				fine.Move(at.x(x), at.y(open[x]-1)).Line(at.x(x), at.y(i))
				open[x] = 0
			}
		}
	}
	width := at.CellWidth / 24
	s.Path(fine.String(), draw.Style{Class: "grid", Stroke: gridColour, Width: width})
	if !l.Knitted {
		drawFurrows(s, g, at, width)
	}
	heavy, edge := fifthColour, draw.Style{Class: "border", Stroke: fifthColour, Width: at.CellWidth / 7}
	if IsKnitted(g) {
		heavy, edge = inkColour, draw.Style{Class: "border", Stroke: inkColour, Width: at.CellWidth / 12}
		s.Path(border.String(), draw.Style{Class: "border-edge", Stroke: edgeColour, Width: at.CellWidth / 5})
	}
	s.Path(border.String(), edge)
	rowPaths(s, g, "fifth", draw.Style{Class: "fifth", Stroke: heavy, Width: at.CellWidth / 14}, func(y int, r chart.Row) string { return fifthLine(g, r, y, at, false) })
	rowPaths(s, g, "fifth-light", draw.Style{Class: "fifth light", Stroke: edgeColour, Width: at.CellWidth / 14}, func(y int, r chart.Row) string { return fifthLine(g, r, y, at, true) })
}

// drawFurrows draws the outlines of coloured cells, for each yarn in the tone of its
// furrows, which has enough contrast with it.
func drawFurrows(s *draw.Scene, g chart.Grid, at Geometry, width float64) {
	lines := map[string]*draw.Pen{}
	for i, row := range g.Rows {
		for _, of := range yarnRuns(row) {
			p := lines[of.yarn]
			if p == nil {
				p = new(draw.Pen)
				lines[of.yarn] = p
			}
			for _, r := range of.runs {
				for x := r[0]; x <= r[1]+1; x++ {
					p.Move(at.x(x), at.y(i+1)).Line(at.x(x), at.y(i))
				}
				p.Move(at.x(r[0]), at.y(i+1)).Line(at.x(r[1]+1), at.y(i+1))
			}
		}
	}
	for i := range chart.MaxYarns {
		id := chart.ID(i)
		if p := lines[id]; p != nil && g.Palette.Or(id).Fill != "" {
			s.Path(p.String(), draw.Style{Class: "furrow", Stroke: Furrow(g.Palette.Or(id).Fill), Width: width})
		}
	}
}

// fifthLine returns the line over every fifth round, along its dark cells or along the
// others; "" for other rounds.
func fifthLine(g chart.Grid, row chart.Row, y int, at Geometry, dark bool) string {
	if row.Round == 0 || row.Round%5 != 0 {
		return ""
	}
	var p draw.Pen
	from, to := 0, -1
	flush := func() {
		if to >= from {
			p.Move(at.x(from), at.y(y)).Line(at.x(to+1), at.y(y))
		}
	}
	for _, c := range row.Shown() {
		if Dark(g.Palette.Or(c.Yarn).Fill) != dark {
			continue
		}
		if c.X != to+1 || to < from {
			flush()
			from = c.X
		}
		to = c.X
	}
	flush()
	return p.String()
}

// rowLines draws the level lines of row i from its first cell to its last, and notes in
// stands where upright lines are needed.
func rowLines(g chart.Grid, i int, at Geometry, fine, border *draw.Pen, stands []bool) {
	cells, y := g.Rows[i].Shown(), i+1
	if len(cells) == 0 {
		return
	}
	low, high := cells[0].X, cells[len(cells)-1].X
	for x := low; x <= high+1; x++ {
		stands[x] = true
	}
	for _, edge := range []float64{at.y(y), at.y(y - 1)} {
		fine.Move(at.x(low), edge).Line(at.x(high+1), edge)
	}
	for i := 1; i < len(cells); i++ {
		if isHandCell(cells[i]) != isHandCell(cells[i-1]) && !inOneBox(g, cells[i].X, cells[i-1].X) {
			x := at.x(cells[i-1].X + 1)
			if isHandCell(cells[i-1]) {
				x = at.x(cells[i].X)
			}
			border.Move(x, at.y(y)).Line(x, at.y(y-1))
		}
	}
}

// numberSize returns the size of the letters round a chart, in mm.
func numberSize(at Geometry) float64 {
	return max(at.letter, min(Edge(at.CellWidth)*0.62, at.CellHeight*0.8))
}

// figureWide and figureHigh are the width and height of a figure, by the size of its
// letters, in the faces that the program uses.
const (
	figureWide = 0.5
	figureHigh = 0.66
)

// numberRounds numbers the rounds that begin in a tile of a chart where they do, and
// names their sections; if marks is set, it marks those that a try changed.
func numberRounds(s *draw.Scene, g chart.Grid, t Tile, at Geometry, marks bool) {
	edge := Edge(at.CellWidth)
	size := numberSize(at)
	small := draw.TextStyle{Class: "label", Size: size}
	soft := draw.TextStyle{Class: "soft", Size: size}
	several := len(g.Rows) > 0 && g.Rows[0].Section != g.Rows[len(g.Rows)-1].Section
	said := numbered(g, rowsApart(size, at.CellHeight))
	for i := t.Foot; i < t.Head; i++ {
		row := g.Rows[i]
		low, high, ok := besideNumber(g.Rows, i, size*figureHigh/at.CellHeight)
		switch {
		case ok:
		case row.Unread != "":
			low, high = 0, g.Width-1
		default:
			continue
		}
		top := at.y(i - t.Foot + 1)
		column, x, y, out := high+1, at.x(high+1-t.Left)+edge*0.3, top+at.CellHeight/2+size*0.35, max(edge, 1.25*size)
		number, name := small, soft
		if g.BeginsLeft(row) {
			column, x, out = low-1, at.x(low-t.Left)-edge*0.3, -out
			number.Anchor, name.Anchor = draw.End, draw.End
		}
		if column = min(max(column, 0), g.Width-1); column < t.Left || column >= t.Right {
			continue
		}
		if row.Changed && marks { // a bar before the number, and the number heavy
			number.Class, number.Face = "label changed", draw.Semibold
			s.Path(bar(x-out*0.18, top, at.CellHeight), draw.Style{Class: "changed", Stroke: pinColour, Width: at.CellWidth / 6})
		}
		switch {
		case row.Said != "":
			s.Text(x, y, row.Said, name)
		case said[i]:
			s.Text(x, y, strconv.Itoa(row.Round), number)
		}
		if several && row.Round == 1 {
			s.Text(x+out, y, row.Section.Words(), name)
		}
	}
}

// lineOfNumbers is the height of a row that a number takes without crowding the next,
// by the size of its letters.
const lineOfNumbers = 0.8

// rowsApart returns how many rows of a height lie between numbers of a size that stand in
// their own rows, and at least between those that don't.
func rowsApart(size, height float64) int {
	if size*lineOfNumbers < height {
		return 1
	}
	return int(math.Ceil(size / height))
}

// numbered returns which rows bear their numbers, so many rows apart at least: of those
// that are too near to another, the ones that change the count stand, then the first of a
// section, the last of all, every fifth.
func numbered(g chart.Grid, apart int) []bool {
	said := make([]bool, len(g.Rows))
	last := len(g.Rows) - 1
	for _, stands := range []func(i int, row chart.Row) bool{
		func(_ int, row chart.Row) bool { return changesCount(row) },
		func(i int, row chart.Row) bool { return row.Round == 1 || i == last },
		func(_ int, row chart.Row) bool { return row.Round%5 == 0 },
		func(int, chart.Row) bool { return apart == 1 },
	} {
		for i, row := range g.Rows {
			near := said[max(i-apart+1, 0):min(i+apart, len(said))]
			said[i] = said[i] || stands(i, row) && !slices.Contains(near, true)
		}
	}
	return said
}

// changesCount reports whether a stitch of a row makes the round longer or shorter.
func changesCount(row chart.Row) bool {
	return slices.ContainsFunc(row.Shown(), func(c chart.Cell) bool { return c.Op.In() != c.Op.Out() })
}

// besideNumber returns the first and last place of a row's shown cells, and of those of
// the rows above and below that its number stands beside, too, since it is so many rows
// high; ok is false if the row has no cells.
func besideNumber(rows []chart.Row, i int, high float64) (first, last int, ok bool) {
	first, last, ok = shownRange(rows[i])
	reach := int(math.Ceil((high - 1) / 2))
	for k := max(i-reach, 0); ok && k <= min(i+reach, len(rows)-1); k++ {
		if low, high, has := shownRange(rows[k]); has {
			first, last = min(first, low), max(last, high)
		}
	}
	return first, last, ok
}

// bar returns an upright stroke beside a row.
func bar(x, y, height float64) string {
	return new(draw.Pen).Move(x, y+height*0.1).Line(x, y+height*0.9).String()
}
