package paper

import (
	"fmt"

	"thenar/internal/draw"
	"thenar/internal/roster"
)

// bare returns what lays out pages that are no handout of a mitt, with a name in their
// feet.
func bare(o Options, name string) *handout { return &handout{flow: newFlow(o, name), o: o} }

// summary lays out the teacher's table: the numbers of each student's mitt, who knits
// from left to right, notes, and why some should be looked at. Who has nothing below
// their numbers gets room for a note, unless that takes a page more.
func summary(c roster.Class, part roster.Part, lines []roster.Line, o Options) []*draw.Scene {
	h := bare(o, c.Name)
	h.makeUp(h.summaryBlocks(c, part, lines))
	h.foot()
	return finish(h.pages, o.Grey)
}

// summaryBlocks sets what the class is, and its table with room for notes or without.
func (h *handout) summaryBlocks(c roster.Class, of roster.Part, lines []roster.Line) []block {
	about := setLines(c.Name, h.width(), draw.TextStyle{Size: h.title, Face: draw.Serif})
	say := func(text string, style draw.TextStyle) {
		if text != "" {
			about = append(about, setLines(text, h.width(), style)...)
		}
	}
	say(c.When(), draw.TextStyle{Size: h.body, Face: draw.Semibold})
	if of != c.Whole() {
		say(fmt.Sprintf("These are %s of %d.", of.Words(), len(c.Students)), draw.TextStyle{Size: h.body})
	}
	looks, metres := 0, 0
	for i := range lines {
		if lines[i].NeedsAttention() {
			looks++
		}
		metres += lines[i].Metres()
	}
	say(fmt.Sprintf("%d on the list, %d to look at. Yarn for all pairs: %d m at the most.", len(lines), looks, metres), draw.TextStyle{Size: h.body})
	if h.o.Double {
		say("Printed on both sides: everyone begins on a fresh sheet. Laid open, page 2 is beside page 3.", draw.TextStyle{Size: h.small})
	}
	var list [][2]string
	add := func(name, text string) {
		if text != "" {
			list = append(list, [2]string{name, text})
		}
	}
	if c.Pattern != nil {
		add("Pattern", c.Pattern.Name+fixedText(c)+".")
	}
	add("Yarn", c.Yarn)
	add("Needles", c.Needle)
	add("Note", c.Note)
	head := one("class", 0, append(together(about), keptLines(h.pairs(list, h.width()))...))
	head.withNext = true
	first, second := summaryColumns(h.o.Large)
	t := table{h, first, second}
	rows := block{name: "students", above: 35}
	for step, room := range []bool{true, false} {
		rows.ways = append(rows.ways, way{step, t.rows(summaryRows(c, lines, h.o.Large, room), c.Name)})
	}
	return []block{head, rows}
}

// The columns of the teacher's table. Numbers stand beside the name, and who knits
// from left to right and the notes below; large print needs the whole width for the
// numbers, which stand below there.
var (
	studentColumn = column{"student", 3.1, false, true}
	numberColumns = []column{
		{"hand", 1.3, false, false},
		{"stitches / 10 cm", 1.3, true, false},
		{"cast on", 0.9, true, true},
		{"increases", 1.5, true, false},
		{"rounds", 1.1, true, false},
		{"held", 0.8, true, true},
		{"thumb", 1.0, true, true},
		{"above", 0.9, true, false},
		{"yarn", 1.0, true, false},
	}
	remarkColumns = []column{{"knits", 3.1, false, false}, {"notes", 9.8, false, false}} // in all as wide as the others
	largeRemarks  = []column{{"knits", 1.6, false, false}, {"notes", 3.8, false, false}}
	largeNumbers  = []column{ // by the widths in mm of their words
		{"hand", 23, false, false},
		{"stitches / 10 cm", 23, true, false},
		{"cast on", 13, true, true},
		{"increases", 28, true, false},
		{"rounds", 21, true, false},
		{"held", 14, true, true},
		{"thumb", 20, true, true},
		{"above", 18.5, true, false},
		{"yarn", 18.5, true, false},
	}
)

func summaryColumns(large bool) (first, second []column) {
	if large {
		return append([]column{studentColumn}, largeRemarks...), largeNumbers
	}
	return append([]column{studentColumn}, numberColumns...), remarkColumns
}

func summaryRows(c roster.Class, lines []roster.Line, large, room bool) []row {
	rows := make([]row, len(lines))
	for i := range lines {
		l := &lines[i]
		r := row{below: lookAt(l), look: l.NeedsAttention()}
		numbers := make([]string, len(numberColumns))
		numbers[0] = l.Student.HandText(c.Unit)
		copy(numbers[1:], l.Numbers())
		remarks := []string{"", l.Student.Note}
		if l.Student.FromLeft {
			remarks[0] = "left to right"
		}
		switch {
		case large:
			r.cells, r.second = append([]string{l.Student.Name}, remarks...), numbers
		default:
			r.cells = append([]string{l.Student.Name}, numbers...)
			if room && len(r.below) == 0 || l.Student.Remark() != (roster.Remark{}) {
				r.second = remarks
			}
		}
		rows[i] = r
	}
	return rows
}

// lookAt returns why the teacher should look at a line.
func lookAt(l *roster.Line) []string {
	list := append(append([]string{}, l.Missing...), l.Doubts...)
	for _, q := range l.Asks {
		list = append(list, "Not printed: "+q.Words)
	}
	for k, text := range list {
		list[k] = "! " + text
	}
	return list
}
