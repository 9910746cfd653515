package mitt

import (
	"errors"
	"math/rand/v2"
	"reflect"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"thenar/internal/fault"
	"thenar/internal/hand"
	"thenar/internal/stitch"
	"thenar/internal/testenv"
	"thenar/internal/units"
)

// possible tells by brute force whether any base, increases, bridge, pick-up
// and decreases keep all pins: loops over the definitions, no search order.
// free is the plan without pins.
func possible(r *Request, p *Pins, free *Plan) bool {
	n := p.HandStitches.Or(free.Body.Stitches.N)
	rounds := p.GussetRounds.Or(max(nearest(free.Gusset.Rounds.Exact), 2))
	corners := min(4, 2*(p.ThumbRounds.Or(free.Thumb.Rounds)-1))
	o, step := p.KeptOnHand.Or(0), r.Stitch.step()
	for c := 0; c <= 10; c++ {
		for b := 1; b <= 8 && b < n; b++ {
			if !p.GussetBase.Allows(b) || !p.Bridge.Allows(c) || (c == 0 && !p.Bridge.On && b != o) || !closable(r, p, n, b, n-b+o+c) {
				continue
			}
			for k := 1; k <= rounds; k++ {
				m := b + step*k - o
				if o > step*k || m < 1 || !p.Increases.Allows(k) || !p.Held.Allows(m) || !schedulable(p, k, rounds) {
					continue
				}
				for pick := c; pick <= c+2; pick++ {
					for d := 0; d <= corners; d++ {
						if t := m + pick - d; t >= 1 && p.PickedUp.Allows(pick) && p.ThumbDecreases.Allows(d) && p.ThumbStitches.Allows(t) {
							return true
						}
					}
				}
			}
		}
	}
	return false
}

// schedulable reports whether the fixed list, or some schedule of k increase
// rounds from the fixed first one on, has room in the rounds.
func schedulable(p *Pins, k, rounds int) bool {
	first := p.FirstIncrease.Or(1)
	every := []int{2}
	if len(p.Rhythm) > 0 {
		every = p.Rhythm
	}
	if list := p.IncreaseRounds; len(list) > 0 {
		if len(list) != k || list[k-1] > rounds || !p.FirstIncrease.Allows(list[0]) {
			return false
		}
		return len(p.Rhythm) == 0 || reflect.DeepEqual(everyOf(list[0], k, every), list)
	}
	return everyOf(first, k, every)[k-1] <= rounds-1
}

// closable reports whether a mitten's fixed rounds can close its hand: four
// stitches a round from the even count to 8 … 11, an odd one gone before.
func closable(r *Request, p *Pins, n, b, after int) bool {
	if r.Kind != Mitten {
		return true
	}
	if p.RoundsAboveGusset.On && p.RoundsAboveGusset.N == 1 && after%2 == 1 && n-b < 2 {
		return false
	}
	needed := 0
	for left := after - after%2; left >= 12; left -= 4 {
		needed++
	}
	return !p.TopRounds.On || needed <= p.TopRounds.N
}

// everyOf lists k increase rounds from a first one with the intervals in turn.
func everyOf(first, k int, rhythm []int) []int {
	var rounds []int
	for at := first; len(rounds) < k; {
		rounds = append(rounds, at)
		at += rhythm[(len(rounds)-1)%len(rhythm)]
	}
	return rounds
}

