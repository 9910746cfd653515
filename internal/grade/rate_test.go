package grade

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"thenar/internal/units"
)

// A rate has at most one decimal, and begins with the length that was asked for.
// 4 in are 101.6 mm, so 28 over 10 cm are 28.448 over 4 in.
func TestRatesAreRounded(t *testing.T) {
	b := Block{Stitches: 28, Rounds: 28 * 4.0 / 3}
	assert.Equal(t, "28 stitches and 37.3 rounds over 10 cm (28.4 and 37.9 over 4 in)", (&Request{Unit: units.CM}).Rate(b))
	b = Block{Stitches: 24 / 1.016, Rounds: 32 / 1.016}
	assert.Equal(t, "24 stitches and 32 rounds over 4 in (23.6 and 31.5 over 10 cm)", (&Request{Unit: units.IN}).Rate(b))
}
