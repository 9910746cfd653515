package charted

import "slices"

// choose finds out how the chart is read: from which edge, whether it shows whole rounds, and
// where they begin.
func (c *comparer) choose() {
	c.read(false)
	if c.unlike() == 0 {
		return
	}
	right, as := c.unlike(), *c
	c.pairs = slices.Clone(c.pairs)
	if c.read(true); c.unlike() >= right {
		*c = as
	}
}

// unlike returns how many rounds differ.
func (c *comparer) unlike() (n int) {
	for i := range c.pairs {
		if _, same := c.pairs[i].begins(c); !same {
			n++
		}
	}
	return n
}

// read reads the chart from an edge.
func (c *comparer) read(left bool) {
	c.left, c.short = left, 0
	lacking := make([]int, len(c.pairs))
	for i := range c.pairs {
		p := &c.pairs[i]
		of := &c.table[p.t]
		p.shown, p.round, p.from = c.codes.of(of.signs, left), c.codes.of(c.text[p.r].signs, false), of.from
		if left {
			p.from = slices.Clone(of.from)
			slices.Reverse(p.from)
			for k, x := range p.from {
				p.from[k] = c.width - 1 - x
			}
		}
		lacking[i] = len(p.round) - len(p.shown)
	}
	if short, times := mostOften(lacking); short > 0 && 2*times > len(lacking) && len(lacking) > 2 {
		c.short = short
	}
	for i := range c.pairs {
		p := &c.pairs[i]
		p.at = nil
		if len(p.round)-len(p.shown) == c.short {
			p.at = fits(p.shown, p.round)
		}
	}
	if c.short > 0 {
		c.pin()
	}
	last := -1
	for i := range c.pairs {
		last = max(last, c.pairs[i].block)
	}
	c.begin = make([]int, last+1)
	for b := range c.begin {
		c.begin[b] = none
		if c.short == 0 {
			c.begin[b] = c.edge(b)
		}
	}
}

// pin finds where in the rounds a chart that shows a part of each begins: so many stitches after
// their beginning or before it, in nearly all of them. Rounds that fit elsewhere differ.
func (c *comparer) pin() {
	able := 0
	after, before := []int{}, []int{}
	for i := range c.pairs {
		p := &c.pairs[i]
		if len(p.at) > 0 {
			able++
		}
		for _, k := range p.at {
			after, before = append(after, k), append(before, len(p.round)-k)
		}
	}
	a, times := mostOften(after)
	b, others := mostOften(before)
	if max(times, others) < able-1 && 10*max(times, others) < 8*able {
		return
	}
	for i := range c.pairs {
		p := &c.pairs[i]
		p.at = slices.DeleteFunc(p.at, func(k int) bool {
			if times >= others {
				return k != a
			}
			return len(p.round)-k != b
		})
	}
}

// edge finds the column at which the rounds of a block begin: the edge, if most do there that
// can be told apart, or another if all of them do; -1: none.
func (c *comparer) edge(block int) int {
	votes := make([]int, c.width+2) // so many more from here on than at the column before
	able, sure, here := 0, 0, 0     // rounds that can be told apart; that fit at one place only; and there
	for i := range c.pairs {
		p := &c.pairs[i]
		n := len(p.shown)
		if p.block != block || len(p.at) == 0 || len(p.at) == n {
			continue
		}
		if able++; len(p.at) == 1 {
			if sure++; p.at[0] == 0 {
				here++
			}
		}
		for _, k := range p.at {
			first := (n - k) % n // of what is shown, the stitch that begins the round
			from, to := 0, p.from[first]
			if first > 0 {
				from = p.from[first-1] + 1
			} else {
				votes[p.from[n-1]+1]++
				votes[c.width+1]--
			}
			votes[from]++
			votes[to+1]--
		}
	}
	if votes[0] == able || here >= 3 && 3*here >= 2*sure {
		return 0
	}
	sum := 0
	for x := range c.width + 1 {
		if sum += votes[x]; sum == able {
			return x
		}
	}
	return none
}

// begins returns at which stitch of the round what is shown begins, and whether it is the same
// as in the text.
func (p *pair) begins(c *comparer) (at int, same bool) {
	begin := c.begin[p.block]
	if begin == none {
		if len(p.at) > 0 {
			return p.at[0], true
		}
		return 0, false
	}
	n := len(p.shown)
	first, _ := slices.BinarySearch(p.from, begin)
	if n > 0 {
		at = (n - first%n) % n
	}
	return at, slices.Contains(p.at, at)
}

// nearest returns where what is shown agrees best with the round.
func (p *pair) nearest() (at int) {
	n, best := len(p.round), -1
	if n*len(p.shown) > 100_000 {
		return 0
	}
	for k := range n {
		alike := 0
		for i := range p.shown {
			if p.shown[i] == p.round[(k+i)%n] {
				alike++
			}
		}
		if alike > best {
			at, best = k, alike
		}
	}
	return at
}
