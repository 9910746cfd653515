// Package words puts schedules, plans and rounds into written instructions.
// It gives structure and plain text; no page knows of it.
package words

import (
	"fmt"
	"regexp"
	"slices"
	"strings"

	"thenar/internal/stitch"
)

// longestGroup is the largest number of words in one repeat.
const longestGroup = 6

// phrase returns the operations of one round in words: runs are counted ("k5"),
// and repeats are in brackets ("(k6, M1) 4 times").
func phrase(r stitch.Round) string { return joinRepeats(runs(r)) }

func joinRepeats(tokens []string) string { return strings.Join(repeats(tokens), ", ") }

// repeats returns tokens with those that come again at once as groups in brackets.
func repeats(tokens []string) (parts []string) {
	for i := 0; i < len(tokens); {
		size, times := repeat(tokens[i:])
		if times < 2 {
			parts = append(parts, tokens[i])
			i++
			continue
		}
		group := strings.Join(tokens[i:i+size], ", ")
		parts = append(parts, fmt.Sprintf("(%s) %s", group, Times(times)))
		i += size * times
	}
	return parts
}

// repeat returns the group of tokens at the head whose repeats cover the most
// tokens, the shortest of equals. A group has at least two words, since runs
// have been counted already.
func repeat(tokens []string) (size, repeats int) {
	best := 0
	for n := 2; n <= longestGroup && 2*n <= len(tokens); n++ {
		times := 1
		for (times+1)*n <= len(tokens) && same(tokens[:n], tokens[times*n:(times+1)*n]) {
			times++
		}
		if times > 1 && times*n > best {
			best, size, repeats = times*n, n, times
		}
	}
	return size, repeats
}

func same(a, b []string) bool {
	for i := range a {
		if a[i] != b[i] {
			return false
		}
	}
	return true
}

// runs returns the runs of equal operations, in words.
func runs(r stitch.Round) []string {
	var tokens []string
	for i := 0; i < len(r.Ops); {
		n := 1
		for i+n < len(r.Ops) && alike(r, i, i+n) {
			n++
		}
		token := runAt(r, i, n)
		if seamed := r.Row() && (i == 0 || i+n == len(r.Ops)); r.Ops[i] == stitch.CastOn && (seamed || outOfFabric(r)) {
			token = "cast on " + Plural(n, "backward loop")
		}
		if token != "" {
			tokens = append(tokens, token)
		}
		i += n
	}
	return tokens
}

// atCorner names the corner of the gap whose strand the ith operation takes in: the
// second one's stitch ends the round, or is the row's other one. It is empty for other operations.
func atCorner(ops []stitch.Op, i int) string {
	switch {
	case ops[i] == stitch.CornerM1 && slices.Contains(ops[:i], stitch.CornerM1):
		return " with the strand at corner 2"
	case ops[i] == stitch.CornerM1:
	case !atGap(ops[i]):
		return ""
	case i > 0 && i == len(ops)-1 && ops[i-1] != stitch.PickUp, slices.ContainsFunc(ops[:i], atGap):
		return " with the strand at corner 2"
	}
	return " with the strand at corner 1"
}

// atGap reports whether an operation takes in a strand of the gap.
func atGap(op stitch.Op) bool { return op == stitch.GapK2tog || op == stitch.GapSSK }

// alike reports whether two operations of a round are the same, including the
// name under which they keep stitches aside.
func alike(r stitch.Round, i, j int) bool {
	return r.Ops[i] == r.Ops[j] && r.SetAt(i) == r.SetAt(j) && r.Ops[i] != stitch.CornerM1
}

// runAt returns the run of n equal operations that begins with the ith of a round. What is
// kept beside stitches that are picked up waits already, and stays.
func runAt(r stitch.Round, i, n int) string {
	if r.Ops[i] == stitch.Hold && slices.Contains(r.Ops, stitch.PickUp) {
		return fmt.Sprintf("leave %d on waste yarn%s", n, r.SetAt(i).For())
	}
	return run(r.Ops[i], n, r.SetAt(i), turned(r.Side, r.Ops[i])) + atCorner(r.Ops, i)
}

// run returns n of one operation in the trade's short form; set names the
// stitches kept aside, how says how it is worked besides.
func run(op stitch.Op, n int, set stitch.Set, how string) string {
	switch op {
	case stitch.NoStitch, stitch.Marker:
		return ""
	case stitch.Hold:
		return fmt.Sprintf("slip %d to waste yarn%s", n, set.For())
	case stitch.Take:
		return fmt.Sprintf("knit %d from waste yarn%s", n, set.For())
	case stitch.CastOn:
		return "cast on a bridge of " + Plural(n, "backward loop")
	case stitch.PickUp:
		return fmt.Sprintf("pick up and knit %d", n)
	case stitch.JoinHem:
		return joined(n)
	case stitch.Waste:
		return fmt.Sprintf("knit %d with waste yarn and again with the working yarn", n)
	case stitch.CornerM1:
		return stitch.M1.Abbr()
	case stitch.BindOff:
		return fmt.Sprintf("bind off %d", n)
	case stitch.GapK2tog:
		return stitch.K2tog.Abbr()
	case stitch.GapSSK:
		return stitch.SSK.Abbr()
	case stitch.DrawUp:
		return fmt.Sprintf("draw the yarn through the last %d", n)
	case stitch.Graft:
		return fmt.Sprintf("graft the last %d", n)
	case stitch.Knit, stitch.Purl, stitch.Slip:
		return fmt.Sprintf("%s%d%s", op.Abbr(), n, how)
	}
	if n == 1 {
		return op.Abbr() + how
	}
	return fmt.Sprintf("(%s%s) %s", op.Abbr(), how, Times(n))
}

// abbreviated finds a round that begins with an abbreviation: "k1, …", "ssk, …".
var abbreviated = func() *regexp.Regexp {
	var list []string
	for _, op := range stitch.All() {
		if written[op] != nil {
			list = append(list, regexp.QuoteMeta(op.Abbr()))
		}
	}
	return regexp.MustCompile(`^(?:` + strings.Join(list, "|") + `)\d*(?:[ ,]|$)`)
}()

// opening returns a round as a sentence: with a capital, unless it begins with an
// abbreviation, which is written in one way wherever it stands.
func opening(text string) string {
	if text == "" || abbreviated.MatchString(text) {
		return text
	}
	return capital(text)
}

// Times returns "once", "twice", "3 times".
func Times(n int) string {
	switch n {
	case 1:
		return "once"
	case 2:
		return "twice"
	}
	return fmt.Sprintf("%d times", n)
}

// Ordinal returns 1st, 2nd, 3rd, 4th, 11th, 21st.
func Ordinal(n int) string {
	suffix := "th"
	if n%100 < 11 || n%100 > 13 {
		switch n % 10 {
		case 1:
			suffix = "st"
		case 2:
			suffix = "nd"
		case 3:
			suffix = "rd"
		}
	}
	return fmt.Sprintf("%d%s", n, suffix)
}

// Plural returns "1 stitch", "2 stitches". The plural adds es after a hissing
// sound, else s.
func Plural(n int, noun string) string {
	if n == 1 || n == -1 {
		return fmt.Sprintf("%d %s", n, noun)
	}
	if strings.HasSuffix(noun, "ch") || strings.HasSuffix(noun, "s") {
		return fmt.Sprintf("%d %ses", n, noun)
	}
	return fmt.Sprintf("%d %ss", n, noun)
}

// List joins numbers as in "1, 4, 7".
func List(numbers []int) string {
	return strings.Trim(strings.ReplaceAll(fmt.Sprint(numbers), " ", ", "), "[]")
}
