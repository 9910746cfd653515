package written

// reach reads where something that is worked over and over ends: "to end", "around", "to
// last 3 sts", "to 1 st before marker".
func (p *parser) reach() (r Reach, before Number, ok bool) {
	from := p.at
	if r, before, ok = p.whither(); !ok {
		p.at = from
	}
	return r, before, ok
}

func (p *parser) whither() (r Reach, before Number, ok bool) {
	if p.any("around", "across", "throughout") {
		p.over()
		return ToEnd, before, true
	}
	if p.took("all", "the", "way", "round") || p.took("all", "the", "way", "around") || p.took("all", "the", "way", "across") {
		return ToEnd, before, true
	}
	if p.peek().low == "all" && p.next(1).low == "the" && p.next(2).low == "way" {
		p.at += 3
	}
	if p.took("all", "around") || p.took("all", "round") || p.took("the", "whole", "round") {
		return ToEnd, before, true
	}
	if p.any("every") {
		p.over()
		return ToEnd, before, true
	}
	if !p.any("to", "until", "till", "up", "til") {
		return 0, before, false
	}
	p.all("to", "within", "you", "reach", "the", "there", "is", "are", "only")
	if p.any("end", "ends") {
		return p.endOf(), before, true
	}
	if p.any("last") {
		if before, ok = p.number(true); !ok {
			before = Is(1)
		}
		p.all("knit", "purl")
		p.stitches()
		return p.endOf(), before, true
	}
	if n, ok := p.number(true); ok {
		before = n
		p.stitches()
		if p.any("remain", "remains", "left", "rem") {
			p.over()
			return ToEnd, before, true
		}
		if !p.any("before", "from", "of", "short") {
			return 0, before, false
		}
		p.all("of", "the", "next", "end")
	}
	p.all("the", "next", "first", "last", "second", "third", "gusset", "thumb", "end", "beg", "side", "other")
	if p.any("marker", "m", "mkr", "pm", "markers", "mk", "m2", "m3", "sm") {
		p.any(".")
		p.which()
		return ToMarker, before, true
	}
	if p.any("ds") || p.took("double", "stitch") { // it is the last before the gap
		if !before.Written() {
			before = Is(0)
		}
		return ToTheGap, before.each(func(n int) int { return n + 1 }), true
	}
	if p.took("wrapped", "stitch") || p.took("wrapped", "st") || p.took("previously", "wrapped", "st") {
		return ToTheGap, before, true
	}
	last := p.t[max(0, p.at-1)].low
	if before.Written() && (last == "end" || last == "the") {
		p.over()
		return ToEnd, before, true
	}
	if p.any("m1") { // the first marker, where no stitch can be meant
		return ToMarker, before, true
	}
	if p.took("turn") || p.took("gap") || p.took("turning", "point") {
		return ToTheGap, before, true
	}
	return 0, before, false
}

// which steps over the name of a marker: "marker A", "marker 2".
func (p *parser) which() {
	t := p.peek()
	if t.kind == whole && t.n < 9 || t.kind == word && len(t.low) == 1 && t.low != t.text && t.low != "k" && t.low != "p" {
		if next := p.next(1); next.kind == mark {
			p.at++
		}
	}
}

// nowBegins reports whether it is told that the round begins anew at this place.
func (p *parser) nowBegins() bool {
	from := p.at
	p.all("the", "this", "new", "is", "beginning", "beg", "start", "of")
	if p.anyRound() {
		p.any("is")
		now := p.any("now")
		if p.any("begins", "starts", "here") || now {
			return true
		}
	}
	p.at = from
	return false
}

// endOf steps over "of the round" or "on the needle", and returns which end is meant.
func (p *parser) endOf() Reach {
	from := p.at
	if p.any("of", "on") {
		p.all("the", "this", "each", "first", "second", "third", "fourth", "same")
		if p.any("needle", "dpn", "ndl") {
			if p.peek().kind == whole {
				p.at++
			}
			return ToNeedle
		}
		p.at = from
	}
	p.over()
	return ToEnd
}

// over steps over "of the round" and the like.
func (p *parser) over() {
	from := p.at
	if p.any("of", "on", "in", "the") {
		p.all("the", "this", "next", "of")
		if _, ok := p.rounds(); ok {
			return
		}
		if p.any("needle", "back", "palm", "hand") || p.stitches() {
			return
		}
		p.at = from
		return
	}
	if _, ok := p.rounds(); !ok && !p.stitches() {
		p.at = from
	}
}
