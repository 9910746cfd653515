package written

// Number is a number of a text, for each size that it is for: one value stands for all.
// None is –, which says that a size does not have it.
type Number struct {
	Of    []int
	At    Spot
	Until Spot // where it ends
}

// None is the value of a size that has no such number.
const None = -1

// Is returns a number that is the same in all sizes.
func Is(n int) Number { return Number{Of: []int{n}} }

// For returns the value for the size that stands at a place among those of its statement.
func (n Number) For(at int) int {
	switch {
	case len(n.Of) == 1:
		return n.Of[0]
	case at < len(n.Of):
		return n.Of[at]
	}
	return None
}

// Written reports whether there is a number.
func (n Number) Written() bool { return len(n.Of) > 0 }

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
	at := p.t[p.at].at
	p.at++
	return p.grouped(first, at), true
}

// grouped returns a number with its values for the other sizes, if they stand next.
func (p *parser) grouped(first int, at Spot) Number {
	from := p.at
	n := Number{Of: []int{first}, At: at}
	if p.sizes > 1 {
		p.others(&n)
	}
	if len(n.Of) != 1 && len(n.Of) != p.sizes {
		p.at, n.Of = from, n.Of[:1]
	}
	n.Until = p.reached()
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

// others takes the values of the other sizes in brackets, if what stands in them is as many
// as there are sizes.
func (p *parser) others(n *Number) {
	for p.at < len(p.t) && len(n.Of) < p.sizes {
		shut, ok := closing[p.peek().low]
		if !ok {
			return
		}
		at := p.at + 1
		var more []int
		for ; at < len(p.t) && p.t[at].low != shut; at++ {
			switch t := p.t[at]; {
			case t.kind == whole || t.kind == ordinal:
				more = append(more, t.n)
			case t.kind == word && inLetters[t.low] > 0:
				more = append(more, inLetters[t.low])
			case t.low == "-" && (p.t[at-1].kind == mark):
				more = append(more, None)
			case t.low == "," || t.low == ":" || t.low == ";" || t.low == "/" || t.low == "-":
			default:
				return
			}
		}
		if at == len(p.t) || len(more) == 0 || len(n.Of)+len(more) > p.sizes {
			return
		}
		n.Of = append(n.Of, more...)
		p.at = at + 1
	}
}
