package paper

import (
	"slices"
	"strings"

	"thenar/internal/draw"
	"thenar/internal/pattern"
)

// The room in a table of sizes, in mm.
const (
	sizeRoom  = 4.0 // beside a value
	leastName = 42.0
)

// bySize sets rows with a value for each size below a grey band with the names of the
// sizes. Where they find no room beside each other, the table goes on below itself.
func (p patternPages) bySize(rows []pattern.Row, heading string) []part {
	name, value := leastName, 0.0
	for _, r := range rows {
		name = max(name, draw.Measure(r.Name, p.small, draw.Regular)+sizeRoom)
		for _, v := range r.Values {
			value = max(value, draw.Measure(v, p.small, draw.Regular)+sizeRoom)
		}
	}
	for _, s := range p.Text.Sizes {
		value = max(value, draw.Measure(s, p.body, draw.Semibold)+sizeRoom)
	}
	name = min(name, 0.5*p.width())
	fit := max(int((p.width()-name)/value), 1)
	turns := (len(p.Text.Sizes) + fit - 1) / fit
	per := (len(p.Text.Sizes) + turns - 1) / turns
	var list []part
	for from := 0; from < len(p.Text.Sizes); from += per {
		if from > 0 {
			list = append(list, space(30))
		}
		list = append(list, p.sizeRows(rows, from, min(from+per, len(p.Text.Sizes)), name, heading)...)
	}
	return list
}

// sizeRows sets the table for the sizes from one to another.
func (p patternPages) sizeRows(rows []pattern.Row, from, to int, name float64, heading string) []part {
	step := (p.width() - name) / float64(to-from)
	cells := func(s *draw.Scene, x, y float64, texts []string, style draw.TextStyle) {
		style.Anchor = draw.End
		for i, text := range texts[from:to] {
			s.Text(x+name+step*float64(i+1)-0.5*sizeRoom, y, text, style)
		}
	}
	band := lineHeight(p.body) + 6
	head := drawn(band, func(s *draw.Scene, x, y float64) {
		s.Rect(x+name, y, p.width()-name, float64(band)/10, draw.Style{Fill: tabGrey})
		s.Text(x, y+0.3+p.body, "size", draw.TextStyle{Size: p.small})
		cells(s, x, y+0.3+p.body, p.Text.Sizes, draw.TextStyle{Size: p.body, Face: draw.Semibold})
	})
	head.Keep = true
	list := []part{head}
	for _, r := range rows {
		lines := wrapped(r.Name, name-1, draw.TextStyle{Size: p.small})
		high := len(lines)*lineHeight(p.small) + 8
		row := drawn(high, func(s *draw.Scene, x, y float64) {
			for i, line := range lines {
				s.Text(x, y+0.5+p.small+float64(i)*lineOf(p.small), line, draw.TextStyle{Size: p.small})
			}
			cells(s, x, y+0.5+p.small, r.Values, draw.TextStyle{Size: p.small})
			s.Line(x, y+float64(high)/10-0.1, x+p.width(), y+float64(high)/10-0.1, draw.Style{Stroke: lineGrey, Width: 0.2})
		})
		row.goesOn, row.headAgain = heading, &head
		list = append(list, row)
	}
	return list
}

// changes sets the rounds that change the count, with the counts of each size: the numbers
// of rounds on grey tabs, what is alike under one head.
func (p patternPages) changes(of *pattern.Table, heading string) []part {
	heads := make([]string, len(of.Columns))
	wide := make([]float64, len(of.Columns))
	first := draw.Measure(of.What, p.small, draw.Regular) + sizeRoom
	sum := first
	for i, c := range of.Columns {
		names := make([]string, len(c.For))
		for k, s := range c.For {
			names[k] = p.Text.Sizes[s]
		}
		heads[i] = spanned(names, p.Text.Sizes)
		wide[i] = draw.Measure(heads[i], p.small, draw.Semibold)
		for _, cell := range c.Cells {
			wide[i] = max(wide[i], draw.Measure(cell, p.body, draw.Semibold))
		}
		wide[i] += sizeRoom
		sum += wide[i]
	}
	for i := range of.Columns { // a title over several columns has room over all of them
		if from, to := titleOver(of, i); from == i {
			room := 0.0
			for k := from; k < to; k++ {
				room += wide[k]
			}
			if lack := draw.Measure(of.Columns[i].Title, p.small, draw.Regular) + sizeRoom - room; lack > 0 {
				wide[i] += lack
				sum += lack
			}
		}
	}
	if sum > p.width() {
		return p.changesBelow(of, heading)
	}
	spare := (p.width() - sum) / float64(len(wide)+1)
	first += spare
	for i := range wide {
		wide[i] += spare
	}
	return p.changeRows(of, heads, first, wide, heading)
}

