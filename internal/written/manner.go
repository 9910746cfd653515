package written

import "slices"

// whose says of stitches where they are: "k28 instep sts".
var whose = map[string]bool{
	"heel": true, "instep": true, "thumb": true, "gusset": true, "palm": true, "sole": true, "hand": true, "held": true, "waiting": true, "live": true,
	"remaining": true, "rem": true, "border": true, "edge": true, "cuff": true, "finger": true, "new": true, "cast-on": true, "waste": true, "scrap": true,
	"yarn": true, "knit": true, "purl": true, "front": true, "back": true, "working": true, "next": true, "bridge": true,
}

// besides begin what is said besides of how a round is worked: "removing markers".
var besides = map[string]bool{
	"removing": true, "slipping": true, "working": true, "keeping": true, "being": true, "taking": true, "making": true, "leaving": true,
	"picking": true, "closing": true, "carrying": true, "maintaining": true, "continuing": true, "dropping": true, "sliding": true, "turning": true, "knitting": true, "purling": true,
}

// remarks steps over what is said besides, and works nothing.
func (p *parser) remarks() bool {
	from := p.at
	switch {
	case besides[p.peek().low]:
		for _, t := range p.t[p.at:p.clause()] {
			if low := t.low; isStitch(low) || low == "increase" || low == "decrease" || signs[low].in != signs[low].out {
				return false
			}
		}
	case p.took("do", "not", "turn"), p.took("don't", "turn"), p.any("slide", "rotate"):
	default:
		return false
	}
	if p.at = p.clause(); p.at == from {
		p.at++
	}
	return true
}

// wrapped steps over "together with its wrap": it stays one stitch.
func (p *parser) wrapped() bool {
	from := p.at
	if p.any("tog", "together", "along") && p.any("with") {
		if slices.ContainsFunc(p.t[p.at:p.clause()], func(t token) bool {
			return t.low == "wrap" || t.low == "wraps" || t.low == "ds" || t.low == "wrapped"
		}) {
			p.at = p.clause()
			return true
		}
	}
	p.at = from
	return p.took("with", "its", "wrap") || p.took("and", "its", "wrap") || p.took("and", "wrap")
}

// turns reads that the work is turned: "turn", "w&t", "wrap next st and turn".
func (p *parser) turns() bool {
	switch {
	case p.any("w&t", "wt"), p.took("w", "&", "t"), p.took("wrap", "and", "turn"), p.took("wrap", "&", "turn"):
	case p.took("turn", "work"), p.took("turn", "the", "work"), p.any("turn"):
	default:
		from := p.at
		if p.any("wrap") {
			p.all("the", "next", "and", "following")
			p.stitches()
			p.all("and", "&")
			if p.any("turn") {
				return true
			}
		}
		p.at = from
		return false
	}
	return true
}

// increaseIn reads "inc once in each of the next 2 sts", "inc in next st": two come of one.
func (p *parser) increaseIn() (Item, bool) {
	from := p.at
	if !p.any("inc", "increase", "increasing") {
		return Item{}, false
	}
	i := itemOf(sign{"inc", 1, 2})
	if low := p.peek().low; p.done() || low == "," || low == ";" || low == ")" || low == "]" {
		return i, true
	}
	p.any("once", "one", "1")
	p.stitches()
	if !p.any("in", "into") {
		p.at = from
		return i, false
	}
	p.all("each", "of", "the", "every", "next", "first", "last", "both")
	n, ok := p.number(true)
	if !p.stitches() {
		p.at = from
		return i, false
	}
	if ok {
		i.Times = n
	} else if r, before, ok := p.reach(); ok {
		i.Reach, i.Before = r, before
	}
	return i, true
}

// over reads "over", "across" or "on" so many stitches.
func (p *parser) overStitches() (Number, bool) {
	from := p.at
	if p.any("over", "across", "on") {
		p.all("the", "these", "next", "first", "last", "rem", "remaining", "those")
		if n, ok := p.number(true); ok && p.stitches() {
			return n, true
		}
	}
	p.at = from
	return Number{}, false
}

// charted reads what is worked from a chart or a panel that stands elsewhere: "work round 1 of
// chart A over the next 12 sts", "work chart to marker".
func (p *parser) charted() (Item, bool) {
	from := p.at
	if !p.any("work", "knit", "follow", "foll", "begin", "beg", "start", "rep", "repeat", "k") {
		return Item{}, false
	}
	i := itemOf(sign{"chart", 1, 1})
	i.Even, i.Charted, i.As = true, true, Untold
	end, named := p.clause(), false
	for at := p.at; at < end; at++ {
		switch p.t[at].low {
		case "chart", "charts", "panel", "charted":
			named = true
		case "of":
			named = named || at > p.at && at+1 < end && p.t[at+1].low != "the" && p.t[at+1].kind == word && roundWords[p.t[p.at].low] > 0
		}
	}
	if !named {
		p.at = from
		return i, false
	}
	for ; p.at < end; p.at++ {
		if n, ok := p.overStitches(); ok {
			i.Times, p.at = n, end
			return i, true
		}
		if p.peek().low == "(" {
			p.at++
			if n, ok := p.number(true); ok && p.stitches() && p.any(")") {
				i.Times, p.at = n, end
				return i, true
			}
			p.at--
			continue
		}
		if low := p.peek().low; low == "to" || low == "until" || low == "across" || low == "around" {
			if r, before, ok := p.reach(); ok {
				i.Reach, i.Before, p.at = r, before, end
				return i, true
			}
		}
	}
	p.at = end
	return i, true
}

// everywhere makes a group of what stands in the list from a place on, where it is told after it
// that it is worked over and over: "K1, p1 around".
func (p *parser) everywhere(from int) bool {
	start := p.at
	p.any("rep", "repeat")
	r, before, ok := p.reach()
	if from >= len(p.list) || !ok || slices.ContainsFunc(p.list[from:], func(i Item) bool {
		return i.Does != Stitch || i.Reach != NoReach || i.In != i.Out
	}) {
		p.at = start
		return false
	}
	group := Item{Does: Together, Items: p.kept.keep(p.list[from:]), Reach: r, Before: before, At: p.list[from].At, To: p.reached()}
	p.list = append(p.list[:from], group)
	return true
}

// oneEach reads what is picked up besides: ", 1 st in each corner".
func (p *parser) oneEach(i *Item) bool {
	from := p.at
	n, ok := p.number(true)
	if !ok || !p.stitches() || !p.any("in", "at") {
		p.at = from
		return false
	}
	n = p.corners(n)
	sum := make([]int, max(1, len(n.others)+1, len(i.Times.others)+1))
	for at := range sum {
		sum[at] = max(0, n.For(at)) + max(0, i.Times.For(at))
	}
	i.Times = ofEach(sum)
	return true
}
