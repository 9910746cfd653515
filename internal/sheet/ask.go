package sheet

import (
	"regexp"
	"slices"
	"strings"

	"thenar/internal/units"
)

// Question asks about a measurement that lies outside the usual range. Nothing is
// printed until somebody says that the measurement is right.
type Question struct {
	Path    string
	Text    string // as it was typed
	Value   string // Text with its unit
	Instead string // what may be meant, as it would be typed; empty: no guess
	Words   string // the question
}

// comma matches a number with a decimal comma.
var comma = regexp.MustCompile(`^\d*,\d+$`)

// Comma reports whether any number of the sheet is typed with a decimal comma.
func (s Sheet) Comma() bool {
	for _, text := range s {
		if strings.Contains(text, ",") && comma.MatchString(strings.TrimSpace(text)) {
			return true
		}
	}
	return false
}

// Questions asks about the unusual measurements of the hand, in the sheet's unit
// and with a decimal comma if comma is set. It leaves out those of which somebody
// is sure: sure holds their texts by path, and a changed text is asked about
// again.
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

// brief returns a length in full if it is metric and has at most two decimals,
// else rounded as on a tape.
func brief(l units.Length, u units.Unit) string {
	exact := l.Exact(u)
	if _, decimals, _ := strings.Cut(exact, "."); len(decimals) > 2 || u == units.IN {
		return l.Format(u)
	}
	return exact
}

// fieldWords returns the name of a field of the hand, in words.
func fieldWords(path string) string {
	name := strings.TrimPrefix(path, "hand.")
	if finger, of := strings.CutPrefix(name, "fingers."); of {
		name = strings.Replace(finger, ".", " finger, ", 1)
	} else if pair, of := strings.CutPrefix(name, "crotches."); of {
		name = "wrist to where " + strings.Replace(pair, "_", " and ", 1) + " finger part"
	}
	name = strings.ReplaceAll(name, "_", " ")
	return strings.ToUpper(name[:1]) + name[1:]
}

// Answer applies the answer to a question and returns the sheet and the texts that
// somebody is sure of. A yes adds the text to those; a no puts what may be meant
// in its place. Nothing changes if the question is no longer asked, or is asked
// about another text.
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
