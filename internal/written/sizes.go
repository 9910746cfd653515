package written

import "slices"

// forSizes reads "Size 7 only:" and the like before a sentence.
func (r *reader) forSizes(p *parser) []int {
	from := p.at
	bracket := p.any("[", "(")
	p.any("for")
	if p.took("all", "sizes") {
		if p.any(":", ",", ".") {
			r.only = nil
			return nil
		}
		p.at = from
		return r.only
	}
	list, ok := r.sizeList(p)
	if !ok {
		p.at = from
		return r.only
	}
	only := p.any("only", "alone")
	if bracket && !p.any("]", ")") {
		p.at = from
		return r.only
	}
	if !p.any(":", ",", ".", "-", "—") && !only && !bracket {
		p.at = from
		return r.only
	}
	p.any(":")
	if p.done() {
		r.only, r.block = list, true
	}
	return list
}

// sizeList reads "Sizes 7, 8 and 9", "2nd and 3rd sizes".
func (r *reader) sizeList(p *parser) (list []int, ok bool) {
	if len(r.text.Sizes) < 2 {
		return nil, false
	}
	if p.peek().kind == ordinal {
		for p.peek().kind == ordinal && p.peek().n > 0 && p.peek().n <= len(r.text.Sizes) {
			list = append(list, p.peek().n-1)
			p.at++
			p.all(",", "and", "&")
		}
		return list, len(list) > 0 && p.any("size", "sizes")
	}
	if !p.any("size", "sizes") {
		return nil, false
	}
	for !p.done() {
		at := p.sizeNamed(r.names)
		if at < 0 {
			break
		}
		list = append(list, at)
		if p.any("-", "to") {
			if last := p.sizeNamed(r.names); last > at {
				for at++; at <= last; at++ {
					list = append(list, at)
				}
			}
		}
		from := p.at
		p.all(",", "and", "&", "+")
		if at, _ := p.sizeAhead(r.names); p.at != from && at < 0 {
			p.at = from
			break
		}
	}
	return list, len(list) > 0
}

// sizeNamed takes the name of a size, and returns its place, or -1.
func (p *parser) sizeNamed(names [][]token) int {
	at, wide := p.sizeAhead(names)
	p.at += wide
	return at
}

// sizeAhead returns the place of the size whose name stands next, the longest if there are
// several, and how many tokens it has; -1 if there is none.
func (p *parser) sizeAhead(names [][]token) (at, wide int) {
	at = -1
	for i, name := range names {
		if len(name) <= wide {
			continue
		}
		same := true
		for by := range name {
			same = same && p.next(by).low == name[by].low
		}
		if same {
			at, wide = i, len(name)
		}
	}
	return at, wide
}

// yarnNames finds the names of yarns: "Yarns: cream, rust." or "A: cream".
func (r *reader) yarnNames() {
	for _, t := range r.lines {
		at := slices.IndexFunc(t, func(one token) bool { return one.low == "yarns" })
		if at < 0 || at+2 >= len(t) || t[at+1].low != ":" {
			continue
		}
		t = t[at:]
		var name []string
		end := func() {
			if len(name) > 0 && len(r.yarns) < mostYarns {
				r.yarns = append(r.yarns, name)
			}
			name = nil
		}
		for _, one := range t[2:] {
			if one.low == "." {
				break
			}
			if one.low == "," || one.low == "and" {
				end()
				continue
			}
			name = append(name, one.low)
		}
		end()
	}
	slices.SortStableFunc(r.yarns, func(a, b []string) int { return len(b) - len(a) })
}
