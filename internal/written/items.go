package written

// star is an asterisk that something is repeated from.
type star struct {
	signs, at int // how many asterisks; the place in the parser's list
}

// joiners stand between items.
func (p *parser) joiners() {
	for p.any(",", ";", "then", "and", "&", "+", "next") {
		if low := p.peek().low; low == "with" || low == "in" || low == "using" {
			p.dyed() // "k40, with CC, k44"
		}
	}
}

// ending steps over "ending" and "end", behind which stands what is worked after all repeats.
func (p *parser) ending() bool {
	from := p.at
	if p.any("ending", "end", "ends") {
		if p.all("with", "by", "in"); !p.done() && p.works(p.at) {
			return true
		}
	}
	p.at = from
	return false
}

// ended has the last repeat of a list end before what stands behind "ending".
func (p *parser) ended(list []Item, at int) {
	if at < 1 || at >= len(list) || list[at-1].Does != Together || list[at-1].Reach != ToEnd || list[at-1].Before.Written() {
		return
	}
	each := make([]int, p.sizes)
	for size := range each {
		for _, i := range list[at:] {
			if i.Does != Stitch || i.Reach != NoReach {
				return
			}
			n := 1
			if i.Times.Written() {
				n = max(0, i.Times.For(size))
			}
			each[size] += n * i.In
		}
	}
	list[at-1].Before = ofEach(each)
}

// items reads what is told up to a closing bracket or the end of the statement.
func (p *parser) items(shut string) []Item {
	first := len(p.list)
	var open []star
	then := first // from where on it is told what is worked then
	end := first  // from where on it is told what it ends with
	for {
		if p.peek().low == "then" || p.next(1).low == "then" {
			then = len(p.list)
		}
		p.joiners()
		if p.ending() {
			end = len(p.list)
		}
		if p.done() || shut != "" && p.peek().low == shut {
			p.ended(p.list[first:], end-first)
			list := p.kept.keep(p.list[first:])
			p.list = p.list[:first]
			return list
		}
		if p.peek().low == "*" {
			n := 0
			for p.any("*") {
				n++
			}
			if at := len(open) - 1; at >= 0 && open[at].signs == n && len(p.list) > open[at].at && p.repeatFollows() {
				p.starred(open[at].at, false)
				open = open[:at]
				continue
			}
			if len(open) < mostDeep {
				open = append(open, star{n, len(p.list)})
			}
			continue
		}
		if from, ok := p.repeatFrom(open); ok {
			p.starred(from, true)
			continue
		}
		if p.remarks() {
			continue
		}
		if at := len(p.list) - 1; at >= first && p.list[at].Does == PickUp && p.oneEach(&p.list[at]) {
			continue
		}
		if p.everywhere(then) {
			continue
		}
		p.item()
	}
}

// repeatFollows reports whether what stands next tells how often.
func (p *parser) repeatFollows() bool {
	from := p.at
	defer func() { p.at = from }()
	p.any("rep", "repeat")
	if _, _, ok := p.times(); ok {
		return true
	}
	_, _, ok := p.reach()
	return ok
}

// repeatFrom reads "repeat from *", and returns the place in the list that it goes back to.
func (p *parser) repeatFrom(open []star) (from int, ok bool) {
	start := p.at
	if p.groups >= mostDeep || !p.any("rep", "repeat", "reps", "repeating") {
		return 0, false
	}
	p.any(".")
	p.all("from", "between", "the", "instructions")
	n := 0
	for p.any("*") {
		n++
	}
	p.any("s", "to")
	for ; n > 0 && p.any("*"); n = max(1, n) { // from * to *
	}
	for i := len(open) - 1; i >= 0 && n > 0; i-- {
		if open[i].signs == n {
			if p.at > 0 && p.t[p.at-1].low == "to" {
				p.at-- // "from * to the end"
			}
			return open[i].at, true
		}
	}
	p.at = start
	return 0, false
}

