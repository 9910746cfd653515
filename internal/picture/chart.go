package picture

import (
	"fmt"
	"strconv"
	"strings"

	"thenar/internal/chart"
	"thenar/internal/draw"
	"thenar/internal/gauge"
)

// Geometry says where the cells of a chart lie: row r from Bottom − r·h to
// Bottom − (r−1)·h, cell x from Left + x·w to Left + (x+1)·w, in mm.
type Geometry struct {
	Left, Bottom, CellWidth, CellHeight float64
}

func (g Geometry) x(column int) float64 { return g.Left + float64(column)*g.CellWidth }

// y is the upper edge of a row.
func (g Geometry) y(round int) float64 { return g.Bottom - float64(round)*g.CellHeight }

// The colours of a file that stands alone; pages go by the classes.
const (
	inkColour    = "#23272E"
	lineColour   = "#8A8F96"
	hairColour   = "#B8B4AA"
	groundColour = "#FFFFFF"
	markColour   = "#9C3A2E"
)

// Chart draws a stitch grid with cells of a width in mm and true proportions:
// height over width is stitches per mm over rounds per mm. Rounds are
// numbered on the right, from which they are worked, the gusset's stitches in
// its widest round along the foot, from right to left. The layers are patched by the
// page's script, so every row has its place in each.
func Chart(g chart.Grid, gg gauge.Gauge, cell float64) (*draw.Scene, Geometry) {
	at := Geometry{Left: cell, CellWidth: cell, CellHeight: cell * gg.Stitches / gg.Rounds}
	top := cell
	at.Bottom = top + float64(len(g.Rows))*at.CellHeight
	s := &draw.Scene{
		Width: at.x(g.Width) + numberRoom(cell), Height: at.Bottom + 1.6*cell,
		Label: fmt.Sprintf("Chart of the gusset, %d rounds, read from right to left, from the foot up", len(g.Rows)),
		Root:  []draw.Attr{{Name: "data-chart", Value: string(g.Section)}, {Name: "tabindex", Value: "0"}, {Name: "class", Value: breadth(g.Width)}},
	}
	colours(s, g, at)
	lines(s, g, at)
	rowPaths(s, g, "symbol", draw.Style{Class: "symbol", Stroke: inkColour, Width: cell / 12}, func(r chart.Row) string { return symbolsOf(r, at) })
	rowPaths(s, g, "painted", draw.Style{Class: "painted", Fill: markColour}, func(r chart.Row) string { return corners(r, at) })
	rowPaths(s, g, "fault", draw.Style{Class: "fault", Stroke: markColour, Width: cell / 8}, func(r chart.Row) string { return faultOf(r, at) })
	s.Group("", draw.Attr{Name: "data-layer", Value: "cursor"})
	s.Path("", draw.Style{Class: "thread"})
	s.Path("", draw.Style{Class: "cursor", Stroke: inkColour, Width: cell / 6})
	s.End()
	labels(s, g, at)
	return s, at
}

// breadth is a class for charts of so many columns that a page must not
// squeeze them into its width: cells have to be large enough to be hit.
func breadth(columns int) string {
	switch {
	case columns > 140:
		return "breadth-3"
	case columns > 80:
		return "breadth-2"
	case columns > 45:
		return "breadth-1"
	}
	return "breadth-0"
}

// numberRoom is what the numbers at the right take, in mm.
func numberRoom(cell float64) float64 { return 2.6 * cell }

func layer(s *draw.Scene, name string) {
	s.Group("", draw.Attr{Name: "data-layer", Value: name})
}

func rowPaths(s *draw.Scene, g chart.Grid, name string, style draw.Style, path func(chart.Row) string) {
	layer(s, name)
	for _, row := range g.Rows {
		s.PathWith(path(row), style, rowAttr(row))
	}
	s.End()
}

func rowAttr(r chart.Row) draw.Attr {
	return draw.Attr{Name: "data-row", Value: strconv.Itoa(r.Round)}
}

// colours are runs of one yarn, each a rectangle with its yarn's texture.
func colours(s *draw.Scene, g chart.Grid, at Geometry) {
	layer(s, "colour")
	for _, row := range g.Rows {
		s.Group("", rowAttr(row))
		for _, r := range runs(row) {
			yarn, _ := chart.YarnNamed(r.yarn)
			fill := yarn.Fill
			if fill == "" {
				fill = groundColour
			}
			x, w := at.x(r.from), float64(r.to-r.from+1)*at.CellWidth
			s.Rect(x, at.y(row.Round), w, at.CellHeight, draw.Style{Class: "yarn yarn-" + yarn.ID, Fill: fill})
			if t := Texture(yarn.ID, x, at.y(row.Round), w, at.CellHeight, at.CellWidth/4); t != "" {
				s.Path(t, draw.Style{Class: "texture texture-" + yarn.ID, Stroke: inkColour, Width: at.CellWidth / 30})
			}
		}
		s.End()
	}
	s.End()
}

// colourRun is neighbouring cells of one yarn, from … to counted from the
// left.
type colourRun struct {
	yarn     string
	from, to int
}

func runs(row chart.Row) []colourRun {
	cells := byX(row)
	var out []colourRun
	for _, c := range cells {
		if n := len(out); n > 0 && out[n-1].yarn == c.Yarn && out[n-1].to == c.X-1 {
			out[n-1].to = c.X
			continue
		}
		out = append(out, colourRun{c.Yarn, c.X, c.X})
	}
	return out
}

