package chart

import (
	"fmt"
	"strconv"

	"thenar/internal/stitch"
	"thenar/internal/wale"
)

// Grid is a section's chart. Row 0 is round 1, which stands at the foot.
type Grid struct {
	Section    stitch.Part
	Rows       []Row
	Width      int // columns of the drawing
	Start      int // loops that are left before round 1
	End        int // loops that are eaten after the last round
	Mirrored   bool
	Neighbours int
	Lost       []Edit // painted cells that have no place in this plan
	EndFault   string // in words, if the last round and what follows differ
}

// Row is one round. RestIn and RestOut are the loops of the round that the
// chart does not show; In and Out are those of the whole round, as painted.
type Row struct {
	Round           int
	Cells           []Cell // in the order worked, from right to left on paper
	RestIn, RestOut int
	In, Out         int
	Fault           string // in words, if the round below leaves something else
}

// Cell is one operation. X counts the drawing's columns from the left.
type Cell struct {
	Column      string
	X           int
	Planned, Op stitch.Op
	Yarn        string
	Painted     bool
}

// Gusset lays out the gusset with its neighbours of the hand as a wedge that
// grows outward, by the planned operations: the middle of the base stands at
// the same place in every row, also where the gusset grows at one edge only.
// end is the number of loops that the round after it eats. Marks are put on
// the cells that they name. For a left hand (mirrored) the rounds are mirrored
// as stitch.Mirror does; marks and names speak of the right hand all the same.
func Gusset(s stitch.Section, base, neighbours, end int, marks Marks, mirrored bool) Grid {
	g := Grid{Section: s.Part, Mirrored: mirrored, Neighbours: neighbours, End: end}
	names := wale.Gusset(s, base)
	rights := make([]int, len(s.Rounds)) // gusset stitches at the right of the middle
	mostLeft, mostRight := 0, 0
	for i, r := range s.Rounds {
		left := pastMiddle(names[i][:r.Lead], base)
		rights[i] = r.Lead - left
		if mirrored {
			left, rights[i] = rights[i], left
		}
		mostLeft, mostRight = max(mostLeft, left), max(mostRight, rights[i])
	}
	g.Width = mostLeft + mostRight + 2*neighbours
	placed := map[Anchor]bool{}
	for i, r := range s.Rounds {
		edge := neighbours + mostLeft + rights[i] - 1
		g.Rows = append(g.Rows, layRow(&g, r, names[i], i+1, edge, marks, placed))
	}
	if len(g.Rows) > 0 {
		g.Start = s.Rounds[0].In()
	}
	for _, e := range marks.Edits() {
		if e.Section == s.Part && !placed[e.anchor()] {
			g.Lost = append(g.Lost, e)
		}
	}
	g.lint()
	return g
}

// pastMiddle counts the gusset's columns that the right hand works after the
// middle of the base: the later half of the base (an odd stitch of it belongs
// to the earlier) and what was made at the last edge.
func pastMiddle(names []string, base int) int {
	n := 0
	for _, name := range names {
		if name == "" {
			continue
		}
		i, _ := strconv.Atoi(name[1:])
		if name[0] == wale.Last || (name[0] == wale.Base && 2*i > base+1) {
			n++
		}
	}
	return n
}

// layRow places the cells of one round, its first stitch at x = right. The
// gusset is worked first and stands in the middle; after it come the hand's
// first stitches, at its left, and the round's last stitches stand at its
// right.
func layRow(g *Grid, r stitch.Round, names []string, round, right int, marks Marks, placed map[Anchor]bool) Row {
	ops := append([]stitch.Op(nil), r.Ops...)
	names = append([]string(nil), names...)
	if g.Mirrored {
		mirror(ops[:r.Lead], names[:r.Lead])
		mirror(ops[r.Lead:], names[r.Lead:])
	}
	row := Row{Round: round}
	hand := len(ops) - r.Lead
	for i, op := range ops {
		x := right - i
		switch fromEnd := len(ops) - i; {
		case i < r.Lead+min(g.Neighbours, hand):
		case fromEnd <= g.Neighbours && hand >= 2*g.Neighbours:
			x = right + fromEnd
		default:
			row.RestIn += op.In()
			row.RestOut += op.Out()
			continue
		}
		at := Anchor{g.Section, round, names[i]}
		mark, painted := marks[at]
		placed[at] = true
		row.Cells = append(row.Cells, newCell(op, names[i], x, mark, painted, g.Mirrored))
	}
	row.In, row.Out = row.RestIn, row.RestOut
	for _, c := range row.Cells {
		row.In += c.Op.In()
		row.Out += c.Op.Out()
	}
	return row
}

