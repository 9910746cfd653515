package paper

import (
	"fmt"

	"thenar/internal/draw"
	"thenar/internal/mitt"
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
	about := h.setTitle(c.Name)
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
	if seam := c.Names().SeamWords(); seam != "" {
		say(seam, draw.TextStyle{Size: h.body})
	}
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
	first, second := summaryColumns(c.Names(), h.o.Large)
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
	handColumn    = column{"hand", 1.3, false, false}
	remarkColumns = []column{{"knits", 3.1, false, false}, {"notes", 9.8, false, false}} // in all as wide as the others
	largeRemarks  = []column{{"knits", 1.6, false, false}, {"notes", 3.8, false, false}}
)

// summaryWide are the widths of the columns of numbers: relative to the others, and in
// large print by the widths in mm of their words.
var summaryWide = map[mitt.Number][2]float64{
	mitt.CastOn: {0.9, 13}, mitt.Increases: {1.5, 28}, mitt.GussetRounds: {1.1, 21}, mitt.Held: {0.8, 14}, mitt.ThumbStitches: {1.0, 20},
	mitt.RoundsAboveGusset: {0.9, 18.5},
}

// aside are the widths of the columns that are no numbers of the plan, by their place.
var aside = [][2]float64{{1.3, 23}, {1.0, 18.5}}

// numberColumns returns the hand's column and those of the numbers.
func numberColumns(w mitt.Names, large bool) []column {
	list := []column{handColumn}
	size, others := 0, 0
	if large {
		size, list[0].share = 1, 23
	}
	for _, c := range roster.NumberColumns(w) {
		wide, ofPlan := summaryWide[c.Of]
		if !ofPlan {
			wide = aside[others]
			others++
		}
		bold := c.Of == mitt.CastOn || c.Of == mitt.Held || c.Of == mitt.ThumbStitches
		list = append(list, column{c.Head, wide[size], true, bold})
	}
	return list
}

func summaryColumns(w mitt.Names, large bool) (first, second []column) {
	if large {
		return append([]column{studentColumn}, largeRemarks...), numberColumns(w, large)
	}
	return append([]column{studentColumn}, numberColumns(w, large)...), remarkColumns
}

func summaryRows(c roster.Class, lines []roster.Line, large, room bool) []row {
	rows, columns := make([]row, len(lines)), numberColumns(c.Names(), large)
	for i := range lines {
		l := &lines[i]
		r := row{below: lookAt(l), look: l.NeedsAttention()}
		numbers := make([]string, len(columns))
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
