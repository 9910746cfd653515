package charted

import (
	"cmp"
	"fmt"
	"maps"
	"slices"
	"strings"

	"thenar/internal/stitch"
)

// tell tells the differences of all rounds that are in both.
func (c *comparer) tell() {
	turned, begin := false, map[int]bool{}
	for i := range c.pairs {
		p := &c.pairs[i]
		at, same := p.begins(c)
		switch column := c.begin[p.block]; {
		case column > 0:
			begin[column] = true
		case column == none:
			turned = turned || at != 0
		}
		if same && c.table[p.t].side == c.text[p.r].side {
			c.Alike++
			continue
		}
		if c.begin[p.block] == none {
			at = p.nearest()
		}
		c.unequal(p, at)
	}
	edge := "right"
	if c.left {
		edge = "left"
		c.How = append(c.How, "The chart is read from left to right.")
	}
	switch {
	case len(c.pairs) == 0:
	case c.short > 0:
		c.How = append(c.How, fmt.Sprintf("It shows a part of each round: %d stitches are left out, and not compared.", c.short))
	case len(begin) > 0 && !turned:
		for _, column := range slices.Sorted(maps.Keys(begin)) {
			c.How = append(c.How, fmt.Sprintf("Its rounds begin at column %d from the %s edge.", column+1, edge))
		}
	case turned:
		c.How = append(c.How, "Each round was turned to where it fits: the chart doesn’t tell where rounds begin.")
	}
	slices.SortStableFunc(c.Differences, func(a, b Difference) int {
		return cmp.Compare(cmp.Or(a.Line, 1<<30), cmp.Or(b.Line, 1<<30))
	})
}

// unequal tells the first thing in which a round differs.
func (c *comparer) unequal(p *pair, at int) {
	t, r := &c.table[p.t], &c.text[p.r]
	d := Difference{Section: r.section, Line: r.line, Row: t.line}
	noun := "Round"
	if r.side != stitch.AllRound {
		noun = "Row"
	}
	if t.side != r.side {
		d.Message = fmt.Sprintf("%s %d is a %s on the chart, and a %s in the text.", noun, r.round, sided(t.side), sided(r.side))
		c.differ(d)
		return
	}
	j, chart, text := p.first(at)
	apart := ""
	if chart != text {
		k := j + 1
		if r.side == stitch.WrongSide {
			k = len(p.round) - j
		}
		apart = fmt.Sprintf("stitch %d is %s on the chart, %s in the text.", k, c.called(chart), c.called(text))
		if r.side == stitch.WrongSide {
			apart = apart[:len(apart)-1] + ", seen on the right side."
		}
	}
	switch lacks := len(p.round) - len(p.shown) - c.short; {
	case lacks == 0:
		d.Message = fmt.Sprintf("%s %d: %s", noun, r.round, apart)
	default:
		d.Message = fmt.Sprintf("%s %d: the chart has %d stitches, the text %d.", noun, r.round, len(p.shown), len(p.round)-c.short)
		if apart != "" && c.begin[p.block] == 0 {
			d.Message += " First, " + apart
		}
	}
	c.differ(d)
}

func sided(s stitch.Side) string {
	if s == stitch.AllRound {
		return "round"
	}
	return strings.ReplaceAll(s.Words(), " ", "-") + " row"
}

// first returns the first stitch in the order of the round in which they differ, from 0, and
// what both have there; -1: nothing.
func (p *pair) first(at int) (j, chart, text int) {
	n := len(p.round)
	if len(p.shown) != n && at == 0 {
		for j = 0; j < min(n, len(p.shown)); j++ {
			if p.shown[j] != p.round[j] {
				return j, p.shown[j], p.round[j]
			}
		}
		return 0, -1, -1
	}
	for j = range n {
		i := ((j-at)%n + n) % n
		if i < len(p.shown) && p.shown[i] != p.round[j] {
			return j, p.shown[i], p.round[j]
		}
	}
	return 0, -1, -1
}

// called returns what a stitch is called by its number.
func (c *comparer) called(code int) string {
	for s := range maps.Keys(c.codes) {
		if c.codes[s] == code {
			return s.name()
		}
	}
	return "nothing"
}
