package mitt

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"thenar/internal/hand"
	"thenar/internal/stitch"
)

// A fingerless mitt without a thumb is a wristlet. Worked by hand for a hand of 180 mm at
// 24 stitches and 32 rounds over 10 cm: 0.165 L = 29.7 mm of ribbing are 10 rounds, 0.39 L =
// 70.2 mm above it 22, the last 3 of them ribbed; 38 stitches for a wrist of 157.7 mm, 44
// for the hand. It is bound off below the thumb, and both hands are alike.
func TestWristlet(t *testing.T) {
	require.Equal(t, Wristlet, Fingerless.By(NoThumb))
	r := request(Wristlet, per10(24, 32), hand.Hand{Circumference: 190 * mm, Length: 180 * mm})
	r.Make.Construction = NoThumb
	p := must(t, r)
	assert.Equal(t, [4]int{38, 10, 22, 3}, [4]int{p.Cuff.CastOn.N, p.Cuff.Rounds, p.Body.RoundsAbove, p.Body.EdgingRounds})
	assert.Equal(t, 44, p.Body.Stitches.N)
	m := p.Mitt()
	require.Empty(t, stitch.Ledger(m))
	require.Len(t, m.Sections, 2)
	assert.Equal(t, 44, m.Sections[1].Finish.In())
	assert.Equal(t, m, stitch.Mirror(m), "both hands are alike")
	assert.False(t, p.Thumbed() || p.Gusseted() || p.Parted() || p.Tucked())
	assert.Equal(t, "length above the cuff", PlaceHandLength.Words(p))

	r.Pins.GussetBase, r.Pins.TopRounds, r.Pins.RoundsAboveGusset = Fix(3), Fix(9), Fix(1)
	short := must(t, r)
	assert.Contains(t, codes(short), "pins_without_effect")
	require.Empty(t, stitch.Ledger(short.Mitt()))
	for _, k := range []Kind{Fingerless, Mitten, Thumbless} {
		r := request(k, per10(24, 32), hand.Hand{Circumference: 190 * mm, Length: 180 * mm})
		r.Progress = p.ProgressAt(stitch.Hand, 5)
		_, err := New().Plan(r)
		require.Error(t, err, "%s can't be made of a wristlet on the needles", k)
	}
	for at := range p.Body.RoundsAbove {
		r := request(Wristlet, per10(26, 40), hand.Hand{Circumference: 190 * mm, Length: 190 * mm})
		r.Progress = p.ProgressAt(stitch.Hand, at+1)
		again := must(t, r)
		require.Equal(t, m.Sections[1].Rounds[:at+1], again.Mitt().Sections[1].Rounds[:at+1])
	}
}
