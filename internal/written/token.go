package written

import (
	"strconv"
	"strings"
	"unicode"
)

// Spot is where something stands in a text. Lines and columns count from 1, columns in
// characters.
type Spot struct {
	Line, Column int
}

// kind is what a token is.
type kind uint8

const (
	mark     kind = iota // a sign that is neither letter nor digit
	word                 // letters, then letters and digits: "knit", "k2tog", "M1L"
	whole                // a whole number
	ordinal              // 4th
	measured             // a number with a fraction, which counts no stitches
)

// token is the smallest thing that has a meaning.
type token struct {
	kind  kind
	text  string // as it stands
	low   string // in small letters, with one kind of dash and apostrophe
	n     int    // of a whole number or an ordinal
	at    Spot
	wide  int  // in characters
	tight bool // it follows the one before it without a space
}

// greatest is the largest number that is read as one: nobody knits more stitches.
const greatest = 99_999

// alike holds signs that mean the same as another.
var alike = map[rune]rune{
	'–': '-', '‒': '-', '−': '-', '‑': '-', '―': '—', '’': '\'', '‘': '\'', '“': '"', '”': '"', '„': '"',
	'×': 'x', '＊': '*', '∗': '*', '⁎': '*', '\u00a0': ' ', '\t': ' ',
}

// lexer takes a line apart.
type lexer struct {
	line  []rune
	at    int
	no    int
	space bool // there was one before what comes next
	out   []token
}

// tokens takes a line of a text apart; number is which line it is.
func tokens(line string, number int) []token {
	l := lexer{line: []rune(line), no: number, space: true}
	l.out = make([]token, 0, len(l.line)/2+1)
	for i, r := range l.line {
		if to, ok := alike[r]; ok {
			l.line[i] = to
		}
	}
	for l.at < len(l.line) {
		r := l.line[l.at]
		switch {
		case unicode.IsSpace(r):
			l.at, l.space = l.at+1, true
		case isDigit(r) || isFraction(r):
			l.number()
		case unicode.IsLetter(r):
			l.word()
		default:
			l.emit(mark, 1, 0)
		}
	}
	return l.out
}

func isDigit(r rune) bool { return r >= '0' && r <= '9' }

func isFraction(r rune) bool { return strings.ContainsRune("½¼¾⅓⅔⅛⅜⅝⅞", r) }

// emit appends the next characters as a token.
func (l *lexer) emit(k kind, wide, n int) {
	text := string(l.line[l.at : l.at+wide])
	l.out = append(l.out, token{k, text, strings.ToLower(text), n, Spot{l.no, l.at + 1}, wide, !l.space})
	l.at, l.space = l.at+wide, false
}

// ahead returns the character that is so many further, or 0.
func (l *lexer) ahead(by int) rune {
	if l.at+by >= len(l.line) {
		return 0
	}
	return l.line[l.at+by]
}

// number takes a number: 44, 4th, 6.3, 2½.
func (l *lexer) number() {
	end := 0
	for isDigit(l.ahead(end)) {
		end++
	}
	n, err := strconv.Atoi("0" + string(l.line[l.at:l.at+end]))
	k := whole
	switch rest := strings.ToLower(string(l.line[l.at+end : min(len(l.line), l.at+end+2)])); {
	case l.ahead(end) == '.' && isDigit(l.ahead(end+1)):
		for end++; isDigit(l.ahead(end)); end++ {
			k = measured
		}
	case isFraction(l.ahead(end)):
		for k = measured; isFraction(l.ahead(end)); {
			end++
		}
	case (rest == "st" || rest == "nd" || rest == "rd" || rest == "th") && !unicode.IsLetter(l.ahead(end+2)):
		k, end = ordinal, end+2
	}
	if err != nil || n > greatest {
		k = measured
	}
	l.emit(k, end, n)
}

// word takes letters and digits: a dash or an apostrophe between two letters is part of a
// word, as in "long-tail", and so it is in "M1-L".
func (l *lexer) word() {
	end := 1
	for {
		r := l.ahead(end)
		if unicode.IsLetter(r) || isDigit(r) {
			end++
			continue
		}
		sofar := strings.ToLower(string(l.line[l.at : l.at+end]))
		after := l.ahead(end + 1)
		last := l.line[l.at+end-1]
		if (r == '-' || r == '\'' || r == '&') && unicode.IsLetter(after) && (unicode.IsLetter(last) || sofar == "m1") {
			end++
			continue
		}
		break
	}
	l.emit(word, end, 0)
}
