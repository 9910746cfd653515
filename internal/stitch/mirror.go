package stitch

import "slices"

// Mirror returns the same mitt for the other hand. The leading block of each
// round stays in front, since the round begins at the gusset on both hands.
// Within the block and within the rest the order is reversed, and each operation
// becomes its twin; where the round begins elsewhere, that is the mirrored place. Even rounds stay as they are, and stitches are still put
// aside before the bridge is cast on in their place. Mirroring twice gives the
// mitt itself.
func Mirror(m Mitt) Mitt {
	out := Mitt{Sections: make([]Section, len(m.Sections)), Left: m.Left}
	for i, s := range m.Sections {
		rounds := make([]Round, len(s.Rounds))
		for j, r := range s.Rounds {
			rounds[j] = MirrorRound(r)
		}
		s.Rounds, s.Finish, s.Shift, s.Across = rounds, MirrorRound(s.Finish), s.Across, s.Shift
		out.Sections[i] = s
	}
	return out
}

// FromLeft returns a mitt with its operations named for a person who knits from
// left to right. Such a person works every round as in a mirror and so makes the
// mitt for the other hand: m must be the mirror of the mitt that is wanted.
func FromLeft(m Mitt) Mitt {
	out := Mitt{Sections: make([]Section, len(m.Sections)), Left: m.Left}
	for i, s := range m.Sections {
		rounds := make([]Round, len(s.Rounds))
		for j, r := range s.Rounds {
			rounds[j] = r.fromLeft()
		}
		s.Rounds, s.Finish = rounds, s.Finish.fromLeft()
		out.Sections[i] = s
	}
	return out
}

func (r Round) fromLeft() Round {
	r.Ops = slices.Clone(r.Ops)
	for i, op := range r.Ops {
		r.Ops[i] = op.FromLeft()
	}
	return r
}

// MirrorRound returns the round as it is worked on the other hand.
func MirrorRound(r Round) Round {
	if len(r.Ops) == 0 {
		return r
	}
	out := Round{Ops: make([]Op, len(r.Ops)), Lead: r.Lead, Even: r.Even, Side: r.Side, Before: r.mirroredBefore()}
	if r.Aside != nil {
		out.Aside = make([]Set, len(r.Ops))
	}
	for i, from := range r.MirrorOrder() {
		out.Ops[i] = r.Ops[from]
		if !r.Even {
			out.Ops[i] = out.Ops[i].Twin()
		}
		if r.Aside != nil {
			out.Aside[i] = r.Aside[from]
		}
	}
	return out
}

// Differing returns the parts of a that b does not work alike in their place: with the same
// stitches cast on, taken up and kept aside, and the same operations in every round and
// finish. What b alone has differs, too.
func Differing(a, b Mitt) []Part {
	var list []Part
	for i := range max(len(a.Sections), len(b.Sections)) {
		switch {
		case i >= len(a.Sections):
			list = append(list, b.Sections[i].Part)
		case i >= len(b.Sections) || !alikeSections(&a.Sections[i], &b.Sections[i]):
			list = append(list, a.Sections[i].Part)
		}
	}
	return list
}

func alikeSections(a, b *Section) bool {
	return a.Part == b.Part && a.Down == b.Down && a.CastOn == b.CastOn && a.Shift == b.Shift && a.Seam == b.Seam && slices.Equal(a.From, b.From) &&
		alike(a.Finish, b.Finish) && slices.EqualFunc(a.Rounds, b.Rounds, alike)
}

func alike(a, b Round) bool {
	return a.Side == b.Side && slices.Equal(a.Ops, b.Ops) && slices.Equal(a.Aside, b.Aside)
}

// MirrorOrder returns, for each operation of the mirrored round, the index of
// the operation of r that it comes from.
func (r Round) MirrorOrder() []int {
	order := make([]int, len(r.Ops))
	for i := range order {
		order[i] = i
	}
	switch {
	case r.Even:
	case r.Row():
		r.mirrorRow(order)
	default:
		for _, block := range [2][]int{order[:r.Lead], order[r.Lead:]} {
			slices.Reverse(block)
			frontAndBack(r.Ops, block)
		}
		asideFirst(r.Ops, order)
	}
	return order
}

// frontAndBack sets right the stitches knitted front and back in a block that was
// turned round. The new stitch lies after the one that it comes from, on both hands.
// So that it lies in the mirrored place, its neighbour there is worked twice: each
// kfb comes one operation earlier. The last of a block has no such neighbour and stays
// the last, where its new stitch ends the block.
func frontAndBack(ops []Op, block []int) {
	if !slices.ContainsFunc(block, func(i int) bool { return ops[i] == KFB }) {
		return
	}
	last := len(block) - 1
	turned, rest := make([]int, len(block)), block[:0:0]
	for i := range turned {
		turned[i] = -1
	}
	for at, i := range block {
		switch {
		case ops[i] != KFB:
			rest = append(rest, i)
		case at == 0:
			turned[last] = i
		default:
			turned[at-1] = i
		}
	}
	for at := range turned {
		if turned[at] < 0 {
			turned[at], rest = rest[0], rest[1:]
		}
	}
	copy(block, turned)
}

// asideFirst moves holds before the cast-ons beside them, and before the stitches that
// come into the round there, as they are worked: the stitches are put aside, then
// others take their place.
func asideFirst(ops []Op, order []int) {
	for i := 1; i < len(order); i++ {
		for j := i; j > 0 && ops[order[j]] == Hold && (ops[order[j-1]] == CastOn || ops[order[j-1]] == Take); j-- {
			order[j], order[j-1] = order[j-1], order[j]
		}
	}
}
