package written

// spans reads which rounds: "4", "4–6", "4 to 6", "9–11 (9–11, 10–12)", "2, 4 and 6".
func (p *parser) spans(l *Label) bool {
	first, last, two, ok := p.ends()
	if !ok {
		return false
	}
	l.From, l.To, l.Two = Is(first), Is(last), two
	if p.sizes > 1 && p.otherSpans(l) {
		return true
	}
	for several := false; ; several = true {
		from := p.at
		a, b, ok := 0, 0, p.any(",", "and", "&")
		if ok {
			p.any("and", "&")
			a, b, ok = p.span()
		}
		if !ok {
			if p.at = from; several {
				l.joined()
			}
			return true
		}
		if !several {
			l.listed(first, last)
		}
		l.listed(a, b)
	}
}

// listed adds the rounds of a span to the list.
func (l *Label) listed(from, to int) {
	for n := from; n <= to && len(l.List) < mostListed; n++ {
		l.List = append(l.List, Is(n))
	}
}

// joined makes a span of a list that has no gap, and isn't cut: "2 and 3" are 2 to 3.
func (l *Label) joined() {
	if len(l.List) == mostListed {
		return
	}
	for i := 1; i < len(l.List); i++ {
		if l.List[i].first != l.List[i-1].first+1 {
			return
		}
	}
	if n := len(l.List); n > 0 {
		l.From, l.To, l.List = l.List[0], l.List[n-1], nil
	}
}

// span reads one number or a span of them.
func (p *parser) span() (from, to int, ok bool) {
	from, to, _, ok = p.ends()
	return from, to, ok
}

// ends reads a span, and tells whether it has two ends.
func (p *parser) ends() (from, to int, two, ok bool) {
	if from, ok = p.peek().counts(); !ok {
		return 0, 0, false, false
	}
	p.at++
	if sep := p.peek(); sep.low == "-" || sep.low == "to" || sep.low == "through" || sep.low == "—" {
		if to, ok := p.next(1).counts(); ok {
			p.at += 2
			return from, to, true, true
		}
	}
	return from, from, false, true
}

// counts returns the whole number that a token is, in digits or letters.
func (t token) counts() (n int, ok bool) {
	if t.kind == word {
		n = lettered(t.low)
		return n, n > 0
	}
	return t.n, t.kind == whole
}

// otherSpans reads the spans of the other sizes, if they stand next. If none of them has two
// ends, "1–8 (9, 10)", all begin where the first does.
func (p *parser) otherSpans(l *Label) bool {
	start := p.at
	froms, tos := []int{l.From.first}, []int{l.To.first}
	ends := froms[0] < tos[0]
	for len(froms) < p.sizes {
		shut, ok := closing[p.peek().low]
		if !ok {
			break
		}
		for p.at++; p.peek().low != shut; {
			if p.any("-") {
				froms, tos = append(froms, None), append(tos, None)
			} else if from, to, two, ok := p.ends(); ok {
				froms, tos = append(froms, from), append(tos, to)
				ends = ends && !two
			} else {
				p.at = start
				return false
			}
			p.any(",", ":", ";", "/")
			if p.done() {
				p.at = start
				return false
			}
		}
		p.at++
	}
	if len(froms) != p.sizes {
		p.at = start
		return false
	}
	for i := range froms {
		if ends && froms[i] != None && froms[i] > froms[0] {
			froms[i] = froms[0]
		}
	}
	l.From, l.To, l.Two = ofEach(froms), ofEach(tos), false
	return true
}
