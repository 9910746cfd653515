package pattern

import (
	"regexp"
	"slices"
	"strings"

	"thenar/internal/fault"
	"thenar/internal/project"
)

// A sentence is kept with its numbers as marks, "{2=44 (48, 52)}": how the line calls the
// number, and how it read when the sentence was written. "{2#=…}" is its values without the
// word that may follow them, "{{" a brace.
var marks = regexp.MustCompile(`\{\{|\{([a-z0-9]+)(#?)=([^{}]*)\}`)

// part is a part of a kept sentence: words, or a number with its name.
type part struct {
	text, name string
	bare       bool
}

// parted cuts a kept sentence into its parts.
func parted(stored string) (list []part) {
	for {
		at := marks.FindStringSubmatchIndex(stored)
		if at == nil {
			return append(list, part{text: stored})
		}
		list = append(list, part{text: stored[:at[0]]})
		if at[2] < 0 {
			list = append(list, part{text: "{"})
		} else {
			list = append(list, part{stored[at[6]:at[7]], stored[at[2]:at[3]], at[4] < at[5]})
		}
		stored = stored[at[1]:]
	}
}

// asWritten returns a kept sentence with the numbers that it was written with.
func asWritten(stored string) string {
	var b strings.Builder
	for _, p := range parted(stored) {
		b.WriteString(p.text)
	}
	return b.String()
}

// filled returns a kept sentence with the numbers of a line.
func filled(stored string, of *Line) (list []Piece) {
	for _, p := range parted(stored) {
		number, _ := of.number(p.name)
		switch {
		case p.name == "":
			if p.text != "" {
				list = append(list, Piece{Text: p.text})
			}
		case p.bare:
			list = append(list, bareOf(number.pieces[0]))
		default:
			for _, piece := range number.pieces {
				if piece.Same && piece.Text == "" {
					piece = bareOf(piece)
				}
				list = append(list, piece)
			}
		}
	}
	return list
}

// bareOf returns a number without the word that may follow its values.
func bareOf(p Piece) Piece {
	p.Tail = ""
	if p.Same {
		p.Text = p.Values[0]
	}
	return p
}

// line returns the line of a key.
func (t *Text) line(key string) (*Passage, *Line) {
	list := append([]Passage{t.Head.Needs}, t.Passages...)
	for i := range list {
		if p := &list[i]; p.Key() == key {
			return p, &Line{Key: key, For: p.For}
		}
		for k := range list[i].Lines {
			if l := &list[i].Lines[k]; l.Key == key {
				return &list[i], l
			}
		}
	}
	return nil, nil
}

// places returns all lines, and the headings, that sentences may be written for.
func (t *Text) places() (list []Line) {
	for _, p := range append([]Passage{t.Head.Needs}, t.Passages...) {
		list = append(append(list, Line{Key: p.Key(), For: p.For}), p.Lines...)
	}
	return list
}

// Own returns a line as the program writes it, without the sizes that it is for.
func (l Line) Own() string {
	var b strings.Builder
	l.tell(&b)
	return b.String()
}

// Rewordable reports whether a sentence may be written in place of a line.
func (l Line) Rewordable() bool { return l.says != nil && l.Table == nil }

// Shown returns a kept sentence as it is written now for the line of a key, for another edit
// of it; if that is gone, as it was written.
func (t *Text) Shown(texts project.PatternTexts, key string) string {
	_, place := kindOf(key)
	stored := texts.Given(key)
	_, l := t.line(place)
	if l == nil || stored == "" {
		return asWritten(stored)
	}
	for _, p := range parted(stored) {
		if _, ok := l.number(p.name); p.name != "" && !ok {
			return asWritten(stored)
		}
	}
	return Plain(filled(stored, l))
}

// Reword keeps what a designer typed for a line of the text, under "line KEY" or "after
// KEY": its numbers that are the line's follow them, the others stay as typed and are
// returned. What is empty, or says what the program says itself, is taken back.
func (t *Text) Reword(texts project.PatternTexts, key, typed string) (out project.PatternTexts, stay []string, err error) {
	kind, place := kindOf(key)
	typed = strings.Join(strings.Fields(typed), " ")
	taken := texts.With(key, "").With(project.PatternWas+key, "")
	if typed == "" {
		return taken, nil, nil
	}
	_, l := t.line(place)
	if l == nil || kind == project.PatternLine && !l.Rewordable() {
		return texts, nil, fault.New(fault.Conflict, "This line isn’t in the text any more; put the sentence at another one.")
	}
	if kind == project.PatternLine && typed == l.Own() {
		return taken, nil, nil
	}
	stored, stay := l.bound(typed, texts.Given(key))
	was := ""
	if l.says != nil {
		was = l.mark()
	}
	return taken.With(key, stored).With(project.PatternWas+key, was), stay, nil
}

const aNumber = `(?:\d+(?:\s?[–-]\s?\d+|\.\d+)?(?:st|nd|rd|th)?[⅛¼⅜½⅝¾⅞]?|[⅛¼⅜½⅝¾⅞])`

