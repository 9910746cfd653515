package sheet

import (
	"regexp"
	"slices"
	"strings"

	"thenar/internal/units"
)

// Question asks about a measurement that lies outside the usual range: nothing
// is printed for it until somebody says that it is right.
type Question struct {
	Path    string
	Text    string // as it was typed
	Value   string // the same, with its unit
	Instead string // what may be meant, as it would be typed; empty: nothing near
	Words   string // the question
}

// comma is a decimal comma.
var comma = regexp.MustCompile(`^\d*,\d+$`)

// Comma reports whether its numbers are typed with a decimal comma.
func (s Sheet) Comma() bool {
	for _, text := range s {
		if strings.Contains(text, ",") && comma.MatchString(strings.TrimSpace(text)) {
			return true
		}
	}
	return false
}

// Questions asks about the hand of a sheet, in its unit and with a decimal
// comma where that is how its numbers are written. It leaves out what somebody
// is sure of: texts by their paths, which hold as long as the text does.
func (s Sheet) Questions(sure map[string]string, comma bool) []Question {
	h, err := s.Hand()
	if err != nil {
		return nil
	}
	var list []Question
	for _, q := range h.Queries() {
		text := s.Given(q.Field)
		if !q.Outside() || sure[q.Field] == text {
			continue
		}
		u := s.Unit()
		write := func(l units.Length) string {
			text := brief(l, u)
			if comma {
				text = strings.Replace(text, ".", ",", 1)
			}
			return text
		}
		ask := Question{Path: q.Field, Text: text, Value: text + " " + string(u)}
		ask.Words = fieldWords(q.Field) + ": " + ask.Value + " lies outside the usual " + write(q.Low) + " to " + write(q.Top) + " " + string(u) + "."
		if instead := h.Instead(q, u); instead != 0 {
			ask.Instead = write(instead)
			ask.Words += " " + ask.Instead + "?"
		} else {
			ask.Words += " Is it right?"
		}
		list = append(list, ask)
	}
	return list
}

// brief is a length to its last digit if it has two decimals at the most, else
// at the fineness of a tape.
func brief(l units.Length, u units.Unit) string {
	exact := l.Exact(u)
	if _, decimals, _ := strings.Cut(exact, "."); len(decimals) > 2 || u == units.IN {
		return l.Format(u)
	}
	return exact
}

// fieldWords is the name of a field of the hand, in words.
func fieldWords(path string) string {
	name := strings.ReplaceAll(path[strings.LastIndex(path, ".")+1:], "_", " ")
	return strings.ToUpper(name[:1]) + name[1:]
}

// Answer takes an answer to a question: whoever is sure of a text keeps it, and
// else what may be meant stands in its place. A question that is asked no more,
// or about another text, leaves everything as it is.
func Answer(s Sheet, sure map[string]string, asked []Question, path, text string, yes bool) (Sheet, map[string]string) {
	i := slices.IndexFunc(asked, func(q Question) bool { return q.Path == path && q.Text == text })
	if i < 0 {
		return s, sure
	}
	if !yes {
		if asked[i].Instead != "" {
			s = s.Clone()
			s[path] = asked[i].Instead
		}
		return s, sure
	}
	kept := map[string]string{path: text}
	for p, t := range sure {
		if p != path {
			kept[p] = t
		}
	}
	return s, kept
}
