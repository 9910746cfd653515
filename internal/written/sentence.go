package written

import "slices"

// sentence reads one sentence, and appends what it tells.
func (r *reader) sentence(t []token) {
	all := t
	for len(t) > 0 && (t[len(t)-1].low == "." || t[len(t)-1].low == "!") {
		t = t[:len(t)-1]
	}
	if t = announces(t); len(t) == 0 {
		return
	}
	if len(t) > mostWords {
		r.add(&Statement{Kind: Unknown, For: r.here}, all)
		return
	}
	for i := range min(len(t), 4) {
		if t[i].low == "means" {
			r.note(all)
			return
		}
	}
	p := &r.parser
	*p = parser{t: t, sizes: len(r.text.Sizes), yarns: r.yarns, motifs: r.motifs, every: len(r.text.Sizes), these: r.these, single: r.single, list: p.list[:0], told: p.told, kept: &r.items}
	of := r.forSizes(p)
	if p.at > 0 {
		r.here = of
	} else if r.here != nil {
		of = r.here
	}
	if p.done() {
		r.add(&Statement{Kind: Note, For: of}, all)
		return
	}
	if p.of = of; of != nil {
		p.sizes = len(of)
	}
	p.t = p.t[p.at:]
	p.at = 0
	if r.again(p) {
		return
	}
	s := &r.now
	*s = Statement{For: of}
	if r.motifTold(p) {
		r.add(s, all)
		return
	}
	p.at = 0
	if hand := p.handed(); hand != "" {
		r.hand = hand
	}
	s.Hand = r.hand
	if p.titled() {
		r.add(s, all)
		return
	}
	p.sections(s)
	if r.starred > 0 && len(p.t) == 0 && s.Stars == r.starred {
		s.Stars, s.Ends = 0, s.Stars
	}
	if s.Stars > 0 {
		r.starred, r.single = s.Stars, r.single || s.Stars == 1
	}
	if s.Ends > 0 {
		r.starred = 0
	}
	if p.done() {
		s.Kind = Note
		r.add(s, all)
		return
	}
	var labelled bool
	if s.Label, s.Side, labelled = p.label(); labelled {
		r.labelled(p, s, all)
		return
	}
	if at := p.leads(); at > 0 {
		r.sentence(p.t[at:])
		return
	}
	p.unlabelled(s)
	r.add(s, all)
	if len(p.rest) > 0 {
		r.sentence(p.rest)
	}
}

// again reads "Do this four times", which is about the sentence before it; and keeps how many rounds
// are told together, "These two rows make the rib".
func (r *reader) again(p *parser) bool {
	defer func() { p.at = 0 }()
	if p.any("these", "those", "last") {
		if n, ok := p.number(true); ok && n.same() && p.anyRound() {
			r.these = n.first
		}
		return false
	}
	last := len(r.text.Statements) - 1
	if last < 0 || !p.any("do", "work", "repeat") || !p.took("this") {
		return false
	}
	n, _, ok := p.times()
	s := &r.text.Statements[last]
	if !ok || s.Kind != Rounds || s.At.Line != p.t[0].at.Line || len(s.Items) == 0 {
		return false
	}
	s.Items = []Item{{Does: Together, Items: s.Items, Times: n, At: s.Items[0].At, To: p.reached()}}
	s.Unsure = false
	return true
}

// alone reports whether a sentence behind an asterisk works whole rounds, and nothing in it repeats
// from there.
func (p *parser) alone() bool {
	if p.until("*") < len(p.t) || p.until("rep", "repeat") < len(p.t) {
		return false
	}
	p.any("knit", "work", "purl", "k", "p")
	_, ok := p.number(true)
	return ok && p.anyRound()
}

// sections takes asterisks that rounds are repeated from: "** Row 1: …" and "… **".
func (p *parser) sections(s *Statement) {
	n := 0
	for n < len(p.t) && p.t[n].low == "*" {
		n++
	}
	q := parser{t: p.t[n:], sizes: p.sizes}
	if _, _, ok := q.label(); n > 0 && (ok || len(q.t) == 0 || n > 1 || q.alone()) {
		s.Stars, p.t = n, p.t[n:]
	}
	end := len(p.t)
	for end > 0 && p.t[end-1].low == "*" {
		end--
	}
	only := p.single && end < len(p.t) && p.until("*") == end
	if n := len(p.t) - end; (n > 1 || only) && (len(p.t) < 4 || p.until("from") == len(p.t) && (only || p.until("to") == len(p.t))) {
		s.Ends = n
		for end > 0 && p.t[end-1].low == "." {
			end--
		}
		p.t = p.t[:end]
	}
}

// labelled reads what is done in rounds that are named.
func (r *reader) labelled(p *parser, s *Statement, all []token) {
	s.Kind = Rounds
	if p.any(",") { // "Round 1, to 36 stitches:", or "Increase round, worked every 4th"
		end := len(p.t)
		if p.t[end-1].low == ":" {
			end--
		}
		if list, ok := p.counts(end); ok {
			s.Counts = list
			r.add(s, all)
			return
		}
		p.any(":")
	}
	if p.done() {
		r.add(s, all)
		return
	}
	s.Counts = p.stated()
	p.catching()
	from := p.at
	if p.repeated(s) || p.grows(s) {
		r.add(s, all)
		return
	}
	if p.at = from; p.numberAgain(s) {
		r.add(s, all)
		return
	}
	p.changing(s)
	p.at = from
	if s.Items = p.items(""); len(s.Items) == 0 {
		s.Kind = Unknown
	}
	r.add(s, all)
}

