package written

import "slices"

// comesBack reads held stitches that come back to the needles: "Put the 15 held stitches
// back on the needles", "Place 15 thumb sts from holder on dpns".
func (p *parser) comesBack(s *Statement) bool {
	held, needle, back, verb, undone := false, false, false, -1, false
	for at, t := range p.t {
		switch t.low {
		case "below":
			held = held || at == 0 || roundWords[p.t[at-1].low] == 0 // "6 rounds below the rib"
		case "safety-pin", "pin", "pins", "cord", "held", "wait", "waits", "waste", "scrap", "holder", "hold", "thread", "holders", "waiting", "spare", "stitch-holder":
			held = true
		case "needle", "needles", "dpns", "dpn", "double-pointed", "double-pointeds", "dpn's", "circular":
			needle = true
		case "back":
			back = back || at+1 == len(p.t) || p.t[at+1].low != "loop" && p.t[at+1].low != "loops" && p.t[at+1].low != "of"
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
	from = from || held && verb > 0 && verb < 7 && p.t[0].low == "from" && p.until("held", "holder", "waiting", "hold", "thread", "waste", "scrap") < verb
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
		if p.stitches(); p.any(",") && p.any("leaving") {
			p.leaving(s)
		}
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

// leaving reads how many wait on when some are taken up: ", leaving 13 on hold".
func (p *parser) leaving(s *Statement) {
	p.all("the", "other", "remaining")
	rest, ok := p.number(true)
	if !ok {
		return
	}
	all := make([]int, p.sizes)
	for size := range all {
		for _, n := range []Number{rest, s.Items[0].Times, s.Items[1].Times} {
			all[size] += max(0, n.For(size))
		}
	}
	s.Many = ofEach(all)
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
