package mitt

import (
	"strconv"

	"thenar/internal/fault"
)

// Pin returns the pin of a number, or nil if n is a list or can't be fixed.
func (p *Pins) Pin(n Number) *Pin {
	if at := table[n].pin; at != nil {
		return at(p)
	}
	return nil
}

// list returns the values that fix a list, or nil if n is not a list.
func (p *Pins) list(n Number) *[]int {
	if at := table[n].pinned; at != nil {
		return at(p)
	}
	return nil
}

// Set fixes a number: a list takes all values, a single number the first. It
// does nothing if there are no values or if n can't be fixed.
func (p *Pins) Set(n Number, values ...int) {
	if len(values) == 0 {
		return
	}
	if pin := p.Pin(n); pin != nil {
		*pin = Fix(values[0])
	} else if list := p.list(n); list != nil {
		*list = values
	}
}

// clear frees a number.
func (p *Pins) clear(n Number) {
	if pin := p.Pin(n); pin != nil {
		*pin = Pin{}
	} else if list := p.list(n); list != nil {
		*list = nil
	}
}

// Fixed reports whether a number is fixed.
func (p *Pins) Fixed(n Number) bool {
	if pin := p.Pin(n); pin != nil {
		return pin.On
	}
	list := p.list(n)
	return list != nil && len(*list) > 0
}

// text returns a fixed number as a person writes it.
func (p *Pins) text(n Number) string {
	if list := p.list(n); list != nil {
		return commas(*list)
	}
	return p.Pin(n).text()
}

// fixed lists what is fixed: single numbers, then lists, each in the table's
// order.
func (p *Pins) fixed() []Number {
	var list []Number
	for _, n := range fixableByOrder {
		if p.Fixed(n) {
			list = append(list, n)
		}
	}
	return list
}

func (p Pin) text() string { return strconv.Itoa(p.N) }

// ShortestInterval is the least number of rounds from one increase round to the
// next in a rhythm.
const ShortestInterval = gussetGap

// check refuses pins that are out of range, whatever else is pinned.
func (p *Pins) check(faults *fault.Fields) {
	for _, n := range fixable {
		pin, r := p.Pin(n), &table[n]
		if pin != nil && pin.On && (pin.N < r.low || pin.N > r.high) {
			faults.Add(n.Path(), "is %d; write a whole number from %d to %d", pin.N, r.low, r.high)
		}
	}
	for i, r := range p.IncreaseRounds {
		if r < 1 || r > maxRounds || i > 0 && r <= p.IncreaseRounds[i-1] {
			faults.Add(IncreaseRounds.Path(), "has round %d out of order; write the increase rounds from the first to the last: 1, 4, 7", r)
			break
		}
	}
	for _, n := range p.Rhythm {
		if n < ShortestInterval || n > maxRounds {
			faults.Add(Rhythm.Path(), "has an interval of %d; every 2nd round (2) is the closest", n)
			return
		}
	}
}
