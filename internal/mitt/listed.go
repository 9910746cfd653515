package mitt

import (
	"slices"
	"strconv"
	"strings"

	"thenar/internal/stitch"
)

// increases returns the least number of increase rounds that the pins and the
// knitting ask for, and the greatest that there is room for. With a fixed list
// both are its length; if the list doesn't fit, most is −1.
func (d *draft) increases(pins *Pins) (least, most int) {
	if k := d.progress; k != nil && k.Down && k.GussetBase > 0 {
		if list := pins.IncreaseRounds; last(list) > pins.GussetRounds.Or(d.freeGussetRounds()) {
			pins.IncreaseRounds = nil // what is knitted leaves no room for it
		}
		return len(k.Increases), len(k.Increases)
	}
	rounds, made := pins.GussetRounds.Or(d.freeGussetRounds()), len(d.made())
	list := pins.IncreaseRounds
	switch {
	case len(list) == 0:
		return made, made + d.room(rounds, pins)
	case !d.listFits(list, rounds, pins):
		return made, -1
	}
	return len(list), len(list)
}

// listFits reports whether a list of increase rounds agrees with the fixed first
// increase round and the fixed rhythm, ends within the gusset's rounds, and can be
// worked in the gusset's way.
func (d *draft) listFits(list []int, rounds int, pins *Pins) bool {
	grow := d.req.Make.growth()
	if list[len(list)-1] > rounds-grow.leadOut || !pins.FirstIncrease.Allows(list[0]) {
		return false
	}
	for i := max(1, len(d.made())); i < len(list); i++ {
		if list[i]-list[i-1] < grow.closest {
			return false
		}
	}
	for i := max(1, len(d.made())); len(pins.Rhythm) > 0 && i < len(list); i++ {
		if list[i]-list[i-1] != pins.Rhythm[(i-1)%len(pins.Rhythm)] {
			return false
		}
	}
	return true
}

// room returns the number of increase rounds that fit into what is left of
// rounds 1 … R − 1. They begin in the pinned first one and are at least two
// apart, or in the pinned rhythm.
func (d *draft) room(rounds int, pins *Pins) int {
	last, first := rounds-gussetLeadOut, d.begins(pins)
	switch {
	case d.progress.past(stitch.Gusset) || last < first:
		return 0
	case len(pins.Rhythm) == 0:
		return (last-first)/gussetGap + 1
	}
	n := 0
	for at := d.next(d.made(), pins); at <= last; n++ {
		at += pins.Rhythm[(len(d.made())+n)%len(pins.Rhythm)]
	}
	return n
}

// begins returns the first round that the next increase may be in: the fixed
// first one if no increase is made yet, but never before what is knitted
// allows it.
func (d *draft) begins(pins *Pins) int {
	first := d.onward()
	if len(d.made()) == 0 {
		return max(first, pins.FirstIncrease.Or(first))
	}
	return first
}

// next returns the round of the increase that follows the made ones in the
// pinned rhythm, but never before what is knitted allows it. If none is made it
// is that of begins.
func (d *draft) next(made []int, pins *Pins) int {
	if len(made) == 0 {
		return d.begins(pins)
	}
	return max(made[len(made)-1]+pins.Rhythm[(len(made)-1)%len(pins.Rhythm)], d.onward())
}

// inRhythm lists k increase rounds: the knitted ones, then the rest with the
// fixed intervals in turn.
func (d *draft) inRhythm(k int, pins *Pins) []int {
	rounds := append(make([]int, 0, k), d.made()...)
	for len(rounds) < k {
		if n := len(rounds); n > len(d.made()) {
			rounds = append(rounds, rounds[n-1]+pins.Rhythm[(n-1)%len(pins.Rhythm)])
			continue
		}
		rounds = append(rounds, d.next(rounds, pins))
	}
	return rounds
}

