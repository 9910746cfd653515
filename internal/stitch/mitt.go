package stitch

import "slices"

// Round is one round as it is worked, from its beginning. Lead is the number
// of operations, counted from the beginning, that belong to the gusset, the
// bridge, the picked-up stitches or the side line; the rest is the hand. An
// Even round has no side: ribbing, or a change spread evenly.
type Round struct {
	Ops  []Op
	Lead int
	Even bool
}

// In is the number of loops that the round eats.
func (r Round) In() int { return total(r.Ops, Op.In) }

// Out is the number of loops that the round leaves.
func (r Round) Out() int { return total(r.Ops, Op.Out) }

// LeadIn is the number of loops that the leading block eats.
func (r Round) LeadIn() int { return total(r.Ops[:r.Lead], Op.In) }

// LeadOut is the number of loops that the leading block leaves.
func (r Round) LeadOut() int { return total(r.Ops[:r.Lead], Op.Out) }

// Held is the number of loops that the round puts aside.
func (r Round) Held() int {
	return total(r.Ops, func(o Op) int {
		if o == Hold {
			return 1
		}
		return 0
	})
}

func total(ops []Op, count func(Op) int) int {
	n := 0
	for _, o := range ops {
		n += count(o)
	}
	return n
}

// Part names a section of a mitt.
type Part string

// The parts of a mitt in the order in which they are worked.
const (
	Cuff      Part = "cuff"       // ribbing from the cast-on
	CuffPlain Part = "cuff_plain" // plain rounds between ribbing and gusset
	Gusset    Part = "gusset"     // first increase to the last round before the division
	Hand      Part = "hand"       // division to the last round, or to the top
	Top       Part = "top"        // decreases that close a mitten
	Thumb     Part = "thumb"      // from the held stitches to its end
)

// Parts lists them in the order knitted.
func Parts() []Part { return []Part{Cuff, CuffPlain, Gusset, Hand, Top, Thumb} }

// partOrder is the place of each part in the order knitted, the first 1.
var partOrder = func() map[Part]int {
	places := map[Part]int{}
	for i, p := range Parts() {
		places[p] = i + 1
	}
	return places
}()

// Order is the part's place in the order knitted, from 1; 0 for what is no part.
func (p Part) Order() int { return partOrder[p] }

// Words is what the part is called in a sentence.
func (p Part) Words() string {
	switch p {
	case CuffPlain:
		return "plain cuff"
	default:
		return string(p)
	}
}

// Section is one part of a mitt, its rounds numbered from 1.
//
// CastOn stitches are cast on before round 1. FromHeld says that the section
// takes up the held stitches instead of going on with those on the needles.
// Shift is the number of stitches by which the beginning of the round moves
// on before round 1 (negative: back). Finish, if it has operations, ends the
// tube: it is no round of its own.
type Section struct {
	Part     Part
	CastOn   int
	FromHeld bool
	Shift    int
	Rounds   []Round
	Finish   Round
}

// Mitt is all sections of one mitt in the order in which they are worked.
type Mitt struct {
	Sections []Section
}

// Section finds a part; nil if the mitt has none.
func (m Mitt) Section(p Part) *Section {
	for i := range m.Sections {
		if m.Sections[i].Part == p {
			return &m.Sections[i]
		}
	}
	return nil
}

// Mirror gives the same mitt for the other hand. The leading block of each
// round stays in front, since the round begins at the gusset on both hands;
// within the block and within the hand the order is reversed and each
// operation becomes its twin. An even round is worked alike on both hands; and
// stitches are put aside before the bridge is cast on in their place. Mirror of
// Mirror is the mitt itself.
func Mirror(m Mitt) Mitt {
	out := Mitt{Sections: make([]Section, len(m.Sections))}
	for i, s := range m.Sections {
		rounds := make([]Round, len(s.Rounds))
		for j, r := range s.Rounds {
			rounds[j] = mirrorRound(r)
		}
		s.Rounds, s.Finish = rounds, mirrorRound(s.Finish)
		out.Sections[i] = s
	}
	return out
}

// FromLeft names the operations of a mitt for a person who knits from left to
// right. Who works the rounds of one hand as in a mirror knits the other hand,
// so m is the mirror of the mitt that is wanted.
func FromLeft(m Mitt) Mitt {
	out := Mitt{Sections: make([]Section, len(m.Sections))}
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

func mirrorRound(r Round) Round {
	if len(r.Ops) == 0 {
		return r
	}
	ops := make([]Op, len(r.Ops))
	for i, from := range r.MirrorOrder() {
		ops[i] = r.Ops[from]
		if !r.Even {
			ops[i] = ops[i].Twin()
		}
	}
	return Round{Ops: ops, Lead: r.Lead, Even: r.Even}
}

// Alike reports whether two mitts are worked alike: the same stitches cast on,
// the same operations in every round and in every finish.
func Alike(a, b Mitt) bool {
	return slices.EqualFunc(a.Sections, b.Sections, func(a, b Section) bool {
		return a.Part == b.Part && a.CastOn == b.CastOn && a.FromHeld == b.FromHeld && a.Shift == b.Shift &&
			slices.Equal(a.Finish.Ops, b.Finish.Ops) &&
			slices.EqualFunc(a.Rounds, b.Rounds, func(a, b Round) bool { return slices.Equal(a.Ops, b.Ops) })
	})
}

// MirrorOrder says of each operation of the mirrored round which one of r it
// is the twin of; of an even round, which one it is.
func (r Round) MirrorOrder() []int {
	order := make([]int, len(r.Ops))
	for i := range order {
		order[i] = i
	}
	if !r.Even {
		slices.Reverse(order[:r.Lead])
		slices.Reverse(order[r.Lead:])
		asideFirst(r.Ops, order)
	}
	return order
}

// asideFirst orders neighbouring holds and cast-ons as they are worked: the
// stitches are put aside, then the gap is bridged.
func asideFirst(ops []Op, order []int) {
	for i := 1; i < len(order); i++ {
		for j := i; j > 0 && ops[order[j]] == Hold && ops[order[j-1]] == CastOn; j-- {
			order[j], order[j-1] = order[j-1], order[j]
		}
	}
}
