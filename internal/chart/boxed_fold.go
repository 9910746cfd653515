package chart

import (
	"fmt"
	"slices"
	"strconv"
	"strings"

	"thenar/internal/repeat"
)

// table returns the cells by row and by their place; nil where there is none.
func (g *Grid) table() [][]*Cell {
	list := make([][]*Cell, len(g.Rows))
	for i := range g.Rows {
		list[i] = make([]*Cell, g.Width)
		for j := range g.Rows[i].Cells {
			if c := &g.Rows[i].Cells[j]; c.Shown() {
				list[i][c.X] = c
			}
		}
	}
	return list
}

// numberer gives the same number to texts that are the same.
type numberer map[string]int

func (n numberer) of(text string) int {
	at, known := n[text]
	if !known {
		at = len(n) + 1
		n[text] = at
	}
	return at
}

// look is all that a cell shows, as text.
func (c *Cell) look() string {
	if c == nil {
		return "|"
	}
	return c.Op.Code() + "/" + c.Yarn + "/" + strconv.Quote(c.Note) + "|"
}

// measure is one way to part columns or rows: so many at a time, from the phase on.
type measure struct{ count, phase, repeat int }

// seen has the measures by which repeats are seen, and the places at which they are.
type seen map[measure][]bool

// at returns the places of a measure, of so many in all.
func (s seen) at(m measure, places int) []bool {
	if s[m] == nil {
		s[m] = make([]bool, places)
	}
	return s[m]
}

// apart returns the measures without the blocks in which their repeat has another phase, too:
// beside a bridge or where fingers part, columns come together that no motif takes whole.
func (s seen) apart() seen {
	out := seen{}
	for m, own := range s {
		pure := slices.Clone(own)
		for other, theirs := range s {
			if other.repeat != m.repeat || other.phase == m.phase {
				continue
			}
			for at := m.phase; at+m.count <= len(own); at += m.count {
				if slices.Contains(theirs[at:at+m.count], true) {
					clear(pure[at : at+m.count])
				}
			}
		}
		out[m] = pure
	}
	return out
}

// sorted returns the measures in their order, the uppermost repeat first.
func (s seen) sorted() []measure {
	list := make([]measure, 0, len(s))
	for m := range s {
		list = append(list, m)
	}
	slices.SortFunc(list, func(a, b measure) int {
		switch {
		case a.repeat != b.repeat:
			return b.repeat - a.repeat
		case a.count != b.count:
			return a.count - b.count
		}
		return a.phase - b.phase
	})
	return list
}

// runs returns where the same numbers stand again and again by a measure, each time the
// whole of it free, and something of it marked.
func (m measure) runs(numbers []int, free, marked []bool) (list []Fold, saved int) {
	var last []int
	for at := m.phase; at+m.count <= len(numbers); at += m.count {
		block := numbers[at : at+m.count]
		switch {
		case slices.Contains(free[at:at+m.count], false) || !slices.Contains(marked[at:at+m.count], true):
			last = nil
		case last != nil && slices.Equal(last, block):
			list[len(list)-1].Times++
			saved += m.count
		default:
			last = block
			list = append(list, Fold{From: at, Count: m.count, Times: 1, Repeat: m.repeat})
		}
	}
	return slices.DeleteFunc(list, func(f Fold) bool { return f.Times < 2 }), saved
}

// columnFolds returns the columns that repeat, of a chart with all of them.
func (g *Grid) columnFolds() []Fold {
	at, ways := g.table(), seen{}
	for i := range at {
		for x, c := range at[i] {
			if c == nil || c.Laid == 0 {
				continue
			}
			r := int(c.Laid) - 1
			wide, right := g.motifWidth(r), int(c.Right)
			if g.turnsMotif(r) {
				right = wide - 1 - right
			}
			ways.at(measure{wide, (x + right + 1) % wide, r}, g.Width)[x] = true
		}
	}
	ways = ways.apart()
	numbers, name := make([]int, g.Width), numberer{}
	for x := range numbers {
		var b strings.Builder
		for i := range at {
			b.WriteString(at[i][x].look())
		}
		numbers[x] = name.of(b.String())
	}
	return best(ways, numbers)
}

func mod(a, n int) int { return ((a % n) + n) % n }

// turnsMotif reports whether what is the right of a repeat's motif stands at its left.
func (g *Grid) turnsMotif(which int) bool {
	return (g.Mirrored && g.repeats[which].OnLeft != repeat.AsDrawn) != g.FromLeft
}

