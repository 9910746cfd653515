package paper

import (
	"strconv"
	"strings"

	"thenar/internal/draw"
	"thenar/internal/grade"
	"thenar/internal/mitt"
)

// SizeTable lays out the numbers of a mitt for a range of hand sizes, in a table
// for each gauge.
func SizeTable(o Options, name string, ask grade.Request, g grade.Grid) []*draw.Scene {
	h := bare(o, name+", sizes")
	about := setLines(name+": sizes", h.width(), draw.TextStyle{Size: h.title, Face: draw.Serif})
	say := func(text string) { about = append(about, setLines(text, h.width(), draw.TextStyle{Size: h.body})...) }
	say(g.Kind.Words() + ", " + ask.Words() + ". Hands by the tables of averages; measure whoever can be measured.")
	if counts := strings.Join(g.OneHand, ", "); counts != "" && g.Kept {
		say("Kept for every hand: " + counts + ".")
	} else if counts != "" {
		say("Left out: " + counts + ", fixed for one hand.")
	}
	list := []block{one("about", 0, keptLines(about))}
	list[0].withNext = true
	t := table{h, sizeColumns(g.Kind), nil}
	for _, b := range g.Blocks {
		head := ask.Rate(b)
		list = append(list, one(head, aboveHeading, keptWith(h.headingPart(head), t.rows(sizeRows(g, b), head))))
	}
	foot := []part{setWhole(caution, h.width(), draw.TextStyle{Size: h.small})}
	if collides(g) {
		foot = append([]part{setWhole(same, h.width(), draw.TextStyle{Size: h.small})}, foot...)
	}
	h.makeUp(append(list, one("caution", 20, foot)))
	h.foot()
	return finish(h.pages, o.Grey)
}

const same = "= the same numbers as the size before: the two are one size. ! the plan has something to look at: open it with this hand."

func sizeColumns(kind mitt.Kind) []column {
	list := []column{{"to fit", 1.3, false, true}, {"cast on", 1, true, true}, {"hand", 1, true, false}}
	if kind.Thumbed() {
		list = append(list, column{"increases", 1.2, true, false}, column{"rounds", 1, true, false}, column{"held", 0.8, true, false}, column{"bridge", 0.9, true, false},
			column{"hand after", 1.2, true, false}, column{"thumb", 0.9, true, false})
	}
	list = append(list, column{"above", 0.9, true, false})
	if kind.Closed() {
		list = append(list, column{"top", 0.8, true, false})
	}
	return append(list, column{"", 0.5, true, false})
}

func sizeRows(g grade.Grid, b grade.Block) []row {
	rows := make([]row, len(b.Cells))
	columns := sizeColumns(g.Kind)
	for i, c := range b.Cells {
		cells := []string{g.Hands[i].Label}
		if c.Why != "" {
			rows[i] = row{cells: append(cells, make([]string, len(columns)-1)...), below: []string{"no plan: " + c.Why}}
			continue
		}
		numbers := []int{c.CastOn, c.Hand}
		if g.Kind.Thumbed() {
			numbers = append(numbers, c.Increases, c.GussetRounds, c.Held, c.Bridge, c.HandAfter, c.Thumb)
		}
		numbers = append(numbers, c.Above)
		if g.Kind.Closed() {
			numbers = append(numbers, c.Top)
		}
		for _, n := range numbers {
			cells = append(cells, strconv.Itoa(n))
		}
		mark := ""
		if c.Same {
			mark = "="
		}
		if c.Warned {
			mark += "!"
		}
		rows[i] = row{cells: append(cells, mark)}
	}
	return rows
}

func collides(g grade.Grid) bool {
	for _, b := range g.Blocks {
		for _, c := range b.Cells {
			if c.Same || c.Warned {
				return true
			}
		}
	}
	return false
}
