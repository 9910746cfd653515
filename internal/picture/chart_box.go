package picture

import (
	"fmt"
	"strings"

	"thenar/internal/chart"
	"thenar/internal/draw"
)

// The room that the counts of a boxed chart take over its cells, and beside them on the
// side where no round begins, by Edge.
const (
	boxAbove  = 1.3
	boxBeside = 2.2
)

// boxRoom returns the room that the counts of a chart's boxes take; none for others.
func boxRoom(g chart.Grid) (above, beside float64) {
	if len(g.Across) > 0 {
		above = boxAbove
	}
	if len(g.Up) > 0 {
		beside = boxBeside
	}
	return above, beside
}

// drawBoxes draws a box round each motif that stands for more, and how often it is worked:
// round its columns, over all rounds that have them, with the count above; and round whole
// rounds, with the count beside them. Where a box goes on in another part of the chart it is
// open. The line at y is the lowest over the cells that is free.
func drawBoxes(s *draw.Scene, g chart.Grid, at Geometry, y float64) {
	across, up := boxesOf(g)
	if len(across)+len(up) == 0 {
		return
	}
	var columns, rounds draw.Pen
	for _, f := range across {
		f.draw(&columns, at, [2]bool{f.Before > 0, f.After > 0}, [2]bool{})
	}
	for _, f := range up {
		f.draw(&rounds, at, [2]bool{}, [2]bool{f.Before > 0, f.After > 0})
	}
	width := at.CellWidth / 9
	s.Path(columns.String()+rounds.String(), draw.Style{Class: "box light", Stroke: edgeColour, Width: 2 * width})
	if len(across) > 0 {
		s.Path(columns.String(), draw.Style{Class: "box", Stroke: inkColour, Width: width})
	}
	if len(up) > 0 {
		s.Path(rounds.String(), draw.Style{Class: "box-rounds", Stroke: inkColour, Width: width})
	}
	countBoxes(s, g, at, y)
}

// foldBox is a fold, and the cells on which it lies: columns from the left and rows from the
// foot, the first of each and the one after the last.
type foldBox struct {
	chart.Fold
	left, right, foot, head int
}

// boxesOf returns the folds of a chart that lie on cells which it shows.
func boxesOf(g chart.Grid) (across, up []foldBox) {
	for _, f := range g.Across {
		if one, ok := boxOf(g, f, func(x, _ int) bool { return x >= f.From && x < f.From+f.Count }); ok {
			one.left, one.right = f.From, f.From+f.Count
			across = append(across, one)
		}
	}
	for _, f := range g.Up {
		if one, ok := boxOf(g, f, func(_, y int) bool { return y >= f.From && y < f.From+f.Count }); ok {
			one.foot, one.head = f.From, f.From+f.Count
			up = append(up, one)
		}
	}
	return across, up
}

// boxOf frames the cells of a fold, by their places.
func boxOf(g chart.Grid, f chart.Fold, on func(x, y int) bool) (one foldBox, ok bool) {
	one = foldBox{f, g.Width, 0, len(g.Rows), 0}
	for y, row := range g.Rows {
		for _, c := range row.Shown() {
			if on(c.X, y) {
				one.left, one.right = min(one.left, c.X), max(one.right, c.X+1)
				one.foot, one.head = min(one.foot, y), max(one.head, y+1)
				ok = true
			}
		}
	}
	return one, ok
}

// draw draws the box without the sides that are open: left and right, foot and head.
func (f *foldBox) draw(p *draw.Pen, at Geometry, sides, ends [2]bool) {
	left, right, foot, head := at.x(f.left), at.x(f.right), at.y(f.foot), at.y(f.head)
	if sides == ([2]bool{}) && ends == ([2]bool{}) {
		p.Rect(left, head, right-left, foot-head)
		return
	}
	for _, e := range []struct {
		open           bool
		x0, y0, x1, y1 float64
	}{
		{sides[0], left, foot, left, head},
		{ends[1], left, head, right, head},
		{sides[1], right, head, right, foot},
		{ends[0], right, foot, left, foot},
	} {
		if !e.open {
			p.Move(e.x0, e.y0).Line(e.x1, e.y1)
		}
	}
}

// inOneBox reports whether two places stand in the same box. What is drawn there stands for
// more than the first of its places.
func inOneBox(g chart.Grid, a, b int) bool {
	for _, f := range g.Across {
		if min(a, b) >= f.From && max(a, b) < f.From+f.Count {
			return true
		}
	}
	return false
}

