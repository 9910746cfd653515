package hand_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"thenar/internal/hand"
	"thenar/internal/units"
)

// One measurement is enough if the circumference follows from it.
func TestCheckOneMeasurement(t *testing.T) {
	for _, h := range []hand.Hand{{Size: 8}, {Breadth: 80 * mm}, {Length: 180 * mm}, {Circumference: 190 * mm}} {
		assert.Empty(t, h.Check())
	}
	for _, h := range []hand.Hand{{}, {Wrist: 160 * mm}, {Reference: hand.Women}, {Circumference: -1, Size: 8}, {Length: -1}} {
		faults := h.Check()
		require.Len(t, faults, 1)
		assert.Equal(t, "hand.hand_circumference: is missing; measure round the knuckles without the thumb", faults[0].String())
	}
	assert.True(t, hand.Hand{Breadth: -1}.Check().Has(hand.FieldBreadth))
	assert.True(t, hand.Hand{Size: 8, Reference: "everybody"}.Check().Has(hand.FieldReference))
}

// A tape goes over the hand and back under it, so it is longer than twice the
// breadth: plane geometry.
func TestCheckBreadth(t *testing.T) {
	faults := hand.Hand{Circumference: 190 * mm, Breadth: 95 * mm}.Check()
	assert.True(t, faults.Has(hand.FieldBreadth))
	assert.True(t, faults.Has(hand.FieldCircumference))
	assert.Empty(t, hand.Hand{Circumference: 190 * mm, Breadth: 94 * mm}.Check())
}

// A thumb must be narrower than the hand, even if that is filled.
func TestCheckThumbAgainstTheFilledHand(t *testing.T) {
	for _, h := range []hand.Hand{{Size: 7}, {Breadth: 74 * mm}, {Length: 167 * mm}} {
		full, _ := h.Fill()
		h.Thumb = full.Circumference
		faults := h.Check()
		require.Len(t, faults, 1)
		assert.Equal(t, hand.FieldThumb, faults[0].Path)
		assert.Contains(t, faults[0].Message, "filled: ")
		h.Thumb--
		assert.Empty(t, h.Check())
	}
}

func TestCheckAbove(t *testing.T) {
	many := make([]hand.Point, 51)
	for i := range many {
		many[i] = hand.Point{Height: units.Length(i+1) * mm, Girth: 190 * mm}
	}
	for name, above := range map[string][]hand.Point{
		"at the parting": {{0, 190 * mm}},
		"below it":       {{-5 * mm, 190 * mm}},
		"level":          {{10 * mm, 190 * mm}, {10 * mm, 188 * mm}},
		"falling":        {{20 * mm, 190 * mm}, {10 * mm, 188 * mm}},
		"no girth":       {{10 * mm, 0}},
		"too many":       many,
	} {
		faults := hand.Hand{Size: 8, Above: above}.Check()
		require.Len(t, faults, 1, name)
		assert.Equal(t, hand.FieldAbove, faults[0].Path, name)
	}
	assert.Empty(t, hand.Hand{Size: 8, Above: many[:50]}.Check())
	assert.Empty(t, hand.Hand{Size: 8, Above: []hand.Point{{10 * mm, 190 * mm}}}.Check(), "one height will do")
}

// The range of breadth in ANSUR II (Gordon et al. 2014) is 67 to 92 mm in
// women, 74 to 105 mm in men; of children (Snyder et al. 1977) 51.0 − 3 × 4.0
// at 2 to 3½ years to 76.2 + 3 × 5.1 mm at 12½ to 13½.
func TestQueriesOfBreadth(t *testing.T) {
	for breadth, n := range map[units.Length]int{66: 1, 67: 0, 105: 0, 106: 1} {
		queries := hand.Hand{Breadth: breadth * mm, Length: 185 * mm}.Queries()
		require.Len(t, queries, n, "%d mm", breadth)
		if n > 0 {
			assert.Equal(t, hand.FieldBreadth, queries[0].Field)
		}
	}
	for breadth, n := range map[units.Length]int{38: 1, 39: 0, 92: 0, 93: 1} {
		assert.Len(t, hand.Hand{Breadth: breadth * mm, Length: 130 * mm}.Queries(), n, "%d mm", breadth)
	}
}

// A hand with its thumb widens up to where the thumb parts, and a tape is off by
// 5 mm at most (common practice, no source).
func TestQueriesOfProfiles(t *testing.T) {
	h := hand.Hand{Circumference: 190 * mm, Length: 180 * mm, Thumb: 65 * mm}
	h.Profile = []hand.Point{{0, 180 * mm}, {20 * mm, 200 * mm}, {40 * mm, 195 * mm}, {59 * mm, 225 * mm}}
	assert.Empty(t, h.Queries(), "5 mm")
	h.Profile[2].Girth = 194 * mm
	queries := h.Queries()
	require.Len(t, queries, 1)
	assert.Equal(t, hand.FieldProfile, queries[0].Field)
	assert.Contains(t, queries[0].Message, "from 200 mm to 194 mm at 40 mm")

	h.Profile = nil
	h.Above = []hand.Point{{10 * mm, units.Length(225_750)}} // 190 + 0.55 × 65
	assert.Empty(t, h.Queries())
	h.Above[0].Girth++
	queries = h.Queries()
	require.Len(t, queries, 1)
	assert.Equal(t, hand.FieldAbove, queries[0].Field)
	assert.Equal(t, hand.FieldWrist, hand.Hand{Size: 7, Wrist: 178 * mm}.Queries()[0].Field, "as wide as the filled hand")
}
