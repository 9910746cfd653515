package written

// grows reads shaping that is told by what it comes to: "Inc 1 st at each end of next and
// every foll 4th row until there are 40 sts", "Continue to decrease 10 sts in this way until 11
// remain", "Increase 1 st each side of the gusset every 3rd round 5 times".
func (p *parser) grows(s *Statement) bool {
	p.all("continue", "cont", "to", "then", "now")
	sign := p.shapes()
	if sign == 0 {
		return false
	}
	n, ok := p.number(true)
	if !ok || !p.stitches() {
		return false
	}
	by, r := n, Repeat{}
	for !p.done() {
		if p.any("each", "both") {
			if p.any("end", "ends", "side", "sides", "edge", "edges") {
				by = n.each(func(n int) int { return 2 * n })
			}
			continue
		}
		from := p.at
		if times, _, ok := p.times(); ok {
			r.Times = times
			continue
		}
		p.at = from
		if p.any("until", "till") || p.any("to") && p.peek().kind == whole {
			list, ok := p.counts(len(p.t))
			if !ok {
				return false
			}
			r.Until = list
			break
		}
		p.at = from + 1
	}
	s.Kind, s.By, s.Repeat = Grows, by.each(func(n int) int { return sign * n }), &r
	return true
}

// shapes steps over "increase" or "decrease", and returns 1 or -1.
func (p *parser) shapes() int {
	switch {
	case p.any("increase", "inc", "increasing"):
		return 1
	case p.any("decrease", "dec", "decreasing"):
		return -1
	}
	return 0
}

// changing takes what is said besides of stitches made in rounds that are told by their
// number: "10 rows in rib, increasing 1 st at the end of the last row".
func (p *parser) changing(s *Statement) {
	for at := range p.t {
		p.at = at
		sign := p.shapes()
		if sign == 0 {
			continue
		}
		p.all("evenly")
		n, ok := p.number(true)
		if !ok || !p.stitches() {
			continue
		}
		s.By = n.each(func(n int) int { return sign * n })
		end := at
		for end > 0 && (p.t[end-1].low == "," || p.t[end-1].low == "and" || p.t[end-1].low == "(") {
			end--
		}
		p.t = p.t[:end]
		return
	}
}
