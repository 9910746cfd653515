package written

// plans reads what shaping is said to come to: "6 increase rounds, 3 → 15 stitches", "From 4
// stitches to 10 in 3 increase rounds", "Rounds 1, 4, 7".
func (p *parser) plans(s *Statement) bool {
	if p.took("from") {
		from, ok := p.number(false)
		p.stitches()
		if !ok || !p.took("to") {
			return false
		}
		to, ok := p.number(false)
		p.stitches()
		if !ok || !p.took("in") {
			return false
		}
		n, ok := p.number(true)
		if !ok || !p.shaping() {
			return false
		}
		s.Kind, s.Schedule = Plan, &Schedule{Rounds: n, From: from, To: to}
		return p.done()
	}
	if p.anyRound() {
		l := Label{}
		if !p.spans(&l) || !p.done() {
			return false
		}
		if len(l.List) == 0 {
			l.listed(l.From.For(0), l.To.For(0))
		}
		s.Kind, s.Schedule = Plan, &Schedule{List: l.List}
		return true
	}
	if !p.sketched() {
		return false
	}
	plan := &Schedule{}
	for at := 0; at < len(p.t); at++ {
		p.at = at
		if at == 0 || p.t[at-1].kind != whole {
			if n, ok := p.number(true); ok && p.shaping() && p.any(",") {
				plan.Rounds = n
			}
		}
		p.at = at
		if n, ok := p.number(false); ok && p.any("→") {
			to, ok := p.number(false)
			p.stitches()
			if !ok || !p.done() {
				return false
			}
			plan.From, plan.To = n, to
			s.Kind, s.Schedule = Plan, plan
			return true
		}
	}
	s.Kind = Note
	if n, ok := p.inAll(); ok {
		s.Kind, s.Schedule = Plan, &Schedule{Total: Is(n)}
	}
	return true
}

// inAll returns how many rounds a sketch comes to: "An increase round, then 2 plain rounds; 6 times
// in all, then 1 plain round more" are 19.
func (p *parser) inAll() (n int, ok bool) {
	plain := func() (int, bool) {
		from := p.at
		if n, ok := p.number(true); ok && n.same() && p.any("plain") && p.anyRound() {
			return n.first, true
		}
		p.at = from
		return 0, false
	}
	p.at = 0
	before, ok := plain()
	if ok && (!p.any(",") || !p.any("then")) || !p.any("an", "a") || !p.shaping() {
		return 0, false
	}
	step := 1
	if !p.took("every", "round") && !p.took("every", "row") {
		if !p.any(",") || !p.any("then") {
			return 0, false
		}
		after, ok := plain()
		if !ok {
			return 0, false
		}
		step += after
	}
	if !p.any(";") {
		return 0, false
	}
	times, _, ok := p.times()
	if !ok || !times.same() || p.t[p.at-1].low != "all" {
		return 0, false
	}
	if n = before + step*times.first; p.done() {
		return n, true
	}
	if !p.any(",") || !p.any("then") {
		return 0, false
	}
	after, ok := plain()
	return n + after, ok && p.any("more") && p.done()
}

// sketched reports whether a sentence only outlines what the rounds after it tell: "An
// increase round, then 2 plain rounds; 6 times in all".
func (p *parser) sketched() bool {
	first := p.peek()
	if first.low != "an" && first.low != "a" && first.low != "one" && first.kind != whole || kindsOf[p.next(1).low] == "" {
		return false
	}
	for _, t := range p.t {
		_, number := inLetters[t.low]
		switch {
		case t.kind == whole, t.kind == ordinal, t.kind == mark && t.low != "*", number, roundWords[t.low] > 0, kindsOf[t.low] != "":
		default:
			switch t.low {
			case "a", "an", "then", "another", "every", "times", "once", "twice", "in", "all", "more", "plain", "each", "of", "these", "and", "to", "other", "the", "end", "→", "stitch", "stitches":
			default:
				return false
			}
		}
	}
	return true
}

// comes reads what is said before a round: "Begin round 10, the ribbing, 1 cm below", "Try it
// on before round 10".
func (p *parser) comes(s *Statement) bool {
	if !p.any("begin") && !p.took("try", "it", "on", "before") || !p.anyRound() {
		return false
	}
	n, ok := p.number(false)
	s.Kind, s.Label.From = Comes, n
	return ok
}

// shaping steps over "increase rounds" and "decrease rows".
func (p *parser) shaping() bool {
	if low := p.peek().low; kindsOf[low] != "increase" && kindsOf[low] != "decrease" {
		return false
	}
	p.at++
	return p.anyRound()
}

// paced reads in which rounds a named round comes: "Work it in round 1, then in every 4th
// round 3 times. Knit all other rounds, to the end of round 17."
func (p *parser) paced(s *Statement) bool {
	if p.listed(s) {
		return true
	}
	p.at = 0
	if p.took("work", "it", "in") && p.anyRound() {
		n, ok := p.number(false)
		if !ok {
			return false
		}
		s.Kind, s.Label.From = Pace, n
		for p.any(",") && p.took("then", "in", "every") {
			step := Step{Every: Is(1), Times: Is(1)}
			if n, ok := p.nth(); ok {
				step.Every = n
			}
			if !p.anyRound() {
				return false
			}
			p.any(",")
			if step.Times, _, ok = p.times(); !ok {
				return false
			}
			s.Steps = append(s.Steps, step)
		}
		return p.done()
	}
	p.at = 0
	for p.at < len(p.t) && !p.took("to", "the", "end", "of") {
		p.at++
	}
	if !p.anyRound() || p.t[0].low != "knit" && p.t[0].low != "purl" && p.t[0].low != "work" {
		return false
	}
	n, ok := p.number(false)
	if !ok || !p.done() {
		return false
	}
	s.Kind, s.Label.To = Pace, n
	return true
}

// listed reads in which rounds a named one comes, where they are listed: "Work the inc round on
// rounds 5, 8 and 11 (3 increase rounds), knitting all other rounds", "Work inc rnd on the rounds
// shown in the table".
func (p *parser) listed(s *Statement) bool {
	if !p.any("work", "rep", "repeat", "knit") {
		return false
	}
	p.all("the", "an", "a", "this")
	name := kindsOf[p.peek().low]
	if name == "" || roundWords[p.next(1).low] == 0 {
		return false
	}
	p.at += 2
	if !p.any("on", "in", "at") {
		return false
	}
	p.all("the", "these")
	l := Label{}
	if !p.anyRound() {
		return false
	}
	if !p.spans(&l) {
		if p.until("table", "chart", "above", "below") == len(p.t) {
			return false
		}
		s.Kind, s.Name = Pace, name
		s.Counts = p.stated()
		return true
	}
	if len(l.List) == 0 {
		l.listed(l.From.first, l.To.first)
	}
	s.Kind, s.Name = Pace, name
	s.Label.List = l.List
	s.Counts = p.stated()
	for ; p.at < len(p.t); p.at++ {
		from := p.at
		if n, ok := p.number(true); ok && p.shaping() {
			s.Schedule = &Schedule{Rounds: n}
			break
		}
		p.at = from
	}
	return true
}
