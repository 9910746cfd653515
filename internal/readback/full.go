package readback

import (
	"regexp"
	"strings"
)

// A text may name stitches in full words, where others have the trade's abbreviations, or
// tell what an abbreviation means before it is used.

// means finds lines that only tell what abbreviations and signs mean.
var means = regexp.MustCompile(`^\S+(?: \S+)? means: `)

// inWords are the abbreviations of stitches by their names in full words, the longer first.
var inWords = []struct {
	name *regexp.Regexp
	op   string
}{
	{regexp.MustCompile(`\b[Kk]nit one through the back loop\b`), "k tbl"},
	{regexp.MustCompile(`\b[Pp]url one through the back loop\b`), "p tbl"},
	{regexp.MustCompile(`\b[Ss]lip-slip-knit\b`), "ssk"},
	{regexp.MustCompile(`\b[Ss]lip-slip-purl\b`), "ssp"},
	{regexp.MustCompile(`\b[Ss]lip-knit two-pass\b`), "sk2p"},
	{regexp.MustCompile(`\b[Ss]lip two-knit-pass\b`), "s2kp"},
	{regexp.MustCompile(`\b[Kk]nit two together\b`), "k2tog"},
	{regexp.MustCompile(`\b[Pp]url two together\b`), "p2tog"},
	{regexp.MustCompile(`\b[Kk]nit three together\b`), "k3tog"},
	{regexp.MustCompile(`\b[Kk]nit front and back\b`), "kfb"},
	{regexp.MustCompile(`\b[Mm]ake one left\b`), "M1L"},
	{regexp.MustCompile(`\b[Mm]ake one right\b`), "M1R"},
	{regexp.MustCompile(`\b[Mm]ake one\b`), "M1"},
	{regexp.MustCompile(`\b[Ll]ift one left\b`), "LLI"},
	{regexp.MustCompile(`\b[Ll]ift one right\b`), "RLI"},
	{regexp.MustCompile(`\b[Yy]arn over\b`), "yo"},
}

// some finds stitches that are worked some times.
var some = regexp.MustCompile(`\b([Kk]nit|[Pp]url|[Ss]lip) (\d+)\b`)

// notSome are how sentences go on that tell something else after such words.
var notSome = []string{" to waste", " from waste", " with waste", " each", " stitch", " more"}

// abbreviated returns a line with the stitches that it names in words abbreviated.
func abbreviated(line string) string {
	for _, one := range inWords {
		line = one.name.ReplaceAllString(line, one.op)
	}
	var b strings.Builder
	at := 0
	for _, found := range some.FindAllStringSubmatchIndex(line, -1) {
		word, rest := line[found[2]:found[3]], line[found[1]:]
		if strings.HasSuffix(line[:found[0]], "pick up and ") || strings.HasSuffix(line[:found[0]], "Pick up and ") {
			continue
		}
		other := false
		for _, next := range notSome {
			other = other || strings.HasPrefix(rest, next)
		}
		if other {
			continue
		}
		short := map[byte]string{'k': "k", 'p': "p", 's': "sl"}[strings.ToLower(word)[0]]
		b.WriteString(line[at:found[0]] + short + line[found[4]:found[5]])
		at = found[1]
	}
	return b.String() + line[at:]
}
