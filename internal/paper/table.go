package paper

import "thenar/internal/draw"

// column is a column of a printed table.
type column struct {
	head  string
	share float64 // of the width, relative to the other columns
	right bool    // aligned right, for numbers
}

// row is a row of a printed table.
type row struct {
	cells  []string
	second []string // cells of a second line; nil: there is none
	below  []string // texts under the row, over the whole width
	bold   []bool   // by cell; nil: none is bold
}

// table prints rows under a head that is repeated on every page. Rows are not split.
func (f *flow) table(columns []column, rows []row) { f.twoLined(columns, nil, rows) }

// twoLined prints a table whose rows have a second line with columns of its own, and
// whose head has two lines, too.
func (f *flow) twoLined(first, second []column, rows []row) {
	size := f.small
	head := func() {
		for _, columns := range [][]column{first, second} {
			if columns != nil {
				f.cells(columns, heads(columns), size, func(int) bool { return true })
			}
		}
	}
	head()
	for i, r := range rows {
		if f.heightLeft() < min(f.rowHeight(first, second, r, size), f.pageHeight()-2*size*leading) {
			f.turnPage()
			head()
		}
		if i > 0 {
			f.page().Line(margin, f.y, f.size.Width-margin, f.y, draw.Style{Stroke: "#808080", Width: 0.2})
		}
		f.y += 0.6
		f.cells(first, r.cells, size, func(i int) bool { return r.bold != nil && r.bold[i] })
		if r.second != nil {
			f.cells(second, r.second, size, func(int) bool { return false })
		}
		for _, text := range r.below {
			f.text(margin+4, f.width()-4, text, draw.TextStyle{Size: size})
		}
		f.y += 0.6
	}
}

func heads(columns []column) (list []string) {
	for _, c := range columns {
		list = append(list, c.head)
	}
	return list
}

// widths divides the width between the margins among columns.
func (f *flow) widths(columns []column) []float64 {
	list, sum := make([]float64, len(columns)), 0.0
	for _, c := range columns {
		sum += c.share
	}
	for i, c := range columns {
		list[i] = c.share / sum * f.width()
	}
	return list
}

// cells writes the cells of a row, each wrapped in its column.
func (f *flow) cells(columns []column, texts []string, size float64, bold func(int) bool) {
	widths, x, lineCount := f.widths(columns), margin, 1
	for i, text := range texts {
		style := draw.TextStyle{Size: size}
		if bold(i) {
			style.Face = draw.Semibold
		}
		at, room := x, widths[i]-1.5
		if columns[i].right {
			style.Anchor, at = draw.End, x+room
		}
		lines := draw.Wrap(text, room, size, style.Face)
		for k, line := range lines {
			f.page().Text(at, f.y+size+float64(k)*size*leading, line, style)
		}
		lineCount = max(lineCount, len(lines))
		x += widths[i]
	}
	f.y += float64(lineCount) * size * leading
}

func (f *flow) rowHeight(first, second []column, r row, size float64) float64 {
	high := f.cellsHeight(first, r.cells, size) + 1.2
	if r.second != nil {
		high += f.cellsHeight(second, r.second, size)
	}
	for _, text := range r.below {
		high += f.textHeight(text, f.width()-4, size)
	}
	return high
}

// cellsHeight returns the height of a line of cells.
func (f *flow) cellsHeight(columns []column, texts []string, size float64) float64 {
	widths, lineCount := f.widths(columns), 1
	for i, text := range texts {
		lineCount = max(lineCount, len(draw.Wrap(text, widths[i]-1.5, size, draw.Semibold)))
	}
	return float64(lineCount) * size * leading
}
