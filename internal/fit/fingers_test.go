package fit

import (
	"math"
	"math/rand/v2"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"thenar/internal/gauge"
	"thenar/internal/hand"
	"thenar/internal/mitt"
	"thenar/internal/stitch"
	"thenar/internal/units"
)

// Every finger is compared with its own girth and the room added to it, 0.02 of it and
// 1.6 stitches; a tip with as much of it as its stitches are. The little finger begins
// where the hand ended, the others where the upper hand did. Worked by hand from the
// definitions.
func TestFingersOfAGlove(t *testing.T) {
	p, list := rows(t, mitt.Glove)
	hands := ofPart(list, stitch.Hand)
	top := hands[len(hands)-1].AboveCastOn
	upper := ofPart(list, stitch.UpperHand)
	require.NotEmpty(t, upper)
	assert.InDelta(t, top+3.125, upper[0].AboveCastOn, 1e-9, "the upper hand stands on the hand, not on the finger")
	assert.InDelta(t, top+3.125, ofPart(list, stitch.Little)[0].AboveCastOn, 1e-9)
	parted := top + float64(len(upper))*3.125
	for _, part := range []stitch.Part{stitch.Ring, stitch.Middle, stitch.Index} {
		assert.InDelta(t, parted+3.125, ofPart(list, part)[0].AboveCastOn, 1e-9, part.Words())
	}
	for part, girth := range map[stitch.Part]float64{stitch.Index: .324, stitch.Middle: .328, stitch.Ring: .306, stitch.Little: .271} {
		girth = math.Round(girth * 190) // it is filled in whole mm
		of := ofPart(list, part)
		assert.InDelta(t, girth, of[0].Body, 1, part.Words())
		girth = of[0].Body
		assert.InDelta(t, girth*1.02+1.6/.24, of[0].Wanted, 1e-9, part.Words())
		f, ok := mitt.FingerOf(part)
		require.True(t, ok)
		n := p.Fingers.Each[f].FirstRound
		assert.InDelta(t, float64(n)/.24, of[0].Fabric, 1e-9)
		tip := of[len(of)-1]
		left := tip.Fabric * .24
		assert.Less(t, left, float64(n))
		assert.InDelta(t, girth*left/float64(n), tip.Body, 1e-9)
	}
}

// Without a little finger that is lower, all begin where the hand ended.
func TestFingersThatPartLevel(t *testing.T) {
	p, err := mitt.New().Plan(&mitt.Request{
		Kind: mitt.Glove, Gauge: gauge.Gauge{Stitches: .24, Rounds: .32}, Make: mitt.Make{Level: true},
		Hand: hand.Hand{Circumference: 190 * mm}, Stitch: mitt.Stitches{Repeat: 2, Rib: 2},
	})
	require.NoError(t, err)
	list, err := Rows(p, p.Mitt(), DefaultBands)
	require.NoError(t, err)
	hands := ofPart(list, stitch.Hand)
	for _, part := range []stitch.Part{stitch.Little, stitch.Ring, stitch.Middle, stitch.Index} {
		assert.InDelta(t, hands[len(hands)-1].AboveCastOn+3.125, ofPart(list, part)[0].AboveCastOn, 1e-9, part.Words())
	}
}

// Four round sticks of one breadth in a row take a cord of 6 breadths and once round,
// three of them 4 and once round (plane geometry).
func TestWithoutTheLittleFinger(t *testing.T) {
	f := hand.Fingers{Girth: [4]units.Length{60 * mm, 60 * mm, 60 * mm, 60 * mm}}
	assert.InDelta(t, (4+math.Pi)/(6+math.Pi), f.WithoutLittle(), 1e-12)
	p, list := rows(t, mitt.Glove)
	upper := ofPart(list, stitch.UpperHand)
	got := upper[len(upper)-1].Body
	assert.InDelta(t, 190*p.Hand.Fingers.WithoutLittle(), got, 1e-9)
	assert.InDelta(t, .95*got, upper[0].Wanted, 1e-9, "a glove is 5 % narrower than the hand")
}

// A finger that is too tight is told before a hand that is.
func TestTightFingersComeFirst(t *testing.T) {
	ease := -.25
	r := &mitt.Request{
		Kind: mitt.Glove, Gauge: gauge.Gauge{Stitches: .24, Rounds: .32}, Ease: mitt.Ease{Hand: &ease},
		Hand: hand.Hand{Circumference: 190 * mm}, Stitch: mitt.Stitches{Repeat: 2, Rib: 2},
	}
	r.Pins.Fingers[hand.Middle].Stitches = mitt.Fix(13)
	p, err := mitt.New().Plan(r)
	require.NoError(t, err)
	list, err := Rows(p, p.Mitt(), DefaultBands)
	require.NoError(t, err)
	s := Summarise(p, list, Tolerance)
	require.NotEmpty(t, s.Tight)
	assert.Equal(t, stitch.Middle, s.Tight[0].Section)
	tight := map[stitch.Part]bool{}
	for _, row := range s.Tight {
		tight[row.Section] = true
	}
	assert.True(t, tight[stitch.Hand])
}

// Whatever the hand, the gauge and the ends of the fingers: every section's rows climb
// round by round, every finger has a site with its chance, and what its first round is
// off is what the plan says.
func TestRowsOfRandomGlovesClimb(t *testing.T) {
	rng := rand.New(rand.NewPCG(24, 5))
	ends := []mitt.FingerEnd{"", mitt.FullFinger, mitt.HalfFinger, mitt.OpenFinger}
	pl := mitt.New()
	for range 200 {
		r := &mitt.Request{
			Kind: mitt.Glove, Gauge: gauge.Gauge{Stitches: .18 + .2*rng.Float64(), Rounds: .24 + .3*rng.Float64()},
			Hand:   hand.Hand{Circumference: units.FromMM(140 + 100*rng.Float64())},
			Stitch: mitt.Stitches{Repeat: 2, Rib: 2}, Make: mitt.Make{Level: rng.IntN(2) == 0, ThumbEnd: ends[rng.IntN(4)]},
		}
		for i := range r.Make.Fingers {
			r.Make.Fingers[i] = ends[rng.IntN(4)]
		}
		p, err := pl.Plan(r)
		require.NoError(t, err)
		m := p.Mitt()
		list, err := Rows(p, m, DefaultBands)
		require.NoError(t, err)
		n := 0
		for i := range m.Sections {
			part, up := m.Sections[i].Part, -1.0
			of := ofPart(list, part)
			require.Len(t, of, len(m.Sections[i].Rounds))
			for k, row := range of {
				require.Equal(t, k+1, row.Round)
				require.Greater(t, row.Height, up-1e-9)
				require.Positive(t, row.Body)
				require.GreaterOrEqual(t, row.AboveCastOn, row.Height-1e-9)
				up = row.Height
			}
			n += len(of)
		}
		require.Len(t, list, n)
		named := map[string]Site{}
		for _, site := range Summarise(p, list, Tolerance).Sites {
			named[site.Name] = site
		}
		for i := range p.Fingers.Each {
			part := mitt.PartOfFinger(hand.Finger(i))
			require.Contains(t, named, part.Words())
			require.InDelta(t, p.Residual.Fingers[i], named[part.Words()].Fabric-named[part.Words()].Wanted, 1e-9)
		}
	}
}
