package pattern

import (
	"regexp"
	"strings"
)

// token is a piece of one size's sentence: words, or a number. Text is how it stands in that
// size's own words; general is how it stands where sizes differ, "stitches" for "stitch".
// After a number's values comes its general text: " times", or nothing.
type token struct {
	text, general string
	number        bool
	value         string
}

// numbers finds what may be a number of its own in a size, in this order: how often, spans
// and other numbers. Names of stitches with a figure inside are none.
var numbers = regexp.MustCompile(`\b(?:once|twice|\d+ times)\b|\b(?:[A-Za-z]+\d+[A-Za-z]\w*|M1[LR]?)\b|\d+(?:–\d+|\.\d+)?(?:st|nd|rd|th)?[⅛¼⅜½⅝¾⅞]?|[⅛¼⅜½⅝¾⅞]`)

// ones finds where a single thing is told without its number.
var ones = regexp.MustCompile(`\b((?:first|last)) (stitch)\b|\b(the next) (one)\b|\b(leave the first)( )for\b`)

// counted finds the noun that follows its number.
var counted = regexp.MustCompile(`^((?: (?:held|backward|plain|increase|decrease))*) (stitch|loop|round|row|end)(es|s)?\b`)

// tokens cuts a sentence into words and numbers.
func tokens(text string) []token {
	var list []token
	words := func(text string) {
		if text != "" {
			list = append(list, token{text: text, general: text})
		}
	}
	single := ones.MatchString(text)
	for {
		at := numbers.FindStringIndex(text)
		var one []int
		if single {
			one = ones.FindStringSubmatchIndex(text)
		}
		switch {
		case at == nil && one == nil:
			words(text)
			return list
		case one != nil && (at == nil || one[0] < at[0]):
			text = alone(text, one, &list)
			continue
		}
		words(text[:at[0]])
		found := text[at[0]:at[1]]
		text = text[at[1]:]
		switch value, times := strings.CutSuffix(found, " times"); {
		case found == "once":
			list = append(list, token{found, " times", true, "1"})
		case found == "twice":
			list = append(list, token{found, " times", true, "2"})
		case times:
			list = append(list, token{found, " times", true, value})
		case found[0] > '9' && found[0] < 0x80:
			words(found)
		default:
			list = append(list, token{found, "", true, found})
			if noun := counted.FindStringSubmatch(text); noun != nil {
				many := "s"
				if noun[2] == "stitch" {
					many = "es"
				}
				list = append(list, token{text: noun[0], general: noun[1] + " " + noun[2] + many})
				text = text[len(noun[0]):]
			}
		}
	}
}

// alone takes what stands for one thing from the head of a text: "the first stitch" is, in
// general, "the first 1 stitches".
func alone(text string, at []int, list *[]token) (rest string) {
	add := func(text, general string) {
		*list = append(*list, token{text: text, general: general})
	}
	add(text[:at[0]], text[:at[0]])
	part := func(i int) string { return text[at[2*i]:at[2*i+1]] }
	one := token{"", "", true, "1"}
	switch {
	case at[2] >= 0:
		add(part(1)+" ", part(1)+" ")
		*list = append(*list, one)
		add(part(2), " stitches")
	case at[6] >= 0:
		add(part(3)+" ", part(3)+" ")
		*list = append(*list, token{"one", "", true, "1"})
	default:
		add(part(5)+" ", part(5)+" ")
		*list = append(*list, one)
		add("for", " for")
	}
	return text[at[1]:]
}

// bones returns a sentence without its numbers: sentences with the same bones differ in
// numbers only.
func bones(list []token) string {
	var b strings.Builder
	for _, t := range list {
		if t.number {
			b.WriteByte('#')
		}
		b.WriteString(t.general)
	}
	return b.String()
}

// merged returns sentences with the same bones as one.
func merged(sentences [][]token) []Piece {
	var pieces []Piece
	words := func(text string) {
		if n := len(pieces); n > 0 && pieces[n-1].Values == nil {
			pieces[n-1].Text += text
		} else if text != "" {
			pieces = append(pieces, Piece{Text: text})
		}
	}
	at := 0
	var flat [][]token
	for _, s := range sentences {
		flat = append(flat, solid(s))
	}
	for ; at < len(flat[0]); at++ {
		alike, first := true, flat[0][at]
		values := make([]string, len(flat))
		for i := range flat {
			alike = alike && flat[i][at].text == first.text
			values[i] = flat[i][at].value
		}
		switch {
		case first.number:
			pieces = append(pieces, valued(first, values, alike))
		case alike:
			words(first.text)
		default:
			words(first.general)
		}
	}
	return pieces
}

// valued returns a number of all sizes; it is told once where all of them have it alike.
func valued(first token, values []string, alike bool) Piece {
	if alike {
		return Piece{Text: first.text, Values: values, Same: true, Tail: first.general}
	}
	return Piece{Values: values, Tail: first.general}
}

// solid joins words that follow each other, so that sentences with the same bones have as
// many tokens.
func solid(list []token) []token {
	var out []token
	for _, t := range list {
		if n := len(out); !t.number && n > 0 && !out[n-1].number {
			out[n-1].text += t.text
			out[n-1].general += t.general
			continue
		}
		out = append(out, t)
	}
	return out
}
