package written

import "slices"

// told is a row of a motif: a run of stitches that a text tells once and names. Its number
// may be another in each size.
type told struct {
	motif int
	row   Number
	of    []int // the sizes that it is for; nil: all
	items []Item
}

// motifTold reads "Motif 1 (birds), row 3: k1 rust, k3 cream."
func (r *reader) motifTold(p *parser) bool {
	if !p.any("motif") || p.peek().kind != whole {
		return false
	}
	m := told{motif: p.peek().n, of: p.of}
	p.at++
	if shut, ok := closing[p.peek().low]; ok {
		p.skipBrackets(shut)
	}
	var ok bool
	if !p.any(",") || !p.any("row", "round") {
		return false
	}
	if m.row, ok = p.number(false); !ok || !p.any(":") {
		return false
	}
	m.items = p.items("")
	r.motifs = append(r.motifs, m)
	return true
}

// motif reads "row 3 of motif 1", which is what was told of that row for each size.
func (p *parser) motif() (Item, bool) {
	from := p.at
	if !p.any("row", "round") {
		return Item{}, false
	}
	row, ok := p.number(false)
	if !ok || !p.took("of", "motif") || p.peek().kind != whole {
		p.at = from
		return Item{}, false
	}
	motif := p.peek().n
	p.at++
	i := Item{Does: Together}
	for _, m := range p.motifs {
		if m.motif != motif {
			continue
		}
		of := m.of
		if of == nil {
			of = every(max(p.every, 1))
		}
		those := append([]int{}, of...)
		some := false
		for at, size := range of {
			mine := size
			if p.of != nil {
				mine = slices.Index(p.of, size)
			}
			if mine < 0 || m.row.For(at) != row.For(mine) {
				those[at] = -1
			} else {
				some = true
			}
		}
		if some {
			i.Items = append(i.Items, Item{Does: Together, Items: m.items, For: those, Some: true})
		}
	}
	if len(i.Items) == 0 {
		p.at = from
		return Item{}, false
	}
	return i, true
}

// every returns the places of all sizes.
func every(n int) []int {
	list := make([]int, n)
	for i := range list {
		list[i] = i
	}
	return list
}
