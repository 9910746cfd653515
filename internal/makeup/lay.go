package makeup

import (
	"cmp"
	"slices"
)

// Lay makes up pieces in pages of an area, at the least cost. It returns an error
// if a number of the area or of a piece can't be one. A layout that can't keep
// every rule is still whole: its Troubles say where a part sticks out of its page,
// or where parts are parted that should be kept together.
func Lay(pieces []Piece, area Area) (Layout, error) {
	if err := check(pieces, area); err != nil || len(pieces) == 0 {
		return Layout{}, err
	}
	p := newPlaces(pieces)
	m := newMaker(p, area)
	m.run()
	return m.layout(), nil
}

// label is the best way to a place, for one side of the page that begins there.
type label struct {
	side side
	cost Cost
	fit  fit // the page that ends here
	from int // the place at which it begins
	of   int // the label there
}

// maker finds the best pages.
type maker struct {
	*places
	area   Area
	filler filler
	labels [][]label // by place
}

func newMaker(p *places, area Area) *maker {
	m := &maker{places: p, area: area}
	m.filler = filler{places: p, row: newRow(p.sizes, max(area.First, area.Page))}
	return m
}

// run finds the best pages up to each place. There are always some, since a page
// may break a rule for a price.
func (m *maker) run() {
	m.labels = make([][]label, len(m.at))
	m.labels[0] = []label{{side: m.area.firstSide()}}
	for s := range m.end() {
		m.filler.room = m.area.room(s)
		m.filler.yield = func(f fit) { m.next(s, f) }
		m.filler.from(s)
	}
}

// next tries a page that begins at s as the next of every label there.
func (m *maker) next(s int, f fit) {
	for i := range m.labels[s] {
		before := &m.labels[s][i]
		l := label{fit: f, from: s, of: i, cost: before.cost.add(f, m.filler.room, m.at[f.end].kept)}
		var apart int
		l.side, apart = m.area.turn(before.side, f.shows)
		l.cost.Apart += apart
		m.keep(f.end, l)
	}
}

// keep keeps a label if none is better for its place and side.
func (m *maker) keep(at int, l label) {
	n := slices.IndexFunc(m.labels[at], func(other label) bool { return other.side == l.side })
	if n < 0 {
		m.labels[at] = append(m.labels[at], l)
	} else if m.compare(&l, &m.labels[at][n]) < 0 {
		m.labels[at][n] = l
	}
}

// compare compares two labels of a place by their costs, then by their breaks.
func (m *maker) compare(a, b *label) int {
	if c := a.cost.Compare(b.cost); c != 0 {
		return c
	}
	earlier := 0
	for a.from > 0 || b.from > 0 { // as many pages for the same cost
		if c := cmp.Compare(a.from, b.from); c != 0 {
			earlier = c
		}
		a, b = &m.labels[a.from][a.of], &m.labels[b.from][b.of]
	}
	return earlier
}

// best returns the best label of the end, with what lies apart on the last pages.
func (m *maker) best() label {
	var best label
	for i, l := range m.labels[m.end()] {
		l.cost.Apart += l.side.close()
		if i == 0 || m.compare(&l, &best) < 0 {
			best = l
		}
	}
	return best
}

// layout returns the pages of the best label.
func (m *maker) layout() Layout {
	l := m.best()
	out := Layout{Cost: l.cost, Pages: make([]Page, l.cost.Pages)}
	for n := len(out.Pages) - 1; n >= 0; n-- {
		out.Pages[n] = m.page(l.from, l.fit)
		l = m.labels[l.from][l.of]
	}
	out.Troubles = m.troubles(out.Pages)
	return out
}
