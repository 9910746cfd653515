package chart

import (
	"slices"
	"strconv"

	"thenar/internal/stitch"
)

// BeginsLeft reports whether a row of the grid is begun at its left edge: a wrong-side
// row at the other one than a round.
func (g Grid) BeginsLeft(r Row) bool { return g.FromLeft != (r.Side == stitch.WrongSide) }

// BothWays reports whether the grid has wrong-side rows, which are begun at the other
// edge.
func (g Grid) BothWays() bool {
	return slices.ContainsFunc(g.Rows, func(r Row) bool { return r.Side == stitch.WrongSide })
}

// Noun returns what a sentence calls the rounds of the grid: rows if all of them are.
func (g Grid) Noun() string {
	if len(g.Rows) > 0 && !slices.ContainsFunc(g.Rows, func(r Row) bool { return r.Side == stitch.AllRound }) {
		return "row"
	}
	return "round"
}

// UsedBehind returns the operations that the chart shows in wrong-side rows.
func (g Grid) UsedBehind() []stitch.Op {
	g.Rows = slices.DeleteFunc(slices.Clone(g.Rows), func(r Row) bool { return r.Side != stitch.WrongSide })
	return g.Used()
}

// Noun returns what a sentence calls the row.
func (r Row) Noun() string { return r.Side.Noun() }

// Name returns the row as a sentence names it: "round 3", "row 4".
func (r Row) Name() string { return r.Noun() + " " + strconv.Itoa(r.Round) }

// First returns the cell that the hands work first; ok is false if the row has none.
func (r Row) First() (c Cell, ok bool) {
	if len(r.Cells) == 0 {
		return Cell{}, false
	}
	return r.Cells[r.order()[0]], true
}

// order returns the indexes of the row's cells in the order in which the hands work
// them. The cells of a wrong-side row stand as they look on the right side.
func (r Row) order() []int {
	list := make([]int, len(r.Cells))
	for i := range list {
		list[i] = r.worked(i)
	}
	return list
}

// worked returns which cell of a row is worked kth, from 0; it is also when the kth cell is.
func (r Row) worked(k int) int {
	if r.Side == stitch.WrongSide {
		return len(r.Cells) - 1 - k
	}
	return k
}