// drawPins fixes some numbers at random, near enough to clash now and then.
func drawPins(rng *rand.Rand) Pins {
	var p Pins
	fix := func(pin *Pin, low, high int) {
		if rng.IntN(4) == 0 {
			*pin = Fix(low + rng.IntN(high-low+1))
		}
	}
	fix(&p.GussetBase, 1, 8)
	fix(&p.Increases, 1, 12)
	fix(&p.GussetRounds, 2, 26)
	fix(&p.Held, 5, 24)
	fix(&p.Bridge, 0, 10)
	fix(&p.PickedUp, 0, 12)
	fix(&p.ThumbStitches, 8, 26)
	fix(&p.ThumbDecreases, 0, 4)
	fix(&p.TopRounds, 4, 16)
	if rng.IntN(8) == 0 {
		p.HandStitches = Fix(30 + rng.IntN(30))
	}
	if rng.IntN(8) == 0 {
		p.ThumbRounds = Fix(1 + rng.IntN(12))
	}
	if rng.IntN(4) == 0 {
		p.KeptOnHand = Fix(rng.IntN(4))
	}
	if rng.IntN(6) == 0 {
		p.FirstIncrease = Fix(1 + rng.IntN(8))
	}
	if rng.IntN(6) == 0 {
		for r := 1 + rng.IntN(3); r < 24 && rng.IntN(9) > 0; r += 1 + rng.IntN(5) {
			p.IncreaseRounds = append(p.IncreaseRounds, r)
		}
	}
	if rng.IntN(5) == 0 {
		p.Rhythm = []int{2 + rng.IntN(3)}
		if rng.IntN(2) == 0 {
			p.Rhythm = append(p.Rhythm, 2+rng.IntN(3))
		}
	}
	return p
}

// named are the pins in the way by definition: a pin that turns some set of
// the others that can be kept into one that can't.
func named(r *Request, free *Plan) []string {
	c := newConflict(&draft{req: r, pins: &r.Pins}, nil)
	can := make([]bool, 1<<len(c.names))
	for set := range can {
		pins := c.only(uint(set))
		can[set] = possible(r, &pins, free)
	}
	var in []string
	for i, n := range c.names {
		for set := range can {
			if set&(1<<i) == 0 && can[set] && !can[set|1<<i] {
				in = append(in, n.Path())
				break
			}
		}
	}
	return in
}

// Numbers fixed at random on 10,000 sheets are kept exactly when brute force
// finds a way; otherwise the refusal names every fixed number that is in the
// way, and no other. What is made is sound.
func TestPinsAreKeptOrRefused(t *testing.T) {
	rng := rand.New(rand.NewPCG(4, 44))
	pl := New()
	kept, refused, cases := 0, 0, testenv.Cases(1_000, 10_000)
	for range cases {
		r := request([]Kind{Fingerless, Mitten}[rng.IntN(2)], per10(20+float64(rng.IntN(10)), 30), hand.Hand{Circumference: units.FromMM(160 + 60*rng.Float64())})
		free, err := pl.Plan(r)
		require.NoError(t, err)
		r.Pins = drawPins(rng)
		if rng.IntN(6) == 0 {
			r.Stitch.OneSided = true
		}
		p, err := pl.Plan(r)
		if !possible(r, &r.Pins, free) {
			var fields fault.Fields
			require.True(t, errors.As(err, &fields), "%+v should be refused", r.Pins)
			refused++
			if refused%20 == 0 {
				require.ElementsMatch(t, named(r, free), paths(fields), "%+v", r.Pins)
			}
			continue
		}
		require.NoError(t, err, "%+v", r.Pins)
		kept++
		require.Empty(t, stitch.Ledger(p.Mitt()), "%+v", r.Pins)
		requireKept(t, &r.Pins, p)
	}
	t.Logf("%d kept, %d refused", kept, refused)
	assert.Greater(t, kept, cases/10)
	assert.Greater(t, refused, cases/10)
}

func paths(fields fault.Fields) []string {
	var out []string
	for _, f := range fields {
		out = append(out, f.Path)
	}
	return out
}

