package mitt

import (
	"errors"
	"math/rand/v2"
	"slices"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"thenar/internal/fault"
	"thenar/internal/hand"
	"thenar/internal/stitch"
	"thenar/internal/units"
)

// A baby's mitten, worked by hand from the definitions: hand 105 mm round and
// 90 mm long at 24 × 32. The palm with the thumb is 105 + 0.55 × 0.34 × 105 =
// 124.635 mm, and the mitten goes round it: 0.24 × 1.05 × 124.635 = 31.4, so 32
// stitches. The top: 32 − 8 = 24, six rounds of four; max(0.32 × (0.19 × 90 +
// 5), 9) = 9 rounds. Above the cuff 0.32 × 95 = 30.4, less the top 21. The cuff
// grips: 0.32 × (0.33 × 90 + 8) = 12.06 rounds of rib, and no plain ones, over
// 0.24 × 0.90 × 105 = 22.7, so 22 stitches.
func TestBabyMitten(t *testing.T) {
	r := request(Thumbless, per10(24, 32), hand.Hand{Circumference: 105 * mm, Length: 90 * mm})
	p, err := New().Plan(r)
	require.NoError(t, err)
	assert.InDelta(t, 1.05*124.635/105-1, p.Ease.Hand, 1e-9)
	assert.Equal(t, 32, p.Body.Stitches.N)
	assert.Equal(t, 32, p.Bridge.HandAfter)
	assert.Equal(t, 9, p.Top.Rounds)
	assert.Len(t, p.Top.DecreaseRounds, 6)
	assert.Equal(t, 8, p.Top.End)
	assert.Equal(t, 21, p.Body.RoundsAbove)
	assert.Equal(t, 12, p.Cuff.Rounds)
	assert.Zero(t, p.Cuff.PlainRounds)
	assert.Equal(t, 22, p.Cuff.CastOn.N)
	var parts []stitch.Part
	for _, s := range p.Mitt().Sections {
		parts = append(parts, s.Part)
	}
	assert.Equal(t, []stitch.Part{stitch.Cuff, stitch.Hand, stitch.Top}, parts)
	assert.Empty(t, stitch.Ledger(p.Mitt()))
	for _, f := range p.Filled {
		assert.NotEqual(t, hand.FieldThumbLength, f.Field, "nothing is filled that has no part in it")
	}
	for _, w := range p.Warnings {
		assert.NotEqual(t, "thumbless", w.Code)
	}
	assert.Contains(t, codes(p), "baby")

	r.Kind = Mitten
	p, err = New().Plan(r)
	require.NoError(t, err)
	assert.Contains(t, codes(p), "thumbless", "with a thumb the one without is offered")
}

// Fixed numbers of the thumb are kept and named once; they change nothing.
func TestPinsWithoutEffect(t *testing.T) {
	r := request(Thumbless, per10(24, 32), hand.Hand{Circumference: 105 * mm, Length: 90 * mm})
	free, err := New().Plan(r)
	require.NoError(t, err)
	r.Pins.Held, r.Pins.Rhythm, r.Pins.RoundsAboveGusset = Fix(9), []int{3}, Fix(20)
	pl := New()
	p, err := pl.Plan(r)
	require.NoError(t, err)
	assert.Equal(t, 20, p.Body.RoundsAbove)
	assert.Equal(t, free.Top, p.Top)
	assert.Contains(t, codes(p), "pins_without_effect")
	costs := pl.PinCosts(r, p)
	require.Len(t, costs, 1)
	assert.Equal(t, RoundsAboveGusset, costs[0].Number)
	assert.Equal(t, "21", costs[0].Free)
	assert.InDelta(t, 0.4/0.32, -free.Off[PlaceHandLength], 1e-9, "30.4 rounds less 9 and 21")
	require.Len(t, costs[0].Changes, 1)
	assert.Equal(t, "length above the cuff", costs[0].Changes[0].Place.Words(p))
	for _, n := range Fixable() {
		assert.Equal(t, p.without(n), p.Number(n) == "", "%s", n)
	}
}

// What is said of a mitten without a thumb, worked by hand: only what makes
// the palm with the thumb inside is filled of the thumb. The plan has no
// gusset, no thumb and no bridge.
func TestNoThumbIsPlanned(t *testing.T) {
	r := request(Thumbless, per10(24, 32), hand.Hand{Circumference: 105 * mm, Length: 90 * mm})
	p := must(t, r)
	assert.False(t, p.Thumbed())
	assert.Zero(t, p.Gusset)
	assert.Zero(t, p.Thumb)
	assert.Equal(t, Bridge{HandAfter: 32}, p.Bridge)
	var told []string
	for _, f := range p.Filled {
		told = append(told, f.Field)
	}
	for _, d := range p.Defaults {
		told = append(told, d.Field)
	}
	assert.Equal(t, []string{
		hand.FieldWrist, hand.FieldThumb, hand.FieldGussetLength, hand.FieldWristToCrotch, hand.FieldPalm, "ease.hand", "ease.cuff", "length.cuff", "length.cuff_plain", "length.above_gusset",
	}, told)
}

