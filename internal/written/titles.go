package written

import "slices"

// asides begin with such a word and a colon, and work no stitches.
var asides = map[string]bool{
	"note": true, "notes": true, "nb": true, "tip": true, "tips": true, "hint": true, "gauge": true, "tension": true, "yarn": true, "yarns": true,
	"needle": true, "needles": true, "materials": true, "material": true, "notions": true, "abbreviations": true, "abbreviation": true, "abbs": true,
	"abbrevs": true, "abbrev": true, "size": true, "sizes": true, "finished": true, "measurement": true, "measurements": true, "key": true, "remember": true,
	"you": true, "what": true, "hook": true, "difficulty": true, "level": true, "skills": true, "techniques": true, "special": true, "pattern": true,
	"stitches": true,
}

// titled steps over what stands before the instructions of a line: "Increase to 40 sts: next
// round:", "Gusset set-up: K22", "FIRST FINGER.—K. 7". It reports whether the line is an aside.
func (p *parser) titled() (aside bool) {
	if _, _, ok := p.label(); ok {
		p.at = 0
		return false
	}
	numbers := false
	for at := range p.t {
		t := p.t[at]
		dotted := t.low == "." && at+1 < len(p.t) && p.t[at+1].low == "—"
		switch {
		case t.low == ":" || dotted:
			next := at + 1
			for next < len(p.t) && (p.t[next].low == "—" || p.t[next].low == ":") {
				next++
			}
			if at == 0 || next == len(p.t) || p.t[0].low == "graft" {
				return false
			}
			if at < 5 && asides[p.t[0].low] && !numbers {
				return true
			}
			q := *p
			q.at = next
			if _, _, ok := q.label(); ok && roundWords[p.t[0].low] == 0 || !numbers && at < 7 && !begun(p.t[0].low) {
				p.t = p.t[next:]
			}
			return false
		case isStitch(t.low), t.kind == mark && t.low != "-" && t.low != "(" && t.low != ")" && t.low != "/" && t.low != "'":
			return false
		}
		numbers = numbers || t.kind == whole
	}
	return false
}

// handed steps over "Right mitten:" before what is worked for that hand only, and returns which
// it is: what stands there for either is told in two such lines. A piece of its own is none.
func (p *parser) handed() (hand string) {
	from := p.at
	p.all("for", "the")
	switch low := p.peek().low; low {
	case "right", "right-hand":
		hand = "right"
	case "left", "left-hand":
		hand = "left"
	}
	if p.at++; hand == "" || !p.any("hand", "mitten", "mitt", "glove", "sock", "wristwarmer") && p.peek().low != "only" {
		p.at = from
		return ""
	}
	if p.all("mitten", "mitt", "glove", "only"); !p.any(":") || p.done() || p.until("cast", "co") < len(p.t) {
		p.at = from
		return ""
	}
	p.t, p.at = p.t[p.at:], 0
	return hand
}

// begun reports whether a word begins what is worked, rather than a title.
func begun(low string) bool {
	switch low {
	case "work", "rep", "repeat", "cast", "bind", "bo", "co", "with", "in", "place", "pick", "turn", "remove", "as":
		return true
	}
	return signs[low].name != ""
}

// announces cuts off what only says that something follows: "… as follows:", "… thus:—".
func announces(t []token) []token {
	end := len(t)
	for end > 0 && (t[end-1].low == ":" || t[end-1].low == "—" || t[end-1].low == "-") {
		end--
	}
	switch {
	case end > 1 && t[end-2].low == "as" && (t[end-1].low == "follows" || t[end-1].low == "folls"):
		return t[:end-2]
	case end > 0 && t[end-1].low == "thus":
		return t[:end-1]
	}
	return t
}

// leading are words that begin what is done before stitches are worked.
var leading = map[string]bool{
	"join": true, "rejoin": true, "attach": true, "reattach": true, "arrange": true, "rearrange": true, "divide": true, "distribute": true, "redistribute": true,
	"change": true, "switch": true, "swap": true, "break": true, "cut": true, "carefully": true, "now": true, "finally": true, "then": true, "turn": true,
	"finish": true, "end": true, "complete": true, "proceed": true, "starting": true, "beginning": true, "beg": true,
}

