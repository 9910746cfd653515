// Package words puts schedules, plans and rounds into written instructions.
// It gives structure and plain text; no page knows of it.
package words

import (
	"fmt"
	"strings"

	"thenar/internal/stitch"
)

// longestGroup is the most words of a round that are read as one repeat.
const longestGroup = 6

// phrase puts the operations of one round into words: runs are counted
// ("k5"), what comes again at once stands in brackets ("(k6, M1) 4 times").
func phrase(r stitch.Round) string { return joinRepeats(runs(r)) }

func joinRepeats(tokens []string) string {
	var parts []string
	for i := 0; i < len(tokens); {
		size, repeats := repeat(tokens[i:])
		if repeats < 2 {
			parts = append(parts, tokens[i])
			i++
			continue
		}
		group := strings.Join(tokens[i:i+size], ", ")
		parts = append(parts, fmt.Sprintf("(%s) %s", group, Times(repeats)))
		i += size * repeats
	}
	return strings.Join(parts, ", ")
}

// repeat finds the group at the head of tokens that covers the most by
// standing again and again; the shorter group at equal cover. A single word
// is no group: runs have been counted already.
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

// runs counts equal operations that follow each other.
func runs(r stitch.Round) []string {
	var tokens []string
	for i := 0; i < len(r.Ops); {
		n := 1
		for i+n < len(r.Ops) && alike(r, i, i+n) {
			n++
		}
		if token := run(r.Ops[i], n, r.SetAt(i)); token != "" {
			tokens = append(tokens, token)
		}
		i += n
	}
	return tokens
}

// alike reports whether two operations of a round are the same, stitches that
// are kept aside under the same name among them.
func alike(r stitch.Round, i, j int) bool { return r.Ops[i] == r.Ops[j] && r.SetAt(i) == r.SetAt(j) }

// run is n of one operation in the trade's short form; set is under what name
// stitches are kept aside.
func run(op stitch.Op, n int, set stitch.Set) string {
	switch op {
	case stitch.NoStitch, stitch.Marker:
		return ""
	case stitch.Hold:
		return fmt.Sprintf("slip %d to waste yarn%s", n, set.For())
	case stitch.CastOn:
		return fmt.Sprintf("cast on %d with backward loops", n)
	case stitch.PickUp:
		return fmt.Sprintf("pick up and knit %d", n)
	case stitch.BindOff:
		return fmt.Sprintf("bind off %d", n)
	case stitch.DrawUp:
		return fmt.Sprintf("draw the yarn through the last %d", n)
	case stitch.Graft:
		return fmt.Sprintf("graft the last %d", n)
	case stitch.Knit, stitch.Purl, stitch.Slip:
		return fmt.Sprintf("%s%d", op.Abbr(), n)
	}
	if n == 1 {
		return op.Abbr()
	}
	return fmt.Sprintf("(%s) %s", op.Abbr(), Times(n))
}

// Times is "once", "twice", "3 times".
func Times(n int) string {
	switch n {
	case 1:
		return "once"
	case 2:
		return "twice"
	}
	return fmt.Sprintf("%d times", n)
}

// Ordinal is 1st, 2nd, 3rd, 4th, 11th, 21st.
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

// Plural is "1 stitch", "2 stitches": the noun's plural adds es after a
// hissing sound, else s.
func Plural(n int, noun string) string {
	if n == 1 || n == -1 {
		return fmt.Sprintf("%d %s", n, noun)
	}
	if strings.HasSuffix(noun, "ch") || strings.HasSuffix(noun, "s") {
		return fmt.Sprintf("%d %ses", n, noun)
	}
	return fmt.Sprintf("%d %ss", n, noun)
}

// List is "1, 4 and 7" as a list without the and: "1, 4, 7".
func List(numbers []int) string {
	return strings.Trim(strings.ReplaceAll(fmt.Sprint(numbers), " ", ", "), "[]")
}
