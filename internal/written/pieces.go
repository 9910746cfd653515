package written

import "slices"

// starts reads how a piece begins: "With A and smaller needles, cast on 44 sts."
func (p *parser) starts(s *Statement) bool {
	for p.at = 0; p.at < len(p.t) && p.at < 14; p.at++ {
		switch low := p.peek().low; low {
		case "work", "rep", "repeat", "pick", "bind", "bo", "turn", "remove":
			return false
		default:
			if isStitch(low) || signs[low].name != "" {
				return false
			}
		}
		if !p.took("cast", "on") && !p.took("co") && !p.took("casting", "on") {
			continue
		}
		p.all("a", "total", "of", "loosely", ",", "provisionally")
		n, ok := p.number(true)
		if !ok {
			p.at--
			continue // "Using the long-tail CO, cast on 80"
		}
		if p.stitches(); p.peek().low == "at" && p.until("next") < len(p.t) {
			return false // "at the beginning of the next 2 rows"
		}
		s.Kind, s.Many = Begin, n
		if slices.ContainsFunc(p.t, func(t token) bool { return t.low == "provisional" || t.low == "provisionally" || t.low == "invisible" }) {
			s.Name = "provisional"
		}
		p.cutRest(p.at)
		return true
	}
	return false
}

// finishes reads how a piece ends: bound off, drawn up, grafted.
func (p *parser) finishes(s *Statement) bool {
	for at, t := range p.t {
		if (t.low == "three-needle" || t.low == "needle" && at > 1 && p.t[at-1].low == "-" && p.t[at-2].low == "3") && (p.until("bind-off", "bind", "cast-off", "cast") < len(p.t)) {
			p.at = 0
			return p.grafts(s)
		}
	}
	if p.binds(s) {
		return true
	}
	for p.at = 0; p.at < len(p.t); p.at++ {
		switch {
		case p.any("graft", "kitchener"):
			p.at = p.at - 1
			return p.grafts(s)
		case p.took("through", "the", "first", "stitch", "and", "the", "last"):
			s.Kind, s.Many, s.Name = Finish, Is(2), "draw"
			return true
		case p.any("through"):
			p.all("the", "all", "rem", "remaining", "last", "live", "these", "loops", "of")
			n, numbered := p.number(true)
			p.all("rem", "remaining", "live")
			at := p.at
			if p.stitches() && (numbered || p.drawn()) {
				s.Kind, s.Many, s.All, s.Name = Finish, n, true, "draw"
				return true
			}
			p.at = at
			if (p.t[0].low == "break" || p.t[0].low == "cut") && (p.done() || p.stitches() || p.peek().kind == mark) {
				s.Kind, s.Many, s.All = Finish, n, true // "Break yarn and pull through"
				return true
			}
			p.at--
		case p.took("fasten", "off"):
			if p.t[0].low == "break" || p.t[0].low == "cut" || p.t[0].low == "fasten" {
				s.Kind, s.All = Finish, true
				return true
			}
			p.at--
		}
	}
	return p.fastens(s)
}

// drawn reports whether a sentence tells of yarn that is drawn.
func (p *parser) drawn() bool {
	return slices.ContainsFunc(p.t, func(t token) bool {
		switch t.low {
		case "draw", "pull", "thread", "run", "tail", "break", "cut", "drawing", "threading", "gather":
			return true
		}
		return false
	})
}

// binds reads "Bind off all 44 stitches".
func (p *parser) binds(s *Statement) bool {
	p.at = 0
	if p.any("when", "once", "if", "after", "before", "the", "it", "until") {
		return false
	}
	for p.at < len(p.t) && p.at < 10 {
		if p.took("bind", "off") || p.took("cast", "off") || p.any("bo") {
			all := p.any("all")
			p.all("loosely", "all", "the", "rem", "remaining", "next", "in", "rib", "pattern", "ribbing", "purlwise", "knitwise", "patt")
			n, numbered := p.number(true)
			p.all("rem", "remaining", "live")
			p.stitches()
			if !all && numbered && (p.any(",", ";", "then") && !p.done() || p.took("at")) {
				return false // a part of a row
			}
			s.Kind, s.Many, s.All = Finish, n, true
			return true
		}
		if low := p.peek().low; p.works(p.at) && low != "with" && low != "in" && low != "using" || low == "return" || low == "put" || low == "transfer" {
			return false
		}
		p.at++
	}
	return false
}