// starred makes a group of what stands in the list from a place on, and reads how often it
// is worked. After "repeat from" a number counts what comes after the first.
func (p *parser) starred(from int, again bool) {
	p.groups++
	group := Item{Does: Together, Items: p.kept.keep(p.list[from:]), At: p.reached()}
	if len(group.Items) > 0 {
		group.At = group.Items[0].At
	}
	p.all("across")
	if at := p.at; p.any("on", "for", "across") && !(p.any("the") && p.next(0).low == "end") { // "on second needle"
		p.all("the", "other", "each")
		if _, ok := p.nth(); !ok || !p.any("needle") {
			p.at = at
		} else {
			group.Times, group.To = Is(2), p.reached()
			p.list = append(p.list[:from], group)
			return
		}
	} else {
		p.at = at
	}
	if !again {
		p.any("rep", "repeat")
	}
	switch n, more, ok := p.times(); {
	case ok:
		group.Times = n
		if again {
			group.Either = !more
			group.Times = n.each(func(n int) int { return n + 1 })
		}
	default:
		if group.Reach, group.Before, ok = p.reach(); !ok {
			group.Reach = ToEnd
		}
	}
	group.To = p.reached()
	p.list = append(p.list[:from], group)
}

// item reads one thing to do, and adds it to the list.
func (p *parser) item() {
	start, at := p.at, p.here()
	finish := func(i Item) {
		i.At, i.To = at, p.reached()
		p.list = append(p.list, i)
	}
	if shut, ok := closing[p.peek().low]; ok && p.deep < mostDeep {
		p.at++
		p.deep++
		i, ok := p.group(shut)
		p.deep--
		if ok {
			finish(i)
			return
		}
		p.at = start
		p.skipBrackets(shut)
		return
	}
	if p.any("|") {
		finish(Item{Does: Pass})
		return
	}
	if i, ok := p.action(); ok {
		finish(i)
		return
	}
	if i, ok := p.stitch(); ok {
		finish(i)
		return
	}
	p.at = start
	i := Item{Does: Unread}
	if p.peek().kind == word {
		i.Word = p.peek().low
	}
	p.skipItem()
	finish(i)
}

// group reads what stands in brackets, and how often.
func (p *parser) group(shut string) (Item, bool) {
	g := Item{Does: Together, Items: p.items(shut)}
	if !p.any(shut) || len(g.Items) == 0 {
		return g, false
	}
	for _, i := range g.Items {
		if i.Does == Unread && len(g.Items) == 1 {
			return g, false
		}
	}
	p.any("all")
	p.any("rep", "repeat", "work")
	if n, _, ok := p.times(); ok {
		g.Times = n
		p.reachAside()
		return g, true
	}
	if p.took("in", "next", "st") || p.took("in", "the", "next", "st") || p.took("in", "the", "next", "stitch") || p.took("in", "next", "stitch") || p.took("into", "next", "st") || p.took("all", "in", "next", "st") {
		return p.inOne(g), true
	}
	g.Reach, g.Before, _ = p.reach()
	return g, true
}

// reachAside steps over "to end" behind a number of times: the number tells already.
func (p *parser) reachAside() {
	from := p.at
	if _, _, ok := p.reach(); !ok {
		p.at = from
	}
}

// inOne turns what is worked into one stitch to an item that takes one.
func (p *parser) inOne(g Item) Item {
	out := 0
	for _, i := range g.Items {
		out += i.Out * max(1, i.Times.For(0))
	}
	return Item{Does: Stitch, Name: "increase", In: 1, Out: out}
}

// skipBrackets steps over brackets with whatever stands in them.
func (p *parser) skipBrackets(shut string) {
	for !p.done() && p.peek().low != shut {
		p.at++
	}
	p.any(shut)
}

// skipItem steps over what was not understood.
func (p *parser) skipItem() {
	for p.at++; !p.done(); p.at++ {
		switch p.peek().low {
		case ",", ";", ")", "]", "}", "*", "|":
			return
		}
	}
}
