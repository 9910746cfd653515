package repeat

import (
	"slices"

	"thenar/internal/stitch"
)

// Laid are repeats as they lie on a mitt.
type Laid struct {
	Came  []Came // of each, in the order of the list
	list  []laid
	parts map[stitch.Part][]int // which of them may lie in a section
	lie   map[stitch.Part]map[int][]string
}

// laid is one repeat on its columns.
type laid struct {
	of     Repeat
	ring   *ring
	start  int   // the first place that a motif covers, counted along the line
	covers int   // how many it covers
	whole  bool  // it covers all round, and goes on over the beginning
	along  []int // where each place comes on the line that it is laid along; −1: not there
	rows   map[stitch.Part]span
	block  []map[string]int // in a gusset: which stitch of the motif the columns of a round have
	flip   bool             // the motif is turned, so that the left hand has it as drawn
}

// span are rounds of a section, from 1, and the number of the motif's round that the first
// of them has, from 0.
type span struct{ first, last, up int }

// Cell is what a repeat sets at a place.
type Cell struct {
	Which int // the repeat, by its place in the list
	Right int // the stitch of its motif, from 0 from the right
	Up    int // the round of its motif, from 0
	Yarn  string
	Op    stitch.Op
}

// Lay lays repeats on a mitt, one over the other in their order.
func Lay(list []Repeat, f Fabric) *Laid {
	l := &Laid{Came: make([]Came, len(list)), parts: map[stitch.Part][]int{}, lie: f.lie()}
	var hand *ring
	tubes := map[stitch.Part]*ring{}
	for i, one := range list {
		if one.Off {
			l.Came[i].Nowhere = "it is turned off"
			l.list = append(l.list, laid{of: one})
			continue
		}
		r := hand
		switch {
		case one.apart(&f):
			if r = tubes[one.Section]; r == nil {
				r = f.tube(one.Section)
				tubes[one.Section] = r
			}
		case r == nil:
			hand = f.hand()
			r = hand
		}
		lies := laid{of: one, ring: r, flip: f.Left != nil && one.OnLeft == AsDrawn}
		l.Came[i] = lies.lay(&f)
		for part := range lies.rows {
			l.parts[part] = append(l.parts[part], i)
		}
		l.list = append(l.list, lies)
	}
	return l
}

// apart reports whether a repeat lies on a section that is counted by itself: the cuff, a
// thumb, a finger, a cap.
func (r *Repeat) apart(f *Fabric) bool {
	if r.Section == Whole {
		return false
	}
	return !slices.ContainsFunc(f.run(), func(s *stitch.Section) bool { return s.Part == r.Section })
}

// lay works out where a repeat lies, and what becomes of it.
func (l *laid) lay(f *Fabric) Came {
	if l.ring == nil || l.of.Section != Whole && f.Mitt.Section(l.of.Section) == nil {
		return Came{Nowhere: "this mitt has no " + l.of.Section.Words()}
	}
	c := Came{Across: 1}
	if why := l.rounds(f, &c); why != "" {
		return Came{Rounds: c.Rounds, Nowhere: why}
	}
	gusset := f.gusset()
	if l.of.Over == Gusset {
		c.Stitches = l.inGusset(f, gusset)
		c.Beside = l.besideMiddle(c.Stitches)
		return c
	}
	if why := l.set(f, &c); why != "" {
		l.rows = nil
		return Came{Stitches: c.Stitches, Nowhere: why}
	}
	if gusset != nil && l.of.Over == Round && l.of.Gusset != StaysOut && l.rows[gusset.Part] != (span{}) {
		c.Beside = l.besideMiddle(l.inGusset(f, gusset))
	}
	return c
}

