package chart

import (
	"slices"

	"thenar/internal/stitch"
	"thenar/internal/wale"
)

// Sizes is a chart of several sizes of a mitt, put over each other: of a gusset by itself,
// or of the rest of a part. What of it is a size's lies within that size's line.
//
// Places count from the middle of a gusset, and else from the right edge, where rounds
// begin: those left of it are negative.
type Sizes struct {
	Part   stitch.Part
	Block  bool  // of the gusset alone
	Alone  bool  // of a first round, without which more is boxed
	Of     []int // the sizes, by their places among all
	Rows   []SizesRow
	Begin  []int // row, from 0, in which each size begins
	First  []int // which round of the part that is
	Before []int // stitches of each size before its gusset, which the chart leaves out
	Folds  []SizesFold
	Grid   Grid // the cells of all, as a chart, of which Low is the place at the left edge
	Low    int
	Folded bool // something is boxed
}

// SizesRow is one round of a chart of sizes.
type SizesRow struct {
	Spans [][2]int // of each size, its first and last place from the left; the last lies before the first where it has no such round
	Works []bool   // which of them work the change of the count
}

// Changes reports whether any size changes its count in the round.
func (r SizesRow) Changes() bool { return slices.Contains(r.Works, true) }

// Others reports whether some sizes have the round and knit where others increase.
func (r SizesRow) Others() bool {
	for i, works := range r.Works {
		if r.Changes() && !works && r.Has(i) {
			return true
		}
	}
	return false
}

// Inside reports whether a gusset that the chart leaves out lies inside it, not before it.
func (s *Sizes) Inside() bool {
	return slices.ContainsFunc(s.Before, func(n int) bool { return n > 0 })
}

// Alike reports whether another chart shows the same.
func (s *Sizes) Alike(o *Sizes) bool {
	if s.Part != o.Part || s.Block != o.Block || s.Alone != o.Alone || s.Grid.Width != o.Grid.Width || !slices.Equal(s.Of, o.Of) || !slices.Equal(s.Begin, o.Begin) || !slices.Equal(s.First, o.First) || !slices.Equal(s.Before, o.Before) {
		return false
	}
	away := o.Low - s.Low // a gusset of an odd base has its middle on another side of a stitch on the other hand
	folds := func(a, b SizesFold) bool {
		return a.From+away == b.From && a.Count == b.Count && slices.Equal(a.Times, b.Times)
	}
	spans := func(a, b [2]int) bool {
		return a == b && a[1] < a[0] || a[0]+away == b[0] && a[1]+away == b[1]
	}
	rows := func(a, b SizesRow) bool {
		return slices.EqualFunc(a.Spans, b.Spans, spans) && slices.Equal(a.Works, b.Works)
	}
	cells := func(a, b Row) bool { return a.Side == b.Side && slices.EqualFunc(a.Shown(), b.Shown(), looksAs) }
	return slices.EqualFunc(s.Folds, o.Folds, folds) && slices.EqualFunc(s.Rows, o.Rows, rows) && slices.EqualFunc(s.Grid.Rows, o.Grid.Rows, cells)
}

// Has reports whether a size, by its place in the chart, has the round.
func (r SizesRow) Has(i int) bool { return r.Spans[i][0] <= r.Spans[i][1] }

// SizesFold is a run of columns that is worked so many times by each size.
type SizesFold struct {
	From, Count int // From is a place as the chart's are
	Times       []int
}

// strip is what one size has of a chart.
type strip struct {
	part   stitch.Part
	block  bool
	alone  bool // it is a first round by itself, without which more is boxed
	first  int  // which round of the part it begins with
	before int  // stitches before a gusset that it leaves out
	high   int  // rounds of the highest motif; 0: none
	looks  bool
	source Grid
	rows   []stripRow
	folds  []SizesFold
}

// sameAs reports whether another size's strip shows the same part.
func (s *strip) sameAs(o *strip) bool {
	return s.part == o.part && s.block == o.block && s.alone == o.alone
}

// stripRow is a round of one size, its cells from the left.
type stripRow struct {
	side  stitch.Side
	cells []Cell // X is the place
}

