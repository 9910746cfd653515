package mitt

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"thenar/internal/gauge"
	"thenar/internal/hand"
	"thenar/internal/stitch"
	"thenar/internal/units"
)

const mm = units.Millimetre

// per10 is a gauge of stitches and rounds over 10 cm.
func per10(stitches, rounds float64) gauge.Gauge {
	return gauge.Gauge{Stitches: stitches / 100, Rounds: rounds / 100, Treated: true, Used: 1}
}

func request(kind Kind, g gauge.Gauge, h hand.Hand) *Request {
	return &Request{Kind: kind, Gauge: g, Hand: h, Stitch: Stitches{Repeat: 2, Rib: 2}}
}

func must(t *testing.T, r *Request) *Plan {
	t.Helper()
	p, err := New().Plan(r)
	require.NoError(t, err)
	require.Empty(t, stitch.Ledger(p.Mitt()))
	return p
}

// Three mitts worked by hand with this package's own rules and weights
// (common practice, no source).
func TestWorkedMitts(t *testing.T) {
	ease := -0.05
	for name, c := range map[string]struct {
		req                                                 *Request
		hand, base, gusset, rounds, bridge, pick, t0, thumb int
		increases                                           []int
	}{
		"child's mitten": {
			request(Mitten, per10(20, 28), hand.Hand{Circumference: 142 * mm, Length: 127 * mm, Thumb: 48 * mm}),
			30, 3, 9, 12, 3, 4, 13, 12,
			[]int{1, 5, 9},
		},
		"adult, fingerless": {
			request(Fingerless, per10(24, 32), hand.Hand{Circumference: 190 * mm, Length: 180 * mm, Thumb: 65 * mm}),
			44, 3, 15, 19, 3, 4, 19, 18,
			[]int{1, 4, 7, 10, 13, 16},
		},
		"large hand, palm measured": {
			&Request{
				Kind: Fingerless, Gauge: per10(30, 42), Stitch: Stitches{Repeat: 2, Rib: 2},
				Hand: hand.Hand{Circumference: 235 * mm, Length: 205 * mm, Thumb: 80 * mm, Palm: 279 * mm},
				Ease: Ease{Hand: &ease, ThumbAdded: 12 * mm},
			},
			66, 4, 22, 28, 4, 6, 28, 28,
			[]int{1, 4, 7, 10, 13, 16, 19, 22, 25},
		},
	} {
		t.Run(name, func(t *testing.T) {
			p := must(t, c.req)
			assert.Equal(t, c.hand, p.Body.Stitches.N, "hand")
			assert.Equal(t, c.base, p.Gusset.Base, "base")
			assert.Equal(t, c.gusset, p.Gusset.Stitches, "gusset")
			assert.Equal(t, c.rounds, p.Gusset.Rounds.N, "rounds")
			assert.Equal(t, c.increases, p.Gusset.IncreaseRounds, "increase rounds")
			assert.Equal(t, c.bridge, p.Bridge.CastOn, "bridge")
			assert.Equal(t, c.hand, p.Bridge.HandAfter, "hand after")
			assert.Equal(t, c.gusset, p.Thumb.Held, "held")
			assert.Equal(t, c.pick, p.Thumb.PickedUp, "picked up")
			assert.Equal(t, c.t0, p.Thumb.FirstRound, "first round of the thumb")
			assert.Equal(t, c.thumb, p.Thumb.Stitches.N, "thumb")
		})
	}
}

// Half-way goes to the larger count, whatever floating point makes of the
// product: 145 mm at 20 stitches over 10 cm are 29, half-way between 28 and 30.
func TestTiesGoToTheLarger(t *testing.T) {
	for tenths := 1000; tenths < 2600; tenths++ {
		for _, per := range []int{14, 20, 22, 24, 28, 30, 36} {
			if product := tenths * per; product%2000 == 1000 { // an odd count, exactly
				ease := 0.0
				r := request(Fingerless, per10(float64(per), 30), hand.Hand{Circumference: units.Length(tenths) * 100})
				r.Ease.Hand = &ease
				p := must(t, r)
				assert.Equal(t, product/1000+1, p.Body.Stitches.N, "%d mm/10 at %d", tenths, per)
			}
		}
	}
}

// A wrist wider than the hand's count allows for is said to be tight.
func TestTightCuffIsSaid(t *testing.T) {
	r := request(Fingerless, per10(24, 32), hand.Hand{Circumference: 195 * mm, Wrist: 210 * mm})
	assert.Contains(t, codes(must(t, r)), "cuff_tight")
	r.Hand.Wrist = 160 * mm
	assert.NotContains(t, codes(must(t, r)), "cuff_tight")
}
