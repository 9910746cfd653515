package chart

import (
	"slices"

	"thenar/internal/stitch"
)

// member is a size in a chart of several.
type member struct {
	size int
	of   *strip
	up   int // rows by which it begins above that of the others
}

// overlay is sizes put over each other, and the chart that they make.
type overlay struct {
	members []member
	chart   Sizes
}

// joined adds a size to the first of groups with which it agrees, or as a group of its own.
func joined(groups []*overlay, one member) []*overlay {
	for _, g := range slices.Backward(groups) {
		for _, up := range g.shifts(one.of) {
			one.up = up
			members := append(slices.Clone(g.members), one)
			if chart, ok := put(members); ok {
				g.members, g.chart = members, chart
				return groups
			}
		}
	}
	one.up = 0
	chart, _ := put([]member{one})
	return append(groups, &overlay{[]member{one}, chart})
}

// shifts returns by how many rows a size may begin above the first of a group: none, or
// where motifs go on from a part below, any of their rounds.
func (o *overlay) shifts(s *strip) []int {
	list := []int{0}
	high := o.members[0].of.high
	if high == 0 || s.high != high {
		return list
	}
	for up := 1; up < high; up++ {
		list = append(list, up, -up)
	}
	return list
}

// put lays sizes over each other; ok is false if they don't agree.
func put(members []member) (s Sizes, ok bool) {
	low, rows := 0, 0
	for _, m := range members {
		low = min(low, m.up)
	}
	first := members[0].of
	s = Sizes{Part: first.part, Block: first.block, Alone: first.alone}
	for i, m := range members {
		s.Of, s.Begin, s.First = append(s.Of, m.size), append(s.Begin, m.up-low), append(s.First, m.of.first)
		s.Before = append(s.Before, m.of.before)
		rows = max(rows, m.up-low+len(m.of.rows))
		if len(m.of.folds) != len(first.folds) {
			return s, false
		}
		for k, f := range m.of.folds {
			if i == 0 {
				s.Folds = append(s.Folds, SizesFold{f.From, f.Count, nil})
			}
			if s.Folds[k].From != f.From || s.Folds[k].Count != f.Count {
				return s, false
			}
			s.Folds[k].Times = append(s.Folds[k].Times, f.Times[0])
		}
	}
	s.Folded = len(s.Folds) > 0
	var cells [][]Cell
	for y := range rows {
		of, row, side, agree := putRow(members, s.Begin, y)
		if !agree {
			return s, false
		}
		s.Rows, cells = append(s.Rows, row), append(cells, of)
		s.Grid.Rows = append(s.Grid.Rows, Row{Section: s.Part, Round: y + 1, Side: side})
	}
	s.lay(first.source, cells)
	return s, s.growTogether()
}

// putRow lays one round of sizes over each other.
func putRow(members []member, begin []int, y int) (cells []Cell, row SizesRow, side stitch.Side, ok bool) {
	own := make([][]Cell, len(members))
	seen := false
	for i, m := range members {
		row.Spans, row.Works = append(row.Spans, [2]int{0, -1}), append(row.Works, false)
		at := y - begin[i]
		if at < 0 || at >= len(m.of.rows) {
			continue
		}
		r := m.of.rows[at]
		if seen && r.side != side {
			return nil, row, side, false
		}
		seen, side, own[i] = true, r.side, r.cells
		if n := len(r.cells); n > 0 {
			row.Spans[i] = [2]int{r.cells[0].X, r.cells[n-1].X}
		}
		row.Works[i] = slices.ContainsFunc(r.cells, changes)
		for _, c := range r.cells {
			k, there := slices.BinarySearchFunc(cells, c.X, func(a Cell, x int) int { return a.X - x })
			switch {
			case !there:
				cells = slices.Insert(cells, k, c)
			case grows(c) && !grows(cells[k]):
				cells[k] = c
			}
		}
	}
	if !seen { // between sizes that leave a gap
		return nil, row, side, false
	}
	for i := range members {
		if got := row.take(i, cells); !slices.EqualFunc(got, own[i], looksAs) {
			return nil, row, side, false
		}
	}
	return cells, row, side, true
}

