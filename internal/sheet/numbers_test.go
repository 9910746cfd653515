package sheet

import (
	"strconv"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"thenar/internal/hand"
	"thenar/internal/mitt"
	"thenar/internal/stitch"
)

// Every number that can be fixed is read from a sheet, refused by its path, and
// goes through JSON.
func TestEveryNumberIsReadAndWritten(t *testing.T) {
	for _, n := range mitt.Fixable() {
		low, high := n.Range()
		s := Sheet{"format": Format, n.Path(): strconv.Itoa(low)}
		if n.List() {
			s[n.Path()] += ", " + strconv.Itoa(low+2)
		}
		require.True(t, Known(n.Path()), "%s", n)
		pins, err := s.Pins()
		require.NoError(t, err)
		assert.True(t, pins.Fixed(n), "%s is not read", n)
		again, err := Parse(s.JSON())
		require.NoError(t, err)
		assert.Equal(t, s, again, "%s", n)
		wrong := []int{low - 1, high + 1}
		if n.Measure() == mitt.Between {
			wrong = wrong[:1] // the engine bounds an interval from above
		}
		for _, v := range wrong {
			_, err = Sheet{n.Path(): strconv.Itoa(v)}.Pins()
			assert.ErrorContains(t, err, n.Path()+": is "+strconv.Itoa(v), "%s", n)
		}
	}
}

// Every number that is kept of what is knitted is written into a sheet and read
// from it.
func TestEveryKnittedNumberIsReadAndWritten(t *testing.T) {
	was := mitt.Progress{Part: stitch.Thumb, Round: 3, ThumbEnd: mitt.OpenFinger}
	was.Fingers[hand.Ring].End = mitt.HalfFinger
	for i, n := range mitt.Knittable() {
		if list := was.Numbers(n); list != nil {
			*list = []int{i + 1, i + 3}
		} else {
			*was.Number(n) = i + 1
		}
	}
	s := Sheet{}
	s.SetProgress(&was, "left")
	for _, n := range mitt.Knittable() {
		path := join(pathWorked, n.Key())
		assert.True(t, Known(path) && s.Given(path) != "", "%s is not written", n)
	}
	assert.Equal(t, "half", s.Given("worked.fingers.ring.end"))
	again, err := Parse(s.JSON())
	require.NoError(t, err)
	is, _, ok := again.Progress()
	require.True(t, ok)
	assert.Equal(t, was, *is)

	// Work on the other hand keeps all of it, and nothing stays of what is forgotten.
	s.SetProgress(&mitt.Progress{Part: stitch.Cuff, Round: 2, CastOn: 40}, "right")
	assert.Equal(t, "cuff", s.Given(PathSection))
	is, _, ok = s.For("left").Progress()
	require.True(t, ok)
	assert.Equal(t, was, *is)
	s.SetProgress(nil, "")
	assert.Empty(t, s)
}

// Letting go of all fixed numbers leaves none of them, however deep.
func TestForgetsEveryPin(t *testing.T) {
	s := Sheet{"kind": "mitten"}
	for _, n := range mitt.InSheet() {
		s[n.Path()] = "3"
	}
	s.ForgetPins()
	assert.Equal(t, Sheet{"kind": "mitten"}, s)
}
