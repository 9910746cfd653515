package view

import (
	"fmt"
	"slices"
	"strconv"
	"strings"

	"thenar/internal/hand"
	"thenar/internal/mitt"
	"thenar/internal/sheet"
	"thenar/internal/stitch"
	"thenar/internal/words"
)

// What a field is called depends on how the mitt is made: fixed numbers are called by
// their names, and a few others lie beside the gusset, or count rounds.

// calledBy says what a field is called in a mitt that is made in one way.
var calledBy = callings()

func callings() map[string]func(mitt.Names, Field) Field {
	list := map[string]func(mitt.Names, Field) Field{
		hand.FieldGussetLength: func(w mitt.Names, f Field) Field {
			return withoutGusset(w, f, "Wrist bone to thumb", "along the thumb’s side, up to where thumb and hand part")
		},
		"length.cuff_plain": func(w mitt.Names, f Field) Field {
			return withoutGusset(w, f, "Plain cuff", "between the cuff’s edge and "+above(w))
		},
		"length.above_gusset": func(w mitt.Names, f Field) Field {
			label, _, _ := strings.Cut(w.Label(mitt.RoundsAboveGusset), ",")
			return withoutGusset(w, f, label, f.Help)
		},
		"ease.gusset": func(w mitt.Names, f Field) Field {
			f.Useless = !w.Has(mitt.Increases)
			return f
		},
		mitt.PathCuff:           asIs, // and see Answer.named
		sheet.PathKind:          asIs,
		mitt.PathCapEase:        onlyCapped,
		mitt.PathCapLength:      onlyCapped,
		"gauge.swatches.rounds": inRows,
		"chart.colours":         inRows,
		"yarn.swatch_rounds":    inRows,
	}
	for _, path := range fingerPaths() {
		list[path] = onlyFingers
	}
	return list
}

func asIs(_ mitt.Names, f Field) Field { return f }

// withoutGusset calls a field otherwise in a mitt without a gusset.
func withoutGusset(w mitt.Names, f Field, label, help string) Field {
	if !w.Has(mitt.Increases) {
		f.Label, f.Help = label, help
	}
	return f
}

// above returns what lies above the plain cuff of a mitt without a gusset.
func above(w mitt.Names) string {
	switch {
	case !w.Has(mitt.GussetRounds):
		return "the hand"
	case w.Has(mitt.Held):
		return "the base of the thumb"
	}
	return "the opening"
}

// inRows calls a field that counts rounds by rows, in a flat mitt.
func inRows(w mitt.Names, f Field) Field {
	f.Label, f.Help = w.InRows(f.Label), w.InRows(f.Help)
	return f
}

// called returns the name by which a field is called in different ways; empty if it is
// always called the same.
func (g Group) called(f Field) string {
	key := f.Path
	if g.Rows != "" {
		key = g.Rows + "." + f.Path
	}
	if pinned(key) || calledBy[key] != nil {
		return key
	}
	return ""
}

// named returns a field as it is called in a mitt that is made so.
func (g Group) named(w mitt.Names, f Field) Field {
	key := g.called(f)
	if n, number := mitt.NumberAt(key); number {
		f.Label, f.Help, f.Useless = w.Label(n), w.Help(n), !w.Has(n)
	} else if by := calledBy[key]; by != nil {
		f = by(w, f)
	}
	return f
}

// calls is how a field is called, for the script.
type calls struct {
	Label   string   `json:"label"`
	Help    string   `json:"help"`
	Useless bool     `json:"useless"`
	Without []string `json:"without,omitempty"`
}

// named is that in the group, with what the plan says of it.
func (a Answer) named(g Group, f Field) Field {
	f = g.named(a.Names, f)
	if a.Out == nil {
		return f
	}
	switch f.Path {
	case mitt.PathCuff:
		f.Help = a.Out.Terms.Say(a.Out.Plan.Passes())
	case sheet.PathKind:
		for _, c := range f.Choices {
			if kind := mitt.Kind(c.Value); kind.For(a.Out.Plan.Hand.Length) != kind {
				f.Without = append(f.Without, c.Value)
			}
		}
	}
	return f
}

