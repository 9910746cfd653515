// Package wale names the wales of a mitt, its columns of stitches, from its
// rounds. A column begins at a cast-on or an increase, and its name does not
// depend on the schedule: a mark on a column stays in place when the mitt is
// planned anew.
package wale

import (
	"slices"
	"strconv"

	"thenar/internal/stitch"
)

// The families of columns. A name is the letter of the family and a number.
const (
	Base   = 'B' // of the base of the gusset
	First  = 'A' // made at the edge of the gusset that is worked first
	Last   = 'Z' // made at its other edge
	Hand   = 'H' // of the hand or the cuff
	Bridge = 'C' // cast on over the thumb's gap
	Picked = 'P' // picked up along the gap
	Made   = 'M' // made anywhere else
)

// Families has the letters of all families.
const Families = "ABCHMPZ"

// Names has the name of the column of every operation: by part, round and
// operation.
type Names map[stitch.Part][][]string

// Mitt names the columns of a mitt worked as the right hand. Numbers count from 1
// along the needles, or in the order made. The hand goes on with the columns of
// the gusset and the hand's own, the top with the hand's; what takes up set-aside
// stitches goes on with theirs. Cuff and plain cuff have columns of their own.
//
// A decrease has the name of the column that lies on top in the fabric and goes
// on: the first worked, or the last if it leans right. An increase has the name
// of the new column.
func Mitt(m stitch.Mitt, base int) Names {
	w := walker{}
	return w.mitt(m, base, func(s stitch.Section, i int) []string {
		lead := 0
		if s.Part.Marked() {
			lead = s.Rounds[i].Lead
		}
		return w.round(s.Rounds[i], lead)
	})
}

// walker goes through the rounds of a mitt and keeps the columns on the needles.
type walker struct {
	live   []string                // on the needles, in the order of the next round
	held   map[stitch.Set][]string // put aside
	born   map[byte]int            // number of columns made, by family
	mirror bool                    // the rounds are the other hand's
}

// mitt goes through the sections in the order worked. round names the operations
// of round i of a section and moves the walker past it.
func (w *walker) mitt(m stitch.Mitt, base int, round func(stitch.Section, int) []string) Names {
	names := Names{}
	goesOn := false // the section goes on with the columns on the needles
	for _, s := range m.Sections {
		if len(s.Rounds) == 0 {
			continue
		}
		switch {
		case s.Part.Marked():
			w.begin(numbered(Base, base), numbered(Hand, s.Rounds[0].In()-s.Rounds[0].LeadIn()))
		case len(s.From) > 0:
			w.takeUp(s.From)
		case goesOn && !s.Part.Passing() && s.CastOn == 0:
			w.turn(s.Shift)
		default:
			all := numbered(Hand, s.Rounds[0].In())
			under := min(base, len(all)) // the gusset will stand on these
			w.begin(all[:under], all[under:])
		}
		goesOn = !s.Part.Passing()
		names[s.Part] = make([][]string, len(s.Rounds))
		for i := range s.Rounds {
			names[s.Part][i] = round(s, i)
		}
	}
	return names
}

// putAside adds a column to a set of held ones.
func (w *walker) putAside(set stitch.Set, name string) {
	if w.held == nil {
		w.held = map[stitch.Set][]string{}
	}
	w.held[set] = append(w.held[set], name)
}

// takeUp puts the columns of held sets back on the needles. What is made among
// them is counted on from them, so that no name stands twice in a round.
func (w *walker) takeUp(sets []stitch.Set) {
	w.live, w.born = nil, map[byte]int{}
	for _, set := range sets {
		w.live = append(w.live, w.held[set]...)
		delete(w.held, set)
	}
	for _, name := range w.live {
		if name == "" {
			continue
		}
		n, _ := strconv.Atoi(name[1:])
		w.born[name[0]] = max(w.born[name[0]], n)
	}
}

// begin puts new columns on the needles. The other hand works each of the two
// blocks in the opposite order.
func (w *walker) begin(lead, rest []string) {
	w.live = append(append([]string(nil), lead...), rest...)
	w.born = map[byte]int{}
	if w.mirror {
		slices.Reverse(w.live[:len(lead)])
		slices.Reverse(w.live[len(lead):])
	}
}

// turn moves the beginning of the round on by n columns, back if n is negative.
func (w *walker) turn(n int) {
	if n == 0 || len(w.live) == 0 {
		return
	}
	n = ((n % len(w.live)) + len(w.live)) % len(w.live)
	w.live = append(append([]string(nil), w.live[n:]...), w.live[:n]...)
}

// round names the operations of a round over the columns on the needles, and
// moves past it. lead is the number of operations in a gusset's leading block,
// where an increase has the family of its edge.
func (w *walker) round(r stitch.Round, lead int) []string {
	ops := r.Ops
	names := make([]string, 0, len(ops))
	above := make([]string, 0, len(ops))
	at := 0
	for i, op := range ops {
		name := ""
		switch {
		case op.In() == 0 && op.Out() > 0:
			family := familyOf(op, i, lead)
			w.born[family]++
			name = string(family) + strconv.Itoa(w.born[family])
		case at < len(w.live):
			name = w.live[at]
			if top := at + op.In() - 1; leansRight(op) && top < len(w.live) {
				name = w.live[top]
			}
		}
		at += op.In()
		names = append(names, name)
		for range op.Out() {
			above = append(above, name)
		}
		if op == stitch.Hold {
			w.putAside(r.SetAt(i), name)
		}
	}
	w.live = above
	return names
}

// leansRight reports whether op is a decrease whose last stitch lies on top.
func leansRight(op stitch.Op) bool {
	return op == stitch.K2tog || op == stitch.P2tog || op == stitch.K3tog
}

func familyOf(op stitch.Op, i, lead int) byte {
	switch {
	case op == stitch.CastOn:
		return Bridge
	case op == stitch.PickUp:
		return Picked
	case i < lead:
		return edgeOf(op, i, lead)
	}
	return Made
}

// edgeOf returns the family of increase i in a gusset of n operations: by its
// lean, or by the half of the gusset in which it stands if it has none.
func edgeOf(op stitch.Op, i, n int) byte {
	switch {
	case op == stitch.M1L || op == stitch.LLI:
		return First
	case op == stitch.M1R || op == stitch.RLI:
		return Last
	case 2*i < n:
		return First
	}
	return Last
}

func numbered(family byte, n int) []string {
	names := make([]string, max(n, 0))
	for i := range names {
		names[i] = string(family) + strconv.Itoa(i+1)
	}
	return names
}
