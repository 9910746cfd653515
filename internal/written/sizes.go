package written

import (
	"regexp"
	"slices"
	"strings"
)

// apart is what stands between the cells of a table.
var apart = regexp.MustCompile(` {2,}|\t`)

// sizes finds out how many sizes a text has, and what they are called: from the line that
// names them, else from how many numbers mostly stand together.
func (r *reader) sizes() {
	for i, t := range r.lines {
		if len(t) == 0 || i > 400 {
			continue
		}
		switch low := t[0].low; {
		case low == "size" && strings.HasPrefix(r.raw[i], "  "):
			if cells := apart.Split(strings.TrimSpace(r.raw[i]), -1); len(cells) > 1 && len(cells) <= MostSizes+1 {
				r.text.Sizes = cells[1:]
				return
			}
		case low == "size" || low == "sizes":
			if names := namesIn(t[1:]); len(names) > 1 {
				r.text.Sizes = names
				return
			}
		}
	}
	r.text.Sizes = make([]string, r.most())
	if len(r.text.Sizes) == 0 {
		r.text.Sizes = []string{""}
	}
	if len(r.text.Sizes) > 1 {
		for i := range r.text.Sizes {
			r.text.Sizes[i] = itoa(i + 1)
		}
	}
}

// namesIn reads the names of sizes: "S (M, L)", "6 (7, 8, 9)", "S, M and L", or the cells of
// a table.
func namesIn(t []token) (names []string) {
	if len(t) == 0 || len(t) > 3*MostSizes {
		return nil
	}
	name := ""
	end := func() {
		if name != "" {
			names = append(names, name)
		}
		name = ""
	}
	for i, one := range t {
		switch {
		case one.low == ":":
			if i > 2 {
				return nil
			}
		case one.kind == mark && one.low != "-" && one.low != "/":
			if one.low == "." && i+1 < len(t) {
				return nil
			}
			end()
		case one.low == "and" || one.low == "to":
			end()
		case one.low == "only" || one.low == "for" || one.low == "is":
			return nil
		default:
			if !one.tight {
				end()
			}
			name += one.text
		}
	}
	end()
	if len(names) > MostSizes || slices.ContainsFunc(names, func(n string) bool { return len(n) > 14 }) {
		return nil
	}
	return names
}

// most returns how many numbers mostly stand together, "44 (48, 52)", or 0.
func (r *reader) most() int {
	var seen [MostSizes + 1]int
	for _, t := range r.lines {
		for i := 0; i+2 < len(t); i++ {
			if t[i].kind != whole && !isStitch(t[i].low) || t[i+1].low != "(" && t[i+1].low != "[" {
				continue
			}
			n, at, apart := 1, i+2, false
			for ; at < len(t) && t[at].low != closing[t[i+1].low]; at++ {
				switch {
				case t[at].kind == whole || t[at].low == "-" && t[at-1].kind == mark:
					n++
				case t[at].low == "," || t[at].low == ":" || t[at].low == ";":
					apart = true
				default:
					n = MostSizes + 1
				}
				if n > MostSizes {
					break
				}
			}
			if at < len(t) && n <= MostSizes && n > 2 && apart {
				seen[n]++
			}
		}
	}
	best := 0
	for n, times := range seen {
		if times > seen[best] {
			best = n
		}
	}
	if best > 0 && seen[best] < 2 {
		return 0
	}
	return best
}

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
	only := p.any("only")
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

// sizeList reads "Sizes 7, 8 and 9".
func (r *reader) sizeList(p *parser) (list []int, ok bool) {
	if !p.any("size", "sizes") || len(r.text.Sizes) < 2 {
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
