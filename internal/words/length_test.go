package words

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"thenar/internal/gauge"
	"thenar/internal/hand"
	"thenar/internal/mitt"
	"thenar/internal/stitch"
	"thenar/internal/units"
)

// By hand: 19 rounds at 32 over 10 cm are 59.4 mm, 5.9 cm or 2⅜ in to the
// nearest eighth (2.34).
func TestLengthWords(t *testing.T) {
	l := Length{Part: stitch.Gusset, Rounds: 19, MM: 19 / 0.32, Until: "reaches where the thumb parts"}
	assert.Equal(t, "19 rounds, about 5.9 cm / 2⅜ in; stop when it reaches where the thumb parts", l.Words())
	assert.Equal(t, "1 round, about 0.3 cm / ⅛ in", Length{Rounds: 1, MM: 1 / 0.32}.Words())
}

// Every section with rounds has its length by the gauge; a closed mitten's
// top begins so far below the tip as its rounds are high, less the 5 mm that
// a mitten is longer than the hand.
func TestLengths(t *testing.T) {
	for _, kind := range []mitt.Kind{mitt.Fingerless, mitt.Mitten, mitt.Thumbless} {
		p, err := mitt.New().Plan(&mitt.Request{
			Kind: kind, Gauge: gauge.Gauge{Stitches: 0.22, Rounds: 0.30},
			Hand:   hand.Hand{Circumference: 190 * units.Millimetre, Length: 180 * units.Millimetre},
			Stitch: mitt.Stitches{Repeat: 2, Rib: 2},
		})
		require.NoError(t, err)
		list := Lengths(p, p.Mitt())
		at := 0
		for _, s := range p.Mitt().Sections {
			if len(s.Rounds) == 0 {
				continue
			}
			require.Less(t, at, len(list), "%s of a %s has no length", s.Part, kind)
			assert.Equal(t, s.Part, list[at].Part)
			assert.Equal(t, len(s.Rounds), list[at].Rounds, "%s", s.Part)
			assert.InDelta(t, float64(len(s.Rounds))/0.30, list[at].MM, 1e-9)
			if s.Part == stitch.Hand && p.Top != nil {
				assert.Contains(t, list[at].Until, Both(float64(p.Top.Rounds)/0.30-5))
			}
			at++
		}
		assert.Len(t, list, at)
	}
}

// A tail is never shorter than it has to be, and said no finer than it is measured off.
func TestTail(t *testing.T) {
	assert.Equal(t, "135 cm / 53 in", Tail(1304)) // 51.3 in; 135 cm are 53.1 in
	assert.Equal(t, "125 cm / 50 in", Tail(1250)) // 49.2 in
	assert.Equal(t, "20 cm / 8 in", Tail(200))
	assert.Equal(t, "5 cm / 2 in", Tail(50))
}
