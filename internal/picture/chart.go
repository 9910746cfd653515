package picture

import (
	"fmt"
	"strconv"
	"strings"

	"thenar/internal/chart"
	"thenar/internal/draw"
	"thenar/internal/gauge"
	"thenar/internal/units"
)

// Geometry says where the cells of a chart are, in mm: with w and h the size of a cell,
// row y (from 1, at the foot) is from Bottom − y·h to Bottom − (y−1)·h, column x from
// Left + x·w to Left + (x+1)·w.
type Geometry struct {
	Left, Bottom, CellWidth, CellHeight float64
}

func (g Geometry) x(column int) float64 { return g.Left + float64(column)*g.CellWidth }

// y returns the upper edge of a row.
func (g Geometry) y(row int) float64 { return g.Bottom - float64(row)*g.CellHeight }

// lightColour is that of symbols on dark yarns.
const lightColour = "#FFFFFF"

// Look is how a chart is drawn.
type Look struct {
	Cell    float64 // width of a stitch in mm
	Gauge   gauge.Gauge
	Square  bool // cells as high as wide, in place of the fabric's proportions
	Symbols Convention
	Unit    units.Unit // of the rulers; empty: none
}

// Chart draws a stitch grid. Unless square cells are asked for, the height of a cell over
// its width is stitches per mm over rounds per mm. Rounds are numbered on the side from
// which they are worked, stitches along the foot from that side. Every layer has a path
// for every row, even if empty, since the page's script patches them.
func Chart(g chart.Grid, l Look) (*draw.Scene, Geometry) {
	edge, below, left := Edge(l.Cell), 1.6, 1.0
	if l.Unit != "" {
		below, left = 3.6, 2.6
	}
	at, after := place(g, l, left*edge)
	at.Bottom = edge + float64(len(g.Rows))*at.CellHeight
	s := &draw.Scene{
		Width: at.x(g.Width) + after, Height: at.Bottom + below*edge,
		Label: chartLabel(g),
		Root:  []draw.Attr{{Name: "data-chart", Value: string(g.View)}, {Name: "tabindex", Value: "0"}},
	}
	drawCells(s, g, at, l)
	drawMarks(s, g, at)
	layer(s, "cursor")
	for _, class := range []string{"thread", "chosen", "cursor"} {
		s.Path("", draw.Style{Class: class, Width: l.Cell / 6})
	}
	s.End()
	drawLabels(s, g, at)
	if l.Unit != "" {
		drawRulers(s, g, at, l)
	}
	return s, at
}

// chartLabel returns the text alternative of a chart.
func chartLabel(g chart.Grid) string {
	return fmt.Sprintf("Chart of the %s, %d rounds, %s", g.View.Words(), len(g.Rows), Reading(g))
}

// place returns where the cells of a chart are, except their Bottom, and the room at
// its right. The numbers of the rounds have theirs where rounds begin; the other side
// has so much in mm.
func place(g chart.Grid, l Look, other float64) (at Geometry, after float64) {
	at = Geometry{Left: other, CellWidth: l.Cell, CellHeight: l.Cell}
	if !l.Square {
		at.CellHeight = l.Cell * l.Gauge.Stitches / l.Gauge.Rounds
	}
	numbers := numberRoom(g, Edge(l.Cell))
	if g.FromLeft {
		at.Left = numbers
		return at, other
	}
	return at, numbers
}

// drawCells draws the stitches of a chart: yarns, places without a stitch, lines,
// symbols.
func drawCells(s *draw.Scene, g chart.Grid, at Geometry, l Look) {
	width := at.CellWidth / 12
	drawColours(s, g, at)
	drawGapCells(s, g, at)
	drawLines(s, g, at)
	rowPaths(s, g, "symbol", draw.Style{Class: "symbol", Stroke: inkColour, Width: width}, func(y int, r chart.Row) string { return symbolsOf(g, r, y, at, l.Symbols, false) })
	rowPaths(s, g, "light", draw.Style{Class: "symbol light", Stroke: lightColour, Width: width}, func(y int, r chart.Row) string { return symbolsOf(g, r, y, at, l.Symbols, true) })
}

