package wale

import (
	"cmp"
	"slices"

	"thenar/internal/stitch"
)

// A mitt that is worked from the fingertips is named as it lies, from the cuff up: what a
// decrease takes in besides its own column begins there, and what an increase makes ends.
// So its columns have the names of the same mitt worked from the cuff.

// down names the columns of a mitt that is worked from the fingertips. round names the
// operations of round i of a section and moves the walker past it, upward.
func (w *walker) down(m stitch.Mitt, base int, round func(s *stitch.Section, i int) []string) Names {
	names := Names{}
	goesOn, turn := false, 0
	for _, s := range m.Upward() {
		lowest := &s.Rounds[len(s.Rounds)-1]
		switch {
		case s.Part.Marked():
			w.begin(numbered(Base, base), numbered(Hand, s.Around(lowest.Out())-lowest.LeadOut()), max(0, lowest.BeforeOut()-s.Seam), s.Seam)
		case s.Joins() != "":
			w.joinThumb(s)
		case goesOn && !s.Part.Passing():
			w.turn(turn)
		default:
			all := numbered(Hand, s.Around(lowest.Out()))
			under := min(base, len(all))
			if s.Seam > 0 {
				under = 0
			}
			w.begin(all[:under], all[under:], 0, s.Seam)
		}
		if turn = -s.Shift; w.mirror {
			turn = -s.Across
		}
		goesOn = !s.Part.Passing()
		names[s.Part] = make([][]string, len(s.Rounds))
		foot := w.live
		for i := range slices.Backward(s.Rounds) {
			names[s.Part][i] = round(s, i)
		}
		w.edge(s.Part, foot)
	}
	return names
}

// nameDown names a mitt from the fingertips worked as the right hand.
func (w *walker) nameDown(m stitch.Mitt, base int) Names {
	return w.down(m, base, func(s *stitch.Section, i int) []string {
		r := s.Rounds[i]
		if !s.Part.Marked() {
			r.Lead = 0
		}
		return w.roundDown(place{s.Part, i}, r)
	})
}

// roundDown names the operations of a round over the columns at its lower edge, and moves
// past it. In its leading block, a gusset's, what begins has the family of its edge.
func (w *walker) roundDown(p place, r stitch.Round) []string {
	begun, done, end := 0, 0, r.Before+r.Lead
	for _, op := range r.Ops[r.Before:end] {
		begun += max(0, op.In()-op.Out())
	}
	names := make([]string, len(r.Ops))
	at := 0
	var above []string
	for i, op := range r.Ops {
		switch {
		case op == stitch.Hold:
			names[i] = w.bear(Bridge)
		case at < len(w.live):
			names[i] = w.live[at]
		}
		at += op.Out()
		var beside []string
		for range max(0, op.In()-max(op.Out(), 1)) {
			family := byte(Made)
			if i >= r.Before && i < end {
				if family = First; 2*done >= begun || begun == 1 && leansRight(op) {
					family = Last
				}
				done++
			}
			beside = append(beside, w.bear(family))
		}
		if beside != nil {
			w.putBeside(p, i, beside)
		}
		above = append(above, eaten(op, names[i], beside)...)
		if op == stitch.Take {
			w.putAside(r.SetAt(i), names[i])
		}
	}
	w.live = above
	return names
}

// joinThumb puts the columns of a thumb at the join on the needles: those that come into the
// hand, and before them, or in rows at both edges of them, those that wait for the gap.
func (w *walker) joinThumb(s *stitch.Section) {
	w.takeUp([]stitch.Set{s.Joins()})
	waits, first := 0, 0 // of the round; and those that the row begins with
	joined := false
	for i := range s.Finish.Ops {
		switch s.Finish.SetAt(i) {
		case stitch.GapOfThumb:
			if waits++; !joined {
				first++
			}
		case s.Joins():
			joined = true
		}
	}
	picked := numbered(Picked, waits)
	if w.mirror {
		slices.Reverse(picked)
	}
	if s.Seam == 0 {
		w.live = append(picked, w.live...)
		return
	}
	edges := numbered(Seam, 2*s.Seam)
	at := waits - first
	if w.mirror {
		slices.Reverse(edges)
		at = first
	}
	w.live = slices.Concat(edges[:s.Seam], picked[at:], w.live, picked[:at], edges[s.Seam:])
}

