package sheet

import "strings"

// Lists returns the paths of the lists that a person fills row by row.
func Lists() []string { return []string{"gauge.swatches", "hand.profile", "hand.profile_above"} }

// Compact drops the rows of every list in which nothing was typed, and moves the
// later rows up: a form sends its choices even for rows that the person left
// empty. The first swatch stays, since one is needed.
func (s Sheet) Compact() {
	for _, path := range Lists() {
		n, to := find(path), 0
		if path == "gauge.swatches" {
			to = 1
		}
		for from := to; from < n.maxRows; from++ {
			if !s.typed(row(path, from), n) {
				s.move(row(path, from), "", n)
				continue
			}
			if to != from {
				s.move(row(path, from), row(path, to), n)
			}
			to++
		}
	}
}

// Trim drops the rows at the end of every list in which nothing was typed; the
// first swatch stays.
func (s Sheet) Trim() {
	for _, path := range Lists() {
		n, least := find(path), 0
		if path == "gauge.swatches" {
			least = 1
		}
		for i := s.Rows(path) - 1; i >= least && !s.typed(row(path, i), n); i-- {
			s.move(row(path, i), "", n)
		}
	}
}

// find returns the node of a path without rows.
func find(path string) *node {
	n := &tree
	for _, key := range strings.Split(path, ".") {
		n = n.find(key)
	}
	return n
}

// typed reports whether anything was typed in a row: a form sends all other
// fields by itself.
func (s Sheet) typed(at string, n *node) bool {
	for _, m := range n.members {
		if m.kind != choice && m.kind != flag && m.key != "counted_to" && s.Given(join(at, m.key)) != "" {
			return true
		}
	}
	return false
}

// move moves the texts below one path to another; if to is empty, it drops them.
func (s Sheet) move(from, to string, n *node) {
	for i := range n.members {
		m := &n.members[i]
		at, there := join(from, m.key), ""
		if to != "" {
			there = join(to, m.key)
		}
		if m.kind == object {
			s.move(at, there, m)
			continue
		}
		text, was := s[at]
		delete(s, at)
		if was && to != "" {
			s[there] = text
		}
	}
}
