package picture

import (
	"fmt"
	"slices"
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

	letter float64 // size of the numbers at least
}

func (g Geometry) x(column int) float64 { return g.Left + float64(column)*g.CellWidth }

// y returns the upper edge of a row.
func (g Geometry) y(row int) float64 { return g.Bottom - float64(row)*g.CellHeight }

// Look is how a chart is drawn.
type Look struct {
	Cell    float64 // width of a stitch in mm
	Gauge   gauge.Gauge
	Square  bool // cells as high as wide, in place of the fabric's proportions
	Symbols Convention
	Numbers float64    // size of the numbers in mm at least; of those that would touch, those of rounds that change the count stand, the first, the last and fifth ones
	Unit    units.Unit // of the rulers; empty: none
	Grey    bool       // for a copier: yarns have the textures that tell them apart without colour
	Knitted bool       // coloured stitches of the key are drawn as knitting
}

// Chart draws a stitch grid with the marks of the work on it. Unless square cells are
// asked for, the height of a cell over its width is stitches per mm over rounds per mm.
// Rounds are numbered on the side from which they are worked, and stitches as they are
// counted in their round. Every layer has a path for every row, even if empty, since the
// page's script patches them; it also draws the knitting of the rows in view, and long
// strands when they are asked for.
func Chart(g chart.Grid, l Look) (*draw.Scene, Geometry) {
	other := 1.0
	if l.Unit != "" {
		other = 2.6
	}
	s, at := layChart(g, l, surround{above: 1, other: other, marks: true, ruled: l.Unit != ""})
	s.Root = []draw.Attr{{Name: "data-chart", Value: string(g.View)}, {Name: "tabindex", Value: "0"}}
	drawCursor(s, l.Cell)
	return s, at
}

// ChartSize returns the width and height in mm of what Chart draws without rulers.
func ChartSize(g chart.Grid, l Look) (width, height float64) {
	edge := Edge(l.Cell)
	at, after := place(g, l, edge)
	boxes, _ := boxRoom(g)
	return at.x(g.Width) + after, (1+boxes+belowCells(g))*edge + float64(len(g.Rows))*at.CellHeight
}

// The room below the cells of a chart by Edge: for numbers, and for the names of
// areas too.
const roomBelow, roomBelowAreas = 1.6, 3.0

// surround is what stands round the cells of a chart. Room is measured by Edge.
type surround struct {
	above, other float64 // above the cells, and on the side without numbers
	marks, ruled bool
	strands      bool // long strands are drawn, too
}

// layChart draws the cells of a chart with their numbers and areas.
func layChart(g chart.Grid, l Look, f surround) (*draw.Scene, Geometry) {
	edge, below, areas := Edge(l.Cell), belowCells(g), g.Areas()
	boxes, _ := boxRoom(g)
	f.above += boxes
	foot, head := endNumbers(g)
	at, after := place(g, l, f.other*edge)
	at.Bottom = f.above*edge + float64(len(g.Rows))*at.CellHeight
	s := &draw.Scene{Width: at.x(g.Width) + after, Label: chartLabel(g)}
	drawCells(s, g, at, l)
	if f.marks {
		drawMarks(s, g, at, pastNumber)
	}
	if f.marks && f.strands {
		drawFloats(s, g, at)
	} else if f.marks {
		layer(s, "float")
		s.End()
	}
	numberRounds(s, g, Tile{0, g.Width, 0, len(g.Rows)}, at, f.marks)
	numberStitches(s, foot, at, at.Bottom+edge)
	numberStitches(s, head, at, (f.above-0.35)*edge)
	if len(areas) > 0 {
		nameAreas(s, areas, at, at.Bottom+1.4*edge)
	}
	nameWaiting(s, g, at, at.Bottom+below*edge)
	free := f.above - 0.35
	if head != nil {
		free = f.above - 1.2
	}
	drawBoxes(s, g, at, free*edge)
	if f.ruled {
		low := at
		low.Bottom += (below - roomBelow) * edge // the level ruler stands under all that
		drawUprightRuler(s, g, at, l)
		drawLevelRuler(s, g, low, l)
		below += 2
	}
	s.Height = at.Bottom + below*edge
	return s, at
}

// chartLabel returns the text alternative of a chart.
func chartLabel(g chart.Grid) string {
	return fmt.Sprintf("Chart of the %s, %d %ss, %s", g.View.Words(), len(g.Rows), g.Noun(), Reading(g))
}

// place returns where the cells of a chart are, except their Bottom, and the room at
// its right. The numbers of the rounds have theirs where rounds begin, those of rows on
// both sides; the other side has so much in mm.
func place(g chart.Grid, l Look, other float64) (at Geometry, after float64) {
	_, boxes := boxRoom(g)
	other += boxes * Edge(l.Cell)
	at = Geometry{Left: other, CellWidth: l.Cell, CellHeight: l.Cell, letter: l.Numbers}
	if !l.Square {
		at.CellHeight = l.Cell * l.Gauge.Stitches / l.Gauge.Rounds
	}
	numbers := numberRoom(g, Edge(l.Cell))
	if g.BothWays() && other > 0 {
		other += numbersAlone * Edge(l.Cell)
		at.Left = other
	}
	if g.FromLeft {
		at.Left = numbers
		return at, other
	}
	return at, numbers
}

// drawCells draws the stitches of a chart: yarns, places without a stitch, lines,
// symbols.
func drawCells(s *draw.Scene, g chart.Grid, at Geometry, l Look) {
	drawColours(s, g, at, l)
	layer(s, "knit")
	s.End()
	drawGapCells(s, g, at)
	drawStitches(s, g, at, l)
}

