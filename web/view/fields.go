package view

import (
	"fmt"
	"math"
	"strconv"
	"strings"

	"thenar/internal/project"
)

// Field is one field of the measure form. Its name is the path of the sheet,
// so that a fault finds its place by itself.
type Field struct {
	Path    string // in a group of rows: the key in a row
	Label   string
	Help    string   // where the tape goes, or what is meant
	Unit    string   // shown behind the field
	Choices []Choice // of a select; a text field without
	Need    bool     // a plan can't do without it
	Steps   []Choice // named values that a slider offers beside the field
	Day     bool     // a date
	Colour  bool     // a colour, which can be picked beside the field
}

// Choice is one option of a select.
type Choice struct{ Value, Words string }

// Group is some fields under one heading.
type Group struct {
	Title  string
	Note   string
	Fields []Field
	Folded bool // shown when asked for

	Rows string // path of the list of which the fields are a row
	Row  string // what one row is called
	Max  int    // rows
	More int    // fields of a row that are shown at once; 0: all
}

// paths are the paths of a group's fields; of a group of rows, those of row i.
func (g Group) paths(i int) []string {
	paths := make([]string, len(g.Fields))
	for k, f := range g.Fields {
		paths[k] = g.path(f, i)
	}
	return paths
}

// path is that of a field; in a group of rows, in row i.
func (g Group) path(f Field, i int) string {
	if g.Rows == "" {
		return f.Path
	}
	return fmt.Sprintf("%s[%d].%s", g.Rows, i, f.Path)
}

// find is the group and the field of a path, and its row; ok is false for a
// path that the form does not show.
func find(path string) (g Group, f Field, row int, ok bool) {
	for _, g := range groups {
		key := path
		if g.Rows != "" {
			rest, below := strings.CutPrefix(path, g.Rows+"[")
			index, name, _ := strings.Cut(rest, "].")
			n, err := strconv.Atoi(index)
			if !below || err != nil {
				continue
			}
			key, row = name, n
		}
		for _, f := range g.Fields {
			if f.Path == key {
				return g, f, row, true
			}
		}
	}
	return Group{}, Field{}, 0, false
}

// first are the fields of a row that are shown at once, more those that are
// shown when asked for.
func (g Group) first() []Field {
	if g.More == 0 {
		return g.Fields
	}
	return g.Fields[:g.More]
}

func (g Group) more() []Field { return g.Fields[len(g.first()):] }

// moreGiven opens what is folded of a row in which something was typed or is
// wrong.
func (m Mitt) moreGiven(g Group, i int) bool {
	for _, f := range g.more() {
		given := m.Doc.Sheet.Given(g.path(f, i))
		if m.Answer.Faults[g.path(f, i)] != "" || given != "" && given != defaults[f.Path] {
			return true
		}
	}
	return false
}

// shown is how many rows of a list the form shows: those that were given and
// one to go on with.
func (m Mitt) shown(g Group) int {
	return min(m.Doc.Sheet.Rows(g.Rows)+1, g.Max)
}

// defaults are what a select shows where the sheet says nothing, by path; in
// a row by its key.
var defaults = map[string]string{
	"kind": "fingerless", "unit": "cm", "worked": "round", "washed": "false", "on_needles": "false", "counted_to": "0.5",
	"stitch.rib": "2", "stitch.both_edges": "true", "hand.reference": "both", "yarn.length_unit": "m", "yarn.swatch_kept": "false", "chart.symbols": "trade",
}

// value is what a field shows: the text as it was typed. A swatch of which
// nothing is known yet begins as the plan wants it, washed.
func value(d project.Document, path string) string {
	if path == "side" {
		return string(d.Side)
	}
	if text, ok := d.Sheet[path]; ok {
		return text
	}
	if row, key, ok := strings.Cut(path, "]."); ok {
		if key == "washed" && d.Sheet.Given(row+"].stitches") == "" {
			return "true"
		}
		return defaults[key]
	}
	return defaults[path]
}

// choices are a select's options; a value that is none of them stays as one,
// so that nothing typed elsewhere is lost.
func choices(f Field, value string) []Choice {
	for _, c := range f.Choices {
		if c.Value == value {
			return f.Choices
		}
	}
	return append([]Choice{{value, value}}, f.Choices...)
}

// faultID is the element that holds a field's message.
func faultID(path string) string { return "fault-" + path }

// fieldID is the element of the field.
func fieldID(path string) string { return "field-" + path }

// nearest is the step that is nearest to a value; the middle one for none.
func nearest(steps []Choice, value string) int {
	typed, err := strconv.ParseFloat(strings.Replace(value, ",", ".", 1), 64)
	if err != nil {
		return len(steps) / 2
	}
	best, least := 0, math.Inf(1)
	for i, c := range steps {
		at, _ := strconv.ParseFloat(c.Value, 64) // steps are numbers
		if off := math.Abs(at - typed); off < least {
			best, least = i, off
		}
	}
	return best
}
