package paper

import "thenar/internal/draw"

// column is one of a printed table.
type column struct {
	head  string
	share float64 // of the width
	right bool    // numbers stand at the right
}

// row is one line of a printed table, with what is said below it over the
// whole width.
type row struct {
	cells []string
	below []string
	bold  []bool // cells that stand out; nil: none
}

// table prints rows under a head that stands again on every page; a row is
// never split.
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
		if f.left() < min(high, f.whole()-2*size*leading) {
			f.turn()
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

// cells writes one line of cells, each wrapped in its column.
func (f *flow) cells(columns []column, widths []float64, texts []string, size float64, bold func(int) bool) {
	x, most := margin, 1
	for i, text := range texts {
		style := draw.TextStyle{Size: size, Bold: bold(i)}
		at, room := x, widths[i]-1.5
		if columns[i].right {
			style.Anchor, at = draw.End, x+room
		}
		lines := draw.Wrap(text, room, size, style.Bold)
		for k, line := range lines {
			f.page().Text(at, f.y+size+float64(k)*size*leading, line, style)
		}
		most = max(most, len(lines))
		x += widths[i]
	}
	f.y += float64(most) * size * leading
}

func (f *flow) rowHeight(widths []float64, r row, size float64) float64 {
	most := 1
	for i, text := range r.cells {
		most = max(most, len(draw.Wrap(text, widths[i]-1.5, size, true)))
	}
	high := float64(most)*size*leading + 1.2
	for _, text := range r.below {
		high += f.high(text, f.width()-4, size)
	}
	return high
}
