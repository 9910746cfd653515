package makeup

import (
	"cmp"
	"slices"
)

// sum is a height that some choice of ways adds up to, in tenths of a
// millimetre, with the least shrinking for it, in squares of steps of 5 %.
type sum struct{ height, shrunk int }

// sums holds the heights that can be reached, rising.
type sums []sum

// highest returns the highest sum of at most so much.
func (s sums) highest(most int) (sum, bool) {
	n, found := slices.BinarySearchFunc(s, most, func(a sum, most int) int { return cmp.Compare(a.height, most) })
	if found {
		return s[n], true
	}
	if n == 0 {
		return sum{}, false
	}
	return s[n-1], true
}

// least returns the least shrinking of a sum of at most so much.
func (s sums) least(most int) (shrunk int, ok bool) {
	for _, a := range s {
		if a.height > most {
			break
		}
		if !ok || a.shrunk < shrunk {
			shrunk, ok = a.shrunk, true
		}
	}
	return shrunk, ok
}

// size is a way of a piece as a whole.
type size struct{ height, shrunk int }

// adder adds pieces to sums.
type adder struct {
	most   int   // sums above it are of no use
	shrunk []int // by height, 1 more than the least shrinking; 0: not reached
	seen   []int // the heights that are reached
}

func newAdder(most int) *adder { return &adder{most: most, shrunk: make([]int, most+1)} }

// add returns the sums that are reached with one more piece.
func (a *adder) add(list sums, sizes []size) sums {
	a.seen = a.seen[:0]
	for _, z := range sizes {
		for _, s := range list {
			h, c := s.height+z.height, s.shrunk+z.shrunk+1
			if h > a.most {
				break
			}
			if was := a.shrunk[h]; was == 0 {
				a.seen = append(a.seen, h)
				a.shrunk[h] = c
			} else if c < was {
				a.shrunk[h] = c
			}
		}
	}
	slices.Sort(a.seen)
	out := make(sums, len(a.seen))
	for i, h := range a.seen {
		out[i] = sum{h, a.shrunk[h] - 1}
		a.shrunk[h] = 0
	}
	return out
}

// row holds the sums of the choices from one on, with none of them, with one, with
// two …, as far as they were asked for.
type row struct {
	*adder
	choices [][]size // of the pieces with several ways
	from    int
	lists   []sums
}

func newRow(choices [][]size, most int) *row {
	return &row{adder: newAdder(most), choices: choices, from: -1}
}

// begin sets the choice that is the first on a page.
func (r *row) begin(from int) {
	if from != r.from {
		r.from, r.lists = from, append(r.lists[:0], sums{{}})
	}
}

// with returns the sums of so many choices.
func (r *row) with(n int) sums {
	for len(r.lists) <= n {
		k := len(r.lists)
		r.lists = append(r.lists, r.add(r.lists[k-1], r.choices[r.from+k-1]))
	}
	return r.lists[n]
}

// goal is what the choices of a page have to add up to.
type goal struct {
	sum
	most bool // the height is the most that they may come to
}

// reached reports whether choices with such sums reach the goal.
func (g goal) reached(list sums) bool {
	if g.most {
		shrunk, ok := list.least(g.height)
		return ok && shrunk == g.shrunk
	}
	s, ok := list.highest(g.height)
	return ok && s == g.sum
}

// ways returns the ways of n choices that reach a goal. Of several, those win
// that are listed first, from the last piece back.
func (r *row) ways(n int, g goal) []int {
	list := make([]int, n)
	for k := n; k > 0; k-- {
		before := r.with(k - 1)
		for w, z := range r.choices[r.from+k-1] {
			rest := g
			rest.height, rest.shrunk = g.height-z.height, g.shrunk-z.shrunk
			if rest.reached(before) {
				list[k-1], g = w, rest
				break
			}
		}
	}
	return list
}
