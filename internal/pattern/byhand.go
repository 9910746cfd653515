package pattern

import (
	"cmp"
	"fmt"
	"maps"
	"regexp"
	"slices"
	"strings"

	"thenar/internal/project"
	"thenar/internal/words"
)

// A sentence that a designer writes stands in place of a line, or after it. What it has of
// the line's numbers follows them. It stands as long as the line says the same but for its
// numbers; otherwise it is listed as lost, and the line is told as the program tells it.

// Lost is a sentence by hand that has lost its place.
type Lost struct {
	Key   string // "line KEY" or "after KEY", as it was written for
	Text  string // in full, with the numbers that it was written with
	Place string // the key of the line that is told in its place now; "" for none
}

// ByHand returns the text with the sentences that a designer wrote for it, and those that
// have no place in it.
func (t *Text) ByHand(texts project.PatternTexts) (*Text, []Lost) {
	h := hand{t, texts, map[string]bool{}, map[string][]string{}}
	for _, key := range slices.Sorted(maps.Keys(texts)) {
		if kind, place := kindOf(key); kind != "" && texts.Given(key) != "" {
			h.at[kind+placeOf(place)] = append(h.at[kind+placeOf(place)], key)
		}
	}
	if len(h.at) == 0 {
		return t, nil
	}
	out := *t
	out.Head.Needs = h.passage(t.Head.Needs)
	out.Passages = make([]Passage, len(t.Passages))
	for i, p := range t.Passages {
		out.Passages[i] = h.passage(p)
	}
	if len(h.used) > 0 {
		out.Head.Signs = out.withSigns()
	}
	return &out, h.lost()
}

// hand lays sentences by hand into a text.
type hand struct {
	text  *Text
	texts project.PatternTexts
	used  map[string]bool
	at    map[string][]string // the keys of sentences by their kind and place
}

// passage returns a passage with its sentences by hand.
func (h hand) passage(p Passage) Passage {
	left := p.Hand == "left" || h.text.left
	lines := make([]Line, 0, len(p.Lines))
	var below []Line // comes after the ways of the line that has it
	put := func(to *[]Line, kind string, l *Line) bool {
		key, stored := h.sentence(kind, l, left)
		if stored == "" {
			return false
		}
		*to = append(*to, Line{
			Key: l.Key, For: l.For, Only: l.Only, Under: l.Under, Hand: l.Hand, Body: filled(stored, l),
			ByHand: true, After: kind == project.PatternAfter, Written: key,
		})
		return true
	}
	put(&lines, project.PatternAfter, &Line{Key: p.Key(), For: p.For})
	for i := range p.Lines {
		l, to := &p.Lines[i], &lines
		if !l.Under {
			lines, below = append(lines, below...), nil
		}
		if !put(&lines, project.PatternLine, l) {
			lines = append(lines, *l)
		}
		if i+1 < len(p.Lines) && !l.Under && p.Lines[i+1].Under {
			to = &below
		}
		put(to, project.PatternAfter, l)
	}
	p.Lines = append(lines, below...)
	return p
}

// Key names the heading of a passage, after which a sentence may stand.
func (p Passage) Key() string { return string(p.Part) + "/title" }

// sentence returns what is written by hand for a line, and its key, if it stands there.
func (h hand) sentence(kind string, l *Line, left bool) (key, stored string) {
	own := kind + l.Key
	list := []string{own}
	if left && !strings.HasSuffix(own, leftMark) {
		list = []string{own + leftMark, own}
	}
	for _, other := range h.at[kind+placeOf(l.Key)] { // one that was written for another way of the place
		if other != own && l.says != nil && h.texts.Given(project.PatternWas+other) == l.mark() {
			list = append(list, other)
		}
	}
	for _, key := range list {
		if stored := h.texts.Given(key); stored != "" && h.stands(kind, key, l, left && !strings.HasSuffix(key, leftMark)) {
			h.used[key] = true
			return key, stored
		}
	}
	return "", ""
}

// stitches finds words that tell how stitches are worked, and numbers of the designer's own.
var stitches = regexp.MustCompile(`(?i)\d|\b(?:ssk|ssp|kfb|yo|tbl|LLI|RLI|once|twice|together|knit|purl|slip|lift|make|work|yarn over)\b`)

// stands reports whether a sentence may be told for a line: all its numbers are there, and
// the line says what it said when the sentence was written. If the line says something else,
// a sentence that only adds to it, or that tells a round without any stitches, still stands;
// not so that of another hand.
func (h hand) stands(kind, key string, l *Line, another bool) bool {
	ofWords := false
	var own strings.Builder
	for _, part := range parted(h.texts.Given(key)) {
		if part.name == "" {
			own.WriteString(part.text)
		} else if _, ok := l.number(part.name); !ok {
			return false
		} else {
			ofWords = ofWords || isDigit(part.name[0])
		}
	}
	if l.says == nil || h.texts.Given(project.PatternWas+key) == l.mark() {
		return true
	}
	if another || ofWords {
		return false
	}
	_, round := l.number(roundsNumber)
	return kind == project.PatternAfter || round && !strings.HasSuffix(placeOf(l.Key), ways) && !stitches.MatchString(own.String())
}

// mark is a mark of all that a line says but for its numbers, and of those that it doesn't
// tell in figures: "the first stitch".
func (l *Line) mark() string {
	said := strings.Join(l.says, " + ")
	for i, p := range l.Body {
		if p.Same && (p.Text == "" || p.Text == "one") {
			said += fmt.Sprint(" one ", i)
		}
	}
	return mark(said)
}

// lost returns the sentences that were not used, in the order of their keys.
func (h hand) lost() (list []Lost) {
	for _, key := range slices.Sorted(maps.Keys(h.texts)) {
		kind, place := kindOf(key)
		if kind == "" || h.used[key] || h.texts.Given(key) == "" || strings.HasSuffix(key, leftMark) && !h.text.left && !h.text.both {
			continue
		}
		one := Lost{Key: key, Text: asWritten(h.texts.Given(key))}
		for _, l := range h.text.places() {
			if one.Place == "" && placeOf(l.Key) == placeOf(place) {
				one.Place = l.Key
			}
		}
		list = append(list, one)
	}
	return list
}

// kindOf splits the key of a sentence by hand; kind is "" for another key.
func kindOf(key string) (kind, place string) {
	for _, kind := range []string{project.PatternLine, project.PatternAfter} {
		if place, ok := strings.CutPrefix(key, kind); ok {
			return kind, place
		}
	}
	return "", ""
}

// withSigns returns the abbreviations of a text with those that sentences by hand use.
func (t *Text) withSigns() []words.Sign {
	var lines []Line
	for _, p := range t.Passages {
		for _, l := range p.Lines {
			if l.ByHand {
				lines = append(lines, l)
			}
		}
	}
	list := slices.Clone(t.Head.Signs)
	at := slices.IndexFunc(list, func(s words.Sign) bool { return s.Sign == t.sizeSign() })
	for _, sign := range meant(texts(lines), t.out) {
		if !slices.ContainsFunc(list, func(s words.Sign) bool { return s.Sign == sign.Sign }) {
			list = slices.Insert(list, cmp.Or(max(at, 0), len(list)), sign)
		}
	}
	return list
}
