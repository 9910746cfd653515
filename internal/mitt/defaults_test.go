package mitt

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"thenar/internal/hand"
)

// Every decision that was not given is listed with its value, worked by hand
// from the stated rules (common practice, no source); one that was given is
// not.
func TestDefaultsAreListed(t *testing.T) {
	r := request(Fingerless, per10(24, 32), hand.Hand{Circumference: 190 * mm, Length: 180 * mm, Thumb: 65 * mm, ThumbLength: 64 * mm})
	r.Lengths.Cuff = 30 * mm
	got := map[string]float64{}
	for _, d := range must(t, r).Defaults {
		value := d.MM
		if d.Ratio != nil {
			value = *d.Ratio
		}
		got[d.Field] = value
		assert.NotEmpty(t, d.From)
		assert.NotEmpty(t, d.Source)
	}
	want := map[string]float64{
		"ease.hand": -0.05, "ease.cuff": 0, "ease.thumb_girth_added": 0.08*65 + 1.6/0.24, "length.cuff_plain": 0.165 * 180,
		"length.above_gusset": 0.21 * 180, "length.edging": 0.06 * 180, "length.thumb": 0.53 * 64, "length.thumb_edging": 0.06 * 180,
	}
	assert.InDeltaMapValues(t, want, got, 1e-9)

	mitten := request(Mitten, per10(24, 32), hand.Hand{Circumference: 190 * mm})
	mitten.Gauge.RoundsFilled = true
	fields := []string{}
	for _, d := range must(t, mitten).Defaults {
		fields = append(fields, d.Field)
	}
	assert.Equal(t, []string{"gauge.swatches[0].rounds", "ease.hand", "ease.cuff", "ease.thumb_girth_added", "length.cuff", "length.cuff_plain", "length.above_gusset", "length.thumb"}, fields)
}
