package words

import (
	"fmt"
	"slices"
	"strings"

	"thenar/internal/stitch"
)

// Coloured returns a round in words, as Round does, with the yarn of each run:
// "K3 rust, (k1 cream, k2 rust) 4 times (15)". yarns has the name of one for
// every operation, as it stands in the round; a round in one yarn names it once.
func Coloured(part stitch.Part, r stitch.Round, yarns []string) string {
	return (*dyer)(nil).coloured(part, r, RoundDyed{Yarns: yarns})
}

// inYarns returns the yarns that operations are worked in.
func inYarns(ops []stitch.Op, yarns []string) []string {
	var used []string
	for i, op := range ops {
		if inYarn(op) && !slices.Contains(used, yarns[i]) {
			used = append(used, yarns[i])
		}
	}
	return used
}

// inYarn reports whether an operation is worked with the yarn.
func inYarn(op stitch.Op) bool {
	return op != stitch.NoStitch && op != stitch.Marker && op != stitch.Hold
}

// colouredRuns returns the runs of equal operations in one yarn, in words, of those of a round
// from one on and before another.
func colouredRuns(r stitch.Round, of RoundDyed, from, to int) []string {
	var tokens []string
	ops, yarns := r.Ops, of.Yarns
	for i := from; i < to; {
		n := 1
		for i+n < to && alike(r, i, i+n) && (yarns[i+n] == yarns[i] || !inYarn(ops[i])) && of.catches(i+n) == "" {
			n++
		}
		token := runAt(r, i, n)
		switch {
		case token == "" || !inYarn(ops[i]):
		case strings.HasPrefix(token, "("): // "(k2tog) twice"
			one := ops[i].Abbr() + turned(r.Side, ops[i])
			if strings.Contains(one, " ") { // "k tbl"
				one += " in"
			}
			token = fmt.Sprintf("(%s %s) %s", one, yarns[i], Times(n))
		case strings.Contains(token, " "): // "pick up and knit 3"
			token += " in " + yarns[i]
		default:
			token += " " + yarns[i]
		}
		if of.catches(i) != "" && token != "" {
			token += fmt.Sprintf(" catching %s every %d", of.catches(i), of.Every)
		}
		if token != "" {
			tokens = append(tokens, token)
		}
		i += n
	}
	return tokens
}

// small returns a sentence with a small first letter, to follow a colon. An abbreviation is
// written in one way wherever it stands.
func small(sentence string) string {
	if abbreviated.MatchString(sentence) {
		return sentence
	}
	return strings.ToLower(sentence[:1]) + sentence[1:]
}
