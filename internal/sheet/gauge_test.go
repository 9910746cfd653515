package sheet

import (
	"testing"

	"github.com/stretchr/testify/assert"
)

// A count that was typed without its length is over 10 cm or 4 in (common
// practice, no source); a length that was typed stays, and no count makes none.
func TestCountsAreOverTheUsualLength(t *testing.T) {
	const at = "gauge.swatches[0]."
	for unit, over := range map[string]string{"cm": "10", "mm": "100", "in": "4"} {
		s := Sheet{"unit": unit, at + "stitches": "24", at + "rounds": "32", at + "height": "9"}
		s.OverGauge()
		assert.Equal(t, over, s[at+"width"])
		assert.Equal(t, "9", s[at+"height"])
	}
	s := Sheet{at + "washed": "true"}
	s.OverGauge()
	assert.NotContains(t, s, at+"width")
}
