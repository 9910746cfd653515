package chart

import (
	"slices"

	"thenar/internal/repeat"
	"thenar/internal/stitch"
	"thenar/internal/wale"
)

// Neighbours is the number of the hand's columns that the gusset's chart
// shows on each side of it.
const Neighbours = 3

// Grid is one view as a chart.
type Grid struct {
	Options
	Rows     []Row  // from the bottom up
	Width    int    // columns of the drawing
	Start    int    // the number of loops on the needles before the first row
	End      int    // the number of loops that the next step takes
	Next     string // the next step, in words
	Mirrored bool
	FromLeft bool // every row is read from left to right
	CutLeft  int  // columns of the whole chart to the left of this part
	CutRight int  // columns of the whole chart to the right of this part
	Palette  Palette
	Rules    Rules
	EndFault string  // in words, if the next step takes another number of loops than the last row leaves
	Floats   []Float // to be looked at
	Meant    []Float // longer than the rule, as somebody wants them
	Across   []Fold  // columns of a boxed chart that stand for more; see Source.Boxed
	Up       []Fold  // rows that do

	base, inset int  // of the gusset; see Source
	palm        bool // the thumb sits in the palm
	byThumb     bool // the seam of a flat piece lies on the thumb's side
	down        bool // the mitt is worked from the fingertips: its round goes the other way about the hand

	sides     map[stitch.Part]map[string]string // of fingers and the upper hand, by column
	repeats   []repeat.Repeat
	came      []repeat.Came
	placeless bool // nobody knows where on a hand it lies
	uncut     bool // it is read from where the round begins, and not cut open opposite the gusset
}

// Row is one round. In and Out are the numbers of loops that it takes and
// leaves, as painted.
type Row struct {
	Section stitch.Part
	Round   int
	Side    stitch.Side
	Cells   []Cell // the whole round in the order worked; a row as it looks on the right side, from right to left
	In, Out int
	Fault   string // in words, if the round below leaves another number of loops
	Note    string
	Said    string // what stands in place of its number, if it is none that is counted
	Unread  string // why its stitches are not known; it has no cells
	Needles bool   // whether it is on the needles now
	Changed bool   // whether a try changed it; set by the caller that draws the chart
	TooMany int    // the number of its yarns, if more than the rule allows
	before  int    // the number of cells before those of the gusset or the bridge, in a row
	lead    int    // the number of cells of the gusset or the bridge; in a round they come first
	flat    bool   // the piece has a seam
	digit   bool   // the section covers a thumb or a finger
	fresh   bool   // the yarns of the row below don’t go on into it
	moved   int    // stitches by which the beginning of the round moves on before it
	shown   []Cell
}

// Cell is one operation. X counts the drawing's columns from the left, from 0;
// it is −1 if the view does not show the cell, and less if another part of the chart does.
type Cell struct {
	Column      string
	X           int
	Planned, Op stitch.Op
	Said        string // the abbreviation of a stitch that the table of operations doesn't have
	Yarn        string
	Note        string
	Painted     bool
	Laid        uint8 // the uppermost repeat that sets it, from 1; 0: none does
	Right, Up   uint8 // which stitch and round of its motif it has, from 0
}

// Shown reports whether the view shows the cell.
func (c Cell) Shown() bool { return c.X >= 0 }

// Grid lays out a view. For a left hand (Mirrored) the rounds are mirrored as
// by stitch.Mirror; marks and column names are still the right hand's.
func (s Source) Grid(o Options) Grid {
	o = s.Sound(o)
	g := Grid{Options: o, Mirrored: s.Mirrored, Palette: s.Palette, Rules: s.Rules, base: s.Base, palm: s.palm, inset: s.inset, down: s.Mitt.Down(), byThumb: s.Mitt.SeamByThumb(), repeats: s.Repeats, came: s.Came()}
	sections := s.sections(o.View)
	if g.Rows = s.rows(sections...); len(g.Rows) == 0 {
		return g
	}
	g.fingerSides(&s, sections)
	g.lay(s.Base)
	if s.FromLeft {
		g.turn()
	}
	g.show()
	first := g.Rows[0]
	g.Start = s.Mitt.Section(first.Section).Rounds[0].In()
	g.End, g.Next = s.after(g.Rows[len(g.Rows)-1].Section)
	g.lint()
	if !s.bare() { // else all is in one yarn
		g.checkYarns(s.Marks)
	}
	return g
}

