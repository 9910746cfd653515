package written

import "slices"

// repeated reads rounds that are worked again: "Rep Rnds 1–3 six times more", "Repeat the
// last 2 rounds until 15 sts are between the markers", "Work rows 1–2, 4 times more, then row 2".
func (p *parser) repeated(s *Statement) bool {
	all := p.t
	total := p.total()
	if !p.repeats(s) {
		p.t = all
		return false
	}
	s.Many = total
	return true
}

func (p *parser) repeats(s *Statement) bool {
	from := p.at
	if p.any("work"); p.any("as", "like") || p.took("same", "as") || p.took("the", "same", "as") {
		if p.all("for"); p.anyRound() {
			if a, b, ok := p.span(); ok && p.done() {
				s.Kind, s.Repeat = Again, &Repeat{From: Is(a), To: Is(b)}
				return true
			}
		} else if n, ok := p.nth(); ok && p.anyRound() && p.done() {
			s.Kind, s.Repeat = Again, &Repeat{From: n, To: n}
			return true
		}
		p.at = from
		return false
	}
	p.at = from
	if !p.any("rep", "repeat", "work", "repeating", "continue", "cont") {
		return false
	}
	p.any(".")
	if p.took("from", "*", "*") || p.single && p.took("from", "*") {
		r := Repeat{Stars: 1}
		if p.t[p.at-2].low == "*" {
			r.Stars = 2
		}
		for p.any("*") {
			r.Stars++
		}
		if p.any("to") {
			p.all("*")
		}
		p.howOften(&r)
		s.Kind, s.Repeat = Again, &r
		return true
	}
	p.all("to", "repeat", "rep", "working", "all", "of")
	work := p.t[p.at-1].low == "work"
	r := Repeat{}
	p.all("the", "these", "last", "previous", "those")
	single := p.any("this") || p.t[p.at-1].low == "last"
	if p.these > 0 && p.any("them", "both") {
		r.Last = Is(p.these)
	} else if t := p.peek(); t.kind == word && inLetters[t.low] == 0 && roundWords[t.low] == 0 && roundWords[p.next(1).low] > 0 && t.low != "every" {
		if r.Named = kindsOf[t.low]; r.Named == "" {
			r.Named = t.low
		}
		p.at++
		p.rounds()
	} else if p.took("it") && work {
		p.at = from
		return false
	} else if n, ok := p.number(true); ok {
		if low := p.peek().low; roundWords[low] == 0 && roundWords[p.next(1).low] > 0 && low != "more" && low != "plain" && low != "further" && low != "additional" && low != "extra" {
			r.Of = p.peek().low // "the six lace rounds"
			p.at++
		}
		if _, ok := p.rounds(); !ok || work && r.Of == "" && p.t[p.at-3].low != "these" && p.t[p.at-3].low != "last" {
			p.at = from
			return false
		}
		if r.Last = n; r.Of != "" && n.same() {
			r.From, r.To, r.Last = Is(1), n, Number{}
		}
	} else if _, ok := p.rounds(); ok {
		switch a, b, ok := p.spanUnless(single); {
		case ok:
			l := Label{From: Is(a), To: Is(b)}
			if p.sizes > 1 {
				p.otherSpans(&l)
			}
			r.From, r.To = l.From, l.To
			if and := p.at; p.any("and", "&") {
				if _, last, ok := p.span(); ok {
					r.To = Is(last)
				} else {
					p.at = and
				}
			}
		case !work:
			r.Last = Is(1)
		default:
			p.at = from
			return false
		}
	} else {
		p.at = from
		return false
	}
	if r.From.Written() && r.Of == "" {
		r.Of = p.sectionNamed()
	}
	p.howOften(&r)
	s.Kind, s.Repeat = Again, &r
	return true
}