// changes reports whether a cell makes the round longer or shorter.
func changes(c Cell) bool { return c.Op.In() != c.Op.Out() }

// grows reports whether a cell makes the round longer.
func grows(c Cell) bool { return c.Op.Out() > c.Op.In() }

// Narrows reports whether a stitch of the row makes it shorter.
func (r Row) Narrows() bool {
	return slices.ContainsFunc(r.Cells, func(c Cell) bool { return c.Op.In() > c.Op.Out() })
}

// looksAs reports whether two cells show the same at the same place.
func looksAs(a, b Cell) bool { return a.X == b.X && a.Op == b.Op && a.Yarn == b.Yarn }

// take returns what a size reads of a round's cells: those within its line. It knits where
// only other sizes increase.
func (r SizesRow) take(i int, cells []Cell) (list []Cell) {
	for _, c := range cells {
		if c.X < r.Spans[i][0] || c.X > r.Spans[i][1] {
			continue
		}
		if grows(c) && !r.Works[i] {
			c.Op = stitch.Knit
		}
		list = append(list, c)
	}
	return list
}

// growTogether reports whether each size changes its count with the others for as long as it
// does at all.
func (s *Sizes) growTogether() bool {
	for i := range s.Of {
		last := -1
		for y, r := range s.Rows {
			if r.Works[i] {
				last = y
			}
		}
		for y, r := range s.Rows[:last+1] {
			if r.Has(i) && r.Changes() && !r.Works[i] || !r.Has(i) && r.Changes() && y >= s.Begin[i] {
				return false
			}
		}
	}
	return true
}

// lay sets the cells as a chart, from its left edge on.
func (s *Sizes) lay(of Grid, cells [][]Cell) {
	high := -1 << 30
	s.Low = 1 << 30
	for _, row := range cells {
		if n := len(row); n > 0 {
			s.Low, high = min(s.Low, row[0].X), max(high, row[n-1].X)
		}
	}
	rows := s.Grid.Rows
	s.Grid = Grid{Options: Options{View: ViewOf(s.Part), Layout: of.Layout}, Width: high - s.Low + 1, Mirrored: of.Mirrored, Palette: of.Palette, Rules: of.Rules, Rows: rows}
	for y := range rows {
		list := slices.Clone(cells[y])
		slices.Reverse(list) // as they are worked
		for k := range list {
			list[k].X -= s.Low
			list[k].Note, list[k].Laid = "", 0
		}
		rows[y].Cells = list
	}
}

// Take returns what a size, by its place in the chart, reads of it: the cells of its rounds
// from the left, with all that is boxed as often as it works that.
func (s *Sizes) Take(i int) (rounds [][]Cell) {
	for y, r := range s.Rows {
		if !r.Has(i) {
			continue
		}
		shown := s.Grid.Rows[y].Shown()
		cells := make([]Cell, len(shown))
		for k, c := range shown {
			c.X += s.Low
			cells[k] = c
		}
		rounds = append(rounds, s.unfold(i, r.take(i, cells)))
	}
	return rounds
}

// unfold puts all that is boxed as often as a size works it.
func (s *Sizes) unfold(i int, cells []Cell) (list []Cell) {
	for k := 0; k < len(cells); {
		at := slices.IndexFunc(s.Folds, func(f SizesFold) bool { return f.From <= cells[k].X && cells[k].X < f.From+f.Count })
		if at < 0 {
			list, k = append(list, cells[k]), k+1
			continue
		}
		f, n := s.Folds[at], k
		for n < len(cells) && cells[n].X < f.From+f.Count {
			n++
		}
		for range f.Times[i] {
			list = append(list, cells[k:n]...)
		}
		k = n
	}
	return list
}

// Ends returns the row, from 0, in which a size ends.
func (s *Sizes) Ends(i int) (last int) {
	for y, r := range s.Rows {
		if r.Has(i) {
			last = y
		}
	}
	return last
}
