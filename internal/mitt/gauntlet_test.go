package mitt

import (
	"math/rand/v2"
	"slices"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"thenar/internal/hand"
	"thenar/internal/stitch"
	"thenar/internal/testenv"
	"thenar/internal/units"
)

// Worked by hand for a hand of 180 mm at 24 stitches and 32 rounds over 10 cm. Depth
// 0.33 L = 59.4 mm: 4 rounds of garter are 8.3 mm, the other 51.1 mm 16 rounds. The wrist
// of 157.7 mm takes 38 stitches, the upper edge of 1.4 times that 53.0: two at a time
// would be 7 decreases, for which 16 rounds less 2 at the wrist, every 3rd, have no room;
// four at a time are 4, 54 → 38. They begin where the edge ends, every 4th round.
func TestGauntletByHand(t *testing.T) {
	p := must(t, cuffed(Fingerless, Gauntlet))
	require.NotNil(t, p.Cuff.Flare)
	assert.Equal(t, 54, p.Cuff.CastOn.N)
	assert.Equal(t, 38, p.Cuff.Wrist.N)
	assert.Equal(t, 20, p.Cuff.Rounds)
	assert.Equal(t, 10, p.Cuff.PlainRounds, "as below a rib")
	assert.Equal(t, []int{5, 9, 13, 17}, p.Cuff.Flare.Rounds)
	assert.Equal(t, 4, p.Cuff.Flare.Step)
	cuff := p.Mitt().Section(stitch.Cuff)
	for r, want := range []string{"p", "k", "p", "k", ""} {
		assert.Equal(t, want, one(cuff.Rounds[r]), "round %d", r+1)
	}
	assert.InDelta(t, 4/0.48+16/0.32, p.Cuff.Length(), 1e-9)
	assert.InDelta(t, p.Cuff.Length(), cuff.Reach(p.Gauge.Rounds), 1e-9)
	assert.InDelta(t, 54/0.24-p.Cuff.Flare.Girth, p.Off[PlaceCuffUpper], 1e-9)
	assert.InDelta(t, 38/0.24-p.Hand.Wrist.MM(), p.Off[PlaceCuff], 1e-9)
}

// Any gauntlet narrows to a count that the wrist may have, the same number of stitches at
// a time, at least two plain rounds between and at the wrist, as near to its upper girth
// as that goes; what can't be reached is said.
func TestAnyGauntlet(t *testing.T) {
	rng := rand.New(rand.NewPCG(13, 5))
	wide := 0
	for range testenv.Cases(400, 4_000) {
		r := request([]Kind{Fingerless, Mitten, Thumbless}[rng.IntN(3)], per10(12+rng.Float64()*24, 16+rng.Float64()*32), hand.Hand{Circumference: units.FromMM(110 + 130*rng.Float64())})
		r.Make.Cuff = Gauntlet
		r.Make.UpperGirth, r.Make.CuffDepth = units.FromMM(80+300*rng.Float64()), units.FromMM(5+150*rng.Float64())
		if rng.IntN(4) == 0 {
			r.Pins.CastOn = Fix(20 + rng.IntN(70))
		}
		p, err := New().Plan(r)
		if err != nil {
			require.True(t, r.Pins.CastOn.On, "%v", err)
			continue
		}
		c, f := &p.Cuff, p.Cuff.Flare
		require.Empty(t, stitch.Ledger(p.Mitt()))
		if c.CastOn.Pinned {
			require.Equal(t, r.Pins.CastOn.N, c.CastOn.N)
		} else {
			require.GreaterOrEqual(t, float64(c.Wrist.N), cuffShare*p.Gauge.Stitches*p.Hand.Circumference.MM()-2)
			require.LessOrEqual(t, c.Wrist.N, p.Body.Stitches.N)
		}
		require.Equal(t, c.CastOn.N-c.Wrist.N, f.Step*len(f.Rounds))
		for i, at := range f.Rounds {
			require.Greater(t, at, f.Edge)
			require.LessOrEqual(t, at, c.Rounds-flareOut)
			if i > 0 {
				require.GreaterOrEqual(t, at-f.Rounds[i-1], flareGap)
			}
		}
		off := max(c.CastOn.Exact-float64(c.CastOn.N), float64(c.CastOn.N)-c.CastOn.Exact)
		if !c.CastOn.Pinned && off > float64(max(f.Step, 2))/2+1e-9 {
			require.Contains(t, codes(p), "gauntlet_girth")
		} else if len(f.Rounds) > 0 {
			wide++
		}
	}
	assert.Greater(t, wide, 100)
}