// sectionNamed reads in which section rounds stand that are worked again: "of main pattern", "of
// chart A".
func (p *parser) sectionNamed() string {
	from := p.at
	if !p.any("of", "from", "in") {
		return ""
	}
	p.all("the", "your")
	name := ""
	for p.peek().kind == word && lettered(p.peek().low) == 0 {
		switch p.peek().low {
		case "once", "twice", "until", "for", "again", "on", "over", "to", "every", "each", "then", "and", "more":
		default:
			if name != "" {
				name += " "
			}
			name += p.peek().low
			p.at++
			continue
		}
		break
	}
	if name == "" {
		p.at = from
	}
	return name
}

// spanUnless reads a span of rounds, but none after "this row".
func (p *parser) spanUnless(single bool) (from, to int, ok bool) {
	if single {
		return 0, 0, false
	}
	return p.span()
}

// howOften reads how often rounds are worked again.
func (p *parser) howOften(r *Repeat) {
	for !p.done() {
		begins := p.at
		p.all(",", "for", "a", "total", "of", "and")
		from := p.at
		if n, more, ok := p.times(); ok {
			r.Times, r.More = n, more
			r.InAll = p.said(begins, "total", "all", "altogether")
			continue
		}
		if p.varied() {
			r.Varied = true
			continue
		}
		p.at = from
		if p.any("every", "each", "on") {
			p.all("every", "foll", "following", "the")
			switch n, ok := p.nth(); {
			case ok:
				r.Every = n
			case p.any("other", "alt", "alternate", "foll", "following"):
				r.Every = Is(2)
			default:
				r.Every = Is(1)
			}
			p.any("alt", "foll")
			if _, ok := p.rounds(); ok {
				continue
			}
		}
		p.at = from
		if p.took("then") && p.anyRound() {
			if a, b, ok := p.span(); ok {
				l := Label{From: Is(a), To: Is(b)}
				if p.sizes > 1 {
					p.otherSpans(&l)
				}
				r.Then, r.ThenTo = l.From, l.To
				continue
			}
		}
		p.at = from
		if p.any("until", "till") || p.any("to") {
			end := len(p.t)
			p.all("there", "are", "you", "have")
			if list, ok := p.counts(end); ok {
				r.Until = list
				return
			}
			r.Open, r.All = true, p.until("all") < end && p.until("worked", "used") < end
			p.at = end
			return
		}
		p.at = from + 1
	}
}

// said reports whether a word stands between a place and this one.
func (p *parser) said(from int, words ...string) bool {
	return slices.ContainsFunc(p.t[from:p.at], func(t token) bool { return slices.Contains(words, t.low) })
}

// varied reads that rounds are not the same each time: "working 1 st fewer between decreases".
func (p *parser) varied() bool {
	from := p.at
	if p.any("working", "knitting", "with", "having") {
		if _, ok := p.number(true); ok {
			p.any("st", "stitch", "sts", "stitches")
			if p.any("more", "fewer", "less") {
				for !p.done() && p.peek().low != "," && p.peek().low != "until" && p.peek().low != "till" {
					p.at++
				}
				return true
			}
		}
	}
	p.at = from
	return false
}

func (p *parser) anyRound() bool {
	_, ok := p.rounds()
	return ok
}

// many reads rounds that are told by their number or their length: "Knit 5 rounds", "Work 10
// rounds in k1, p1 rib", "Work even for 5 cm".
func (p *parser) many(s *Statement) bool {
	from := p.at
	t := p.t
	if from >= len(t) || describing[t[from].low] {
		return false
	}
	p.changing(s)
	p.at = from
	at, n, row := p.roundsCounted()
	lengthy := -1
	if at < 0 {
		if lengthy = p.lengthAhead(); lengthy < 0 {
			p.t, s.By = t, Number{}
			return false
		}
	}
	switch {
	case at >= 0:
		s.Many = n
		s.Label.Row = row
		for at > from && (t[at-1].low == "x" || t[at-1].low == "for") {
			at--
		}
		p.t = append(append([]token{}, p.t[:at]...), p.t[p.at:min(len(p.t), p.until("or", "until", "till"))]...)
	default:
		s.Unsure = true
		p.t = append([]token{}, p.t[:lengthy]...)
	}
	p.at = from
	p.castsOff()
	p.onlyOver(s)
	p.at = from
	p.all("work", "then", "continue", "cont", "working", "in", "a", "of", "another", "more", "for", "now")
	s.Items = p.pattern()
	if s.Items == nil {
		p.t, p.at = t, from
		s.Many, s.Unsure, s.Items, s.By, s.Over = Number{}, false, nil, Number{}, Number{}
		return false
	}
	s.Kind = Rounds
	return true
}

