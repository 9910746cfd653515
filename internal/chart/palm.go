package chart

import (
	"slices"

	"thenar/internal/stitch"
	"thenar/internal/wale"
)

// PalmRound is what a round shows where the palm of a right hand is seen: the nearer
// half of its gusset from the hand outward, and the palm from the thumb's side on. A
// thumb has no gusset; its nearer half begins at its outer side.
type PalmRound struct{ Gusset, Hand []PalmStitch }

// PalmStitch is one stitch that is seen.
type PalmStitch struct {
	Yarn string
	Purl bool
}

// Palm returns what the rounds of every part show of their palm side, as painted on the
// right hand; a left hand is its mirror image.
func (s Source) Palm() map[stitch.Part][]PalmRound {
	if s.Mirrored {
		s.Mirrored = false
		s = s.Prepare()
	}
	palm := map[stitch.Part][]PalmRound{}
	for _, section := range s.Mitt.Sections {
		rounds := make([]PalmRound, len(section.Rounds))
		for i, r := range section.Rounds {
			order := stitch.Round{Ops: r.Ops, Even: true}.MirrorOrder()
			if section.Down { // from the tip a round goes the other way about the hand
				order = stitch.Round{Ops: make([]stitch.Op, len(r.Ops)), Lead: r.Lead, Before: r.Before, Side: r.Side}.MirrorOrder()
			}
			rounds[i] = s.palmRound(section.Part, i, r.Ops, order)
		}
		palm[section.Part] = rounds
	}
	return palm
}

func (s Source) palmRound(part stitch.Part, i int, ops []stitch.Op, order []int) PalmRound {
	var all []PalmStitch
	var names []string
	cells := make([]Cell, len(ops))
	for j := range cells {
		cells[j].plan(ops[j], s.names[part][i][j])
	}
	s.repeatOn(part, i, s.names[part][i], cells)
	for _, j := range order {
		name, c := s.names[part][i][j], &cells[j]
		s.paint(c, Anchor{part, i + 1, name})
		if c.Op.Out() == 0 {
			continue
		}
		all = append(all, PalmStitch{c.Yarn, c.Op.Purled()})
		names = append(names, name)
	}
	if s.worked.Section(part).Seam > 0 {
		all, names = s.asRound(all, names)
	}
	if of := s.sides(s.worked.Section(part)); of != nil {
		return PalmRound{Hand: nearerFinger(all, names, of)}
	}
	if part.Over() == stitch.OverDigit {
		return PalmRound{Hand: nearerThumb(all, names)}
	}
	lead := leading(names)
	if s.palm {
		return s.palmWithThumb(all, lead, part)
	}
	near := all[lead/2 : lead]
	out := PalmRound{Hand: all[lead : lead+(len(all)-lead)/2]}
	for k := range near {
		out.Gusset = append(out.Gusset, near[len(near)-1-k])
	}
	return out
}

// palmWithThumb returns what a round shows if the thumb sits in the palm: all of the
// gusset, beside it the inset stitches that end the round, and the rest of the palm.
func (s Source) palmWithThumb(all []PalmStitch, lead int, part stitch.Part) (out PalmRound) {
	block := lead
	if part.Marked() {
		block = s.Base
	}
	rest := min(max((len(all)-lead+block)/2-block-s.inset, 0), len(all)-lead)
	out.Hand = all[lead : lead+rest]
	for k := range lead {
		out.Gusset = append(out.Gusset, all[lead-1-k])
	}
	for k := range min(s.inset, len(all)-lead-rest) {
		out.Gusset = append(out.Gusset, all[len(all)-1-k])
	}
	return out
}

// nearerThumb returns half of a thumb's round, from the middle of what was held on: the
// held stitches are worked from the back of the hand to its palm.
func nearerThumb(all []PalmStitch, names []string) []PalmStitch {
	held := 0
	for _, name := range names {
		if name != "" && name[0] != wale.Picked {
			held++
		}
	}
	half := make([]PalmStitch, 0, (len(all)+1)/2)
	for k := range (len(all) + 1) / 2 {
		half = append(half, all[(held/2+k)%len(all)])
	}
	return half
}

// nearerFinger returns what is seen of a finger's round from its palm, from the thumb's side
// on: its part of the palm and half of the bridge on either side.
func nearerFinger(all []PalmStitch, names []string, sides map[string]string) []PalmStitch {
	n := len(all)
	side := func(j int) string {
		return sideOf(sides, (j%n+n)%n, func(j int) string { return names[j] })
	}
	from := 0
	for from < n && (side(from) != PalmArea || side(from-1) == PalmArea) {
		from++
	}
	if from == n { // all of it, or nothing, is the palm's
		return all[:(n+1)/2]
	}
	run := func(at, step int, of ...string) (length int) {
		for length < n && slices.Contains(of, side(at+step*length)) {
			length++
		}
		return length
	}
	palm := run(from, 1, PalmArea)
	before, after := run(from-1, -1, BridgeArea, PickedArea), run(from+palm, 1, BridgeArea, PickedArea)
	if palm+before == n { // one bridge, on both sides
		before, after = n-palm, 0
	}
	seen := make([]PalmStitch, 0, palm+before+after)
	for k := -(before / 2); k < palm+(after+1)/2; k++ {
		seen = append(seen, all[((from+k)%n+n)%n])
	}
	return seen
}
