package picture

import (
	"slices"

	"thenar/internal/chart"
	"thenar/internal/draw"
	"thenar/internal/stitch"
)

// The sizes of a key, in mm.
const (
	keyCell   = 5.0
	keyLetter = KeyLetter
	keyGap    = 2.0
)

// KeyLetter is the size of the letters of a key in mm.
const KeyLetter = 3.8

// Key draws the key of a chart in a width in mm: each symbol with abbreviation and
// words, and each yarn as it is drawn.
func Key(g chart.Grid, l Look, width float64) *draw.Scene {
	return drawKey(keyLines([]chart.Grid{g}, l), width, fewKeyLines)
}

// KeyOfAll draws one key of several charts, with what they share only once, in as many
// columns as the width has room for.
func KeyOfAll(charts []chart.Grid, l Look, width float64) *draw.Scene {
	return drawKey(keyLines(charts, l), width, 1)
}

// keyLines returns the lines of a key: of symbols, of places without a stitch, of yarns.
func keyLines(charts []chart.Grid, l Look) []keyLine {
	var list []keyLine
	for _, of := range []func(chart.Grid, Look) []keyLine{symbolLines, gapLines, yarnLines} {
		for _, g := range charts {
			for _, line := range of(g, l) {
				if !slices.Contains(list, line) {
					list = append(list, line)
				}
			}
		}
	}
	return list
}

// drawKey draws the lines of a key in a width in mm, in several columns if there are
// more than a few.
func drawKey(list []keyLine, width float64, few int) *draw.Scene {
	s := &draw.Scene{Width: width, Label: "Key to the symbols"}
	columns := 1
	for n := 2; n <= mostKeyColumns && len(list) > few && linesFit(list, width/float64(n)); n++ {
		columns = n
	}
	each := (len(list) + columns - 1) / columns
	for i, column := range slices.Collect(slices.Chunk(list, max(each, 1))) {
		y := 0.5
		for _, line := range column {
			y = line.draw(s, float64(i)*width/float64(columns), y, width/float64(columns))
		}
		s.Height = max(s.Height, y)
	}
	return s
}

// keyYarns returns the yarns that the key of a chart names: those that it shows, the
// main one alone if that has a colour.
func keyYarns(g chart.Grid) []chart.Yarn {
	used := g.YarnsUsed()
	if len(used) == 0 && IsKnitted(g) {
		used = []chart.Yarn{g.Palette.Or(chart.ID(0))}
	}
	return used
}

// symbolLines returns the lines of a chart's symbols.
func symbolLines(g chart.Grid, l Look) (list []keyLine) {
	main, by := g.Palette.Or(chart.ID(0)), l.Symbols
	for _, op := range g.Used() {
		line := keyLine{path: by.symbolIn(g, op), yarn: main, text: by.meaningIn(g, op)}
		if l.Knitted && IsKnitted(g) {
			line.stitch = shapeOf(op, true)
			if op == stitch.Knit || op == stitch.Purl { // knitting shows them without a symbol
				line.path = ""
			}
		}
		list = append(list, line)
	}
	return list
}

// gapLines returns the line of the places without a stitch, if a chart has any.
func gapLines(g chart.Grid, _ Look) []keyLine {
	if !g.NoStitch() {
		return nil
	}
	return []keyLine{{gap: true, dots: IsKnitted(g), yarn: g.Palette.Or(chart.ID(0)), text: "no stitch: go on with the next"}}
}

// yarnLines returns the lines of a chart's yarns.
func yarnLines(g chart.Grid, l Look) (list []keyLine) {
	for _, y := range keyYarns(g) {
		line := keyLine{yarn: y, text: yarnWords(y), grey: l.Grey}
		if l.Knitted && IsKnitted(g) {
			line.stitch = Knitting.End
		}
		list = append(list, line)
	}
	return list
}

// mostKeyColumns is the most columns of a key.
const mostKeyColumns = 3

// linesFit reports whether all lines of a key fit a column of this width as they are.
func linesFit(list []keyLine, width float64) bool {
	return !slices.ContainsFunc(list, func(l keyLine) bool {
		return 0.5+keyCell+2*keyGap+draw.Measure(l.text, keyLetter, draw.Regular) > width
	})
}

// fewKeyLines is the number of lines up to which a key is one column.
const fewKeyLines = 4

// keyLine is one line of a key.
type keyLine struct {
	path   string // of a symbol
	stitch string // drawn as knitting; empty: plain
	yarn   chart.Yarn
	gap    bool
	dots   bool // of a gap
	grey   bool
	text   string
}

func yarnWords(y chart.Yarn) string {
	if y.Held == "" {
		return y.Name
	}
	return y.Name + ", carried in the " + string(y.Held) + " hand"
}

// draw draws the line at y, in a column at left, and returns the y of the next.
func (l keyLine) draw(s *draw.Scene, left, y, width float64) float64 {
	left += 0.5
	l.drawCell(s, left, y)
	s.Rect(left, y, keyCell, keyCell, draw.Style{Class: "border", Stroke: fifthColour, Width: 0.25})
	if path := symbolInCell(l.path, left, y, keyCell, keyCell); path != "" {
		if l.yarn.Fill != "" || l.stitch != "" { // on fabric
			s.Path(path, draw.Style{Class: "edge", Stroke: edgeColour, Width: 1.2, Round: true})
		}
		s.Path(path, draw.Style{Class: "symbol", Stroke: inkColour, Width: 0.4, Round: true})
	}
	x := left + keyCell + keyGap
	lines := draw.Wrap(l.text, width-0.5-keyCell-keyGap, keyLetter, draw.Regular)
	for i, text := range lines {
		s.Text(x, y+keyCell*0.7+float64(i)*keyLetter*1.3, text, draw.TextStyle{Size: keyLetter})
	}
	return y + max(keyCell+keyGap/2, float64(len(lines))*keyLetter*1.3+keyGap)
}

// drawCell draws the cell of a line, without its symbol.
func (l keyLine) drawCell(s *draw.Scene, x, y float64) {
	switch {
	case l.gap && l.dots:
		s.Line(x+0.5, y+keyCell/2, x+keyCell-0.5, y+keyCell/2, draw.Style{Class: "gap-dots", Stroke: fifthColour, Width: 0.4, Dash: "0.4 0.8"})
	case l.gap:
		s.Rect(x, y, keyCell, keyCell, draw.Style{Class: "gap", Fill: gapColour})
	case l.stitch != "":
		s.Rect(x, y, keyCell, keyCell, furrowTone.area("furrow", l.yarn.Fill))
		s.Path(stitchIn(l.stitch, x, y, keyCell, keyCell*0.94), clothTone.area("knit yarn-"+l.yarn.ID, l.yarn.Fill))
	default:
		s.Rect(x, y, keyCell, keyCell, yarnStyle(l.yarn))
	}
	if t := Texture(l.yarn.ID, x, y, keyCell, keyCell, keyCell/4); l.grey && t != "" {
		s.Path(t, textureStyle(l.yarn, 0.15))
	}
}
