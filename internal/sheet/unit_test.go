package sheet

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// A sheet in another unit asks for the same mitt: 1 in = 25.4 mm exactly
// (international yard and pound agreement, 1959).
func TestIn(t *testing.T) {
	s := Sheet{
		"unit": "in", "hand.hand_circumference": "7 1/2", "hand.size": "7.5", "gauge.swatches[0].stitches": "22", "gauge.swatches[0].width": "4",
		"hand.profile[0].height": "1", "hand.profile[0].girth": "7", "hand.profile[1].height": "2", "hand.profile[1].girth": "8",
		"ease.hand": "-5 %", "length.cuff": "rather long",
	}
	cm := s.In("cm")
	assert.Equal(t, "19.05", cm["hand.hand_circumference"])
	assert.Equal(t, "10.16", cm["gauge.swatches[0].width"])
	assert.Equal(t, "2.54", cm["hand.profile[0].height"])
	assert.Equal(t, "7.5", cm["hand.size"], "a size is no length")
	assert.Equal(t, "22", cm["gauge.swatches[0].stitches"])
	assert.Equal(t, "-5 %", cm["ease.hand"])
	assert.Equal(t, "rather long", cm["length.cuff"], "what can't be read stays as typed")
	assert.Equal(t, "in", s["unit"], "the sheet itself stays")
	assert.Equal(t, s, s.In("in"))
	assert.Equal(t, s, s.In("ell"))

	delete(s, "length.cuff")
	a, err := s.Request()
	require.NoError(t, err)
	for _, unit := range []Sheet{s.In("cm"), s.In("mm"), s.In("cm").In("in")} {
		b, err := unit.Request()
		require.NoError(t, err)
		assert.Equal(t, a.Hand.Circumference, b.Hand.Circumference)
		assert.InDelta(t, a.Gauge.Stitches, b.Gauge.Stitches, 1e-9)
		assert.Equal(t, a.Hand.Profile, b.Hand.Profile)
	}
}
