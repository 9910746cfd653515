package repeat

import (
	"slices"

	"thenar/internal/stitch"
	"thenar/internal/wale"
)

// Fabric is what repeats are laid on: a mitt worked as the right hand, its columns, and on
// which area of the hand each lies where it is counted, "palm" or "back". InPalm says that the thumb sits in the
// palm. Left has the columns and edges as the left hand works them, if that is the hand: its
// even rounds, which both hands work alike, put other columns in the same places.
type Fabric struct {
	Left   *Hand
	Mitt   stitch.Mitt
	Names  wale.Names
	Edges  map[stitch.Part]wale.Edge
	Areas  map[stitch.Part]map[string]string
	InPalm bool
}

// Hand has the columns of a mitt as one hand works them.
type Hand struct {
	Names wale.Names
	Edges map[stitch.Part]wale.Edge
}

// lie returns the columns of the left hand's rounds that take stitches together alike on both
// hands, in the order in which they lie. Their operations are named by the right hand's
// columns, of which others are taken in; a motif goes by what they lie on.
func (f *Fabric) lie() map[stitch.Part]map[int][]string {
	if f.Left == nil {
		return nil
	}
	all := map[stitch.Part]map[int][]string{}
	for k := range f.Mitt.Sections {
		s := &f.Mitt.Sections[k]
		below, of := f.Left.Edges[s.Part].Foot, map[int][]string{}
		for r := range s.Rounds {
			i := s.Lies(r+1) - 1
			names := f.Left.Names[s.Part][i]
			if s.Rounds[i].Even && takes(&s.Rounds[i]) {
				if list, ok := sorted(names, below); ok {
					names, of[i] = list, list
				}
			}
			below = names
		}
		all[s.Part] = of
	}
	return all
}

// takes reports whether a round takes stitches together.
func takes(r *stitch.Round) bool {
	return slices.ContainsFunc(r.Ops, func(o stitch.Op) bool { return o.In() > 1 })
}

// sorted returns columns in the order in which they lie in the round below.
func sorted(names, below []string) (list []string, ok bool) {
	at := make(map[string]int, len(below))
	for i, name := range below {
		at[name] = i
	}
	for _, name := range names {
		if _, known := at[name]; !known {
			return nil, false
		}
	}
	return slices.SortedFunc(slices.Values(names), func(a, b string) int { return at[a] - at[b] }), true
}

// edges returns the edges of the hand that is worked.
func (f *Fabric) edges(p stitch.Part) wale.Edge {
	if f.Left != nil {
		return f.Left.Edges[p]
	}
	return f.Edges[p]
}

// The areas that a repeat asks for.
const (
	palmArea = "palm"
	backArea = "back"
)

// ring are the columns round the hand or a digit, counted from 0 from the beginning of its
// round, once for all sections in which they go on.
type ring struct {
	at    map[stitch.Part]map[string]int // the place of a column
	order []string                       // the columns of the section at which they are counted
	areas []string
	base  int // of the gusset; its columns come first, or from
	from  int
	parts []stitch.Part // in the order worked
}

// hand counts the columns round the hand, over the plain cuff, the gusset, the hand above
// and the top: at the foot of the gusset, or else of the first part that is the hand's, above
// a round that brings the cuff's stitches to the hand's. A seam's stitches have no place.
func (f *Fabric) hand() *ring {
	run := f.run()
	if len(run) == 0 {
		return nil
	}
	at := max(0, slices.IndexFunc(run, func(s *stitch.Section) bool { return !s.Part.Passing() }))
	if i := slices.IndexFunc(run, func(s *stitch.Section) bool { return s.Part.Marked() }); i >= 0 {
		at = i
	}
	r := &ring{at: map[stitch.Part]map[string]int{}}
	own := map[string]int{}
	for _, name := range f.counted(run[at]) {
		if name == "" || name[0] == wale.Seam {
			continue
		}
		if name[0] == wale.Base {
			if r.base == 0 {
				r.from = len(r.order)
			}
			r.base++
		}
		own[name] = len(r.order)
		r.order = append(r.order, name)
		r.areas = append(r.areas, f.Areas[run[at].Part][name])
	}
	r.at[run[at].Part] = own
	for i := at + 1; i < len(run); i++ {
		r.at[run[i].Part] = f.upward(r, run[i-1], run[i])
	}
	for i := at - 1; i >= 0; i-- {
		r.at[run[i].Part] = f.downward(r, run[i], run[i+1])
	}
	for i := range f.Mitt.Sections {
		if _, ok := r.at[f.Mitt.Sections[i].Part]; ok {
			r.parts = append(r.parts, f.Mitt.Sections[i].Part)
		}
	}
	return r
}

// run returns the sections round the hand that go on from each other, as they lie, from the lowest up.
func (f *Fabric) run() []*stitch.Section {
	var run []*stitch.Section
	for _, s := range f.Mitt.Upward() {
		if roundHand(s.Part) {
			run = append(run, s)
		}
	}
	return run
}

// Around returns the sections over which a repeat of the whole hand is laid, in the order
// worked.
func Around(m stitch.Mitt) []stitch.Part {
	f := Fabric{Mitt: m}
	run := f.run()
	var list []stitch.Part
	for i := range m.Sections {
		if slices.Contains(run, &m.Sections[i]) {
			list = append(list, m.Sections[i].Part)
		}
	}
	return list
}

// upward returns the places of a section's columns by those of the one below.
func (f *Fabric) upward(r *ring, below, s *stitch.Section) map[string]int {
	edge, known := f.edges(s.Part), r.at[below.Part]
	own := map[string]int{}
	if edge.Anew {
		byPlace(own, edge.Foot, f.edges(below.Part).Head, known)
	} else {
		for name, at := range known {
			own[name] = at
		}
	}
	f.bridge(r, s, own)
	return own
}

