package stitch

import "slices"

// Side says which side of the fabric faces the knitter.
type Side uint8

// The sides. In the round it is always the right side, and no round ends.
const (
	AllRound  Side = iota
	RightSide      // a row with the right side facing
	WrongSide      // a row with the wrong side facing
)

// Row reports whether the round is a row, at whose end the piece is turned.
func (r Round) Row() bool { return r.Side != AllRound }

// Worked returns the operations as the hands make them, in the order in which they
// do. The operations of a row are listed as they look on the right side, from right
// to left; on the wrong side they are met from the other end and turned.
func (r Round) Worked() []Op {
	ops := slices.Clone(r.Ops)
	if r.Side == WrongSide {
		slices.Reverse(ops)
		for i, o := range ops {
			ops[i] = o.Turned()
		}
	}
	return ops
}

// turned lists the operations that look like each other from the two sides of the
// fabric.
var turned = [][2]Op{{Knit, Purl}, {K2tog, P2tog}, {SSK, SSP}}

// Turned returns the operation that makes on the wrong side what o looks like on the
// right side. Where both are the same it is o.
func (o Op) Turned() Op {
	for _, pair := range turned {
		switch o {
		case pair[0]:
			return pair[1]
		case pair[1]:
			return pair[0]
		}
	}
	return o
}

// mirrorRow returns the order of a row's operations on the other hand: from its other
// end. The leading block stands in the mirrored place.
func (r Round) mirrorRow(order []int) {
	end := r.Before + r.Lead
	slices.Reverse(order)
	for _, block := range [3][]int{order[:len(order)-end], order[len(order)-end : len(order)-r.Before], order[len(order)-r.Before:]} {
		frontAndBack(r.Ops, block)
	}
	asideFirst(r.Ops, order)
}

// mirroredBefore returns how many operations stand before the leading block on the
// other hand.
func (r Round) mirroredBefore() int {
	if !r.Row() || r.Lead == 0 || r.Even {
		return r.Before
	}
	return len(r.Ops) - r.Before - r.Lead
}
