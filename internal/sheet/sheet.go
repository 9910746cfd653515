// Package sheet reads and writes measure sheets: what a person measured and
// decided, exactly as they typed it. The same sheet stands behind a JSON file
// and behind the measure form, so both are checked by the same words.
package sheet

import (
	"sort"
	"strconv"
	"strings"
)

// Format names the version of the sheet.
const Format = "thenar/sheet@1"

// Sheet holds the typed text of every value by its path, such as
// "hand.thumb_circumference" or "gauge.swatches[0].stitches". A path that is
// missing, or holds only spaces, was not given. Nothing is converted until
// Request is asked, so that what was typed is never lost, right or wrong.
type Sheet map[string]string

// Paths that are used by name elsewhere.
const (
	PathKind = "kind"
	PathUnit = "unit"
)

// kind is what a value may be.
type kind int

const (
	object kind = iota
	list        // rows of an object
	length      // a length in the sheet's unit
	height      // a length that may be 0
	number      // a decimal above 0
	amount      // a decimal, 0 or more
	ease        // a decimal that may be negative, or a percentage when typed
	whole       // a whole number, perhaps with a sign
	choice      // one of some words
	flag        // true or false
	rhythm      // a whole number, or a list of them
	rounds      // the same, of rounds
	signed      // a length that may lie on either side of 0
	text        // words of the person's own
	date        // year-month-day
)

// node is a key of the sheet's tree.
type node struct {
	key     string
	kind    kind
	words   []string // of a choice
	most    int      // rows of a list
	members []node   // of an object or of a row
}

// find is the member with a key; nil if there is none.
func (n *node) find(key string) *node {
	for i := range n.members {
		if n.members[i].key == key {
			return &n.members[i]
		}
	}
	return nil
}

// join makes a path of a parent and a key.
func join(parent, key string) string {
	if parent == "" {
		return key
	}
	return parent + "." + key
}

// row is the path of row i of a list.
func row(parent string, i int) string { return parent + "[" + strconv.Itoa(i) + "]" }

// Given is the trimmed text at a path; empty if it was not given.
func (s Sheet) Given(path string) string { return strings.TrimSpace(s[path]) }

// Rows counts the rows of a list: one more than the highest row of which
// anything was given.
func (s Sheet) Rows(path string) int {
	rows := 0
	for p := range s {
		rest, below := strings.CutPrefix(p, path)
		if !below || !strings.HasPrefix(rest, "[") || s.Given(p) == "" {
			continue
		}
		index, _, _ := strings.Cut(rest[1:], "]")
		if n, err := strconv.Atoi(index); err == nil && n < max(maxSwatches, maxProfile) {
			rows = max(rows, n+1)
		}
	}
	return rows
}

// Known tells whether a path belongs to a sheet.
func Known(path string) bool {
	n := &tree
	for _, part := range strings.Split(path, ".") {
		key, index, isRow := strings.Cut(part, "[")
		if n = n.find(key); n == nil || isRow != (n.kind == list) {
			return false
		}
		if isRow && !rowWithin(index, n.most) {
			return false
		}
	}
	return n.kind != object && n.kind != list
}

// rowWithin reads "3]" and holds it to fewer than most, written plainly.
func rowWithin(index string, most int) bool {
	n, err := strconv.Atoi(strings.TrimSuffix(index, "]"))
	return err == nil && n >= 0 && n < most && index == strconv.Itoa(n)+"]"
}

// Put writes a text at a path; an empty one takes out what stands there.
func (s Sheet) Put(path, text string) {
	if text == "" {
		delete(s, path)
		return
	}
	s[path] = text
}

// Clone is a copy that shares nothing.
func (s Sheet) Clone() Sheet {
	out := make(Sheet, len(s))
	for path, text := range s {
		out[path] = text
	}
	return out
}

// Paths lists the paths that were given, sorted.
func (s Sheet) Paths() []string {
	paths := make([]string, 0, len(s))
	for path := range s {
		if s.Given(path) != "" {
			paths = append(paths, path)
		}
	}
	sort.Strings(paths)
	return paths
}
