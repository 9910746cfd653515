package hand_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"thenar/internal/hand"
	"thenar/internal/units"
)

// entry returns the filled value of a field.
func entry(t *testing.T, filled []hand.Filled, field string) hand.Filled {
	for _, f := range filled {
		if f.Field == field {
			return f
		}
	}
	require.Fail(t, "not filled", field)
	return hand.Filled{}
}

// The circumference comes from the breadth, else from the size, else from the
// length. Values by hand from the ratios and lines that survey_test.go checks
// against ANSUR II (Gordon et al. 2014).
func TestFilledCircumference(t *testing.T) {
	for name, c := range map[string]struct {
		hand   hand.Hand
		want   float64
		from   string
		source string
	}{
		"breadth":         {hand.Hand{Breadth: 80 * mm, Size: 9, Length: 180 * mm}, 192, "2.4 × hand breadth", "both sexes"},
		"breadth, women":  {hand.Hand{Breadth: 80 * mm, Reference: hand.Women}, 190.38, "2.051 × hand breadth + 26.3 mm", "1,986 women"},
		"breadth, men":    {hand.Hand{Breadth: 90 * mm, Reference: hand.Men}, 216.08, "2.152 × hand breadth + 22.4 mm", "4,082 men"},
		"size":            {hand.Hand{Size: 9, Length: 180 * mm}, 229, "25.4 × size 9, in whole mm", "EN 420:2003"},
		"length":          {hand.Hand{Length: 188 * mm}, 200, "hand length ÷ 0.94", "both sexes"},
		"length, women":   {hand.Hand{Length: 180 * mm, Reference: hand.Women}, 186.04, "0.493 × hand length + 97.3 mm", "1,986 women"},
		"length, men":     {hand.Hand{Length: 190 * mm, Reference: hand.Men}, 210.32, "0.608 × hand length + 94.8 mm", "4,082 men"},
		"length, child":   {hand.Hand{Length: 130 * mm, Reference: hand.Women}, 144.3, "1.11 × hand length", "Snyder et al. 1977"},
		"length, toddler": {hand.Hand{Length: 110 * mm}, 125.4, "1.14 × hand length", "Snyder et al. 1977"},
		"length, baby":    {hand.Hand{Length: 90 * mm}, 102.6, "1.14 × hand length", "not sourced under 2 years"},
	} {
		assert.Empty(t, c.hand.Check(), name)
		h, filled := c.hand.Fill()
		f := entry(t, filled, hand.FieldCircumference)
		assert.InDelta(t, c.want, h.Circumference.MM(), 0.0006, name)
		assert.Equal(t, h.Circumference, f.Value, name)
		assert.Equal(t, c.from, f.From, name)
		assert.Contains(t, f.Source, c.source, name)
	}
}

// Length and wrist by the lines of women and men. A size's length goes before
// them, and so does a small child's ratio of the wrist.
func TestLengthAndWristByReference(t *testing.T) {
	h, filled := hand.Hand{Circumference: 190 * mm, Reference: hand.Women}.Fill()
	assert.Equal(t, units.Length(183_290), h.Length) // 0.641 × 190 + 61.5
	assert.Equal(t, units.Length(157_150), h.Wrist)  // 0.655 × 190 + 32.7
	assert.Equal(t, "0.641 × hand circumference + 61.5 mm", entry(t, filled, hand.FieldLength).From)
	assert.Contains(t, entry(t, filled, hand.FieldWrist).Source, "1,986 women")

	h, _ = hand.Hand{Circumference: 210 * mm, Reference: hand.Men}.Fill()
	assert.Equal(t, units.Length(191_930), h.Length) // 0.573 × 210 + 71.6
	assert.Equal(t, units.Length(174_350), h.Wrist)  // 0.675 × 210 + 32.6

	h, filled = hand.Hand{Circumference: 190 * mm, Size: 8, Reference: hand.Men}.Fill()
	assert.Equal(t, 182*mm, h.Length, "EN 420:2003, size 8")
	assert.Equal(t, "the hand length of size 8", entry(t, filled, hand.FieldLength).From)

	h, _ = hand.Hand{Circumference: 140 * mm, Length: 130 * mm, Reference: hand.Women}.Fill()
	assert.Equal(t, units.Length(117_600), h.Wrist, "0.84 × 140")
}

// Snyder et al. 1977 (UM-HSRI-77-17), from the published means and the
// children's records: breadth over length 0.475 at 2 to 5½ years and 0.463 at
// 5½ to 9½, wrist over breadth 2.157 and 2.019, smallest clearance over
// breadth 0.857, 0.835 and, grown, 0.820, thumb over length 0.356. Girth is
// 2.40 × breadth. Ratios agree to within 0.005.
func TestSmallHandsAgainstTheirSource(t *testing.T) {
	ratio := func(length units.Length, field string) float64 {
		h, filled := hand.Hand{Length: length}.Fill()
		f := entry(t, filled, field)
		if field == hand.FieldWrist {
			return f.Value.MM() / h.Circumference.MM()
		}
		return f.Value.MM() / length.MM()
	}
	assert.InDelta(t, 0.475*2.40, ratio(105*mm, hand.FieldCircumference), 0.005)
	assert.InDelta(t, 0.463*2.40, ratio(135*mm, hand.FieldCircumference), 0.005)
	assert.InDelta(t, 2.157/2.40, ratio(105*mm, hand.FieldWrist), 0.005)
	assert.InDelta(t, 2.019/2.40, ratio(135*mm, hand.FieldWrist), 0.005)
	assert.InDelta(t, 0.356, ratio(170*mm, hand.FieldThumbLength), 0.005)
	for length, clearance := range map[units.Length]float64{105: 0.857, 135: 0.835, 180: 0.820} {
		assert.InDelta(t, 3.14159*clearance/2.40, hand.Hand{Length: length * mm}.Passage(), 0.005)
	}
	// The means by age, mm: 105.5 long and 51.0 broad at 2 to 3½ years, 127.2
	// and 59.2 at 5½ to 6½, 138.1 and 64.0 at 7½ to 8½: girth within 2 %.
	for length, breadth := range map[float64]float64{105.5: 51.0, 127.2: 59.2, 138.1: 64.0} {
		h, _ := hand.Hand{Length: units.FromMM(length)}.Fill()
		assert.InEpsilon(t, 2.40*breadth, h.Circumference.MM(), 0.02)
	}
}

// Greiner 1991 (NATICK/TR-92/011), means of women and men in mm, from a
// transcription: hand circumference 186.5 and 213.3, length 180.7 and 194.1,
// thumb round its joint 63.0 and 72.3, height of its crotch 62.8 and 69.1,
// thumb's tip 125.7 and 137.9. The ratios of means are 0.338 and 0.339, 0.348
// and 0.356, and 0.348 and 0.354; ours are within 0.005 of their mean.
func TestRatiosOfMeans(t *testing.T) {
	h, _ := hand.Hand{Circumference: 1000 * mm, Length: 1000 * mm}.Fill()
	middle := func(w1, w2, m1, m2 float64) float64 { return (w1/w2 + m1/m2) / 2 }
	assert.InDelta(t, middle(63.0, 186.5, 72.3, 213.3), h.Thumb.MM()/1000, 0.002)
	assert.InDelta(t, middle(62.8, 180.7, 69.1, 194.1), h.WristToCrotch.MM()/1000, 0.002)
	assert.InDelta(t, middle(125.7-62.8, 180.7, 137.9-69.1, 194.1), h.ThumbLength.MM()/1000, 0.005)
}