// byX is the cells of a row from the left.
func byX(row chart.Row) []chart.Cell {
	byColumn := map[int]chart.Cell{}
	low, high := 1<<30, -1
	for _, c := range row.Cells {
		byColumn[c.X] = c
		low, high = min(low, c.X), max(high, c.X)
	}
	var cells []chart.Cell
	for x := low; x <= high; x++ {
		if c, ok := byColumn[x]; ok {
			cells = append(cells, c)
		}
	}
	return cells
}

// Texture is the lines that tell a yarn from the others without colour, over
// a rectangle, step mm apart: b level, c upright, d slanting; a has none.
func Texture(yarn string, x, y, w, h, step float64) string {
	var p draw.Pen
	switch yarn {
	case "b":
		for v := step / 2; v < h; v += step {
			p.Move(x, y+v).Line(x+w, y+v)
		}
	case "c":
		for v := step / 2; v < w; v += step {
			p.Move(x+v, y).Line(x+v, y+h)
		}
	case "d":
		for v := step / 2; v < w+h; v += step {
			x1, y1 := x+min(v, w), y+max(v-w, 0)
			x2, y2 := x+max(v-h, 0), y+min(v, h)
			p.Move(x1, y1).Line(x2, y2)
		}
	}
	return p.String()
}

// lines are the outlines of the cells, every fifth round heavier, and the
// edges of the gusset.
func lines(s *draw.Scene, g chart.Grid, at Geometry) {
	var fine, heavy, border draw.Pen
	for _, row := range g.Rows {
		cells := byX(row)
		y := at.y(row.Round)
		for i, c := range cells {
			fine.Rect(at.x(c.X), y, at.CellWidth, at.CellHeight)
			if i > 0 && isHand(c) != isHand(cells[i-1]) {
				border.Move(at.x(c.X), y).Line(at.x(c.X), y+at.CellHeight)
			}
		}
		if n := len(cells); n > 0 && row.Round%5 == 0 {
			heavy.Move(at.x(cells[0].X), y).Line(at.x(cells[n-1].X+1), y)
		}
	}
	s.Path(fine.String(), draw.Style{Class: "grid", Stroke: hairColour, Width: at.CellWidth / 24})
	s.Path(heavy.String(), draw.Style{Class: "grid-heavy", Stroke: lineColour, Width: at.CellWidth / 12})
	s.Path(border.String(), draw.Style{Class: "border", Stroke: lineColour, Width: at.CellWidth / 7})
}

// isHand tells a cell of the hand from one of the gusset.
func isHand(c chart.Cell) bool { return strings.HasPrefix(c.Column, "H") }

// symbolsOf is the symbols of one row in one path.
func symbolsOf(row chart.Row, at Geometry) string {
	var parts []string
	for _, c := range byX(row) {
		if path := placed(Symbol(c.Op), at.x(c.X), at.y(row.Round), at.CellWidth, at.CellHeight); path != "" {
			parts = append(parts, path)
		}
	}
	return strings.Join(parts, " ")
}

// placed puts a symbol into a cell. A symbol keeps its own proportions: it is
// as large as the shorter side allows, in the middle of the cell.
func placed(symbol string, x, y, w, h float64) string {
	if symbol == "" {
		return ""
	}
	size := min(w, h)
	x += (w - size) / 2
	y += (h - size) / 2
	fields := strings.Fields(symbol)
	across := true
	for i, f := range fields {
		n, err := strconv.ParseFloat(f, 64)
		if err != nil {
			across = true
			continue
		}
		if across {
			n = x + n*size/100
		} else {
			n = y + n*size/100
		}
		across = !across
		fields[i] = draw.Number(n)
	}
	return strings.Join(fields, " ")
}

// corners marks every painted cell in its upper right corner.
func corners(row chart.Row, at Geometry) string {
	var p draw.Pen
	size := min(at.CellWidth, at.CellHeight) / 4
	for _, c := range byX(row) {
		if c.Painted {
			x, y := at.x(c.X+1), at.y(row.Round)
			p.Move(x-size, y).Line(x, y).Line(x, y+size).Close()
		}
	}
	return p.String()
}

// faultOf is the outline of a row that does not add up.
func faultOf(row chart.Row, at Geometry) string {
	cells := byX(row)
	if row.Fault == "" || len(cells) == 0 {
		return ""
	}
	left := at.x(cells[0].X)
	return new(draw.Pen).Rect(left, at.y(row.Round), at.x(cells[len(cells)-1].X+1)-left, at.CellHeight).String()
}

// labels are the rounds at the right and the columns along the foot.
func labels(s *draw.Scene, g chart.Grid, at Geometry) {
	size := min(at.CellWidth*0.62, at.CellHeight*0.8)
	small := draw.TextStyle{Class: "label", Size: size}
	for _, row := range g.Rows {
		cells := byX(row)
		if len(cells) == 0 {
			continue
		}
		s.Text(at.x(cells[len(cells)-1].X+1)+at.CellWidth*0.3, at.y(row.Round)+at.CellHeight/2+size*0.35, strconv.Itoa(row.Round), small)
	}
	small.Anchor = draw.Middle
	y := at.Bottom + at.CellWidth
	for i := g.Neighbours; i < g.Width-g.Neighbours; i++ {
		s.Text(at.x(g.Width-1-i)+at.CellWidth/2, y, strconv.Itoa(i+1-g.Neighbours), small)
	}
	if g.Neighbours == 0 {
		return
	}
	half := float64(g.Neighbours) * at.CellWidth / 2
	s.Text(at.x(0)+half, y, "hand", small)
	s.Text(at.x(g.Width)-half, y, "hand", small)
}