// titleOver returns the columns that share the title of one.
func titleOver(of *pattern.Table, i int) (from, to int) {
	for from = i; from > 0 && of.Columns[from-1].Title == of.Columns[i].Title; from-- {
	}
	for to = i + 1; to < len(of.Columns) && of.Columns[to].Title == of.Columns[i].Title; to++ {
	}
	return from, to
}

func (p patternPages) changeRows(of *pattern.Table, heads []string, first float64, wide []float64, heading string) []part {
	right := func(i int) float64 { // of a column
		at := first
		for k := range i + 1 {
			at += wide[k]
		}
		return at - 0.5*sizeRoom
	}
	line := lineOf(p.small)
	head := drawn(2*lineHeight(p.small)+6, func(s *draw.Scene, x, y float64) {
		s.Text(x, y+line+p.small, of.What, draw.TextStyle{Size: p.small})
		for i, c := range of.Columns {
			if from, to := titleOver(of, i); from == i {
				s.Text(x+right(to-1), y+p.small, c.Title, draw.TextStyle{Size: p.small, Anchor: draw.End})
			}
			s.Text(x+right(i), y+line+p.small, heads[i], draw.TextStyle{Size: p.small, Anchor: draw.End, Face: draw.Semibold})
		}
	})
	head.Keep = true
	list := []part{head}
	high := lineHeight(p.body) + 4
	for r, name := range of.First {
		row := drawn(high, func(s *draw.Scene, x, y float64) {
			s.Line(x, y, x+p.width(), y, draw.Style{Stroke: lineGrey, Width: 0.2})
			base := y + 0.1 + p.body
			s.Text(x, base, name, draw.TextStyle{Size: p.small})
			for i, c := range of.Columns {
				style := draw.TextStyle{Size: p.small, Anchor: draw.End}
				if c.Title != "stitches" && c.Cells[r] != "–" {
					style.Size, style.Face = p.body, draw.Semibold
					if c.Title != "gusset" {
						s.Rect(x+right(i)-wide[i]+1.2*sizeRoom, y+0.1, wide[i]-0.7*sizeRoom, float64(high)/10-0.2, draw.Style{Fill: tabGrey})
					}
				}
				s.Text(x+right(i), base, c.Cells[r], style)
			}
		})
		row.goesOn, row.headAgain, row.Keep = heading, &head, len(of.First) <= mostWholeRows
		list = append(list, row)
	}
	list[len(list)-1].Keep = false
	return append(list, space(14))
}

// changesBelow sets such a table where it is too wide: each head in lines of its own.
func (p patternPages) changesBelow(of *pattern.Table, heading string) []part {
	columns := []column{{of.What, 1.5, false, true}}
	for _, c := range of.Columns {
		names := make([]string, len(c.For))
		for i, s := range c.For {
			names[i] = p.Text.Sizes[s]
		}
		columns = append(columns, column{c.Title + " " + spanned(names, p.Text.Sizes), 1, true, c.Title == "round"})
	}
	rows := make([]row, len(of.First))
	for i, first := range of.First {
		rows[i].cells = []string{first}
		for _, c := range of.Columns {
			rows[i].cells = append(rows[i].cells, c.Cells[i])
		}
	}
	t := table{p.handout, columns, nil}
	list := append(t.rows(rows, heading), space(12))
	for i := range list[:len(list)-1] {
		list[i].Keep = list[i].Keep || len(rows) <= mostWholeRows
	}
	return list
}

// mostWholeRows is the most rows of a table that stay together on a page.
const mostWholeRows = 16

// spanned names neighbouring sizes by the first and the last of them.
func spanned(names, all []string) string {
	first, last := slices.Index(all, names[0]), slices.Index(all, names[len(names)-1])
	if len(names) > 2 && last-first+1 == len(names) {
		return names[0] + "–" + names[len(names)-1]
	}
	return strings.Join(names, ", ")
}
