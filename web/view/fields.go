package view

import (
	"cmp"
	"fmt"
	"math"
	"slices"
	"strconv"
	"strings"

	"thenar/internal/project"
	"thenar/internal/sheet"
	"thenar/internal/units"
	"thenar/internal/words"
)

// Field is one field of the measure form. It is named after its path in the
// sheet, so that a fault finds its field.
type Field struct {
	Path    string // within a row, if the group has rows
	Label   string
	Help    string   // where the tape goes, or what is meant
	Unit    string   // shown behind the field
	Choices []Choice // of a select; a text field if there are none
	Usual   string   // the value for which an empty choice stands
	Need    bool     // a plan can't do without it
	Steps   []Choice // named values that a slider offers beside the field
	Day     bool     // a date
	Colour  bool     // a colour, which can be picked beside the field
	Useless bool     // a mitt that is made so has no use for it
	Without []string // values that so small a hand is not offered
}

// Choice is one option of a select.
type Choice struct{ Value, Words string }

// Group is the fields under one heading.
type Group struct {
	Title  string
	Note   string
	Fields []Field
	Terms  []words.Term // of the trade, explained under the note
	Folded bool         // shown only when asked for
	Ladder bool         // its numbers stand on the ladder, too
	Table  *fieldTable  // how its first fields are laid out; nil: one below the other
	AtOnce []Choice     // several of its fields at once: the value is what they are to be, as a query
	Yarns  bool         // the palette, to which another mitt's yarns can be brought
	Desk   Desk         // where it is shown; FitDesk if empty

	Rows string // path of a list, if each row of it has these fields
	Row  string // what one row is called
	Max  int    // rows
	More int    // how many fields of a row are shown at once; 0 for all
}

// LastOpen reports whether the group is the last that is shown unfolded.
func (g Group) LastOpen() bool {
	var last Group
	for _, one := range groups {
		if !one.Folded {
			last = one
		}
	}
	return g.Title == last.Title
}

// paths returns the paths of the group's fields, in row i if it has rows.
func (g Group) paths(i int) []string {
	paths := make([]string, len(g.Fields))
	for k, f := range g.Fields {
		paths[k] = g.path(f, i)
	}
	return paths
}

// inTable returns how many of the group's fields stand in its table.
func (g Group) inTable() int {
	n := 0
	if g.Table != nil {
		for _, line := range g.Table.Lines {
			for _, path := range line.Paths {
				if path != "" {
					n++
				}
			}
		}
	}
	return n
}

// at returns the group's field of a path.
func (g Group) at(path string) Field {
	return g.Fields[slices.IndexFunc(g.Fields, func(f Field) bool { return f.Path == path })]
}

// path returns the path of a field, in row i if the group has rows.
func (g Group) path(f Field, i int) string {
	if g.Rows == "" {
		return f.Path
	}
	return fmt.Sprintf("%s[%d].%s", g.Rows, i, f.Path)
}

// find returns the group, the field and the row of a path. ok is false for a
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

// terms returns the terms in which a mitt's sentences are put.
func (m Mitt) terms() words.Terms { return termsOf(m.Doc) }

func termsOf(d project.Document) words.Terms { return words.TermsOf(d.Sheet.Given(sheet.PathTerms)) }

// placeholder returns what the plan takes where nothing is typed: what it fills
// in for a measurement, or its own choice of a number.
func (m Mitt) placeholder(path string) string {
	return cmp.Or(m.Answer.Filled[path].Value, m.Answer.planned()[path])
}

// note returns what stands under a group's heading, in the mitt's terms and its
// unit.
func (m Mitt) note(g Group) string {
	u := m.Doc.Sheet.Unit()
	return strings.NewReplacer("{over}", sheet.GaugeOver(u)+" "+string(u), "{inch}", inchWords(u)).Replace(m.terms().Say(g.Note))
}

// inchWords returns the longest float in the sheet's unit.
func inchWords(u units.Unit) string {
	switch u {
	case units.IN:
		return "an inch"
	case units.MM:
		return "25 mm"
	}
	return "2.5 cm"
}

// lays reports whether the page shows a group.
func (m Mitt) lays(g Group) bool { return m.Form != "" || cmp.Or(g.Desk, FitDesk) == m.Desk }

// rows returns how many rows of a group the form has.
func (m Mitt) rows(g Group) int {
	if g.Rows == "" {
		return 1
	}
	return m.shown(g)
}

// first returns the fields of a row that are shown at once, and more the fields
// that are shown only when asked for.
func (g Group) first() []Field {
	if g.More == 0 {
		return g.Fields
	}
	return g.Fields[:g.More]
}

func (g Group) more() []Field { return g.Fields[len(g.first()):] }

// moreGiven reports whether something in the folded fields of a row was typed
// or is wrong, so that they are shown unfolded.
func (m Mitt) moreGiven(g Group, i int) bool {
	for _, f := range g.more() {
		given := m.Doc.Sheet.Given(g.path(f, i))
		if m.Answer.Faults[g.path(f, i)] != "" || given != "" && given != defaults[f.Path] {
			return true
		}
	}
	return false
}

// shown returns how many rows of a list the form shows: those that were given,
// and an empty one to go on with.
func (m Mitt) shown(g Group) int {
	return min(m.Doc.Sheet.Rows(g.Rows)+1, g.Max)
}

// defaults are what a select shows if the sheet says nothing, by path, or by
// the key within a row.
var defaults = map[string]string{
	"kind": "fingerless", "terms": "us", "unit": "cm", "worked": "round", "washed": "false", "on_needles": "false", "counted_to": "0.5",
	"stitch.rib": "2", "stitch.both_edges": "true", "hand.reference": "both", "yarn.length_unit": "m", "yarn.swatch_kept": "false", "chart.symbols": "trade",
}

// value returns what a field shows: the text as it was typed. A swatch of which
// nothing is known yet begins as washed, since the plan wants that.
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

// choices returns the options of a select. A value that is none of them becomes
// one, so that nothing typed elsewhere is lost; the usual one may be written out.
func choices(f Field, value string) []Choice {
	if f.Usual != "" && value == f.Usual {
		list := slices.Clone(f.Choices)
		list[0].Value = f.Usual
		return list
	}
	for _, c := range f.Choices {
		if c.Value == value {
			return f.Choices
		}
	}
	return append([]Choice{{value, value}}, f.Choices...)
}

// faultID returns the ID of the element that holds a field's message.
func faultID(path string) string { return "fault-" + path }

// fieldID returns the ID of the element of a field.
func fieldID(path string) string { return "field-" + path }

// nearest returns the index of the step nearest to a value, or of the middle
// one if the value is no number.
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
