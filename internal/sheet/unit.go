package sheet

import (
	"strings"

	"thenar/internal/units"
)

// In returns the same sheet in another unit. Every length is converted to its
// last digit, not rounded as on a tape; a text that is no length stays as it was
// typed.
func (s Sheet) In(u units.Unit) Sheet {
	out, was := s.Clone(), s.Unit()
	if u == was || u.Size() == 0 {
		return out
	}
	for path, text := range out {
		n := nodeOf(path)
		if n == nil {
			continue
		}
		switch n.kind {
		case length, height:
			if l, err := units.Parse(text, was); err == nil {
				out[path] = l.Exact(u)
			}
		case signed:
			if l, err := ParseSigned(text, was); err == nil && l != 0 {
				out[path] = Signed(l, u)
			}
		}
	}
	out[PathUnit] = string(u)
	return out
}

// nodeOf returns the node of a path, which may go through rows, or nil if no
// sheet has it.
func nodeOf(path string) *node {
	n := &tree
	for _, part := range strings.Split(path, ".") {
		key, _, _ := strings.Cut(part, "[")
		if n = n.find(key); n == nil {
			return nil
		}
	}
	return n
}
