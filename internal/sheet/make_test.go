package sheet

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"thenar/internal/mitt"
	"thenar/internal/units"
)

const ways = `{
  "format": "thenar/sheet@1",
  "kind": "mitten",
  "thumb": {"construction": "gusset", "place": "palm", "inset": 3, "increase": "lifted"},
  "piece": {"direction": "down", "flat": false},
  "cuff": {"kind": "gauntlet", "knits": 2, "purls": 1, "upper_girth": "28,5", "depth": 9},
  "top": {"kind": "banded", "band": 3, "wedges": 5},
  "fingers": {"index": "half", "middle": "open", "little": "half", "thumb": "full", "cap": true, "little_lower": false},
  "gauge": {"swatches": [{"stitches": 24, "width": 10}]},
  "hand": {"hand_circumference": 19}
}`

// All that says how a mitt is made is read, and written as it was read.
func TestReadsHowItIsMade(t *testing.T) {
	s, err := Parse([]byte(ways))
	require.NoError(t, err)
	again, err := Parse(s.JSON())
	require.NoError(t, err)
	assert.Equal(t, s, again)
	r, err := s.Request()
	require.NoError(t, err)
	assert.Equal(t, mitt.Make{
		Construction: mitt.ByGusset, Place: mitt.InPalm, Inset: mitt.Fix(3), Increase: mitt.Lifted, Direction: mitt.Down,
		Cuff: mitt.Gauntlet, UpperGirth: 285 * units.Millimetre, CuffDepth: 90 * units.Millimetre,
		Top: mitt.BandedTop, Band: mitt.Fix(3), Wedges: mitt.Fix(5),
		Fingers: [4]mitt.FingerEnd{mitt.HalfFinger, mitt.OpenFinger, "", mitt.HalfFinger}, ThumbEnd: mitt.FullFinger, Cap: true, Level: true,
	}, r.Make)
	assert.Equal(t, mitt.Stitches{Repeat: 2, Rib: 3, Knits: 2}, r.Stitch)
	assert.Equal(t, mitt.Mitten, r.Kind)
}

// A sheet without these keys means what it meant before there were any.
func TestMadeAsUsual(t *testing.T) {
	s, err := Parse([]byte(full))
	require.NoError(t, err)
	r, err := s.Request()
	require.NoError(t, err)
	assert.Zero(t, r.Make)
}

// A mitten whose thumb is not made is a mitten without one.
func TestMadeWithoutAThumb(t *testing.T) {
	for _, c := range [][3]string{
		{"mitten", "none", "mitten_without_thumb"},
		{"mitten", "gusset", "mitten"},
		{"mitten", "", "mitten"},
		{"mitten_without_thumb", "none", "mitten_without_thumb"},
	} {
		assert.Equal(t, c[2], string(Sheet{PathKind: c[0], mitt.PathConstruction: c[1]}.Kind()), "%v", c)
	}
}
