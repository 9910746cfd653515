package hand_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"thenar/internal/hand"
	"thenar/internal/units"
)

const mm = units.Millimetre

// Check values from the ratios of ANSUR II, Greiner 1991 and Snyder et al.
// 1977: hand 200 → wrist 166, thumb 68; length 180 → crotch 63, thumb 63.9.
func TestFill(t *testing.T) {
	h, filled := hand.Hand{Circumference: 200 * mm, Length: 180 * mm}.Fill()
	assert.Equal(t, 166*mm, h.Wrist)
	assert.Equal(t, 68*mm, h.Thumb)
	assert.Equal(t, 63*mm, h.WristToCrotch)
	assert.Equal(t, units.Length(63_900), h.ThumbLength)
	assert.Equal(t, units.Length(59_400), h.GussetLength)
	assert.Equal(t, units.Length(237_400), h.Palm) // 200 + 0.55 × 68
	assert.Len(t, filled, 6)
	for _, f := range filled {
		assert.NotEmpty(t, f.From)
		assert.NotEmpty(t, f.Source)
	}
}

func TestFillKeepsWhatWasMeasured(t *testing.T) {
	all := hand.Hand{
		Circumference: 190 * mm, Wrist: 150 * mm, Thumb: 60 * mm, Length: 175 * mm, GussetLength: 55 * mm,
		ThumbLength: 61 * mm, WristToCrotch: 60 * mm, Palm: 220 * mm,
	}
	h, filled := all.Fill()
	assert.Empty(t, filled)
	assert.Equal(t, all, h)
}

// Wrists of small children are thicker: 0.90 and 0.84 of the hand (Snyder et
// al. 1977, hand circumference estimated from breadth).
func TestFillSmallHands(t *testing.T) {
	for length, want := range map[units.Length]units.Length{110: 126, 130: 118, 180: 116} {
		h, _ := hand.Hand{Circumference: 140 * mm, Length: length * mm}.Fill()
		assert.InDelta(t, float64(want), h.Wrist.MM(), 0.7, "hand length %d", length)
	}
}

func TestCheck(t *testing.T) {
	cases := map[string]hand.Hand{
		hand.FieldCircumference: {},
		hand.FieldThumb:         {Circumference: 190 * mm, Thumb: 190 * mm},
		hand.FieldProfile:       {Circumference: 190 * mm, Profile: []hand.Point{{Height: 20 * mm, Girth: 190 * mm}, {Height: 20 * mm, Girth: 200 * mm}}},
		hand.FieldPalm:          {Circumference: 190 * mm, Palm: 220 * mm, Profile: []hand.Point{{Girth: 190 * mm}, {Height: 20 * mm, Girth: 200 * mm}}},
	}
	for field, h := range cases {
		assert.True(t, h.Check().Has(field), field)
	}
	assert.Empty(t, hand.Hand{Circumference: 190 * mm}.Check())
	one := hand.Hand{Circumference: 190 * mm, Profile: []hand.Point{{Girth: 190 * mm}}}
	assert.True(t, one.Check().Has(hand.FieldProfile))
}

func TestQueries(t *testing.T) {
	assert.Empty(t, hand.Hand{Circumference: 190 * mm, Length: 180 * mm, Wrist: 157 * mm}.Queries())
	assert.Empty(t, hand.Hand{Circumference: 142 * mm, Length: 127 * mm}.Queries(), "a child is no odd adult")
	assert.Len(t, hand.Hand{Circumference: 300 * mm, Length: 180 * mm, Wrist: 310 * mm}.Queries(), 3)
}

func TestGirths(t *testing.T) {
	h, _ := hand.Hand{Circumference: 190 * mm, Thumb: 65 * mm, Length: 180 * mm, GussetLength: 59 * mm}.Fill()
	g, err := h.Girths()
	require.NoError(t, err)
	assert.InDelta(t, 190, g.At(0), 1e-9)
	assert.InDelta(t, 225.75, g.At(59), 1e-9)
	assert.InDelta(t, 225.75, g.At(80), 1e-9)

	h.Profile = []hand.Point{{0, 176 * mm}, {20 * mm, 190 * mm}, {40 * mm, 221 * mm}, {59 * mm, 224 * mm}}
	g, err = h.Girths()
	require.NoError(t, err)
	last := 0.0
	for at := 0.0; at <= 59; at += 0.5 {
		assert.GreaterOrEqual(t, g.At(at), last, "monotone points give a monotone curve")
		last = g.At(at)
	}
	assert.InDelta(t, 221, g.At(40), 1e-9, "the curve passes through what was measured")
}