func newCell(op stitch.Op, column string, x int, mark Mark, painted, mirrored bool) Cell {
	c := Cell{Column: column, X: x, Planned: op, Op: op, Yarn: Yarns[0].ID, Painted: painted}
	if over, ok := stitch.ByCode(mark.Stitch); ok && mark.Stitch != "" {
		c.Op = over
		if mirrored {
			c.Op = over.Twin()
		}
	}
	if mark.Colour != "" {
		c.Yarn = mark.Colour
	}
	return c
}

// mirror turns a block round for the other hand.
func mirror(ops []stitch.Op, names []string) {
	for i, j := 0, len(ops)-1; i < j; i, j = i+1, j-1 {
		ops[i], ops[j] = ops[j], ops[i]
		names[i], names[j] = names[j], names[i]
	}
	for i := range ops {
		ops[i] = ops[i].Twin()
	}
}

// lint says of each round whether it eats what the round below leaves.
func (g *Grid) lint() {
	left := g.Start
	for i := range g.Rows {
		row := &g.Rows[i]
		if row.In != left {
			row.Fault = faultWords(i, left, row.In)
		}
		left = row.Out
	}
	if left != g.End {
		g.EndFault = fmt.Sprintf("round %d makes %d stitches, the round after the gusset needs %d", len(g.Rows), left, g.End)
	}
}

// faultWords is one fault in words; the page has the same words.
func faultWords(i, left, eats int) string {
	if i == 0 {
		return fmt.Sprintf("%d stitches are on the needles, round 1 needs %d", left, eats)
	}
	return fmt.Sprintf("round %d makes %d stitches, round %d needs %d", i, left, i+1, eats)
}

// Put is the section with the marks on it, as the right hand: each painted
// operation in the place of the planned one.
func Put(s stitch.Section, base int, marks Marks) stitch.Section {
	out := s
	out.Rounds = append([]stitch.Round(nil), s.Rounds...)
	for i, names := range wale.Gusset(s, base) {
		var ops []stitch.Op
		for j, name := range names {
			mark := marks[Anchor{s.Part, i + 1, name}]
			op, ok := stitch.ByCode(mark.Stitch)
			if mark.Stitch == "" || !ok {
				continue
			}
			if ops == nil {
				ops = append(ops, s.Rounds[i].Ops...)
			}
			ops[j] = op
		}
		if ops != nil {
			out.Rounds[i].Ops = ops
		}
	}
	return out
}

// Used lists the operations that the chart shows, in the order of the table.
func (g Grid) Used() []stitch.Op {
	used := map[stitch.Op]bool{}
	for _, row := range g.Rows {
		for _, c := range row.Cells {
			used[c.Op] = true
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

// YarnsUsed lists the yarns that the chart shows, in the order of the
// palette; none if it is all in the main colour.
func (g Grid) YarnsUsed() []Yarn {
	used := map[string]bool{}
	for _, row := range g.Rows {
		for _, c := range row.Cells {
			used[c.Yarn] = true
		}
	}
	var yarns []Yarn
	for _, y := range Yarns {
		if used[y.ID] {
			yarns = append(yarns, y)
		}
	}
	if len(yarns) == 1 && yarns[0] == Yarns[0] {
		return nil
	}
	return yarns
}
