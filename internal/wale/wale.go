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
	Seam   = 'S' // at the edges of rows, where a seam takes them
)

// Families has the letters of all families.
const Families = "ABCHMPSZ"

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
// of the new column; a stitch knitted front and back has its own, and the new column
// begins beside it.
func Mitt(m stitch.Mitt, base int) Names {
	names, _ := Trace(m, base, false)
	return names
}

// Edge has the columns at the two edges of a section, in the order of its rounds. Anew
// says that they are numbered anew at its foot: they stand on those below by their place.
// Otherwise they go on, each under its name.
type Edge struct {
	Foot, Head []string
	Anew       bool
}

// Trace is Mitt, or with mirrored Mirror, with the columns at the edges of each section that
// has rounds, as the hand works them.
func Trace(m stitch.Mitt, base int, mirrored bool) (Names, map[stitch.Part]Edge) {
	w := walker{edges: map[stitch.Part]Edge{}, mirror: mirrored}
	switch {
	case mirrored:
		return w.nameMirrored(m, base), w.edges
	case m.Down():
		return w.nameDown(m, base), w.edges
	}
	return w.name(m, base), w.edges
}

// name names the columns of a mitt worked as the right hand.
func (w *walker) name(m stitch.Mitt, base int) Names {
	return w.mitt(m, base, func(s stitch.Section, i int) []string {
		r := s.Rounds[i]
		if !s.Part.Marked() {
			r.Lead = 0
		}
		return w.round(place{s.Part, i}, r, s.Seam)
	})
}

// walker goes through the rounds of a mitt and keeps the columns on the needles.
type walker struct {
	live   []string                // on the needles, in the order of the next round
	held   map[stitch.Set][]string // put aside
	born   map[byte]int            // number of columns made, by family
	mirror bool                    // the rounds are the other hand's
	beside map[place][]string      // columns that begin beside that of their operation, by operation

	taken map[place]map[int][]string // those that a decrease of a mitt from the tip takes in, by operation

	anew  bool                 // the columns on the needles were numbered anew
	edges map[stitch.Part]Edge // of the sections so far; nil: not kept
}

// edge keeps the columns at the foot of a section, whose rounds moved the walker past it.
func (w *walker) edge(p stitch.Part, foot []string) {
	if w.edges != nil {
		w.edges[p] = Edge{foot, w.live, w.anew}
	}
	w.anew = false
}

