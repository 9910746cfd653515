package mitt

import (
	"slices"

	"thenar/internal/shaping"
	"thenar/internal/stitch"
)

// Mitt turns the plan into rounds, always as the right hand: cuff, plain
// cuff, gusset, hand, the top of a mitten, thumb. A part without rounds is
// left out; what is cast on then stands with the part that comes first.
//
// The round begins with the gusset's first stitch. Worked right to left on
// the outside, a right hand's round crosses the palm and then the back.
func (p *Plan) Mitt() stitch.Mitt {
	var m stitch.Mitt
	for _, s := range []stitch.Section{p.cuffSection(), p.cuffPlainSection(), p.gussetSection()} {
		if len(s.Rounds) > 0 {
			m.Sections = append(m.Sections, s)
		}
	}
	m.Sections = append(m.Sections, p.handSection())
	m.Sections[0].CastOn = p.Cuff.CastOn.N
	if p.Top != nil {
		m.Sections = append(m.Sections, p.topSection())
	}
	if p.Thumbed() {
		m.Sections = append(m.Sections, p.thumbSection())
	}
	return m
}

// cuffSection is the ribbing. Where no plain round follows, not even of the
// hand, its last round brings the cuff to the hand's count.
func (p *Plan) cuffSection() stitch.Section {
	s := stitch.Section{Part: stitch.Cuff}
	for r := 1; r <= p.Cuff.Rounds; r++ {
		ops := ribbing(p.Cuff.CastOn.N, p.Cuff.Rib)
		if r == p.Cuff.Rounds && p.Cuff.PlainRounds == 0 && !p.Cuff.JoinsAbove {
			ops = p.spread(stitch.Cuff, ops, p.Cuff.Change)
		}
		s.Rounds = append(s.Rounds, stitch.Round{Ops: ops, Even: true})
	}
	return s
}

// cuffPlainSection is the plain rounds; the first brings the cuff to the
// hand's count.
func (p *Plan) cuffPlainSection() stitch.Section {
	s := stitch.Section{Part: stitch.CuffPlain}
	for r := 1; r <= p.Cuff.PlainRounds; r++ {
		ops := times(nil, stitch.Knit, p.Body.Stitches.N)
		if r == 1 {
			ops = p.spread(stitch.Cuff, times(nil, stitch.Knit, p.Cuff.CastOn.N), p.Cuff.Change)
		}
		s.Rounds = append(s.Rounds, stitch.Round{Ops: ops, Even: true})
	}
	return s
}

// gussetSection is the gusset's rounds with the hand's beside it.
func (p *Plan) gussetSection() stitch.Section {
	g := &p.Gusset
	s := stitch.Section{Part: stitch.Gusset, Rounds: make([]stitch.Round, 0, g.Rounds.N)}
	rest := p.Body.Stitches.N - g.Base
	count, done := g.Base, 0
	for r := 1; r <= g.Rounds.N; r++ {
		var ops []stitch.Op
		if done < g.Increases && g.IncreaseRounds[done] == r {
			ops = increaseRound(count, g.Base, g.Step, done == 0)
			count += g.Step
			done++
		} else {
			ops = times(ops, stitch.Knit, count)
		}
		lead := len(ops)
		s.Rounds = append(s.Rounds, stitch.Round{Ops: times(ops, stitch.Knit, rest), Lead: lead})
	}
	return s
}

// increaseRound is the gusset's part of an increase round over count
// stitches: work the first, M1L, work to the last, M1R, work it. On a base of
// 1 or 2 the first increase round puts M1L before and M1R after the base, and
// the made stitches are the edges from then on. One-sided: M1L after the
// first stitch.
func increaseRound(count, base, step int, first bool) []stitch.Op {
	if step == 1 {
		ops := []stitch.Op{stitch.Knit, stitch.M1L}
		return times(ops, stitch.Knit, count-1)
	}
	if first && base <= 2 {
		ops := times([]stitch.Op{stitch.M1L}, stitch.Knit, count)
		return append(ops, stitch.M1R)
	}
	ops := times([]stitch.Op{stitch.Knit, stitch.M1L}, stitch.Knit, count-2)
	return append(ops, stitch.M1R, stitch.Knit)
}

// times appends n of an operation.
func times(ops []stitch.Op, op stitch.Op, n int) []stitch.Op {
	ops = slices.Grow(ops, max(n, 0))
	for range n {
		ops = append(ops, op)
	}
	return ops
}

// ribbing is n stitches of rib: knits, then purls, over and over.
func ribbing(n, rib int) []stitch.Op {
	knits, _ := ribPattern(rib)
	ops := make([]stitch.Op, n)
	for i := range ops {
		ops[i] = stitch.Knit
		if i%rib >= knits {
			ops[i] = stitch.Purl
		}
	}
	return ops
}

// ribPattern is the rib over its multiple: knits first, then purls. A
// multiple of 1 is no rib but stocking stitch.
func ribPattern(rib int) (knits, purls int) {
	return rib - rib/2, rib / 2
}

// spread spreads a part's change of count over a round as it is knitted, or,
// where it is not yet, by the rule of now.
func (p *Plan) spread(part stitch.Part, ops []stitch.Op, change int) []stitch.Op {
	return spreadOver(ops, change, p.turned(part))
}

// spread changes the count of a round by change stitches, evenly: M1 after
// each run of stitches to increase, k2tog after it to decrease. The places are
// turned by half a run, so that the last one is not beside the beginning of
// the round: of the first run, the longest, the half is left to the end. The
// change is at most a stitch for every stitch, or for every two to decrease;
// check has seen to that.
func spread(ops []stitch.Op, change int) []stitch.Op { return spreadOver(ops, change, true) }

// spreadOver spreads a change; turned, or by the earlier rule from the
// beginning of the round.
func spreadOver(ops []stitch.Op, change int, turned bool) []stitch.Op {
	if change == 0 {
		return ops
	}
	how := shaping.Spread{Stitches: len(ops), Events: change}
	if change < 0 {
		how.Events, how.Uses = -change, 2
	}
	runs, err := shaping.Evenly(how)
	if err != nil {
		panic("mitt: a change that check let pass: " + err.Error())
	}
	if turned {
		runs[0] -= runs[0] / 2
	}
	out := make([]stitch.Op, 0, len(ops)+max(change, 0))
	at := 0
	for _, run := range runs {
		out = append(out, ops[at:at+run]...)
		at += run
		if change > 0 {
			out = append(out, stitch.M1)
		} else {
			out = append(out, stitch.K2tog)
			at += 2
		}
	}
	return append(out, ops[at:]...)
}