// comesBack reads held stitches that come back to the needles: "Put the 15 held stitches
// back on the needles", "Place 15 thumb sts from holder on dpns".
func (p *parser) comesBack(s *Statement) bool {
	held, needle, back, verb, undone := false, false, false, -1, false
	for at, t := range p.t {
		switch t.low {
		case "safety-pin", "pin", "pins", "cord", "held", "wait", "waits", "below", "waste", "scrap", "holder", "hold", "thread", "holders", "waiting", "spare", "stitch-holder":
			held = true
		case "needle", "needles", "dpns", "dpn", "double-pointed", "double-pointeds", "dpn's", "circular":
			needle = true
		case "back":
			back = back || at+1 == len(p.t) || p.t[at+1].low != "loop" && p.t[at+1].low != "loops"
		case "put", "place", "return", "slip", "transfer", "move", "take", "sl", "pick", "puts":
			if verb < 0 && at < 40 {
				verb = at
			}
		case "provisional":
			undone = true
		}
	}
	if p.at = 0; undone && p.any("unravel", "undo", "unzip", "unpick", "remove", "release", "carefully") {
		s.Kind, s.Name = Back, "provisional"
		return !slices.ContainsFunc(p.t, func(t token) bool { return t.low == "graft" || t.low == "three-needle" })
	}
	of := p.took("of", "the")
	for at := 0; at < verb; at++ {
		if low := p.t[at].low; isStitch(low) || low == "knit" || low == "k" || low == "purl" {
			return false // stitches of a round that are slipped back
		}
	}
	bare := verb == 0 && needle && !held && (p.until("each") == len(p.t) || back && p.until("each") > p.until("needles")) && p.until("marker", "m") == len(p.t)
	from := verb == 0 && held && p.t[verb].low == "pick" && p.until("from") < len(p.t) && p.until("below") == len(p.t) && p.until("from") < p.until("knit", "k")
	if verb < 0 || !held && !bare && (verb > 0 || !back || !needle) || !needle && !back && !of && !from && !p.lifted(verb) && !p.below() {
		return false
	}
	s.Kind, s.Unsure = Back, bare && p.t[verb].low != "return"
	p.at = verb + 1
	if !back && p.until("one") < len(p.t) && p.until("another") < len(p.t) && !p.below() {
		s.Kind = Note // on two needles, to be grafted
		return true
	}
	if of {
		return p.ofHeld(s, verb)
	}
	if !p.below() {
		p.cutRest(p.until("needle", "needles", "dpns", "dpn", "double-pointed", "thread", "holder", "hold") + 1)
	}
	if p.firstAndLast(s) {
		return true
	}
	if p.took("the", "waste", "yarn", "out") {
		return false
	}
	if p.below() {
		s.Name, s.All = "waste", p.until("loops", "loop") < len(p.t)
	}
	for ; p.at < len(p.t); p.at++ {
		if low := p.peek().low; low == "leaving" || low == "each" || low == "(" || s.Many.Written() && s.Name != "waste" && low == "," {
			break
		}
		if n, ok := p.number(true); ok {
			if p.at--; p.next(1).low == "needles" || p.next(1).low == "needle" || p.next(1).low == "double-pointed" || p.next(1).low == "dpns" {
				continue
			}
			if !s.Many.Written() {
				s.Many = n
			} else {
				s.Items = append(s.Items, Item{Does: Hold, Times: n})
			}
			continue
		}
		if low := p.peek().low; called[low] && s.Name == "" {
			s.Name = low
		}
		if p.took("held", "for") {
			s.Name = p.name(min(p.clause(), p.until("back", "on")))
		}
	}
	return true
}

// cutRest cuts off what a sentence goes on with: "Return 14 held sts to needles, pick up and
// knit 2", "Cast on 90 sts and work 10 rows".
func (p *parser) cutRest(from int) {
	for at := from; at+1 < len(p.t); at++ {
		switch p.t[at].low {
		case ",", ";", "and", "then":
			next := at + 1
			for next < len(p.t) && (p.t[next].low == "and" || p.t[next].low == "then") {
				next++
			}
			if next < len(p.t) && p.works(next) && p.t[next].low != "place" && p.t[next].low != "pm" && p.t[next].low != "with" && p.t[next].low != "in" {
				p.rest, p.t = p.t[next:], p.t[:at]
				return
			}
		}
	}
}