// catching steps over what is said of yarns before the stitches of a round: "Catching rust:",
// "In cream:", "With MC,".
func (p *parser) catching() {
	from := p.at
	catches := p.any("catching")
	if !catches && !p.any("in", "with", "using") {
		return
	}
	for at := p.at; at < len(p.t); at++ {
		switch p.t[at].low {
		case ":", ",":
			if p.t[at].low == ":" || !catches && at+1 < len(p.t) && (p.works(at+1) || p.t[at+1].low == "*" || closing[p.t[at+1].low] != "") {
				p.at = at + 1
				return
			}
		}
	}
	p.at = from
}

// unlabelled reads any other sentence.
func (p *parser) unlabelled(s *Statement) {
	for _, read := range []func(*Statement) bool{p.totalled, p.elsewhere, p.grows, p.edges, p.comes, p.plans, p.starts, p.finishes, p.comesBack, p.onward, p.marks, p.paced} {
		p.at = 0
		if read(s) {
			return
		}
	}
	p.at = 0
	if shut := closing[p.peek().low]; shut != "" && p.t[len(p.t)-1].low == shut {
		p.t, p.at = p.t[:len(p.t)-1], 1
		if list, ok := p.counts(len(p.t)); ok {
			s.Kind, s.Counts = Says, list
			return
		}
		p.t, p.at = p.t[:len(p.t)+1], 0
	}
	if list, ok := p.counts(len(p.t)); ok && p.named(0, len(p.t)) {
		s.Kind, s.Counts = Says, list
		return
	}
	p.at = 0
	whole := p.t
	s.Counts = p.stated()
	p.catching()
	p.rest = nil
	if p.repeated(s) || p.many(s) {
		return
	}
	if list, ok := p.stitching(); ok {
		s.Kind, s.Items = Rounds, list
		return
	}
	p.t, s.Counts = whole, nil
	if p.tells() {
		s.Kind = Unknown
	}
}

// stitching reads a sentence that begins with something that is worked. "Knit along the
// loops" and "Lift it with its strand" tell how, and nothing that can be counted.
func (p *parser) stitching() ([]Item, bool) {
	if p.done() {
		return nil, false
	}
	t := p.peek()
	if s, ok := signs[t.low]; t.low == "*" || isStitch(t.low) || ok && s.in != s.out {
		return p.items(""), true
	}
	first := p.at
	for first < len(p.t)-1 && closing[p.t[first].low] != "" {
		first++
	}
	if !p.works(first) && !(p.peek().low == "leave" && p.keeps(p.at)) {
		return nil, false
	}
	list := p.items("")
	if len(list) == 0 || list[0].Does == Unread {
		return nil, false
	}
	if !slices.ContainsFunc(list, func(i Item) bool { return i.Does == Unread }) {
		return list, true
	}
	return list, list[0].In != list[0].Out || list[0].Times.Written() || list[0].endless()
}

// tells reports whether a sentence speaks of stitches or rounds in numbers, so that it may
// change a count.
func (p *parser) tells() bool {
	describes := describing[p.t[0].low] || len(p.t) > 2 && (p.t[0].low == "from" && p.t[1].low == "there" || p.t[0].low == "in" && p.t[1].low == "the" && roundWords[p.t[2].low] > 0)
	number, changes := false, false
	for i, t := range p.t {
		if isStitch(t.low) && !describes {
			return true
		}
		if s, ok := signs[t.low]; ok && s.in != s.out && i > 0 && !describes {
			return true
		}
		if describes {
			continue
		}
		if n, ok := t.counts(); ok && n > 0 && i+1 < len(p.t) && (counted[p.t[i+1].low] || whose[p.t[i+1].low] && i+2 < len(p.t) && counted[p.t[i+2].low]) {
			number = true
		}
		switch t.low {
		case "inc", "increase", "dec", "decrease", "rep", "repeat", "increasing", "decreasing":
			return true
		case "knit", "purl", "work", "cast", "bind", "pick", "slip", "transfer", "make", "k", "p", "drop", "add", "take", "leave", "working", "place", "put", "picking", "co", "bo":
			changes = true
		}
		if i == 0 && t.kind == word && len(p.t) > 1 && p.t[1].kind == whole {
			changes = true // whatever it does to so many
		}
	}
	return number && changes
}

// counted are what stitches are called where they are counted.
var counted = map[string]bool{"st": true, "sts": true, "stitch": true, "stitches": true}

// describing are words that begin a sentence which tells of something, or of what is done
// without stitches being worked.
var describing = map[string]bool{
	"the": true, "it": true, "its": true, "both": true, "this": true, "these": true, "each": true, "after": true, "at": true, "if": true,
	"when": true, "so": true, "you": true, "your": true, "there": true, "go": true, "hold": true, "pull": true, "fold": true, "try": true,
	"measure": true, "stop": true, "weave": true, "sew": true, "cut": true, "break": true, "lay": true, "join": true, "note": true,
	"press": true, "block": true, "wash": true, "check": true, "use": true, "draw": true, "that": true, "by": true, "here": true,
	"divide": true, "distribute": true, "arrange": true, "split": true, "using": true, "graft": true, "now": true, "be": true, "remember": true, "count": true,
	"make": true, "size": true, "shown": true, "for": true, "as": true, "don't": true, "do": true, "with": true, "beginning": true, "while": true, "once": true,
	"knitted": true, "worked": true, "instructions": true, "directions": true, "figures": true, "all": true, "any": true, "some": true, "my": true, "i": true, "we": true,
	"repeats": true, "adjust": true, "skip": true, "secure": true, "fasten": true, "steam": true, "thread": true,
	"closed": true, `"`: true, "begin": true, "another": true, "one": true, "half": true,
}
