package chart

import (
	"slices"
	"strconv"

	"thenar/internal/wale"
)

// lay sets X of every cell that is shown.
func (g *Grid) lay(base int) {
	if g.Layout == Columns {
		g.layColumns()
	} else {
		g.layWedge(base)
	}
}

// piece is the part of a row that is shown: some cells in the order worked, past the
// last of which comes the first, and the number of those to the right of the middle.
type piece struct{ from, count, rights int }

// layWedge aligns the middles of all rows. The middle is the column that the
// tube is turned to, if it is; else that of the gusset's base or the bridge, if
// the view has one; else the middle of the round.
func (g *Grid) layWedge(base int) {
	pieces := make([]piece, len(g.Rows))
	order := []string(nil)
	if g.Middle != "" {
		order, _ = merge(g.Rows)
	}
	maxLeft, maxRight, show := 0, 0, g.View.info()
	for i := range g.Rows {
		switch {
		case g.Middle != "":
			pieces[i] = turned(&g.Rows[i], nearest(&g.Rows[i], g.Middle, order))
		case show.cut:
			pieces[i] = g.around(&g.Rows[i], base, Neighbours)
		case show.block && base > 0:
			pieces[i] = g.around(&g.Rows[i], base, -1)
		default:
			n := len(g.Rows[i].Cells)
			if of := g.Rows[i].present(); of != nil {
				n = len(of)
			}
			pieces[i] = piece{0, n, n / 2}
		}
		maxRight = max(maxRight, pieces[i].rights)
		maxLeft = max(maxLeft, pieces[i].count-pieces[i].rights)
	}
	g.Width = maxLeft + maxRight
	for i, p := range pieces {
		cells, of := g.Rows[i].Cells, g.Rows[i].present()
		for k := range p.count {
			at := (p.from + k) % len(cells)
			if of != nil {
				at = of[(p.from+k)%len(of)]
			}
			cells[at].X = maxLeft + p.rights - 1 - k
		}
	}
}

// around returns the leading block with the given number of the hand's cells on
// each side. If that is negative, it returns all of them, half on each side,
// with an odd one on the back's. The block is worked first
// and is in the middle; the hand's first stitches follow at its left, and the
// round's last stitches are at its right.
func (g *Grid) around(r *Row, base, neighbours int) piece {
	n, hand := len(r.Cells), len(r.Cells)-r.lead
	rights := pastMiddle(r.Cells[r.before:r.before+r.lead], base, g.Mirrored)
	if !g.Mirrored {
		rights = r.lead - rights
	}
	if r.flat {
		from, to := r.beside(neighbours)
		return piece{from, to - from, r.before - from + rights}
	}
	before, after := g.opposite(hand)
	if neighbours >= 0 {
		before, after = neighbours, min(neighbours, hand)
		if hand < 2*neighbours {
			before = 0
		}
	}
	return piece{n - before, before + r.lead + after, before + rights}
}

// pastMiddle returns the number of columns of a leading block that the right
// hand works after its middle. For a gusset these are the later half of the
// base (without its middle stitch, if it has one) and what was made at the last
// edge; for a bridge, its later half. The other hand works the block from its other end.
func pastMiddle(cells []Cell, base int, mirrored bool) int {
	n, gusset := 0, inGusset(cells)
	for i := range cells {
		at := i
		if mirrored {
			at = len(cells) - 1 - i
		}
		if isPast(cells[i].Column, at, len(cells), base, gusset) {
			n++
		}
	}
	return n
}

func inGusset(cells []Cell) bool {
	return !slices.ContainsFunc(cells, func(c Cell) bool { return c.Column != "" && c.Column[0] == wale.Bridge })
}

func isPast(column string, i, n, base int, gusset bool) bool {
	if column == "" || !gusset {
		return 2*i >= n
	}
	k, _ := strconv.Atoi(column[1:])
	return column[0] == wale.Last || (column[0] == wale.Base && 2*k > base+1)
}

// turned returns the whole round, as far as it has a place in the chart, with one of its
// cells in the middle.
func turned(r *Row, middle int) piece {
	n := len(r.Cells)
	if of := r.present(); of != nil {
		at, _ := slices.BinarySearch(of, middle)
		n, middle = len(of), at%len(of)
	}
	rights := (n + 1) / 2
	from := ((middle-rights+1)%n + n) % n
	return piece{from, n, rights}
}

