package readback

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// smallGlove is a small glove with three fingers in the trade's usual wording, worked out by
// hand: 3 stitches for the thumb, then 4, 2 and 6 of the other 12 beside a bridge of 1, and
// bridges of 1 and 2 between the fingers.
const smallGlove = `Hand
Cast on 14 stitches. Place a marker and join in the round, without a twist.
Round 1: Slip 3 to waste yarn, cast on a bridge of 1 backward loop, k11 (12).

Little finger
Knit 7 more, on to the little finger: the round now begins there.
Its round: 2 of the palm, 2 of the back, 1 of the bridge.
Round 1: k4, slip 8 to waste yarn for the other three fingers, cast on a bridge of 1 backward loop (5).
Bind off all 5 stitches. Cut the yarn, draw it through the last.
Weave in its end, inside, before you go on.

Ring finger
Put the 8 stitches held for the other three fingers back on the needles. Join the yarn.
Pick up one in the bridge’s 1 loop.
Its round: 1 picked up, 1 of the back, 2 of the bridge, 1 of the palm.
Round 1: Pick up and knit 1, k2tog with the strand at corner 1, slip 6 to waste yarn for the index finger, cast on a bridge of 2 backward loops, ssk with the strand at corner 2 (5).
Bind off all 5 stitches. Cut the yarn, draw it through the last.
Weave in its 2 ends, inside, before you go on.

Index finger
Put the 6 stitches held for the index finger back on the needles. Join the yarn.
Pick up one in each of the bridge’s 2 loops.
Its round: 2 picked up, 3 of the back, 3 of the palm.
Round 1: Pick up and knit 2, k2tog with the strand at corner 1, k4, ssk with the strand at corner 2 (8).
Cut the yarn. Draw it through the 8 stitches left.
Turn it inside out and weave in its 2 ends: no loose thread may stay in the tip.

Thumb
Put the 3 held stitches back on the needles. Join the yarn.
Round 1: Pick up and knit 2, k2tog with the strand at corner 1, k1, ssk with the strand at corner 2 (5).
Bind off all 5 stitches. Cut the yarn, draw it through the last.
`

// The gaps of a thumb and of two fingers are open at once; each keeps its own two strands
// and its own bridge.
func TestAGloveIsRead(t *testing.T) {
	m, err := Read(smallGlove)
	require.NoError(t, err)
	require.Len(t, m.Parts, 5)
	assert.Equal(t, 7, m.Parts[1].Moved)
	assert.Equal(t, []string{"other three fingers"}, m.Parts[2].From)
	assert.Equal(t, []string{"index finger"}, m.Parts[3].From)
	assert.Equal(t, []string{""}, m.Parts[4].From)
}

// What is said of a finger and contradicts the needles is refused.
func TestAGloveIsRefused(t *testing.T) {
	for _, c := range [][3]string{
		{"in the bridge’s 1 loop", "in each of the bridge’s 2 loops", "the bridge has 1 stitches"},
		{"in each of the bridge’s 2 loops", "in each of the bridge’s 3 loops", "the bridge has 2 stitches"},
		{"Pick up and knit 2, k2tog with the strand at corner 1, k4", "Pick up and knit 1, k2tog with the strand at corner 1, k4", "7 stitches are on the needles"},
		{"2 of the palm, 2 of the back, 1 of", "3 of the palm, 1 of the back, 1 of", "differ by more than one"},
		{"2 of the palm, 2 of the back, 1 of", "2 of the palm, 1 of the back, 2 of", `"2 of the bridge" was told`},
		{"1 of the back, 2 of the bridge, 1 of the palm", "1 of the back, 1 of the bridge, 2 of the palm", `"2 of the palm" was told`},
		{"2 picked up, 3 of the back", "3 picked up, 2 of the back", `"3 picked up" was told`},
		{"2 picked up, 3 of the back, 3", "2 picked up, 3 of the back, 2", "7 stitches were told of 8"},
		{"Weave in its 2 ends", "Weave in its end", "there are 2 ends"},
		{"Weave in its end", "Weave in its 2 ends", "there are 1 ends"},
		{"k4, slip 8", "k2tog with the strand at corner 1, k3, slip 8", "there is no strand left"},
		{"for the index finger back", "for the other three fingers back", "on waste yarn"},
	} {
		_, err := Read(strings.Replace(smallGlove, c[0], c[1], 1))
		assert.ErrorContains(t, err, c[2], "%s for %s", c[1], c[0])
	}
}