// bear returns the name of a column that begins.
func (w *walker) bear(family byte) string {
	w.born[family]++
	return numbered(family, w.born[family])[w.born[family]-1]
}

// putBeside keeps the columns that a decrease takes in besides its own.
func (w *walker) putBeside(p place, i int, names []string) {
	if w.taken == nil {
		w.taken = map[place]map[int][]string{}
	}
	if w.taken[p] == nil {
		w.taken[p] = map[int][]string{}
	}
	w.taken[p][i] = names
}

// eaten returns the columns that an operation takes, in their order: its own, which lies
// on top, and those beside it.
func eaten(op stitch.Op, own string, beside []string) []string {
	switch {
	case op.In() == 0:
		return nil
	case len(beside) == 0:
		return []string{own}
	case op == stitch.S2KP:
		return []string{beside[0], own, beside[1]}
	case leansRight(op):
		return append(slices.Clone(beside), own)
	}
	return append([]string{own}, beside...)
}

// mirrorDown names the other hand's rounds by those of the right hand, of which own keeps
// what its decreases take in.
func (w *walker) mirrorDown(m stitch.Mitt, base int, right Names, own *walker) Names {
	return w.down(m, base, func(s *stitch.Section, i int) []string {
		r, of := s.Rounds[i], right[s.Part][i]
		order, taken := r.MirrorOrder(), own.taken[place{s.Part, i}]
		names, beside := make([]string, len(of)), make([][]string, len(of))
		switch {
		case keepsColumns(r.Ops) && len(r.Ops) == len(w.live):
			copy(names, w.live)
		case r.Even:
			names = w.evenDown(r.Ops, of)
			from := len(r.Ops)
			for j := range beside { // those that begin are counted from the other end
				if r.Ops[j].In() > 1 {
					for from--; len(taken[from]) == 0; from-- {
					}
					beside[j] = taken[from]
				}
			}
		default:
			for j, from := range order {
				names[j], beside[j] = of[from], slices.Clone(taken[from])
				slices.Reverse(beside[j])
			}
		}
		var above []string
		for _, j := range w.inOrder(r.Even, names) {
			op := r.Ops[order[j]]
			if !r.Even {
				op = op.Twin()
			}
			above = append(above, eaten(op, names[j], beside[j])...)
			if op == stitch.Take {
				w.putAside(r.SetAt(order[j]), names[j])
			}
		}
		w.live = above
		return names
	})
}

// inOrder returns the operations of a round in the order in which their columns lie. After
// a round that both hands work alike they keep the order in which they lay.
func (w *walker) inOrder(even bool, names []string) []int {
	list := make([]int, len(names))
	for j := range list {
		list[j] = j
	}
	if even {
		slices.SortStableFunc(list, func(a, b int) int {
			return cmp.Compare(slices.Index(w.live, names[a]), slices.Index(w.live, names[b]))
		})
	}
	return list
}

// evenDown names the operations of a round that both hands work alike. Those that take
// and leave equally many stitches have the names that these have on the right hand, in
// the order in which they lie here.
func (w *walker) evenDown(ops []stitch.Op, right []string) []string {
	of := map[[2]int][]string{}
	for i, op := range ops {
		k := [2]int{op.In(), op.Out()}
		of[k] = append(of[k], right[i])
	}
	for _, list := range of {
		w.sortByNeedle(list)
	}
	names := make([]string, len(ops))
	for i, op := range ops {
		k := [2]int{op.In(), op.Out()}
		names[i], of[k] = of[k][0], of[k][1:]
	}
	return names
}
