// Package wale names the stitch columns of a mitt from its rounds alone. A
// column is born at a cast-on or an increase; its name does not depend on the
// schedule, so what is anchored to it survives a new plan.
package wale

import (
	"slices"
	"strconv"

	"thenar/internal/stitch"
)

// The families of columns: the base of the gusset, those made at the edge
// that is worked first, those made at the other edge, the hand (or the cuff),
// those cast on over the thumb's gap, those picked up along it, and those made
// anywhere else.
const (
	Base   = 'B'
	First  = 'A'
	Last   = 'Z'
	Hand   = 'H'
	Bridge = 'C'
	Picked = 'P'
	Made   = 'M'
)

// Families are all families of columns.
const Families = "ABCHMPZ"

// Names are the columns of every operation of every round of a mitt.
type Names map[stitch.Part][][]string

// Mitt names the columns of a mitt as the right hand: B1 … of the gusset's
// base, A1, A2 … made at the edge that is worked first, Z1 … made at the
// other, in order of birth, H1 … of the hand. The hand takes them over from
// the gusset, with C1 … for the bridge; the top takes over the hand's, and the
// thumb the held ones, with P1 … for what is picked up. Cuff and plain cuff
// number their own. What is made elsewhere is M1, M2 …
//
// An operation that takes several columns has the name of the one that lies on
// top in the fabric and goes on: the first worked, or the last where the
// decrease leans right. One that makes a column has the new column's name.
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

// walker goes through rounds with the columns that are on the needles.
type walker struct {
	live   []string
	held   map[stitch.Set][]string
	born   map[byte]int
	mirror bool // the other hand's rounds are walked
}

// mitt walks the sections in the order worked; round names one round and goes
// past it.
func (w *walker) mitt(m stitch.Mitt, base int, round func(stitch.Section, int) []string) Names {
	names := Names{}
	lasting := false // the columns on the needles are gone on with
	for _, s := range m.Sections {
		if len(s.Rounds) == 0 {
			continue
		}
		switch {
		case s.Part.Marked():
			w.begin(numbered(Base, base), numbered(Hand, s.Rounds[0].In()-s.Rounds[0].LeadIn()))
		case len(s.From) > 0:
			w.takeUp(s.From)
		case lasting && !s.Part.Passing() && s.CastOn == 0:
			w.turn(s.Shift)
		default:
			all := numbered(Hand, s.Rounds[0].In())
			under := min(base, len(all)) // what the gusset will stand on
			w.begin(all[:under], all[under:])
		}
		lasting = !s.Part.Passing()
		names[s.Part] = make([][]string, len(s.Rounds))
		for i := range s.Rounds {
			names[s.Part][i] = round(s, i)
		}
	}
	return names
}

// keep puts a column aside.
func (w *walker) keep(set stitch.Set, name string) {
	if w.held == nil {
		w.held = map[stitch.Set][]string{}
	}
	w.held[set] = append(w.held[set], name)
}

// takeUp puts the columns of some sets on the needles.
func (w *walker) takeUp(sets []stitch.Set) {
	w.live, w.born = nil, map[byte]int{}
	for _, set := range sets {
		w.live = append(w.live, w.held[set]...)
		delete(w.held, set)
	}
}

// begin puts new columns on the needles. The other hand works them in the
// opposite order, what leads the round by itself.
func (w *walker) begin(lead, rest []string) {
	w.live = append(append([]string(nil), lead...), rest...)
	w.born = map[byte]int{}
	if w.mirror {
		slices.Reverse(w.live[:len(lead)])
		slices.Reverse(w.live[len(lead):])
	}
}

// turn moves the beginning of the round on by n columns.
func (w *walker) turn(n int) {
	if n == 0 || len(w.live) == 0 {
		return
	}
	n = ((n % len(w.live)) + len(w.live)) % len(w.live)
	w.live = append(append([]string(nil), w.live[n:]...), w.live[:n]...)
}

// round names the operations over the columns that the round below left. In
// a gusset's leading block an increase has the family of its edge.
func (w *walker) round(r stitch.Round, lead int) []string {
	ops := r.Ops
	names := make([]string, 0, len(ops))
	above := make([]string, 0, len(ops))
	at := 0
	for i, op := range ops {
		name := ""
		switch {
		case op.In() == 0 && op.Out() > 0:
			family := family(op, i, lead)
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
			w.keep(r.SetAt(i), name)
		}
	}
	w.live = above
	return names
}

// leansRight tells a decrease whose last stitch lies on top of the others.
func leansRight(op stitch.Op) bool {
	return op == stitch.K2tog || op == stitch.P2tog || op == stitch.K3tog
}

func family(op stitch.Op, i, lead int) byte {
	switch {
	case op == stitch.CastOn:
		return Bridge
	case op == stitch.PickUp:
		return Picked
	case i < lead:
		return edge(op, i, lead)
	}
	return Made
}

// edge tells at which edge of a gusset an increase is made: by its lean, or,
// where it has none, by the half of the gusset in which it stands.
func edge(op stitch.Op, i, n int) byte {
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