// after returns the number of loops that the step after a section takes, and
// the name of that step.
func (s Source) after(part stitch.Part) (eats int, name string) {
	for i, section := range s.Mitt.Sections {
		if section.Part != part {
			continue
		}
		if len(section.Finish.Ops) > 0 {
			return section.Finish.In(), "the last step"
		}
		if i+1 < len(s.Mitt.Sections) {
			next := s.Mitt.Sections[i+1]
			return next.Rounds[0].In(), next.Noun() + " 1 of the " + next.Part.Words()
		}
	}
	return 0, "the end"
}

// rows returns the rounds of sections with their marks, from the bottom up. A chart has
// thousands of cells: they lie in one piece of memory.
func (s *Source) rows(sections ...stitch.Section) []Row {
	rounds, cells := 0, 0
	for i := range sections {
		rounds += len(sections[i].Rounds)
		for _, r := range sections[i].Rounds {
			cells += len(r.Ops)
		}
	}
	rows, room := make([]Row, 0, rounds), make([]Cell, cells)
	for i := range sections {
		first := len(rows)
		for r := range sections[i].Rounds {
			n := len(sections[i].Rounds[r].Ops)
			rows = append(rows, s.row(&sections[i], r, room[:n:n]))
			room = room[n:]
		}
		if len(rows) > first {
			rows[first].fresh, rows[first].moved = !s.goesOn(sections[:i], &sections[i]), sections[i].Shift
		}
	}
	return rows
}

// goesOn reports whether a section goes on with the yarns of the last of those that are
// shown before it.
func (s *Source) goesOn(shown []stitch.Section, section *stitch.Section) bool {
	if len(shown) == 0 {
		return false
	}
	below := &shown[len(shown)-1]
	at := slices.IndexFunc(s.worked.Sections, func(one stitch.Section) bool { return one.Part == section.Part })
	return at > 0 && s.worked.Sections[at-1].Part == below.Part && section.GoesOn(below)
}

// row returns one round with its marks, in the order in which this hand works
// it, in as many cells as it has operations.
func (s *Source) row(section *stitch.Section, i int, cells []Cell) Row {
	r, names := &section.Rounds[i], s.names[section.Part][i]
	row := Row{Section: section.Part, Round: i + 1, Side: r.Side, Cells: cells, digit: section.Part.Over() == stitch.OverDigit}
	if len(s.Marks) > 0 {
		of := s.Marks[Anchor{section.Part, i + 1, ""}]
		row.Note, row.Needles = of.Note, of.Needles != ""
	}
	for j, op := range r.Ops {
		cells[j].plan(op, names[j])
	}
	s.repeatOn(section.Part, i, names, cells)
	for j := range cells {
		c := &cells[j]
		if len(s.Marks) > 0 {
			s.paint(c, Anchor{section.Part, i + 1, names[j]})
		}
		row.In += c.Op.In()
		row.Out += c.Op.Out()
	}
	if row.flat = section.Seam > 0; row.flat {
		row.before, row.lead = inside(names)
	} else {
		row.lead = leading(names)
	}
	return row
}

// leading returns the number of columns at the start of a round that are not
// the hand's; columns made among them count as theirs.
func leading(names []string) int {
	n := len(names)
	if i := slices.IndexFunc(names, func(name string) bool { return name != "" && name[0] == wale.Hand }); i >= 0 {
		n = i
	}
	for n > 0 && names[n-1] != "" && names[n-1][0] == wale.Made {
		n--
	}
	return n
}

