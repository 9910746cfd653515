package wale

import (
	"cmp"
	"slices"

	"thenar/internal/stitch"
)

// Mirror names the columns of stitch.Mirror(m), the other hand, by those of m,
// the right hand: a column and its mirror image have the same name. Every round
// has the same columns on both hands, each with an operation that eats and makes
// as many stitches, so that a chart painted on one hand adds up on the other.
//
// An even round is worked alike on both hands, over columns that lie in the
// opposite order. Its plain stitches have the names of the stitches below; its
// increases and decreases are counted from the other end.
func Mirror(m stitch.Mitt, base int) Names {
	names, _ := Trace(m, base, true)
	return names
}

// nameMirrored is Mirror.
func (w *walker) nameMirrored(m stitch.Mitt, base int) Names {
	own := walker{}
	if m.Down() {
		return w.mirrorDown(m, base, own.nameDown(m, base), &own)
	}
	right := own.name(m, base)
	return w.mitt(m, base, func(s stitch.Section, i int) []string {
		return w.mirrorRound(s.Rounds[i], right[s.Part][i], own.beside[place{s.Part, i}])
	})
}

// mirrorRound names the operations of the mirror image of r by those of the right
// hand, and moves past it. beside has the columns that begin beside those.
func (w *walker) mirrorRound(r stitch.Round, right, beside []string) []string {
	ops, names := r.Ops, make([]string, len(right))
	order := r.MirrorOrder()
	switch {
	case keepsColumns(ops) && len(ops) == len(w.live):
		copy(names, w.live)
	case r.Even:
		names = w.evenRound(ops, right)
	default:
		for j, from := range order {
			names[j] = right[from]
		}
	}
	if beside != nil {
		w.advanceBeside(r, order, names, beside)
	} else {
		w.advance(r, order, names)
	}
	return names
}

// keepsColumns reports whether every operation works exactly one column.
func keepsColumns(ops []stitch.Op) bool {
	return !slices.ContainsFunc(ops, func(o stitch.Op) bool { return o.In() != 1 || o.Out() != 1 || o == stitch.Hold })
}

// evenRound names the operations of a round that both hands work alike. The
// operations that eat and make equally many stitches get the names that these
// have on the right hand: in the order on the needles, new columns in the
// opposite order of making.
func (w *walker) evenRound(ops []stitch.Op, right []string) []string {
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
			w.sortByNeedle(list)
		}
	}
	names := make([]string, len(ops))
	for i, op := range ops {
		k := kind{op.In(), op.Out()}
		names[i], of[k] = of[k][0], of[k][1:]
	}
	return names
}

// sortByNeedle sorts columns in the order in which they lie on the needles.
func (w *walker) sortByNeedle(list []string) {
	at := make(map[string]int, len(w.live))
	for i, name := range w.live {
		at[name] = i
	}
	slices.SortStableFunc(list, func(a, b string) int { return cmp.Compare(at[a], at[b]) })
}

// advanceBeside puts the columns that a round leaves on the needles if some begin
// beside others. It knits front and back in other columns than the right hand does,
// those that lie before the new ones here; so all that are eaten stay in the order in
// which they lay.
func (w *walker) advanceBeside(r stitch.Round, order []int, names, beside []string) {
	var above []string
	at := 0
	for j, from := range order {
		op, name := r.Ops[from], names[j]
		if op.In() > 0 && at < len(w.live) {
			name = w.live[at]
		}
		at += op.In()
		if op.Out() > 0 {
			above = append(above, name)
		}
		if beside[from] != "" {
			above = append(above, beside[from])
		}
	}
	w.live = above
}

// advance puts the columns that a round leaves on the needles. After decreases in
// an even round they keep the order in which they lay.
func (w *walker) advance(r stitch.Round, order []int, names []string) {
	above := make([]string, 0, len(names))
	decreased := false
	for j, from := range order {
		op := r.Ops[from]
		for range op.Out() {
			above = append(above, names[j])
		}
		if op.Keeps() {
			w.putAside(r.SetAt(from), names[j])
		}
		if j > 0 && op == stitch.Waste && r.Ops[order[j-1]] == stitch.Waste && r.SetAt(from) == r.SetAt(order[j-1]) {
			w.free(r.SetAt(from).Above(), names[j-1], names[j])
		}
		decreased = decreased || op.In() > 1
	}
	if r.Even && decreased {
		w.sortByNeedle(above)
	}
	w.live = above
}
