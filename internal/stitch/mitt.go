package stitch

import "slices"

// Round is one round as it is worked. Lead is the number of operations at its
// beginning that belong to the gusset, the bridge, the picked-up stitches or the
// side line; the rest belong to the hand. An Even round is the same on both
// hands: ribbing, or a change spread evenly.
//
// Aside has an entry for every operation: for one that puts a loop aside the set that
// keeps it, for a Take the set that it comes from, else "". It is nil if the round
// has neither.
//
// Side says whether the round is a row. The operations of a row are listed as they
// look on the right side, from right to left, whichever side faces the knitter; Before
// is the number of them before the leading block, which in a round comes first.
type Round struct {
	Ops    []Op
	Lead   int
	Even   bool
	Aside  []Set
	Side   Side
	Before int
}

// In returns the number of loops that the round eats.
func (r Round) In() int { return total(r.Ops, &loops.in) }

// Out returns the number of loops that the round leaves.
func (r Round) Out() int { return total(r.Ops, &loops.out) }

// LeadIn returns the number of loops that the leading block eats.
func (r Round) LeadIn() int { return total(r.leading(), &loops.in) }

// LeadOut returns the number of loops that the leading block leaves.
func (r Round) LeadOut() int { return total(r.leading(), &loops.out) }

// BeforeIn returns the number of loops that are eaten before the leading block.
func (r Round) BeforeIn() int { return total(r.Ops[:r.Before], &loops.in) }

// BeforeOut returns the number of loops that are left before the leading block.
func (r Round) BeforeOut() int { return total(r.Ops[:r.Before], &loops.out) }

func (r Round) leading() []Op { return r.Ops[r.Before : r.Before+r.Lead] }

// Held returns the number of loops that the round puts aside.
func (r Round) Held() int {
	n := 0
	for _, o := range r.Ops {
		if o.Keeps() {
			n++
		}
	}
	return n
}

// SetAt returns the set that keeps the stitch of operation i, or that it comes from;
// "" if there is none or it has no name.
func (r Round) SetAt(i int) Set {
	if !r.Ops[i].Keeps() && r.Ops[i] != Take || i >= len(r.Aside) {
		return ""
	}
	return r.Aside[i]
}

// Freed reports whether a loop that lies over the waste yarn comes free beside the one
// that operation i keeps: there is one between two stitches knitted with waste yarn.
func (r Round) Freed(i int) bool {
	return i > 0 && r.Ops[i] == Waste && r.Ops[i-1] == Waste && r.SetAt(i) == r.SetAt(i-1)
}

// Keep puts every stitch that the round keeps aside into the set s, unless it is
// in a set already.
func (r *Round) Keep(s Set) { r.name(Op.Keeps, s) }

// Bring lets every stitch that was kept aside and comes into the round be of the set
// s, unless it is of a set already.
func (r *Round) Bring(s Set) { r.name(Op.comesBack, s) }

func (r *Round) name(is func(Op) bool, s Set) {
	aside := make([]Set, len(r.Ops))
	copy(aside, r.Aside)
	for i, o := range r.Ops {
		if is(o) && aside[i] == "" {
			aside[i] = s
		}
	}
	r.Aside = aside
}

func total(ops []Op, of *[opCount]uint8) int {
	n := 0
	for _, o := range ops {
		n += int(of[o])
	}
	return n
}

// Section is one part of a mitt, its rounds numbered from 1.
//
// CastOn is the number of stitches cast on before round 1. From are the sets
// that the section takes up, in the order in which they come onto the needles; a
// section without any goes on with what is there. Shift is the number of
// stitches by which the beginning of the round moves on before round 1
// (negative: back), Across the number on the other hand. Finish, if it has operations, ends the tube and is not
// counted as a round. Seam is the number of stitches at each edge of its rows that a
// seam takes; 0: none, as in the round. Down says that it is worked from its upper end on
// the hand to its lower one.
type Section struct {
	Part   Part
	Down   bool
	CastOn int
	From   []Set
	Shift  int
	Across int
	Seam   int
	Rounds []Round
	Finish Round
	About  About
}

// About is what the instructions and the fit say of a section beside its rounds.
type About struct {
	Shaping *Shaping // its increases or decreases, announced before round 1; nil: none
	Inside  bool     // the thumb lies inside
	Below   bool     // it ends below the thumb: it lies from the wrist to the base of the thumb
	Palm    bool     // the thumb lies in the palm, of which the round's last Inset stitches are
	Inset   int      // on the right hand; on the left the first after the gusset
	Ribbed  int      // how many of its last rounds are ribbed
	Rib     int      // the multiple of that ribbing
	Knits   int      // the knit stitches that begin each repeat of it
	Folded  int      // how many of its rounds are folded inside, from its lower edge
	Tip     bool     // it begins with a closed cast-on, in a tip
	Rolls   bool     // its edge rolls up
	Edge    int      // how many of its first rounds are an edge in garter stitch
	PerMM   float64  // rounds over a mm that they reach up, those of the edge if it has one; 0: the gauge's
	Around  float64  // the girth in mm of what its lower edge goes round, if that is not the wrist; 0: it is
	Site    int      // the round at which its fit is judged; 0: the last
	Digit   *Digit   // the thumb or finger inside; nil for other parts
	Above   float64  // how far above the base of the thumb it begins, in mm
	Ends    int      // how many stitches at either end of its rows are knitted in every row
	Share   float64  // how much of the hand it goes round; 0: all of it
	Along   string   // what it picks up along, "the little finger’s edge"; empty: the bridge
	Until   string   // the place on the hand that its last round reaches
	Short   float64  // how far it ends below that place, in mm
}

