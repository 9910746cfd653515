package paper

import (
	"strings"
	"unicode"
	"unicode/utf8"

	"thenar/internal/draw"
)

// What a number is not parted from: its unit or noun behind it, or the noun that it counts
// on from before it.
var (
	afterNumber = nouns("cm in mm m yd g stitch stitches round rounds row rows " +
		"held times ball balls marker decreased decrease increase picked ribbing")
	beforeNumber = nouns("round rounds Round Rounds weight US page part over every to")
	named        = nouns("round rounds Round Rounds") // by their number, unless that counts what follows
)

func nouns(list string) map[string]bool {
	set := map[string]bool{}
	for _, n := range strings.Fields(list) {
		set[n] = true
	}
	return set
}

// bound joins what stays on one line: "9 stitches", "round 13", "125 cm / 50 in".
func bound(text string) string {
	if !strings.ContainsFunc(text, unicode.IsDigit) && !strings.ContainsAny(text, "⅛¼⅜½⅝¾⅞≈") {
		return text
	}
	words := strings.Split(text, " ")
	var b strings.Builder
	for i, w := range words {
		if i > 0 {
			joint := " "
			if joined(words, i) {
				joint = draw.Hard
			}
			b.WriteString(joint)
		}
		b.WriteString(w)
	}
	return b.String()
}

// joined reports whether the ith word stays with the one before it.
func joined(words []string, i int) bool {
	before, at := words[i-1], words[i]
	noun := strings.TrimLeft(before, "(")
	switch {
	case numbers(words, i-1), isNumber(at) && beforeNumber[noun] && !(named[noun] && numbers(words, i)), before == "≈", before == "→", at == "→", before == "(+", before == "−":
		return true
	case at == "/":
		return i > 1 && i+1 < len(words) && isNumber(words[i-2]) && isNumber(words[i+1])
	case before == "/":
		return isNumber(at) && i > 2 && isNumber(words[i-3])
	}
	return false
}

// numbers reports whether the ith word is a number of what comes next: "3" in "every 2nd
// round 3 times", but not in "round 3".
func numbers(words []string, i int) bool {
	return isNumber(words[i]) && i+1 < len(words) && afterNumber[strings.TrimRight(words[i+1], ".,;:)")]
}

// isNumber reports whether a word is a number or begins with one: "13", "(24.4", "2⅜",
// "3.25–3.75", "16,".
func isNumber(word string) bool {
	r, _ := utf8.DecodeRuneInString(strings.TrimLeft(word, "(≈−+"))
	return unicode.IsDigit(r) || strings.ContainsRune("⅛¼⅜½⅝¾⅞", r)
}

// spelt writes fractions in whole letters: "2 5/8" for "2⅝", whose figures are too small
// in large print.
func spelt(text string) string {
	if !strings.ContainsAny(text, "⅛¼⅜½⅝¾⅞") {
		return text
	}
	var b strings.Builder
	last := ' '
	for _, r := range text {
		if f := fractions[r]; f != "" {
			if unicode.IsDigit(last) {
				b.WriteString(draw.Hard)
			}
			b.WriteString(f)
		} else {
			b.WriteRune(r)
		}
		last = r
	}
	return b.String()
}

// fractions are the fractions of an inch on a tape.
var fractions = map[rune]string{'⅛': "1/8", '¼': "1/4", '⅜': "3/8", '½': "1/2", '⅝': "5/8", '¾': "3/4", '⅞': "7/8"}
