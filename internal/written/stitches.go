package written

import "strings"

// stitch reads a stitch with how often it is worked, or to where.
func (p *parser) stitch() (Item, bool) {
	p.all("the")
	if i, ok := p.phrase(); ok {
		return p.often(i), true
	}
	t := p.peek()
	if t.kind != word {
		return Item{}, false
	}
	if s, ok := signs[t.low]; ok {
		p.at++
		switch t.low {
		case "k", "knit", "p", "purl", "sl", "slip":
			return p.basic(s, t.low)
		}
		return p.often(itemOf(s)), true
	}
	if s, ok := cable(t.low); ok {
		p.at++
		return p.often(itemOf(s)), true
	}
	if t.low == "work" {
		p.at++
		return p.basic(sign{"k", 1, 1}, t.low)
	}
	return p.glued(t)
}

func itemOf(s sign) Item { return Item{Does: Stitch, Name: s.name, In: s.in, Out: s.out} }

// phrase reads a stitch that is named in several words.
func (p *parser) phrase() (Item, bool) {
	for _, one := range phrases[p.peek().low] {
		if p.took(one.words...) {
			if p.took("of", "next", "st") || p.took("of", "the", "next", "stitch") || p.took("of", "next", "stitch") || p.took("of", "the", "next", "st") {
				return itemOf(one.sign), true
			}
			return itemOf(one.sign), true
		}
	}
	return Item{}, false
}

// cable reads stitches that cross: "C6F" takes as many as it leaves.
func cable(low string) (sign, bool) {
	if len(low) < 3 || low[0] != 'c' && low[0] != 't' || !strings.ContainsRune("fbrl", rune(low[len(low)-1])) {
		return sign{}, false
	}
	n := 0
	for _, r := range low[1 : len(low)-1] {
		if !isDigit(r) {
			return sign{}, false
		}
		n = min(n*10+int(r-'0'), greatest)
	}
	return sign{low, n, n}, n > 1
}

// glued reads a stitch with its number in one word: "k3", "sl1", "k2" before "tog".
func (p *parser) glued(t *token) (Item, bool) {
	low, twisted := strings.CutSuffix(t.low, "tbl") // "k2tbl"
	name := strings.TrimRight(low, "0123456789")
	s, ok := signs[name]
	if !ok || name == low || s.name == "yo" && name != "yo" {
		return Item{}, false
	}
	n := 0
	for _, r := range low[len(name):] {
		n = min(n*10+int(r-'0'), greatest)
	}
	p.at++
	times := p.grouped(n)
	if twisted {
		s.name += " tbl"
	}
	if name == "k" || name == "p" || name == "sl" {
		return p.counted(s, times)
	}
	i := itemOf(s)
	i.Times = times
	return p.often(i), true
}

// basic reads what follows knit, purl, slip or work: a number, a place to work to, together,
// through the back loop, as it comes.
func (p *parser) basic(s sign, called string) (Item, bool) {
	i := itemOf(s)
	if p.even(&i) {
		return i, true
	}
	p.all("across", "the", "next", "first", "last", "rem", "remaining", "following", "all", "every", "each", "other", "held", "wrapped")
	if low := p.next(1).low; p.peek().low == "them" && (low == "," || low == ";" || p.at+1 == len(p.t)) {
		p.at++
		i.Reach = ToEnd // "put them on needles, knit them"
		return i, true
	} else if p.peek().low == "it" && (low == "together" || low == "tog" || low == "along") {
		p.at++ // "k it together with its wrap"
	}
	whole := p.at > 0 && (p.t[p.at-1].low == "all" || p.t[p.at-1].low == "every" || p.t[p.at-1].low == "each")
	if n, ok := p.number(true); ok {
		return p.counted(s, n)
	}
	whole = p.stitches() && whole
	p.any("ds")
	p.manner()
	across := p.at > 0 && p.t[p.at-1].low == "across"
	switch {
	case p.wrapped():
		return i, true
	case p.twisted():
		i.Name += " tbl"
	case p.took("in", "front", "and", "back") || p.took("into", "front", "and", "back"):
		return itemOf(sign{"kfb", 1, 2}), true
	}
	p.dyed()
	if m, _, ok := p.times(); ok {
		i.Times = m
		return i, true
	}
	var ok bool
	if i.Reach, i.Before, ok = p.reach(); ok {
		p.dyed()
		p.even(&i)
		return i, true
	}
	if whole { // "knit across all sts"
		i.Reach = ToEnd
		return i, true
	}
	alone := p.peek().low == "," && besides[p.next(1).low] || p.done() || p.peek().low == "." || p.peek().low == "("
	if alone && (len(called) > 2 || across || p.done() && (p.at < 2 || p.t[p.at-2].kind == mark && p.t[p.at-2].low != ",")) {
		i.Reach = ToEnd // "Knit." is the whole round
	}
	if called == "work" && !i.Even && i.Reach == NoReach {
		return i, false
	}
	return i, true
}

