package mitt

import (
	"errors"
	"math"
	"math/rand/v2"
	"testing"

	"github.com/stretchr/testify/require"

	"thenar/internal/fault"
	"thenar/internal/hand"
	"thenar/internal/stitch"
	"thenar/internal/units"
)

// Requests from all over what may be asked, most of them nothing that anybody
// would knit: each is refused with its fields, or gives a mitt that is sound
// and keeps every number that was fixed.
func TestWildRequests(t *testing.T) {
	rng := rand.New(rand.NewPCG(99, 1))
	pl := New()
	planned := 0
	for range 1200 {
		r := wild(rng)
		p, err := pl.Plan(r)
		if err != nil {
			var fields fault.Fields
			require.True(t, errors.As(err, &fields), "%v for %+v", err, r)
			continue
		}
		planned++
		require.Empty(t, stitch.Ledger(p.Mitt()), "%+v", r)
		require.True(t, r.Pins.CastOn.Allows(p.Cuff.CastOn.N) && r.Pins.HandStitches.Allows(p.Body.Stitches.N) && (!p.Thumbed() || r.Pins.ThumbRounds.Allows(p.Thumb.Rounds)) &&
			r.Pins.CuffRounds.Allows(p.Cuff.Rounds) && r.Pins.CuffPlainRounds.Allows(p.Cuff.PlainRounds) && r.Pins.RoundsAboveGusset.Allows(p.Body.RoundsAbove), "%+v", r)
		require.False(t, math.IsNaN(p.Residual.Hand+p.Residual.Thumb+p.Residual.Crotch+p.Residual.GussetLength))
	}
	t.Logf("%d of 1200 planned", planned)
	require.Greater(t, planned, 300)
}

// anyIncrease is the usual way to grow a gusset, or now and then another.
func anyIncrease(rng *rand.Rand, oneSided bool) Increase {
	list := []Increase{"", "", "", MakeOne, Lifted, YoClosed, FrontAnd}
	if !oneSided {
		list = append(list, InCentre)
	}
	return list[rng.IntN(len(list))]
}

// anyCuff gives a request a rib of its own, or now and then another cuff.
func (r *Request) anyCuff(rng *rand.Rand) {
	r.Make.Cuff, r.Stitch.Knits = []CuffKind{"", "", "", RibCuff, GarterCuff, RolledCuff, HemCuff, Gauntlet}[rng.IntN(8)], 0
	if rng.IntN(3) == 0 && r.Make.Cuff.info().ribbed {
		r.Stitch.Rib = max(2, r.Stitch.Rib)
		r.Stitch.Knits = 1 + rng.IntN(r.Stitch.Rib-1)
	}
	if rng.IntN(4) == 0 && r.Make.Cuff == HemCuff {
		r.Make.CuffDepth = units.FromMM(5 + 40*rng.Float64())
	}
}

// anyTop gives a request of a closed kind the usual top, or now and then another.
func (r *Request) anyTop(rng *rand.Rand) {
	r.Make.Top, r.Make.Band, r.Make.Wedges = "", Pin{}, Pin{}
	if r.Kind.info().topped {
		r.anyTopOf(rng)
	}
}

// anyTopOf chooses how a top is closed.
func (r *Request) anyTopOf(rng *rand.Rand) {
	r.Make.Top = []TopKind{"", "", RoundedTop, PointedTop, BandedTop, WedgesTop, GatheredTop}[rng.IntN(7)]
	switch {
	case r.Make.Top == BandedTop && rng.IntN(3) > 0:
		r.Make.Band = Fix(1 + rng.IntN(MaxBand))
	case r.Make.Top == WedgesTop && rng.IntN(4) > 0:
		r.Make.Wedges = Fix(FewestWedges + rng.IntN(MaxWedge-FewestWedges+1))
	}
}

// anyPlace puts the thumb into the palm now and then.
func (r *Request) anyPlace(rng *rand.Rand) {
	if r.Make.Place, r.Make.Inset = "", (Pin{}); rng.IntN(4) > 0 {
		return
	}
	if r.Make.Place = InPalm; rng.IntN(3) == 0 {
		r.Make.Inset = Fix(rng.IntN(4))
	}
}

// anyThumb makes a mitt with a thumb by a gusset, or now and then without one.
func (r *Request) anyThumb(rng *rand.Rand) {
	if r.Kind.info().parts && rng.IntN(5) == 0 {
		r.Make.Construction = Straight
		if r.Kind == Fingerless && rng.IntN(2) == 0 {
			r.Make.Construction = Slit
			if pin := &r.Pins.GussetRounds; pin.On {
				pin.N += pin.N % 2
			}
		}
	}
}

func wild(rng *rand.Rand) *Request {
	length := func(low, high float64) units.Length {
		return units.FromMM(low * math.Pow(high/low, rng.Float64()))
	}
	maybe := func(low, high float64) units.Length {
		if rng.IntN(3) == 0 {
			return length(low, high)
		}
		return 0
	}
	h := hand.Hand{
		Circumference: length(20, 800), Wrist: maybe(10, 900), Thumb: maybe(5, 300), Length: maybe(20, 900),
		GussetLength: maybe(1, 400), ThumbLength: maybe(1, 300), WristToCrotch: maybe(1, 300), Palm: maybe(20, 900),
	}
	g := per10(3*math.Pow(40, rng.Float64()), 3*math.Pow(60, rng.Float64()))
	r := request([]Kind{Fingerless, Mitten, Thumbless}[rng.IntN(3)], g, h)
	r.Stitch = Stitches{Repeat: 1 + rng.IntN(12), Offset: rng.IntN(30) - 15, Rib: 1 + rng.IntN(9), OneSided: rng.IntN(3) == 0}
	r.Lengths = Lengths{maybe(1, 300), maybe(1, 300), maybe(1, 300), maybe(1, 300), maybe(1, 300), maybe(1, 300), 0}
	if rng.IntN(2) == 0 {
		ease := rng.Float64()*1.6 - 0.55
		r.Ease.Hand = &ease
	}
	r.Make.Increase = anyIncrease(rng, r.Stitch.OneSided)
	r.anyCuff(rng)
	r.anyTop(rng)
	r.anyPlace(rng)
	r.anyThumb(rng)
	for _, n := range Fixable() {
		if pin := r.Pins.Pin(n); pin != nil && r.may(n) && rng.IntN(12) == 0 {
			low, high := n.Range()
			*pin = Fix(low + rng.IntN(min(high-low, 60)+1))
		}
	}
	return r
}
