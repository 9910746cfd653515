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
// "hand.thumb_circumference" or "gauge.swatches[0].stitches". A value whose path
// is missing, or holds only spaces, was not given. Texts are converted only when
// they are read, so that nothing typed is lost, right or wrong.
type Sheet map[string]string

// The paths of the kind of mitt, of the unit of lengths, and of the terms of the
// trade in which its sentences are put.
const (
	PathKind  = "kind"
	PathUnit  = "unit"
	PathTerms = "terms"
)

// kind is the kind of value that a node takes.
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
	rounds      // a list of rounds
	signed      // a length that may lie on either side of 0
	text        // words of the person's own
	date        // year-month-day
	drawn       // rows of letters
)

// node is a key of the tree of all that a sheet may hold.
type node struct {
	key     string
	kind    kind
	words   []string // of a choice
	maxRows int      // of a list
	rows    string   // what they are called; empty: rows
	members []node   // of an object or of a row
}

// find returns the member with a key, or nil if there is none.
func (n *node) find(key string) *node {
	for i := range n.members {
		if n.members[i].key == key {
			return &n.members[i]
		}
	}
	return nil
}

// plant adds a leaf at the end, and the objects in which it lies if they are not there
// yet: "fingers.index.palm" is palm in index in fingers.
func (n *node) plant(path string, leaf node) {
	key, rest, deeper := strings.Cut(path, ".")
	if !deeper {
		leaf.key = key
		n.members = append(n.members, leaf)
		return
	}
	if n.find(key) == nil {
		n.members = append(n.members, node{key: key})
	}
	n.find(key).plant(rest, leaf)
}

// join returns the path of a key below a parent, which may be empty.
func join(parent, key string) string {
	if parent == "" {
		return key
	}
	return parent + "." + key
}

// row returns the path of row i of a list.
func row(parent string, i int) string { return parent + "[" + strconv.Itoa(i) + "]" }

// Given returns the trimmed text at a path, or "" if it was not given.
func (s Sheet) Given(path string) string { return strings.TrimSpace(s[path]) }

// Rows returns the number of rows of a list, up to the last one in which anything
// was given.
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

// Known reports whether a sheet may hold a value at a path.
func Known(path string) bool {
	n := &tree
	for _, part := range strings.Split(path, ".") {
		key, index, isRow := strings.Cut(part, "[")
		if n = n.find(key); n == nil || isRow != (n.kind == list) {
			return false
		}
		if isRow && !rowWithin(index, n.maxRows) {
			return false
		}
	}
	return n.kind != object && n.kind != list
}

// rowWithin reports whether index, such as "3]", is the plainly written number of
// one of so many rows.
func rowWithin(index string, rows int) bool {
	n, err := strconv.Atoi(strings.TrimSuffix(index, "]"))
	return err == nil && n >= 0 && n < rows && index == strconv.Itoa(n)+"]"
}

// Put sets the text at a path; an empty text removes the path.
func (s Sheet) Put(path, text string) {
	if text == "" {
		delete(s, path)
		return
	}
	s[path] = text
}

// Clone returns a copy that shares nothing with s.
func (s Sheet) Clone() Sheet {
	out := make(Sheet, len(s))
	for path, text := range s {
		out[path] = text
	}
	return out
}

// Paths returns the paths of all values that were given, sorted.
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
