package words

import (
	"testing"

	"github.com/stretchr/testify/assert"
)

// TestTermsAsTheTradeHasThem checks the pairs that teaching pages of the trade
// name: cast off is bind off, tension is gauge. Stocking stitch for the
// stockinette of the Craft Yarn Council's list (from memory) is common practice,
// no source.
func TestTermsAsTheTradeHasThem(t *testing.T) {
	for _, pair := range [][2]string{
		{"bind off", "cast off"},
		{"gauge", "tension"},
		{"stockinette", "stocking stitch"},
		{"Bind off all 32 stitches loosely, with a stretchy bind-off.", "Cast off all 32 stitches loosely, with a stretchy cast-off."},
		{"All 32 bound off", "All 32 cast off"},
		{"Gauge 24.0 stitches", "Tension 24.0 stitches"},
		{"A gauge’s grid; two gauges.", "A tension’s grid; two tensions."},
		{"BO 3", "cast off 3"},
	} {
		assert.Equal(t, pair[1], UK.Say(pair[0]))
		assert.Equal(t, pair[0], US.Say(pair[0]))
	}
}

// TestTermsLeaveTheRestAlone checks that only whole words change: no path of a
// field, no key, no longer word.
func TestTermsLeaveTheRestAlone(t *testing.T) {
	for _, text := range []string{
		"gauge.swatches[0].stitches: it is far off", "gauge_from", "BOR", "the gauged piece", "cast on 3", "Fasten off inside.", "k3, yo, k2", "",
	} {
		assert.Equal(t, text, UK.Say(text))
	}
	assert.Equal(t, "At this tension.", UK.Say("At this gauge."), "a point ends a sentence, too")
}

// TestTermsHaveNoSpellingOfTheOtherSide checks that no term of one side holds
// one of the other, which would never come to rest.
func TestTermsHaveNoSpellingOfTheOtherSide(t *testing.T) {
	for _, one := range terms {
		assert.Equal(t, one.uk, UK.Say(one.uk))
		assert.NotEqual(t, one.us, one.uk)
	}
}
