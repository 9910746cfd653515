package written

import (
	"slices"
	"strings"
	"unicode"
	"unicode/utf8"
)

// Bounds of a text.
const (
	MostLines = 20_000
	MostBytes = 1 << 19
	MostSizes = 20
)

// Bounds of what is looked at together, far beyond what anybody writes; they keep the work on
// any text within a small multiple of its length.
const (
	mostWrapped = 200    // lines of one paragraph
	mostClause  = 200    // words of one clause
	mostStated  = 4      // counts apart at the end of a sentence
	mostCounted = 150    // words and numbers of the counts at the end of a sentence
	mostDeep    = 30     // brackets in brackets, and asterisks that are open
	mostListed  = 1_000  // rounds of one label
	mostYarns   = 40     // names of yarns
	mostMotifs  = 2_000  // rows of motifs
	mostWords   = 2_000  // words, numbers and signs of one sentence
	mostParts   = 90_000 // of a text: a sentence is two, an item one, and what is listed too
)

// Read takes instructions apart. It never fails: what it doesn't understand is a statement
// that says so. A text over the bounds is read as far as they reach.
func Read(text string) *Text {
	r := reader{}
	lines := strings.Split(text[:min(len(text), MostBytes)], "\n")
	lines = lines[:min(len(lines), MostLines)]
	r.lines = make([][]token, len(lines))
	r.fresh = make([]bool, len(lines))
	dress := dressOf(lines)
	sentences := 0 // at most
	for i, line := range lines {
		if len(line) > 0 {
			sentences += 1 + strings.Count(line, ".")
		}
		room := r.tokens.room(len(line)) // a token has at least a byte
		r.lines[i], r.fresh[i] = dress.undress(shortened(r.tokens.take(tokens(room, strings.TrimRight(line, "\r"), i+1))))
	}
	r.text.Statements = make([]Statement, 0, min(sentences, mostParts/2))
	r.raw = lines
	r.sizes()
	for _, name := range r.text.Sizes {
		r.names = append(r.names, tokens(nil, name, 0))
	}
	r.yarnNames()
	r.preamble()
	for r.begun = true; r.at < len(r.lines) && !r.over; {
		r.line()
	}
	return &r.text
}

// reader goes through a text.
type reader struct {
	raw     []string
	lines   [][]token
	tokens  shelf[token]
	items   shelf[Item]
	parser  parser    // of the sentence that is read
	now     Statement // what it tells
	fresh   []bool    // lines that begin anew
	at      int
	wrapped []token // of a paragraph in several lines
	parts   int     // of the text so far
	over    bool    // there are too many
	text    Text
	names   [][]token // of the sizes
	yarns   [][]string
	motifs  []told
	only    []int  // sizes that the lines are for, after a heading for some only
	these   int    // rounds that were told together last
	starred int    // asterisks that a section began with
	block   bool   // only ends at the next empty line
	here    []int  // sizes that the sentences of the line are for
	begun   bool   // the instructions have begun
	single  bool   // rounds were told from a single asterisk on
	hand    string // the hand that they are for
}

// preamble takes what stands before the first stitch: what is needed, the gauge, the
// abbreviations. A text without a beginning is all instructions.
func (r *reader) preamble() {
	first := -1
	for i, t := range r.lines {
		if begins(t) {
			first = i
			break
		}
	}
	if first > 0 && len(r.lines[first-1]) > 0 && heading(r.lines[first-1]) {
		first--
	}
	for ; r.at < first; r.at++ {
		if len(r.lines[r.at]) > 0 {
			r.note(r.lines[r.at])
		}
	}
}

// begins reports whether a line is the first that works stitches.
func begins(t []token) bool {
	p := parser{t: t, sizes: 1}
	if l, _, ok := p.label(); ok && p.at < len(t) && (l.Named == "" || t[p.at-1].low == ":") {
		return true
	}
	from := 0
	if len(t) > 0 && (t[0].low == "size" || t[0].low == "sizes") {
		for from < len(t) && t[from].low != ":" {
			from++
		}
	}
	for at := from; at < len(t); at++ {
		p.at = at
		if at > from+12 {
			break
		}
		if (p.took("cast", "on") || p.took("co") || p.took("casting", "on")) && p.peek().low != ":" {
			p.all("a", "total", "of", "loosely", ",")
			if _, ok := p.number(true); ok {
				return true
			}
		}
	}
	return false
}

func (r *reader) note(t []token) {
	r.add(&Statement{Kind: Note}, t)
}

