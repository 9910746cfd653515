package grade

import (
	"math"
	"slices"

	"thenar/internal/mitt"
)

// The numbers of the common text: base, bridge, stitches picked up, decreases and
// rhythm.
const textNumbers = 5

// A Notch is a way to share one text among the sizes: the best one for a range of
// prices of a change.
type Notch struct {
	Changes int     // of the text's numbers, from one size to the next
	From    float64 // the price in mm² from which on it is the best
	Cost    float64 // what all sizes pay together against their own best, in mm²

	Pays   []float64 // what each size pays, in mm: the root of its cost, less that of its own best
	Choice []int     // of each size, in the list of its choices; −1: it has none

	from price
}

// price is an exact price: over changes, in 10⁻⁹ mm².
type price struct{ cost, changes int64 }

// atMost reports whether p is no higher than a price in 10⁻⁹ mm².
func (p price) atMost(nano int64) bool { return p.cost <= nano*p.changes }

// most is the highest cost of a size against its own best that is told apart, in
// 10⁻⁹ mm²: 100 million mm², ten metres. Sizes are added without overflow below it.
const most = int64(1e17)

// never is the cost of what can't be made.
const never = math.MaxInt64

// joint finds the common texts of sizes in order.
type joint struct {
	sizes [][]mitt.Choice
	own   [][]int64 // cost of each choice against the size's own best
	least []int64   // the cost of that
	fall  []bool    // whether the gusset may have fewer stitches than that of the size before
	first []int     // the sizes that have choices
	best  [][][]int64
}

// Notches returns every common text that is the best at some price of a change,
// from each size's own best to the fewest changes. Of sizes[i] a choice is taken,
// unless it has none; a size without choices stands in nobody's way. The sum
//
//	Σ cost + μ · (numbers of the text that change from one size to the next)
//
// is minimised exactly, for all μ ≥ 0, by dynamic programming over the sizes, with
// the choices as states: for each number of changes the least cost, of which those
// on the lower hull are the notches. Rounds of their own count as a change at every
// size. A gusset with fewer stitches than the size before is barred, unless
// mayFall[i] says that the measure behind it falls too; if that bars everything,
// barred is false, and nothing is.
func Notches(sizes [][]mitt.Choice, mayFall []bool) (notches []Notch, barred bool) {
	j := joint{sizes: sizes, fall: slices.Clone(mayFall), own: make([][]int64, len(sizes)), least: make([]int64, len(sizes))}
	for i, list := range sizes {
		if len(list) == 0 {
			continue
		}
		j.first = append(j.first, i)
		j.least[i] = cheapest(list).Cost
		for _, x := range list {
			j.own[i] = append(j.own[i], min(x.Cost-j.least[i], most))
		}
	}
	if len(j.first) == 0 {
		return []Notch{j.notch(nil, 0, 0)}, true
	}
	barred = j.solve()
	if !barred {
		for i := range j.fall {
			j.fall[i] = true
		}
		j.solve()
	}
	return j.hull(), barred
}

// solve works out best[i][changes][choice], the least cost up to the i-th size that
// has choices with at most so many changes. It reports whether there is any way.
func (j *joint) solve() bool {
	limit := textNumbers * (len(j.first) - 1)
	keys := newMatches(j)
	j.best = make([][][]int64, len(j.first))
	for n, i := range j.first {
		j.best[n] = make([][]int64, limit+1)
		for c := range j.best[n] {
			j.best[n][c] = slices.Clone(j.own[i])
		}
		if n == 0 {
			continue
		}
		before := j.first[n-1]
		keys.clear()
		older, newer := byGusset(j.sizes[before]), byGusset(j.sizes[i])
		at := 0
		for _, v := range newer {
			for at < len(older) && (j.fall[i] || j.sizes[before][older[at]].Gusset <= j.sizes[i][v].Gusset) {
				keys.add(n-1, older[at])
				at++
			}
			keys.take(n, v)
		}
	}
	_, ok := j.last(limit)
	return ok
}

