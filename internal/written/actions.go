package written

import (
	"strconv"
	"strings"
)

func itoa(n int) string { return strconv.Itoa(n) }

// clause returns where the clause ends that stands next: at a comma or a closing bracket
// outside of brackets, or at the end.
func (p *parser) clause() int {
	depth, last := 0, min(len(p.t), p.at+mostClause)
	for at := p.at; at < last; at++ {
		switch p.t[at].low {
		case "(", "[", "{":
			depth++
		case ")", "]", "}":
			if depth--; depth < 0 {
				return at
			}
		case ",", ";", ".", "|", "*":
			if depth == 0 {
				return at
			}
		}
	}
	return last
}

// act reads one kind of thing that is done.
type act func(*parser) (Item, bool)

// acts are the words that something which is done begins with.
type acts struct {
	words string
	read  act
}

// actions are what is done besides plain stitches, by the word that it begins with; where
// several begin alike the first that can be read is meant.
var actions = byWord([]acts{
	{"slip sl place put transfer move leave thread", (*parser).aside},
	{"work knit follow foll begin beg start rep repeat k", (*parser).charted},
	{"inc increase increasing", (*parser).increaseIn},
	{"knit k work with using in", (*parser).wasteKnit},
	{"row round", (*parser).motif},
	{"cast co using", (*parser).castOn},
	{"pick pu puk knit k", (*parser).pickUp},
	{"pm pmr sm slm rm place put slip sl remove", (*parser).marker},
	{"bind cast bo", (*parser).bindOff},
	{"k2tog ssk slip-slip-knit knit m1 make", (*parser).gap},
	{"knit k work", (*parser).takeIn},
	{"turn wrap w w&t wt", (*parser).turn},
})

func byWord(list []acts) map[string][]act {
	by := map[string][]act{}
	for _, one := range list {
		for _, word := range strings.Fields(one.words) {
			by[word] = append(by[word], one.read)
		}
	}
	return by
}

// action reads what is done besides plain stitches.
func (p *parser) action() (Item, bool) {
	from := p.at
	low := p.peek().low
	if isStitch(low) && low[0] == 'k' {
		low = "k" // "k8 with waste yarn"
	}
	for _, read := range actions[low] {
		if i, ok := read(p); ok {
			return i, true
		}
		p.at = from
	}
	return Item{}, false
}

// turn reads that the work is turned.
func (p *parser) turn() (Item, bool) {
	return Item{Does: Turn}, p.turns()
}

// castOn reads loops that are cast on within a round.
func (p *parser) castOn() (Item, bool) {
	if !p.took("cast", "on") && !p.took("co") && !p.took("using", "backward-loop", "cast-on", ",", "cast", "on") {
		return Item{}, false
	}
	p.all("a", "bridge", "of", "the", "another")
	n, ok := p.number(true)
	p.all("more", "new", "backward", "bridge")
	p.stitches()
	p.at = p.clause()
	p.shares()
	return Item{Does: CastOn, Out: 1, Times: n}, ok
}

// shares steps over the yarns of loops that were told in all: ", 1 blue" of "4 loops: 3 rust,
// 1 blue".
func (p *parser) shares() {
	for {
		from := p.at
		if !p.any(",") {
			return
		}
		if _, ok := p.number(false); !ok || !p.yarn() {
			p.at = from
			return
		}
	}
}

// pickUp reads stitches that are picked up.
func (p *parser) pickUp() (Item, bool) {
	switch {
	case p.took("pick", "up", "and"), p.took("pick", "up", "&"), p.took("pick", "up"), p.took("pu", "&"), p.took("pu", "and"), p.any("puk", "pu"), p.took("knit", "up"), p.took("k", "up"):
	default:
		return Item{}, false
	}
	var n Number
	ok := false
	if t := p.peek(); isStitch(t.low) && t.low[0] == 'k' {
		p.at++
		n, ok = p.grouped(digits(t.low[1:])), true // "pick up and k2"
	} else {
		p.any("knit", "k", "purl")
		p.all("the", "another", "a", "an", "additional", "extra")
		n, ok = p.number(true)
		p.all("more", "extra", "additional")
	}
	p.stitches()
	return Item{Does: PickUp, Out: 1, Times: p.corners(n)}, ok
}

// corners steps over where stitches are picked up; at each corner are twice as many.
func (p *parser) corners(n Number) Number {
	end := p.clause()
	for at := p.at; at+1 < end; at++ {
		if low, what := p.t[at].low, p.t[at+1].low; (low == "each" || low == "either" || low == "both") &&
			(what == "corner" || what == "corners" || what == "end" || what == "side" || what == "sides" || what == "ends" || what == "gap") {
			n = n.each(func(n int) int { return max(n, 2*n) })
		}
	}
	p.at = end
	return n
}

// marker reads a marker that is placed, passed or taken off.
func (p *parser) marker() (Item, bool) {
	switch {
	case p.any("pm", "pmr"):
		return p.behind(Item{Does: Place}), true
	case p.any("sm", "slm"):
		p.which()
		return p.behind(Item{Does: Pass}), true
	case p.any("rm"):
		return p.behind(Item{Does: Remove}), true
	}
	does := Place
	switch {
	case p.any("place", "put"):
	case p.any("slip", "sl"):
		does = Pass
	case p.any("remove"):
		does = Remove
	default:
		return Item{}, false
	}
	p.all("a", "the", "first", "second", "another", "next", "gusset", "thumb", "both", "new", "one", "2", "two")
	if last := len(p.list) - 1; does != Place && last >= 0 && p.list[last].Reach == ToMarker && p.any("it") {
		return Item{Does: does}, true // "k to marker, remove it"
	}
	if !p.any("marker", "m", "mkr", "markers") {
		return Item{}, false
	}
	p.which()
	return p.behind(Item{Does: does}), true
}

// behind steps over what is said of a marker.
func (p *parser) behind(i Item) Item {
	if p.any("for", "before", "at", "(") {
		p.at = p.clause()
		if p.peek().low == ")" {
			p.at++
		}
	}
	return i
}

// bindOff reads stitches that are bound off within a row.
func (p *parser) bindOff() (Item, bool) {
	if !p.took("bind", "off") && !p.took("cast", "off") && !p.any("bo") {
		return Item{}, false
	}
	p.all("the", "next", "first", "all", "loosely", "rem", "remaining")
	n, ok := p.number(true)
	p.stitches()
	p.all("loosely", "in", "pattern", "patt", "rib", "knitwise", "purlwise", "for", "thumb", "opening", "the")
	if p.any("at") { // "at the beginning of the row"
		p.at = p.clause()
	}
	return Item{Does: BindOff, In: 1, Times: n}, ok
}

// gap reads what is worked with the strand at a corner: one stitch with it, or it alone.
func (p *parser) gap() (Item, bool) {
	i := Item{Does: Stitch, In: 1, Out: 1}
	switch {
	case p.any("k2tog"):
		i.Name = "k2tog"
	case p.any("ssk", "slip-slip-knit"):
		i.Name = "ssk"
	case p.took("knit", "two", "together"):
		i.Name = "k2tog"
	case p.any("m1"), p.took("make", "one"):
		i.Name, i.In = "M1", 0
	default:
		return i, false
	}
	if !p.took("with", "the", "strand", "at", "corner") {
		return i, false
	}
	p.number(false)
	p.dyed()
	return i, true
}