// rounds sets the rounds in which a repeat lies.
func (l *laid) rounds(f *Fabric, c *Came) (why string) {
	parts := l.ring.parts
	if l.of.Section != Whole {
		parts = []stitch.Part{l.of.Section}
	}
	n := 0
	for _, p := range parts {
		n += len(f.Mitt.Section(p).Rounds)
	}
	from, to := l.of.From, l.of.To
	if to < 0 {
		to += n + 1
	}
	to = min(to, n)
	if l.of.Over == Gusset { // its rounds alone count
		first, last := f.gussetIn(parts)
		if from, to = max(from, first), min(to, last); to < from {
			return "there is no gusset in these rounds"
		}
	}
	if c.Rounds = to - from + 1; c.Rounds < 1 {
		c.Rounds = 0
		return "its rounds are not there"
	}
	c.Up, c.Left = c.Rounds/l.of.Motif.High, c.Rounds%l.of.Motif.High
	last := to
	if !l.of.Cut {
		if last = from + c.Up*l.of.Motif.High - 1; c.Up == 0 {
			return "it is higher than its rounds"
		}
	}
	l.rows = map[stitch.Part]span{}
	below := 0
	for _, p := range parts {
		own := len(f.Mitt.Section(p).Rounds)
		first, end := max(from-below, 1), min(last-below, own)
		if first <= end {
			l.rows[p] = span{first, end, (first + below - from) % l.of.Motif.High}
		}
		below += own
	}
	return ""
}

// line returns the places that a repeat is laid across, in the order in which the right
// hand works them.
func (l *laid) line(f *Fabric) (line []int, why string) {
	n := len(l.ring.order)
	all := make([]int, n)
	for i := range all {
		all[i] = i
	}
	switch l.of.Over {
	case Columns:
		from, to := slices.Index(l.ring.order, l.of.Between[0]), slices.Index(l.ring.order, l.of.Between[1])
		if from < 0 || to < 0 {
			return nil, "its columns are not there"
		}
		return l.ring.around(from, (to-from+n)%n+1), ""
	case Palm, Back:
		return l.ring.part(func(at int) bool { return l.ring.on(at, string(l.of.Over), f) }, string(l.of.Over))
	}
	return all, ""
}

// ofBase reports whether a place is the base's, under the gusset.
func (r *ring) ofBase(at int) bool { return at >= r.from && at < r.from+r.base }

// on reports whether a place lies on an area. If the thumb sits in the palm, so does what lies
// under it.
func (r *ring) on(at int, area string, f *Fabric) bool {
	return r.areas[at] == area || area == palmArea && f.InPalm && r.ofBase(at)
}

// around returns n places from one on, round the ring.
func (r *ring) around(at, n int) []int {
	list := make([]int, n)
	for k := range list {
		list[k] = (at + k) % len(r.order)
	}
	return list
}

// part returns the longest run of places for which on holds, round the ring.
func (r *ring) part(on func(at int) bool, words string) ([]int, string) {
	all := make([]bool, len(r.order))
	for at := range all {
		all[at] = on(at)
	}
	from, n := longest(all, true)
	if n == 0 {
		return nil, "there is no " + words + " here"
	}
	return r.around(from, n), ""
}

// longest returns the longest run of a list, the first of equally long ones. In a closed one
// the last is beside the first.
func longest(on []bool, closed bool) (from, n int) {
	begin := 0 // of a run that doesn't go on over the end of the list
	if closed {
		begin = slices.Index(on, false) + 1
	}
	run := 0
	for k := begin; k < begin+len(on); k++ {
		if !on[k%len(on)] {
			run = 0
			continue
		}
		run++
		if at := (k - run + 1) % len(on); run > n || run == n && at < from {
			from, n = at, run
		}
	}
	return from, n
}

// gusset returns the section that grows; nil if there is none.
func (f *Fabric) gusset() *stitch.Section {
	for i := range f.Mitt.Sections {
		if s := &f.Mitt.Sections[i]; s.Part.Marked() && len(s.Rounds) > 0 {
			return s
		}
	}
	return nil
}

