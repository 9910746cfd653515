package mitt

import (
	"errors"
	"math/rand/v2"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"thenar/internal/fault"
	"thenar/internal/hand"
	"thenar/internal/stitch"
	"thenar/internal/units"
)

// possible tells by brute force whether any base, increases, bridge, pick-up
// and decreases keep all pins: loops over the definitions, no search order.
func possible(r *Request, free *Plan) bool {
	p := &r.Pins
	n := p.HandStitches.Or(free.Body.Stitches.N)
	rounds := p.GussetRounds.Or(max(nearest(free.Gusset.Rounds.Exact), 2))
	thumbRounds := p.ThumbRounds.Or(free.Thumb.Rounds)
	for b := 1; b <= 8 && b < n; b++ {
		for k := 1; k <= rounds; k++ {
			if 1+2*(k-1) > rounds-1 || (len(p.Rhythm) > 0 && lastInRhythm(k, p.Rhythm) > rounds-1) {
				continue
			}
			o := p.KeptOnHand.Or(0)
			m := b + 2*k - o
			for c := 0; c <= 10; c++ {
				if c == 0 && !p.Bridge.On && b != o {
					continue
				}
				for pick := c; pick <= c+2; pick++ {
					for d := 0; d <= min(4, 2*(thumbRounds-1)); d++ {
						t := m + pick - d
						if o <= 2*k && m >= 1 && t >= 1 && p.GussetBase.Allows(b) && p.Increases.Allows(k) && p.Held.Allows(m) &&
							p.Bridge.Allows(c) && p.PickedUp.Allows(pick) && p.ThumbDecreases.Allows(d) && p.ThumbStitches.Allows(t) {
							return true
						}
					}
				}
			}
		}
	}
	return false
}

func lastInRhythm(k int, rhythm []int) int {
	rounds := inRhythm(k, rhythm)
	return rounds[len(rounds)-1]
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
	if rng.IntN(4) == 0 {
		p.KeptOnHand = Fix(rng.IntN(4))
	}
	if rng.IntN(5) == 0 {
		p.Rhythm = []int{2 + rng.IntN(3)}
		if rng.IntN(2) == 0 {
			p.Rhythm = append(p.Rhythm, 2+rng.IntN(3))
		}
	}
	return p
}

// Numbers fixed at random are kept exactly when brute force finds a way;
// otherwise the refusal names fixed numbers only, and what is made is sound.
func TestPinsAreKeptOrRefused(t *testing.T) {
	rng := rand.New(rand.NewPCG(4, 44))
	pl := New()
	kept, refused := 0, 0
	for range 800 {
		r := request([]Kind{Fingerless, Mitten}[rng.IntN(2)], per10(20+float64(rng.IntN(10)), 30), hand.Hand{Circumference: units.FromMM(160 + 60*rng.Float64())})
		free, err := pl.Plan(r)
		require.NoError(t, err)
		r.Pins = drawPins(rng)
		p, err := pl.Plan(r)
		if !possible(r, free) {
			var fields fault.Fields
			require.True(t, errors.As(err, &fields), "%+v should be refused", r.Pins)
			for _, f := range fields {
				require.Contains(t, f.Path, "pins.")
			}
			refused++
			continue
		}
		require.NoError(t, err, "%+v", r.Pins)
		kept++
		require.Empty(t, stitch.Ledger(p.Mitt()), "%+v", r.Pins)
		assert.True(t, r.Pins.GussetBase.Allows(p.Gusset.Base))
		assert.True(t, r.Pins.Increases.Allows(p.Gusset.Increases))
		assert.True(t, r.Pins.GussetRounds.Allows(p.Gusset.Rounds.N))
		assert.True(t, r.Pins.Held.Allows(p.Thumb.Held))
		assert.True(t, r.Pins.Bridge.Allows(p.Bridge.CastOn))
		assert.True(t, r.Pins.PickedUp.Allows(p.Thumb.PickedUp))
		assert.True(t, r.Pins.ThumbStitches.Allows(p.Thumb.Stitches.N))
		assert.True(t, r.Pins.ThumbDecreases.Allows(p.Thumb.Decreased))
		assert.True(t, r.Pins.KeptOnHand.Allows(p.Gusset.Kept))
		if len(r.Pins.Rhythm) > 0 {
			assert.Equal(t, inRhythm(p.Gusset.Increases, r.Pins.Rhythm), p.Gusset.IncreaseRounds)
		}
	}
	t.Logf("%d kept, %d refused", kept, refused)
	assert.Greater(t, kept, 80)
	assert.Greater(t, refused, 80)
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
