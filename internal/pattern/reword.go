package pattern

import (
	"regexp"
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
	was := "" // how the number read before the words that follow it
	for _, p := range parted(stored) {
		number, _ := of.number(p.name)
		switch {
		case p.name == "":
			if p.text != "" {
				list = append(list, Piece{Text: agreeing(p.text, was, list)})
			}
			was = ""
			continue
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
		was = p.text
	}
	return list
}

// agreeing returns the words after a number so that its noun goes with it, where it was one
// and is more now, or the other way round.
func agreeing(text, was string, before []Piece) string {
	noun := counted.FindStringSubmatchIndex(text)
	if noun == nil || was == "" || len(before) == 0 {
		return text
	}
	is := before[len(before)-1].String()
	if (was == "1") == (is == "1") {
		return text
	}
	many := "s"
	if text[noun[4]:noun[5]] == "stitch" {
		many = "es"
	}
	if is == "1" {
		many = ""
	}
	return text[:noun[5]] + many + text[noun[1]:]
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

// Moved returns a kept sentence as it may be written for the line of another key: the numbers
// that a line of rounds always has are that line's, the others as they were written.
func (t *Text) Moved(stored, key string) string {
	_, place := kindOf(key)
	_, l := t.line(place)
	var b strings.Builder
	for _, p := range parted(stored) {
		if l != nil && p.name != "" && !isDigit(p.name[0]) {
			if n, ok := l.number(p.name); ok {
				b.WriteString(Plain(n.pieces))
				continue
			}
		}
		b.WriteString(p.text)
	}
	return b.String()
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

// Stays returns the numbers of a kept sentence that are the designer's own, each with the
// word after it.
func Stays(stored string) (list []string) {
	for _, p := range parted(stored) {
		if p.name != "" {
			continue
		}
		for _, at := range typedNumber.FindAllStringIndex(p.text, -1) {
			if isNumber(p.text[at[0]:at[1]]) {
				list = append(list, toldOwn(p.text, at[0], at[1]))
			}
		}
	}
	return list
}
