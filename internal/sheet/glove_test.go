package sheet

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"thenar/internal/hand"
	"thenar/internal/mitt"
	"thenar/internal/units"
)

// gloves is a sheet with every key of a glove.
const gloves = `{
  "format": "thenar/sheet@1",
  "kind": "glove",
  "unit": "cm",
  "fingers": {"index": "half", "middle": "full", "ring": "open", "little": "half", "thumb": "half", "little_lower": true},
  "gauge": {"swatches": [{"stitches": 28, "width": 10, "rounds": 38, "height": 10}]},
  "hand": {
    "hand_circumference": 19,
    "fingers": {
      "index": {"girth": 6.2, "length": 7}, "middle": {"girth": "6,3", "length": "7 3/4"},
      "ring": {"girth": 5.8, "length": 7.5}, "little": {"girth": 5.1, "length": 5.8}
    },
    "crotches": {"index_middle": 10.1, "middle_ring": 10.1, "ring_little": 8.8}
  },
  "pins": {
    "fingers": {
      "little": {"palm": 5, "back": 5, "stitches": 13, "decreases": 0, "rounds": 12},
      "ring": {"palm": 6, "back": 6, "stitches": 18, "decreases": 1, "rounds": 4},
      "middle": {"palm": 6, "back": 7, "stitches": 19, "decreases": 2, "rounds": 31},
      "index": {"palm": 8, "back": 7, "stitches": 18, "decreases": 3, "rounds": 13}
    },
    "bridges": {"ring_little": 3, "middle_ring": 3, "index_middle": 3},
    "little_lower_rounds": 5
  },
  "worked": {
    "section": "ring", "side": "left", "thumb_end": "half", "round": 3,
    "fingers": {
      "little": {"decrease_rounds": [2, 3], "palm": 5, "back": 5, "stitches": 13, "decreases": 2, "rounds": 12, "edging_rounds": 4, "edging": 12, "edging_rib": 2, "end": "half"},
      "ring": {"palm": 6, "back": 6, "stitches": 18}
    },
    "bridges": {"ring_little": 3, "middle_ring": 3, "index_middle": 3},
    "little_lower_rounds": 5
  }
}`

// Every key of a glove is read where it belongs, and written again so that the bytes
// are the same the second time.
func TestGloveRoundTrip(t *testing.T) {
	s, err := Parse([]byte(gloves))
	require.NoError(t, err)
	written := s.JSON()
	again, err := Parse(written)
	require.NoError(t, err)
	assert.Equal(t, s, again)
	assert.Equal(t, string(written), string(again.JSON()))
	for _, path := range s.Paths() {
		if path != "format" {
			less := s.Clone()
			delete(less, path)
			assert.NotEqual(t, written, less.JSON(), "%s is not written", path)
		}
	}

	req, err := s.Request()
	require.NoError(t, err)
	assert.Equal(t, mitt.Glove, req.Kind)
	assert.Equal(t, [4]mitt.FingerEnd{"half", "full", "open", "half"}, req.Make.Fingers)
	assert.Equal(t, mitt.HalfFinger, req.Make.ThumbEnd)
	assert.False(t, req.Make.Level)
	assert.Equal(t, units.Length(77_500), req.Hand.Fingers.Length[hand.Middle])
	assert.Equal(t, 88*units.Millimetre, req.Hand.Fingers.Crotch[hand.Ring])
	assert.Equal(t, mitt.FingerPins{Palm: mitt.Fix(8), Back: mitt.Fix(7), Stitches: mitt.Fix(18), Decreases: mitt.Fix(3), Rounds: mitt.Fix(13)}, req.Pins.Fingers[hand.Index])
	assert.Equal(t, [3]mitt.Pin{mitt.Fix(3), mitt.Fix(3), mitt.Fix(3)}, req.Pins.FingerBridges)
	assert.Equal(t, mitt.Fix(5), req.Pins.LowerRounds)
	assert.Equal(t, mitt.FingerWorked{
		Palm: 5, Back: 5, Stitches: 13, Decreases: 2, Rounds: 12, Edging: 4, Edged: 12, Rib: 2, Corners: []int{2, 3}, End: mitt.HalfFinger,
	}, req.Progress.Fingers[hand.Little])
	assert.Equal(t, 5, req.Progress.LowerRounds)

	// In another unit only the lengths differ.
	inches := s.In("in")
	assert.Equal(t, "8", inches["pins.fingers.index.palm"])
	assert.NotEqual(t, "6.2", inches["hand.fingers.index.girth"])
	measured, err := inches.Measured()
	require.NoError(t, err)
	for i, want := range req.Hand.Fingers.Girth {
		assert.InDelta(t, want.MM(), measured.Fingers.Girth[i].MM(), 0.002, "an inch has four decimals")
	}
}

// Every fault of a glove names its field, all at once.
func TestGloveFaults(t *testing.T) {
	doc := strings.NewReplacer(`"index": "half"`, `"index": "long"`, `"girth": 6.2`, `"girth": "wide"`, `"palm": 6, "back": 7`, `"palm": 0, "back": 7`).Replace(gloves)
	s, err := Parse([]byte(doc))
	require.NoError(t, err)
	_, err = s.Request()
	for _, want := range []string{
		`fingers.index: is "long"; write one of: full, half, open`,
		"hand.fingers.index.girth: is not a number",
		"pins.fingers.middle.palm: is 0; write a whole number from 1 to 1000",
	} {
		assert.ErrorContains(t, err, want)
	}
}
