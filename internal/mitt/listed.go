package mitt

import (
	"slices"
	"strconv"
	"strings"

	"thenar/internal/stitch"
)

// increases is the fewest increase rounds that pins and what is knitted ask
// for, and the most that there is room for: of a fixed list, as many as it has.
func (d *draft) increases(pins *Pins) (least, most int) {
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

// listFits reports whether a list of increase rounds can stand beside the fixed
// first one, the fixed rhythm and so many rounds of the gusset.
func (d *draft) listFits(list []int, rounds int, pins *Pins) bool {
	if list[len(list)-1] > rounds || !pins.FirstIncrease.Allows(list[0]) {
		return false
	}
	for i := max(1, len(d.made())); len(pins.Rhythm) > 0 && i < len(list); i++ {
		if list[i]-list[i-1] != pins.Rhythm[(i-1)%len(pins.Rhythm)] {
			return false
		}
	}
	return true
}

// room is the number of increase rounds that fit into what is left of rounds
// 1 … R − 1, from the fixed first one on, at least two apart or in the pinned
// rhythm.
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

// begins is the first round for the next increase: the fixed one, if none is
// made yet, or as soon as what is knitted lets it.
func (d *draft) begins(pins *Pins) int {
	first := d.onward()
	if len(d.made()) == 0 {
		return max(first, pins.FirstIncrease.Or(first))
	}
	return first
}

// next is the round of the increase that follows some in a rhythm: the first
// in round 1, where it is fixed, or as soon as what is knitted lets it.
func (d *draft) next(made []int, pins *Pins) int {
	if len(made) == 0 {
		return d.begins(pins)
	}
	return max(made[len(made)-1]+pins.Rhythm[(len(made)-1)%len(pins.Rhythm)], d.onward())
}

// inRhythm lists k increase rounds: those that are knitted, and the others
// with the fixed intervals in turn.
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

// holdIncreases lays the increases that are made over those that are fixed:
// of a list only the rounds above the present one are still to be kept, and a
// first increase in a round that is knitted is there already, or can't be.
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

// warnIncreases says where a fixed list leaves out the plain rounds that are
// usual (common practice, no source), and what of it gave way to what is
// knitted.
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

// commas writes rounds as they are typed.
func commas(rounds []int) string {
	parts := make([]string, len(rounds))
	for i, r := range rounds {
		parts[i] = strconv.Itoa(r)
	}
	return strings.Join(parts, ", ")
}

// nearestList is the list nearest to the fixed one that works beside a set of
// other pins: of as many rounds as can be, the late ones no later than there
// is room for.
func (c *conflict) nearestList(pins Pins) (string, bool) {
	held := pins
	held.IncreaseRounds = nil
	if c.w.progress != nil {
		c.w.progress.hold(&held)
	}
	rounds, want := held.GussetRounds.Or(c.w.freeGussetRounds()), c.pins.IncreaseRounds
	for off := 0; off <= max(rounds, len(want)); off++ {
		for _, k := range [2]int{len(want) + off, len(want) - off} {
			if k < 1 || k > rounds {
				continue
			}
			for _, gap := range [2]int{gussetGap, 1} {
				pins.IncreaseRounds = c.fitted(want, k, gap, rounds, &held)
				if len(pins.IncreaseRounds) > 0 && c.s.solvable(c.w, &pins) {
					return commas(pins.IncreaseRounds), true
				}
			}
		}
	}
	return "", false
}

// fitted is a list cut or continued to k rounds, begun where the first is
// fixed, or in the fixed rhythm, its end moved down to where there is room;
// nil where there is none.
func (c *conflict) fitted(want []int, k, gap, rounds int, pins *Pins) []int {
	if len(pins.Rhythm) > 0 {
		return c.w.inRhythm(k, pins)
	}
	list := append(make([]int, 0, k), want[:min(k, len(want))]...)
	by := pins.FirstIncrease.Or(want[0]) - want[0]
	for i := range list {
		list[i] += by
	}
	for n := len(list); n < k; n++ {
		list = append(list, list[n-1]+gap)
	}
	leadOut := gussetLeadOut
	if gap == 1 {
		leadOut = 0
	}
	for i := k - 1; i >= 0; i-- {
		list[i] = min(list[i], rounds-leadOut-gap*(k-1-i))
	}
	if list[0] < 1 {
		return nil
	}
	return list
}
