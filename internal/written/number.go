package written

import "slices"

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
	"eighteen": 18, "twenty": 20,
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

// grouped returns a number with its values for the other sizes, if they stand next.
func (p *parser) grouped(first int) Number {
	n := Is(first)
	if p.sizes > 1 {
		from := p.at
		if n.others = p.others(); len(n.others) != p.sizes-1 {
			p.at, n.others = from, nil
		}
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
		n, ok := inLetters[t.low]
		return n, ok
	case t.low == "-" && p.sizes > 1 && p.next(1).low == "(":
		return None, true
	}
	return 0, false
}

// others takes the values of the other sizes in brackets, as far as they are no more than
// there are sizes.
func (p *parser) others() (list []int) {
	for p.at < len(p.t) && len(list) < p.sizes-1 {
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
		if at == len(p.t) || len(list) == before || len(list) > p.sizes-1 {
			return list[:before]
		}
		p.at = at + 1
	}
	return list
}
