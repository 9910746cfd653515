package written

import (
	"strings"
	"unicode"
	"unicode/utf8"
)

// line takes the next line with those that go on with it, and reads its sentences.
func (r *reader) line() {
	t := r.lines[r.at]
	indented := strings.HasPrefix(r.raw[r.at], "  ")
	r.at++
	if len(t) == 0 {
		if r.block {
			r.only, r.block = nil, false
		}
		return
	}
	if r.table(t, indented) {
		return
	}
	for first := r.at; r.at < len(r.lines) && r.at-first < mostWrapped && !r.fresh[r.at] && goesOn(t, r.lines[r.at]); r.at++ {
		if r.at == first {
			t = append(r.wrapped[:0], t...)
		}
		t = append(t, r.lines[r.at]...)
		r.wrapped = t
	}
	if len(t) <= 3 && (t[0].low == "both" || t[0].low == "all") && len(t) > 1 && t[1].low == "sizes" {
		r.only = nil
		r.note(t)
		return
	}
	if explains(t) {
		r.note(t)
		return
	}
	if over, ok := r.panel(t); ok {
		r.add(&Statement{Kind: Heading, Title: spelledOut(t), Name: "pattern", Many: over}, t)
		return
	}
	if heading(t) {
		r.only = nil
		s := &Statement{Kind: Heading, Title: spelledOut(t), For: r.headed(t)}
		for i, one := range t[1:] {
			if (one.low == "right" || one.low == "left") && t[i].low == "," && i+2 < len(t) && t[i+2].low == "hand" {
				s.Hand = one.low // "Thumb gusset, left hand"
			}
		}
		r.add(s, t)
		return
	}
	r.sentences(t)
}

// goesOn reports whether a line goes on with the one before it.
func goesOn(t, next []token) bool {
	if len(next) == 0 {
		return false
	}
	p := parser{t: next, sizes: 1}
	if _, _, ok := p.label(); ok {
		return false
	}
	last, first := &t[len(t)-1], &next[0]
	switch last.low {
	case ",", ";", "-", "from", "to", "and", "the", "of", "then":
		return true
	case ".", ":", "!", "?", ")", "]":
		return false
	}
	if heading(t) {
		return false
	}
	if len(next) > 3 && next[1].low == "from" && next[2].low == "*" && next[3].low == "*" {
		return false // "Rep from ** to **" is about rows
	}
	if p.at = 0; p.works(0) {
		if first.capital() && signs[first.low].name != first.low && !isStitch(first.low) {
			return false
		}
		return len(next) > 1 && next[1].low == "from" || wrapped(t)
	}
	start, _ := utf8.DecodeRuneInString(first.text)
	return unicode.IsLower(start) || first.kind == whole && last.kind == word && !isStitch(last.low)
}

// wrapped reports whether lines of a paragraph are broken where it is full: a line is as long
// as such lines mostly are.
func wrapped(t []token) bool {
	return t[len(t)-1].end().Column > 45
}

// shortened drops full stops that only shorten a word.
func shortened(t []token) []token {
	out := t[:0]
	for i, one := range t {
		if one.low == "." && one.tight && i > 0 && i+1 < len(t) && shorts[t[i-1].low] {
			next := t[i+1]
			lone := t[i-1].low == "k" || t[i-1].low == "p"
			counted := lone || t[i-1].low == "m" || t[i-1].low == "sl" || t[i-1].low == "no" || t[i-1].low == "nos"
			switch {
			case next.kind == whole && counted, next.kind == word && next.text == next.low, next.kind == mark && next.low != "(" && next.low != "[" && (next.low != "*" || !stitchWords[t[i-1].low]), lone:
				continue
			}
		}
		out = append(out, one)
	}
	return out
}

// shorts are words that are shortened with a full stop: "K. 2", "st. st.", "rep. from".
var shorts = map[string]bool{
	"k": true, "p": true, "m": true, "sl": true, "st": true, "sts": true, "tog": true, "rep": true, "rem": true, "beg": true, "inc": true, "dec": true,
	"cont": true, "foll": true, "alt": true, "ins": true, "patt": true, "rnd": true, "rnds": true, "no": true, "wl": true, "fwd": true, "psso": true,
	"tbl": true, "ktbl": true, "approx": true, "nos": true, "mm": true, "cm": true,
}

// dotted are shortened words that a full stop may follow without ending a sentence.
var dotted = map[string]bool{
	"rep": true, "beg": true, "inc": true, "dec": true, "cont": true, "foll": true, "alt": true, "rem": true, "approx": true,
	"tog": true, "patt": true, "rnd": true, "rnds": true, "st": true, "sts": true, "no": true,
}

// sentences parts a line at its full stops.
func (r *reader) sentences(t []token) {
	from := 0
	r.here, r.hand = nil, ""
	for i, one := range t {
		if one.low != "." && one.low != "!" || i+1 < len(t) && t[i+1].tight {
			continue
		}
		if i+1 < len(t) && i > 0 && dotted[t[i-1].low] && one.tight {
			next := t[i+1]
			if next.low != "*" && next.text == next.low && (next.kind != whole || t[i-1].low != "st" && t[i-1].low != "sts" && t[i-1].low != "rnd" && t[i-1].low != "rnds") {
				continue
			}
		}
		p := parser{t: t[from : i+1], sizes: 1} // "Rnd 1. Knit." is one sentence
		if _, _, ok := p.label(); ok && p.done() || i == from {
			continue
		}
		r.sentence(t[from : i+1])
		from = i + 1
	}
	r.sentence(t[from:])
}
