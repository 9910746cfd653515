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
Knit 7 stitches of the next round. The little finger begins here: move the marker here.
Its round: 2 of the palm, 2 of the back, 1 of the bridge.
The 1 loop is the bridge between fingers. Go on with the first of the 4 stitches: pulled snug, it closes the round.
Round 1: k4, slip 8 to waste yarn for the other three fingers, cast on a bridge of 1 backward loop (5).
Bind off all 5 stitches. Cut the yarn, draw it through the last.
Weave in its end, inside, before you go on.

Ring finger
Of the 8 held for the other three fingers take up the first and the last. The 6 between them stay where they are. Fold the little finger down, outside towards you. Join the yarn at its bridge’s right end.
Pick up along the bridge, one in its loop.
At both corners lift the loose strand; it goes with the held stitch beside it.
Its round: 1 picked up, 1 of the back, 2 of the bridge, 1 of the palm.
After the 2 loops knit on along the palm, and pull the first stitch snug.
Round 1: Pick up and knit 1, k2tog with the strand at corner 1, leave 6 on waste yarn for the index finger, cast on a bridge of 2 backward loops, ssk with the strand at corner 2 (5).
Bind off all 5 stitches. Cut the yarn, draw it through the last.
Weave in its 2 ends, inside, before you go on.

Index finger
Put the 6 stitches held for the index finger back on the needles. Join the yarn.
Pick up along the bridge, one in each of its 2 loops.
Its round: 2 picked up, 3 of the back, 3 of the palm.
Round 1: Pick up and knit 2, k2tog with the strand at corner 1, k4, ssk with the strand at corner 2 (8).
Cut the yarn. Draw it through the 8 stitches left.
Turn it inside out and weave in its 2 ends: no loose thread may stay in the tip.

Thumb
Put the 3 held stitches back on the needles. Join the yarn.
Pick up along the bridge, at both ends. Then turn it fingers up for the held stitches.
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
		{"one in its loop", "one in each of its 2 loops", "the bridge has 1 stitches"},
		{"in each of its 2 loops", "in each of its 3 loops", "the bridge has 2 stitches"},
		{"at both ends. ", "at both ends and between its stitches. ", "the bridge has 1 stitches"},
		{"at both ends. ", "at both ends. 1 more comes out of the loop in the middle. ", "3 were to be picked up"},
		{"at both ends. ", "at both ends. 2 more come out of the loops in the middle. ", "the bridge has 1 loops"},
		{"the first and the last.", "the first 2 and the last.", "8 stitches are held"},
		{"the first and the last. The 6", "the first 2 and the last. The 5", "5 were said to stay after the first 2, and 6 stay after 1"},
		{"leave 6 on waste yarn", "slip 6 to waste yarn", "6 were said to stay"},
		{"The 1 loop is", "The 2 loops are", "2 loops were told, and 1 are cast on"},
		{"first of the 4 stitches", "first of the 3 stitches", "the 3 stitches before the bridge"},
		{"knit on along the palm", "knit on along the back", "along the back was told"},
		{"k4, slip 8", "k2tog with the strand at corner 1, k3, slip 8", "there is no strand left"},
		{"Pick up and knit 2, k2tog with the strand at corner 1, k4", "Pick up and knit 1, k2tog with the strand at corner 1, k4", "7 stitches are on the needles"},
		{"2 of the palm, 2 of the back, 1 of", "3 of the palm, 1 of the back, 1 of", "differ by more than one"},
		{"2 of the palm, 2 of the back, 1 of", "2 of the palm, 1 of the back, 2 of", `"2 of the bridge" was told`},
		{"1 of the back, 2 of the bridge, 1 of the palm", "1 of the back, 1 of the bridge, 2 of the palm", `"2 of the palm" was told`},
		{"2 picked up, 3 of the back", "3 picked up, 2 of the back", `"3 picked up" was told`},
		{"2 picked up, 3 of the back, 3", "2 picked up, 3 of the back, 2", "7 stitches were told of 8"},
		{"Weave in its 2 ends", "Weave in its end", "there are 2 ends"},
		{"Weave in its end", "Weave in its 2 ends", "there are 1 ends"},
		{"for the index finger back", "for the other three fingers back", "on waste yarn"},
	} {
		_, err := Read(strings.Replace(smallGlove, c[0], c[1], 1))
		assert.ErrorContains(t, err, c[2], "%s for %s", c[1], c[0])
	}
}
