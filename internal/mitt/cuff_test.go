package mitt

import (
	"fmt"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"thenar/internal/hand"
	"thenar/internal/stitch"
)

// cuffed is an adult's mitt with a cuff.
func cuffed(kind Kind, how CuffKind) *Request {
	r := request(kind, per10(24, 32), hand.Hand{Circumference: 190 * mm, Length: 180 * mm, Thumb: 65 * mm})
	r.Make.Cuff = how
	return r
}

// one returns the operation that makes up a whole round, or an empty text.
func one(r stitch.Round) string {
	for _, op := range r.Ops {
		if op != r.Ops[0] {
			return ""
		}
	}
	return r.Ops[0].Code()
}

// Worked by hand for a hand of 180 mm at 24 stitches and 32 rounds over 10 cm.
// Garter: 0.165 L = 29.7 mm are 14.26 rounds of half a stitch's width each, so 14, purl
// and knit in turn, the last knit. A hem: 0.12 L = 21.6 mm are 6.9 rounds, so 7 inside,
// one purled where it turns, 7 outside, the last joined; the plain rounds make up for
// what it is shorter than ribbing: 29.7 + 29.7 − 21.6 = 37.8 mm, 12 rounds. A rolled
// edge: 21.6 mm, 7 rounds, a third of it high: 52.2 mm, 17 rounds.
func TestCuffsByHand(t *testing.T) {
	for _, c := range []struct {
		how           CuffKind
		rounds, plain int
		ops           string // of the rounds
		mm            float64
	}{
		{GarterCuff, 14, 10, "p k p k p k p k p k p k p k", 14 / 0.48},
		{HemCuff, 15, 12, "k k k k k k k p k k k k k k joinhem", 8 / 0.32},
		{RolledCuff, 7, 17, "k k k k k k k", 7 / 0.96},
	} {
		p := must(t, cuffed(Fingerless, c.how))
		cuff := p.Mitt().Section(stitch.Cuff)
		assert.Equal(t, c.plain, p.Cuff.PlainRounds, "%s", c.how)
		require.Len(t, cuff.Rounds, c.rounds)
		var ops string
		for _, r := range cuff.Rounds {
			ops += " " + one(r)
		}
		assert.Equal(t, c.ops, ops[1:], "%s", c.how)
		assert.InDelta(t, c.mm, p.Cuff.Length(), 1e-9)
		assert.InDelta(t, c.mm, cuff.AtGauge(c.rounds, p.Gauge.Rounds)/p.Gauge.Rounds, 1e-9)
		assert.Equal(t, 1, p.Cuff.Rib, "any count will do")
	}
	assert.InDelta(t, 37.7, must(t, cuffed(Fingerless, RibCuff)).Cuff.CastOn.Exact, 1)
}

// Every cuff of every kind is sound on both hands, with plain rounds above it and
// without. A hem joins each of its stitches once, and never in the round that brings
// it to the hand's count.
func TestEveryCuff(t *testing.T) {
	for how := range cuffs {
		for _, kind := range []Kind{Fingerless, Mitten, Thumbless} {
			for _, plain := range []Pin{{}, Fix(0), Fix(1)} {
				for _, rounds := range []Pin{{}, Fix(0), Fix(1), Fix(2), Fix(6), Fix(9)} {
					r := cuffed(kind, how)
					r.Pins.CuffPlainRounds, r.Pins.CuffRounds = plain, rounds
					p := must(t, r)
					require.Empty(t, stitch.Ledger(stitch.Mirror(p.Mitt())))
					joined := 0
					if cuff := p.Mitt().Section(stitch.Cuff); cuff != nil {
						for _, round := range cuff.Rounds {
							for _, op := range round.Ops {
								joined += boolInt(op == stitch.JoinHem)
							}
						}
					}
					want := 0
					if p.Cuff.Facing > 0 {
						want = p.Cuff.CastOn.N
					}
					require.Equal(t, want, joined, "%s %s %v %v", how, kind, plain, rounds)
				}
			}
		}
	}
}

// Each cuff says whether the hand passes through it, and the count that would let it.
func TestTheHandPassesEveryCuff(t *testing.T) {
	for how := range cuffs {
		r := cuffed(Fingerless, how)
		r.Pins.CastOn = Fix(26) // too few
		p := must(t, r)
		if !assert.Contains(t, codes(p), "cuff_passage", "%s", how) {
			continue
		}
		var needs int
		for _, w := range p.Warnings {
			if w.Code == "cuff_passage" {
				_, err := fmt.Sscanf(w.Message, "%d stitches", &needs)
				require.NoError(t, err)
			}
		}
		require.Greater(t, needs, p.Cuff.CastOn.N)
		if r.Pins.CastOn = Fix(needs); how == Gauntlet { // that is its count at the wrist
			e := float64(needs)/p.Gauge.Stitches/p.Hand.Wrist.MM() - 1
			r.Pins.CastOn, r.Ease.Cuff = Pin{}, &e
		}
		assert.NotContains(t, codes(must(t, r)), "cuff_passage", "%s of %d", how, needs)
	}
}

// What is knitted of a cuff stays, with the cuff that it is: a hem that is turned
// keeps its inside, one that isn't may get deeper.
func TestKnittedCuffsStay(t *testing.T) {
	for how := range cuffs {
		for _, kind := range []Kind{Fingerless, Mitten, Thumbless} {
			p := must(t, cuffed(kind, how))
			was := p.Mitt().Section(stitch.Cuff).Rounds
			for at := 0; at <= len(was); at++ {
				next := cuffed(kind, RibCuff)
				next.Gauge = per10(26, 40)
				next.Progress = p.ProgressAt(stitch.Cuff, at)
				again := must(t, next)
				require.Equal(t, was[:at], again.Mitt().Section(stitch.Cuff).Rounds[:at], "%s at %d", how, at)
				require.Equal(t, p.Make.Cuff, again.Make.Cuff)
				if how == HemCuff {
					require.Equal(t, at > p.Cuff.Facing, again.Cuff.Facing == p.Cuff.Facing, "at %d", at)
				}
			}
		}
	}
}