// place is a round of a section.
type place struct {
	part  stitch.Part
	round int
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
		shift := s.Shift
		if w.mirror {
			shift = s.Across
		}
		switch {
		case s.Part.Marked():
			r := &s.Rounds[0]
			hand := numbered(Hand, s.Around(r.In())-r.LeadIn())
			w.begin(numbered(Base, base), hand, max(0, r.BeforeIn()-s.Seam), s.Seam)
		case len(s.From) > 0:
			w.takeUp(s.From)
			w.turn(shift)
		case goesOn && !s.Part.Passing() && s.CastOn == 0:
			w.turn(shift)
		default:
			all := numbered(Hand, s.Around(s.Rounds[0].In()))
			under, before := min(base, len(all)), 0 // the gusset will stand on these
			if r := &s.Rounds[0]; s.Seam > 0 && r.Lead > 0 {
				before = r.Before - s.Seam
			} else if s.Seam > 0 {
				under = 0 // and in the middle of a row it is turned with it
			}
			w.begin(all[:under], all[under:], before, s.Seam)
		}
		goesOn = !s.Part.Passing()
		names[s.Part] = make([][]string, len(s.Rounds))
		foot := w.live
		for i := range s.Rounds {
			names[s.Part][i] = round(s, i)
		}
		w.edge(s.Part, foot)
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

// free adds to a set the loop that lies over the waste yarn between two columns. It is
// picked up from there, and has the smaller of their numbers, on both hands. Such loops
// are worked back along the upper edge, so the last comes first.
func (w *walker) free(set stitch.Set, one, other string) {
	if one == "" || other == "" {
		return
	}
	a, _ := strconv.Atoi(one[1:])
	b, _ := strconv.Atoi(other[1:])
	w.putAside(set, "")
	w.held[set] = slices.Insert(w.held[set][:len(w.held[set])-1], 0, string(Picked)+strconv.Itoa(min(a, b)))
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
// blocks in the opposite order. With a seam the last ones of the rest, as many as stand
// before the leading block, come first, and seam stitches more at both edges; the other
// hand begins at the other edge.
func (w *walker) begin(lead, rest []string, before, seam int) {
	edges := numbered(Seam, 2*seam)
	at := len(rest) - before
	w.anew = true
	w.live = slices.Concat(edges[:seam], rest[at:], lead, rest[:at], edges[seam:])
	w.born = map[byte]int{}
	switch {
	case !w.mirror:
	case seam > 0:
		slices.Reverse(w.live)
	default:
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
// moves past it. In its leading block, a gusset's, an increase has the family of its
// edge; what is picked up or cast on for a seam has the seam's.
func (w *walker) round(p place, r stitch.Round, seam int) []string {
	ops := r.Ops
	names := make([]string, 0, len(ops))
	above := make([]string, 0, len(ops))
	from, to := r.Before, r.Before+r.Lead
	increases, done := count(ops[from:to], increases), 0
	bear := func(op stitch.Op, i int) string {
		family := familyOf(op)
		switch {
		case (op == stitch.PickUp || op == stitch.CastOn) && (i < seam || i >= len(ops)-seam):
			family = Seam
		case i >= from && i < to:
			family = edgeOf(op, done, increases)
			done++
		}
		w.born[family]++
		return string(family) + strconv.Itoa(w.born[family])
	}
	at := 0
	for i, op := range ops {
		name := ""
		switch {
		case op.In() == 0 && op.Out() > 0:
			name = bear(op, i)
		case at < len(w.live):
			name = w.live[at]
			if top := at + op.In() - 1; leansRight(op) && top < len(w.live) {
				name = w.live[top]
			}
		}
		at += op.In()
		names = append(names, name)
		for n := range op.Out() {
			if n > 0 { // knitted front and back
				name = bear(op, i)
				w.put(p, i, len(ops), name)
			}
			above = append(above, name)
		}
		if op.Keeps() {
			w.putAside(r.SetAt(i), name)
		}
		if r.Freed(i) {
			w.free(r.SetAt(i).Above(), names[i-1], name)
		}
	}
	w.live = above
	return names
}

// leansRight reports whether op is a decrease whose last stitch lies on top.
func leansRight(op stitch.Op) bool {
	return op == stitch.K2tog || op == stitch.P2tog || op == stitch.K3tog
}

// put keeps the name of a column that begins beside that of operation i, of n.
func (w *walker) put(p place, i, n int, name string) {
	if w.beside == nil {
		w.beside = map[place][]string{}
	}
	if w.beside[p] == nil {
		w.beside[p] = make([]string, n)
	}
	w.beside[p][i] = name
}

// familyOf returns the family of a column that is not made in a gusset.
func familyOf(op stitch.Op) byte {
	switch op {
	case stitch.CastOn:
		return Bridge
	case stitch.PickUp, stitch.CornerM1:
		return Picked
	}
	return Made
}

// increases reports whether an operation leaves more than it eats.
func increases(op stitch.Op) bool { return op.Out() > op.In() }

func count(ops []stitch.Op, is func(stitch.Op) bool) (n int) {
	for _, op := range ops {
		if is(op) {
			n++
		}
	}
	return n
}

// edgeOf returns the family of the ith increase, from 0, of n in a round of a gusset:
// the former half are the first edge's. A single one is the last edge's only if it
// leans from there.
func edgeOf(op stitch.Op, i, n int) byte {
	if 2*i >= n || n == 1 && (op == stitch.M1R || op == stitch.RLI) {
		return Last
	}
	return First
}

func numbered(family byte, n int) []string {
	names := make([]string, max(n, 0))
	for i := range names {
		names[i] = string(family) + strconv.Itoa(i+1)
	}
	return names
}
