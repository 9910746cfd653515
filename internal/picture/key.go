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
	return newKeyTable(keyLines([]chart.Grid{g}, l), fewKeyLines).Draw(width)
}

// keyLines returns the lines of a key: of symbols, of places without a stitch, of yarns.
func keyLines(charts []chart.Grid, l Look) []keyLine {
	var list []keyLine
	behind := usedBehind(charts)
	symbols := func(g chart.Grid, l Look) []keyLine { return symbolLines(g, l, behind) }
	for _, of := range []func(chart.Grid, Look) []keyLine{symbols, gapLines, yarnLines, motifLines} {
		for _, g := range charts {
			for _, line := range of(g, l) {
				if !slices.ContainsFunc(list, line.saysAs) {
					list = append(list, line)
				}
			}
		}
	}
	return tellGaps(list)
}

// saysAs reports whether a line tells nothing that another doesn't: where only one of two
// charts has colours, the same symbol stands on grounds that differ.
func (l keyLine) saysAs(other keyLine) bool {
	if l.sign != "" && l.text == other.text {
		l.yarn = other.yarn
	}
	return l == other
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

// usedBehind returns the operations that some charts show in wrong-side rows.
func usedBehind(charts []chart.Grid) []stitch.Op {
	var list []stitch.Op
	for _, g := range charts {
		list = append(list, g.UsedBehind()...)
	}
	return list
}

// symbolLines returns the lines of a chart's symbols; of those behind, it says how they
// are worked in wrong-side rows.
func symbolLines(g chart.Grid, l Look, behind []stitch.Op) (list []keyLine) {
	main, by := g.Palette.Or(chart.ID(0)), l.Symbols
	for _, op := range g.Used() {
		line := keyLine{path: by.symbolIn(g, op), yarn: main}
		line.sign, line.text = by.meaningIn(g, op)
		if other := op.Turned(); other != op && slices.Contains(behind, op) {
			_, words := by.meaningIn(g, other)
			line.text += "; on wrong-side rows: " + words
		}
		if l.Knitted && IsKnitted(g) {
			line.stitch = shapeOf(op, true)
			if op == stitch.Knit || op == stitch.Purl { // knitting shows them without a symbol
				line.path = ""
			}
		}
		list = append(list, line)
	}
	for _, said := range g.Signs() {
		list = append(list, keyLine{said: said, yarn: main, sign: said, text: chart.Meaning(said)})
	}
	return list
}

// gapLines returns the line of the places without a stitch, if a chart has any.
func gapLines(g chart.Grid, _ Look) []keyLine {
	if !g.NoStitch() {
		return nil
	}
	return []keyLine{{gap: true, dots: IsKnitted(g), text: "no stitch: go on with the next"}}
}

// tellGaps tells the places without a stitch in charts with colours from those in others,
// which are drawn otherwise, where a key has both.
func tellGaps(list []keyLine) []keyLine {
	gap := func(dots bool) int {
		return slices.IndexFunc(list, func(l keyLine) bool { return l.gap && l.dots == dots })
	}
	if at := gap(true); at >= 0 && gap(false) >= 0 {
		list[at].text = "the same where a chart has colours"
		if at < gap(false) {
			list[at], list[gap(false)] = list[gap(false)], list[at]
		}
	}
	return list
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
		return len(l.lines(width)) > 1
	})
}

// fewKeyLines is the number of lines up to which a key is one column, manyKeyLines that
// up to which no line is broken to make room for another column.
const (
	fewKeyLines  = 4
	manyKeyLines = 8
)

// minKeyColumn is the least width of a column in which lines are broken, in mm.
const minKeyColumn = 50.0

// widestSign is the width up to which a sign stands in the column of signs, in mm. The
// words of a longer one stand below it.
const widestSign = 17.0

// signColumn returns the width of the column in which the signs of a key stand, 0 for
// none.
func signColumn(list []keyLine) float64 {
	widest := 0.0
	for _, l := range list {
		if w := l.signWidth(); w <= widestSign {
			widest = max(widest, w)
		}
	}
	return widest
}

