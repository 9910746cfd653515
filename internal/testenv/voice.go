package testenv

import (
	"regexp"
	"strings"
	"unicode"
)

// LongestSentence is the greatest number of words of a message, a label or a
// sentence on a page: more are not read while the work is in the hands (common
// practice, no source).
const LongestSentence = 20

// NotSaid are words that one knitter would not say to another over their work:
// those of the workshop behind the page (common practice, no source). A stitch on
// a chart is a stitch, and the yarn carried behind it a strand.
var NotSaid = regexp.MustCompile(`(?i)\b(cells?|floats?|reckon(s|ed|ing)?|sureness|doubt(s|ful)?|revisions?|parameters?|invalid|delta|residuals?|` +
	`databases?|schemas?|null|booleans?|strings?|servers?|toggles?|clicks?|lambda|optimal|optimum|algorithms?|solver|fragments?|tokens?|variants?|payload|timestamps?)\b`)

var sentenceEnd = regexp.MustCompile(`([.!?])\s+`)

// Sentences cuts a text where a sentence ends.
func Sentences(text string) []string {
	return strings.Split(strings.TrimSpace(sentenceEnd.ReplaceAllString(text+" ", "$1\n")), "\n")
}

// WordCount returns how many words a sentence has. A sign by itself, such as a
// point or an arrow between numbers, is none.
func WordCount(sentence string) int {
	n := 0
	for _, word := range strings.Fields(sentence) {
		if strings.IndexFunc(word, func(r rune) bool { return unicode.IsLetter(r) || unicode.IsDigit(r) || r == '…' }) >= 0 {
			n++
		}
	}
	return n
}