// manner steps over how a stitch is slipped or worked.
func (p *parser) manner() {
	for {
		p.all("purlwise", "knitwise", "pwise", "kwise", "wyif", "wyib", "loosely", "p-wise", "k-wise")
		from := p.at
		if !p.any("with", "as") {
			return
		}
		p.all("the", "if", "to", "yarn")
		if !p.took("in", "front") && !p.took("in", "back") && !p.any("behind", "purl", "knit") {
			p.at = from
			return
		}
	}
}

// counted reads what follows knit, purl or slip with a number.
func (p *parser) counted(s sign, n Number) (Item, bool) {
	if p.wrapped() {
		i := itemOf(s)
		i.Times = n
		return i, true
	}
	if p.any("tog", "together") || p.took("sts", "tog") || p.took("stitches", "together") {
		return p.together(s, n)
	}
	i := itemOf(s)
	i.Times = n
	if p.any("more") {
		p.stitches()
		return i, true
	}
	p.stitches()
	p.manner()
	if p.twisted() {
		i.Name += " tbl"
	}
	p.dyed()
	if p.any("each") {
		p.at = p.clause() // "each together with the loop behind it"
		return i, true
	}
	if p.even(&i) {
		return i, true
	}
	if m, _, ok := p.times(); ok && m.same() {
		i.Times = n.each(func(n int) int { return min(n*m.first, greatest) })
	}
	return i, true
}

// twisted steps over "through the back loop".
func (p *parser) twisted() bool {
	return p.took("tbl") || p.took("through", "the", "back", "loop") || p.took("through", "back", "loop") || p.took("through", "the", "back", "loops") || p.took("through", "back", "loops") || p.took("twisted")
}

// together reads what follows "k2 tog".
func (p *parser) together(s sign, n Number) (Item, bool) {
	p.any("tbl")
	i := itemOf(sign{s.name + "tog", n.For(0), 1})
	i.Name = s.name + itoa(n.For(0)) + "tog"
	return p.often(i), n.For(0) > 1 && n.same()
}

// evenly is how stitches are worked that stay as they are.
var evenly = [][]string{
	{"even"},
	{"straight"},
	{"as", "established"},
	{"in", "pattern"},
	{"in", "patt"},
	{"in", "est", "patt"},
	{"in", "established", "pattern"},
	{"in", "pattern", "as", "established"},
	{"as", "set"},
	{"as", "they", "appear"},
	{"as", "they", "come"},
	{"in", "rib"},
	{"in", "ribbing"},
	{"in", "stockinette"},
	{"in", "stocking", "stitch"},
	{"in", "stockinette", "stitch"},
	{"in", "st", "st"},
	{"in", "st-st"},
	{"in", "garter", "st"},
	{"in", "garter", "stitch"},
	{"in", "moss", "st"},
	{"in", "seed", "st"},
	{"in", "lace", "pattern"},
	{"in", "cable", "pattern"},
	{"in", "stitch", "pattern"},
	{"the", "knits", "and", "purl", "the", "purls"},
	{"plain"},
}

// even reads "even", "in pattern", "as established", "the sts as they appear", with where it
// ends; without, it goes to the end of the round.
func (p *parser) even(i *Item) bool {
	from := p.at
	for _, words := range evenly {
		if p.took(words...) {
			p.all("as", "established", "in", "pattern", "patt", "set", "st")
			i.Even, i.As = true, fabricOf(p.t[from:p.at])
			if !i.Times.Written() && i.Reach == NoReach {
				var ok bool
				if i.Reach, i.Before, ok = p.reach(); !ok {
					i.Reach = ToEnd
				}
			}
			return true
		}
	}
	p.at = from
	return false
}

// often reads how often a stitch is worked.
func (p *parser) often(i Item) Item {
	if p.twisted() {
		i.Name += " tbl"
	}
	if !i.Times.Written() && p.peek().kind == whole && i.Name == "yo" {
		i.Times, _ = p.number(false)
	}
	p.dyed()
	if i.Times.Written() {
		return i
	}
	if n, _, ok := p.times(); ok {
		i.Times = n
		return i
	}
	from := p.at
	if r, before, ok := p.reach(); ok {
		i.Reach, i.Before = r, before
	} else {
		p.at = from
	}
	return i
}

// dyed steps over the yarn that a stitch is worked in.
func (p *parser) dyed() {
	from := p.at
	p.any("in", "with", "using")
	if !p.yarn() {
		p.at = from
	}
}

// yarn steps over the name of a yarn.
func (p *parser) yarn() bool {
	for _, name := range p.yarns {
		if p.took(name...) {
			return true
		}
	}
	return p.any("mc", "cc", "cc1", "cc2", "cc3")
}