// Digit is a thumb or finger and the tube that covers it.
type Digit struct {
	Girth    float64 // of the digit, in mm
	Added    float64 // how much wider than it the tube should be, in mm
	Stitches int     // of the tube, once it is shaped
	Closed   bool    // the tube ends in a tip
	Palm     int     // of a finger: how many stitches of the hand's palm end its round
}

// Shaping is a change of count in some rounds of a section: of a gusset, or of
// the whole round.
type Shaping struct {
	Rounds         []int
	From, To, Step int  // stitches before, after, and made in one round (negative: taken off)
	Closed         bool // the yarn overs of a round are closed in the next
}

// Opens reports whether something is done before round 1: casting on, taking up
// a set, or moving the beginning of the round.
func (s *Section) Opens() bool {
	return s.CastOn > 0 || len(s.From) > 0 && len(s.Rounds) > 0 || s.Shift != 0
}

// GoesOn reports whether a section goes on with the yarn and the stitches of the one below
// it; nil: there is none.
func (s *Section) GoesOn(below *Section) bool {
	return below != nil && s.CastOn == 0 && len(s.From) == 0 && len(below.Finish.Ops) == 0
}

// JoinsSets reports whether the section has no rounds: it only joins what waited in its sets.
func (s *Section) JoinsSets() bool { return len(s.From) > 0 && len(s.Rounds) == 0 }

// AtGauge returns how many rounds at a gauge of q rounds over a mm reach as far up as
// the first r rounds of the section, from its lower edge. What is folded inside reaches
// nowhere.
func (s *Section) AtGauge(r int, q float64) float64 {
	n := float64(max(0, r-s.About.Folded))
	if s.About.PerMM == 0 {
		return n
	}
	low := n
	if s.About.Edge > 0 {
		low = min(n, float64(s.About.Edge))
	}
	return n - low + low*q/s.About.PerMM
}

// Reach returns how far up the section reaches in mm, at a gauge of q rounds over a mm.
func (s *Section) Reach(q float64) float64 { return s.AtGauge(len(s.Rounds), q) / q }

// Around returns how many of n stitches on the needles go round the hand; a seam takes
// the others.
func (s *Section) Around(n int) int { return max(0, n-2*s.Seam) }

// Closed reports whether the section has a tip instead of an opening.
func (s *Section) Closed() bool {
	return s.About.Tip || len(s.Finish.Ops) > 0 && (s.Finish.Ops[0] == DrawUp || s.Finish.Ops[0] == Graft)
}

// Mitt is all sections of one mitt in the order in which they are worked. Left
// are the sets that still wait on waste yarn at the end.
type Mitt struct {
	Sections []Section
	Left     []Set
}

// Section returns the section of a part, or nil if the mitt has none.
func (m Mitt) Section(p Part) *Section {
	for i := range m.Sections {
		if m.Sections[i].Part == p {
			return &m.Sections[i]
		}
	}
	return nil
}

// Ops returns which operations the mitt's rounds and finishes hold, as they look on the
// right side.
func (m Mitt) Ops() map[Op]bool {
	held := map[Op]bool{}
	for i := range m.Sections {
		s := &m.Sections[i]
		for _, r := range append(s.Rounds[:len(s.Rounds):len(s.Rounds)], s.Finish) {
			for _, o := range r.Ops {
				held[o] = true
			}
		}
	}
	return held
}

// SetAside returns how many stitches each set holds that waits on a yarn of its own, in the
// order in which they are put aside. What waits beside stitches that are picked up stays on
// the yarn of the set before it.
func (m Mitt) SetAside() (list []int) {
	for i := range m.Sections {
		s := &m.Sections[i]
		for _, r := range append(s.Rounds[:len(s.Rounds):len(s.Rounds)], s.Finish) {
			of, stay := map[Set]int{}, slices.Contains(r.Ops, PickUp)
			for k, o := range r.Ops {
				if o != Hold || stay {
					continue
				}
				at, known := of[r.SetAt(k)]
				if !known {
					at, list = len(list), append(list, 0)
					of[r.SetAt(k)] = at
				}
				list[at]++
			}
		}
	}
	return list
}

// MostInRing is the greatest number of stitches of a closed cast-on that begin out of one
// ring of yarn; more begin along a closed edge (common practice, no source).
const MostInRing = 12

// JoinsSets reports whether sets that waited are joined at the end.
func (m Mitt) JoinsSets() bool {
	return slices.ContainsFunc(m.Sections, func(s Section) bool { return s.JoinsSets() })
}

// Tips returns how many stitches each closed cast-on of the mitt begins. One in rows is
// an edge, which is drawn up when its seam is sewn.
func (m Mitt) Tips() (list []int) {
	for i := range m.Sections {
		if s := &m.Sections[i]; s.About.Tip && s.CastOn > 0 && s.Seam == 0 {
			list = append(list, s.CastOn)
		}
	}
	return list
}
