package paper

import (
	"fmt"

	"thenar/internal/draw"
	"thenar/internal/roster"
)

// summary lays out the teacher's table: the numbers of each student's mitt, who knits
// from left to right, notes, and why some should be looked at. Who has nothing below
// their numbers gets room for a note, unless that takes a page more.
func summary(c roster.Class, part roster.Part, lines []roster.Line, o Options) []*draw.Scene {
	roomy, tight := summaryPages(c, part, lines, o, true), summaryPages(c, part, lines, o, false)
	if len(roomy) > len(tight) {
		return tight
	}
	return roomy
}

func summaryPages(c roster.Class, part roster.Part, lines []roster.Line, o Options, room bool) []*draw.Scene {
	f := newFlow(o, c.Name)
	f.text(margin, f.width(), c.Name, draw.TextStyle{Size: f.title, Face: draw.Serif})
	if when := c.When(); when != "" {
		f.say(when, f.body)
	}
	if c.Pattern != nil {
		f.say("Pattern: "+c.Pattern.Name+fixedText(c)+".", f.body)
	}
	for _, text := range []string{c.Yarn, c.Needle, c.Note} {
		if text != "" {
			f.say(text, f.body)
		}
	}
	looks := 0
	metres := 0
	for i := range lines {
		if lines[i].NeedsAttention() {
			looks++
		}
		metres += lines[i].Metres()
	}
	if part != c.Whole() {
		f.say(fmt.Sprintf("These are %s of %d.", part.Words(), len(c.Students)), f.body)
	}
	f.say(fmt.Sprintf("%d on the list, %d to look at. Yarn for all pairs: %d m at the most.", len(lines), looks, metres), f.body)
	if o.Double {
		f.say("Printed on both sides: everyone begins on a fresh sheet. Laid open, page 2 is beside page 3.", f.body)
	}
	f.y += 2
	f.repeat = c.Name
	first, second := summaryColumns(o.Large)
	f.twoLined(first, second, summaryRows(c, lines, o.Large, room))
	f.done()
	f.foot()
	return finish(f.pages, o.Grey)
}

// The columns of the teacher's table. Numbers stand beside the name, and who knits
// from left to right and the notes below; large print needs the whole width for the
// numbers, which stand below there.
var (
	studentColumn = column{"student", 2.6, false}
	numberColumns = []column{
		{"hand", 1.3, false},
		{"stitches / 10 cm", 1.3, true},
		{"cast on", 0.9, true},
		{"increases", 1.5, true},
		{"rounds", 1.1, true},
		{"held", 0.8, true},
		{"thumb", 1.0, true},
		{"above", 0.9, true},
		{"yarn", 1.0, true},
	}
	remarkColumns = []column{{"knits", 2.6, false}, {"notes", 9.8, false}} // in all as wide as the others
	largeRemarks  = []column{{"knits", 1.6, false}, {"notes", 3.8, false}}
	largeNumbers  = []column{ // by the widths in mm of their words
		{"hand", 23, false},
		{"stitches / 10 cm", 23, true},
		{"cast on", 13, true},
		{"increases", 28, true},
		{"rounds", 21, true},
		{"held", 14, true},
		{"thumb", 20, true},
		{"above", 18.5, true},
		{"yarn", 18.5, true},
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
		r := row{below: lookAt(l)}
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
		r.bold = make([]bool, len(r.cells))
		r.bold[0] = true
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