func requireKept(t *testing.T, pins *Pins, p *Plan) {
	t.Helper()
	for _, c := range []struct {
		pin Pin
		n   int
	}{
		{pins.CastOn, p.Cuff.CastOn.N},
		{pins.CuffRounds, p.Cuff.Rounds},
		{pins.CuffPlainRounds, p.Cuff.PlainRounds},
		{pins.HandStitches, p.Body.Stitches.N},
		{pins.GussetBase, p.Gusset.Base},
		{pins.Increases, p.Gusset.Increases},
		{pins.GussetRounds, p.Gusset.Rounds.N},
		{pins.KeptOnHand, p.Gusset.Kept},
		{pins.Held, p.Thumb.Held},
		{pins.Bridge, p.Bridge.CastOn},
		{pins.RoundsAboveGusset, p.Body.RoundsAbove},
		{pins.PickedUp, p.Thumb.PickedUp},
		{pins.ThumbDecreases, p.Thumb.Decreased},
		{pins.ThumbStitches, p.Thumb.Stitches.N},
		{pins.ThumbRounds, p.Thumb.Rounds},
	} {
		require.True(t, c.pin.Allows(c.n), "%d in the place of %d: %+v", c.n, c.pin.N, *pins)
	}
	if p.Top != nil {
		require.True(t, pins.TopRounds.Allows(p.Top.Rounds), "%+v", *pins)
	}
	if len(pins.Rhythm) > 0 && len(pins.IncreaseRounds) == 0 {
		require.Equal(t, everyOf(pins.FirstIncrease.Or(1), p.Gusset.Increases, pins.Rhythm), p.Gusset.IncreaseRounds)
	}
	if len(pins.IncreaseRounds) > 0 {
		require.Equal(t, pins.IncreaseRounds, p.Gusset.IncreaseRounds)
	}
	require.True(t, pins.FirstIncrease.Allows(p.Gusset.IncreaseRounds[0]), "%+v", *pins)
}

// A refusal names every number in the way, and one that would work.
func TestRefusalNamesTheNearest(t *testing.T) {
	r := request(Fingerless, per10(24, 32), hand.Hand{Circumference: 190 * mm})
	r.Pins = Pins{Increases: Fix(9), GussetRounds: Fix(10), GussetBase: Fix(3)}
	_, err := New().Plan(r)
	var fields fault.Fields
	require.ErrorAs(t, err, &fields)
	require.Len(t, fields, 2, "the base is not in the way: %v", fields)
	assert.Contains(t, fields.Error(), "pins.increases: 9 can't stand together with the rest of: increases 9, gusset_rounds 10; with the others kept, 5 would work")
	assert.Contains(t, fields.Error(), "pins.gusset_rounds: 10 can't stand together with the rest of: increases 9, gusset_rounds 10; with the others kept, 18 would work")
}

func TestCastOnThatCannotJoin(t *testing.T) {
	r := request(Fingerless, per10(24, 32), hand.Hand{Circumference: 190 * mm})
	r.Pins = Pins{CastOn: Fix(20)}
	_, err := New().Plan(r)
	require.ErrorContains(t, err, "pins.cast_on: is 20; one round can bring 22 to 88 stitches to the hand's 44")
	r.Pins = Pins{CastOn: Fix(88)}
	must(t, r)
	r.Pins = Pins{CastOn: Fix(40), CuffRounds: Fix(0), CuffPlainRounds: Fix(0)}
	_, err = New().Plan(r)
	require.ErrorContains(t, err, "without a round of cuff the cast-on is the hand's 44")
}

// Two conflicts that have nothing to do with each other are both named, and
// since no single number mends them, numbers that work together are.
func TestRefusalNamesTwoConflicts(t *testing.T) {
	r := request(Mitten, per10(24, 32), hand.Hand{Circumference: 190 * mm})
	r.Pins = Pins{Increases: Fix(9), GussetRounds: Fix(10), HandStitches: Fix(64), TopRounds: Fix(9)}
	_, err := New().Plan(r)
	var fields fault.Fields
	require.ErrorAs(t, err, &fields)
	assert.ElementsMatch(t, []string{"pins.increases", "pins.gusset_rounds", "pins.hand_stitches", "pins.top_rounds"}, paths(fields))
	assert.Contains(t, fields.Error(), "what works together is: ")
}

// The rounds of the top may ask for another base and bridge: 7 decrease
// rounds close 39 stitches at the most, 8 and 1 in the place of 44's own.
func TestTopRoundsAreKept(t *testing.T) {
	r := request(Mitten, per10(24, 32), hand.Hand{Circumference: 190 * mm, Length: 180 * mm})
	r.Pins = Pins{HandStitches: Fix(44), TopRounds: Fix(7)}
	p := must(t, r)
	assert.Equal(t, 7, p.Top.Rounds)
	assert.LessOrEqual(t, p.Bridge.HandAfter, 39)
	r.Pins.TopRounds = Fix(6)
	_, err := New().Plan(r)
	require.ErrorContains(t, err, "pins.top_rounds: 6 doesn't go with this hand and swatch; 7 would work",
		"48, which is what the hand would have, is no better than 44")
}
