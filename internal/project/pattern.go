package project

import (
	"maps"
	"regexp"
	"slices"
	"strings"
	"unicode/utf8"

	"thenar/internal/chart"
	"thenar/internal/fault"
	"thenar/internal/plain"
)

// PatternTexts is what a designer wrote for the pattern of a mitt, and how it is put: a flat
// map of texts. Nil if there is nothing.
type PatternTexts map[string]string

// The keys of PatternTexts that there is one of.
const (
	PatternTitle     = "title"     // in place of the mitt's name
	PatternAbout     = "about"     // a line under the title
	PatternDesigner  = "designer"  // a name
	PatternCopyright = "copyright" // a line
	PatternStory     = "story"     // a paragraph of the title page
	PatternNotes     = "notes"     // to the knitter
	PatternWording   = "wording"   // "short", "full" or "both"
	PatternTold      = "told"      // "rhythm" or "rounds"
	PatternHands     = "hands"     // "right", "left" or "both"
)

// The beginnings of the keys that there may be many of. After the first two comes the key
// of a line of the text, after the last two the number of a photograph.
const (
	PatternLine    = "line "    // a sentence in place of a line
	PatternAfter   = "after "   // a sentence after it
	PatternWas     = "was "     // before one of those: a mark of what the program said there when it was written
	PatternPhoto   = "photo "   // which photograph
	PatternCaption = "caption " // the line under it
)

// Bounds of PatternTexts, in characters.
const (
	MostPatternTexts  = 500
	LongestSentence   = 2000 // with the marks of its numbers
	LongestParagraph  = 4000
	longestPatternKey = 160
	mostPatternText   = 60_000 // of all texts together
)

// patternChoices are the values of the keys that choose.
var patternChoices = map[string][]string{
	PatternWording: {"short", "full", "both"},
	PatternTold:    {"rhythm", "rounds"},
	PatternHands:   {"right", "left", "both"},
}

var (
	lineKey     = regexp.MustCompile(`^(?:was )?(?:line|after) [a-z0-9][a-z0-9/_.~-]*$`)
	photoKey    = regexp.MustCompile(`^photo (?:[1-9]|1[0-9]|20)$`)
	captionKey  = regexp.MustCompile(`^caption (?:[1-9]|1[0-9]|20)$`)
	patternText = map[string]int{
		PatternTitle: LongestName, PatternAbout: 200, PatternDesigner: 120, PatternCopyright: 200,
		PatternStory: LongestParagraph, PatternNotes: LongestParagraph,
		PatternWording: 20, PatternTold: 20, PatternHands: 20,
	}
)

// longestPatternText returns the most characters of the text at a key; 0 if no pattern has
// one there.
func longestPatternText(key string) int {
	switch {
	case utf8.RuneCountInString(key) > longestPatternKey:
		return 0
	case lineKey.MatchString(key):
		return LongestSentence
	case photoKey.MatchString(key):
		return 200
	case captionKey.MatchString(key):
		return 300
	}
	return patternText[key]
}

// Given returns the trimmed text at a key, or "" if there is none.
func (t PatternTexts) Given(key string) string { return strings.TrimSpace(t[key]) }

// With returns the texts with another one at a key; an empty one takes it away.
func (t PatternTexts) With(key, text string) PatternTexts {
	out := maps.Clone(t)
	if out == nil {
		out = PatternTexts{}
	}
	if out[key] = text; strings.TrimSpace(text) == "" {
		delete(out, key)
	}
	return out
}

// Check refuses what can't be kept: a key that no pattern has, a text that is too long or
// holds control characters, and a choice that there isn't. Faults name the key.
func (t PatternTexts) Check(faults *fault.Fields) {
	all := 0
	for _, key := range slices.Sorted(maps.Keys(t)) {
		text, longest := t[key], longestPatternText(key)
		all += utf8.RuneCountInString(text)
		why := ""
		switch choices := patternChoices[key]; {
		case longest == 0:
			faults.Add("pattern", "has no text of this name: %.60q", key)
		case longest == LongestParagraph:
			why = plain.Lines(text, longest)
		case choices != nil && !slices.Contains(choices, text):
			why = "is not one of the choices: " + strings.Join(choices, ", ")
		default:
			why = plain.Line(text, longest)
		}
		if why != "" {
			faults.Add(key, "%s", why)
		}
	}
	if n := len(t); n > MostPatternTexts {
		faults.Add("pattern", "has %d texts; %d are the most", n, MostPatternTexts)
	}
	if all > mostPatternText {
		faults.Add("pattern", "has %d characters in all its texts; %d are the most", all, mostPatternText)
	}
}

// patternColumn begins the column of an edit of the pattern's texts; its key follows.
const patternColumn = "pattern."

// PatternEdit returns the key of the text that an edit of the sheet sets, and how long the
// text may be; ok is false for another edit, and for a key that no pattern has.
func PatternEdit(column string) (key string, longest int, ok bool) {
	key, ok = strings.CutPrefix(column, patternColumn)
	if !ok {
		return "", 0, false
	}
	longest = longestPatternText(key)
	return key, longest, longest > 0
}

// Difference returns the edits that turn t into another pattern's texts.
func (t PatternTexts) Difference(to PatternTexts) (edits []chart.Edit) {
	both := maps.Clone(map[string]string(t))
	if both == nil {
		both = map[string]string{}
	}
	maps.Copy(both, to)
	for _, key := range slices.Sorted(maps.Keys(both)) {
		if t[key] != to[key] {
			edits = append(edits, chart.Edit{Layer: chart.Sheet, Column: patternColumn + key, Value: to[key]})
		}
	}
	return edits
}