// plan fills an empty cell with a planned operation.
func (c *Cell) plan(op stitch.Op, column string) {
	c.Column, c.X, c.Planned, c.Op, c.Yarn = column, -1, op, op, Yarns[0].ID
}

// paint puts its mark, if any, on a planned operation.
func (s *Source) paint(c *Cell, at Anchor) {
	mark, painted := s.Marks[at]
	if !painted {
		return
	}
	c.Painted, c.Note = mark.painted(), mark.Note
	if over, ok := stitch.ByCode(mark.Stitch); ok && mark.Stitch != "" {
		c.Op = s.turned(over)
	}
	if mark.Colour != "" {
		c.Yarn = mark.Colour
	}
}

// Used returns the operations that the chart shows, in the order of the table.
func (g Grid) Used() []stitch.Op {
	used := map[stitch.Op]bool{}
	for _, row := range g.Rows {
		for _, c := range row.Cells {
			if c.Shown() && c.Said == "" {
				used[c.Op] = true
			}
		}
	}
	var ops []stitch.Op
	for _, op := range stitch.All() {
		if used[op] {
			ops = append(ops, op)
		}
	}
	return ops
}

// YarnsUsed returns the yarns that the chart shows, in the order of the
// palette; none if all is in the main colour.
func (g Grid) YarnsUsed() []Yarn {
	used := map[string]bool{}
	for _, row := range g.Rows {
		for _, c := range row.Cells {
			if c.Shown() {
				used[c.Yarn] = true
			}
		}
	}
	var yarns []Yarn
	for i := range MaxYarns {
		if used[ID(i)] {
			yarns = append(yarns, g.Palette.Or(ID(i)))
		}
	}
	if len(yarns) == 1 && yarns[0].ID == ID(0) {
		return nil
	}
	return yarns
}

// NoStitch reports whether any row has a gap between its cells, drawn as
// no-stitch.
func (g Grid) NoStitch() bool {
	return slices.ContainsFunc(g.Rows, func(r Row) bool { return len(r.Gaps()) > 0 })
}

// Shown returns the cells of a row that the view shows, from the left.
func (r Row) Shown() []Cell {
	if r.shown == nil {
		r.shown = r.fromLeft(nil)
	}
	return r.shown
}

// show keeps what the rows show, of all of them in one piece of memory.
func (g *Grid) show() {
	n := 0
	for i := range g.Rows {
		for j := range g.Rows[i].Cells {
			if g.Rows[i].Cells[j].Shown() {
				n++
			}
		}
	}
	room := make([]Cell, n)
	for i := range g.Rows {
		g.Rows[i].shown = g.Rows[i].fromLeft(room)
		room = room[len(g.Rows[i].shown):]
	}
}

// fromLeft returns the cells of a row that are shown, from the left, in room if it is
// large enough.
func (r *Row) fromLeft(room []Cell) []Cell {
	cells := room[:0]
	if cells == nil {
		cells = make([]Cell, 0, len(r.Cells))
	}
	for i := len(r.Cells) - 1; i >= 0; i-- {
		if r.Cells[i].Shown() {
			cells = append(cells, r.Cells[i])
		}
	}
	left := func(a, b Cell) int { return a.X - b.X }
	if !slices.IsSortedFunc(cells, left) { // a round that goes on at the other edge
		slices.SortFunc(cells, left)
	}
	return cells[:len(cells):len(cells)]
}

// Gaps returns the places between the first and the last cell of a row without
// a stitch.
func (r Row) Gaps() []int {
	var gaps []int
	cells := r.Shown()
	if n := len(cells); n == 0 || cells[n-1].X-cells[0].X == n-1 {
		return nil
	}
	for i := 1; i < len(cells); i++ {
		for x := cells[i-1].X + 1; x < cells[i].X; x++ {
			gaps = append(gaps, x)
		}
	}
	return gaps
}
