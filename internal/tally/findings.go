package tally

import (
	"slices"

	"thenar/internal/written"
)

// findings gathers what is found; what several sizes share is told once.
type findings struct {
	list  []Finding
	seen  map[same]int
	steps int               // of the work so far
	spent bool              // it was told that there are no more
	left  bool              // the rest of the text is not worked
	words map[string]string // what words that were not understood were probably meant to be
}

func newFindings() *findings { return &findings{seen: map[same]int{}, words: map[string]string{}} }

// meant asks whether a word was meant that is like one that was not understood.
func (f *findings) meant(word string) string {
	if word == "" {
		return ""
	}
	like, ok := f.words[word]
	if !ok {
		like = written.Guess(word)
		f.words[word] = like
	}
	if like == "" {
		return ""
	}
	return "Is " + like + " meant?"
}

// same is what makes two findings the same but for their sizes.
type same struct {
	at      written.Spot
	kind    Kind
	message string
}

// tell adds a finding of this size.
func (w *needles) tell(f Finding) {
	f.Section = w.section
	key := same{f.At, f.Kind, f.Message}
	at, ok := w.report.seen[key]
	if !ok {
		at = len(w.report.list)
		w.report.seen[key] = at
		w.report.list = append(w.report.list, f)
	}
	if w.name != "" && !slices.Contains(w.report.list[at].Sizes, w.name) {
		w.report.list[at].Sizes = append(w.report.list[at].Sizes, w.name)
	}
}