var (
	typedNumber = regexp.MustCompile(`\b(?:[A-Za-z]+\d+[A-Za-z]\w*|M1[LR]?)\b|\b(?:once|twice)\b|` + aNumber + `(?:\s?\(\s?` + aNumber + `(?:\s?[,;]\s?` + aNumber + `)*\s?\))?(?: times)?`)
	spacing     = strings.NewReplacer(" ", "", ";", ",", "-", "–")
)

// alike returns a number as it can be compared with another one, however it is spaced.
func alike(text string) string { return spacing.Replace(text) }

// choice is a way to bind a typed number.
type choice struct {
	at   int // of the line's number
	mark string
	from int // where it begins in the sentence
	to   int
}

// bound returns a typed sentence with marks for its numbers that are those of the line, in
// order: of equal ones first those with the same words beside them, then those that the
// sentence had before, and those not yet taken. It returns the numbers that are the
// designer's own, too.
func (l *Line) bound(typed, before string) (stored string, stay []string) {
	var had []string
	for _, p := range parted(before) {
		if p.name != "" {
			had = append(had, p.name)
		}
		if p.name == labelNumber {
			had = append(had, roundsNumber)
		}
	}
	var b strings.Builder
	copied, last := 0, -1
	taken := map[int]bool{}
	write := func(to int) { b.WriteString(strings.ReplaceAll(typed[copied:to], "{", "{{")) }
	for _, at := range typedNumber.FindAllStringIndex(typed, -1) {
		if first := typed[at[0]]; first > '9' && first < 0x80 && typed[at[0]:at[1]] != "once" && typed[at[0]:at[1]] != "twice" {
			continue // a stitch's name
		}
		choices := l.choices(typed, at[0], at[1])
		if len(choices) == 0 {
			stay = append(stay, toldOwn(typed, at[0], at[1]))
			continue
		}
		chosen := slices.MinFunc(choices, func(a, b choice) int {
			return l.rank(typed, a, had, taken, last) - l.rank(typed, b, had, taken, last)
		})
		if k := slices.Index(had, l.numbers[chosen.at].name); k >= 0 {
			had = slices.Delete(slices.Clone(had), k, k+1)
		}
		write(chosen.from)
		b.WriteString("{" + chosen.mark + "=" + typed[chosen.from:chosen.to] + "}")
		copied, last, taken[chosen.at] = chosen.to, chosen.at, true
	}
	write(len(typed))
	return b.String(), stay
}

// rank says how well a choice goes with the words beside it and with those before it; less is
// better.
func (l *Line) rank(typed string, c choice, had []string, taken map[int]bool, last int) int {
	rank, n := c.at, l.numbers[c.at] // of equal ones the first
	if n.before == "" || strings.TrimSuffix(wordBefore(typed[:c.from]), "s") != strings.TrimSuffix(n.before, "s") {
		rank += 1 << 13
		if n.name == roundsNumber {
			rank += 1 << 10
		}
	}
	if n.after == "" || wordAfter(typed[c.to:]) != n.after {
		rank += 1 << 13
	}
	if !slices.Contains(had, l.numbers[c.at].name) {
		rank += 1 << 12
	}
	if taken[c.at] {
		rank += 1 << 11
	}
	if c.at < last {
		rank += 1 << 10
	}
	return rank
}

// choices returns the numbers of a line that read as the sentence does from one place to
// another; with the word before it for that of a round, without " times" if need be.
func (l *Line) choices(typed string, from, to int) (list []choice) {
	ends := []int{to}
	if short, ok := strings.CutSuffix(typed[from:to], " times"); ok {
		ends = append(ends, from+len(short))
	}
	for _, end := range ends {
		is := alike(typed[from:end])
		for i, n := range l.numbers {
			own := Plain(n.pieces)
			switch {
			case n.name == labelNumber:
				noun, _, _ := strings.Cut(own, " ")
				if begin := from - len(noun) - 1; begin >= 0 && typed[begin:from] == noun+" " && alike(typed[begin:end]) == alike(own) {
					return []choice{{i, n.name, begin, end}}
				}
			case alike(own) == is && own != "":
				list = append(list, choice{i, n.name, from, end})
			case len(n.pieces) == 1 && alike(Plain([]Piece{bareOf(n.pieces[0])})) == is:
				list = append(list, choice{i, n.name + "#", from, end})
			}
		}
		if len(list) > 0 {
			break
		}
	}
	return list
}

// toldOwn returns a number of the designer's own with the word after it.
func toldOwn(typed string, from, to int) string {
	word, _, _ := strings.Cut(strings.TrimLeft(typed[to:], " "), " ")
	word = strings.TrimRight(word, ".,;:!?)")
	if word == "" || !strings.HasPrefix(typed[to:], " ") || strings.ContainsAny(word, "0123456789(") {
		return typed[from:to]
	}
	return typed[from:to] + " " + word
}