// SizesCharts puts the charts of sizes over each other: those of gussets, and those of all
// else that has more than the main yarn and plain stitches. Sizes that agree share one; the
// others have charts of their own.
func SizesCharts(of []Source) (list []Sizes) {
	var keys []strip
	all := make([][]strip, len(of))
	for i := range of {
		all[i] = of[i].strips()
		at := 0
		for _, s := range all[i] {
			k := slices.IndexFunc(keys, func(o strip) bool { return s.sameAs(&o) })
			if k < 0 {
				k = at
				keys = slices.Insert(keys, k, s)
			}
			keys[k].looks = keys[k].looks || s.looks
			at = k + 1
		}
	}
	for _, key := range keys {
		if !key.looks && !key.block {
			continue
		}
		var groups []*overlay
		for i := range all {
			for k := range all[i] {
				if s := &all[i][k]; s.sameAs(&key) {
					groups = joined(groups, member{i, s, 0})
				}
			}
		}
		for _, g := range groups {
			list = append(list, g.chart)
		}
	}
	return list
}

// strips returns what a mitt has of all charts, in the order worked.
func (s Source) strips() (list []strip) {
	s.FromLeft = false
	for _, section := range s.worked.Sections {
		if len(section.Rounds) == 0 {
			continue
		}
		views := section.Part.Views()
		g := s.Grid(Options{View: View(views[len(views)-1]), Layout: Columns})
		var rows []Row
		for _, r := range g.Rows {
			if r.Section == section.Part {
				rows = append(rows, r)
			}
		}
		if section.Part.Marked() {
			list = append(list, g.blockStrip(rows, s.Base))
		}
		list = append(list, g.restStrips(rows)...)
	}
	return list
}

// blockStrip returns the gusset by itself, its middle at place 0.
func (g *Grid) blockStrip(rows []Row, base int) strip {
	s := strip{part: rows[0].Section, block: true, first: rows[0].Round, source: *g}
	for _, r := range rows {
		cells := slices.Clone(r.Cells[r.before : r.before+r.lead])
		right := pastMiddle(cells, base, g.Mirrored)
		if !g.Mirrored {
			right = r.lead - right
		}
		for k := range cells {
			cells[k].X = right - 1 - k
		}
		s.add(r.Side, cells)
	}
	return s
}

// restStrips returns a part without its gusset, its motifs boxed, in one piece, or in two if
// more is boxed without its first round.
func (g *Grid) restStrips(rows []Row) (list []strip) {
	rest, before := make([]Row, 0, len(rows)), 0
	if rows[0].Section.Marked() {
		before = rows[0].before
	}
	for _, r := range rows {
		r.Cells = slices.DeleteFunc(slices.Clone(r.Cells), func(c Cell) bool {
			return c.Column == "" || ofGusset(c.Column) && (r.Section.Marked() || c.Op.Keeps())
		})
		r.lead, r.before, r.shown = 0, 0, nil
		if len(r.Cells) > 0 {
			rest = append(rest, r)
		}
	}
	if len(rest) == 0 {
		return nil
	}
	all := *g
	all.uncut, all.Floats, all.Meant = true, nil, nil
	bands := all.laidOut(rest, false)
	for i, band := range bands {
		band.keepColumns()
		s := strip{part: rest[0].Section, alone: i < len(bands)-1, first: band.Rows[0].Round, before: before, source: band}
		for _, f := range band.Across {
			s.folds = append(s.folds, SizesFold{f.From - band.Width, f.Count, []int{f.Times}})
		}
		for _, r := range band.Rows {
			var cells []Cell
			for _, c := range r.Cells {
				if c.Shown() {
					c.X -= band.Width
					cells = append(cells, c)
				}
			}
			s.add(r.Side, cells)
		}
		list = append(list, s)
	}
	return list
}

// ofGusset reports whether a column is of a gusset: of its base or made at its edges.
func ofGusset(column string) bool {
	return column[0] == wale.Base || column[0] == wale.First || column[0] == wale.Last
}

// add adds a round to the strip.
func (s *strip) add(side stitch.Side, cells []Cell) {
	slices.SortFunc(cells, func(a, b Cell) int { return a.X - b.X })
	for _, c := range cells {
		s.looks = s.looks || c.Yarn != Yarns[0].ID || c.Laid > 0 || c.Painted
		if c.Laid > 0 {
			s.high = max(s.high, s.source.repeats[c.Laid-1].Motif.High)
		}
	}
	s.rows = append(s.rows, stripRow{side, cells})
}