// downward returns the places of a section's columns by those of the one above.
func (f *Fabric) downward(r *ring, s, above *stitch.Section) map[string]int {
	own, known := map[string]int{}, r.at[above.Part]
	if edge := f.edges(above.Part); edge.Anew {
		byPlace(own, f.edges(s.Part).Head, edge.Foot, known)
	} else {
		for name, at := range known {
			own[name] = at
		}
	}
	return own
}

// byPlace gives columns the places of those that stand beside them, one by one from the
// beginning.
func byPlace(own map[string]int, names, beside []string, known map[string]int) {
	for i := range min(len(names), len(beside)) {
		if at, ok := known[beside[i]]; ok {
			own[names[i]] = at
		}
	}
}

// bridge gives the columns of a bridge the places of the base under them, from its middle.
// What a bridge has more than the base has no place, here and in what goes on from it.
func (f *Fabric) bridge(r *ring, s *stitch.Section, own map[string]int) {
	var made []string
	for _, names := range f.Names[s.Part] {
		for _, name := range names {
			if name == "" || name[0] != wale.Bridge {
				continue
			}
			if _, ok := own[name]; !ok {
				own[name] = nowhere
				made = append(made, name)
			}
		}
	}
	for _, name := range made {
		if k := number(name) - 1 + floorHalf(r.base-len(made)); k >= 0 && k < r.base {
			own[name] = r.from + k
		}
	}
}

// nowhere is the place of a column that has none.
const nowhere = -1

// tube counts the columns of a section by itself, at the first of its widest rounds.
func (f *Fabric) tube(part stitch.Part) *ring {
	s := f.Mitt.Section(part)
	if s == nil || len(s.Rounds) == 0 {
		return nil
	}
	widest := CountedAt(s)
	r, own := &ring{parts: []stitch.Part{part}}, map[string]int{}
	for i, name := range f.Names[part][widest] {
		if name == "" || name[0] == wale.Seam || s.Rounds[widest].Ops[i].Out() == 0 {
			continue
		}
		own[name] = len(r.order)
		r.order = append(r.order, name)
		r.areas = append(r.areas, f.Areas[part][name])
	}
	if f.Left != nil && part.Passing() {
		own = map[string]int{}
		for i, name := range f.Left.Names[part][widest] {
			if name != "" && name[0] != wale.Seam && s.Rounds[widest].Ops[i].Out() > 0 {
				own[name] = len(r.order) - 1 - len(own)
			}
		}
	}
	r.at = map[stitch.Part]map[string]int{part: own}
	return r
}

// counted returns the columns of a part that goes round the hand where they are counted. Where
// every round takes or makes stitches, that is above them.
func (f *Fabric) counted(s *stitch.Section) []string {
	switch i := CountedAt(s); {
	case s.Part.Marked():
		return f.Edges[s.Part].Foot
	case keeps(&s.Rounds[i]):
		return f.Names[s.Part][i]
	}
	return f.Edges[s.Part].Head
}

// CountedAt returns the round of a section, from 0, at which its columns are counted, and of
// which its areas are asked. It is the lowest of those that have as many stitches as most have,
// above what brings the cuff's stitches to the hand's and below the ribbing at its end; of a
// part that is counted by itself, the first of the widest.
func CountedAt(s *stitch.Section) int {
	if roundHand(s.Part) {
		if at, ok := mostOf(s, len(s.Rounds)-s.About.Ribbed); ok {
			return at
		}
		at, _ := mostOf(s, len(s.Rounds))
		return at
	}
	widest := 0
	for i := range s.Rounds {
		if s.Rounds[i].Out() > s.Rounds[widest].Out() {
			widest = i
		}
	}
	return widest
}

// mostOf returns the lowest round, from 0, of those that have as many stitches as most have
// of the lowest rounds of a section; ok is false if each of these takes or makes some.
func mostOf(s *stitch.Section, lowest int) (at int, ok bool) {
	at, many, rounds := s.Lies(1)-1, 0, map[int]int{}
	for r := lowest; !s.Part.Marked() && r > 0; r-- {
		i := s.Lies(r) - 1
		if n := len(s.Rounds[i].Ops); keeps(&s.Rounds[i]) {
			if rounds[n]++; rounds[n] >= many {
				at, many, ok = i, rounds[n], true
			}
		}
	}
	return at, ok
}

// keeps reports whether a round works every column once.
func keeps(r *stitch.Round) bool {
	return !slices.ContainsFunc(r.Ops, func(o stitch.Op) bool { return o.In() != 1 || o.Out() != 1 })
}

// roundHand reports whether a part goes round the hand. Of the cuff only the plain part does.
func roundHand(p stitch.Part) bool {
	switch p.Over() {
	case stitch.OverWrist, stitch.OverDigit, stitch.OverCap:
		return false
	}
	return true
}

// Across returns how many stitches a repeat is laid across that goes round a section which is
// counted by itself.
func Across(s *stitch.Section) int { return s.Around(s.Rounds[CountedAt(s)].Out()) }

// number returns the number in the name of a column.
func number(name string) int {
	n := 0
	for _, c := range name[1:] {
		n = 10*n + int(c-'0')
	}
	return n
}

// floorHalf returns half of n, rounded down.
func floorHalf(n int) int { return n >> 1 }

func mod(a, n int) int { return ((a % n) + n) % n }

// ofGusset reports whether a column belongs to a gusset.
func ofGusset(name string) bool {
	return name != "" && (name[0] == wale.Base || name[0] == wale.First || name[0] == wale.Last)
}
