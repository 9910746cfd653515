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

// Plain rounds share their operations, so no builder may write into them: not the one
// that takes an odd stitch off below a top, nor those that turn rounds into rows.
func TestPlainRoundsStayPlain(t *testing.T) {
	pl, odd := New(), 0
	for _, kind := range []Kind{Fingerless, Mitten, Glove} {
		for _, how := range []Make{{}, {Place: InPalm}, {Flat: true}, {Direction: Down}, {Direction: Down, Flat: true}, {Construction: Straight}, {Construction: Slit}, {Construction: NoThumb}, {Cap: true, Fingers: [4]FingerEnd{HalfFinger, HalfFinger, HalfFinger, HalfFinger}}} {
			for girth := 170; girth < 220; girth += 3 {
				p, err := pl.Plan(&Request{
					Kind: kind.By(how.Construction), Make: how, Gauge: gauge.Gauge{Stitches: 0.24, Rounds: 0.32, Treated: true},
					Hand: hand.Hand{Circumference: units.Length(girth) * units.Millimetre}, Stitch: Stitches{Repeat: 1, Rib: 2},
				})
				if err != nil {
					continue // not every kind is made in every way
				}
				p.Mitt()
				if p.Top != nil && p.Top.Odd == 1 {
					odd++
				}
				require.NotContains(t, knits, stitch.K2tog, "%s %+v %d", kind, how, girth)
			}
		}
	}
	assert.Positive(t, odd, "some have an odd stitch below their top")
	assert.Equal(t, times(nil, stitch.Knit, len(knits)), knits)
}
