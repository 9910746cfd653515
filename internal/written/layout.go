package written

import (
	"regexp"
	"slices"
	"strings"
)

// Texts are pasted from letters, lists and Markdown: what only sets a line is taken off before
// it is read.

// bullets begin the lines of a list.
var bullets = []string{"•", "·", "▪", "◦", "‣", "○", "●", "☐", "□", "-", "—", "✓", ">"}

// title is a heading of Markdown.
var title = regexp.MustCompile(`^ {0,3}#{1,6} `)

// dress is how a text is set.
type dress struct {
	escaped bool // asterisks that mean one stand behind a backslash
	titled  bool // titles begin with signs of number
}

func dressOf(lines []string) (d dress) {
	for _, l := range lines {
		d.escaped = d.escaped || strings.Contains(l, `\*`)
		d.titled = d.titled || title.MatchString(l)
	}
	return d
}

// undress takes off what only sets a line; fresh reports whether the line begins anew, so that
// it doesn't go on with the one before it.
func (d dress) undress(t []token) (rest []token, fresh bool) {
	for n := 0; d.titled && n < len(t) && t[n].low == "#"; n++ {
		if n+1 < len(t) && !t[n+1].tight {
			t, fresh = t[n+1:], true
			break
		}
	}
	for len(t) > 2 && slices.Contains(bullets, t[0].low) && !t[1].tight && (t[1].kind == word || t[1].low == "*" || closing[t[1].low] != "") {
		t, fresh = t[1:], true
	}
	switch {
	case len(t) > 2 && t[0].kind == whole && (t[1].low == ")" || t[1].low == "." && (t[0].n < 60)) && t[1].tight && !t[2].tight && (t[2].kind == word || t[2].kind == mark):
		t, fresh = t[2:], true // "1) Cast on", "2. Knit"
	case len(t) > 3 && t[0].low == "step" && (t[1].kind == whole || lettered(t[1].low) > 0) && t[2].kind == mark:
		t, fresh = t[3:], true
	}
	if d.escaped {
		return unescaped(t), fresh
	}
	return plain(t), fresh
}

// unescaped drops what sets words off, and the backslashes before asterisks that mean one.
func unescaped(t []token) []token {
	out := t[:0]
	for i, one := range t {
		switch {
		case one.low == `\`, one.low == "_", one.low == "`", one.low == "*" && (i == 0 || t[i-1].low != `\`):
		default:
			out = append(out, one)
		}
	}
	return out
}

// plain drops pairs of asterisks around a title: "**Round 1:** knit".
func plain(t []token) []token {
	twice := func(i int) bool { return i+1 < len(t) && t[i].low == "*" && t[i+1].low == "*" && t[i+1].tight }
	for i := 0; i+2 < len(t); i++ {
		if !twice(i) || !t[i+2].tight || i > 0 && t[i].tight {
			continue
		}
		for j := i + 3; j+1 < len(t); j++ {
			if !twice(j) {
				continue
			}
			if t[j].tight && (t[j-1].low == ":" || j+2 == len(t) && i == 0 || j+2 < len(t) && t[j+2].low == ":") {
				return plain(append(append(append([]token{}, t[:i]...), t[i+2:j]...), t[j+2:]...))
			}
			break
		}
	}
	return t
}

// explains reports whether a line tells what an abbreviation means: "M1L: lift the bar", "k2tog =
// knit two together", "pm/sm: place or slip a marker", "K2tog – knit two together".
func explains(t []token) bool {
	if len(t) < 3 || !short(t[0].low) {
		return false
	}
	p := parser{t: t, sizes: 1}
	if _, _, ok := p.label(); ok {
		return false
	}
	at, several := 1, false
	for ; at < len(t)-1 && at < 12; at++ {
		if low := t[at].low; low != "(" && low != ")" && low != "s" && low != "/" {
			if low != "," && low != "or" && low != "and" && !short(low) {
				break
			}
			several = true
		}
	}
	switch t[at].low {
	case ":", "=":
		return true
	case "—", "-":
		return !several && at+1 < len(t) && t[at+1].kind == word && (t[at].low == "—" || !t[at].tight)
	}
	return false
}

// short reports whether a word is an abbreviation that lists explain.
func short(low string) bool {
	switch low {
	case "knit", "purl", "slip":
		return false
	}
	_, crosses := cable(low)
	return crosses || abbreviated[low] || signs[low].name != ""
}

// abbreviated are short words besides stitches that lists of abbreviations explain.
var abbreviated = map[string]bool{
	"st": true, "sts": true, "rnd": true, "rnds": true, "rs": true, "ws": true, "pm": true, "sm": true, "rm": true, "bor": true, "mc": true, "cc": true,
	"rep": true, "beg": true, "tbl": true, "inc": true, "dec": true, "ds": true, "w&t": true, "co": true, "bo": true, "dpn": true, "dpns": true, "m": true, "wyif": true, "wyib": true,
	"mk": true, "mds": true, "tog": true, "rem": true, "patt": true, "cont": true, "foll": true, "lh": true, "rh": true, "approx": true,
}
