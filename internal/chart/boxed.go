package chart

import "slices"

// A boxed chart shows of what repeats one whole, and says how often it is worked. Nothing
// of it is taken from the rule of a repeat but where to look: a box stands only for what
// looks the same in all its places, so what is painted by hand over one motif keeps the
// others from being left out with it.

// Fold is a run of columns or rounds of a boxed chart that is worked again and again.
type Fold struct {
	From, Count   int // its first place in the chart, from 0, and the number of its places
	Times         int
	Repeat        int // the repeat that it has the measure of, by its place in the list
	Before, After int // how many more places it has before and after this part of the chart
}

// Whole returns how many places a fold has in the whole chart.
func (f Fold) Whole() int { return f.Before + f.Count + f.After }

// Boxed returns a view as charts one above the other, from the lowest up: one for each
// section, and for each change of the motifs that lie on it. Each is read from where its
// rounds begin. It returns nil where nothing repeats whole, and the view is shown whole.
func (s Source) Boxed(o Options) []Grid {
	o.Layout, o.Middle = Columns, ""
	g := s.Grid(o)
	if s.laid == nil || g.View.Cut() || len(g.Rows) == 0 {
		return nil
	}
	g.uncut, g.Floats, g.Meant = true, nil, nil
	ends, any := g.EndFault, false
	g.EndFault = ""
	var list []Grid
	for _, rows := range g.bands() {
		for _, band := range g.laidOut(rows, s.FromLeft) {
			band.keepColumns()
			band.foldRows()
			band.show()
			any = any || len(band.Across)+len(band.Up) > 0
			list = append(list, band)
		}
	}
	if !any {
		return nil
	}
	list[len(list)-1].EndFault = ends
	return list
}

// fewColumns is how many columns a first row may have beyond those of the others.
const fewColumns = 5

// laidOut lays rows out by themselves, and says which of their columns repeat. A first row
// that casts on or increases stands alone if more repeats without it, or on narrow pages if
// it is much wider than the others, as one that puts a thumb aside.
func (g *Grid) laidOut(rows []Row, fromLeft bool) []Grid {
	lay := func(rows []Row) Grid {
		band := *g
		band.Rows = rows
		band.layColumns()
		if fromLeft {
			band.turn()
		}
		band.Across = band.columnFolds()
		return band
	}
	whole := lay(rows)
	changes := func(c Cell) bool { return c.Op.In() != c.Op.Out() }
	if len(rows) == 1 || !slices.ContainsFunc(rows[0].Cells, changes) {
		return []Grid{whole}
	}
	if rest := lay(rows[1:]); leftOut(rest.Across) > leftOut(whole.Across) || g.Narrow && whole.Width-rest.Width > fewColumns {
		return []Grid{lay(rows[:1]), rest}
	}
	return []Grid{lay(rows)} // its cells were moved
}

// leftOut returns how many places folds leave out.
func leftOut(folds []Fold) (n int) {
	for _, f := range folds {
		n += f.Count * (f.Times - 1)
	}
	return n
}

// span is a run of rows, the last included.
type span struct{ first, last int }

// bands parts the rows where a section ends and where a repeat begins or ends. Rows without
// any repeat stay with those below them in their section, or else with those above.
func (g *Grid) bands() [][]Row {
	cut := make([]bool, len(g.Rows)+1)
	busy := make([]bool, len(g.Rows))
	for i := 1; i < len(g.Rows); i++ {
		cut[i] = g.Rows[i].Section != g.Rows[i-1].Section
	}
	for _, s := range g.repeatSpans() {
		cut[s.first], cut[s.last+1] = true, true
		for i := s.first; i <= s.last; i++ {
			busy[i] = true
		}
	}
	cut[0], cut[len(g.Rows)] = true, true
	for i := 1; i < len(g.Rows); i++ {
		if !cut[i] || g.Rows[i].Section != g.Rows[i-1].Section {
			continue
		}
		// What is plain below is the first of its section: else it was joined already.
		plainBelow := !busy[i-1] && !slices.Contains(busy[lastCut(cut, i):i], true)
		if !busy[i] || plainBelow {
			cut[i] = false
		}
	}
	var list [][]Row
	from := 0
	for i := 1; i <= len(g.Rows); i++ {
		if cut[i] {
			list, from = append(list, g.Rows[from:i:i]), i
		}
	}
	return list
}

// lastCut returns the last place before i at which rows are parted.
func lastCut(cut []bool, i int) int {
	for i--; i > 0 && !cut[i]; i-- {
	}
	return i
}

// repeatSpans returns the rows in which each repeat is seen, with those of the same motif
// that set nothing.
func (g *Grid) repeatSpans() []span {
	of := map[uint8]span{}
	for i, row := range g.Rows {
		for _, c := range row.Cells {
			if c.Laid == 0 {
				continue
			}
			first := max(0, i-int(c.Up))
			last := min(len(g.Rows)-1, i-int(c.Up)+g.repeats[c.Laid-1].Motif.High-1)
			was, seen := of[c.Laid]
			if !seen {
				was = span{first, last}
			}
			of[c.Laid] = span{min(was.first, first), max(was.last, last)}
		}
	}
	list := make([]span, 0, len(of))
	for _, s := range of {
		list = append(list, s)
	}
	return list
}
