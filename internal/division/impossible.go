package division

import (
	"fmt"
	"strings"
)

// Impossible is the error of a problem that has no division. It has a fault for each
// number that can be changed so that there is one: each of them alone, or, if
// Together is set, all of them at once.
type Impossible struct {
	Faults   []Fault
	Together bool
}

// Fault is a number that is in the way.
type Fault struct {
	Number Number
	Value  int
	Works  int      // the nearest that works
	With   []Number // the fixed numbers with which Value can't stand; none: it can't be at all
}

// Error names each number in the way and the nearest that works.
func (e *Impossible) Error() string {
	lines := make([]string, len(e.Faults))
	for i, f := range e.Faults {
		with := ""
		if len(f.With) > 0 {
			keys := make([]string, len(f.With))
			for j, n := range f.With {
				keys[j] = n.Key()
			}
			with = " beside " + strings.Join(keys, ", ")
		}
		lines[i] = fmt.Sprintf("%s: %d can't be%s; %d works", f.Number.Key(), f.Value, with, f.Works)
		if e.Together && len(e.Faults) > 1 {
			lines[i] += " with the other changes"
		}
	}
	return strings.Join(lines, "\n")
}

// impossible says why a problem has no division.
func (p *Problem) impossible() *Impossible {
	if e := p.outOfRange(); e != nil {
		return e
	}
	if near, outside := p.intoRange(); len(outside) > 0 {
		if near.can() {
			return &Impossible{Faults: outside, Together: true}
		}
		e := near.impossible()
		for i := range e.Faults {
			e.Faults[i].Value = *p.Pins.pin(e.Faults[i].Number)
		}
		return e
	}
	fixed := p.Pins.fixed()
	var e Impossible
	for _, n := range fixed {
		if q := p.With(n, 0); q.can() {
			e.Faults = append(e.Faults, p.fault(n))
		}
	}
	if len(e.Faults) > 0 {
		return &e
	}
	e.Together = true
	q := *p
	q.Pins = Pins{}
	var moved []Number
	for _, n := range fixed { // keep what can be kept
		if r := q.With(n, *p.Pins.pin(n)); r.can() {
			q = r
		} else {
			moved = append(moved, n)
		}
	}
	for _, n := range moved {
		r := q.With(n, *p.Pins.pin(n))
		f := r.fault(n)
		e.Faults = append(e.Faults, f)
		q = q.With(n, f.Works)
	}
	return &e
}

// can reports whether there is a division.
func (p *Problem) can() bool {
	_, ok := p.solve()
	return ok
}

// fault describes a fixed number without which there would be a division.
func (p *Problem) fault(n Number) Fault {
	f := Fault{Number: n, Value: *p.Pins.pin(n)}
	for off := 1; f.Works == 0 && off <= MaxStitches; off++ {
		for _, v := range [2]int{f.Value + off, f.Value - off} {
			if q := p.With(n, v); f.Works == 0 && v > 0 && q.can() {
				f.Works = v
			}
		}
	}
	// What can be freed without a division being possible has no part in it.
	q := *p
	for _, other := range p.Pins.fixed() {
		if other == n {
			continue
		}
		if r := q.With(other, 0); !r.can() {
			q = r
		} else {
			f.With = append(f.With, other)
		}
	}
	return f
}

// outOfRange is the error of a hand or a wish that can't be reckoned with, nil if there
// is none.
func (p *Problem) outOfRange() *Impossible {
	if n := inside(p.Stitches, LeastHand, MaxStitches); n != p.Stitches {
		return &Impossible{Faults: []Fault{{Number: Number{Of: OfHand}, Value: p.Stitches, Works: n}}}
	}
	for i, t := range p.Wanted {
		whole := int(t / PerStitch)
		if rest := t % PerStitch; rest > 0 {
			whole++
		} else if rest < 0 {
			whole--
		}
		if n := inside(whole, -MaxStitches, MaxStitches); n != whole {
			return &Impossible{Faults: []Fault{{Number: Number{OfWish, i}, Value: whole, Works: n}}}
		}
	}
	return nil
}

// intoRange returns the problem with each pin moved into the range of numbers that
// can be reckoned with, and a fault for each that was moved.
func (p *Problem) intoRange() (near Problem, outside []Fault) {
	near = *p
	for _, n := range p.Pins.fixed() {
		was := *p.Pins.pin(n)
		if v := inside(was, 1, MaxStitches); v != was {
			near = near.With(n, v)
			outside = append(outside, Fault{Number: n, Value: was, Works: v})
		}
	}
	return near, outside
}

func inside(n, low, high int) int { return min(max(n, low), high) }
