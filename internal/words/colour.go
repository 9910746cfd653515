package words

import (
	"fmt"
	"slices"
	"strings"

	"thenar/internal/stitch"
)

// Coloured returns a round in words, as Round does, with the yarn of each run:
// "K3 rust, (k1 cream, k2 rust) 4 times (15)". A yarn is named where it changes. yarns has
// the name of one for every operation, as it stands in the round; a round in one yarn names
// it once.
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

// dyedRun is a run of a round in words, cut where the name of its yarn goes.
type dyedRun struct {
	head, tail string
	yarn       string // that it is worked in; empty: none
	last       string // the yarn after it, if that is another one
	whole      bool   // it names its own yarns
}

// text returns a token; its yarn is named unless the one before it was worked in the same.
func (t dyedRun) text(going string) string {
	if t.yarn == "" || t.whole {
		return t.head
	}
	if t.yarn == going {
		return strings.TrimSuffix(t.head, " in") + t.tail
	}
	return t.head + " " + t.yarn + t.tail
}

// after returns the yarn that a reader goes on with after a token; empty: none is known.
func (t dyedRun) after(going string) string {
	switch {
	case t.whole:
		return t.last
	case t.yarn == "":
		return going
	}
	return t.yarn
}

// colouredRuns returns the runs of equal operations in one yarn, of those of a round from one
// on and before another.
func colouredRuns(r stitch.Round, of RoundDyed, from, to int) []dyedRun {
	var tokens []dyedRun
	ops, yarns := r.Ops, of.Yarns
	for i := from; i < to; {
		n := 1
		for i+n < to && alike(r, i, i+n) && (yarns[i+n] == yarns[i] || !inYarn(ops[i]) || ops[i] == stitch.CastOn) {
			n++
		}
		one, text := dyedRun{yarn: yarns[i]}, runAt(r, i, n)
		switch {
		case ops[i] == stitch.CastOn && len(inYarns(ops[i:i+n], yarns[i:i+n])) > 1:
			one.head, one.whole, one.last = text+": "+loops(yarns[i:i+n]), true, yarns[i+n-1]
		case !inYarn(ops[i]):
			one.head, one.yarn = text, ""
		case strings.HasPrefix(text, "("): // "(k2tog) twice"
			op := ops[i].Abbr() + turned(r.Side, ops[i])
			if op != ops[i].Abbr() { // as seen from the right side
				op += " in"
			}
			one.head, one.tail = "("+op, ") "+Times(n)
		case strings.Contains(strings.TrimPrefix(text, ops[i].Abbr()), " "): // "pick up and knit 3"
			one.head = text + " in"
		default:
			one.head = text
		}
		if text != "" {
			tokens = append(tokens, one)
		}
		i += n
	}
	return tokens
}

// loops tells loops of several yarns: "3 cream, 1 rust".
func loops(yarns []string) string {
	var list []string
	for i := 0; i < len(yarns); {
		n := 1
		for i+n < len(yarns) && yarns[i+n] == yarns[i] {
			n++
		}
		list = append(list, fmt.Sprintf("%d %s", n, yarns[i]))
		i += n
	}
	return strings.Join(list, ", ")
}

// inColours returns tokens in words: those that come again at once as groups in brackets,
// each yarn named where it changes. A group of several yarns names its first, since it is
// begun after its own last one.
func inColours(tokens []dyedRun) (parts []string) {
	full := make([]string, len(tokens))
	for i, t := range tokens {
		full[i] = t.text("")
	}
	going := ""
	for i := 0; i < len(tokens); {
		size, times := repeat(full[i:])
		if times < 2 {
			parts = append(parts, tokens[i].text(going))
			going = tokens[i].after(going)
			i++
			continue
		}
		var text string
		text, going = grouped(tokens[i:i+size], going)
		parts = append(parts, text+" "+Times(times))
		i += size * times
	}
	return parts
}

// grouped returns tokens in brackets, and the yarn after them.
func grouped(tokens []dyedRun, going string) (text, after string) {
	if slices.ContainsFunc(tokens, func(t dyedRun) bool { return t.whole || t.yarn != "" && t.yarn != going }) {
		going = ""
	}
	list := make([]string, len(tokens))
	for i, t := range tokens {
		list[i], going = t.text(going), t.after(going)
	}
	return "(" + strings.Join(list, ", ") + ")", going
}

// wholly returns a part of a round that is one group worked again and again: "(k1 cream, k2
// rust, k1 cream) 11 times"; "" if it isn't, or if the group would have others in it.
func wholly(r stitch.Round, of RoundDyed) string {
	n := len(r.Ops)
	for size := 2; 2*size <= n; size++ {
		if n%size > 0 || !comesAgain(r, of, size) {
			continue
		}
		tokens := colouredRuns(r, of, 0, size)
		if len(tokens) < 2 || slices.ContainsFunc(tokens, func(t dyedRun) bool { return strings.HasPrefix(t.head, "(") }) {
			return ""
		}
		text, _ := grouped(tokens, "")
		return text + " " + Times(n/size)
	}
	return ""
}

// comesAgain reports whether what is worked is the same after every so many operations.
func comesAgain(r stitch.Round, of RoundDyed, size int) bool {
	for i := size; i < len(r.Ops); i++ {
		if !inYarn(r.Ops[i]) || !alike(r, i-size, i) || of.Yarns[i] != of.Yarns[i-size] {
			return false
		}
	}
	return true
}

// small returns a sentence with a small first letter, to follow a colon. An abbreviation is
// written in one way wherever it stands.
func small(sentence string) string {
	if abbreviated.MatchString(sentence) {
		return sentence
	}
	return strings.ToLower(sentence[:1]) + sentence[1:]
}