// countBoxes writes how often each box is worked, beside a bracket along it.
func countBoxes(s *draw.Scene, g chart.Grid, at Geometry, y float64) {
	edge := Edge(at.CellWidth)
	line := draw.Style{Class: "box-count", Stroke: inkColour, Width: edge / 14}
	letter := draw.TextStyle{Class: "label box-times", Size: numberSize(at), Face: draw.Semibold, Anchor: draw.Middle}
	across, up := boxesOf(g)
	var p draw.Pen
	for _, f := range across {
		left, right := at.x(f.left), at.x(f.right)
		p.Move(left, y+0.25*edge).Line(left, y).Line(right, y).Line(right, y+0.25*edge)
		s.Text((left+right)/2, y-0.25*edge, times(f.Fold), letter)
	}
	x, out := at.x(0)-0.4*edge, -1.0
	letter.Anchor = draw.End
	if g.FromLeft {
		x, out, letter.Anchor = at.x(g.Width)+0.4*edge, 1, draw.Start
	}
	if g.BothWays() { // rows are numbered on this side, too
		x += out * numbersAlone * edge
	}
	for _, f := range up {
		top, foot := at.y(f.head), at.y(f.foot)
		p.Move(x-0.25*out*edge, top).Line(x, top).Line(x, foot).Line(x-0.25*out*edge, foot)
		s.Text(x+0.25*out*edge, (top+foot)/2+letter.Size*figureHigh/2, times(f.Fold), letter)
	}
	s.Path(p.String(), line)
}

// times is how often a box is worked, as it stands beside it.
func times(f chart.Fold) string { return fmt.Sprintf("× %d", f.Times) }

// boxLine says what a chart of a boxed view stands for.
func boxLine(g chart.Grid) string {
	rounds := g.BoxedRounds()
	return strings.ToUpper(rounds[:1]) + rounds[1:] + "." + g.BoxWords()
}

// BoxedPart is a chart of a boxed view by itself, and what it stands for.
type BoxedPart struct {
	Words string
	Scene *draw.Scene
}

// BoxedParts draws the charts of a boxed view, each by itself, the last first, so that each
// stands under its words.
func BoxedParts(list []chart.Grid, l Look) []BoxedPart {
	var parts []BoxedPart
	for i := len(list) - 1; i >= 0; i-- {
		part := BoxedPart{boxLine(list[i]), publishedChart(list[i], l, false)}
		part.Scene.Label = strings.TrimSpace(chartLabel(list[i]) + ". " + part.Words)
		part.Scene.Prune()
		parts = append(parts, part)
	}
	return parts
}

// boxedLabel returns the text alternative of a boxed view, which has one motif of each that
// repeats.
func boxedLabel(list []chart.Grid) string {
	text := fmt.Sprintf("Chart of the %s, one repeat, boxed, %s.", list[0].View.Words(), Reading(list[0]))
	for _, g := range list {
		text += " " + boxLine(g)
	}
	return text
}

// BoxedFile draws the charts of a boxed view as ChartFile does a chart, the first at the
// foot, each under a line that says what it stands for.
func BoxedFile(list []chart.Grid, l Look, f Surround) *draw.Scene {
	return stacked(list, l, f, boxedLabel, boxLine)
}

// ReadFile draws the charts of what was read of instructions as BoxedFile does those of a
// boxed view, each under its name.
func ReadFile(list []chart.Grid, l Look, f Surround) *draw.Scene {
	label := func(list []chart.Grid) string { return fmt.Sprintf("%d charts, %s", len(list), Reading(list[0])) }
	return stacked(list, l, f, label, func(g chart.Grid) string { return g.View.Words() })
}

// stacked draws charts one over the other, the first at the foot, each under a line.
func stacked(list []chart.Grid, l Look, f Surround, label func([]chart.Grid) string, line func(chart.Grid) string) *draw.Scene {
	if len(list) == 0 {
		return ChartFile(chart.Grid{}, l, f)
	}
	scenes, widest := make([]*draw.Scene, len(list)), 0.0
	for i, g := range list {
		scenes[i] = publishedChart(g, l, f.Marks)
		widest = max(widest, scenes[i].Width)
	}
	width := max(widest, minFile)
	sub := &draw.Scene{Width: width, Label: label(list)}
	style := draw.TextStyle{Class: "caption", Size: fileLetter}
	for i := len(list) - 1; i >= 0; i-- {
		for _, text := range draw.Wrap(line(list[i]), width, style.Size, style.Face) {
			sub.Text(0, sub.Height+style.Size, text, style)
			sub.Height += style.Size * fileLeading
		}
		x := (width - widest) / 2
		if !list[i].FromLeft { // rounds begin under each other
			x += widest - scenes[i].Width
		}
		sub.Add(scenes[i], x, sub.Height, 1)
		sub.Height += scenes[i].Height + fileMargin
	}
	return fileOf(sub, list, l, f)
}
