package mitt

import "thenar/internal/stitch"

// growth is how the increase rounds of a gusset are worked (common practice, no
// source). The planner's own rounds keep gussetGap and gussetLeadOut, whichever way
// they are worked; closest and leadOut hold even for a fixed list of them.
type growth struct {
	closest   int  // rounds from one increase round to the next
	leadOut   int  // plain rounds at the end
	leastBase int  // stitches
	middle    bool // it grows beside its middle stitch: the base is odd, and nothing stays on the hand
	closed    bool // its yarn overs are closed in the next round

	round func(count int, oneSided, atBase bool) []stitch.Op // over count stitches
}

// leastFrontAnd is the least base of a gusset that grows by knitting front and back:
// the first stitch and the last but one are two, and the last stays an edge.
const leastFrontAnd = 3

var growths = map[Increase]*growth{
	// The increases of a pair lean away from the edges.
	MakeOne: {closest: 1, leastBase: 1, round: edged(stitch.M1L, stitch.M1R, stitch.M1L, stitch.M1R)},
	// A lifted increase uses up the stitch under it: the next needs a round between. At
	// the base both are lifted from its own stitches, so that the hand's are not pulled.
	Lifted: {closest: 2, leastBase: 1, round: edged(stitch.LLI, stitch.RLI, stitch.RLI, stitch.LLI)},
	YoClosed: {
		closest: 2, leadOut: 1, leastBase: 1, closed: true,
		round: edged(stitch.YarnOver, stitch.YarnOver, stitch.YarnOver, stitch.YarnOver),
	},
	FrontAnd: {closest: 1, leastBase: leastFrontAnd, round: frontAnd},
	InCentre: {closest: 1, leastBase: 1, middle: true, round: inCentre},
}

// growth returns how a gusset grows; an unknown increase is taken for make ones.
func (i Increase) growth() *growth {
	if g := growths[i]; g != nil {
		return g
	}
	return growths[MakeOne]
}

// growth returns how the gusset grows. In rows a plain one follows every increase.
func (m *Make) growth() *growth {
	g := m.Increase.growth()
	if m.Flat {
		rows := *g
		rows.closest, rows.leadOut = max(g.closest, int(toAndFro)), max(g.leadOut, toAndFro.rest())
		return &rows
	}
	return g
}

// allows reports whether a gusset may have b base stitches with o of the made ones
// kept on the hand.
func (g *growth) allows(b, o int) bool {
	return b >= g.leastBase && (!g.middle || b%2 == 1 && o == 0)
}

// edged returns rounds that knit 1, increase by after, knit to the last stitch,
// increase by before, knit 1. On a base of 1 or 2 stitches the first increase round
// increases on both sides of the base instead, by outer and outerLast, and the made
// stitches are the gusset's edges from then on. A one-sided gusset has only the
// increase after the first stitch.
func edged(after, before, outer, outerLast stitch.Op) func(int, bool, bool) []stitch.Op {
	return func(count int, oneSided, atBase bool) []stitch.Op {
		switch {
		case oneSided:
			return times([]stitch.Op{stitch.Knit, after}, stitch.Knit, count-1)
		case atBase && count <= 2:
			return append(times([]stitch.Op{outer}, stitch.Knit, count), outerLast)
		}
		ops := times([]stitch.Op{stitch.Knit, after}, stitch.Knit, count-2)
		return append(ops, before, stitch.Knit)
	}
}

// frontAnd returns a round that knits front and back in the first stitch and in the
// last but one. The new stitch lies after the one that it comes from, so that both
// edges keep one stitch. A one-sided gusset has only the first.
func frontAnd(count int, oneSided, _ bool) []stitch.Op {
	if oneSided {
		return times([]stitch.Op{stitch.KFB}, stitch.Knit, count-1)
	}
	ops := times([]stitch.Op{stitch.KFB}, stitch.Knit, count-3)
	return append(ops, stitch.KFB, stitch.Knit)
}

// inCentre returns a round that makes a stitch on both sides of the middle one.
func inCentre(count int, _, _ bool) []stitch.Op {
	half := (count - 1) / 2
	ops := append(times(nil, stitch.Knit, half), stitch.M1R, stitch.Knit, stitch.M1L)
	return times(ops, stitch.Knit, half)
}

// closing returns the gusset's part of the round after an increase round: every yarn
// over of that is knitted through its back loop.
func closing(increased []stitch.Op) []stitch.Op {
	ops := make([]stitch.Op, len(increased))
	for i, op := range increased {
		ops[i] = stitch.Knit
		if op == stitch.YarnOver {
			ops[i] = stitch.KnitTBL
		}
	}
	return ops
}
