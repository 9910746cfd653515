package yarn

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"thenar/internal/gauge"
	"thenar/internal/hand"
	"thenar/internal/mitt"
	"thenar/internal/stitch"
)

// The trade body's standard yarn weight system, stocking stitch over 4 in
// (several pages that quote the Craft Yarn Council's table agree): 0 lace
// 33–40, 1 super fine 27–32, 2 fine 23–26, 3 light 21–24, 4 medium 16–20,
// 5 bulky 12–15, 6 super bulky 7–11, 7 jumbo 6 and fewer.
func TestWeightOf(t *testing.T) {
	for stitches, want := range map[int]int{45: 0, 33: 0, 32: 1, 27: 1, 26: 2, 23: 2, 22: 3, 21: 3, 20: 4, 16: 4, 15: 5, 12: 5, 11: 6, 7: 6, 6: 7, 1: 7} {
		assert.Equal(t, want, WeightOf(float64(stitches)/101.6).Number, "%d over 4 in", stitches)
	}
}

// By hand, at 24 stitches over 10 cm: 36 stitches are 150 mm wide, so the
// cast-on takes 3 × 150 + 200 mm; 42 are 175 mm, 6 × 175 + 200 mm to bind off.
func TestTailsOf(t *testing.T) {
	p := planned(t, mitt.Fingerless, 24, 32, true)
	tails := TailsOf(p, p.Mitt())
	width := func(n int) float64 { return float64(n) / p.Gauge.Stitches }
	assert.InDelta(t, 3*width(p.Cuff.CastOn.N)+200, tails.CastOn, 1e-9)
	assert.InDelta(t, 6*width(p.Body.EdgingStitches)+200, tails.Hand, 1e-9)
	require.InDelta(t, 200, tails.End, 0)
	assert.Greater(t, tails.CastOn, 500.0)
}

// A seam takes twice its length and 20 cm at both ends (common practice, no source). One
// with an opening for the thumb is two: by hand, at 32 rows over 10 cm, from the rows
// below and above. An opening has no thumb to bind off.
func TestTailsOfSeams(t *testing.T) {
	flat := func(how mitt.Construction) *mitt.Plan {
		p, err := mitt.New().Plan(&mitt.Request{
			Kind: mitt.Fingerless, Gauge: gauge.Gauge{Stitches: 0.24, Rounds: 0.32, Treated: true}, Make: mitt.Make{Construction: how, Flat: true},
			Hand: hand.Hand{Circumference: 190 * mm, Thumb: 65 * mm, Length: 180 * mm, Wrist: 157 * mm}, Stitch: mitt.Stitches{Repeat: 2, Rib: 2},
		})
		require.NoError(t, err)
		return p
	}
	takes := func(rows int) float64 { return 2*float64(rows)/0.32 + 400 }
	p := flat(mitt.Slit)
	tails := TailsOf(p, p.Mitt())
	assert.InDelta(t, takes(p.Cuff.Rounds+p.Cuff.PlainRounds), tails.Seam, 1e-9)
	assert.InDelta(t, takes(p.Body.RoundsAbove), tails.SeamAbove, 1e-9)
	assert.Zero(t, tails.ThumbSeam)
	assert.Zero(t, tails.Thumb)
	p = flat(mitt.Straight)
	tails = TailsOf(p, p.Mitt())
	assert.InDelta(t, takes(p.Cuff.Rounds+p.Cuff.PlainRounds+p.Gusset.Rounds.N+p.Body.RoundsAbove), tails.Seam, 1e-9)
	assert.Zero(t, tails.SeamAbove)
	assert.InDelta(t, takes(p.Thumb.Rounds), tails.ThumbSeam, 1e-9)
}

// From the fingertips and flat, hand and thumb are each cast on along an edge, which takes
// a tail of 3 widths, and each has a seam; in the round their tips take none. The edging of
// an open thumb is cast on, not bound off.
func TestTailsFromTheTip(t *testing.T) {
	open := plannedOf(t, mitt.Fingerless, 24, 32, true, mitt.Make{Direction: mitt.Down})
	assert.InDelta(t, 3*float64(open.Thumb.EdgingStitches)/open.Gauge.Stitches+200, TailsOf(open, open.Mitt()).Thumb, 1e-9)
	for _, flat := range []bool{false, true} {
		p := plannedOf(t, mitt.Mitten, 24, 32, true, mitt.Make{Direction: mitt.Down, Flat: flat})
		m := p.Mitt()
		tails := TailsOf(p, m)
		assert.InDelta(t, 6*float64(p.OnNeedles())/p.Gauge.Stitches+200, tails.Hand, 1e-9)
		if !flat {
			assert.Equal(t, []float64{200, 0, 0, 0}, []float64{tails.CastOn, tails.Thumb, tails.Seam, tails.ThumbSeam})
			continue
		}
		assert.InDelta(t, 3*float64(p.Top.End+2)/p.Gauge.Stitches+200, tails.CastOn, 1e-9)
		assert.InDelta(t, 3*float64(m.Section(stitch.Thumb).CastOn)/p.Gauge.Stitches+200, tails.Thumb, 1e-9)
		assert.InDelta(t, 2*float64(p.Thumb.Rounds)/p.Gauge.Rounds+400, tails.ThumbSeam, 1e-9)
		assert.Greater(t, tails.Seam, 2*tails.ThumbSeam-400)
	}
}

// A glove has an end of yarn at its cast-on, at the tip of every finger and the thumb, and
// wherever yarn is joined: at the upper hand, the middle and the index finger and the
// thumb. Half fingers are bound off, the widest with the longest tail. Counted by hand.
func TestEndsOfAGlove(t *testing.T) {
	p := planned(t, mitt.Glove, 24, 32, true)
	m := p.Mitt()
	on := p.Cuff.CastOn.N + p.Bridge.CastOn
	for _, x := range p.Fingers.Bridge {
		on += x
	}
	assert.Equal(t, Counts{CastOn: on, Ends: 10}, edges(m))
	tails := TailsOf(p, m)
	assert.Zero(t, tails.Hand, "it goes on to the little finger")
	assert.Zero(t, tails.Thumb)
	assert.Zero(t, tails.Fingers)
	e := Of(p, m, Request{})
	assert.Greater(t, e.Loops, Of(planned(t, mitt.Fingerless, 24, 32, true), planned(t, mitt.Fingerless, 24, 32, true).Mitt(), Request{}).Loops)

	ends := [4]mitt.FingerEnd{mitt.HalfFinger, mitt.HalfFinger, mitt.HalfFinger, mitt.HalfFinger}
	endsOf := func(how mitt.Make) int { return edges(plannedOf(t, mitt.Glove, 24, 32, true, how).Mitt()).Ends }
	assert.Equal(t, 2, endsOf(mitt.Make{Fingers: ends, Cap: true})-endsOf(mitt.Make{Fingers: ends}), "a cap is begun and drawn up")

	half := plannedOf(t, mitt.Glove, 24, 32, true, mitt.Make{Fingers: [4]mitt.FingerEnd{mitt.HalfFinger, mitt.OpenFinger, mitt.FullFinger, mitt.HalfFinger}, ThumbEnd: mitt.OpenFinger})
	tails = TailsOf(half, half.Mitt())
	for i, f := range half.Fingers.Each {
		want := 6*float64(f.EdgingStitches)/.24 + 200
		if i == 2 {
			want = 0 // it is drawn up
		}
		assert.InDelta(t, want, tails.Fingers[i], 1e-6)
	}
	assert.InDelta(t, 6*float64(half.Thumb.EdgingStitches)/.24+200, tails.Thumb, 1e-6)
}
