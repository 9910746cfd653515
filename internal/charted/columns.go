package charted

import "thenar/internal/stitch"

// columns are all columns of a chart in the order in which they lie on the right side, from
// the right: what is made later has its place between its neighbours.
type columns struct {
	next  []int // the column after each; -1: none
	first int
}

// none is no column.
const none = -1

// upTo returns so many columns beside each other.
func upTo(n int) (c columns, all []int) {
	c.first = none
	last := none
	for range n {
		last = c.after(last)
		all = append(all, last)
	}
	return c, all
}

// after adds a column after another, or before all.
func (c *columns) after(at int) int {
	added, next := len(c.next), c.first
	if at == none {
		c.first = added
	} else {
		next = c.next[at]
		c.next[at] = added
	}
	c.next = append(c.next, next)
	return added
}

// places returns where each column lies, from the right, from 0.
func (c *columns) places() []int {
	list := make([]int, len(c.next))
	for at, n := c.first, 0; at != none; at, n = c.next[at], n+1 {
		list[at] = n
	}
	return list
}

// loop is a stitch on the needles, as the next round finds it.
type loop struct {
	column int
	purled bool // its purl side is out
	tbl    bool // it was knitted through the back loop
}

// onTop returns which of the columns that a stitch takes goes on: of stitches that are
// worked together the one that lies on top.
func (s sign) onTop(in int) int {
	switch s.op {
	case stitch.S2KP:
		return 1
	case stitch.K2tog, stitch.P2tog, stitch.K3tog:
		return in - 1
	case stitch.NoStitch:
		if s.said != "" && (s.said[0] == 'k' || s.said[0] == 'p') {
			return in - 1
		}
	}
	return 0
}

// evenly returns how a stitch is worked as it lies, on the right side.
func (l loop) evenly() sign {
	switch {
	case l.purled && l.tbl:
		return sign{op: stitch.PurlTBL}
	case l.purled:
		return sign{op: stitch.Purl}
	case l.tbl:
		return sign{op: stitch.KnitTBL}
	}
	return sign{op: stitch.Knit}
}

// left returns the loop that a sign leaves.
func (s sign) left(column int) loop {
	return loop{column, s.purled(), s.op == stitch.KnitTBL || s.op == stitch.PurlTBL}
}