// drawStitches draws the lines between the stitches of a chart, and the symbols.
func drawStitches(s *draw.Scene, g chart.Grid, at Geometry, l Look) {
	drawLines(s, g, at, l)
	drawSymbols(s, g, at, l)
}

// drawSymbols draws the symbols of a chart, those on coloured stitches with a light edge.
func drawSymbols(s *draw.Scene, g chart.Grid, at Geometry, l Look) {
	width := at.CellWidth / 12 * at.symbolScale()
	symbols := func(edged bool) func(int, chart.Row) string {
		return func(y int, r chart.Row) string { return symbolsOf(g, r, y, at, l.Symbols, edged) }
	}
	rowPaths(s, g, "edge", draw.Style{Class: "edge", Stroke: edgeColour, Width: 3 * width, Round: true}, symbols(true))
	rowPaths(s, g, "symbol", draw.Style{Class: "symbol", Stroke: inkColour, Width: width, Round: true}, symbols(false))
	drawSaid(s, g, at)
	drawUnread(s, g, at)
}

// Reading says in which direction a chart is read.
func Reading(g chart.Grid) string {
	way, back := "right to left", "left to right"
	if g.FromLeft {
		way, back = back, way
	}
	switch {
	case g.BothWays() && g.Noun() == "row":
		return fmt.Sprintf("read from the bottom up: right-side rows %s, wrong-side rows %s", way, back)
	case g.BothWays():
		return fmt.Sprintf("read from the bottom up, %s, wrong-side rows %s", way, back)
	}
	return "read from the bottom up, " + way
}

// numberRoom returns the room for the numbers of the rounds in mm, and for the names of
// the sections if there are several.
func numberRoom(g chart.Grid, edge float64) float64 {
	if n := len(g.Rows); n > 0 && g.Rows[0].Section != g.Rows[n-1].Section {
		return 5 * edge
	}
	return numbersAlone * edge
}

// numbersAlone is the room for the numbers of the rounds, by Edge.
const numbersAlone = 2.6

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
		style.Class, style.Stroke = style.Class+" light", edgeColour
	}
	return style
}

// drawColours draws the cells of each yarn in a row, with the yarn's texture in grey.
func drawColours(s *draw.Scene, g chart.Grid, at Geometry, l Look) {
	layer(s, "colour")
	for i, row := range g.Rows {
		s.Group("", rowAttr(i+1))
		for _, of := range yarnRuns(row) {
			var cells draw.Pen
			for _, r := range of.runs {
				cells.Rect(at.x(r[0]), at.y(i+1), float64(r[1]-r[0]+1)*at.CellWidth, at.CellHeight)
			}
			yarn := g.Palette.Or(of.yarn)
			s.Path(cells.String(), yarnStyle(yarn))
			if l.Grey {
				drawTexture(s, yarn, of.runs, i+1, at)
			}
		}
		s.End()
	}
	s.End()
}

// drawTexture draws the lines that tell a yarn from the others in a row without colour.
func drawTexture(s *draw.Scene, yarn chart.Yarn, runs [][2]int, y int, at Geometry) {
	for _, r := range runs {
		w := float64(r[1]-r[0]+1) * at.CellWidth
		if t := Texture(yarn.ID, at.x(r[0]), at.y(y), w, at.CellHeight, at.CellWidth/4); t != "" {
			s.Path(t, textureStyle(yarn, at.CellWidth/30))
		}
	}
}

// yarnRun is the cells of one yarn in a row: runs of neighbours, each by its first and
// last place from the left.
type yarnRun struct {
	yarn string
	runs [][2]int
}

// yarnRuns returns the yarns of a row in the order of their first cells from the left.
func yarnRuns(row chart.Row) []yarnRun {
	var list []yarnRun
	for _, c := range row.Shown() {
		at := slices.IndexFunc(list, func(y yarnRun) bool { return y.yarn == c.Yarn })
		if at < 0 {
			at = len(list)
			list = append(list, yarnRun{yarn: c.Yarn})
		}
		of := &list[at]
		if n := len(of.runs); n > 0 && of.runs[n-1][1] == c.X-1 {
			of.runs[n-1][1] = c.X
			continue
		}
		of.runs = append(of.runs, [2]int{c.X, c.X})
	}
	return list
}

// symbolsOf returns the symbols of a row in one path; if edged is set, only those on
// coloured stitches, which have a light edge.
func symbolsOf(g chart.Grid, row chart.Row, y int, at Geometry, by Convention, edged bool) string {
	var parts []string
	for _, c := range row.Shown() {
		symbol := by.symbolIn(g, c.Op)
		if symbol == "" || edged && g.Palette.Or(c.Yarn).Fill == "" {
			continue
		}
		parts = append(parts, at.symbol(symbol, c.X, y))
	}
	return strings.Join(parts, " ")
}

// largeSymbol is the scale of symbols beside numbers in large print. What is largest of them
// still fits its cell: they leave about 12 % free on either side.
const largeSymbol = 1.25

// symbolScale returns by how much symbols are larger than usual.
func (g Geometry) symbolScale() float64 {
	if g.letter > largeLetter {
		return largeSymbol
	}
	return 1
}

// symbol puts a symbol into the middle of a cell.
func (g Geometry) symbol(symbol string, column, row int) string {
	w, h, more := g.CellWidth, g.CellHeight, g.symbolScale()
	return symbolInCell(symbol, g.x(column)-w*(more-1)/2, g.y(row)-h*(more-1)/2, w*more, h*more)
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

// isHandCell reports whether a cell is one of the hand, not of the gusset.
func isHandCell(c chart.Cell) bool {
	return strings.HasPrefix(c.Column, "H") || strings.HasPrefix(c.Column, "M")
}