// firstAndLast reads "the first 6 and the last 6 held".
func (p *parser) firstAndLast(s *Statement) bool {
	from := p.at
	p.all("the")
	if !p.any("first", "next") {
		p.at = from
		return false
	}
	first, ok := p.number(true)
	p.all("and", "the", "stitches", "sts")
	if !ok || !p.any("last") {
		p.at = from
		return false
	}
	last, ok := p.number(true)
	s.Items = []Item{{Does: TakeIn, Times: first}, {Does: TakeIn, Times: last}}
	return ok
}

// below reports whether a sentence tells of loops below waste yarn that is taken out.
func (p *parser) below() bool {
	at := p.at
	defer func() { p.at = at }()
	p.at = 0
	if p.until("below", "bottom") == len(p.t) {
		return false
	}
	return p.until("loops", "loop") < len(p.t) || p.until("above", "top") < len(p.t) && p.until("waste", "scrap") < len(p.t)
}

// lifted reports "pick up the 14 held stitches", which need not say where to.
func (p *parser) lifted(verb int) bool {
	if p.t[verb].low != "pick" && p.t[verb].low != "take" {
		return false
	}
	return slices.ContainsFunc(p.t[verb:min(len(p.t), verb+6)], func(t token) bool { return t.low == "held" })
}

// until returns where one of the words stands, or where the statement ends.
func (p *parser) until(words ...string) int {
	for at := p.at; at < len(p.t); at++ {
		if slices.Contains(words, p.t[at].low) {
			return at
		}
	}
	return len(p.t)
}

// ofHeld reads "Of the 25 held for two fingers take up the first 6 and the last 5".
func (p *parser) ofHeld(s *Statement, verb int) bool {
	p.at = 2
	all, ok := p.number(false)
	if !ok {
		return false
	}
	if p.took("held", "for") {
		s.Name = p.name(verb)
	}
	p.at = verb
	var parts []Number
	for ; p.at < len(p.t); p.at++ {
		if !p.any("first", "last") {
			continue
		}
		n, ok := p.number(false)
		if !ok {
			n = Is(1)
		}
		parts = append(parts, n)
		p.at--
	}
	s.Many = all
	for _, n := range parts {
		s.Items = append(s.Items, Item{Does: TakeIn, Times: n})
	}
	return len(parts) > 0
}

// onward reads a part of a round, after which the round begins anew: "Knit 18 stitches of the
// next round", "Knit 1 more: the round now begins …".
func (p *parser) onward(s *Statement) bool {
	if !p.any("knit", "k", "work", "slip") {
		return false
	}
	n, ok := p.number(true)
	if !ok {
		return false
	}
	more := p.any("more")
	if !more {
		p.stitches()
		if !p.took("of", "the", "next", "round") {
			return false
		}
	}
	if more && !p.done() {
		p.stitches()
		p.dyed()
		for _, t := range p.t[p.at:] {
			if t.low == "round" || t.low == "rnd" || t.low == ":" || t.low == "marker" {
				s.Kind, s.Many = Onward, n
				return true
			}
		}
		if !p.done() && p.peek().low != "." {
			return false
		}
	}
	s.Kind, s.Many = Onward, n
	return true
}

// marks reads sentences about markers: "Place the second marker after the first 3 stitches",
// "Take the second marker off".
func (p *parser) marks(s *Statement) bool {
	s.Items = nil
	if p.nowBegins() {
		s.Kind, s.Further = Note, true
		return true
	}
	for ; p.at < len(p.t); p.at++ {
		from := p.at
		switch {
		case p.any("place", "put"):
			p.all("a", "the", "first", "second", "another", "one")
			if p.any("marker", "m") && p.any("after") {
				p.all("the", "first", "next")
				n, ok := p.number(true)
				if !ok {
					n = Is(1) // "after the first stitch"
				}
				if p.stitches() {
					s.Kind = Markers
					s.Items = append(s.Items, Item{Does: Place, Times: n})
					if p.any(",") && p.took("and", "another", "after", "the", "next") {
						if n, ok := p.number(true); ok {
							s.Items = append(s.Items, Item{Does: Place, Times: n})
						} else if p.done() || p.stitches() || p.peek().low == ":" {
							s.Items = append(s.Items, Item{Does: Place, Times: Is(1)})
						}
					}
					return true
				}
			}
		case from == 0 && p.any("take", "remove"):
			p.all("the", "both", "second", "first", "gusset", "all")
			if p.any("marker", "markers") && (p.t[from].low == "remove" || p.any("off")) {
				s.Kind = Markers
				s.Items = append(s.Items, Item{Does: Remove})
				return true
			}
		}
		p.at = from
		if from > 4 {
			return false
		}
	}
	return false
}
