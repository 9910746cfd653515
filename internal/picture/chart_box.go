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
// over its columns, and beside its rounds. Where only columns repeat, it is as high as the
// chart, where only rounds do, as wide. In the rounds above and below a box its columns
// repeat as well: thin lines go on there. The line at y is the lowest over the cells that is
// free.
func drawBoxes(s *draw.Scene, g chart.Grid, at Geometry, y float64) {
	if len(g.Across)+len(g.Up) == 0 {
		return
	}
	across, up := g.Across, g.Up
	whole := chart.Fold{Count: g.Width, Times: 1}
	if len(across) == 0 {
		across = []chart.Fold{whole}
	}
	all := chart.Fold{Count: len(g.Rows), Times: 1}
	var thin, box draw.Pen
	for _, x := range across {
		left, right := at.x(x.From), at.x(x.From+x.Count)
		if x.Times > 1 {
			for _, edge := range []float64{left, right} {
				thin.Move(edge, at.y(0)).Line(edge, at.y(len(g.Rows)))
			}
		}
		rounds := up
		if len(rounds) == 0 {
			rounds = []chart.Fold{all}
		}
		for _, r := range rounds {
			top := at.y(r.From + r.Count)
			box.Rect(left, top, right-left, at.y(r.From)-top)
		}
	}
	for _, of := range []struct {
		path  *draw.Pen
		width float64
		class string
	}{{&thin, at.CellWidth / 18, "box-edge"}, {&box, at.CellWidth / 9, "box"}} {
		s.Path(of.path.String(), draw.Style{Class: of.class + " light", Stroke: edgeColour, Width: 2 * of.width})
		s.Path(of.path.String(), draw.Style{Class: of.class, Stroke: inkColour, Width: of.width})
	}
	countBoxes(s, g, at, y)
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
	var p draw.Pen
	for _, f := range g.Across {
		left, right := at.x(f.From), at.x(f.From+f.Count)
		p.Move(left, y+0.25*edge).Line(left, y).Line(right, y).Line(right, y+0.25*edge)
		s.Text((left+right)/2, y-0.25*edge, times(f), letter)
	}
	x, out := at.x(0)-0.4*edge, -1.0
	letter.Anchor = draw.End
	if g.FromLeft {
		x, out, letter.Anchor = at.x(g.Width)+0.4*edge, 1, draw.Start
	}
	if g.BothWays() { // rows are numbered on this side, too
		x += out * numbersAlone * edge
	}
	for _, f := range g.Up {
		top, foot := at.y(f.From+f.Count), at.y(f.From)
		p.Move(x-0.25*out*edge, top).Line(x, top).Line(x, foot).Line(x-0.25*out*edge, foot)
		s.Text(x+0.25*out*edge, (top+foot)/2+letter.Size*figureHigh/2, times(f), letter)
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
	if len(list) == 0 {
		return ChartFile(chart.Grid{}, l, f)
	}
	scenes, widest := make([]*draw.Scene, len(list)), 0.0
	for i, g := range list {
		scenes[i] = publishedChart(g, l, f.Marks)
		widest = max(widest, scenes[i].Width)
	}
	width := max(widest, minFile)
	sub := &draw.Scene{Width: width, Label: boxedLabel(list)}
	style := draw.TextStyle{Class: "caption", Size: fileLetter}
	for i := len(list) - 1; i >= 0; i-- {
		for _, text := range draw.Wrap(boxLine(list[i]), width, style.Size, style.Face) {
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
