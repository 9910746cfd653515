package written

import "slices"

// plainly is a round in which all stitches are worked as they come.
func plainly() []Item {
	return []Item{{Does: Stitch, Name: "k", In: 1, Out: 1, Reach: ToEnd, Even: true}}
}

// fabrics are words by the fabric that they name.
var fabrics = map[string]Fabric{
	"stockinette": Smooth, "stocking": Smooth, "stocking-stitch": Smooth, "st-st": Smooth, "stst": Smooth, "st.st": Smooth,
	"garter": Garter, "garter-stitch": Garter, "rib": Ribbed, "ribbing": Ribbed, "knit": Plainly, "k": Plainly, "plain": Plainly, "purl": Purled,
	"moss": Untold, "seed": Untold, "lace": Untold, "cable": Untold, "cables": Untold, "chart": Untold, "charts": Untold,
	"pattern": Patterned, "patt": Patterned, "established": Patterned, "set": Patterned, "before": Patterned,
}

// fabricOf returns the fabric that words name. A fabric by its name says more than "knit" does.
func fabricOf(t []token) (as Fabric) {
	for at, one := range t {
		of := fabrics[one.low]
		if one.low == "st" && at+1 < len(t) && t[at+1].low == "st" {
			of = Smooth
		}
		switch {
		case of == AsItLies:
		case as == AsItLies, as == Plainly, as == Purled, as == Patterned && of != Plainly && of != Purled, of == Untold:
			as = of
		}
	}
	return as
}

// manners are words for how fabric is worked that keeps its count.
var manners = map[string]bool{
	"rib": true, "ribbing": true, "stitch": true, "st": true, "st-st": true, "stst": true, "pattern": true, "patt": true, "patterns": true, "stockinette": true,
	"stocking": true, "stocking-stitch": true, "garter": true, "moss": true, "seed": true, "lace": true, "cable": true, "cables": true, "even": true, "straight": true,
	"established": true, "set": true, "plain": true, "shaping": true, "chart": true, "charts": true, "before": true, "knitting": true, "colourwork": true, "colorwork": true,
	"motif": true, "stripes": true, "i-cord": true, "garter-stitch": true, "st.st": true,
}

// inManner reads how rounds are worked that keep the count: "in rib as set", "K. 1, P. 1 rib as
// before", "in twisted 2x2 rib", "rib: k2, p2".
func (p *parser) inManner() []Item {
	if p.any("rib") && p.any(":") {
		return grouped(p.items(""), p.reached())
	}
	first, manner, stitched := -1, -1, false
	for at := p.at; at < len(p.t); at++ {
		low := p.t[at].low
		s, isSign := signs[low]
		switch {
		case isStitch(low), low == "*", isSign && low != "purl" && low != "knit" && low != "sl" && low != "slip" && s.in > 0 && s.out > 0:
			if manner < 0 {
				stitched = true
				if first < 0 {
					first = at
				}
			}
		case isSign && s.in != s.out, kindsOf[low] == "increase", kindsOf[low] == "decrease", slices.Contains(keepers, low):
			return nil
		case low == "cast", low == "bind", low == "bo", low == "co", low == "pick", low == "rep", low == "repeat", low == "pm", low == "sm", low == "marker", low == "markers", low == "slip", low == "place":
			return nil
		case low == "st" && at+1 < len(p.t) && stitchWords[p.t[at+1].low], manners[low] && manner < 0:
			manner = at
		}
	}
	switch {
	case manner < 0:
		return nil
	case !stitched:
		if low := p.t[p.at].low; low == "knit" || low == "purl" {
			for _, t := range p.t[p.at+1 : manner] {
				if t.kind == whole {
					return nil
				}
			}
		}
		list := plainly()
		list[0].As = fabricOf(p.t[p.at:])
		list[0].Charted = p.until("chart", "charts") < len(p.t)
		p.at = len(p.t)
		return list
	case first == p.at || p.t[first-1].low == "in" || p.t[first-1].low == "of" || p.t[first-1].low == ":":
		q := *p
		q.at, q.t = first, p.t[:manner]
		list := grouped(q.items(""), q.reached())
		if p.at = len(p.t); len(list) == 1 {
			list[0].Even = true
		}
		return list
	}
	return nil
}