// byGusset returns the choices in order of the gusset's stitches.
func byGusset(list []mitt.Choice) []int {
	order := make([]int, len(list))
	for v := range order {
		order[v] = v
	}
	slices.SortStableFunc(order, func(a, b int) int { return list[a].Gusset - list[b].Gusset })
	return order
}

// last returns the last size's best choice with at most so many changes.
func (j *joint) last(changes int) (v int, ok bool) {
	costs := j.best[len(j.first)-1][changes]
	for w, cost := range costs {
		if cost < costs[v] {
			v = w
		}
	}
	return v, costs[v] != never
}

// hull returns the notches: the least costs by number of changes, of which only
// those count that some price makes the best.
func (j *joint) hull() []Notch {
	limit := len(j.best[0]) - 1
	var list []Notch
	var costs []int64
	for changes := 0; changes <= limit; changes++ {
		v, ok := j.last(changes)
		if !ok {
			continue
		}
		cost := j.best[len(j.first)-1][changes][v]
		if n := len(costs); n > 0 && cost == costs[n-1] {
			continue // more changes for nothing
		}
		// Towards more changes the price falls: the last one is never the best if it
		// is no better than a mixture of its neighbours.
		from := func(n int) price { return price{costs[n] - cost, int64(changes - list[n].Changes)} }
		for n := len(list); n > 1 && !dearer(list[n-2].from, from(n-1)); n-- {
			list, costs = list[:n-1], costs[:n-1]
		}
		if n := len(list); n > 0 {
			list[n-1].from = from(n - 1)
		}
		list, costs = append(list, j.notch(j.path(changes, v), changes, cost)), append(costs, cost)
	}
	slices.Reverse(list)
	for i := range list {
		if p := list[i].from; p.changes > 0 {
			list[i].From = float64(p.cost) / float64(p.changes) / nano
		}
	}
	return list
}

const nano = 1e9

// dearer reports whether price a is above b.
func dearer(a, b price) bool {
	// Quotient and remainder, since the products of whole costs would overflow.
	qa, ra := a.cost/a.changes, a.cost%a.changes
	qb, rb := b.cost/b.changes, b.cost%b.changes
	if qa != qb {
		return qa > qb
	}
	return ra*b.changes > rb*a.changes
}

// path returns the choices that lead to choice v of the last size with at most so
// many changes; of equal ones the first in the order of the list.
func (j *joint) path(changes, v int) []int {
	path := make([]int, len(j.first))
	for n := len(j.first) - 1; ; n-- {
		path[n] = v
		if n == 0 {
			return path
		}
		i, before := j.first[n], j.first[n-1]
		want := j.best[n][changes][v] - j.own[i][v]
		for u := range j.sizes[before] {
			x, y := &j.sizes[before][u], &j.sizes[i][v]
			left := changes - differ(x, y)
			if left >= 0 && (j.fall[i] || x.Gusset <= y.Gusset) && j.best[n-1][left][u] == want {
				v, changes = u, left
				break
			}
		}
	}
}

// differ returns how many of the text's numbers differ between two choices.
func differ(x, y *mitt.Choice) int {
	n := 0
	for _, same := range [textNumbers]bool{
		x.Base == y.Base, x.Bridge == y.Bridge, x.PickedUp == y.PickedUp, x.Decreases == y.Decreases,
		x.Every == y.Every && x.Every > 0,
	} {
		if !same {
			n++
		}
	}
	return n
}

// notch returns the notch of a path through the sizes that have choices.
func (j *joint) notch(path []int, changes int, cost int64) Notch {
	n := Notch{Changes: changes, Cost: float64(cost) / nano, Pays: make([]float64, len(j.sizes)), Choice: make([]int, len(j.sizes))}
	for i := range n.Choice {
		n.Choice[i] = -1
	}
	for at, v := range path {
		i := j.first[at]
		n.Choice[i], n.Pays[i] = v, root(j.least[i]+j.own[i][v])-root(j.least[i])
	}
	return n
}

// root returns how far off a cost in 10⁻⁹ mm² is, in mm.
func root(cost int64) float64 { return math.Sqrt(float64(cost) / nano) }
