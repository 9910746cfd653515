package chart

import "slices"

// turn mirrors a grid, so that the first stitch of every round is at the left
// edge.
func (g *Grid) turn() {
	g.FromLeft = true
	for _, row := range g.Rows {
		for i := range row.Cells {
			if c := &row.Cells[i]; c.Shown() {
				c.X = g.Width - 1 - c.X
			}
		}
	}
}

// Number returns the number of the column at x, counted from 1 at the edge
// where the rows begin. In a part of a chart the columns keep their numbers.
func (g Grid) Number(x int) int {
	if g.FromLeft {
		return g.CutLeft + x + 1
	}
	return g.CutRight + g.Width - x
}

// Whole returns the width of the whole chart that this is a part of.
func (g Grid) Whole() int { return g.CutLeft + g.Width + g.CutRight }

// Part returns the columns left … right−1, counted from the left, and the rows
// foot … head−1, counted from the bottom, as a chart for a page that has no
// room for all of it. Every row keeps its round, every column its number. The
// ranges are clipped to the chart.
func (g Grid) Part(left, right, foot, head int) Grid {
	left, right = max(left, 0), min(right, g.Width)
	foot, head = max(foot, 0), min(head, len(g.Rows))
	part := g
	part.CutLeft, part.Width, part.CutRight = g.CutLeft+left, max(right-left, 0), g.CutRight+g.Width-right
	part.Rows = make([]Row, 0, max(head-foot, 0))
	for i := foot; i < head; i++ {
		part.Rows = append(part.Rows, g.Rows[i].part(left, right))
	}
	part.Across, part.Up = within(g.Across, left, right), within(g.Up, foot, head)
	part.Floats, part.Meant = nil, nil
	for _, f := range g.Floats {
		if f.Row >= foot && f.To < head {
			f.Row, f.To = f.Row-foot, f.To-foot
			part.Floats = append(part.Floats, f)
		}
	}
	return part
}

// within returns what of folds lies from one place up to another, counted from the first.
func within(folds []Fold, from, to int) (list []Fold) {
	for _, f := range folds {
		first, end := max(f.From, from), min(f.From+f.Count, to)
		if first < end {
			f.Before, f.After = f.Before+first-f.From, f.After+f.From+f.Count-end
			f.From, f.Count = first-from, end-first
			list = append(list, f)
		}
	}
	return list
}

// elsewhere is the X of a cell that another part of the chart shows.
const elsewhere = -2

func (r Row) part(left, right int) Row {
	cells := make([]Cell, len(r.Cells))
	for i, c := range r.Cells {
		switch {
		case !c.Shown():
		case c.X < left || c.X >= right:
			c.X = elsewhere
		default:
			c.X -= left
		}
		cells[i] = c
	}
	r.Cells = cells
	r.shown = r.fromLeft(nil)
	return r
}

// Around returns the chart with the stitches of the rows low … high only,
// counted from 1 at the foot. The others have their place, but no stitches, so
// what is drawn of a tall chart stands where it stands in the whole.
func (g Grid) Around(low, high int) Grid {
	g.Rows = slices.Clone(g.Rows)
	for i := range g.Rows {
		if i+1 < low || i+1 > high {
			g.Rows[i] = Row{Section: g.Rows[i].Section, Round: g.Rows[i].Round, Side: g.Rows[i].Side, shown: []Cell{}}
		}
	}
	return g
}
