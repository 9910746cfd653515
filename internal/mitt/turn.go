package mitt

import (
	"slices"

	"thenar/internal/stitch"
)

// Down reports whether the mitt is worked from the fingertips to the cuff.
func (p *Plan) Down() bool { return p.Make.Direction == Down }

// fromTip returns the sections of a mitt that is worked from the fingertips, in the order
// worked, from those of the same mitt worked from the cuff: each is read from its last
// round to its first. Every round eats what the other leaves, and leaves what it eats.
// Of rows the shaped one of each pair does so, and the plain one follows it.
func (p *Plan) fromTip(up []stitch.Section) []stitch.Section {
	if p.Make.Flat {
		up = p.flat(stitch.Mitt{Sections: up}).Sections
	}
	down := make([]stitch.Section, 0, len(up)+2)
	for i := len(up) - 1; i >= 0; i-- {
		s := p.Make.pace().turnedSection(&up[i])
		s.About.Until, s.About.Short = "", 0 // what it reaches is what the one below it reached
		if i > 0 {
			s.About.Until, s.About.Short = up[i-1].About.Until, up[i-1].About.Short
		}
		if s.About.Until == "" && !s.Part.Passing() {
			s.About.Until = p.wristWords()
		}
		if i+1 < len(up) && p.Parted() {
			s.Shift, s.Across = -up[i+1].Across, -up[i+1].Shift
		}
		down = append(down, s)
	}
	first, final := &down[0], &down[len(down)-1]
	first.CastOn, first.About.Tip = first.Rounds[0].In(), up[len(up)-1].Closed()
	final.CastOn = 0
	final.Finish = stitch.Round{Ops: times(nil, stitch.BindOff, final.Rounds[len(final.Rounds)-1].Out())}
	if p.Thumbed() {
		down = append([]stitch.Section{p.thumbDown()}, down...)
		if p.Bridge.CastOn > 0 {
			down = append(down, p.gapSection())
		}
	}
	return down
}

// wristWords returns where the cuff begins on the hand.
func (p *Plan) wristWords() string {
	if p.Parted() {
		return "the bone at the wrist"
	}
	return "the wrist"
}

// FromBase returns rounds of a part of n that are counted as they are worked, counted
// from its lower end, and the other way about.
func (p *Plan) FromBase(n int, list []int) []int {
	if !p.Down() {
		return list
	}
	return p.Make.pace().fromEnd(n, list)
}

// GussetWorked returns n rounds of the gusset, in the order worked, as they would be with
// other increase rounds, counted from its base.
func (p *Plan) GussetWorked(n int, increases []int) []stitch.Round {
	rounds := p.GussetRounds(n, increases)
	if !p.Down() {
		return rounds
	}
	return p.Make.pace().turnedRounds(rounds)
}

// turnedSection returns a section that is worked from its upper end.
func (o pace) turnedSection(up *stitch.Section) stitch.Section {
	n := len(up.Rounds)
	s := stitch.Section{Part: up.Part, Down: true, Seam: up.Seam, Rounds: o.turnedRounds(up.Rounds), About: up.About}
	if about := &s.About; about.Site > 0 {
		about.Site = min(n+1-about.Site, n-o.rest()) // of a pair of rows the shaped one
	}
	if was := up.About.Shaping; was != nil {
		s.About.Shaping = &stitch.Shaping{From: was.To, To: was.From, Step: -was.Step, Rounds: o.fromEnd(n, was.Rounds)}
	}
	return s
}

// turnedRounds returns rounds as they are worked from their other end. The plain row of a
// pair is worked over what the shaped one before it leaves: like its twin where all of
// that is alike, else like the row beyond the pair, or as the knits and purls look.
func (o pace) turnedRounds(up []stitch.Round) []stitch.Round {
	n := len(up)
	down := make([]stitch.Round, 0, n)
	for r := 1; r <= n; r++ {
		from := o.turned(n, r)
		round := turnedRound(up[from-1])
		if o == toAndFro && r%2 == 0 && round.In() != down[r-2].Out() {
			round = plainAfter(&down[r-2], round, up[:from-2])
		}
		down = append(down, round)
	}
	return down
}

// plainAfter returns the plain row after a shaped one, over which its twin has too many or
// too few stitches. beyond are the rows below the pair, of which the last is the next.
func plainAfter(shaped *stitch.Round, twin stitch.Round, beyond []stitch.Round) stitch.Round {
	alike := !slices.ContainsFunc(twin.Ops, func(op stitch.Op) bool { return op != twin.Ops[0] })
	if n := len(beyond); n > 0 && !alike {
		return turnedRound(beyond[n-1])
	}
	out := stitch.Round{Side: twin.Side, Even: twin.Even}
	if !out.Even {
		out.Before, out.Lead = shaped.BeforeOut(), shaped.LeadOut()
	}
	if out.Ops = asTheyLook(shaped.Ops); alike {
		out.Ops = times(nil, twin.Ops[0], shaped.Out())
	}
	return out
}

// turnedRound returns the round that undoes r, worked from above. With the mitt the other
// way up the round goes the other way about the hand, as on the other hand, so each block
// is met from its other end.
func turnedRound(r stitch.Round) stitch.Round {
	if !r.Even {
		r = stitch.MirrorRound(r)
	}
	before, end := undone(r.Ops[:r.Before], r.Even), r.Before+r.Lead
	lead := undone(r.Ops[r.Before:end], r.Even)
	if r.Held() > 0 { // what waits for the end is put aside before the thumb comes in
		slices.SortStableFunc(lead, func(a, b stitch.Op) int { return boolInt(b == stitch.Hold) - boolInt(a == stitch.Hold) })
	}
	out := stitch.Round{
		Ops: slices.Concat(before, lead, undone(r.Ops[end:], r.Even)), Lead: len(lead), Before: len(before), Even: r.Even, Side: r.Side,
	}
	if r.Held() > 0 {
		out.Keep(stitch.GapOfHand)
		out.Bring(stitch.ThumbSet)
	}
	return out
}

// undone returns the operations that undo others, in their order: a decrease becomes a
// stitch and one that is made beside it, on the side from which it leaned; what was
// made is worked together with the stitch on the side to which it leaned, and two that
// were made beside one stitch all three together. An even round, which is the same on both
// hands, makes its stitches without a lean.
func undone(ops []stitch.Op, even bool) []stitch.Op {
	var out []stitch.Op
	hung := stitch.NoStitch // the decrease that the next stitch belongs to
	for i, op := range ops {
		n := len(out)
		before := stitch.NoStitch
		if n > 0 {
			before = out[n-1]
		}
		switch op {
		case stitch.SSK:
			out = append(out, stitch.M1L, stitch.Knit)
		case stitch.K2tog:
			made := stitch.M1R
			if even {
				made = stitch.M1
			}
			out = append(out, stitch.Knit, made)
		case stitch.M1L:
			hung = stitch.SSK
		case stitch.M1R, stitch.M1:
			switch {
			case before == stitch.Knit:
				out[n-1] = stitch.K2tog
			case before == stitch.Purl:
				out[n-1] = stitch.P2tog
			case before == stitch.SSK && i > 0 && ops[i-1] == stitch.Knit:
				out[n-1] = stitch.S2KP
			default:
				hung = stitch.K2tog
			}
		case stitch.Hold:
			out = append(out, stitch.Take)
		case stitch.CastOn:
			out = append(out, stitch.Hold)
		case stitch.JoinHem:
			out = append(out, stitch.Knit)
		default:
			if hung != stitch.NoStitch {
				op, hung = hung, stitch.NoStitch
			}
			out = append(out, op)
		}
	}
	return out
}
