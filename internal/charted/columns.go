package charted

import (
	"thenar/internal/stitch"
	"thenar/internal/written"
)

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
	if len(list) == 0 { // no row has stitches
		return nil
	}
	for at, n := c.first, 0; at != none; at, n = c.next[at], n+1 {
		list[at] = n
	}
	return list
}

// loop is a stitch on the needles, as the next round finds it.
type loop struct {
	column int
	seen   bool // how it lies is known
	purled bool // its purl side is out
	tbl    bool // it was knitted through the back loop
	steady bool // so was the one below it
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
	case !l.seen:
		return sign{said: elsewhere}
	case l.purled && l.tbl:
		return sign{op: stitch.PurlTBL}
	case l.purled:
		return sign{op: stitch.Purl}
	case l.tbl:
		return sign{op: stitch.KnitTBL}
	}
	return sign{op: stitch.Knit}
}

// over returns how a stitch is worked over a loop, as it looks on the right side, that is told
// by the fabric only. What isn't told is not made up.
func (w work) over(l loop) sign {
	knit, purl := sign{op: stitch.Knit}, sign{op: stitch.Purl}
	switch w.as {
	case written.Smooth:
		return knit
	case written.Plainly, written.Purled:
		if w.behind != (w.as == written.Purled) {
			return purl
		}
		return knit
	case written.Garter:
		switch {
		case w.behind:
			return purl
		case w.inRows, l.seen && l.purled:
			return knit
		case l.seen:
			return purl
		}
	case written.Ribbed, written.AsItLies:
		return l.evenly()
	case written.Patterned:
		if l.steady {
			return l.evenly()
		}
	}
	return sign{said: elsewhere}
}

// left returns the loop that a sign leaves over those below.
func (s sign) left(column int, below []loop) loop {
	l := loop{column: column, seen: s.said != elsewhere && s.op != stitch.CastOn, purled: s.purled(), tbl: s.op == stitch.KnitTBL || s.op == stitch.PurlTBL}
	l.steady = l.seen && len(below) == 1 && below[0].seen && below[0].purled == l.purled
	return l
}
