package sheet

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"thenar/internal/mitt"
	"thenar/internal/stitch"
	"thenar/internal/units"
)

// What is knitted is written into a sheet, goes through JSON and comes back as
// it was; what stood there before is gone.
func TestKnittedGoesThroughJSON(t *testing.T) {
	was := mitt.Progress{
		Part: stitch.Gusset, Round: 9, BaseAbove: -4 * units.Millimetre, Rib: 2, OneSided: true, CastOn: 42, CuffRounds: 10,
		CuffPlainRounds: 9, HandStitches: 44, GussetBase: 3, Increases: []int{1, 4, 7, 10}, GussetRounds: 19,
		Held: 15, Bridge: 3, RoundsAbove: 12, EdgingRounds: 3, Edging: 44, TopRounds: 14, Decreases: []int{2}, PickedUp: 4,
		ThumbDecreases: 1, Thumb: 18, ThumbRounds: 11, ThumbEdging: 3, ThumbEdged: 18,
		ThumbCorners: []int{2}, CuffRib: 3, EdgingRib: 2, ThumbRib: 2, JoinsAbove: true, HandTurned: true,
	}
	s := Sheet{"worked.bridge": "7", "worked.kept_on_hand": "2", PathSecond: Anew}
	s.SetProgress(&was, "right")
	assert.NotContains(t, s, "worked.kept_on_hand")
	again, err := Parse(s.JSON())
	require.NoError(t, err)
	is, side, ok := again.Progress()
	require.True(t, ok)
	assert.Equal(t, was, *is)
	assert.Equal(t, "right", side)
	assert.Equal(t, "-0.4", again[PathBase])
	assert.Equal(t, Anew, again[PathSecond], "it is a decision on the other mitt")

	s.SetProgress(nil, "")
	_, _, ok = s.Progress()
	assert.False(t, ok)
}

// Each hand keeps what is knitted of it; one that is not begun is worked like
// the other, or anew.
func TestBothHandsAreKept(t *testing.T) {
	hand := func(round int) *mitt.Progress {
		return &mitt.Progress{Part: stitch.Gusset, Round: round, Rib: 2, CastOn: 40}
	}
	round := func(s Sheet, side string) int {
		if k, _, ok := s.For(side).Progress(); ok {
			return k.Round
		}
		return 0
	}
	s := Sheet{}
	s.SetProgress(hand(9), "right")
	assert.Equal(t, []int{9, 9}, []int{round(s, "right"), round(s, "left")})
	s[PathSecond] = Anew
	assert.Equal(t, []int{9, 0}, []int{round(s, "right"), round(s, "left")})
	s.SetProgress(hand(4), "left")
	assert.Equal(t, []int{9, 4}, []int{round(s, "right"), round(s, "left")})
	s.SetProgress(hand(12), "right")
	assert.Equal(t, []int{12, 4}, []int{round(s, "right"), round(s, "left")})
	s.SetProgress(nil, "right")
	assert.Equal(t, []int{0, 4}, []int{round(s, "right"), round(s, "left")})
	path, text := s.WithTried(7)
	s[path] = text
	path, text = s.WithTried(12)
	s[path] = text
	assert.Equal(t, []int64{7, 12}, s.Tried())
	s.ForgetProgress()
	assert.Equal(t, Sheet{PathSecond: Anew}, s)
}

func TestKnittedIsCheckedByName(t *testing.T) {
	for _, c := range []struct{ path, typed, want string }{
		{PathSection, "heel", "worked.section: is \"heel\"; write one of: cuff, cuff_plain, below_thumb, opening, gusset, hand, top, little, upper_hand, ring, middle, index, thumb, cap, cap_top"},
		{"worked.round", "-2", "worked.round: is -2; write a whole number from 0 to 1500"},
		{PathBase, "wide", "worked.base_above: "},
		{"worked.increase_rounds", "1, x", "worked.increase_rounds: is 1, x; write the rounds, from the first to the last: 1, 4, 7"},
	} {
		s := Sheet{PathSection: "gusset", "hand.hand_circumference": "19", "gauge.swatches[0].stitches": "24", "gauge.swatches[0].width": "10"}
		s[c.path] = c.typed
		_, err := s.Request()
		require.ErrorContains(t, err, c.want)
	}
}

// What is left of a row when its texts are taken back goes with them; a row in
// between stays, so that later rows keep their places.
func TestTrim(t *testing.T) {
	s := Sheet{
		"gauge.swatches[0].washed": "true", "gauge.swatches[1].counted_to": "0.5", "gauge.swatches[2].stitches": "24",
		"gauge.swatches[3].worked": "round", "hand.profile[0].height": "1",
	}
	s.Trim()
	assert.Equal(t, Sheet{
		"gauge.swatches[0].washed": "true", "gauge.swatches[1].counted_to": "0.5", "gauge.swatches[2].stitches": "24", "hand.profile[0].height": "1",
	}, s)
	delete(s, "gauge.swatches[2].stitches")
	s.Trim()
	assert.Equal(t, Sheet{"gauge.swatches[0].washed": "true", "hand.profile[0].height": "1"}, s)
}
