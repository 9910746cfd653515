package mitt

import (
	"errors"
	"math"
	"math/rand/v2"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"thenar/internal/fault"
	"thenar/internal/hand"
	"thenar/internal/stitch"
	"thenar/internal/testenv"
)

func straightRequest(kind Kind) *Request {
	r := request(kind, per10(24, 32), hand.Hand{Circumference: 190 * mm, Length: 180 * mm, Thumb: 65 * mm})
	r.Make.Construction = Straight
	return r
}

// The adult hand of the worked mitts (190 mm, 24 × 32 over 10 cm), by hand: 0.24 × 190 ×
// 1.05 = 47.9, so 48 stitches; the thumb 0.24 × (65 + 0.08 × 65 + 1.6/0.24) = 18.4, so 18
// on 9 with waste yarn; 9 + 8 + 2 = 19 less 1. Its palm with the thumb is 190 + 0.55 × 65 =
// 225.75 mm, over 48 stitches of 200 mm: 12.9 %.
func TestStraightThumb(t *testing.T) {
	for _, kind := range []Kind{Fingerless, Mitten} {
		p := must(t, straightRequest(kind))
		assert.Equal(t, 48, p.Body.Stitches.N)
		assert.Equal(t, 48, p.Bridge.HandAfter)
		assert.Equal(t, 9, p.Thumb.Held)
		assert.Equal(t, 19, p.Thumb.FirstRound)
		assert.Equal(t, 1, p.Thumb.Decreased)
		assert.Equal(t, []int{2}, p.Thumb.DecreaseRounds)
		assert.Equal(t, 18, p.Thumb.Stitches.N)
		assert.Equal(t, 1, p.Gusset.Inset)
		assert.InDelta(t, 0.129, p.MoundStretch, 0.0005)
		assert.InDelta(t, 0.05, p.Ease.Hand, 1e-9)
		assert.Equal(t, 19, p.Gusset.Rounds.N, "as many as a gusset")
		assert.NotContains(t, codes(p), "mound_stretch")

		m := p.Mitt()
		require.Empty(t, stitch.Ledger(m))
		require.Nil(t, m.Section(stitch.Gusset))
		below := m.Section(stitch.BelowThumb)
		require.Len(t, below.Rounds, 19)
		assert.True(t, below.About.Palm)
		first := m.Section(stitch.Hand).Rounds[0]
		assert.Equal(t, 48, first.In())
		assert.Equal(t, 48, first.Out())
		assert.Equal(t, times(nil, stitch.Waste, 9), first.Ops[:9])
		thumb := m.Section(stitch.Thumb)
		assert.Equal(t, []stitch.Set{"thumb above", "thumb"}, thumb.From)
		assert.Equal(t, 17, thumb.Rounds[0].In(), "9 loops below, 8 above")
		assert.Equal(t, 19, thumb.Rounds[0].Out(), "and one at each corner")
		assert.Equal(t, stitch.CornerM1, thumb.Rounds[0].Ops[9])
	}
}

// Whatever the hand, the thumb has 2w + 1 − d stitches, and lies on the palm, inset
// stitches from the side line.
func TestStraightThumbsAddUp(t *testing.T) {
	rng := rand.New(rand.NewPCG(29, 1))
	pl, odd := New(), 0
	for range testenv.Cases(300, 3_000) {
		r := likely(rng)
		r.Kind, r.Make.Construction = []Kind{Fingerless, Mitten}[rng.IntN(2)], Straight
		p, err := pl.Plan(r)
		require.NoError(t, err)
		require.Empty(t, stitch.Ledger(p.Mitt()))
		require.Empty(t, stitch.Ledger(stitch.Mirror(p.Mitt())))
		w, thumb := p.Thumb.Held, p.Thumb
		require.Equal(t, 2*w+1-thumb.Decreased, thumb.Stitches.N)
		require.Equal(t, thumb.Stitches.N/2, w)
		require.LessOrEqual(t, p.Gusset.Inset+w, p.Body.Stitches.N/2)
		require.InDelta(t, p.Hand.Palm.MM()*p.Gauge.Stitches/float64(p.Body.Stitches.N)-1, p.MoundStretch, 1e-12)
		require.Equal(t, p.MoundStretch > 0.15+1e-9, contains(codes(p), "mound_stretch"))
		odd += thumb.Stitches.N % 2
		if thumb.Stitches.N%2 == 0 {
			require.LessOrEqual(t, math.Abs(float64(thumb.Stitches.N)-thumb.Stitches.Exact), 1+1e-9, "nearest even")
		}
	}
	require.Zero(t, odd, "an odd one comes only by fixed numbers")
}

func contains(list []string, s string) bool {
	for _, one := range list {
		if one == s {
			return true
		}
	}
	return false
}

