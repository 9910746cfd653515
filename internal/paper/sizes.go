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
	f := newFlow(o, name+", sizes")
	f.text(margin, f.width(), name+": sizes", draw.TextStyle{Size: f.title, Face: draw.Serif})
	f.say(g.Kind.Words()+", "+ask.Words()+". Hands by the tables of averages; measure whoever can be measured.", f.body)
	if counts := strings.Join(g.OneHand, ", "); counts != "" && g.Kept {
		f.say("Kept for every hand: "+counts+".", f.body)
	} else if counts != "" {
		f.say("Left out: "+counts+", fixed for one hand.", f.body)
	}
	f.y++
	columns := sizeColumns(g.Kind)
	for _, b := range g.Blocks {
		head := ask.Rate(b)
		rows := sizeRows(g, b)
		f.head(head, float64(min(len(rows), 12)+1)*(f.small*leading+1.2))
		f.table(columns, rows)
		f.done()
	}
	if collides(g) {
		f.need(f.textHeight(same, f.width(), f.small))
		f.say(same, f.small)
	}
	f.say(caution, f.small)
	f.foot()
	return finish(f.pages, o.Grey)
}

const same = "= the same numbers as the size before: the two are one size. ! the plan has something to look at: open it with this hand."

func sizeColumns(kind mitt.Kind) []column {
	list := []column{{"to fit", 1.3, false}, {"cast on", 1, true}, {"hand", 1, true}}
	if kind.Thumbed() {
		list = append(list, column{"increases", 1.2, true}, column{"rounds", 1, true}, column{"held", 0.8, true}, column{"bridge", 0.9, true},
			column{"hand after", 1.2, true}, column{"thumb", 0.9, true})
	}
	list = append(list, column{"above", 0.9, true})
	if kind.Closed() {
		list = append(list, column{"top", 0.8, true})
	}
	return append(list, column{"", 0.5, true})
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
