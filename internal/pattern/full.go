package pattern

import (
	"regexp"
	"slices"
	"strings"

	"thenar/internal/project"
	"thenar/internal/words"
)

// Wording says how stitches are written.
type Wording int

// The ways to write stitches.
const (
	Short Wording = iota // by abbreviations: "k2tog"
	Full                 // in full words: "knit two together"
	Both                 // by abbreviations, each explained before its first use
)

// fullNames are the names of stitches that an abbreviation stands for, in words that stand
// in a list: without commas and without figures.
var fullNames = []struct {
	in   *regexp.Regexp
	full string
}{
	{regexp.MustCompile(`\bk2tog\b`), "knit two together"},
	{regexp.MustCompile(`\bp2tog\b`), "purl two together"},
	{regexp.MustCompile(`\bk3tog\b`), "knit three together"},
	{regexp.MustCompile(`\bssk\b`), "slip-slip-knit"},
	{regexp.MustCompile(`\bssp\b`), "slip-slip-purl"},
	{regexp.MustCompile(`\bsk2p\b`), "slip-knit two-pass"},
	{regexp.MustCompile(`\bs2kp\b`), "slip two-knit-pass"},
	{regexp.MustCompile(`\bkfb\b`), "knit front and back"},
	{regexp.MustCompile(`\bM1L\b`), "make one left"},
	{regexp.MustCompile(`\bM1R\b`), "make one right"},
	{regexp.MustCompile(`\bM1\b`), "make one"},
	{regexp.MustCompile(`\bLLI\b`), "lift one left"},
	{regexp.MustCompile(`\bRLI\b`), "lift one right"},
	{regexp.MustCompile(`\byo\b`), "yarn over"},
	{regexp.MustCompile(`\bk tbl\b`), "knit one through the back loop"},
	{regexp.MustCompile(`\bp tbl\b`), "purl one through the back loop"},
	{regexp.MustCompile(`\bk(\d)`), "knit $1"},
	{regexp.MustCompile(`\bp(\d)`), "purl $1"},
	{regexp.MustCompile(`\bsl(\d)`), "slip $1"},
}

// inFull returns a sentence with its stitches in full words.
func inFull(text string) string {
	out := text
	for _, name := range fullNames {
		out = name.in.ReplaceAllString(out, name.full)
	}
	if out != text && text[:1] != out[:1] || strings.HasPrefix(text, "k") || strings.HasPrefix(text, "p") {
		out = strings.ToUpper(out[:1]) + out[1:]
	}
	return out
}

// explained puts before each line what the abbreviations mean that are used there first.
func (t *Text) explained(out *project.Outputs) {
	known := map[string]bool{}
	for i := range t.Passages {
		p := &t.Passages[i]
		its := map[string]bool{}
		var lines []Line
		for k := 0; k < len(p.Lines); {
			n := 1
			for k+n < len(p.Lines) && p.Lines[k+n].Under {
				n++
			}
			var means []string
			for _, sign := range meant(texts(p.Lines[k:k+n]), out) {
				if !known[sign.Sign] && !its[sign.Sign] {
					its[sign.Sign] = true
					means = append(means, sign.Sign+" means: "+sign.Line+".")
				}
			}
			if means != nil {
				lines = append(lines, Line{Key: p.Lines[k].Key + "/means", For: p.For, Body: []Piece{{Text: strings.Join(means, " ")}}})
			}
			lines = append(lines, p.Lines[k:k+n]...)
			k += n
		}
		if p.Lines = lines; len(p.For) == len(t.Sizes) {
			for sign := range its {
				known[sign] = true
			}
		}
	}
}

// texts returns what lines say, for each of their sizes, each text once.
func texts(lines []Line) (list []string) {
	known := map[string]bool{}
	for _, l := range lines {
		for i := range l.For {
			var b strings.Builder
			for _, p := range l.Body {
				b.WriteString(p.of(i))
			}
			if text := b.String(); !known[text] {
				known[text] = true
				list = append(list, text)
			}
		}
	}
	return list
}

// signs returns what the abbreviations and signs of a text mean.
func (t *Text) signs(out *project.Outputs, how Wording) []words.Sign {
	var lines []Line
	tables, zeros := false, false
	for _, p := range t.Passages {
		lines = append(lines, p.Lines...)
	}
	for _, l := range lines {
		tables = tables || l.Table != nil
		for _, piece := range l.Body {
			zeros = zeros || !piece.Same && slices.Contains(piece.Values, "0")
		}
	}
	said := texts(lines)
	list := meant(said, out)
	if how == Full {
		list = append(named(said, out), list...)
	}
	if n := len(t.Sizes); n > 1 {
		list = append(list, words.Sign{Sign: t.sizeSign(), Line: "the first number is for size " + t.Sizes[0] + ", those in round brackets for the others in their order"})
	}
	if zeros {
		list = append(list, words.Sign{Sign: "0", Line: "nothing to do in this size"})
	}
	if tables {
		list = append(list, words.Sign{Sign: none, Line: "nothing in this size"})
	}
	return list
}

// meant returns what the abbreviations and signs of texts mean. How a make one that leans is
// worked is told, too: a pattern may have no chart that shows it.
func meant(texts []string, out *project.Outputs) []words.Sign {
	list := out.Terms.Signs(texts, nil, out.Charts.FromLeft)
	for i, s := range list {
		term := words.Term(s.Sign)
		if (term == words.TermM1L || term == words.TermM1R) && !out.Charts.FromLeft {
			_, list[i].Line = out.Terms.Explained(term)
		}
	}
	return list
}

// named returns how stitches are worked that texts name in full words.
func named(texts []string, out *project.Outputs) (list []words.Sign) {
	said := strings.ToLower(strings.Join(texts, "\n"))
	for _, name := range fullNames {
		abbr := strings.Trim(name.in.String(), `\b`)
		if strings.HasSuffix(name.full, "$1") || !regexp.MustCompile(`\b`+name.full+`(?:[,:.)\n]| \||$)`).MatchString(said) {
			continue
		}
		for _, sign := range meant([]string{abbr}, out) {
			if sign.Line != name.full {
				list = append(list, words.Sign{Sign: name.full, Line: sign.Line})
			}
		}
	}
	return list
}

// sizeSign shows how the numbers of the sizes stand in the text: "6 (7, 8)".
func (t *Text) sizeSign() string {
	return listed(t.Sizes)
}
