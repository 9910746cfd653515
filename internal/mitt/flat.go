package mitt

import (
	"errors"
	"fmt"
	"slices"

	"thenar/internal/fault"
	"thenar/internal/shaping"
	"thenar/internal/stitch"
)

// pace is how the rounds of a piece follow each other: one by one in the round; to and
// fro in pairs of rows, of which only the first, on the right side, is shaped.
type pace int

const (
	allRound pace = 1
	toAndFro pace = 2
)

// pace returns how the rounds follow each other.
func (m *Make) pace() pace {
	if m.Flat {
		return toAndFro
	}
	return allRound
}

// pace returns how the knitted rounds follow each other.
func (k *Progress) pace() pace { return (&Make{Flat: k != nil && k.Flat}).pace() }

// up returns n, or the next number of rounds that ends a part.
func (o pace) up(n int) int { return ceilTo(n, int(o)) }

// nearest returns the number of rounds of a part nearest to exact, at least those of
// one pace.
func (o pace) nearest(exact float64) int { return max(nearestIn(exact, int(o), 0), int(o)) }

// shaped returns the first round from n on that may be shaped.
func (o pace) shaped(n int) int { return o.up(n-1) + 1 }

// shapings returns how many rounds after one, up to another, may be shaped.
func (o pace) shapings(after, to int) int {
	return max(0, o.up(to)-o.up(after)) / int(o)
}

// takes returns the least number of rounds in which so many are shaped.
func (o pace) takes(shapings int) int { return int(o) * shapings }

// turned returns the round of a part of n in whose place, counted from its other end, round
// r stands when the piece is worked the other way up. Rows keep their pairs, the shaped one
// before the plain one.
func (o pace) turned(n, r int) int {
	if o == toAndFro {
		return n - r + 2*((r+1)%2)
	}
	return n + 1 - r
}

// fromEnd returns rounds of a part of n, counted from the end at which it is begun,
// counted from the other: the last comes first.
func (o pace) fromEnd(n int, rounds []int) []int {
	out := make([]int, len(rounds))
	for i, r := range rounds {
		out[len(out)-1-i] = o.turned(n, r)
	}
	return out
}

// rest is the number of plain rounds after the last shaped one of a part.
func (o pace) rest() int { return int(o) - 1 }

// only returns in which rounds a change may stand.
func (o pace) only() shaping.Parity {
	if o == toAndFro {
		return shaping.OddRounds
	}
	return shaping.EveryRound
}

// seamEdge is the number of stitches at each edge of a flat piece that its seam takes.
const seamEdge = 1

// SeamStitches returns how many stitches are on the needles beyond the plan's counts:
// those that a seam takes.
func (p *Plan) SeamStitches() int {
	if p.Make.Flat {
		return 2 * seamEdge
	}
	return 0
}

// OnNeedles returns how many stitches are cast on, with those that a seam takes.
func (p *Plan) OnNeedles() int { return p.Cuff.CastOn.N + p.SeamStitches() }

// checkRows refuses fixed rounds that rows can't have: each part of a flat piece has an
// even number of them, and only the odd ones, on the right side, are shaped.
func (r *Request) checkRows(faults *fault.Fields) {
	if !r.Make.Flat {
		return
	}
	for _, n := range fixable {
		pin := r.Pins.Pin(n)
		switch {
		case pin == nil || !pin.On:
		case n.Measure() == InRounds && pin.N%2 == 1:
			works(faults, n.Path(), fmt.Sprint(pin.N+1), "is %d; a part that is worked flat has an even number of rows: write %d", pin.N, pin.N+1)
		case n.Measure() == AtRounds && pin.N%2 == 0:
			works(faults, n.Path(), fmt.Sprint(pin.N+1), "is %d; flat, only the odd rows are shaped, on the right side: write %d", pin.N, pin.N+1)
		}
	}
	odd := slices.Clone(r.Pins.IncreaseRounds)
	for i, at := range odd {
		odd[i] = toAndFro.shaped(at)
		if i > 0 {
			odd[i] = max(odd[i], odd[i-1]+int(toAndFro))
		}
	}
	if !slices.Equal(odd, r.Pins.IncreaseRounds) {
		works(faults, IncreaseRounds.Path(), commas(odd), "is %s; flat, only the odd rows are shaped, on the right side: write %s", commas(r.Pins.IncreaseRounds), commas(odd))
	}
	even := slices.Clone(r.Pins.Rhythm)
	for i, n := range even {
		even[i] = toAndFro.up(n)
	}
	if !slices.Equal(even, r.Pins.Rhythm) {
		works(faults, Rhythm.Path(), commas(even), "is %s; flat, from one increase row to the next is an even number of rows: write %s", commas(r.Pins.Rhythm), commas(even))
	}
}

// InRows returns a text about rounds as it is said of what is made so: about rows, if it
// is flat.
func (m *Make) InRows(text string) string {
	if m.Flat {
		return stitch.InRows(text)
	}
	return text
}

// inRows returns faults as they are said of the piece.
func (d *draft) inRows(err error) error {
	var faults fault.Fields
	if !errors.As(err, &faults) {
		return err
	}
	faults = slices.Clone(faults)
	for i := range faults {
		faults[i].Message = d.req.Make.InRows(faults[i].Message)
	}
	return faults
}

// seamByThumb reports on which side the seam of a flat piece lies: on the thumb's, where
// the thumb comes out of it; else on the little finger's.
func (p *Plan) seamByThumb() bool { return p.Make.Flat && p.Construction() == Slit }

