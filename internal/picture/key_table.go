package picture

import (
	"slices"

	"thenar/internal/chart"
	"thenar/internal/draw"
)

// Line is one of the lines of a printed chart that its key explains.
type Line int

// The lines of a printed chart. A broken line stands at the second marker.
const (
	NoLine Line = iota
	FirstEdge
	SecondEdge
	FifthLine
	GussetEdge // of a chart that is laid as on the screen
	JoinLine   // where the parts of a divided chart are laid on each other
)

// JoinStyle is the style of the line along which the parts of a chart are joined.
var JoinStyle = draw.Style{Stroke: outlineColour, Width: 0.45, Dash: "2.5 1.5"}

// keyApart is how far an upright line of a key ends within its cell, in mm, so that it
// doesn't run into the one below.
const keyApart = 0.5

// draw draws the line in a cell of a key.
func (l Line) draw(s *draw.Scene, x, y float64) {
	mid := x + keyCell/2
	switch l {
	case FirstEdge:
		s.Line(mid, y+keyApart, mid, y+keyCell-keyApart, draw.Style{Stroke: outlineColour, Width: firstEdge})
	case SecondEdge:
		s.Line(mid, y+keyApart, mid, y+keyCell-keyApart, secondEdgeStyle)
	case GussetEdge:
		s.Line(mid, y+keyApart, mid, y+keyCell-keyApart, draw.Style{Stroke: fifthColour, Width: firstEdge})
	case JoinLine:
		s.Line(x-0.5, y+keyCell/2, x+keyCell+0.5, y+keyCell/2, JoinStyle)
	case FifthLine:
		s.Line(x, y+keyCell/2, x+keyCell, y+keyCell/2, draw.Style{Stroke: outlineColour, Width: fifthWidth})
	}
}

// A Sign is a line of a key without a stitch: an abbreviation or another sign of the
// words, or a line of a printed chart.
type Sign struct {
	Sign, Line string
	Drawn      Line
}

// KeyTable is a key whose lines are collected once, to be measured and drawn in any
// width.
type KeyTable struct {
	list []keyLine
	few  int // number of lines up to which it is one column
	most int // number of columns at most
}

// NewKey returns one key of several charts, with what they share only once, and of the
// signs that the words beside them use.
func NewKey(charts []chart.Grid, l Look, more ...Sign) *KeyTable {
	list := keyLines(charts, l)
	for _, m := range more {
		list = append(list, keyLine{sign: m.Sign, text: m.Line, line: m.Drawn, bare: true, flush: len(charts) == 0})
	}
	return newKeyTable(list, 1)
}

func newKeyTable(list []keyLine, few int) *KeyTable {
	return &KeyTable{indented(list), few, mostKeyColumns}
}

// indented returns lines whose words stand under each other, beside their signs.
func indented(list []keyLine) []keyLine {
	list = slices.Clone(list)
	indent := signColumn(list)
	for i := range list {
		if list[i].sign != "" || list[i].line != NoLine { // words of lines stand under those of signs
			list[i].indent = indent
		}
	}
	return list
}

// Split parts the key in one column of a width and height in mm, with all lines that fit
// from the first on, and the rest of it; nil if nothing is left.
func (k *KeyTable) Split(width, height float64) (column, rest *KeyTable) {
	y, n := keyTop, 0
	for ; n < len(k.list); n++ {
		if y += k.list[n].height(width); y > height {
			break
		}
	}
	column = &KeyTable{k.list[:n], k.few, 1}
	if n < len(k.list) {
		rest = &KeyTable{k.list[n:], k.few, k.most}
	}
	return column, rest
}

// columns returns the number of columns that a width has room for.
func (k *KeyTable) columns(width float64) int {
	columns := 1
	if len(k.list) > manyKeyLines {
		columns = min(max(int(width/minKeyColumn), 1), k.most)
	}
	for n := columns + 1; n <= k.most && len(k.list) > k.few && linesFit(k.list, width/float64(n)); n++ {
		columns = n
	}
	return columns
}

// Height returns the height in mm of what Draw draws in a width.
func (k *KeyTable) Height(width float64) float64 { return highest(k.lay(width)) }

// keyColumn is a column of a key: its lines, its left edge and its width in mm.
type keyColumn struct {
	lines   []keyLine
	x, each float64
}

// highest returns the height of the highest column.
func highest(columns []keyColumn) (high float64) {
	for _, c := range columns {
		y := keyTop
		for _, line := range c.lines {
			y += line.height(c.each)
		}
		high = max(high, y)
	}
	return high
}

// inColumns divides lines among n columns of a width from x on.
func inColumns(list []keyLine, n int, x, width float64) (columns []keyColumn) {
	each := width / float64(n)
	for i, lines := range keyColumns(list, n, each) {
		columns = append(columns, keyColumn{lines, x + float64(i)*each, each})
	}
	return columns
}

// lay divides the lines into columns of a width: in their order, or, if that is lower,
// those with drawings in the first, which may be narrower, so that the others need no
// room for any.
func (k *KeyTable) lay(width float64) []keyColumn {
	n := k.columns(width)
	best := inColumns(k.list, n, 0, width)
	var drawn, bare []keyLine
	for _, l := range k.list {
		if l.bare && l.line == NoLine {
			l.flush = true
			bare = append(bare, l)
		} else {
			drawn = append(drawn, l)
		}
	}
	if n == 1 || len(drawn) == 0 || len(bare) == 0 {
		return best
	}
	drawn, bare = indented(drawn), indented(bare)
	for _, share := range []float64{1, 0.92, 0.84} {
		first := width / float64(n) * share
		apart := append(inColumns(drawn, 1, 0, first), inColumns(bare, n-1, first, width-first)...)
		if highest(apart) < highest(best) {
			best = apart
		}
	}
	return best
}

// keyTop is the room above the first line of a key in mm.
const keyTop = 0.5

// Draw draws the key in a width in mm, in as many columns as that has room for.
func (k *KeyTable) Draw(width float64) *draw.Scene {
	s := &draw.Scene{Width: width, Label: "Key to the symbols"}
	for _, c := range k.lay(width) {
		y := keyTop
		for _, line := range c.lines {
			y = line.draw(s, c.x, y, c.each)
		}
		s.Height = max(s.Height, y)
	}
	return s
}

// Rows returns the rows of the key in a width in mm, with as many lines side by side as
// Draw has columns, so that it may be parted between any two.
func (k *KeyTable) Rows(width float64) []KeyRow {
	var rows []KeyRow
	n := k.columns(width)
	for few := range slices.Chunk(k.list, n) {
		r := KeyRow{lines: few, column: width / float64(n)}
		for _, line := range few {
			r.Height = max(r.Height, keyTop+line.height(r.column))
		}
		rows = append(rows, r)
	}
	return rows
}

// KeyRow is a row of a key, with its height in mm.
type KeyRow struct {
	Height float64
	lines  []keyLine
	column float64 // width of each line
}

// Draw draws the row.
func (r KeyRow) Draw() *draw.Scene {
	s := &draw.Scene{Width: r.column * float64(len(r.lines)), Height: r.Height, Label: "Key to the symbols"}
	for i, line := range r.lines {
		line.draw(s, float64(i)*r.column, keyTop, r.column)
	}
	return s
}
