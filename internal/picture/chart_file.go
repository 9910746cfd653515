package picture

import (
	"fmt"
	"slices"
	"strconv"
	"strings"

	"thenar/internal/chart"
	"thenar/internal/draw"
)

// Surround is what a chart file shows besides the chart.
type Surround struct {
	Title   string
	Under   string // under the title, smaller
	Key     bool
	Caption string
	Marks   bool // the marks and rulers of the page where it is worked on
}

// The letters, and the room round everything, of a chart file in mm.
const (
	fileTitle   = 5.0
	fileLetter  = 3.8
	fileLeading = 1.35
	fileMargin  = 4.0
	minFile     = 100.0 // width of title, caption and key at least
)

// ChartFile draws a chart as a picture of its own, for a publication: the cells are
// drawn as by Chart, their numbers count the stitches of the round, and the areas of
// the mitt stand along the foot. Marks for the work on it are only drawn if asked for.
func ChartFile(g chart.Grid, l Look, f Surround) *draw.Scene {
	return fileOf(publishedChart(g, l, f.Marks), []chart.Grid{g}, l, f)
}

// fileOf puts what stands round it beside what is drawn of charts.
func fileOf(sub *draw.Scene, charts []chart.Grid, l Look, f Surround) *draw.Scene {
	s := &draw.Scene{Width: max(sub.Width, minFile) + 2*fileMargin, Label: sub.Label}
	width, y := s.Width-2*fileMargin, fileMargin
	write := func(text string, style draw.TextStyle) {
		for _, line := range draw.Wrap(text, width, style.Size, style.Face) {
			s.Text(fileMargin, y+style.Size, line, style)
			y += style.Size * fileLeading
		}
	}
	if f.Title != "" {
		write(f.Title, draw.TextStyle{Class: "title", Size: fileTitle, Face: draw.Serif})
		write(f.Under, draw.TextStyle{Class: "title", Size: fileLetter})
		y += fileMargin / 2
	}
	s.Add(sub, fileMargin+(width-sub.Width)/2, y, 1)
	y += sub.Height + fileMargin/2
	if f.Caption != "" {
		write(f.Caption, draw.TextStyle{Class: "caption", Size: fileLetter})
		y += fileMargin / 2
	}
	if f.Key {
		key := newKeyTable(keyLines(charts, l), fewKeyLines).Draw(width)
		s.Add(key, fileMargin, y, 1)
		y += key.Height
	}
	s.Height = y + fileMargin
	s.Prune()
	return s
}

// publishedChart draws the chart of a chart file.
func publishedChart(g chart.Grid, l Look, marks bool) *draw.Scene {
	f := surround{above: 0.5, other: 0.5, marks: marks, strands: marks, ruled: marks && l.Unit != ""}
	if _, head := endNumbers(g); head != nil {
		f.above = 1.2
	}
	if f.ruled {
		f.other = 2.6
	}
	s, _ := layChart(g, l, f)
	return s
}

// endNumbers returns the numbers of the stitches in the first row of a chart and, if
// any stands elsewhere, those in the last row.
func endNumbers(g chart.Grid) (foot, head map[int]int) {
	if len(g.Rows) == 0 {
		return nil, nil
	}
	if g.Whole() > g.Width { // only a part: at its head stand the joins
		return g.Rows[0].Numbers(), nil
	}
	foot, head = g.Rows[0].Numbers(), g.Rows[len(g.Rows)-1].Numbers()
	for x, n := range head {
		if foot[x] != n {
			return foot, head
		}
	}
	return foot, nil
}

// manyNumbers is the number of stitches in a row, and closeNumber the highest number,
// up to which every one is written; of more, and of those that would touch, it is the
// first and every fifth.
const (
	manyNumbers = 40
	closeNumber = 99
)

// numberStitches writes numbers over or under their columns, on a line at y.
func numberStitches(s *draw.Scene, numbers map[int]int, at Geometry, y float64) {
	every, last := len(numbers) <= manyNumbers, 0
	for x, n := range numbers {
		every = every && n <= closeNumber && float64(len(strconv.Itoa(n)))*figureWide*numberSize(at) < 0.9*at.CellWidth
		last = max(last, x)
	}
	style := draw.TextStyle{Class: "label", Size: numberSize(at), Anchor: draw.Middle}
	for x := last; x >= 0; x-- {
		if n, ok := numbers[x]; ok && (every || n == 1 || n%5 == 0) {
			s.Text(at.x(x)+at.CellWidth/2, y, strconv.Itoa(n), style)
		}
	}
}

// nameAreas draws a line under each area at y, and its name under that where there is
// room.
func nameAreas(s *draw.Scene, areas []chart.Area, at Geometry, y float64) {
	edge := Edge(at.CellWidth)
	style := draw.TextStyle{Class: "area", Size: numberSize(at), Anchor: draw.Middle}
	free := func(i int) float64 { // room beside the name, which stands in the middle
		a := areas[i]
		return max(0, float64(a.To+1-a.From)*at.CellWidth-draw.Measure(a.Words, style.Size, draw.Regular)) / 2
	}
	var p draw.Pen
	for i, a := range areas {
		left, right := at.x(a.From), at.x(a.To+1)
		p.Move(left+edge*0.15, y).Line(right-edge*0.15, y)
		room := right - left
		if inside := i > 0 && i < len(areas)-1; inside { // it may reach under its neighbours
			room += 2 * min(edge, free(i-1), free(i+1))
		}
		if draw.Measure(a.Words, style.Size, draw.Regular) <= room {
			s.Text((left+right)/2, y+edge*0.3+style.Size, a.Words, style)
		}
	}
	s.Path(p.String(), draw.Style{Class: "areas", Stroke: fifthColour, Width: edge / 12})
}

// HowToRead says how a chart file is read, and what its numbers count.
func HowToRead(g chart.Grid) string {
	var b strings.Builder
	edge := "right"
	if g.FromLeft {
		edge = "left"
	}
	fmt.Fprintf(&b, "R%s.", Reading(g)[1:])
	if slices.ContainsFunc(g.Areas(), func(a chart.Area) bool { return a.Words == chart.GussetArea }) {
		if g.Noun() == "round" {
			fmt.Fprintf(&b, " Every round begins at the %s edge of the gusset.", edge)
		}
	}
	if _, head := endNumbers(g); head != nil {
		first, last := g.Rows[0], g.Rows[len(g.Rows)-1]
		fmt.Fprintf(&b, " The numbers at the foot count the stitches of %s, those at the top of %s.", first.Name(), last.Name())
	}
	return b.String()
}

// HowToReadBoxed says how a chart file of a boxed view is read.
func HowToReadBoxed(list []chart.Grid) string {
	text := fmt.Sprintf("R%s.", Reading(list[0])[1:])
	return text + " What stands in a box is worked as often as the number beside it says; the rest once."
}
