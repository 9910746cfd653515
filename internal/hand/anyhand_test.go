package hand_test

import (
	"math/rand/v2"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"thenar/internal/hand"
	"thenar/internal/units"
)

// measures are the measurements that can be filled, with a range in mm from a
// baby's hand to a giant's.
var measures = []struct {
	field    string
	at       func(*hand.Hand) *units.Length
	low, top int64
}{
	{hand.FieldCircumference, func(h *hand.Hand) *units.Length { return &h.Circumference }, 80, 330},
	{hand.FieldLength, func(h *hand.Hand) *units.Length { return &h.Length }, 70, 260},
	{hand.FieldWrist, func(h *hand.Hand) *units.Length { return &h.Wrist }, 70, 260},
	{hand.FieldThumb, func(h *hand.Hand) *units.Length { return &h.Thumb }, 30, 110},
	{hand.FieldGussetLength, func(h *hand.Hand) *units.Length { return &h.GussetLength }, 20, 90},
	{hand.FieldThumbLength, func(h *hand.Hand) *units.Length { return &h.ThumbLength }, 25, 90},
	{hand.FieldWristToCrotch, func(h *hand.Hand) *units.Length { return &h.WristToCrotch }, 25, 90},
	{hand.FieldPalm, func(h *hand.Hand) *units.Length { return &h.Palm }, 100, 380},
}

// anyHand returns a random hand with about half of it measured.
func anyHand(r *rand.Rand) hand.Hand {
	between := func(low, top int64) units.Length {
		return units.Length(1000*low + r.Int64N(1000*(top-low)))
	}
	h := hand.Hand{Reference: []hand.Reference{hand.Both, hand.Women, hand.Men}[r.IntN(3)]}
	for _, m := range measures {
		if r.IntN(2) == 0 {
			*m.at(&h) = between(m.low, m.top)
		}
	}
	if r.IntN(2) == 0 {
		h.Breadth = between(35, 110)
	}
	if r.IntN(2) == 0 {
		h.Size = float64(8+r.IntN(19)) / 2
	}
	if r.IntN(4) == 0 {
		h.Profile = []hand.Point{{0, between(90, 200)}, {between(20, 30), between(100, 210)}, {between(40, 60), between(120, 240)}}
	}
	if r.IntN(4) == 0 {
		h.Above = []hand.Point{{between(5, 15), between(100, 200)}, {between(20, 40), between(100, 200)}}
	}
	return h
}

// For any hand that passes Check: Fill changes no measured value and leaves none
// missing; the filled hand passes Check, has both curves, and nothing left to
// fill; and measuring exactly a filled value removes that entry from the list and
// changes nothing else.
func TestFillingAnyHand(t *testing.T) {
	r := rand.New(rand.NewPCG(420, 21420))
	hands := 0
	for range 4000 {
		h := anyHand(r)
		if len(h.Check()) > 0 {
			continue
		}
		hands++
		full, filled := h.Fill()
		listed := map[string]units.Length{}
		for _, f := range filled {
			listed[f.Field] = f.Value
			require.NotEmpty(t, f.From)
			require.NotEmpty(t, f.Source)
		}
		require.Len(t, listed, len(filled), "a field is filled once")
		for _, m := range measures {
			value, was := *m.at(&full), *m.at(&h)
			require.Positive(t, value, m.field)
			if was != 0 {
				require.Equal(t, was, value, m.field)
				require.NotContains(t, listed, m.field)
			}
		}
		require.Empty(t, full.Check(), "%+v", full)
		again, more := full.Fill()
		require.Empty(t, more)
		require.Equal(t, full, again)
		_, err := full.Girths()
		require.NoError(t, err)
		_, err = full.AboveGirths()
		require.NoError(t, err)

		for _, m := range measures {
			if value, ok := listed[m.field]; ok {
				measured := h
				*m.at(&measured) = value
				same, rest := measured.Fill()
				require.Equal(t, full, same, m.field)
				require.Len(t, rest, len(filled)-1, m.field)
				for _, f := range rest {
					require.NotEqual(t, m.field, f.Field)
				}
			}
		}
	}
	assert.Greater(t, hands, 1000)
}
