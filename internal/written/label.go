package written

import "slices"

// kindsOf are words that name a round: "increase round".
var kindsOf = map[string]string{
	"increase": "increase", "inc": "increase", "increasing": "increase", "decrease": "decrease", "dec": "decrease", "decreasing": "decrease",
	"set-up": "set-up", "setup": "set-up", "foundation": "set-up", "dividing": "dividing", "division": "dividing", "divide": "dividing",
	"joining": "joining", "plain": "plain", "gusset": "gusset", "thumb": "thumb", "pick-up": "pick-up", "pickup": "pick-up", "final": "last",
	"edging": "edging", "even": "plain", "hand": "hand", "turning": "turning", "ridge": "ridge", "eyelet": "eyelet", "short": "short",
}

// label reads what a statement calls its rounds: "Rounds 4–6:", "Next rnd:", "Inc rnd (RS):".
func (p *parser) label() (l Label, side Side, ok bool) {
	from := p.at
	defer func() {
		if !ok {
			p.at, l = from, Label{}
		}
	}()
	switch t := p.peek(); {
	case roundWords[t.low] > 0:
		l.Row, _ = p.rounds()
		if !p.spans(&l) {
			return l, 0, false
		}
	case t.kind == ordinal, orders[t.low] > 0 && t.text != t.low:
		if !p.nths(&l) {
			return l, 0, false
		}
	case p.any("next"):
		n, many := p.number(true)
		if l.Row, ok = p.rounds(); !ok {
			return l, 0, false
		}
		if l.Next = true; many {
			l.From, l.To = Is(1), n
		}
	case t.low == "rs" && roundWords[p.next(1).low] > 0, t.low == "ws" && roundWords[p.next(1).low] > 0:
		p.at++
		_, l.Others = p.rounds()
	case p.took("every", "ws"), p.took("all", "ws"), p.took("every", "other"), p.took("all", "other"), p.took("all", "even-numbered"), p.took("even-numbered"), p.took("all", "even"), p.took("every", "alternate"):
		if l.Row, ok = p.rounds(); !ok {
			return l, 0, false
		}
		l.Others = true
	default:
		if l.Named = p.calls(); l.Named == "" {
			return l, 0, false
		}
		p.at++
		if l.Row, ok = p.rounds(); !ok {
			return l, 0, false
		}
		if p.spans(&l) && l.Named == "short" && l.From.same() && l.To.same() {
			l.From, l.To, l.List, l.Next = Is(1), Is(l.To.first-l.From.first+1), nil, true // they are numbered for themselves
		}
	}
	side = p.sideTold()
	l.Also = p.andOthers(&l) || l.Also
	p.remark()
	return l, side, p.endsLabel(&l)
}

// nths reads "2nd round", "Second row", "2nd and 3rd rounds", "2nd and alternate rounds", "1st inc
// round".
func (p *parser) nths(l *Label) bool {
	nth := func() (n int, ok bool) {
		t := p.peek()
		if n = orders[t.low]; n == 0 && t.kind == ordinal {
			n = t.n
		}
		if n > 0 {
			p.at++
		}
		return n, n > 0
	}
	first, _ := nth()
	l.From, l.To = Is(first), Is(first)
	for p.any(",", "and", "&", "to", "-") {
		p.any("and")
		if n, ok := nth(); ok && p.t[p.at-2].low != "to" && p.t[p.at-2].low != "-" {
			if len(l.List) == 0 {
				l.listed(first, first)
			}
			l.listed(n, n)
			continue
		} else if ok {
			l.To = Is(n)
			continue
		}
		p.any("every", "all")
		p.all("foll", "following", "alt", "alternate", "other", "even", "odd", "ws", "rs")
		l.Also = true
	}
	if name := kindsOf[p.peek().low]; name != "" {
		*l = Label{Named: name}
		p.at++
	}
	l.joined()
	row, ok := p.rounds()
	l.Row = row
	return ok
}

