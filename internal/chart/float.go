package chart

import (
	"fmt"
	"math"
	"math/bits"

	"thenar/internal/stitch"
)

// Rules are the limits that a person sets for colour work.
type Rules struct {
	Colours int // the largest number of yarns in one round; 0: no limit
	Float   int // the largest number of stitches that a strand may pass behind; 0: no limit
}

// The default rules: two yarns a round, and floats of at most five stitches
// (Traditional Fair Isle teaching, as read in a book
// excerpt; other teachers allow seven).
const (
	DefaultColours = 2
	DefaultFloat   = 5
)

// FloatRule is the longest float allowed: the smaller of a person's own number
// and one inch of stitches at a gauge in stitches per mm, rounded to the
// nearest (two published teaching pages say one inch).
func FloatRule(own int, stitches float64) int {
	return min(own, max(int(math.Round(25.4*stitches)), 1))
}

// Float is a strand that passes behind more stitches than the rule allows,
// between two stitches worked with it. The tube is one long spiral, so a float
// may begin in one row and end in the next, which may be the first of another section: then
// the stitches by which the round's beginning moves on lie between them.
type Float struct {
	Yarn     string
	Row, At  int // indexes of the row and the cell before it
	To, Next int // indexes of the row and the cell after it
	Length   int // the number of stitches that it passes
}

// floatWords returns a sentence about a float; the page has the same words.
func (g Grid) floatWords(f Float) string {
	return fmt.Sprintf("%s%s: %s is carried over %d stitches; catch it every %d", g.part(f.Row), g.name(f.Row, false), g.Palette.Or(f.Yarn).Name, f.Length, g.Rules.Float)
}

// FloatWords returns a sentence about each float that is too long and each
// round with too many yarns.
func (g Grid) FloatWords() []string {
	list := []string{}
	for _, f := range g.Floats {
		list = append(list, g.floatWords(f))
	}
	for i, r := range g.Rows {
		if r.TooMany > 0 {
			list = append(list, fmt.Sprintf("%s%s: %d yarns, where %d are the most", g.part(i), g.name(i, false), r.TooMany, g.Rules.Colours))
		}
	}
	return list
}

// worked reports whether an operation is worked with the yarn, so that a strand
// passes behind it.
func worked(op stitch.Op) bool {
	return op != stitch.Hold && op.In()+op.Out() > 0
}

// checkYarns finds the floats that are too long, apart from those that are meant, and the
// rounds with too many yarns.
func (g *Grid) checkYarns(marks Marks) {
	g.strands(func(f Float) {
		switch {
		case g.Rules.Float == 0 || f.Length <= g.Rules.Float:
		case g.isMeant(f, marks):
			g.Meant = append(g.Meant, f)
		default:
			g.Floats = append(g.Floats, f)
		}
	})
	if g.Rules.Colours == 0 {
		return
	}
	for i := range g.Rows {
		var seen uint8 // a bit for each yarn
		for _, c := range g.Rows[i].Cells {
			if worked(c.Op) {
				seen |= 1 << place(c.Yarn)
			}
		}
		if n := bits.OnesCount8(seen); n > g.Rules.Colours {
			g.Rows[i].TooMany = n
		}
	}
}

// strands calls each for every strand that passes behind a stitch, in the order
// in which strands end. The rounds are one spiral, and rows one zigzag, so a strand may
// pass from one to the next, either way. A yarn that is not used for a whole round
// is not carried.
func (g *Grid) strands(each func(Float)) {
	type use struct{ row, cell, at int }
	var last [MaxYarns]use
	for i := range last {
		last[i].row = -2 // not used yet
	}
	at := 0
	for i := range g.Rows {
		at += g.Rows[i].moved
		for k := range g.Rows[i].Cells {
			j := g.Rows[i].worked(k)
			c := &g.Rows[i].Cells[j]
			if !worked(c.Op) {
				continue
			}
			before := last[place(c.Yarn)]
			if length := at - before.at - 1; before.row >= max(i-1, 0) && (before.row == i || !g.Rows[i].fresh) && length > 0 {
				each(Float{c.Yarn, before.row, before.cell, i, j, length})
			}
			last[place(c.Yarn)] = use{i, j, at}
			at++
		}
	}
}
