package words

import (
	"testing"

	"github.com/stretchr/testify/assert"
)

func TestCaution(t *testing.T) {
	for message, want := range map[string]string{
		"hand.wrist_circumference: is wide.":        "Wrist circumference: is wide.",
		"gauge.swatches[1]: has 8 % more stitches.": "Swatch 2: has 8 % more stitches.",
		"It will be tight: take it off.":            "It will be tight: take it off.",
		"Nothing to say.":                           "Nothing to say.",
	} {
		assert.Equal(t, want, Caution(message))
	}
}
