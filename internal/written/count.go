package written

import "slices"

// counts reads what is stated of counts: "44 sts", "46, of which 5 in the gusset", "44 sts; 8
// between markers". It takes all tokens up to end, or nothing.
func (p *parser) counts(end int) ([]Count, bool) {
	from, all := p.at, p.t
	list := p.told[:0]
	defer func() { p.t, p.told = all, list }()
	p.t = p.t[:end]
	some := false
	p.all("—", "-", "there", "are", "is", "now", "you", "have", "has", "should", "be", "will", "a", "total", "of", "to", "=", ":", "for", "and", "the", "in", "all", "gusset", "thumb", "each", "size", "you'll", "leaving", "giving", "makes", "making", "remain", "remaining", "with", "so", "that", "this", "gives", "leaves", "got", "you've", "you're", "back", "at", "count", "your", "stitch", "stitches", "should", "will")
	for p.at < end {
		c := Count{At: p.here()}
		var ok bool
		letters := p.peek().kind == word
		if c.Number, ok = p.number(true); !ok {
			break
		}
		p.strungOn(&c.Number)
		number := p.at
		named := p.stitches()
		if letters && !named {
			break
		}
		for _, t := range p.t[number:p.at] {
			c.Inside = c.Inside || t.low == "gusset" || t.low == "thumb"
		}
		each := false
		for p.at < end && !p.done() {
			switch low := p.peek().low; low {
			case "between", "gusset", "thumb", "inside":
				c.Inside = true
			case "each", "per":
				each = true // on each needle
			case "marker", "markers", "m", "in", "the", "for", "on", "needle", "needles", "your", "both", "total", "remain", "remaining", "remains", "rem", "left", "now", "all", "altogether", "st", "sts", "stitches", "dpns", "of", "live", "m's", "ms", "two", "them", "hand", "round", "at", "end", "this", "rnd", "row", "have", "been", "worked", "after", "it":
			case "increased", "inc", "inc'd", "incd":
				c.Change = 1
			case "decreased", "dec", "dec'd", "decd":
				c.Change = -1
			case "more", "before", "held", "sides", "side", "cast", "bound", "slipped", "times", "rounds", "rows", "rnds", "cm", "in.", "mm", "inches", "m1", "picked", "either":
				p.at = from
				return nil, false
			default:
				goto next
			}
			p.at++
		}
	next:
		c.To = p.reached()
		if !named && p.at < end && p.peek().kind == word && p.peek().low != "of" {
			break
		}
		if some = true; !each {
			list = append(list, c)
		}
		if p.peek().low == "-" && p.peek().tight {
			break
		}
		p.all(",", ";", "-", "—", "and", "of", "which", "with", "incl", "including", ".", "are", "is", "(", ")")
	}
	if p.at != end || !some {
		p.at = from
		return nil, false
	}
	return slices.Clone(list), true
}

// strungOn takes the counts of the other sizes where they only stand one behind the other, "41,
// 45, 49 sts": there must be one for each.
func (p *parser) strungOn(n *Number) {
	others := p.sizes - 1
	if others < 2 || !n.same() {
		return
	}
	for i := range others {
		if sep := p.next(2 * i).low; sep != "," && sep != "/" || p.next(2*i+1).kind != whole {
			return
		}
	}
	if !counted[p.next(2*others).low] {
		return
	}
	for i := range others {
		n.others = append(n.others, p.next(2*i+1).n)
	}
	p.at += 2 * others
}

// stated cuts counts off the end of a statement, and returns them: the last, and those in
// front of it if they stand apart, "(50 sts) (8 between markers)".
func (p *parser) stated() (list []Count) {
	for range mostStated {
		some, apart := p.lastStated()
		list = append(some, list...)
		last := len(p.t) - 1
		if len(some) == 0 || last < p.at+2 {
			break
		}
		switch low := p.t[last].low; {
		case apart && low == ")", low == "sts", low == "stitches", low == "markers", low == "m":
		default:
			return list
		}
	}
	return list
}

// lastStated cuts off what is stated last; apart reports whether it stands in brackets.
func (p *parser) lastStated() (list []Count, apart bool) {
	end := len(p.t)
	for end > p.at && (p.t[end-1].low == "." || p.t[end-1].low == ";") {
		end--
	}
	if end == p.at {
		return nil, false
	}
	start := p.at
	defer func() { p.at = start }()
	if shut := p.t[end-1].low; shut == ")" || shut == "]" || shut == "}" || shut == ">" {
		depth, open := 0, end-1
		for ; open >= max(start, end-mostCounted); open-- {
			switch p.t[open].low {
			case ")", "]", "}", ">":
				depth++
			case "(", "[", "{", "<":
				depth--
			}
			if depth == 0 {
				break
			}
		}
		if depth == 0 && open > start && !p.isGroup(open, end) {
			p.at = open + 1
			if list, ok := p.counts(end - 1); ok {
				p.cut(open)
				return list, true
			}
		}
	}
	named := false // a stitch is, behind it
	for open := end - 1; open > max(start, end-mostCounted); open-- {
		switch p.t[open].low {
		case "st", "sts", "stitch", "stitches":
			named = true
			continue
		case "-", "—", ":", ";", "=", ",", ".", "…":
		default:
			continue
		}
		if p.t[open].low == "-" && p.t[open].tight {
			continue
		}
		p.at = open + 1
		bare := p.t[open].low == "," || p.t[open].low == "."
		if bare && !named {
			continue
		}
		parted := p.t[open].low == ";" // "— 12 sts between markers; 48 sts total"
		if list, ok := p.counts(end); ok {
			p.cut(open)
			return list, parted
		}
	}
	return nil, false
}

// named reports whether a stitch is named between two places.
func (p *parser) named(from, to int) bool {
	for _, t := range p.t[from:to] {
		if counted[t.low] {
			return true
		}
	}
	return false
}

// isGroup reports whether brackets hold the values of other sizes for the number before them.
func (p *parser) isGroup(open, end int) bool {
	if p.sizes < 2 || open == 0 {
		return false
	}
	if p.t[open-1].low == "," && open > 1 {
		open-- // "k18, (20, 22)"
	}
	k := p.t[open-1].kind
	glued := k == word && p.t[open-1].low != "sts" && p.t[open-1].low != "stitches" && isDigit(rune(p.t[open-1].low[len(p.t[open-1].low)-1]))
	if k != whole && k != ordinal && !glued && p.t[open-1].low != "-" {
		return false
	}
	n := 0
	for _, t := range p.t[open+1 : end-1] {
		switch {
		case t.low == "(" || t.low == "[":
		case t.kind == whole || t.low == "-":
			n++
		case t.kind == mark:
		default:
			return false
		}
	}
	return n == p.sizes-1
}

// cut ends the statement before a place, and before marks that stand there.
func (p *parser) cut(end int) {
	for end > 0 && (p.t[end-1].low == "." || p.t[end-1].low == "," || p.t[end-1].low == ";" || p.t[end-1].low == "-" && !p.t[end-1].tight) {
		end--
	}
	p.t = p.t[:end]
}
