package mitt

import (
	"fmt"
	"strconv"
	"strings"

	"thenar/internal/fault"
	"thenar/internal/hand"
)

// conflict says why the search found nothing. It names every pin in the way with
// the nearest number that works beside the others; where changing one pin is
// not enough, with the nearest numbers that work together. If no pin is in the
// way, it names the rounds.
func (d *draft) conflict(s *search) error {
	c := newConflict(d, s)
	culprits := c.culprits()
	var faults fault.Fields
	if len(culprits) == 0 && d.progress != nil {
		faults.Add("worked.round", "can't be finished with %d rounds of the %s knitted; rip back some rounds", d.progress.Round, d.progress.Part.Words())
		return faults
	}
	if len(culprits) == 0 && !d.req.Gusseted() {
		faults.Add(hand.FieldThumb, "finds no room on this palm; measure thumb and hand again, or choose a gusset")
		return faults
	}
	if len(culprits) == 0 {
		faults.Add("hand.gusset_length", "leaves no room for a gusset; give a longer gusset, or use a finer yarn")
		return faults
	}
	names := make([]string, len(culprits))
	for i, at := range culprits {
		names[i] = c.names[at].Key() + " " + c.pins.text(c.names[at])
	}
	all := strings.Join(names, ", ")
	together := ""
	for _, at := range culprits {
		works, ok := c.nearest(c.all()&^(1<<at), at)
		advice := fmt.Sprintf("with the others kept, %s would work", works)
		if !ok {
			if together == "" {
				together = c.together()
			}
			advice = together
		}
		if len(culprits) == 1 {
			faults.Add(c.names[at].Path(), "%s doesn't go with this hand and swatch; %s", c.pins.text(c.names[at]), strings.TrimPrefix(advice, "with the others kept, "))
		} else {
			faults.Add(c.names[at].Path(), "%s can't stand together with the rest of: %s; %s", c.pins.text(c.names[at]), all, advice)
		}
		faults[len(faults)-1].Works = works
	}
	return faults
}

// conflict tries sets of pins. A set has one bit for each of the names.
type conflict struct {
	d     *draft
	s     *search
	pins  Pins // as the person fixed them
	names []Number
	known map[uint]bool
}

func newConflict(d *draft, s *search) *conflict {
	c := &conflict{d: d, s: s, pins: d.req.Pins, known: map[uint]bool{}}
	for _, n := range c.pins.fixed() {
		if d.inSearch(n) {
			c.names = append(c.names, n)
		}
	}
	return c
}

// inSearch reports whether the search has to keep to n when n is pinned.
func (d *draft) inSearch(n Number) bool {
	switch table[n].company {
	case beside:
		return true
	case besideInTop:
		return d.req.Kind.info().topped
	}
	return false
}

func (c *conflict) all() uint { return 1<<len(c.names) - 1 }

// only returns the pins of a set, with all others free.
func (c *conflict) only(set uint) Pins {
	pins := c.pins
	for i, n := range c.names {
		if set&(1<<i) == 0 {
			pins.clear(n)
		}
	}
	return pins
}

// solvable reports whether a set of the pins can be kept.
func (c *conflict) solvable(set uint) bool {
	ok, known := c.known[set]
	if !known {
		pins := c.only(set)
		ok = c.s.solvable(c.d, &pins)
		c.known[set] = ok
	}
	return ok
}

// maxSets is the number of sets that are tried one by one at most: all those of
// ten pins.
const maxSets = 1 << 10

// culprits returns the pins in the way. A pin is in the way if some set of the
// others can be kept without it and can't with it. With more than ten pins only
// the sets that lack one or two are tried.
func (c *conflict) culprits() []int {
	var in []int
	for i := range c.names {
		if c.inTheWay(i) {
			in = append(in, i)
		}
	}
	return in
}

func (c *conflict) inTheWay(i int) bool {
	bit := uint(1) << i
	if c.all() >= maxSets {
		for j := range c.names {
			if rest := c.all() &^ bit &^ (1 << j); c.solvable(rest) && !c.solvable(rest|bit) {
				return true
			}
		}
		return false
	}
	for set := c.all(); ; set-- {
		if set&bit == 0 && c.solvable(set) && !c.solvable(set|bit) {
			return true
		}
		if set == 0 {
			return false
		}
	}
}

// solvable reports whether any choice keeps the pins, in the rounds and the room
// that they leave. What is knitted stays, whatever is pinned.
func (s *search) solvable(d *draft, pins *Pins) bool {
	trial, held := *s, *pins
	if d.progress != nil {
		d.progress.hold(&held)
	}
	d.equip(&trial, &held)
	return trial.feasible()
}

// nearest returns the value nearest to a pin's own that works beside a set of
// others: for a rhythm the longest even one, for a list that of nearestList.
func (c *conflict) nearest(set uint, at int) (string, bool) {
	pins := c.only(set)
	n := c.names[at]
	if n == Rhythm {
		for every := c.pins.Rhythm[0]; every >= ShortestInterval; every-- {
			if pins.Rhythm = []int{every}; c.s.solvable(c.d, &pins) {
				return fmt.Sprint(every), true
			}
		}
		return "", false
	}
	if n == IncreaseRounds {
		return c.nearestList(pins)
	}
	pin := pins.Pin(n)
	was, r := c.pins.Pin(n).N, &table[n]
	for off := 1; off <= r.high-r.low; off++ {
		for _, to := range [2]int{was + off, was - off} {
			if to < r.low || to > r.high {
				continue
			}
			if *pin = Fix(to); c.s.solvable(c.d, &pins) {
				return fmt.Sprint(to), true
			}
		}
	}
	return "", false
}

// together keeps as many pins as it can, moves the others one after another to
// the nearest number that then works, and says which.
func (c *conflict) together() string {
	kept := uint(0)
	for i := range c.names {
		if c.solvable(kept | 1<<i) {
			kept |= 1 << i
		}
	}
	trial := *c
	trial.known = map[uint]bool{}
	var moved []string
	for i, n := range c.names {
		if kept&(1<<i) != 0 {
			continue
		}
		works, ok := trial.nearest(kept, i)
		if !ok {
			moved = append(moved, n.Key()+" free")
			continue
		}
		trial.pins.set(n, works)
		kept |= 1 << i
		moved = append(moved, n.Key()+" "+works)
	}
	return "what works together is: " + strings.Join(moved, ", ")
}

// set fixes a number from its text.
func (p *Pins) set(n Number, text string) {
	var list []int
	for _, part := range strings.Split(text, ", ") {
		v, _ := strconv.Atoi(part) // text was printed from numbers
		list = append(list, v)
	}
	p.Set(n, list...)
}