// best returns the folds of each repeat in turn, by the measure that leaves out most of what
// those before have left free, and then by others.
func best(ways seen, numbers []int) (folds []Fold) {
	free := make([]bool, len(numbers))
	for i := range free {
		free[i] = true
	}
	for list := ways.sorted(); len(list) > 0; {
		n := 1
		for n < len(list) && list[n].repeat == list[0].repeat {
			n++
		}
		most := ways.mostSaved(list[:n], numbers, free)
		if len(most) == 0 {
			list = list[n:]
		}
		for _, f := range most {
			for k := range f.Count * f.Times {
				free[f.From+k] = false
			}
		}
		folds = append(folds, most...)
	}
	slices.SortFunc(folds, func(a, b Fold) int { return a.From - b.From })
	return folds
}

// mostSaved returns the folds of the measure that leaves out most; none if all leave out
// nothing.
func (s seen) mostSaved(list []measure, numbers []int, free []bool) (folds []Fold) {
	least := 0
	for _, m := range list {
		if runs, saved := m.runs(numbers, free, s[m]); saved > least {
			folds, least = runs, saved
		}
	}
	return folds
}

// keepColumns leaves out all columns of a run but those of the motif that is worked first.
func (g *Grid) keepColumns() {
	place, folds := make([]int, g.Width), g.Across
	for i := range folds {
		f := &folds[i]
		kept := f.From + f.Count*(f.Times-1)
		if g.FromLeft {
			kept = f.From
		}
		for x := f.From; x < f.From+f.Count*f.Times; x++ {
			if x < kept || x >= kept+f.Count {
				place[x] = -1
			}
		}
		f.From = kept
	}
	width := 0
	for x := range place {
		if place[x] == 0 {
			place[x] = width
			width++
		}
	}
	for i := range folds {
		folds[i].From = place[folds[i].From]
	}
	for i := range g.Rows {
		for j := range g.Rows[i].Cells {
			if c := &g.Rows[i].Cells[j]; c.Shown() {
				c.X = place[c.X]
			}
		}
	}
	g.Width = width
}

// fewRounds is the number of rounds from which it is worth a box to leave them out.
const fewRounds = 3

// foldRows leaves out all rows of a run but those that are worked first. A box is as high
// as a motif, or as all of them together, so that each is whole; in rows to and fro it
// begins and ends on the same side.
func (g *Grid) foldRows() {
	at, ways := g.table(), seen{}
	all := 1
	for i := range at {
		for _, c := range at[i] {
			if c == nil || c.Laid == 0 {
				continue
			}
			r := int(c.Laid) - 1
			high := g.repeats[r].Motif.High
			if all <= len(g.Rows) { // else no box is so high
				all = common(all, high)
			}
			ways.at(measure{high, mod(i-int(c.Up), high), r}, len(g.Rows))[i] = true
		}
	}
	longer := seen{}
	for m, marked := range ways { // in multiples, a box may begin with each of the motifs that it takes
		for _, count := range []int{m.count, common(m.count, 2), all, common(all, 2)} {
			for phase := m.phase; phase < count && count <= len(g.Rows)/2; phase += m.count {
				longer[measure{count, phase, m.repeat}] = marked
			}
		}
	}
	numbers, name := make([]int, len(g.Rows)), numberer{}
	free := make([]bool, len(g.Rows))
	for i, row := range g.Rows {
		var b strings.Builder
		fmt.Fprintf(&b, "%d %d %q %q ", row.Side, len(row.Cells), row.Note, row.Fault)
		for _, c := range at[i] {
			b.WriteString(c.look())
		}
		numbers[i], free[i] = name.of(b.String()), true
	}
	folds := slices.DeleteFunc(longer.mostSaved(longer.sorted(), numbers, free), func(f Fold) bool {
		return f.Count*(f.Times-1) < fewRounds
	})
	g.keepRows(folds)
	g.Up = folds
}

// common returns the least common multiple of two numbers.
func common(a, b int) int {
	x, y := a, b
	for y != 0 {
		x, y = y, x%y
	}
	return a / x * b
}

// keepRows leaves out rows, and sets the places of the folds.
func (g *Grid) keepRows(folds []Fold) {
	rows := make([]Row, 0, len(g.Rows))
	next := 0
	for i := range folds {
		f := &folds[i]
		rows = append(rows, g.Rows[next:f.From+f.Count]...)
		next = f.From + f.Count*f.Times
		f.From = len(rows) - f.Count
	}
	g.Rows = append(rows, g.Rows[next:]...)
}
