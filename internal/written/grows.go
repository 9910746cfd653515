package written

// Where in a row or round shaping comes.
type Where uint8

const (
	Anywhere Where = iota // that isn't told
	Edges                 // at both ends of a row
	AtStart
	AtEnd
	Inside  // after the first marker and before the second
	Outside // before the first and after the second
	Around  // before and after each marker
)

// grows reads shaping that is told by what it comes to: "Inc 1 st at each end of next and
// every foll 4th row until there are 40 sts", "Continue to decrease 10 sts in this way until 11
// remain", "Increase 1 st each side of the gusset every 3rd round 5 times".
func (p *parser) grows(s *Statement) bool {
	s.Steps = nil
	p.all("continue", "cont", "to", "then", "now", "in", "this", "way", "as", "set", ",", "keep", "at", "the", "same", "time")
	sign := p.shapes()
	if sign == 0 {
		return false
	}
	s.Repeat = &Repeat{}
	if from := p.at; p.alike() {
		s.Repeat.Shaping = true
	} else {
		p.at = from
		n, ok := p.number(true)
		if !ok || !p.stitches() || p.peek().low == "in" && p.next(1).low == "next" && stitchWords[p.next(2).low] {
			s.Repeat = nil
			return false
		}
		s.By, s.Less = n, sign < 0
	}
	for !p.done() {
		if where, ok := p.where(); ok {
			s.Where = where
			continue
		}
		if p.varied() {
			s.Repeat.Varied = true
			continue
		}
		from := p.at
		if p.any("until", "till") || p.any("to") && p.peek().kind == whole {
			list, ok := p.counts(len(p.t))
			if !ok {
				s.Repeat = nil
				return false
			}
			s.Repeat.Until = list
			break
		}
		if p.at = from; p.step(s) {
			continue
		}
		p.at = from + 1
	}
	if s.Repeat.Shaping && len(s.Steps) == 0 && len(s.Repeat.Until) == 0 {
		s.Repeat = nil
		return false
	}
	s.Kind = Grows
	return true
}

// alike reads that shaping goes on as before: "in this way", "as set".
func (p *parser) alike() bool {
	p.all("at", "each", "end", "side", "both", "sides", "ends")
	return p.took("in", "this", "way") || p.took("in", "this", "manner") || p.took("in", "the", "same", "way") || p.took("in", "same", "way") || p.took("as", "set") || p.took("as", "before") ||
		p.took("as", "established") || p.any("thus", "similarly", "likewise") || p.took("like", "this") || p.peek().low == "on" || p.peek().low == "every"
}

// where reads where in a row shaping comes.
func (p *parser) where() (Where, bool) {
	from := p.at
	p.all("at", "on", "the")
	switch {
	case p.any("each", "both", "either"):
		if !p.any("end", "ends", "side", "sides", "edge", "edges") {
			break
		}
		if end := p.at; p.any("of") {
			p.all("the", "each", "every", "both", "these")
			switch low := p.peek().low; {
			case low == "marker" || low == "markers" || low == "m":
				p.at++
				return Around, true
			case low == "gusset" || low == "thumb" || low == "gore":
				p.at++
				return Inside, true
			}
			p.at = end
		}
		return Edges, true
	case p.any("before", "after"):
		first := p.t[p.at-1].low
		p.all("the", "first", "1st", "next", "each", "every", "gusset", "thumb")
		if p.any("and") && p.any("before", "after") {
			p.all("the", "each", "every", "gusset", "thumb")
			p.any("marker", "markers", "m")
			return Around, true
		}
		if !p.any("marker", "m") {
			break
		}
		p.all("and", "1", "st", "sts", "one", "stitch", ",")
		if !p.any("before", "after") {
			break
		}
		p.all("the", "second", "2nd", "next", "last", "other")
		p.any("marker", "m")
		if first == "after" {
			return Inside, true
		}
		return Outside, true
	case p.any("between", "inside"), p.took("within"):
		p.all("the", "two", "gusset", "thumb", "of")
		if p.any("markers", "m's", "ms") {
			return Inside, true
		}
	case p.any("beg", "beginning", "start"):
		p.all("of", "the", "and")
		if p.any("end") {
			return Edges, true
		}
		return AtStart, true
	case p.any("end") && p.any("of"):
		return AtEnd, true
	}
	p.at = from
	return 0, false
}

// step reads in which rounds shaping comes: "next row", "next 5 rows", "every foll 4th row 6
// times", "foll alt row", "then every 6th row twice".
func (p *parser) step(s *Statement) bool {
	p.all("on", "in", "of", "the", "then", "and", ",", "at")
	at := p.at
	step := Step{Every: Is(1)}
	switch {
	case p.any("next", "this"):
		step.Times = Is(1)
		if n, ok := p.number(true); ok {
			step.Times = n
		}
		p.any("rs", "ws")
		if !p.anyRound() {
			if low := p.peek().low; low != "and" && low != "," && low != "then" {
				p.at = at
				return false
			}
			break
		}
	case p.any("every", "each"), p.peek().low == "foll", p.peek().low == "following", p.peek().kind == ordinal:
		if low := p.t[max(0, p.at-1)].low; low != "every" && low != "each" {
			step.Times = Is(1)
		}
		p.all("foll", "following", "knit", "purl", "rs", "ws", "the")
		switch n, ok := p.nth(); {
		case ok:
			step.Every = n
		case p.any("other", "alt", "alternate"):
			step.Every = Is(2)
		}
		p.any("alt", "foll", "following", "knit", "rs", "ws")
		if !p.anyRound() && p.peek().kind == word && p.peek().low != "and" && p.peek().low != "until" {
			p.at = at
			return false
		}
	default:
		if n, more, ok := p.times(); ok {
			if last := len(s.Steps) - 1; last >= 0 {
				s.Steps[last].Times, s.Steps[last].More = n, more
			} else {
				s.Steps = append(s.Steps, Step{Every: Is(1), Times: n})
			}
			return true
		}
		p.at = at
		return false
	}
	p.any(",", "for")
	if n, more, ok := p.times(); ok {
		step.Times, step.More = n, more
	}
	s.Steps = append(s.Steps, step)
	return true
}

// shapes steps over "increase" or "decrease", and returns 1 or -1.
func (p *parser) shapes() int {
	switch {
	case p.any("increase", "inc", "increasing", "inc'ing", "inc'g"):
		return 1
	case p.any("decrease", "dec", "decreasing", "dec'ing", "dec'g"):
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
		s.By, s.Less = n, sign < 0
		end := at
		if end > 1 && p.t[end-1].low == "same" { // "and at the same time"
			end -= 2
		}
		for end > 0 && (p.t[end-1].low == "," || p.t[end-1].low == "and" || p.t[end-1].low == "(") {
			end--
		}
		p.t = p.t[:end]
		return
	}
}
