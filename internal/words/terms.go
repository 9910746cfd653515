package words

import (
	"strings"
	"unicode"
	"unicode/utf8"
)

// Terms says in whose terms of the trade a mitt's sentences are put.
type Terms string

// The two sides. Sentences are written in US terms, which are the default.
const (
	US Terms = "us"
	UK Terms = "uk"
)

// TermsOf returns the terms that a sheet asks for, US if it asks for none.
func TermsOf(text string) Terms {
	if Terms(text) == UK {
		return UK
	}
	return US
}

// term is one thing of the trade with its name on either side.
type term struct{ us, uk string }

// terms are all words in which the two sides differ. Bind off and cast off,
// gauge and tension are named as a difference by teaching pages of the trade;
// stockinette is in the Craft Yarn Council's list of abbreviations (from memory),
// and stocking stitch is common practice, no source. A yarn over is called so on
// both sides: the UK's yfwd, yon and yrn depend on the stitches beside it. The
// abbreviation CO is that of cast on, so casting off has none.
var terms = []term{
	{"bind off", "cast off"},
	{"bind-off", "cast-off"},
	{"binding off", "casting off"},
	{"bound off", "cast off"},
	{"BO", "cast off"},
	{"stockinette", "stocking stitch"},
	{"gauge", "tension"},
	{"gauges", "tensions"},
}

// Say puts a sentence of the program into the terms. It changes whole words
// only, keeps a capital at their head, and leaves the path of a field as it is.
// What a person typed should be put into a sentence after this, not before.
func (t Terms) Say(sentence string) string {
	if t != UK {
		return sentence
	}
	for _, one := range terms {
		sentence = swap(sentence, one.us, one.uk)
		if head, rest := one.us[:1], one.us[1:]; head != strings.ToUpper(head) {
			sentence = swap(sentence, strings.ToUpper(head)+rest, capital(one.uk))
		}
	}
	return sentence
}

// swap replaces a word, or words in a row, wherever they stand by themselves.
func swap(text, word, by string) string {
	at := strings.Index(text, word)
	if at < 0 {
		return text
	}
	var b strings.Builder
	for ; at >= 0; at = strings.Index(text, word) {
		b.WriteString(text[:at])
		before := lastOf(b.String())
		text = text[at+len(word):]
		if joins(before) || joinedTo(text) {
			b.WriteString(word)
		} else {
			b.WriteString(by)
		}
	}
	b.WriteString(text)
	return b.String()
}

// lastOf returns the last character of a text; utf8.RuneError if it is empty.
func lastOf(text string) rune {
	last, _ := utf8.DecodeLastRuneInString(text)
	return last
}

// joins reports whether a character belongs to the word or path beside it.
func joins(r rune) bool {
	return r != utf8.RuneError && (unicode.IsLetter(r) || unicode.IsDigit(r) || r == '_')
}

// joinedTo reports whether a word goes on in the text after it: by a letter, or
// as a path does, by a point and a key.
func joinedTo(text string) bool {
	next, size := utf8.DecodeRuneInString(text)
	if next != '.' {
		return joins(next)
	}
	further, _ := utf8.DecodeRuneInString(text[size:])
	return joins(further)
}
