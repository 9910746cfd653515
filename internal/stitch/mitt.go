package stitch

// Round is one round as it is worked, from its beginning. Lead is the number
// of operations, counted from the beginning, that belong to the gusset, the
// bridge, the picked-up stitches or the side line; the rest is the hand. An
// Even round has no side: ribbing, or a change spread evenly.
//
// Aside has a name for every operation: the set under which a Hold keeps its
// stitch, none elsewhere. It is nil for a round that keeps nothing aside.
type Round struct {
	Ops   []Op
	Lead  int
	Even  bool
	Aside []Set
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

// SetAt is the set under which operation i keeps its stitch; empty where it
// keeps none, or says no name.
func (r Round) SetAt(i int) Set {
	if r.Ops[i] != Hold || i >= len(r.Aside) {
		return ""
	}
	return r.Aside[i]
}

// Keep names the set of every stitch that the round keeps aside and that has
// no name yet.
func (r *Round) Keep(s Set) {
	aside := make([]Set, len(r.Ops))
	copy(aside, r.Aside)
	for i, o := range r.Ops {
		if o == Hold && aside[i] == "" {
			aside[i] = s
		}
	}
	r.Aside = aside
}

func total(ops []Op, count func(Op) int) int {
	n := 0
	for _, o := range ops {
		n += count(o)
	}
	return n
}

// Section is one part of a mitt, its rounds numbered from 1.
//
// CastOn stitches are cast on before round 1. From are the sets that the
// section takes up, in the order in which they come onto the needles, instead
// of going on with what is there. Shift is the number of stitches by which the
// beginning of the round moves on before round 1 (negative: back). Finish, if
// it has operations, ends the tube: it is no round of its own.
type Section struct {
	Part   Part
	CastOn int
	From   []Set
	Shift  int
	Rounds []Round
	Finish Round
	About  About
}

// About is what a reader of a section wants to know beside its rounds.
type About struct {
	Shaping *Shaping // the rhythm that is told before round 1; nil: none
	Inside  bool     // the thumb lies inside
	Ribbed  int      // of the last rounds
	Rib     int      // the multiple of that ribbing
	Site    int      // the round at which its fit is told; 0: the last
	Digit   *Digit   // what is in it, of a thumb or finger; nil elsewhere
	Until   string   // the place on the hand that its last round comes to
	Short   float64  // how far it ends below that place, in mm
}

// Digit is a thumb or finger and the tube on it.
type Digit struct {
	Girth    float64 // of the digit, in mm
	Added    float64 // room in the fabric beside it, in mm
	Stitches int     // of the tube, once it is shaped
	Closed   bool    // the tube ends in a tip
}

// Shaping is a change of count in some rounds of a section: of a gusset, or of
// the whole round.
type Shaping struct {
	Rounds         []int
	From, To, Step int // stitches before and after; what one change makes, negative: takes off
}

// Opens reports whether something is done before round 1: casting on, taking
// up, moving the beginning of the round.
func (s *Section) Opens() bool { return s.CastOn > 0 || len(s.From) > 0 || s.Shift != 0 }

// Closed reports whether the section ends in a tip instead of an opening.
func (s *Section) Closed() bool {
	return len(s.Finish.Ops) > 0 && (s.Finish.Ops[0] == DrawUp || s.Finish.Ops[0] == Graft)
}

// Mitt is all sections of one mitt in the order in which they are worked. Left
// are the sets that wait on waste yarn when all of it is worked.
type Mitt struct {
	Sections []Section
	Left     []Set
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
