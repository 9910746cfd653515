package view

import (
	"cmp"
	"regexp"
	"strings"

	"thenar/internal/app"
	"thenar/internal/pattern"
	"thenar/internal/project"
	"thenar/internal/words"
)

// SentencesBelow is the address of a pattern's sentences, below that of its mitt.
const SentencesBelow = DesignBelow + "/sentences"

// Sentences is the page of a pattern's sentences.
type Sentences struct {
	app.Sentences
	Message string // why nothing was saved
}

// SentenceAt returns the place of a sentence's line on the page: its fragment.
func SentenceAt(key string) string {
	if _, place, ok := strings.Cut(key, " "); ok {
		key = place
	}
	return "at-" + notInFragment.ReplaceAllString(key, "-")
}

var notInFragment = regexp.MustCompile(`[^a-z0-9]+`)

// IsSentence reports whether a field of the form is a sentence.
func IsSentence(name string) bool {
	return strings.HasPrefix(name, project.PatternLine) || strings.HasPrefix(name, project.PatternAfter)
}

// places returns where a lost sentence may be put.
func (s Sentences) places(lost pattern.Lost) (list []Choice) {
	onlyLines := strings.HasPrefix(lost.Key, project.PatternLine)
	for _, p := range s.Places {
		if p.Words || !onlyLines {
			list = append(list, Choice{p.Key, cut(p.Text, 90)})
		}
	}
	return list
}

// why says why a sentence has lost its place.
func why(lost pattern.Lost) string {
	if lost.Place == "" {
		return "its line is not in this text."
	}
	return "its line says something else now."
}

// cut shortens a text of more characters.
func cut(text string, most int) string {
	if letters := []rune(text); len(letters) > most {
		return strings.TrimSpace(string(letters[:most-1])) + "…"
	}
	return text
}

// rows returns how high a field for a text is.
func rows(text string) int { return min(8, 2+len(text)/80) }

// fault returns what is wrong with a sentence that was typed.
func (s Sentences) fault(key string) string { return s.Wrong.Of(key) }

// sentencesByHand says how many sentences are by hand.
func sentencesByHand(texts project.PatternTexts) string {
	n := 0
	for key := range texts {
		if IsSentence(key) {
			n++
		}
	}
	if n == 0 {
		return "Every sentence can be worded otherwise, and added to."
	}
	return words.Plural(n, "sentence") + " in your own words."
}

// namedLine names a line for a button.
func namedLine(title string, l app.Sentence) string {
	return cut(title+", "+cmp.Or(l.Own, "heading"), 60)
}

// putWhere asks where a lost sentence is to be put.
func putWhere(lost pattern.Lost) string {
	if strings.HasPrefix(lost.Key, project.PatternLine) {
		return "In place of"
	}
	return "After"
}

// addAfter is the button that adds a sentence after a line.
func addAfter(l app.Sentence) string {
	if l.Own == "" && l.Rows == nil {
		return "Add under the heading"
	}
	return "Add after"
}
