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
	about := h.setTitle(name + ": sizes")
	say := func(text string) { about = append(about, setLines(text, h.width(), draw.TextStyle{Size: h.body})...) }
	say(g.Names.Kind.Words() + ", " + ask.Words() + ". Hands by the tables of averages; measure whoever can be measured.")
	if counts := strings.Join(g.OneHand, ", "); counts != "" && g.Kept {
		say("Kept for every hand: " + counts + ".")
	} else if counts != "" {
		say("Left out: " + counts + ", fixed for one hand.")
	}
	if seam := g.Names.SeamWords(); seam != "" {
		say(seam)
	}
	list := []block{one("about", 0, keptLines(about))}
	list[0].withNext = true
	first, second := h.twoLines(sizeColumns(g))
	t := table{h, first, second}
	for _, b := range g.Blocks {
		head := g.Names.InRows(ask.Rate(b))
		again := head
		if draw.Measure(goesOn(head), h.body, draw.Semibold) > h.width() { // in large print
			again, _, _ = strings.Cut(head, " (")
		}
		list = append(list, one(head, aboveHeading, keptWith(h.headingPart(head), t.rows(t.inLines(sizeRows(g, b)), again))))
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

// sizeNumber is a column of the table of sizes and the number that stands in it.
type sizeNumber struct {
	column
	of func(grade.Cell) int
}

// tabled are the numbers in the table of sizes, with the width of their columns.
var tabled = []struct {
	n     mitt.Number
	share float64
	of    func(grade.Cell) int
}{
	{mitt.CastOn, 1, func(c grade.Cell) int { return c.CastOn }},
	{mitt.HandStitches, 1, func(c grade.Cell) int { return c.Hand }},
	{mitt.Increases, 1.2, func(c grade.Cell) int { return c.Increases }},
	{mitt.GussetRounds, 1, func(c grade.Cell) int { return c.GussetRounds }},
	{mitt.Held, 0.8, func(c grade.Cell) int { return c.Held }},
	{mitt.BridgeStitches, 0.9, func(c grade.Cell) int { return c.Bridge }},
	{mitt.ThumbStitches, 0.9, func(c grade.Cell) int { return c.Thumb }},
	{mitt.RoundsAboveGusset, 0.9, func(c grade.Cell) int { return c.Above }},
	{mitt.TopRounds, 0.8, func(c grade.Cell) int { return c.Top }},
}

// sizeNumbers returns the columns of the numbers that the mitts have.
func sizeNumbers(g grade.Grid) (list []sizeNumber) {
	for _, t := range tabled {
		if !g.Names.Has(t.n) {
			continue
		}
		list = append(list, sizeNumber{column{g.Names.Head(t.n), t.share, true, t.n == mitt.CastOn}, t.of})
		if t.n == mitt.BridgeStitches {
			list = append(list, sizeNumber{column{"hand after", 1.2, true, false}, func(c grade.Cell) int { return c.HandAfter }})
		}
	}
	return list
}

func sizeColumns(g grade.Grid) []column {
	list := []column{{"to fit", 1.3, false, true}}
	for _, n := range sizeNumbers(g) {
		list = append(list, n.column)
	}
	return append(list, column{"", 0.5, true, false})
}

func sizeRows(g grade.Grid, b grade.Block) []row {
	rows := make([]row, len(b.Cells))
	columns := sizeColumns(g)
	for i, c := range b.Cells {
		cells := []string{g.Hands[i].Label}
		if c.Why != "" {
			rows[i] = row{cells: append(cells, make([]string, len(columns)-1)...), below: []string{"no plan: " + c.Why}}
			continue
		}
		for _, n := range sizeNumbers(g) {
			cells = append(cells, strconv.Itoa(n.of(c)))
		}
		mark := ""
		if c.Same {
			mark = "="
		}
		if c.Warned {
			mark += "!"
		}
		var below []string
		if fingers := g.FingersOf(c); fingers != "" {
			below = []string{fingers}
		}
		rows[i] = row{cells: append(cells, mark), below: below}
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
