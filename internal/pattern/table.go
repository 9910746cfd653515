package pattern

import (
	"slices"
	"strconv"
	"strings"
	"unicode/utf8"

	"thenar/internal/words"
)

// Table is the rounds that change the count of a part, with their counts, for all sizes of
// its line. Each row is one such round, the last the end of the part.
type Table struct {
	What    string   // "increase"
	First   []string // the head of each row: "1st increase"
	Columns []Column
}

// Column is a column of a table, for the sizes that have its values in common.
type Column struct {
	Title string // "round", "gusset" or "stitches"
	For   []int
	Cells []string // "–" where a size has no such row
}

// none stands in a table where a size has nothing.
const none = "–"

// tableOf returns the table of how the sizes of a line change.
func tableOf(rhythms []*rhythm, sizes []int) *Table {
	most := 0
	for _, r := range rhythms {
		most = max(most, len(r.rounds))
	}
	t := &Table{What: rhythms[0].what}
	for i := range most {
		t.First = append(t.First, words.Ordinal(i+1))
	}
	add := func(title string, of func(*rhythm) []int, share bool) {
		var lists [][]int
		from := len(t.Columns)
		for i, r := range rhythms {
			list := of(r)
			at := slices.IndexFunc(lists, func(other []int) bool { return share && begins(list, other) })
			if at < 0 {
				at, lists = len(lists), append(lists, nil)
				t.Columns = append(t.Columns, Column{Title: title})
			}
			t.Columns[from+at].For = append(t.Columns[from+at].For, sizes[i])
			if len(list) > len(lists[at]) {
				lists[at] = list
			}
		}
		for i, list := range lists {
			cells := make([]string, most)
			for k := range cells {
				if cells[k] = none; k < len(list) {
					cells[k] = strconv.Itoa(list[k])
				}
			}
			t.Columns[from+i].Cells = cells
		}
	}
	add(rhythms[0].noun, func(r *rhythm) []int { return r.rounds }, true)
	add("gusset", func(r *rhythm) []int { return r.inside }, true)
	add("stitches", func(r *rhythm) []int { return r.all }, false)
	return t
}

// begins reports whether the shorter of two lists begins the other.
func begins(a, b []int) bool {
	n := min(len(a), len(b))
	return slices.Equal(a[:n], b[:n])
}

// Lines returns a table as lines of plain text, its columns two spaces or more apart.
func (t *Text) Lines(of *Table) []string {
	columns := [][]string{append([]string{"", "size"}, of.First...)}
	for _, c := range of.Columns {
		names := make([]string, len(c.For))
		for i, s := range c.For {
			names[i] = t.Sizes[s]
		}
		columns = append(columns, append([]string{c.Title, strings.Join(names, ", ")}, c.Cells...))
	}
	columns[0][0] = of.What
	return spaced(columns)
}

// rows returns rows with a value for each size as lines of plain text.
func (t *Text) rows(rows []Row) []string {
	columns := make([][]string, 1+len(t.Sizes))
	columns[0] = []string{"size"}
	for i, name := range t.Sizes {
		columns[i+1] = []string{name}
	}
	for _, r := range rows {
		columns[0] = append(columns[0], r.Name)
		for i, v := range r.Values {
			columns[i+1] = append(columns[i+1], v)
		}
	}
	return spaced(columns)
}

// spaced returns columns as lines of plain text, two spaces or more apart.
func spaced(columns [][]string) []string {
	lines := make([]string, len(columns[0]))
	for _, column := range columns {
		wide := 0
		for _, cell := range column {
			wide = max(wide, utf8.RuneCountInString(cell))
		}
		for i, cell := range column {
			lines[i] += "  " + cell + strings.Repeat(" ", wide-utf8.RuneCountInString(cell))
		}
	}
	for i := range lines {
		lines[i] = strings.TrimRight(lines[i], " ")
	}
	return lines
}
