package written

import "slices"

// keepers are what stitches are put aside on.
var keepers = []string{"waste", "scrap", "holder", "holders", "hold", "thread", "pin", "spare", "stitch-holder", "safety-pin", "yarn-holder", "cord"}

// aside reads stitches that are put aside: "slip 15 to waste yarn", "place the next 15 sts on
// a holder for the thumb".
func (p *parser) aside() (Item, bool) {
	from, leaves := p.at, p.peek().low == "leave"
	if !p.any("slip", "sl", "place", "put", "transfer", "move", "leave", "thread") {
		return Item{}, false
	}
	end := p.clause()
	back := false
	keeps := -1
	for at := p.at; at < end; at++ {
		low := p.t[at].low
		if slices.Contains(keepers, low) && keeps < 0 {
			keeps = at
		}
		back = back || low == "back" || low == "needle" || low == "needles" || low == "dpns" || low == "from"
	}
	if keeps < 0 || back {
		p.at = from
		return Item{}, false
	}
	i := Item{Does: Hold, In: 1}
	if leaves {
		i = Item{Does: Leave}
	}
	if from == 0 && p.allAside(end) { // "slip sts onto scrap yarn"
		i.Reach, i.Before, p.at = ToEnd, Is(0), end
		return i, true
	}
	if p.took("all", "but") {
		p.all("the", "last", "first")
		if n, ok := p.number(true); ok {
			i.Reach, i.Before, p.at = ToEnd, n, end
			return i, true
		}
	}
	for ; p.at < end; p.at++ {
		if !i.Times.Written() {
			if n, ok := p.number(true); ok {
				i.Times = n
				p.at--
				continue
			}
		}
		if p.took("for") {
			i.Name = p.name(end)
			break
		}
	}
	if i.Name == "" {
		for at := from; at < end; at++ {
			if called[p.t[at].low] {
				i.Name = p.t[at].low
			}
		}
	}
	p.at = end
	return i, true
}

// keeps reports whether stitches are put aside by what stands at a place.
func (p *parser) keeps(at int) bool {
	q := *p
	q.at = at
	_, ok := q.aside()
	return ok && q.named(at, q.at) // rather than an end of yarn
}

// allAside reports whether it is all stitches that are put aside: no number is told, and no marker.
func (p *parser) allAside(end int) bool {
	q := parser{t: p.t[:end], at: p.at}
	q.all("all", "the", "these", "remaining", "rem", "live", "of")
	if !q.stitches() {
		return false
	}
	for _, t := range q.t[p.at:] {
		if _, ok := t.counts(); ok || called[t.low] || t.low == "between" || t.low == "marker" || t.low == "markers" || t.low == "m" || t.low == "before" || t.low == "for" || t.low == "next" {
			return false
		}
	}
	return true
}

// called are names that held stitches go by.
var called = map[string]bool{
	"thumb": true, "gusset": true, "index": true, "middle": true, "ring": true, "little": true, "palm": true, "gap": true, "hand": true,
}

// name reads what a set is for, up to the clause's end.
func (p *parser) name(end int) string {
	text := ""
	for ; p.at < end; p.at++ {
		if t := p.peek(); t.kind == word && t.low != "the" && t.low != "finger" && t.low != "fingers" {
			if text != "" {
				text += " "
			}
			text += t.low
		}
	}
	p.at--
	return text
}

// wasteKnit reads stitches that are knitted with waste yarn and again: "k8 with waste yarn, slip
// these 8 sts back to the left needle and knit them again", "with waste yarn k8".
func (p *parser) wasteKnit() (Item, bool) {
	before := p.any("with", "using", "in") && p.wasteYarn()
	p.any(",")
	n, ok := Number{}, false
	if t := p.peek(); isStitch(t.low) && t.low[0] == 'k' {
		p.at++
		n, ok = p.grouped(digits(t.low[1:])), true
	} else if p.any("knit", "k", "work") {
		p.all("the", "next", "these", "across", "following")
		n, ok = p.number(true)
	}
	p.stitches()
	if !ok || !before && (!p.any("with", "using", "in", "onto", "on") || !p.wasteYarn()) {
		return Item{}, false
	}
	p.at = p.clause()
	for { // that they are knitted again
		from := p.at
		p.all(",", ";", ".", "then", "and")
		end, again, back, anew := p.clause(), false, false, false
		for _, t := range p.t[p.at:end] {
			again = again || t.low == "again"
			back = back || t.low == "needle" || t.low == "needles"
			anew = anew || t.low == "waste" || t.low == "scrap"
		}
		switch p.peek().low {
		case "slip", "sl", "place", "return", "transfer", "move", "put":
			again = again || back
		case "knit", "k", "work":
			again = again && !anew
		default:
			again = false
		}
		if !again || p.done() {
			p.at = from
			break
		}
		p.at = end
	}
	return Item{Does: Waste, In: 1, Out: 1, Times: n}, true
}

// wasteYarn steps over "waste yarn", "a length of contrasting yarn".
func (p *parser) wasteYarn() bool {
	p.all("a", "the", "length", "piece", "of", "some", "smooth")
	if !p.any("waste", "scrap", "contrast", "contrasting") {
		return false
	}
	p.all("coloured", "colored", "colour", "color")
	return p.any("yarn", "wool", "thread")
}

// digits returns the number that a word of digits is.
func digits(text string) (n int) {
	for _, r := range text {
		n = min(n*10+int(r-'0'), greatest)
	}
	return n
}

// takeIn reads held stitches that are knitted in: "knit 14 from waste yarn", "k the next 6 sts from
// the thread".
func (p *parser) takeIn() (Item, bool) {
	if !p.any("knit", "k", "work") {
		return Item{}, false
	}
	p.all("the", "next", "first", "last", "remaining", "rem", "held", "these", "across")
	n, ok := p.number(true)
	p.stitches()
	if !ok || !p.any("from") {
		return Item{}, false
	}
	end := min(p.clause(), p.at+9)
	if !slices.ContainsFunc(p.t[p.at:end], func(t token) bool { return slices.Contains(keepers, t.low) }) {
		return Item{}, false
	}
	if p.took("waste", "yarn") {
		p.dyed()
	} else {
		p.at = end
	}
	return Item{Does: TakeIn, Out: 1, Times: n}, true
}