// A half-knitted gauntlet keeps its rounds and takes off the rest for another wrist, as
// many stitches at a time as before.
func TestAHalfKnittedGauntletGoesOn(t *testing.T) {
	p := must(t, cuffed(Fingerless, Gauntlet))
	was := p.Mitt().Section(stitch.Cuff).Rounds
	narrower := 0
	for at := 1; at <= p.Cuff.Rounds; at++ {
		r := cuffed(Fingerless, Gauntlet)
		r.Hand.Wrist = 140 * mm
		r.Progress = p.ProgressAt(stitch.Cuff, at)
		next := must(t, r)
		require.Equal(t, was[:at], next.Mitt().Section(stitch.Cuff).Rounds[:at], "at %d", at)
		require.Empty(t, stitch.Ledger(next.Mitt()))
		if slices.Equal(next.Cuff.Flare.Rounds[:min(4, len(next.Cuff.Flare.Rounds))], p.Cuff.Flare.Rounds) || next.Cuff.Wrist.N < p.Cuff.Wrist.N {
			narrower++
		}
		require.Equal(t, 4, next.Cuff.Flare.Step)
	}
	assert.Positive(t, narrower)
	assert.Contains(t, codes(p), "cuff_passage", "stockinette gives less than the hand needs")
	loose := cuffed(Fingerless, Gauntlet)
	loose.Hand.Wrist = 130 * mm // held wide by the hand's count
	assert.Contains(t, codes(must(t, loose)), "cuff_grip")
	assert.NotContains(t, codes(p), "cuff_grip")
}

// The gauntlet worked by hand above, from the wrist: 38 → 54, the rounds 5, 9, 13 and 17 of
// 20 counted from the other end, and an edge that ends with its two ridges.
func TestGauntletFromTheWrist(t *testing.T) {
	r := cuffed(Fingerless, Gauntlet)
	r.Make.Direction = Down
	p := must(t, r)
	cuff := p.Mitt().Section(stitch.Cuff)
	assert.Equal(t, &stitch.Shaping{Rounds: []int{4, 8, 12, 16}, From: 38, To: 54, Step: 4}, cuff.About.Shaping)
	assert.Equal(t, 38, cuff.Rounds[0].In())
	assert.Equal(t, 54, cuff.Finish.In(), "bound off at the edge")
	for i, want := range []string{"k", "p", "k", "p"} {
		assert.Equal(t, want, one(cuff.Rounds[16+i]), "round %d", 17+i)
	}
	assert.InDelta(t, 4/0.48+16/0.32, cuff.Reach(p.Gauge.Rounds), 1e-9)
}

// Half-way down a gauntlet the wrist and the rounds stay, for another girth at its edge
// and another fixed count; once the edge is begun, all of it does. Worked by hand: at round
// 10 two increases of 4 are knitted, 38 → 46, and four rounds above the edge leave room for
// two more, in its rounds 12 and 16 or before: the edge gets 46, 50 or 54.
func TestAHalfKnittedGauntletFromTheWrist(t *testing.T) {
	r := cuffed(Fingerless, Gauntlet)
	r.Make.Direction = Down
	p := must(t, r)
	was := p.Mitt().Section(stitch.Cuff).Rounds
	for at := 1; at <= p.Cuff.Rounds; at++ {
		for girth, edge := range map[units.Length]int{100 * mm: 46, 190 * mm: 46, 210 * mm: 50, 400 * mm: 54} {
			for _, pin := range []Pin{{}, Fix(47), Fix(90)} {
				next := cuffed(Fingerless, Gauntlet)
				next.Progress, next.Make.UpperGirth, next.Pins.CastOn = p.ProgressAt(stitch.Cuff, at), girth, pin
				now := must(t, next)
				m := now.Mitt()
				require.Empty(t, stitch.Ledger(m))
				require.Equal(t, was[:at], m.Section(stitch.Cuff).Rounds[:at], "at %d, %v", at, pin)
				switch {
				case at > 16:
					require.Equal(t, 54, now.Cuff.CastOn.N)
				case at == 10 && !pin.On:
					require.Equal(t, edge, now.Cuff.CastOn.N, "%v", girth)
				case at == 10 && pin.N == 47:
					require.Equal(t, 46, now.Cuff.CastOn.N)
				}
				if pin.On && now.Cuff.CastOn.N != pin.N {
					require.Contains(t, codes(now), "knitted", "what gave way is said")
				}
			}
		}
	}
}
