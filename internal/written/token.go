package written

import (
	"strings"
	"unicode"
	"unicode/utf8"
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
	tight bool   // it follows the one before it without a space
	text  string // as it stands
	low   string // in small letters
	n     int    // of a whole number or an ordinal
	at    Spot
}

// end returns where it ends.
func (t *token) end() Spot {
	return Spot{t.at.Line, t.at.Column + utf8.RuneCountInString(t.text)}
}

// capital reports whether it begins with a capital letter.
func (t *token) capital() bool {
	first, _ := utf8.DecodeRuneInString(t.text)
	return unicode.IsUpper(first)
}

// greatest is the largest number that is read as one: nobody knits more stitches.
const greatest = 99_999

// alike returns one sign for all that mean the same.
func alike(r rune) rune {
	switch r {
	case '–', '‒', '−', '‑':
		return '-'
	case '―':
		return '—'
	case '’', '‘':
		return '\''
	case '“', '”', '„':
		return '"'
	case '×':
		return 'x'
	case '＊', '∗', '⁎':
		return '*'
	}
	return r
}

// lexer takes a line apart.
type lexer struct {
	line   string
	at     int  // in bytes
	spot   Spot // of what comes next
	spaced bool // there is a space before it
	out    []token
}

// tokens takes a line of a text apart and appends what it is made of; number is which line it
// is.
func tokens(out []token, line string, number int) []token {
	l := lexer{line: strings.Map(alike, line), spot: Spot{number, 1}, spaced: true, out: out}
	for l.at < len(l.line) {
		switch r := l.ahead(0); {
		case unicode.IsSpace(r):
			l.at, l.spaced = l.at+utf8.RuneLen(r), true
			l.spot.Column++
		case isDigit(r) || isFraction(r):
			l.number()
		case unicode.IsLetter(r):
			l.word()
		default:
			l.emit(mark, utf8.RuneLen(r), 0)
		}
	}
	return l.out
}

func isDigit(r rune) bool { return r >= '0' && r <= '9' }

func isFraction(r rune) bool { return r >= '¼' && strings.ContainsRune("½¼¾⅓⅔⅛⅜⅝⅞", r) }

// emit appends the next bytes as a token.
func (l *lexer) emit(k kind, wide, n int) {
	text := l.line[l.at : l.at+wide]
	t := token{k, !l.spaced, text, strings.ToLower(text), n, l.spot}
	l.out = append(l.out, t)
	l.at, l.spot, l.spaced = l.at+wide, t.end(), false
}

// ahead returns the character that stands so many bytes further, or 0.
func (l *lexer) ahead(by int) rune {
	if at := l.at + by; at < len(l.line) {
		if b := l.line[at]; b < utf8.RuneSelf {
			return rune(b)
		}
		r, _ := utf8.DecodeRuneInString(l.line[at:])
		return r
	}
	return 0
}

// number takes a number: 44, 4th, 6.3, 2½.
func (l *lexer) number() {
	end, n, k := 0, 0, whole
	for ; isDigit(l.ahead(end)); end++ {
		n = min(10*n+int(l.ahead(end)-'0'), greatest+1)
	}
	switch {
	case l.ahead(end) == '.' && isDigit(l.ahead(end+1)):
		for k, end = measured, end+1; isDigit(l.ahead(end)); {
			end++
		}
	case isFraction(l.ahead(end)):
		for k = measured; isFraction(l.ahead(end)); {
			end += utf8.RuneLen(l.ahead(end))
		}
	case l.ordinal(end):
		k, end = ordinal, end+2
	}
	if n > greatest {
		k = measured
	}
	l.emit(k, end, n)
}

// ordinal reports whether "st", "nd", "rd" or "th" stands so many bytes further.
func (l *lexer) ordinal(by int) bool {
	switch a, b := unicode.ToLower(l.ahead(by)), unicode.ToLower(l.ahead(by+1)); {
	case a == 's' && b == 't', a == 'n' && b == 'd', a == 'r' && b == 'd', a == 't' && b == 'h':
		return !unicode.IsLetter(l.ahead(by + 2))
	}
	return false
}

// word takes letters and digits: a dash or an apostrophe between two letters is part of a
// word, as in "long-tail", and so it is in "M1-L".
func (l *lexer) word() {
	end, letter := 0, true // the last one is a letter
	for {
		r := l.ahead(end)
		switch {
		case unicode.IsLetter(r) || isDigit(r):
			letter = !isDigit(r)
		case (r == '-' || r == '\'' || r == '&') && unicode.IsLetter(l.ahead(end+1)) && (letter || strings.EqualFold(l.line[l.at:l.at+end], "m1")):
			letter = false
		default:
			l.emit(word, end, 0)
			return
		}
		end += utf8.RuneLen(r)
	}
}