// leads returns where a sentence begins to work stitches that tells something else before: "Join
// yarn, pick up and knit 2 sts", "Change to larger needles and knit 2 rounds"; 0 if none does.
func (p *parser) leads() int {
	if at := p.until("facing"); at < 5 && at+2 < len(p.t) && p.t[0].low == "with" && p.t[at+1].low == "," {
		return at + 2 // "With right side facing, rejoin wool"
	} else if at < 5 && p.t[0].low == "with" || p.t[0].low == "rotate" || p.t[0].low == "do" && p.until("rotate") < len(p.t) {
		return p.picksUp()
	}
	if !leading[p.t[0].low] {
		return 0
	}
	if low := p.t[0].low; (low == "now" || low == "then" || low == "finally") && len(p.t) > 1 {
		return 1
	}
	if low := p.t[0].low; (low == "finish" || low == "end" || low == "complete") && len(p.t) > 3 {
		if p.t[1].low == "with" || p.t[1].low == "by" {
			if _, ok := p.t[2].counts(); ok || p.works(2) {
				return 2
			}
		}
		return 0
	}
	for at := 1; at+1 < len(p.t) && at < 40; at++ {
		switch p.t[at].low {
		case ",", ";", "and", "then":
		default:
			continue
		}
		next := at + 1
		for next < len(p.t)-1 && (p.t[next].low == "and" || p.t[next].low == "then") {
			next++
		}
		if (p.t[0].low == "break" || p.t[0].low == "cut") && p.keeps(next) {
			return next // "Break yarn and leave the 14 sts on a holder"
		}
		switch p.t[next].low {
		case "place", "pm", "with", "in", "as", "even", "turn", "slip", "sl", "remove", "put":
			continue
		}
		q := *p
		q.at = next
		if _, _, ok := q.label(); ok || p.works(next) {
			return next
		}
	}
	return 0
}

// picksUp returns where, behind a comma, stitches are picked up; 0 if none are.
func (p *parser) picksUp() int {
	for at := 1; at+2 < len(p.t) && at < 40; at++ {
		if p.t[at-1].low == "," && p.t[at].low == "pick" && p.t[at+1].low == "up" {
			return at
		}
	}
	return 0
}

// heading reports whether a line is the title of a section.
func heading(t []token) bool {
	if t[0].low == "size" || t[0].low == "sizes" || t[0].kind != word {
		return false
	}
	last := t[len(t)-1].low
	if last == "only" && slices.ContainsFunc(t, func(one token) bool { return one.low == "size" || one.low == "sizes" }) {
		return true
	}
	if last == "." || last == "," || last == ";" || !t[0].capital() && t[0].text == t[0].low {
		return false
	}
	p := parser{t: t, sizes: 1}
	if _, _, ok := p.label(); ok || len(t) > 9 {
		return false
	}
	for i, one := range t {
		_, isSign := signs[one.low]
		switch {
		case isStitch(one.low), one.kind == whole && i > 0 && last != "only", isSign && len(t) > 1 && one.low != "knit", one.low == "rep", one.low == "repeat", one.low == "sts", one.low == "*", one.low == "cast", one.low == "bind", one.low == "place", one.low == "work", one.low == "join", one.low == "remove", one.low == "turn", one.low == "break", one.low == "cut", one.low == "weave":
			return false
		case isSign && len(t) == 1:
			return false
		}
	}
	return !(t[0].low == "knit" && len(t) > 1)
}

// headed returns the sizes that a heading is for: "Upper hand: sizes 7 and 8 only".
func (r *reader) headed(t []token) []int {
	for i, one := range t {
		if one.low != "size" && one.low != "sizes" {
			continue
		}
		p := parser{t: t, at: i, sizes: 1}
		if only, ok := r.sizeList(&p); ok && p.any("only") && p.done() {
			r.only = only
			return only
		}
	}
	return nil
}