// roundsCounted finds "10 rounds", and returns where it begins; p.at is where it ends.
func (p *parser) roundsCounted() (at int, n Number, row bool) {
	start := p.at
	for i := start; i < len(p.t); i++ {
		p.at = i
		if p.t[i].kind != whole && inLetters[p.t[i].low] == 0 {
			continue
		}
		if i > start && (p.t[i-1].low == "every" || p.t[i-1].low == "last" || p.t[i-1].low == "these") {
			continue
		}
		n, ok := p.number(true)
		if !ok {
			continue
		}
		p.all("more", "plain", "further", "additional")
		if row, ok = p.rounds(); ok {
			return i, n, row
		}
	}
	p.at = start
	return -1, n, false
}

// lengthAhead returns where it is told how long something is worked: "until it is 6 cm", "for
// 2 in"; -1 if that isn't told.
func (p *parser) lengthAhead() int {
	if at := p.at + 1; at+1 < len(p.t) && (p.t[at].kind == whole || p.t[at].kind == measured) && lengths[p.t[at+1].low] {
		return at // "Knit 2 in"
	}
	for i := p.at + 1; i < len(p.t); i++ {
		switch p.t[i].low {
		case "until", "till":
			return i
		case "for":
			for _, t := range p.t[i:] {
				if lengths[t.low] {
					return i
				}
			}
		}
	}
	return -1
}

// lengths are units of length.
var lengths = map[string]bool{"cm": true, "in": true, "ins": true, "inch": true, "inches": true, "\"": true, "mm": true, "″": true, "cms": true}

// pattern reads what a round is worked in: "k1, p1 rib", "stockinette", "even", "knit".
func (p *parser) pattern() []Item {
	if list := p.inManner(); list != nil {
		return list
	}
	for len(p.t) > p.at {
		switch p.t[len(p.t)-1].low {
		case "rib", "ribbing", "pattern", "patt", "in", "of", "for", ",", ".", "the", "work", "as", "follows", "more", "and":
			if p.t[len(p.t)-1].low == "rib" && len(p.t)-p.at == 1 {
				return []Item{{Does: Stitch, Name: "rib", In: 1, Out: 1, Reach: ToEnd, Even: true, As: Ribbed}}
			}
			p.t = p.t[:len(p.t)-1]
			continue
		}
		break
	}
	plain := plainly()
	if p.done() {
		return plain
	}
	from := p.at
	for _, words := range [][]string{
		{"even"},
		{"straight"},
		{"stockinette"},
		{"stocking", "stitch"},
		{"st", "st"},
		{"plain"},
		{"pattern"},
		{"garter", "stitch"},
		{"garter"},
		{"as", "established"},
		{"stockinette", "stitch"},
		{"as", "set"},
		{"knit", "every"},
		{"knit", "all"},
		{"knit"},
		{"plain", "knitting"},
		{"without", "shaping"},
		{"k"},
		{"purl"},
		{"even", "in", "stockinette"},
		{"even", "in", "pattern"},
		{"est", "patt"},
		{"established", "pattern"},
	} {
		p.at = from
		if p.took(words...) {
			p.all("every", "round", "rnd", "row", "all", "sts", "in", "pattern", "as", "established", "patt", "stitch", "st", "rounds", "rows", "without", "shaping", "plain", "stockinette", "even")
			if p.done() {
				plain[0].As = fabricOf(p.t[from:])
				return plain
			}
		}
	}
	p.at = from
	return grouped(p.items(""), p.reached()) // "k1, p1 rib": over and over
}
