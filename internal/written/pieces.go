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
			p.all("loosely", "all", "the", "these", "rem", "remaining", "next", "in", "rib", "pattern", "ribbing", "purlwise", "knitwise", "patt")
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

// until returns where one of the words stands, or where the statement ends.
func (p *parser) until(words ...string) int {
	for at := p.at; at < len(p.t); at++ {
		if slices.Contains(words, p.t[at].low) {
			return at
		}
	}
	return len(p.t)
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