// keyColumns divides the lines of a key into columns of a width, so that the highest
// is as low as their order allows.
func keyColumns(list []keyLine, columns int, width float64) [][]keyLine {
	if len(list) == 0 {
		return nil
	}
	all, heights := 0.0, make([]float64, len(list))
	for i, line := range list {
		heights[i] = line.height(width)
		all += heights[i]
	}
	fill := func(room float64) (parts [][]keyLine) {
		y, from := 0.0, 0
		for i, h := range heights {
			if i > from && y+h > room {
				parts, from, y = append(parts, list[from:i]), i, 0
			}
			y += h
		}
		return append(parts, list[from:])
	}
	for room := all / float64(columns); ; room++ {
		if parts := fill(room); len(parts) <= columns {
			return parts
		}
	}
}

// keyLine is one line of a key.
type keyLine struct {
	path   string // of a symbol
	said   string // in place of one
	stitch string // drawn as knitting; empty: plain
	yarn   chart.Yarn
	gap    bool
	dots   bool // of a gap
	grey   bool
	bare   bool // has no drawing
	flush  bool // keeps no room for one
	sign   string
	text   string
	indent float64 // of the text, beyond the place of the sign
	line   Line    // of a printed chart, in place of a symbol
	motif  motifDrawn
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
	switch {
	case l.line != NoLine:
		l.line.draw(s, left, y)
	case !l.bare:
		l.drawCell(s, left, y)
		s.Rect(left, y, keyCell, keyCell, draw.Style{Class: "border", Stroke: fifthColour, Width: 0.25})
	}
	if path := symbolInCell(l.path, left, y, keyCell, keyCell); path != "" {
		if l.yarn.Fill != "" || l.stitch != "" { // on fabric
			s.Path(path, draw.Style{Class: "edge", Stroke: edgeColour, Width: 1.2, Round: true})
		}
		s.Path(path, draw.Style{Class: "symbol", Stroke: inkColour, Width: 0.4, Round: true})
	}
	l.drawSaid(s, left, y)
	x, first := left+l.inset(), y+keyCell*0.7
	if l.sign != "" {
		s.Text(x, first, l.sign, draw.TextStyle{Size: keyLetter, Face: draw.Semibold})
	}
	for i, text := range l.lines(width) {
		if text != "" {
			s.Text(x+l.indent, first+float64(i)*keyLetter*1.3, text, draw.TextStyle{Size: keyLetter})
		}
	}
	l.motif.draw(s, x, y+l.textHeight(width), l.motifRoom(width), l.grey)
	return y + l.height(width)
}

// signWidth returns the width of the line's sign with the gap after it, 0 without one.
func (l keyLine) signWidth() float64 {
	if l.sign == "" {
		return 0
	}
	return draw.Measure(l.sign, keyLetter, draw.Semibold) + keyGap
}

// inset returns the room that the line keeps for its drawing.
func (l keyLine) inset() float64 {
	if l.flush {
		return 0
	}
	return keyCell + keyGap
}

// lines returns the text of the line, broken for a column of a width. The first is
// empty beside a sign that is too wide for its column.
func (l keyLine) lines(width float64) []string {
	lines := draw.Wrap(l.text, width-0.5-l.inset()-keyGap-l.indent, keyLetter, draw.Regular)
	if l.signWidth() > l.indent {
		lines = append([]string{""}, lines...)
	}
	return lines
}

// height returns the height that the line takes in a column of a width.
func (l keyLine) height(width float64) float64 {
	return l.textHeight(width) + l.motif.height(l.motifRoom(width))
}

// textHeight returns the height of its text, or of what is drawn beside that.
func (l keyLine) textHeight(width float64) float64 {
	lines := float64(len(l.lines(width))) * keyLetter * 1.3
	if l.bare {
		return lines + keyGap/4
	}
	return max(keyCell, lines) + keyGap/4
}

// motifRoom returns the width for a motif in a column of a width.
func (l keyLine) motifRoom(width float64) float64 { return width - 0.5 - l.inset() - keyGap }

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
