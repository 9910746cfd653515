package makeup

import "cmp"

// Cost is what a layout costs, in the order in which its figures count.
type Cost struct {
	Over   int // tenths of a millimetre by which parts stick out of their pages
	Parted int // breaks where two parts should be kept together
	Pages  int
	Thin   int // pages less than 40 % full, but for the last
	Apart  int // pages with a chart that doesn't lie open beside its words, or words without their chart
	Empty  int // sum of the squares of empty heights in tenths of a millimetre, but for the last page
	Shrunk int // sum of the squares of shrinkings in steps of 5 %
}

// Compare returns -1 if c is the lesser cost, 1 if d is, and 0 if they are equal.
func (c Cost) Compare(d Cost) int {
	return cmp.Or(
		cmp.Compare(c.Over, d.Over),
		cmp.Compare(c.Parted, d.Parted),
		cmp.Compare(c.Pages, d.Pages),
		cmp.Compare(c.Thin, d.Thin),
		cmp.Compare(c.Apart, d.Apart),
		cmp.Compare(c.Empty, d.Empty),
		cmp.Compare(c.Shrunk, d.Shrunk),
	)
}

// thinShare is the share of its height in percent from which a page is no longer
// thin.
const thinShare = 40

// add adds a page without its facing. The last page is always full to its room,
// as a fit tells it.
func (c Cost) add(f fit, room int, kept bool) Cost {
	c.Pages++
	c.Over += f.over
	c.Shrunk += f.shrunk
	if kept {
		c.Parted++
	}
	if f.height*100 < thinShare*room {
		c.Thin++
	}
	empty := max(room-f.height, 0)
	c.Empty += empty * empty
	return c
}
