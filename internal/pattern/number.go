package pattern

import (
	"fmt"
	"slices"
	"strconv"
	"strings"
	"unicode"
)

// numberOf is a number of a line that a sentence by hand may hold: how it is called there, and
// how it reads.
type numberOf struct {
	name          string // "3" for the third of the line's words, "rounds", "stitches" …
	pieces        []Piece
	before, after string // the words beside it in the line
}

// The numbers that a line of rounds has whatever is worked in them.
const (
	labelNumber  = "label"    // "Rounds 2–8 (9, 10)"
	roundsNumber = "rounds"   // "2–8 (9, 10)"
	allNumber    = "stitches" // after them
	insideNumber = "gusset"   // those of them in it
)

// numbered returns the numbers of a line of steps, whose words are body.
func numbered(steps []step, body []Piece) (list []numberOf) {
	if steps[0].round() {
		list = append(list, numberOf{labelNumber, rounds(steps), "", ""})
	}
	list = append(list, numbersIn(body, 0)...)
	if steps[0].round() {
		all, inside := counts(steps)
		list = append(list, numberOf{allNumber, numeral(all), "", "stitches"})
		if steps[0].inside > 0 {
			list = append(list, numberOf{insideNumber, numeral(inside), "", "in"})
		}
		whole := rounds(steps)
		list = append(list, numberOf{roundsNumber, whole[1:], wordBefore(whole[0].Text), ""})
	}
	return list
}

// wordBefore returns the word that ends a text, or the sign.
func wordBefore(text string) string {
	text = strings.ToLower(strings.TrimRight(text, " "))
	from := strings.LastIndexFunc(text, func(r rune) bool { return !unicode.IsLetter(r) }) + 1
	if from == len(text) && from > 0 {
		return text[from-1:]
	}
	return text[from:]
}

// wordAfter returns the word that begins a text, or the sign.
func wordAfter(text string) string {
	text = strings.ToLower(strings.TrimLeft(text, " "))
	to := strings.IndexFunc(text, func(r rune) bool { return !unicode.IsLetter(r) })
	if to == 0 {
		return text[:1]
	}
	return text[:max(to, 0)]
}

// counts returns how many stitches there are after steps, and how many of them in a gusset.
func counts(steps []step) (all, inside []string) {
	for _, s := range steps {
		all, inside = append(all, strconv.Itoa(s.all)), append(inside, strconv.Itoa(s.inside))
	}
	return all, inside
}

// numbersIn returns the numbers among pieces, called by their order from one on.
func numbersIn(pieces []Piece, from int) (list []numberOf) {
	for i, p := range pieces {
		if p.Values == nil {
			continue
		}
		n := numberOf{name: fmt.Sprint(from + len(list) + 1), pieces: []Piece{p}}
		if i > 0 {
			n.before = wordBefore(pieces[i-1].Text)
		}
		if i+1 < len(pieces) {
			n.after = wordAfter(p.Tail + pieces[i+1].Text)
		}
		list = append(list, n)
	}
	return list
}

// ofWords returns how many numbers of a line are in its words.
func (l *Line) ofWords() (n int) {
	for _, number := range l.numbers {
		if isDigit(number.name[0]) {
			n++
		}
	}
	return n
}

func isDigit(b byte) bool { return '0' <= b && b <= '9' }

// number returns a number of the line by what it is called.
func (l *Line) number(name string) (numberOf, bool) {
	at := slices.IndexFunc(l.numbers, func(n numberOf) bool { return n.name == name })
	if at < 0 {
		return numberOf{}, false
	}
	return l.numbers[at], true
}
