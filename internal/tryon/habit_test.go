package tryon

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// One try makes no habit. Of two tries in one mitt the later counts; of two
// mitts the mean. What was unlearned no longer counts.
func TestHabitsNeedTwoTries(t *testing.T) {
	given := func(id, of int64, ease map[Zone]float64) GivenAnswer {
		return GivenAnswer{id, of, Answer{Ease: ease}}
	}
	one := given(1, 7, map[Zone]float64{Thumb: -0.05, Cuff: 0.025})
	assert.Empty(t, Learn([]GivenAnswer{one}, nil))
	list := []GivenAnswer{one, given(2, 7, map[Zone]float64{Thumb: -0.025}), given(3, 8, map[Zone]float64{Thumb: -0.055})}
	habits := Learn(list, nil)
	require.Len(t, habits, 1, "the cuff was tried but once")
	assert.InDelta(t, -0.04, habits[0].By, 1e-12)
	assert.Equal(t, "You wear thumbs 4\u00a0% tighter than the usual: learned from 3 accepted tries", habits[0].Words())
	assert.Empty(t, Learn(list, map[string]int64{"thumb": 2}), "one try is left")

	s, p := adult(t)
	// 11.87 mm less 4 % of 65 mm.
	assert.Equal(t, []Edit{{"ease.thumb_girth_added", "0.92"}}, habits[0].Edits(s, p))
	assert.Equal(t, []Edit{{"ease.hand", "-2.5 %"}}, Habit{Zone: Hand, By: 0.025}.Edits(s, p))
	s["ease.hand"] = "0"
	assert.Empty(t, Habit{Zone: Hand, By: 0.025}.Edits(s, p), "it is decided already")
}
