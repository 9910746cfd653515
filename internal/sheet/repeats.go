package sheet

import (
	"errors"
	"strings"
	"unicode/utf8"

	"thenar/internal/fault"
	"thenar/internal/mitt"
	"thenar/internal/repeat"
	"thenar/internal/stitch"
)

// PathRepeats is the list of motifs that are laid by rule. A row of which nothing is given
// is left out; the others keep their numbers.
const PathRepeats = "repeats"

// RepeatPath returns the path of a field of a repeat, counted from 0.
func RepeatPath(i int, key string) string { return row(PathRepeats, i) + "." + key }

// sections are where a repeat may be laid.
func sections() []string {
	list := []string{string(repeat.Whole)}
	for _, p := range stitch.Parts() {
		list = append(list, string(p))
	}
	return list
}

func words[T ~string](list []T) []string {
	out := make([]string, len(list))
	for i, w := range list {
		out[i] = string(w)
	}
	return out
}

// repeatKeys are the keys of one repeat. A drawing is kept as its rows with strokes between
// them: "..a./.a.a". was is what became of it when somebody last looked, as it was said.
var repeatKeys = []node{
	{key: "name", kind: text},
	{key: "motif", kind: drawn},
	{key: "stitches", kind: drawn},
	{key: "section", kind: choice, words: sections()},
	{key: "from", kind: whole},
	{key: "to", kind: whole},
	{key: "over", kind: choice, words: words(repeat.Overs)},
	{key: "columns", kind: drawn},
	{key: "set", kind: choice, words: words(repeat.Sets)},
	{key: "offset", kind: whole},
	{key: "gusset", kind: choice, words: words(repeat.InGussets)},
	{key: "left", kind: choice, words: words(repeat.OnLefts)},
	{key: "cut", kind: flag},
	{key: "off", kind: flag},
	{key: "was", kind: text},
}

// RepeatKeys returns the keys of a repeat.
func RepeatKeys() []string {
	list := make([]string, len(repeatKeys))
	for i := range repeatKeys {
		list[i] = repeatKeys[i].key
	}
	return list
}

// Numbered is a repeat with its number in the list, from 0.
type Numbered struct {
	At int
	repeat.Repeat
	Was string // what became of it when somebody last looked; empty: not known
}

// Repeats reads the repeats, whatever the rest of the sheet is like. Those with a fault are
// left out; Request reports it.
func (s Sheet) Repeats() []Numbered { return s.reader().repeats() }

// repeats reads the repeats in the order in which they are laid.
func (r *reader) repeats() []Numbered {
	var list []Numbered
	for i := range r.sheet.Rows(PathRepeats) {
		if at := row(PathRepeats, i); r.sheet.has(at) {
			before := len(r.faults)
			if one := r.repeat(at); len(r.faults) == before {
				list = append(list, Numbered{i, one, r.sheet.Given(at + ".was")})
			}
		}
	}
	return list
}

// repeat reads one repeat.
func (r *reader) repeat(at string) repeat.Repeat {
	n := tree.find(PathRepeats)
	one := repeat.Usual(repeat.Motif{})
	var wrong repeat.Wrong
	if one.Motif, wrong = repeat.Drawn(r.drawn(at+".motif"), r.drawn(at+".stitches")); wrong.Why != "" {
		path := at + ".motif"
		if wrong.Stitches {
			path = at + ".stitches"
		}
		r.faults.Add(path, "%s", wrong.Why)
	}
	if one.Name = r.sheet.Given(at + ".name"); utf8.RuneCountInString(one.Name) > LongestText {
		r.faults.Add(at+".name", "has %d characters; %d are the most", utf8.RuneCountInString(one.Name), LongestText)
	}
	chosen(r, at, n, "section", &one.Section)
	chosen(r, at, n, "over", &one.Over)
	chosen(r, at, n, "set", &one.Set)
	chosen(r, at, n, "gusset", &one.Gusset)
	chosen(r, at, n, "left", &one.OnLeft)
	one.From = r.wholeOr(at+".from", 1, maxRounds, one.From)
	if one.To = r.wholeOr(at+".to", -maxRounds, maxRounds, one.To); one.To == 0 {
		r.faults.Add(at+".to", "is 0; write a round from 1, or -1 for the last, -2 for the one before it")
	}
	one.Offset = r.wholeOr(at+".offset", -repeat.MaxSide, repeat.MaxSide, 0)
	one.Cut, one.Off = r.flag(at+".cut", false), r.flag(at+".off", false)
	r.between(at, &one)
	if one.Over == repeat.Gusset && one.Gusset == repeat.StaysOut {
		one.Gusset = repeat.Grows
	}
	if one.Set == repeat.KeptMultiple && one.Over != repeat.Round {
		r.faults.Add(at+".set", "is multiple, which goes with the whole round; choose round over what it is laid, or another set")
	}
	switch {
	case one.Gusset != repeat.StaysOut && !one.MeetsGusset():
		r.faults.Add(at+".gusset", "is %s, but the motif meets no gusset there; leave it out, or lay it over the whole round", one.Gusset)
	case one.Over == repeat.Gusset && r.sheet.Given(at+".gusset") == string(repeat.StaysOut):
		r.faults.Add(at+".gusset", "is out, but the motif lies in the gusset alone; write grow, mirror or edge")
	}
	return one
}