// drawMarks draws what a chart shows to the person who works on it: what is
// painted, noted and unsound, long floats, and the round on the needles.
func drawMarks(s *draw.Scene, g chart.Grid, at Geometry) {
	width := at.CellWidth / 8
	rowPaths(s, g, "painted", draw.Style{Class: "painted", Fill: pinColour}, func(y int, r chart.Row) string { return paintedCorners(r, y, at) })
	rowPaths(s, g, "note", draw.Style{Class: "noted", Fill: chalkColour}, func(y int, r chart.Row) string { return noteMarks(g, r, y, at) })
	rowPaths(s, g, "fault", draw.Style{Class: "fault", Stroke: pinColour, Width: width}, func(y int, r chart.Row) string { return faultOutline(r, y, at) })
	drawFloats(s, g, at)
	layer(s, "needles")
	s.Path(needleMark(g, at), draw.Style{Class: "needles", Fill: chalkColour, Stroke: chalkColour, Width: width})
	s.End()
}

// Reading says in which direction a chart is read.
func Reading(g chart.Grid) string {
	if g.FromLeft {
		return "read from left to right, from the foot up"
	}
	return "read from right to left, from the foot up"
}

// numberRoom returns the room for the numbers of the rounds in mm, and for the names of
// the sections if there are several.
func numberRoom(g chart.Grid, edge float64) float64 {
	if n := len(g.Rows); n > 0 && g.Rows[0].Section != g.Rows[n-1].Section {
		return 5 * edge
	}
	return 2.6 * edge
}

// Edge returns the measure in mm for letters and room round a chart: a cell's width, but
// at most 12 mm, so that a wall chart spends its paper on stitches.
func Edge(cell float64) float64 { return min(cell, 12) }

func layer(s *draw.Scene, name string) {
	s.Group("", draw.Attr{Name: "data-layer", Value: name})
}

// rowPaths draws a layer with one path for each row. The function path gets the number of
// the row from the foot.
func rowPaths(s *draw.Scene, g chart.Grid, name string, style draw.Style, path func(int, chart.Row) string) {
	layer(s, name)
	for i, row := range g.Rows {
		s.PathWith(path(i+1, row), style, rowAttr(i+1))
	}
	s.End()
}

func rowAttr(y int) draw.Attr {
	return draw.Attr{Name: "data-row", Value: strconv.Itoa(y)}
}

// yarnStyle returns the style of the ground of a yarn's cells.
func yarnStyle(y chart.Yarn) draw.Style {
	if y.Fill == "" {
		return draw.Style{Class: "yarn yarn-" + y.ID + " ground", Fill: groundColour}
	}
	return draw.Style{Class: "yarn yarn-" + y.ID, Fill: y.Fill}
}

func textureStyle(y chart.Yarn, width float64) draw.Style {
	style := draw.Style{Class: "texture texture-" + y.ID, Stroke: inkColour, Width: width}
	if Dark(y.Fill) {
		style.Class, style.Stroke = style.Class+" light", lightColour
	}
	return style
}

// drawColours draws each run of one yarn as a rectangle with the yarn's texture.
func drawColours(s *draw.Scene, g chart.Grid, at Geometry) {
	layer(s, "colour")
	for i, row := range g.Rows {
		s.Group("", rowAttr(i+1))
		for _, r := range colourRuns(row) {
			yarn := g.Palette.Or(r.yarn)
			x, w := at.x(r.from), float64(r.to-r.from+1)*at.CellWidth
			s.Rect(x, at.y(i+1), w, at.CellHeight, yarnStyle(yarn))
			if t := Texture(yarn.ID, x, at.y(i+1), w, at.CellHeight, at.CellWidth/4); t != "" {
				s.Path(t, textureStyle(yarn, at.CellWidth/30))
			}
		}
		s.End()
	}
	s.End()
}

// colourRun is a run of neighbouring cells of one yarn, its first and last place from the
// left.
type colourRun struct {
	yarn     string
	from, to int
}

func colourRuns(row chart.Row) []colourRun {
	var out []colourRun
	for _, c := range row.Shown() {
		if n := len(out); n > 0 && out[n-1].yarn == c.Yarn && out[n-1].to == c.X-1 {
			out[n-1].to = c.X
			continue
		}
		out = append(out, colourRun{c.Yarn, c.X, c.X})
	}
	return out
}

