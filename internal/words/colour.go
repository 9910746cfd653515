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
	used := inYarns(r.Ops, yarns)
	if len(used) == 0 {
		return Round(part, r)
	}
	if len(used) == 1 {
		return fmt.Sprintf("In %s: %s", used[0], small(Round(part, r)))
	}
	if r.Side == stitch.WrongSide {
		r, yarns = r.AsWorked(), slices.Clone(yarns)
		slices.Reverse(yarns)
	}
	if !part.Marked() || r.Lead == 0 || r.Lead == len(r.Ops) {
		return fmt.Sprintf("%s (%d).", opening(joinRepeats(colouredRuns(r, yarns))), r.Out())
	}
	to := r.Before + r.Lead
	lead := joinRepeats(colouredRuns(cut(r, r.Before, to), yarns[r.Before:to]))
	if r.Before > 0 {
		lead = joinRepeats(colouredRuns(cut(r, 0, r.Before), yarns[:r.Before])) + " | " + lead
	}
	hand := joinRepeats(colouredRuns(cut(r, to, len(r.Ops)), yarns[to:]))
	if of := inYarns(r.Ops[to:], yarns[to:]); len(of) == 1 && plain(r.Ops[to:]) {
		hand = "knit " + of[0] + " to the end"
	}
	return fmt.Sprintf("%s | %s %s.", opening(lead), hand, counted(part, r))
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

// colouredRuns returns the runs of equal operations in one yarn, in words.
func colouredRuns(r stitch.Round, yarns []string) []string {
	var tokens []string
	ops := r.Ops
	for i := 0; i < len(ops); {
		n := 1
		for i+n < len(ops) && alike(r, i, i+n) && (yarns[i+n] == yarns[i] || !inYarn(ops[i])) {
			n++
		}
		token := run(ops[i], n, r.SetAt(i), turned(r.Side, ops[i])) + atCorner(ops, i)
		switch {
		case token == "" || !inYarn(ops[i]):
		case strings.HasPrefix(token, "("): // "(k2tog) twice"
			token = fmt.Sprintf("(%s%s %s) %s", ops[i].Abbr(), turned(r.Side, ops[i]), yarns[i], Times(n))
		case strings.Contains(token, " "): // "pick up and knit 3"
			token += " in " + yarns[i]
		default:
			token += " " + yarns[i]
		}
		if token != "" {
			tokens = append(tokens, token)
		}
		i += n
	}
	return tokens
}

// small returns a sentence with a small first letter, to follow a colon.
func small(sentence string) string {
	return strings.ToLower(sentence[:1]) + sentence[1:]
}