// nearest returns the index of a column's cell. If the row lacks the column, it
// is that of the nearest column before.
func nearest(r *Row, column string, order []string) int {
	at := slices.Index(order, column)
	place := map[string]int{}
	for i, c := range r.Cells {
		place[c.Column] = i
	}
	for k := range order {
		if i, ok := place[order[((at-k)%len(order)+len(order))%len(order)]]; ok {
			return i
		}
	}
	return 0
}

// layColumns gives every column one place in all rows. The cells of a row
// always stay in the order worked, so where the left hand takes stitches
// together in an even round, a column or two move aside.
func (g *Grid) layColumns() {
	all, at := merge(g.Rows)
	order := g.withoutWaiting(all)
	switch show := g.View.info(); {
	case g.uncut:
	case g.Rows[0].flat && show.cut:
		order = cutRow(all)
	case g.Rows[0].flat: // it is open where the seam will be
	case show.cut || show.block && g.Rows[0].lead > 0:
		order = g.cut(all)
	}
	if at := slices.Index(order, g.Middle); g.Middle != "" && at >= 0 {
		from := ((at-(len(order)-1)/2)%len(order) + len(order)) % len(order)
		order = append(slices.Clone(order[from:]), order[:from]...)
	}
	g.Width = len(order)
	place := make(map[string]int, len(order))
	for i, name := range order {
		place[name] = len(order) - 1 - i
	}
	xs := make([]int, len(all)) // of every column
	for i, name := range all {
		xs[i] = -1
		if x, ok := place[name]; ok {
			xs[i] = x
		}
	}
	for i, worked := range at { // the places of the row in the order worked
		slices.Sort(worked)
		for j := range g.Rows[i].Cells {
			g.Rows[i].Cells[j].X = xs[worked[j]]
		}
	}
}

// cut orders the columns from the place where the tube is cut open, opposite
// the gusset. If the view is cut, it drops all of the hand but the gusset's
// neighbours.
func (g *Grid) cut(order []string) []string {
	lead := leading(order)
	hand := order[lead:]
	before, after := g.opposite(len(hand))
	if g.View.Cut() {
		before, after = Neighbours, min(Neighbours, len(hand))
		if len(hand) < 2*Neighbours {
			before = 0
		}
	}
	out := slices.Clone(hand[len(hand)-before:])
	out = append(out, order[:lead]...)
	return append(out, hand[:after]...)
}

// opposite returns how many of the hand's stitches are shown before its block, and how many
// after it: half of them each, an odd one on the back's side.
func (g *Grid) opposite(hand int) (before, after int) {
	if g.Mirrored != g.down { // the back is worked first
		return hand / 2, hand - hand/2
	}
	return hand - hand/2, hand / 2
}

// merge returns all columns of rows in the order worked, and for each row the places of
// its cells' columns in it. A new column comes after its neighbour in its first row.
func merge(rows []Row) (all []string, at [][]int) {
	at = numbersOf(rows)
	var order, places []int // the columns in the order worked, and the place of each in it
	for i, row := range at {
		last := -1 // the place of the column before
		for j, column := range row {
			if column < len(places) {
				last = max(last, places[column])
				continue
			}
			last++
			places = append(places, last)
			order, all = slices.Insert(order, last, column), slices.Insert(all, last, rows[i].Cells[j].Column)
			for k := last + 1; k < len(order); k++ {
				places[order[k]] = k
			}
		}
	}
	for _, row := range at {
		for j, column := range row {
			row[j] = places[column]
		}
	}
	return all, at
}

// numbersOf numbers the columns of rows in the order in which they are met, and returns
// the number of every cell's. Most cells stand on one of their own column, and need no
// look into the map.
func numbersOf(rows []Row) [][]int {
	cells := 0
	for i := range rows {
		cells += len(rows[i].Cells)
	}
	list, room, known := make([][]int, len(rows)), make([]int, cells), map[string]int{}
	for i := range rows {
		n := len(rows[i].Cells)
		list[i], room = room[:n:n], room[n:]
		for j := range rows[i].Cells {
			column := rows[i].Cells[j].Column
			if i > 0 && j < len(list[i-1]) && rows[i-1].Cells[j].Column == column {
				list[i][j] = list[i-1][j]
				continue
			}
			number, ok := known[column]
			if !ok {
				number = len(known)
				known[column] = number
			}
			list[i][j] = number
		}
	}
	return list
}
