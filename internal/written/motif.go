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
	if len(r.motifs) < mostMotifs {
		r.motifs = append(r.motifs, m)
	}
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
	of := map[int]int{} // the item of a row, by its place among those that were told
	for size := range p.every {
		mine := size
		if p.of != nil {
			mine = slices.Index(p.of, size)
		}
		if mine < 0 {
			continue
		}
		at, place := p.toldLast(motif, row.For(mine), size)
		if at < 0 {
			continue
		}
		m := &p.motifs[at]
		if _, ok := of[at]; !ok {
			of[at] = len(i.Items)
			i.Items = append(i.Items, Item{Does: Together, Items: m.items, For: slices.Repeat([]int{-1}, max(len(m.of), p.every)), Some: true})
		}
		i.Items[of[at]].For[place] = size
	}
	if len(i.Items) == 0 {
		p.at = from
		return Item{}, false
	}
	return i, true
}

// toldLast returns which row was told last of a motif under a number for a size, and the
// size's place among those that it was told for; -1 if there is none.
func (p *parser) toldLast(motif, row, size int) (at, place int) {
	for at := len(p.motifs) - 1; at >= 0; at-- {
		m := &p.motifs[at]
		if m.motif != motif {
			continue
		}
		place := size
		if m.of != nil {
			place = slices.Index(m.of, size)
		}
		if place >= 0 && m.row.For(place) == row {
			return at, place
		}
	}
	return -1, 0
}