// add appends a statement that is made of tokens.
func (r *reader) add(s *Statement, t []token) {
	if len(t) == 0 || r.over {
		return
	}
	if s.Kind != Heading && r.begun {
		s.Odd = r.odd(t, s.For)
	}
	if at := len(r.text.Statements) - 1; s.Kind == Says && s.Odd == nil && at >= 0 {
		// "Round 3: k4, m1, k to end. 44 sts." states the count of that round.
		if before := &r.text.Statements[at]; (before.Kind == Rounds || before.Kind == Again) && before.To.Line == t[0].at.Line && len(before.Counts) == 0 && slices.Equal(before.For, s.For) {
			before.Counts, s.Kind = s.Counts, Note
		}
	}
	if at := len(r.text.Statements) - 1; s.Kind == Note && s.Many.Written() && at >= 0 && r.text.Statements[at].Kind == Again && r.text.Statements[at].At.Line == t[0].at.Line {
		r.text.Statements[at].Many = s.Many // "Rep Rnds 1–4 four times more. (20 rnds)"
	}
	if at := len(r.text.Statements) - 1; s.Kind == Note && s.Further && at >= 0 && r.text.Statements[at].Kind == Rounds {
		r.text.Statements[at].Further = true
	}
	s.At, s.To = t[0].at, t[len(t)-1].end()
	r.parts += 2 + len(s.Label.List)
	if s.Schedule != nil {
		r.parts += len(s.Schedule.List)
	}
	if r.over = r.parts+r.items.taken > mostParts; r.over {
		s.Kind = Excess
	}
	r.text.Statements = append(r.text.Statements, *s)
}

// spelledOut writes tokens as they stand.
func spelledOut(t []token) string {
	var b strings.Builder
	for i, one := range t {
		if i > 0 && !one.tight {
			b.WriteByte(' ')
		}
		b.WriteString(one.text)
	}
	return b.String()
}

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

// heading reports whether a line is the title of a section.
func heading(t []token) bool {
	if t[0].low == "size" || t[0].low == "sizes" || t[0].kind != word {
		return false
	}
	last := t[len(t)-1].low
	if last == "only" && slices.ContainsFunc(t, func(one token) bool { return one.low == "size" || one.low == "sizes" }) {
		return true
	}
	if last == "." || last == "," || last == ";" || !t[0].capital() && t[0].text == t[0].low {
		return false
	}
	p := parser{t: t, sizes: 1}
	if _, _, ok := p.label(); ok || len(t) > 9 {
		return false
	}
	for i, one := range t {
		_, isSign := signs[one.low]
		switch {
		case isStitch(one.low), one.kind == whole && i > 0 && last != "only", isSign && len(t) > 1 && one.low != "knit", one.low == "rep", one.low == "repeat", one.low == "sts", one.low == "*", one.low == "cast", one.low == "bind", one.low == "place", one.low == "work", one.low == "join", one.low == "remove", one.low == "turn", one.low == "break", one.low == "cut", one.low == "weave":
			return false
		case isSign && len(t) == 1:
			return false
		}
	}
	return !(t[0].low == "knit" && len(t) > 1)
}

// headed returns the sizes that a heading is for: "Upper hand: sizes 7 and 8 only".
func (r *reader) headed(t []token) []int {
	for i, one := range t {
		if one.low != "size" && one.low != "sizes" {
			continue
		}
		p := parser{t: t, at: i, sizes: 1}
		if only, ok := r.sizeList(&p); ok && p.any("only") && p.done() {
			r.only = only
			return only
		}
	}
	return nil
}

// dotted are shortened words that a full stop may follow without ending a sentence.
var dotted = map[string]bool{
	"rep": true, "beg": true, "inc": true, "dec": true, "cont": true, "foll": true, "alt": true, "rem": true, "approx": true,
	"tog": true, "patt": true, "rnd": true, "rnds": true, "st": true, "sts": true, "no": true,
}

// shorts are words that are shortened with a full stop: "K. 2", "st. st.", "rep. from".
var shorts = map[string]bool{
	"k": true, "p": true, "m": true, "sl": true, "st": true, "sts": true, "tog": true, "rep": true, "rem": true, "beg": true, "inc": true, "dec": true,
	"cont": true, "foll": true, "alt": true, "ins": true, "patt": true, "rnd": true, "rnds": true, "no": true, "wl": true, "fwd": true, "psso": true,
	"tbl": true, "ktbl": true, "approx": true, "nos": true, "mm": true, "cm": true,
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