// symbolsOf returns the symbols of a row in one path: those on dark yarns, or those on
// light ones.
func symbolsOf(g chart.Grid, row chart.Row, y int, at Geometry, by Convention, dark bool) string {
	var parts []string
	for _, c := range row.Shown() {
		symbol := by.symbolIn(g, c.Op)
		if symbol == "" || Dark(g.Palette.Or(c.Yarn).Fill) != dark {
			continue
		}
		parts = append(parts, symbolInCell(symbol, at.x(c.X), at.y(y), at.CellWidth, at.CellHeight))
	}
	return strings.Join(parts, " ")
}

// symbolInCell puts a symbol into the middle of a cell. It keeps its proportions and is as
// large as the shorter side.
func symbolInCell(symbol string, x, y, w, h float64) string {
	if symbol == "" {
		return ""
	}
	size := min(w, h)
	x += (w - size) / 2
	y += (h - size) / 2
	return draw.Map(symbol, func(u, v float64) (float64, float64) { return x + u*size/100, y + v*size/100 })
}

// paintedCorners marks every painted cell in its upper right corner.
func paintedCorners(row chart.Row, y int, at Geometry) string {
	var p draw.Pen
	size := min(at.CellWidth, at.CellHeight) / 4
	for _, c := range row.Shown() {
		if c.Painted {
			x, y := at.x(c.X+1), at.y(y)
			p.Move(x-size, y).Line(x, y).Line(x, y+size).Close()
		}
	}
	return p.String()
}

// noteMarks marks every cell that has a note in its lower left corner, and a round that
// has one where it ends.
func noteMarks(g chart.Grid, row chart.Row, y int, at Geometry) string {
	var p draw.Pen
	size := min(at.CellWidth, at.CellHeight) / 3
	foot := at.y(y) + at.CellHeight
	low, high, ok := shownRange(row)
	for _, c := range row.Shown() {
		if c.Note != "" {
			p.Move(at.x(c.X), foot-size).Line(at.x(c.X), foot).Line(at.x(c.X)+size, foot).Close()
		}
	}
	if row.Note != "" && ok {
		x, mid := at.x(low)-at.CellWidth/5, foot-at.CellHeight/2
		if g.FromLeft {
			x = at.x(high+1) + at.CellWidth/5 + size
		}
		p.Move(x-size, mid).Line(x-size/2, mid-size/2).Line(x, mid).Line(x-size/2, mid+size/2).Close()
	}
	return p.String()
}

// shownRange returns the first and last place of a row's shown cells; ok is false if it
// has none.
func shownRange(row chart.Row) (low, high int, ok bool) {
	low, high = 1<<30, -1
	for _, c := range row.Cells {
		if c.Shown() {
			low, high = min(low, c.X), max(high, c.X)
		}
	}
	return low, high, high >= 0
}

// faultOutline returns the outline of a row that does not add up; "" for others.
func faultOutline(row chart.Row, y int, at Geometry) string {
	low, high, ok := shownRange(row)
	if row.Fault == "" || !ok {
		return ""
	}
	return new(draw.Pen).Rect(at.x(low), at.y(y), at.x(high+1)-at.x(low), at.CellHeight).String()
}

// needleMark marks the round that is on the needles: a line below it, and an arrow beyond
// its number where the round begins.
func needleMark(g chart.Grid, at Geometry) string {
	var p draw.Pen
	for i, row := range g.Rows {
		low, high, ok := shownRange(row)
		if !row.Needles || !ok {
			continue
		}
		foot, mid, x, to := at.y(i), at.y(i+1)+at.CellHeight/2, at.x(high+1)+2.3*at.CellWidth, -at.CellWidth/2
		if g.FromLeft {
			x, to = at.x(low)-2.3*at.CellWidth, -to
		}
		p.Move(at.x(low), foot).Line(at.x(high+1), foot)
		p.Move(x, mid-at.CellHeight/3).Line(x+to, mid).Line(x, mid+at.CellHeight/3).Close()
	}
	return p.String()
}

// isHandCell reports whether a cell is one of the hand, not of the gusset.
func isHandCell(c chart.Cell) bool {
	return strings.HasPrefix(c.Column, "H") || strings.HasPrefix(c.Column, "M")
}
