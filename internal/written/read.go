package written

import (
	"slices"
	"strings"
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
