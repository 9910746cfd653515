package written

// motif is a run of stitches that a text tells once and names: a row of a motif.
type motif struct {
	motif, row int
}

// told is a run of stitches with the sizes that it is for; nil: all.
type told struct {
	of    []int
	items []Item
}

// motifTold reads "Motif 1 (birds), row 3: k1 rust, k3 cream."
func (r *reader) motifTold(p *parser) bool {
	if !p.any("motif") || p.peek().kind != whole {
		return false
	}
	m := motif{motif: p.peek().n}
	p.at++
	if shut, ok := closing[p.peek().low]; ok {
		p.skipBrackets(shut)
	}
	if !p.any(",") || !p.any("row", "round") || p.peek().kind != whole {
		return false
	}
	m.row = p.peek().n
	p.at++
	if !p.any(":") {
		return false
	}
	if r.motifs == nil {
		r.motifs = map[motif][]told{}
	}
	r.motifs[m] = append(r.motifs[m], told{p.of, p.items("")})
	return true
}

// motif reads "row 3 of motif 1".
func (p *parser) motif() (Item, bool) {
	from := p.at
	if p.any("row", "round") && p.peek().kind == whole {
		m := motif{row: p.peek().n}
		p.at++
		if p.took("of", "motif") && p.peek().kind == whole {
			m.motif = p.peek().n
			p.at++
			if list := p.motifs[m]; len(list) > 0 {
				i := Item{Does: Together}
				for _, one := range list {
					i.Items = append(i.Items, Item{Does: Together, Items: one.items, For: one.of, Some: one.of != nil})
				}
				return i, true
			}
		}
	}
	p.at = from
	return Item{}, false
}