// A hand that has to stretch far over the thumb's base is told, with the count that
// would do: 225.75 mm × 0.24 ÷ 1.15 = 47.1.
func TestStretchOverTheMound(t *testing.T) {
	r := straightRequest(Mitten)
	r.Pins.HandStitches = Fix(44)
	p := must(t, r)
	assert.InDelta(t, 0.2314, p.MoundStretch, 0.0001)
	for _, w := range p.Warnings {
		if w.Code == "mound_stretch" {
			assert.Equal(t, "The hand stretches by 23.1\u00a0% over the thumb’s base, which may pull: 48 stitches would do, or a gusset.", w.Message)
		}
	}
	assert.Contains(t, codes(p), "mound_stretch")
}

// Fixed numbers that a thumb without a gusset has no use for are kept and named; the
// others hold.
func TestStraightThumbsFixedNumbers(t *testing.T) {
	r := straightRequest(Fingerless)
	free := must(t, r)
	r.Pins.GussetBase, r.Pins.Bridge, r.Pins.PickedUp, r.Pins.Rhythm = Fix(3), Fix(4), Fix(5), []int{3}
	p := must(t, r)
	assert.Equal(t, free.Mitt(), p.Mitt())
	for _, w := range p.Warnings {
		if w.Code == "pins_without_effect" {
			assert.Equal(t, "A thumb without a gusset has no use for these fixed numbers; they are kept: gusset base, bridge, picked up, rhythm.", w.Message)
		}
	}
	assert.Contains(t, codes(p), "pins_without_effect")

	for name, c := range map[string]struct {
		pins    Pins
		w, d, t int
	}{
		"held":             {Pins{Held: Fix(7)}, 7, 1, 14},
		"no decrease":      {Pins{ThumbDecreases: Fix(0)}, 9, 0, 19},
		"two decreases":    {Pins{ThumbDecreases: Fix(2)}, 10, 2, 19},
		"an odd thumb":     {Pins{ThumbStitches: Fix(17)}, 8, 0, 17},
		"held and thumb":   {Pins{Held: Fix(9), ThumbStitches: Fix(17)}, 9, 2, 17},
		"rounds to it":     {Pins{GussetRounds: Fix(23)}, 9, 1, 18},
		"thumb and corner": {Pins{ThumbStitches: Fix(20), ThumbDecreases: Fix(1)}, 10, 1, 20},
	} {
		r := straightRequest(Mitten)
		r.Pins = c.pins
		p := must(t, r)
		assert.Equal(t, []int{c.w, c.d, c.t}, []int{p.Thumb.Held, p.Thumb.Decreased, p.Thumb.Stitches.N}, name)
		assert.Equal(t, c.pins.GussetRounds.Or(19), p.Gusset.Rounds.N, name)
	}
	r = straightRequest(Mitten)
	r.Pins.GussetRounds, r.Pins.RoundsAboveGusset = Fix(23), Fix(20)
	p = must(t, r)
	var moved []string
	for _, c := range New().PinCosts(r, p) {
		for _, ch := range c.Changes {
			moved = append(moved, ch.Place.Words(p))
		}
	}
	assert.Equal(t, []string{"length to the thumb", "length above the thumb"}, moved)

	r = straightRequest(Mitten)
	r.Pins = Pins{Held: Fix(9), ThumbStitches: Fix(24)}
	_, err := New().Plan(r)
	var fields fault.Fields
	require.True(t, errors.As(err, &fields), "%v", err)
	require.True(t, fields.Has("pins.held") && fields.Has("pins.thumb_stitches"), "%v", err)
	for _, f := range fields {
		if f.Path == "pins.thumb_stitches" {
			assert.Equal(t, "19", f.Works)
		}
	}
	r = straightRequest(Mitten)
	r.Make.Inset = Fix(20)
	_, err = New().Plan(r)
	require.True(t, errors.As(err, &fields), "%v", err)
	assert.Equal(t, PathInset, fields[0].Path)
	assert.Equal(t, "15", fields[0].Works, "24 of the palm less 9")
}

// A thumb that is begun without a gusset stays so, and the other way round; below it
// either can still be chosen.
func TestStraightThumbOnTheNeedlesStays(t *testing.T) {
	for _, c := range []struct {
		was, is Construction
		part    stitch.Part
		refused bool
	}{
		{Straight, ByGusset, stitch.CuffPlain, false},
		{ByGusset, Straight, stitch.CuffPlain, false},
		{Straight, ByGusset, stitch.BelowThumb, true},
		{ByGusset, Straight, stitch.Gusset, true},
		{Straight, ByGusset, stitch.Hand, true},
		{ByGusset, Straight, stitch.Thumb, true},
	} {
		r := straightRequest(Fingerless)
		r.Make.Construction = c.was
		p := must(t, r)
		r.Make.Construction, r.Progress = c.is, p.ProgressAt(c.part, 3)
		_, err := New().Plan(r)
		if !c.refused {
			require.NoError(t, err, "%v", c)
			continue
		}
		var fields fault.Fields
		require.True(t, errors.As(err, &fields), "%v", c)
		assert.Equal(t, PathConstruction, fields[0].Path)
		assert.Equal(t, string(c.was), fields[0].Works)
	}
}