// maxRounds is the greatest number of a round that may be given.
const maxRounds = 2_000

// between reads the two columns between which a repeat lies.
func (r *reader) between(at string, one *repeat.Repeat) {
	names := r.drawn(at + ".columns")
	switch {
	case one.Over != repeat.Columns && names != nil:
		r.faults.Add(at+".columns", "are given, but over is %s; write columns there, or leave these out", one.Over)
	case one.Over == repeat.Columns && len(names) == 1:
		r.faults.Add(at+".columns", `has one; write two, such as ["H3", "H18"]`)
	case one.Over == repeat.Columns && len(names) > 2:
		r.faults.Add(at+".columns", `has %d; write two, such as ["H3", "H18"]`, len(names))
	case one.Over == repeat.Columns && len(names) == 0:
		r.faults.Add(at+".columns", `are missing; write two, such as ["H3", "H18"]`)
	case len(names) == 2:
		for _, name := range names {
			if !repeat.Column(name) {
				r.faults.Add(at+".columns", "has %q; write a column such as H3", clip(name))
				return
			}
		}
		one.Between = [2]string{names[0], names[1]}
	}
}

// chosen reads a choice of a row, if one is given.
func chosen[T ~string](r *reader, at string, n *node, key string, into *T) {
	if word := r.choice(at+"."+key, n.find(key)); word != "" {
		*into = T(word)
	}
}

// drawn reads the rows of a drawing; nil if none is given.
func (r *reader) drawn(path string) []string {
	text := r.sheet.Given(path)
	if text == "" {
		return nil
	}
	return strings.Split(text, betweenRows)
}

// betweenRows parts the rows of a drawing in the text that is kept of it.
const betweenRows = "/"

// multiples makes the multiple of the hand's stitches the least that also takes every
// repeat whole that is to be kept so.
func (r *reader) multiples(list []Numbered, st *mitt.Stitches) {
	for _, one := range list {
		if one.Set != repeat.KeptMultiple || one.Off || st.Repeat < 1 {
			continue
		}
		wide, path := one.Motif.Wide, RepeatPath(one.At, "set")
		n, ok := mitt.Stitches{Repeat: st.Repeat, Offset: st.Offset}.With(wide)
		switch {
		case !ok:
			r.faults.Add(path, "asks for a multiple of %d, but stitch.offset is %d to %d; set it to 0", wide, st.Offset, st.Repeat)
		case n.Repeat > maxWhole:
			r.faults.Add(path, "asks for a multiple of %d with the others; %d is the most", n.Repeat, maxWhole)
		default:
			st.Repeat, st.Offset = n.Repeat, n.Offset
		}
	}
}

// Longest returns how many characters the text at a path may have.
func Longest(path string) int {
	if rest, ok := strings.CutPrefix(path, PathRepeats+"["); ok {
		_, key, _ := strings.Cut(rest, "].")
		if key == "motif" || key == "stitches" {
			return repeat.MaxSide * (repeat.MaxSide + 1)
		}
	}
	if strings.HasPrefix(path, PathKnitted+".") {
		return maxKnittedText
	}
	return LongestText
}

// LongestText is the greatest number of characters in most fields of a sheet.
const LongestText = 200

// WithoutNumbers returns the repeats alone.
func WithoutNumbers(list []Numbered) []repeat.Repeat {
	var alone []repeat.Repeat
	for _, one := range list {
		alone = append(alone, one.Repeat)
	}
	return alone
}

// GivenOfRepeat returns the texts that are given of a repeat, by their keys.
func (s Sheet) GivenOfRepeat(i int) map[string]string {
	given := map[string]string{}
	for _, k := range repeatKeys {
		if text := s.Given(RepeatPath(i, k.key)); text != "" {
			given[k.key] = text
		}
	}
	return given
}

// RepeatFaults returns what is wrong with a repeat, or with the sheet because of it: where
// the others have no fault.
func (s Sheet) RepeatFaults(i int) error {
	var own, all fault.Fields
	if _, err := s.Request(); !errors.As(err, &all) {
		return nil
	}
	for _, f := range all {
		if strings.HasPrefix(f.Path, RepeatPath(i, "")) {
			own = append(own, f)
		}
	}
	return own.Err()
}
