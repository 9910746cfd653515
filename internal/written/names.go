package written

import (
	"regexp"
	"slices"
	"strings"
)

// apart is what stands between the cells of a table.
var apart = regexp.MustCompile(` {2,}|\t`)

// smallest are words that a line of sizes begins with, where nothing says that it is one.
var smallest = map[string]bool{
	"xxs": true, "xs": true, "s": true, "small": true, "child": true, "child's": true, "children": true, "newborn": true, "baby": true,
	"infant": true, "toddler": true, "preemie": true, "women": true, "women's": true, "woman": true, "lady's": true, "adult": true,
}

// sizes finds out how many sizes a text has, and what they are called: from how many numbers
// mostly stand together, and from the line that names them, if it agrees.
func (r *reader) sizes() {
	seen := r.together()
	best := 0
	for n := 3; n <= MostSizes; n++ {
		if seen[n] > 1 && seen[n] > seen[best] {
			best = n
		}
	}
	if best == 0 {
		best = r.castOn()
	}
	for i, t := range r.lines {
		if len(t) == 0 || i > 400 {
			continue
		}
		if t[0].low == "size" && strings.HasPrefix(r.raw[i], "  ") {
			if cells := apart.Split(strings.TrimSpace(r.raw[i]), -1); len(cells) > 1 && len(cells) <= MostSizes+1 {
				r.text.Sizes = cells[1:]
				return
			}
		}
		if names := r.namesAt(i); len(names) > 1 && (len(names) == best || seen[len(names)] > 0 || best == 0 && r.singled()) {
			r.text.Sizes = names
			return
		}
	}
	r.text.Sizes = make([]string, max(1, best))
	for i := 0; i < best; i++ {
		r.text.Sizes[i] = itoa(i + 1)
	}
}

// castOn returns how many numbers stand together where stitches are cast on: nobody states a count
// there.
func (r *reader) castOn() int {
	for _, t := range r.lines {
		for i := 1; i+2 < len(t); i++ {
			if t[i].kind != whole || t[i-1].low != "on" && t[i-1].low != "co" || closing[t[i+1].low] == "" {
				continue
			}
			if n, end := run(t, i); n > 1 && n <= MostSizes && end < len(t) && stitchWords[t[end].low] {
				return n
			}
			return 0
		}
	}
	return 0
}

// namesAt returns the sizes that a line names, or the one after a line that only says so.
func (r *reader) namesAt(i int) []string {
	t := r.lines[i]
	switch low := t[0].low; {
	case low == "size" || low == "sizes":
		if rest := t[1:]; len(rest) > 1 || len(rest) == 1 && rest[0].low != ":" {
			return namesIn(rest)
		}
		for i++; i < len(r.lines); i++ {
			if next := r.lines[i]; len(next) > 0 {
				if next[0].low == "size" || next[0].low == "sizes" {
					return nil // a table
				}
				return namesIn(next)
			}
		}
	case smallest[low] && i < 40:
		return namesIn(t)
	}
	return nil
}

// singled reports whether a text has lines for some sizes only.
func (r *reader) singled() bool {
	return slices.ContainsFunc(r.lines, func(t []token) bool {
		at := slices.IndexFunc(t, func(one token) bool { return one.low == "only" })
		return at > 1 && slices.ContainsFunc(t[:at], func(one token) bool { return one.low == "size" || one.low == "sizes" })
	})
}

// namesIn reads the names of sizes: "S (M, L)", "6 (7, 8, 9)", "S, M and L", "S [M: L]", "S-M-L".
func namesIn(t []token) (names []string) {
	if len(t) > 0 && t[0].low == ":" {
		t = t[1:]
	}
	if len(t) == 0 || len(t) > 5*MostSizes {
		return nil
	}
	name, marks, shut := "", 0, false
	end := func() {
		if name = strings.TrimSpace(name); name != "" {
			names = append(names, name)
		}
		name = ""
	}
	spaced := !slices.ContainsFunc(t, func(one token) bool { return one.kind == mark || one.low == "and" || one.low == "to" })
reading:
	for i, one := range t {
		switch low := one.low; {
		case low == "=" || low == ";" || low == "." || low == "—" || shut && one.kind != mark && low != "and" && low != "to":
			break reading
		case low == "to" && i+1 < len(t) && t[i+1].low == "fit", low == "," && shut && len(names) > 1:
			break reading
		case low == "only" || low == "for" || low == "is":
			return nil
		case one.kind == mark && (low == "-" || low == "/") && one.tight:
			name += one.text
			marks++
		case one.kind == mark && low != "'" && low != "\"", low == "and", low == "to":
			end()
			shut = low == ")" || low == "]" || low == "}"
			continue
		default:
			if !one.tight && name != "" {
				if name += " "; spaced {
					end()
				}
			}
			name += one.text
		}
		shut = false
	}
	end()
	if len(names) == 1 {
		for _, sep := range []string{"-", "/"} {
			if parts := strings.Split(names[0], sep); len(parts) > 2 {
				names = parts
			}
		}
	}
	if len(names) > MostSizes || slices.ContainsFunc(names, func(n string) bool { return len(n) > 24 }) {
		return nil
	}
	return names
}

// together counts how often so many numbers stand together: "44 (48, 52)" or "44-48-52" are
// three. Two are counted in brackets only, "44 (48)".
func (r *reader) together() (seen [MostSizes + 1]int) {
	for _, t := range r.lines {
		for i := 0; i < len(t); i++ {
			if t[i].kind != whole && !isStitch(t[i].low) {
				continue
			}
			n, next := run(t, i)
			if n > 1 && n <= MostSizes {
				seen[n]++
				i = next - 1
			}
		}
	}
	return seen
}

// run returns how many numbers stand together from a place on, and where they end.
func run(t []token, i int) (n, at int) {
	n, at = 1, i+1
	if at+1 < len(t) && t[at].low == "," && closing[t[at+1].low] != "" {
		at++
	}
	for at < len(t) && closing[t[at].low] != "" {
		shut, more, end, parted := closing[t[at].low], 0, at+1, false
	inside:
		for ; end < len(t) && t[end].low != shut; end++ {
			switch low := t[end].low; {
			case t[end].kind == whole || low == "-" && t[end-1].kind == mark:
				more++
			case low == "," || low == ":" || low == ";" || low == "/" || low == "-":
				parted = true
			default:
				more = 0
				break inside
			}
			if more > MostSizes {
				break
			}
		}
		if end == len(t) || more == 0 || t[end].low != shut || more > 1 && !parted {
			break
		}
		n, at = n+more, end+1
	}
	if n > 1 {
		return n, at
	}
	for _, sep := range []string{"-", "/", "|"} {
		n, at = 1, i+1
		for at+1 < len(t) && t[at].low == sep && t[at+1].kind == whole {
			n, at = n+1, at+2
		}
		if n > 2 {
			return n, at
		}
	}
	return 1, i + 1
}