// holdIncreases lets the fixed increases give way to the knitted ones. Of a
// fixed list only the rounds above the present one still count. A fixed first
// increase becomes the knitted one; if its round is knitted without an
// increase, it is dropped.
func (k *Progress) holdIncreases(p *Pins) {
	made, at := k.changed(stitch.Gusset, k.Increases), k.in(stitch.Gusset)
	if k.past(stitch.Gusset) {
		p.FirstIncrease, p.IncreaseRounds = Pin{}, nil
		return
	}
	if p.FirstIncrease.On && len(made) > 0 {
		p.FirstIncrease.N = made[0]
	} else if p.FirstIncrease.N <= at {
		p.FirstIncrease = Pin{}
	}
	if len(p.IncreaseRounds) == 0 {
		return
	}
	above := slices.IndexFunc(p.IncreaseRounds, func(r int) bool { return r > at })
	if above < 0 {
		above = len(p.IncreaseRounds)
	}
	p.IncreaseRounds = slices.Concat(made, p.IncreaseRounds[above:])
}

// warnIncreases says where a fixed list leaves out the usual plain rounds
// (common practice, no source), and where it gave way to what is knitted.
func (d *draft) warnIncreases() {
	p, list := &d.plan, d.plan.Gusset.IncreaseRounds
	if pin := d.req.Pins.FirstIncrease; pin.On && len(list) > 0 && !pin.Allows(list[0]) {
		p.say("knitted", "%s: round %d is fixed, but on the needles the increases begin in round %d; that stays.", FirstIncrease.Path(), pin.N, list[0])
	}
	fixed := d.req.Pins.IncreaseRounds
	if len(fixed) == 0 {
		return
	}
	if !slices.Equal(fixed, list) {
		p.say("knitted", "%s: %s is fixed, but what is on the needles makes it %s; that stays.", IncreaseRounds.Path(), commas(fixed), commas(list))
	}
	for i := 1; i < len(list); i++ {
		if list[i]-list[i-1] < gussetGap {
			p.say(IncreaseRounds.Key(), "Rounds %d and %d both increase; with a plain round between them the gusset pulls less.", list[i-1], list[i])
			break
		}
	}
	if n := len(list); n > 0 && list[n-1] > p.Gusset.Rounds.N-gussetLeadOut {
		p.say(IncreaseRounds.Key(), "The gusset's last round increases; a plain round before the thumb is divided off is easier.")
	}
}

// commas writes a list of rounds as a person types it: "1, 4, 7".
func commas(rounds []int) string {
	parts := make([]string, len(rounds))
	for i, r := range rounds {
		parts[i] = strconv.Itoa(r)
	}
	return strings.Join(parts, ", ")
}

// nearestList returns the list nearest to the fixed one that works beside other
// pins: its length as near as can be, and its late rounds moved down to where
// there is room.
func (c *conflict) nearestList(pins Pins) (string, bool) {
	held := pins
	held.IncreaseRounds = nil
	if c.d.progress != nil {
		c.d.progress.hold(&held)
	}
	rounds, want := held.GussetRounds.Or(c.d.freeGussetRounds()), c.pins.IncreaseRounds
	for off := 0; off <= max(rounds, len(want)); off++ {
		for _, k := range [2]int{len(want) + off, len(want) - off} {
			if k < 1 || k > rounds {
				continue
			}
			for _, gap := range [2]int{gussetGap, 1} {
				pins.IncreaseRounds = c.fitted(want, k, gap, rounds, &held)
				if len(pins.IncreaseRounds) > 0 && c.s.solvable(c.d, &pins) {
					return commas(pins.IncreaseRounds), true
				}
			}
		}
	}
	return "", false
}

// fitted cuts or continues a list to k rounds, begins it in the fixed first
// round, and moves its end down to where there is room. If a rhythm is fixed,
// the list follows that instead. It returns nil if there is no room.
func (c *conflict) fitted(want []int, k, gap, rounds int, pins *Pins) []int {
	if len(pins.Rhythm) > 0 {
		return c.d.inRhythm(k, pins)
	}
	list := append(make([]int, 0, k), want[:min(k, len(want))]...)
	by := pins.FirstIncrease.Or(want[0]) - want[0]
	for i := range list {
		list[i] += by
	}
	for n := len(list); n < k; n++ {
		list = append(list, list[n-1]+gap)
	}
	leadOut, grow := gussetLeadOut, c.d.req.Make.growth()
	if gap == 1 {
		leadOut, gap = grow.leadOut, grow.closest
	}
	for i := 1; i < k; i++ {
		list[i] = max(list[i], list[i-1]+grow.closest)
	}
	for i := k - 1; i >= 0; i-- {
		list[i] = min(list[i], rounds-leadOut-gap*(k-1-i))
	}
	if list[0] < 1 {
		return nil
	}
	return list
}
