package written

import "slices"

// sentence reads one sentence, and appends what it tells.
func (r *reader) sentence(t []token) {
	all := t
	for len(t) > 0 && (t[len(t)-1].low == "." || t[len(t)-1].low == "!") {
		t = t[:len(t)-1]
	}
	if len(t) == 0 {
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
	*p = parser{t: t, sizes: len(r.text.Sizes), yarns: r.yarns, motifs: r.motifs, every: len(r.text.Sizes), list: p.list[:0], kept: &r.items}
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
	s := &r.now
	*s = Statement{For: of}
	if r.motifTold(p) {
		r.add(s, all)
		return
	}
	p.at = 0
	p.titled()
	p.sections(s)
	if r.starred > 0 && len(p.t) == 0 && s.Stars == r.starred {
		s.Stars, s.Ends = 0, s.Stars
	}
	if s.Stars > 0 {
		r.starred = s.Stars
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
	p.unlabelled(s)
	r.add(s, all)
	if len(p.rest) > 0 {
		r.sentence(p.rest)
	}
}

// sections takes asterisks that rounds are repeated from: "** Row 1: …" and "… **".
func (p *parser) sections(s *Statement) {
	n := 0
	for n < len(p.t) && p.t[n].low == "*" {
		n++
	}
	q := parser{t: p.t[n:], sizes: p.sizes}
	if _, _, ok := q.label(); n > 0 && (ok || len(q.t) == 0 || n > 1) {
		s.Stars, p.t = n, p.t[n:]
	}
	end := len(p.t)
	for end > 0 && p.t[end-1].low == "*" {
		end--
	}
	if n := len(p.t) - end; n > 1 && (len(p.t) < 4 || p.until("from", "to") == len(p.t)) {
		s.Ends = n
		for end > 0 && p.t[end-1].low == "." {
			end--
		}
		p.t = p.t[:end]
	}
}

// titled steps over what stands before a label and a colon: "Increase to 40 sts: next round:".
func (p *parser) titled() {
	for at, t := range p.t {
		if t.low != ":" {
			if isStitch(t.low) || t.kind == mark && t.low != "-" {
				return
			}
			continue
		}
		q := *p
		q.at = at + 1
		if _, _, ok := q.label(); ok && at > 0 && roundWords[p.t[0].low] == 0 {
			p.t = p.t[at+1:]
		}
		return
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
	if p.repeated(s) {
		r.add(s, all)
		return
	}
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
			if p.t[at].low == ":" || !catches && at+1 < len(p.t) && p.works(at+1) {
				p.at = at + 1
				return
			}
		}
	}
	p.at = from
}

// unlabelled reads any other sentence.
func (p *parser) unlabelled(s *Statement) {
	for _, read := range []func(*Statement) bool{p.grows, p.comes, p.plans, p.starts, p.finishes, p.comesBack, p.onward, p.marks, p.paced} {
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
	if !p.works(first) {
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
	for i, t := range p.t {
		if isStitch(t.low) {
			return true
		}
		if s, ok := signs[t.low]; ok && s.in != s.out && i > 0 {
			return true
		}
		if describes {
			continue
		}
		if t.kind == whole && i+1 < len(p.t) {
			switch p.t[i+1].low {
			case "st", "sts", "stitches":
				return true
			}
		}
		switch t.low {
		case "inc", "increase", "dec", "decrease", "rep", "repeat":
			return true
		}
	}
	return false
}

// describing are words that begin a sentence which tells of something, or of what is done
// without stitches being worked.
var describing = map[string]bool{
	"the": true, "it": true, "its": true, "both": true, "this": true, "these": true, "each": true, "after": true, "at": true, "if": true,
	"when": true, "so": true, "you": true, "your": true, "there": true, "go": true, "hold": true, "pull": true, "fold": true, "try": true,
	"measure": true, "stop": true, "weave": true, "sew": true, "cut": true, "break": true, "lay": true, "join": true, "note": true,
	"press": true, "block": true, "wash": true, "check": true, "use": true, "draw": true, "that": true, "by": true, "here": true,
	"closed": true, `"`: true, "begin": true, "another": true, "one": true, "half": true,
}
