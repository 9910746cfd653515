package picture

import (
	"strconv"

	"thenar/internal/chart"
	"thenar/internal/draw"
)

// drawGapCells draws the places without a stitch between the cells of a row.
func drawGapCells(s *draw.Scene, g chart.Grid, at Geometry) {
	var p draw.Pen
	for i, row := range g.Rows {
		list := row.Gaps()
		for k := 0; k < len(list); {
			n := 1
			for k+n < len(list) && list[k+n] == list[k]+n {
				n++
			}
			p.Rect(at.x(list[k]), at.y(i+1), float64(n)*at.CellWidth, at.CellHeight)
			k += n
		}
	}
	s.Path(p.String(), draw.Style{Class: "gap", Fill: gapColour})
}

// drawLines draws the outlines of the cells, each line in one piece. Every fifth round
// and the edges of the gusset are heavier.
func drawLines(s *draw.Scene, g chart.Grid, at Geometry) {
	var fine, heavy, border draw.Pen
	open := make([]int, g.Width+1) // row at which the upright line at x began; 0: none
	for i := 0; i <= len(g.Rows); i++ {
		stands := make([]bool, g.Width+1)
		if i < len(g.Rows) {
			rowLines(g.Rows[i], i+1, at, &fine, &heavy, &border, stands)
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
	s.Path(fine.String(), draw.Style{Class: "grid", Stroke: gridColour, Width: at.CellWidth / 24})
	s.Path(heavy.String(), draw.Style{Class: "grid-heavy", Stroke: fifthColour, Width: at.CellWidth / 12})
	s.Path(border.String(), draw.Style{Class: "border", Stroke: fifthColour, Width: at.CellWidth / 7})
}

// rowLines draws the level lines of a row from its first cell to its last, and notes in
// stands where upright lines are needed.
func rowLines(row chart.Row, y int, at Geometry, fine, heavy, border *draw.Pen, stands []bool) {
	cells := row.Shown()
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
	if row.Round%5 == 0 {
		heavy.Move(at.x(low), at.y(y)).Line(at.x(high+1), at.y(y))
	}
	for i := 1; i < len(cells); i++ {
		if isHandCell(cells[i]) != isHandCell(cells[i-1]) {
			x := at.x(cells[i-1].X + 1)
			if isHandCell(cells[i-1]) {
				x = at.x(cells[i].X)
			}
			border.Move(x, at.y(y)).Line(x, at.y(y-1))
		}
	}
}

// drawLabels numbers the rounds where they begin, and the columns along the foot.
func drawLabels(s *draw.Scene, g chart.Grid, at Geometry) {
	numberRounds(s, g, at, true)
	edge := Edge(at.CellWidth)
	small := draw.TextStyle{Class: "label", Size: numberSize(at), Anchor: draw.Middle}
	foot := at.Bottom + edge
	if g.View.Cut() && g.Whole() > 2*chart.Neighbours {
		drawGussetLabels(s, g, at, foot, small)
		return
	}
	for x := g.Width - 1; x >= 0; x-- {
		if n := g.Number(x); g.Whole() <= 40 || n == 1 || n%5 == 0 {
			s.Text(at.x(x)+at.CellWidth/2, foot, strconv.Itoa(n), small)
		}
	}
}

// numberSize returns the size of the letters round a chart, in mm.
func numberSize(at Geometry) float64 { return min(Edge(at.CellWidth)*0.62, at.CellHeight*0.8) }

// numberRounds numbers the rounds where they begin; if marks is set, it marks those
// that a try changed.
func numberRounds(s *draw.Scene, g chart.Grid, at Geometry, marks bool) {
	edge := Edge(at.CellWidth)
	size := numberSize(at)
	small := draw.TextStyle{Class: "label", Size: size}
	soft := draw.TextStyle{Class: "soft", Size: size}
	several := len(g.Rows) > 0 && g.Rows[0].Section != g.Rows[len(g.Rows)-1].Section
	for i, row := range g.Rows {
		low, high, ok := shownRange(row)
		if !ok {
			continue
		}
		x, y, out := at.x(high+1)+edge*0.3, at.y(i+1)+at.CellHeight/2+size*0.35, edge
		number, name := small, soft
		if g.FromLeft {
			x, out = at.x(low)-edge*0.3, -out
			number.Anchor, name.Anchor = draw.End, draw.End
		}
		if row.Changed && marks { // a bar before the number, and the number heavy
			number.Class, number.Face = "label changed", draw.Semibold
			s.Path(bar(x-out*0.18, at.y(i+1), at.CellHeight), draw.Style{Class: "changed", Stroke: pinColour, Width: at.CellWidth / 6})
		}
		s.Text(x, y, strconv.Itoa(row.Round), number)
		if several && row.Round == 1 {
			s.Text(x+out, y, row.Section.Words(), name)
		}
	}
}

// bar returns an upright stroke beside a row.
func bar(x, y, height float64) string {
	return new(draw.Pen).Move(x, y+height*0.1).Line(x, y+height*0.9).String()
}

// drawGussetLabels numbers the gusset's own columns; those of the hand beside them are
// labelled "hand".
func drawGussetLabels(s *draw.Scene, g chart.Grid, at Geometry, foot float64, small draw.TextStyle) {
	var hand [2][]int
	for x := g.Width - 1; x >= 0; x-- {
		switch n := g.Number(x); {
		case n <= chart.Neighbours:
			hand[0] = append(hand[0], x)
		case n > g.Whole()-chart.Neighbours:
			hand[1] = append(hand[1], x)
		default:
			s.Text(at.x(x)+at.CellWidth/2, foot, strconv.Itoa(n-chart.Neighbours), small)
		}
	}
	for _, columns := range hand {
		if n := len(columns); n > 1 {
			s.Text((at.x(columns[n-1])+at.x(columns[0]+1))/2, foot, "hand", small)
		}
	}
}