// flat turns the rounds of a mitt into rows from seam to seam. The seam lies between palm
// and back; on the little finger's side a right hand's rows begin with the back, on the
// thumb's with the palm. At each edge stands a stitch more. Odd rows are on the right side. The thumb has a
// seam of its own, in the middle of what is picked up, or of the loops above the waste
// yarn. Of those the ones before the seam are worked last.
func (p *Plan) flat(m stitch.Mitt) stitch.Mitt {
	at := 1 // loops of the round before the seam; without a thumb a round begins inside a side line
	if p.seamByThumb() {
		at = 0 // where the round begins
	}
	for i := range m.Sections {
		s := &m.Sections[i]
		switch over := s.Part.Over(); {
		case p.seamByThumb():
		case over == stitch.OverMound:
			at = p.palmEnd()
		case over == stitch.OverTips:
			if n := s.Rounds[0].In(); n > 0 {
				at = ((at-s.Shift)%n + n) % n
			}
		case over == stitch.OverDigit:
			at = p.Thumb.PickedUp / 2
		}
		s.Shift, s.Across, s.Seam = 0, 0, seamEdge
		if w := p.Thumb.OnWaste; w > 0 && s.Part.Over() == stitch.OverDigit {
			s.Shift, s.Across = at-1, w-at // beside the strands of the corners
		}
		at = p.openRounds(s.Rounds, at)
		if s.SeamOpen() {
			p.knitEnds(s.Rounds)
		}
		if n := len(s.Finish.Ops); n > 0 {
			s.Finish.Ops = times(slices.Clip(s.Finish.Ops), s.Finish.Ops[0], 2*seamEdge)
		}
		if about := s.About.Shaping; about != nil && !s.Part.Marked() {
			counted := *about
			counted.From, counted.To = about.From+2*seamEdge, about.To+2*seamEdge
			s.About.Shaping = &counted
		}
	}
	return m
}

// openRounds turns the rounds of a part into rows, where at of the loops below lie before the
// seam; it returns how many of those above do.
func (p *Plan) openRounds(rounds []stitch.Round, at int) int {
	for j, r := range rounds {
		rounds[j], at = inRow(r, at, stitch.Facing(j+1))
	}
	return at
}

// palmEnd returns how many stitches of a round of the base, from the gusset's first on,
// come before the seam: the gusset and the palm, without what of it ends the round.
// So it is above the place of a thumb on waste yarn.
func (p *Plan) palmEnd() int {
	n, b := p.Body.Stitches.N, p.Gusset.Base
	if p.Make.Place == InPalm || p.Thumb.OnWaste > 0 {
		return n/2 - p.Gusset.Inset
	}
	return b + (n-b)/2
}

// inRow returns a round as a row from seam to seam, where the seam lies after at of
// the round's loops; and after how many of the loops that it leaves. A round that is
// alike on both hands already begins there.
func inRow(r stitch.Round, at int, side stitch.Side) (stitch.Round, int) {
	out := stitch.Round{Even: r.Even, Side: side}
	ops, cut := r.Ops, 0
	if r.Even {
		at = min(at, r.Out())
	} else {
		ops, cut = cutAt(r.Ops, at)
		out.Before, out.Lead = seamEdge+len(ops)-cut, r.Lead
		at = 0
		for _, op := range ops[:cut] {
			at += op.Out()
		}
	}
	edge := times(nil, edgeOf(ops), seamEdge)
	out.Ops = slices.Concat(edge, ops[cut:], ops[:cut], edge)
	if r.Aside != nil {
		none := make([]stitch.Set, seamEdge)
		out.Aside = slices.Concat(none, r.Aside[cut:], r.Aside[:cut], none)
	}
	if cut < r.Lead { // what is picked up lies on both sides of the thumb's seam
		out.Before, out.Lead = 0, 0
	}
	return out, at
}

// cutAt returns the operations of a round, and after how many of them its seam lies: the
// first at loops are worked before it. What is picked up or made of the strand at a corner
// counts as worked. A decrease
// over the seam changes places with the stitch beside it; among decreases only, it
// stands at its one side.
func cutAt(ops []stitch.Op, at int) ([]stitch.Op, int) {
	cut, in := 0, 0
	for cut < len(ops) && in < at {
		in += ops[cut].In()
		if ops[cut] == stitch.PickUp || ops[cut] == stitch.CornerM1 {
			in++
		}
		cut++
	}
	if in == at {
		return ops, cut
	}
	ops = slices.Clone(ops)
	switch {
	case cut < len(ops) && ops[cut] == stitch.Knit:
		ops[cut-1], ops[cut] = ops[cut], ops[cut-1]
	case cut > 1 && ops[cut-2] == stitch.Knit:
		ops[cut-2], ops[cut-1] = ops[cut-1], ops[cut-2]
		cut--
	}
	return ops, cut
}

// edgeOf returns how the seam's stitches are worked in a row: like the row, if that is
// all of one kind; picked up where the row begins so; cast on where it begins between
// loops of the hand; else knitted, so that the seam lies between two smooth columns.
func edgeOf(ops []stitch.Op) stitch.Op {
	switch {
	case slices.Contains(ops, stitch.PickUp), slices.Contains(ops, stitch.GapK2tog):
		return stitch.PickUp
	case slices.Contains(ops, stitch.CornerM1):
		return stitch.CastOn
	}
	for _, op := range ops {
		if op != ops[0] || op.In() != 1 || op.Out() != 1 {
			return stitch.Knit
		}
	}
	return ops[0]
}

// asTheyLook returns the row on the wrong side after one that was changed: the knits
// knitted and the purls purled, as they look on the right side.
func asTheyLook(ops []stitch.Op) []stitch.Op {
	var out []stitch.Op
	for _, op := range ops {
		how := stitch.Knit
		if op.Purled() {
			how = stitch.Purl
		}
		out = times(out, how, op.Out())
	}
	return out
}
