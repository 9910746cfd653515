package paper

import (
	"strings"

	"thenar/internal/draw"
)

// column is a column of a printed table.
type column struct {
	head  string
	share float64 // of the width, relative to the other columns
	right bool    // aligned right, for numbers
	bold  bool
}

// row is a row of a printed table.
type row struct {
	cells  []string
	second []string // cells of a second line; nil: there is none
	below  []string // texts under the row, over the whole width
	look   bool     // a grey tab lies behind the first cell
}

// table is a table whose head is repeated on every page, and whose rows may have a second
// line with columns of its own.
type table struct {
	*handout
	first, second []column
}

// head sets the heads of the columns, in a line each for the rows' lines.
func (t *table) head() part {
	list := []part{t.cells(t.first, heads(t.first), true)}
	if t.second != nil {
		list = append(list, t.cells(t.second, heads(t.second), true))
	}
	return stack(append(list, space(4)))
}

// rows sets rows below the head. The head, and a heading above it if there is one, are
// repeated where they go on.
func (t *table) rows(rows []row, heading string) []part {
	head := t.head()
	list := []part{head}
	list[0].Keep = true
	for _, r := range rows {
		for i, p := range t.row(r) {
			p.goesOn = heading
			if i == 0 {
				p.headAgain = &head
			}
			list = append(list, p)
		}
	}
	return list
}

// row sets a row below a thin line: whole, with the texts under it.
func (t *table) row(r row) []part {
	name := t.widths(t.first)[0]
	lines := []part{t.cells(t.first, r.cells, false)}
	if r.look {
		first := lines[0].draw
		lines[0].draw = func(p *draw.Scene, x, y float64) {
			wide := min(draw.Measure(r.cells[0], t.small, draw.Semibold)+2, name-1)
			p.Rect(x-1, y-0.2, wide, lineOf(t.small), draw.Style{Fill: tabGrey})
			first(p, x, y)
		}
	}
	if r.second != nil {
		lines = append(lines, t.cells(t.second, r.second, false))
	}
	main := stack(append(append([]part{drawn(9, func(p *draw.Scene, x, y float64) {
		p.Line(x, y+0.1, x+t.width(), y+0.1, draw.Style{Stroke: "#606060", Width: 0.2})
	})}, lines...), space(5)))
	list := []part{main}
	for _, text := range r.below {
		list[len(list)-1].Keep = true
		under := setWhole(text, t.width()-4, draw.TextStyle{Size: t.small})
		list = append(list, drawn(under.Height+3, func(p *draw.Scene, x, y float64) { under.draw(p, x+4, y-0.4) }))
	}
	return list
}

func heads(columns []column) (list []string) {
	for _, c := range columns {
		list = append(list, c.head)
	}
	return list
}

// widths divides the width between the margins among columns. One whose head would break
// within a word, as in large print, takes what that needs from the others that hold numbers.
func (f *flow) widths(columns []column) []float64 {
	list, sum := make([]float64, len(columns)), 0.0
	for _, c := range columns {
		sum += c.share
	}
	over, lacks, spare := make([]float64, len(columns)), 0.0, 0.0
	for i, c := range columns {
		list[i] = c.share / sum * f.width()
		if !c.right {
			continue
		}
		over[i] = list[i] - f.leastWidth(c)
		lacks, spare = lacks+max(-over[i], 0), spare+max(over[i], 0)
	}
	if lacks == 0 || lacks > spare {
		return list
	}
	for i, mm := range over {
		list[i] -= min(mm, 0) + max(mm, 0)*lacks/spare
	}
	return list
}

// twoLines sets columns in one line if no head breaks within a word, else in two, the second
// below all but the first column.
func (f *flow) twoLines(columns []column) (first, second []column) {
	for i, mm := range f.widths(columns) {
		if columns[i].right && mm < f.leastWidth(columns[i])-1e-9 {
			half := (len(columns) + 1) / 2
			return columns[:half], append([]column{{"", columns[0].share, false, false}}, columns[half:]...)
		}
	}
	return columns, nil
}

// inLines divides the cells of rows as twoLines did their columns.
func (t *table) inLines(rows []row) []row {
	if t.second == nil {
		return rows
	}
	half := len(t.first)
	for i, r := range rows {
		rows[i].cells, rows[i].second = r.cells[:half], append([]string{""}, r.cells[half:]...)
	}
	return rows
}

// leastWidth returns the width of a column of numbers that breaks no word of its head.
func (f *flow) leastWidth(c column) (least float64) {
	for _, word := range strings.Fields(c.head + " 000") {
		least = max(least, draw.Measure(word, f.small, face(c.bold))+betweenCells)
	}
	if c.head == "" { // it keeps a margin
		return 0
	}
	return least
}

// betweenCells is the room between two columns in mm.
const betweenCells = 1.5

// cells sets the cells of a row, each wrapped in its column; those of a head end on one
// line.
func (t *table) cells(columns []column, texts []string, head bool) part {
	size, widths := t.small, t.widths(columns)
	lines, most := make([][]string, len(texts)), 1
	for i, text := range texts {
		lines[i] = draw.Wrap(hyphenated(text, widths[i]-betweenCells, size), widths[i]-betweenCells, size, face(columns[i].bold && !head))
		most = max(most, len(lines[i]))
	}
	return drawn(most*lineHeight(size), func(p *draw.Scene, x, y float64) {
		for i, cell := range lines {
			style, at := draw.TextStyle{Size: size, Face: face(columns[i].bold && !head)}, x
			if columns[i].right {
				style.Anchor, at = draw.End, x+widths[i]-betweenCells
			}
			from := 0
			if head {
				from = most - len(cell)
			}
			for k, line := range cell {
				p.Text(at, y+float64((from+k)*lineHeight(size))/10+size, line, style)
			}
			x += widths[i]
		}
	})
}

func face(bold bool) draw.Face {
	if bold {
		return draw.Semibold
	}
	return draw.Regular
}

// hyphenated lets a line break behind the hyphens of words that are wider than a line.
func hyphenated(text string, width, size float64) string {
	words := strings.Split(text, " ")
	for i, word := range words {
		if draw.Measure(word, size, draw.Semibold) > width {
			words[i] = strings.ReplaceAll(word, "-", "- ")
		}
	}
	return strings.Join(words, " ")
}