// allCalled returns how the fields are called that are not always called the same.
func (a Answer) allCalled() map[string]calls {
	list := map[string]calls{}
	for _, g := range groups {
		for _, f := range g.Fields {
			if key := g.called(f); key != "" {
				f = a.named(g, f)
				list[key] = calls{f.Label, f.Help, f.Useless, f.Without}
			}
		}
	}
	return list
}

// label returns what a field is called in the form of this mitt, or the path itself if
// the form does not show it.
func (a Answer) label(path string) string { return labelIn(a.Names, path) }

// Label returns what a field is called in the form of a mitt that is made the usual way.
func Label(path string) string { return labelIn(mitt.Names{}, path) }

func labelIn(w mitt.Names, path string) string {
	g, f, row, ok := find(path)
	number, knitted := strings.CutPrefix(path, "worked.")
	kept, made := makeField(path)
	f = g.named(w, f)
	switch {
	case !ok && made:
		return kept.Label
	case knitted && !ok:
		return "On the needles: " + strings.ReplaceAll(number, "_", " ")
	case !ok:
		return path
	case g.Rows == "" && g.Title == f.Label:
		return f.Label
	case g.Rows == "":
		return g.Title + ": " + f.Label
	case row == 0 && g.Rows == "gauge.swatches":
		return g.Row + ": " + f.Label
	}
	return fmt.Sprintf("%s %d: %s", g.Row, row+1, f.Label)
}

// plural returns several of what a number counts: "rows".
func plural(noun string) string {
	if noun == "stitch" {
		return "stitches"
	}
	return noun + "s"
}

// unitWords names what a number counts, behind its field.
func unitWords(w mitt.Names, n mitt.Number) string {
	switch n.Measure() {
	case mitt.InStitches, mitt.InRounds:
		return plural(w.Noun(n))
	case mitt.InTimes:
		return "times"
	case mitt.Between:
		return plural(w.Noun(n)) + " from one to the next"
	}
	return ""
}

// bareName returns the name of a number within a sentence, without what it counts, and
// whether it counts rounds or rows.
func bareName(w mitt.Names, n mitt.Number) (name string, counts bool) {
	name = lower(w.Label(n))
	for _, noun := range []string{stitch.AllRound.Noun(), stitch.RightSide.Noun()} {
		if part, ok := strings.CutSuffix(name, ", "+plural(noun)); ok {
			return part, true
		}
	}
	return name, false
}

// useless reports whether a field has no use in the mitt and holds nothing, so that it is
// not shown.
func (m Mitt) useless(f Field, path string) bool {
	return f.Useless && m.Doc.Sheet.Given(path) == "" && m.Answer.Faults[path] == ""
}

// spoken leaves out the terms of a group that the mitt has nothing to do with.
func (m Mitt) spoken(g Group) []words.Term {
	if m.Answer.Names.Has(mitt.Increases) {
		return g.Terms
	}
	return slices.DeleteFunc(slices.Clone(g.Terms), func(t words.Term) bool { return t == words.TermGusset })
}

// worded replaces the path that a message may begin with by the name of the
// field in the form.
func worded(w mitt.Names, message string) string {
	path, rest, found := strings.Cut(message, ": ")
	if !found {
		return message
	}
	if inForm(path) {
		return labelIn(w, path) + ": " + rest
	}
	for _, g := range groups {
		index, isRow := strings.CutPrefix(path, g.Rows+"[")
		if n, err := strconv.Atoi(strings.TrimSuffix(index, "]")); g.Rows != "" && isRow && err == nil {
			return fmt.Sprintf("%s %d: %s", g.Row, n+1, rest)
		}
		if g.Rows != "" && path == g.Rows {
			return g.Title + ": " + rest
		}
	}
	return message
}
