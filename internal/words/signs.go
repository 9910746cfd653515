package words

import (
	"cmp"
	"regexp"
	"slices"
	"strings"

	"thenar/internal/stitch"
)

// A Sign is an abbreviation, or another sign, of printed instructions or of their
// chart, with the line that explains it.
type Sign struct {
	Sign, Line string
	Op         stitch.Op // the operation that it stands for; NoStitch for any other sign
	Charted    bool      // a chart shows the operation by its symbol
}

// Signs lists every abbreviation and sign that some texts use, and every operation
// that a chart beside them shows, each once: first what is charted, then the other
// abbreviations in the order of the table of operations, then the other signs.
// Nothing is listed that is not used. Charted are operations by the names that the
// texts give them, for a person who knits from left to right or not.
func (t Terms) Signs(texts []string, charted []stitch.Op, fromLeft bool) []Sign {
	text := strings.Join(texts, "\n")
	var shown, list []Sign
	for _, op := range stitch.All() {
		sign := Sign{Sign: t.Say(op.Abbr()), Line: t.Say(opLine(op, fromLeft)), Op: op, Charted: slices.Contains(charted, op)}
		switch {
		case sign.Sign == "":
		case sign.Charted:
			shown = append(shown, sign)
		case written[op] != nil && strings.Contains(text, op.Abbr()[1:]) && written[op].MatchString(text): // the pattern alone is slow to say no
			list = append(list, sign)
		}
	}
	list = append(shown, list...)
	for _, other := range otherSigns {
		if found := other.in.FindString(text); found != "" {
			list = append(list, Sign{Sign: cmp.Or(other.sign, strings.TrimSuffix(found, ".")), Line: t.Say(other.line)})
		}
	}
	return list
}

// opLine returns what an operation means, in a line. A make one that leans is drawn
// beside the words; the one that may lean either way is told, and how ssk is slipped.
func opLine(op stitch.Op, fromLeft bool) string {
	switch op {
	case stitch.M1:
		return "make one, leaning either way: lift the next strand, twist it and knit it"
	case stitch.SSK:
		return "slip two as if to knit, one by one; knit the two together through the back loops"
	}
	return cmp.Or(growthLine(op, fromLeft), op.Words())
}

// written holds how the words of a round write an operation, if by an abbreviation:
// counted ("k5"), or by itself, with a capital where a sentence begins. It is nil for
// operations that are written out, such as casting on.
var written = func() map[stitch.Op]*regexp.Regexp {
	all := map[stitch.Op]*regexp.Regexp{}
	for _, op := range stitch.All() {
		switch op {
		case stitch.NoStitch, stitch.Marker, stitch.Hold, stitch.Take, stitch.CastOn, stitch.PickUp, stitch.BindOff, stitch.DrawUp, stitch.Graft, stitch.JoinHem, stitch.GapK2tog, stitch.GapSSK, stitch.Waste, stitch.CornerM1:
			continue
		}
		abbr := op.Abbr()
		pattern := `\b[` + abbr[:1] + strings.ToUpper(abbr[:1]) + `]` + regexp.QuoteMeta(abbr[1:])
		if op == stitch.Knit || op == stitch.Purl || op == stitch.Slip {
			pattern += `\d+`
		}
		all[op] = regexp.MustCompile(pattern + `\b`)
	}
	return all
}()

// otherSigns are the signs that stand for no operation, each with the pattern that
// finds it. One without a sign is shown as it is first found.
var otherSigns = []struct {
	in         *regexp.Regexp
	sign, line string
}{
	{regexp.MustCompile(` \| `), "|", "the second marker"},
	{regexp.MustCompile(`\([^()]+\) (?:twice|\d+ times)\b`), "( )", "repeat what is in brackets"},
	{regexp.MustCompile(`\[[^\[\]]+\] (?:once|twice|\d+ times)\b`), "[ ]", "repeat what is in square brackets"},
	{regexp.MustCompile(`\bCatching `), "catching", "cross that yarn with the working one, behind a stitch, wherever it isn’t used for long"},
	{regexp.MustCompile(`\(\d+\)\.`), "", "stitches after the round"},
	{regexp.MustCompile(`\d → \d`), "→", "from … to …"},
}