// calls returns what the round that stands next is called: "increase round", "rib rnd:".
func (p *parser) calls() string {
	t := p.peek()
	if name := kindsOf[t.low]; name != "" {
		return name
	}
	switch t.low {
	case "its", "this", "each", "every", "that", "the", "last", "first", "these", "one", "a":
		return ""
	}
	if t.kind != word || roundWords[p.next(1).low] != 1 && p.next(1).low != "row" || p.next(2).low != ":" {
		return ""
	}
	return t.low
}

// andOthers reads "and all even rounds" behind the number of a round.
func (p *parser) andOthers(l *Label) bool {
	from := p.at
	shut := closing[p.peek().low]
	if shut != "" {
		p.at++
	}
	if p.any("and", "&") && p.any("all", "every") {
		alike := p.at
		p.all("foll", "following", "even", "odd", "even-numbered", "odd-numbered", "alt", "alternate", "other", "ws", "rs", "numbered")
		if l.From.same() && p.at > alike {
			l.Alike = 1 + l.From.first%2
		}
		if p.anyRound() && (shut == "" || p.any(shut)) {
			return true
		}
	}
	p.at = from
	return false
}

// sideTold reads the side that faces the knitter, and steps over remarks.
func (p *parser) sideTold() (s Side) {
	for {
		from := p.at
		bracket := p.any("(", "[")
		switch {
		case p.any("rs") || p.took("right", "side"):
			s = Right
		case p.any("ws") || p.took("wrong", "side"):
			s = Wrong
		case bracket && (p.any("inc", "increase", "dec", "decrease", "set-up", "plain") || p.took("all", "sizes")):
			p.rounds()
		default:
			p.at = from
			return s
		}
		if bracket {
			for p.any(",", "inc", "increase", "dec", "decrease", "row", "round", "rnd") {
			}
		}
		if bracket && !p.any(")", "]") {
			p.at = from
			return s
		}
		if p.next(1).low != "to" { // "(right side), to 42 stitches:"
			p.any(",")
		}
	}
}

// remark steps over a remark in brackets before the colon: "Next row (eyelets):".
func (p *parser) remark() {
	shut, ok := closing[p.peek().low]
	if !ok {
		return
	}
	for at := p.at + 1; at+1 < len(p.t); at++ {
		switch {
		case p.t[at].low == shut && p.t[at+1].low == ":":
			p.at = at + 1
			return
		case p.t[at].kind != word && p.t[at].kind != ordinal, isStitch(p.t[at].low):
			return
		}
	}
}

// endsLabel reads what stands between a label and what is to be done.
func (p *parser) endsLabel(l *Label) bool {
	if p.any(":") {
		return true
	}
	t := p.peek()
	switch {
	case p.done():
		return false
	case t.low == "." || t.low == "-" || t.low == "—" || t.low == "=":
		p.all(".", "-", "—", ":", "=")
		return true
	case t.low == ",": // "Round 1, to 36 stitches:"
		return l.From.Written()
	case t.low == "(" || t.low == "[" || t.low == "*":
		return true
	case t.kind == word && p.works(p.at):
		return true
	}
	return false
}

// works reports whether a word begins what is done to stitches.
func (p *parser) works(at int) bool {
	low := p.t[at].low
	if _, ok := signs[low]; ok || isStitch(low) {
		return true
	}
	if roundWords[low] > 0 && at+1 < len(p.t) && p.t[at+1].kind == whole && slices.ContainsFunc(p.t[at+1:min(len(p.t), at+8)], func(t token) bool { return t.low == "motif" }) {
		return true // "row 3 of motif 1"
	}
	return slices.Contains([]string{"work", "rep", "repeat", "pm", "sm", "slm", "rm", "co", "bo", "cast", "bind", "place", "pick", "inc", "dec", "as", "even", "turn", "with", "in", "remove", "ds", "pu", "puk"}, low) || len(phrases[low]) > 0
}

// isStitch reports whether a word is a stitch with its number: "k3".
func isStitch(low string) bool {
	end := len(low)
	for end > 0 && isDigit(rune(low[end-1])) {
		end--
	}
	switch low[:end] {
	case "k", "p", "sl":
		return end < len(low)
	}
	return false
}
