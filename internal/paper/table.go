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
	cells []string
	below []string // texts under the row, over the whole width
	bold  []bool   // by cell; nil: none is bold
}

// table prints rows under a head that is repeated on every page. Rows are not split.
func (f *flow) table(columns []column, rows []row) {
	widths := make([]float64, len(columns))
	sum := 0.0
	for _, c := range columns {
		sum += c.share
	}
	for i, c := range columns {
		widths[i] = c.share / sum * f.width()
	}
	heads := make([]string, len(columns))
	for i, c := range columns {
		heads[i] = c.head
	}
	size := f.small
	f.cells(columns, widths, heads, size, func(int) bool { return true })
	for i, r := range rows {
		high := f.rowHeight(widths, r, size)
		if f.heightLeft() < min(high, f.pageHeight()-2*size*leading) {
			f.turnPage()
			f.cells(columns, widths, heads, size, func(int) bool { return true })
		}
		if i > 0 {
			f.page().Line(margin, f.y, f.size.Width-margin, f.y, draw.Style{Stroke: "#808080", Width: 0.2})
		}
		f.y += 0.6
		f.cells(columns, widths, r.cells, size, func(i int) bool { return r.bold != nil && r.bold[i] })
		for _, text := range r.below {
			f.text(margin+4, f.width()-4, text, draw.TextStyle{Size: size})
		}
		f.y += 0.6
	}
}

// cells writes the cells of a row, each wrapped in its column.
func (f *flow) cells(columns []column, widths []float64, texts []string, size float64, bold func(int) bool) {
	x, lineCount := margin, 1
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

func (f *flow) rowHeight(widths []float64, r row, size float64) float64 {
	lineCount := 1
	for i, text := range r.cells {
		lineCount = max(lineCount, len(draw.Wrap(text, widths[i]-1.5, size, draw.Semibold)))
	}
	high := float64(lineCount)*size*leading + 1.2
	for _, text := range r.below {
		high += f.textHeight(text, f.width()-4, size)
	}
	return high
}
