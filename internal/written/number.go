package written

import (
	"slices"
	"strings"
)

// Number is a number of a text, for each size that it is for.
type Number struct {
	written bool
	first   int   // of the first size, or of all if there are no others
	others  []int // of the sizes after it
}

// None is –, which says that a size does not have a number.
const None = -1

// Is returns a number that is the same in all sizes.
func Is(n int) Number { return Number{written: true, first: n} }

// ofEach returns a number with a value for each size, or one for all.
func ofEach(list []int) Number { return Number{true, list[0], list[1:]} }

// For returns the value for the size that stands at a place among those of its statement.
func (n Number) For(at int) int {
	switch {
	case !n.written:
		return None
	case len(n.others) == 0 || at == 0:
		return n.first
	case at <= len(n.others):
		return n.others[at-1]
	}
	return None
}

// Written reports whether there is a number.
func (n Number) Written() bool { return n.written }

// same reports whether it is one for all sizes.
func (n Number) same() bool { return n.written && len(n.others) == 0 }

// each returns the number with every value changed.
func (n Number) each(change func(int) int) Number {
	n.first, n.others = change(n.first), slices.Clone(n.others)
	for i, other := range n.others {
		n.others[i] = change(other)
	}
	return n
}

// in holds numbers that are words.
var inLetters = map[string]int{
	"one": 1, "two": 2, "three": 3, "four": 4, "five": 5, "six": 6, "seven": 7, "eight": 8, "nine": 9,
	"ten": 10, "eleven": 11, "twelve": 12, "thirteen": 13, "fourteen": 14, "fifteen": 15, "sixteen": 16,
	"seventeen": 17, "eighteen": 18, "nineteen": 19, "twenty": 20, "thirty": 30, "forty": 40, "fifty": 50, "sixty": 60,
	"seventy": 70, "eighty": 80, "ninety": 90,
}

// lettered returns the number that a word is, "twenty-four" as well, or 0.
func lettered(low string) int {
	if n := inLetters[low]; n > 0 {
		return n
	}
	tens, ones, ok := strings.Cut(low, "-")
	if !ok || inLetters[tens] < 20 || inLetters[ones] < 1 || inLetters[ones] > 9 {
		return 0
	}
	return inLetters[tens] + inLetters[ones]
}

// orders holds ordinals that are words.
var orders = map[string]int{
	"first": 1, "second": 2, "third": 3, "fourth": 4, "fifth": 5, "sixth": 6, "seventh": 7, "eighth": 8,
	"ninth": 9, "tenth": 10,
}

// opens and closes are the brackets that belong together.
var closing = map[string]string{"(": ")", "[": "]", "{": "}"}

// number takes a number with its values for the other sizes, "44 (48, 52)", if one stands
// next; in letters, too, if asked for.
func (p *parser) number(letters bool) (Number, bool) {
	first, ok := p.value(letters)
	if !ok {
		return Number{}, false
	}
	p.at++
	return p.grouped(first), true
}

// grouped returns a number with its values for the other sizes, if they stand next: as many as
// the statement is for, or one for each size of the text, of which those are taken.
func (p *parser) grouped(first int) Number {
	n := Is(first)
	most := max(p.sizes, p.every) - 1
	if most < 1 {
		return n
	}
	from := p.at
	list := p.others(most)
	if len(list) == 0 {
		list = p.strung(most)
	}
	switch {
	case len(list) == p.sizes-1:
		n.others = list
	case p.of != nil && len(list) == p.every-1:
		all := append([]int{first}, list...)
		mine := make([]int, len(p.of))
		for i, size := range p.of {
			mine[i] = all[size]
		}
		n = ofEach(mine)
	default:
		p.at = from
	}
	return n
}

// nth reads which one: "4th", "third", or a number for each size.
func (p *parser) nth() (Number, bool) {
	if n, ok := orders[p.peek().low]; ok {
		p.at++
		return Is(n), true
	}
	return p.number(true)
}

// value returns the number that stands next.
func (p *parser) value(letters bool) (int, bool) {
	t := p.peek()
	switch {
	case t.kind == whole || t.kind == ordinal:
		return t.n, true
	case letters && t.kind == word:
		n := lettered(t.low)
		return n, n > 0
	case t.low == "-" && max(p.sizes, p.every) > 1 && closing[p.next(1).low] != "":
		return None, true
	}
	return 0, false
}

// others takes the values of the other sizes in brackets, "44 (48, 52)", "44, (48, 52)", at most
// so many.
func (p *parser) others(most int) (list []int) {
	if p.peek().low == "," && closing[p.next(1).low] != "" {
		from := p.at
		p.at++
		if list = p.others(most); len(list) != most {
			p.at, list = from, nil
		}
		return list
	}
	for p.at < len(p.t) && len(list) < most {
		shut, ok := closing[p.peek().low]
		if !ok {
			return list
		}
		if list == nil {
			list = make([]int, 0, p.sizes-1)
		}
		at, before := p.at+1, len(list)
		for ; at < len(p.t) && p.t[at].low != shut; at++ {
			switch t := p.t[at]; {
			case t.kind == whole || t.kind == ordinal:
				list = append(list, t.n)
			case t.kind == word && inLetters[t.low] > 0:
				list = append(list, inLetters[t.low])
			case t.low == "-" && (p.t[at-1].kind == mark):
				list = append(list, None)
			case t.low == "," || t.low == ":" || t.low == ";" || t.low == "/" || t.low == "-":
			default:
				return list[:before]
			}
		}
		if at == len(p.t) || len(list) == before || len(list) > most {
			return list[:before]
		}
		p.at = at + 1
	}
	return list
}

// strung takes the values of the other sizes after dashes or strokes, "44-48-52", "44/48/52",
// if there are just so many. Two with a dash are a span.
func (p *parser) strung(most int) (list []int) {
	sep := p.peek().low
	if sep != "/" && (sep != "-" && sep != "|" || most < 2) {
		return nil
	}
	at := p.at
	for at+1 < len(p.t) && p.t[at].low == sep && p.t[at+1].kind == whole {
		list = append(list, p.t[at+1].n)
		at += 2
	}
	if len(list) != most {
		return nil
	}
	p.at = at
	return list
}
