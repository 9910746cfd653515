package wale

import (
	"cmp"
	"slices"

	"thenar/internal/stitch"
)

// Mirror names the columns of the other hand's rounds, stitch.Mirror(m),
// operation by operation, with the names of m, the right hand's: what is the
// mirror image has the same name. Every round has the columns that it has on
// the right hand, each with an operation that eats and makes as much, so that
// what is painted on one hand adds up on the other.
//
// An even round is worked alike on both hands, over columns that lie in the
// opposite order. Its stitches have the names of those that they stand on; what
// it makes, and what it takes together, is counted from the other end.
func Mirror(m stitch.Mitt, base int) Names {
	right := Mitt(m, base)
	w := walker{mirror: true}
	return w.mitt(m, base, func(s stitch.Section, i int) []string {
		return w.mirrored(s.Rounds[i], right[s.Part][i])
	})
}

// mirrored names the operations of one round's mirror image after those of the
// right hand's, and goes past it.
func (w *walker) mirrored(r stitch.Round, right []string) []string {
	ops, names := r.Ops, make([]string, len(right))
	order := r.MirrorOrder()
	switch {
	case whole(ops) && len(ops) == len(w.live):
		copy(names, w.live)
	case r.Even:
		names = w.even(ops, right)
	default:
		for j, from := range order {
			names[j] = right[from]
		}
	}
	w.past(r, order, names)
	return names
}

// whole reports whether a round leaves every column as it is.
func whole(ops []stitch.Op) bool {
	return !slices.ContainsFunc(ops, func(o stitch.Op) bool { return o.In() != 1 || o.Out() != 1 || o == stitch.Hold })
}

// even names the operations of a round that both hands work alike: of those
// that eat and make as much, the first has the name that lies first on the
// needles; of what is made, the last made on the right hand.
func (w *walker) even(ops []stitch.Op, right []string) []string {
	type kind struct{ in, out int }
	of := map[kind][]string{}
	for i, op := range ops {
		k := kind{op.In(), op.Out()}
		of[k] = append(of[k], right[i])
	}
	for k, list := range of {
		if k.in == 0 {
			slices.Reverse(list)
		} else {
			w.sort(list)
		}
	}
	names := make([]string, len(ops))
	for i, op := range ops {
		k := kind{op.In(), op.Out()}
		names[i], of[k] = of[k][0], of[k][1:]
	}
	return names
}

// sort brings columns in the order in which they lie on the needles.
func (w *walker) sort(list []string) {
	at := make(map[string]int, len(w.live))
	for i, name := range w.live {
		at[name] = i
	}
	slices.SortStableFunc(list, func(a, b string) int { return cmp.Compare(at[a], at[b]) })
}

// past leaves on the needles what a round makes. Where an even round takes
// columns together, those that go on keep the order in which they lay.
func (w *walker) past(r stitch.Round, order []int, names []string) {
	above := make([]string, 0, len(names))
	taken := false
	for j, from := range order {
		op := r.Ops[from]
		for range op.Out() {
			above = append(above, names[j])
		}
		if op == stitch.Hold {
			w.keep(r.SetAt(from), names[j])
		}
		taken = taken || op.In() > 1
	}
	if r.Even && taken {
		w.sort(above)
	}
	w.live = above
}