// A hand shorter than its top leaves one round above the cuff, in which an odd
// stitch goes: 0.24 × 1.05 × 1.187 × 163 = 48.8, so 49 stitches, and (48 − 8)/4
// = 10 decrease rounds need 15 of the 8 that 0.32 × (20 + 5) gives.
func TestOneRoundAboveTheCuff(t *testing.T) {
	r := request(Thumbless, per10(24, 32), hand.Hand{Circumference: 163 * mm, Length: 20 * mm})
	r.Stitch = Stitches{Repeat: 1, Rib: 1}
	p := must(t, r)
	assert.Equal(t, 49, p.Body.Stitches.N)
	assert.Equal(t, 15, p.Top.Rounds)
	assert.Equal(t, 1, p.Body.RoundsAbove)
	assert.Empty(t, stitch.Ledger(p.Mitt()))
}

// Whatever is fixed: a sound mitten that keeps it, or a refusal that names the
// rounds of the top, which happens exactly where they are too few to close
// the hand four stitches at a time.
func TestThumblessKeepsItsPins(t *testing.T) {
	rng := rand.New(rand.NewPCG(3, 95))
	pl := New()
	refused := 0
	for range 2000 {
		r := request(Thumbless, per10(18+18*rng.Float64(), 24+24*rng.Float64()), hand.Hand{
			Circumference: units.FromMM(80 + 140*rng.Float64()), Length: units.FromMM(70 + 120*rng.Float64()),
		})
		for _, n := range Fixable() {
			if pin := r.Pins.Pin(n); pin != nil && rng.IntN(5) == 0 {
				low, high := n.Range()
				*pin = Fix(low + rng.IntN(min(high-low, 40)+1))
			}
		}
		if rng.IntN(5) == 0 {
			r.Pins.Rhythm = []int{2 + rng.IntN(4)}
		}
		p, err := pl.Plan(r)
		if err != nil {
			var fields fault.Fields
			require.True(t, errors.As(err, &fields), "%v", err)
			if fields.Has("pins.top_rounds") {
				refused++
				n := r.Pins.HandStitches.Or(1000)
				require.Greater(t, n, 4*r.Pins.TopRounds.N+11)
				trial := *r
				require.NotEmpty(t, fields[0].Works)
				trial.Pins.set(TopRounds, fields[0].Works)
				_, err := pl.Plan(&trial)
				require.NoError(t, err)
				trial.Pins.TopRounds.N--
				_, err = pl.Plan(&trial)
				require.Error(t, err, "one round less closes nothing")
			}
			continue
		}
		require.Empty(t, stitch.Ledger(p.Mitt()), "%+v", r.Pins)
		require.True(t, r.Pins.CastOn.Allows(p.Cuff.CastOn.N) && r.Pins.HandStitches.Allows(p.Body.Stitches.N) &&
			r.Pins.CuffRounds.Allows(p.Cuff.Rounds) && r.Pins.CuffPlainRounds.Allows(p.Cuff.PlainRounds) &&
			r.Pins.TopRounds.Allows(p.Top.Rounds) && r.Pins.RoundsAboveGusset.Allows(p.Body.RoundsAbove))
		useless := slices.ContainsFunc(r.Pins.fixed(), func(n Number) bool { return !p.has(n) && table[n].needs != withTop })
		require.Equal(t, useless, slices.Contains(codes(p), "pins_without_effect"))
	}
	require.Positive(t, refused)
}

// A fixed number of no use hides no warning: 0.24 × 1.05 × 1.187 × 25 = 7.5
// stitches are wanted, and 8 are the least.
func TestUselessPinsHideNothing(t *testing.T) {
	r := request(Thumbless, per10(24, 32), hand.Hand{Circumference: 25 * mm, Length: 90 * mm})
	r.Stitch = Stitches{Repeat: 1, Rib: 1}
	r.Pins.Bridge, r.Pins.GussetBase = Fix(3), Fix(3)
	p := must(t, r)
	assert.Equal(t, 8, p.Body.Stitches.N)
	assert.Contains(t, codes(p), "hand_count")
}