// inGusset gives the columns of a gusset their stitch of the motif, and returns how many
// it has where it is widest.
func (l *laid) inGusset(f *Fabric, s *stitch.Section) int {
	inside := func(i int) []int { // the operations of a round that are the gusset's
		r := &s.Rounds[i]
		var list []int
		for j := r.Before; j < r.Before+r.Lead; j++ {
			if f.Names[s.Part][i][j] != "" {
				list = append(list, j)
			}
		}
		return list
	}
	widest := 0
	for i := range s.Rounds {
		if len(inside(i)) >= len(inside(widest)) {
			widest = i
		}
	}
	column := map[string]int{}
	for k, j := range inside(widest) {
		column[f.Names[s.Part][widest][j]] = k
	}
	n, wide := len(column), l.of.Motif.Wide
	l.block = make([]map[string]int, len(s.Rounds))
	for i := range s.Rounds {
		list := inside(i)
		own := make(map[string]int, len(list))
		for k, j := range list {
			name := f.Names[s.Part][i][j]
			if l.of.Gusset == Follows {
				own[name] = mod(min(k, len(list)-1-k)-l.of.Offset, wide)
			} else if at, ok := column[name]; ok {
				own[name] = mod(l.outwards(at, n)-l.of.Offset, wide)
			}
		}
		l.block[i] = own
	}
	return n
}

// outwards returns which stitch of the motif a column of a gusset of n has: with the middle
// of the motif on its middle, or counted from there on both sides.
func (l *laid) outwards(at, n int) int {
	if l.of.Gusset == Mirrored {
		return max(at-n/2, (n-1)/2-at)
	}
	return at - floorHalf(n-l.of.Motif.Wide)
}

// Cells calls each for what repeats set in a round of a section, counted from 0: the lowest
// repeat first, each along the names of the round's columns, in whatever order a hand works
// them; j is the place of a name in them.
func (l *Laid) Cells(part stitch.Part, round int, names []string, each func(j int, c Cell)) {
	l.Lies(part, round, names, func(j int, c Cell) {
		if c.Yarn != "" || c.Op != stitch.NoStitch {
			each(j, c)
		}
	})
}

// Lies is Cells for all that repeats cover, be it that a motif leaves what lies under.
func (l *Laid) Lies(part stitch.Part, round int, names []string, each func(j int, c Cell)) {
	if lie := l.lie[part][round]; lie != nil {
		names = lie
	}
	var on *ring
	var places []int // of the names on a ring, which most repeats share
	for _, i := range l.parts[part] {
		one := &l.list[i]
		rows := one.rows[part]
		if round+1 < rows.first || round+1 > rows.last {
			continue
		}
		if one.ring != on {
			on, places = one.ring, one.ring.places(places[:0], part, names)
		}
		up := (rows.up + round + 1 - rows.first) % one.of.Motif.High
		for j, name := range names {
			u := -1
			switch {
			case places[j] == inGusset:
				u = one.inBlock(round, name)
			case places[j] >= 0 && one.along != nil:
				if k := one.along[places[j]]; k >= 0 {
					u = one.across(k)
				}
			}
			if u < 0 {
				continue
			}
			if one.flip {
				u = one.of.Motif.Wide - 1 - u
			}
			yarn, op := one.of.Motif.At(u, up)
			each(j, Cell{i, u, up, yarn, op})
		}
	}
}

// inGusset stands for the place of a column of the gusset, in its rounds.
const inGusset = -2

// places appends the places of columns in a section; nowhere for those that have none.
func (r *ring) places(list []int, part stitch.Part, names []string) []int {
	at, marked := r.at[part], part.Marked()
	for _, name := range names {
		place, ok := at[name]
		switch {
		case marked && ofGusset(name):
			place = inGusset
		case !ok:
			place = nowhere
		}
		list = append(list, place)
	}
	return list
}

// inBlock returns which stitch of the motif a column of the gusset has in a round; −1: none.
func (l *laid) inBlock(round int, name string) int {
	if l.block == nil {
		return -1
	}
	if u, ok := l.block[round][name]; ok {
		return u
	}
	return -1
}