// grouped makes a round of what is worked over and over in it; nothing if it isn't that.
func grouped(list []Item, to Spot) []Item {
	for _, i := range list {
		if i.Does == Unread || i.Does == Hold || i.Does == CastOn {
			return nil
		}
	}
	if len(list) == 0 {
		return nil
	}
	if len(list) == 1 && list[0].endless() {
		return list
	}
	return []Item{{Does: Together, Items: list, Reach: ToEnd, Even: true, At: list[0].At, To: to}}
}

// onlyOver cuts off over how many stitches rows are worked: "on these 16 sts".
func (p *parser) onlyOver(s *Statement) {
	for at := range p.t {
		p.at = at
		if low := p.t[at].low; low != "over" && low != "on" && low != "across" {
			continue
		}
		if n, ok := p.overStitches(); ok {
			s.Over = n
			p.t = append(append([]token{}, p.t[:at]...), p.t[p.at:]...)
			return
		}
	}
}

// castsOff cuts off that a piece ends after rounds: "6 rounds of rib and cast off loosely".
func (p *parser) castsOff() {
	for at := p.at; at+2 < len(p.t); at++ {
		switch p.t[at].low {
		case ",", ";", "and", "then":
			next := at + 1
			for next+1 < len(p.t) && (p.t[next].low == "and" || p.t[next].low == "then") {
				next++
			}
			if low := p.t[next].low; low == "bo" || next+1 < len(p.t) && (low == "cast" || low == "bind") && p.t[next+1].low == "off" {
				p.rest, p.t = p.t[next:], p.t[:at]
				return
			}
		}
	}
}

// numberAgain reads how many rows a line is for that has its numbers: "Rows 6–8: Work 3 rows in St
// st".
func (p *parser) numberAgain(s *Statement) bool {
	from := p.at
	at, _, _ := p.roundsCounted()
	if p.at = from; at < from || at > from+2 || !s.Label.From.Written() {
		return false
	}
	row := s.Label.Row
	ok := p.many(s)
	s.Label.Row = row
	return ok
}

// edges reads stitches that are bound off or cast on at the edges: "Cast off 3 sts at beg of next 2
// rows".
func (p *parser) edges(s *Statement) bool {
	all := p.t
	defer func() { p.t = all }()
	counts := p.stated()
	i := Item{Does: BindOff, In: 1, At: p.here()}
	switch {
	case p.took("bind", "off"), p.took("cast", "off"), p.any("bo"):
	case p.took("cast", "on"), p.any("co"):
		i.Does, i.In, i.Out = CastOn, 0, 1
	default:
		return false
	}
	n, ok := p.number(true)
	p.stitches()
	p.all("loosely", "in", "pattern", "rib", "using", "the")
	if !ok || !p.any("at") {
		return false
	}
	if p.all("the"); !p.any("beg", "beginning", "start") {
		return false
	}
	p.all("of", "the", "each", "next", "following", "foll")
	s.Many = Is(1)
	if m, ok := p.number(true); ok {
		s.Many = m
	}
	row, ok := p.rounds()
	if !ok || !p.done() {
		s.Many = Number{}
		return false
	}
	i.Times, i.To = n, p.reached()
	s.Kind, s.Counts, s.Label.Row = Rounds, counts, row
	s.Items = append([]Item{i}, plainly()...)
	return true
}

// panel reports whether a line is the title of a pattern that is told for itself: "Lace panel
// (worked over 11 sts)", "Moss stitch (multiple of 2 sts)"; and over how many stitches.
func (r *reader) panel(t []token) (over Number, ok bool) {
	if len(t) < 4 || len(t) > 24 || t[len(t)-1].low == "." || t[0].kind != word || t[0].text == t[0].low {
		return over, false
	}
	p := parser{t: t, sizes: len(r.text.Sizes), every: len(r.text.Sizes)}
	if _, _, ok := p.label(); ok {
		return over, false
	}
	open := -1
	for at, one := range t {
		switch low := one.low; {
		case (low == "(" || low == "[" || low == ",") && open < 0:
			open = at
		case open < 0 && (one.kind != word || isStitch(low) || signs[low].name != "" && low != "slip"):
			return over, false
		case open < 0 && (low == "panel" || low == "pattern" || low == "patt" || low == "chart" || low == "lace" || low == "cable" || low == "motif" || manners[low]):
			ok = true
		case open > 0 && low == "multiple":
			return over, ok
		}
	}
	if !ok || open < 0 {
		return over, false
	}
	for p.at = open; p.at < len(t); p.at++ {
		if t[p.at].low == "over" {
			if over, ok = p.overStitches(); ok {
				return over, true
			}
		}
	}
	return over, false
}
