package readback

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// smallSlit is a small tube with an opening in the trade's usual wording, worked out by
// hand.
const smallSlit = `Cuff
Cast on 8 stitches. Place a marker and join in the round, without a twist.
Rounds 1–2: (k1, p1) 4 times (8).

Opening
Take the marker off. From here on work to and fro: turn at the end of every row.
Row 1 (right side): Knit (8).
Row 2 (wrong side): K1, p6, k1 (8).
Rows 3–4: Work rows 1–2 once more (8).
Row 5 (right side): Sl1, ssk, k3, yo, k2 (8).
Row 6 (wrong side): P1, sl1 with the yarn in front, k2tog, kfb as seen from the right side, p3 (8).

Hand
Join in the round again: turn, put the marker here, and pull the first stitch of the next round snug.
Round 1: Knit (8).
Bind off all 8 stitches.
`

// A row of the wrong side is met from its other end, and looks on the right side as the
// trade has it: what is purled there is knit here (Craft Yarn Council's list, from memory:
// RS, WS).
func TestRowsAreRead(t *testing.T) {
	m, err := Read(smallSlit)
	require.NoError(t, err)
	rows := m.Parts[1].Rounds
	assert.Equal(t, strings.Fields("k k k k k k k k"), rows[2].Ops)
	assert.Equal(t, strings.Fields("p k k k k k k p"), rows[3].Ops)
	assert.Equal(t, strings.Fields("sl ssk k k k yo k k"), rows[4].Ops)
	assert.Equal(t, strings.Fields("k k k kfb p2tog sl k"), rows[5].Ops)
}

// Rows that are named or worked as no knitter could are refused.
func TestRowsAreRefused(t *testing.T) {
	for _, c := range [][3]string{
		{"Row 1 (right", "Row 1 (wrong", "the wrong side is told, and the other one faces"},
		{"Row 2 (wrong side)", "Row 2", "which side faces is not told"},
		{"Row 2 (wrong", "Round 2 (wrong", "a round follows"},
		{"Rows 3–4: Work", "Rows 3–4 (right side): Work", "no single row"},
		{"From here on work to and fro: ", "", "a row follows"},
		{"Row 6 (wrong side): P1, sl1 with the yarn in front, k2tog, kfb as seen from the right side, p3 (8).\n", "", "the wrong side faces"},
		{"Join in the round again", "Go on", "a round follows"},
		{"kfb as seen from the right side", "kfb", "nobody can tell how it looks"},
		{"Sl1, ssk", "Sl1 with the yarn in front, ssk", "the right side faces already"},
		{"K1, p6, k1", "K1, p5, k1", "1 stitches are left of the round"},
	} {
		_, err := Read(strings.Replace(smallSlit, c[0], c[1], 1))
		assert.ErrorContains(t, err, c[2], "%s for %s", c[1], c[0])
	}
}

// flatThumb is a small thumb on waste yarn in rows, worked out by hand: 4 loops below and 3
// above, of which the first comes last, so that 2 lie before corner 1.
const flatThumb = `Hand
Cast on 8 stitches. Work to and fro: turn at the end of every row.
Row 1 (right side): K2, knit 4 with waste yarn and again with the working yarn, k2 (8).
Row 2 (wrong side): Purl (8).
Bind off all 8 stitches.

Thumb
Take the waste yarn out, loop by loop. Put the 4 loops below it on one needle, the 3 above on another.
The rows begin in the middle: leave the first for the row’s end.
Row 1 (right side): Cast on 1 backward loop, k2, M1 with the strand at corner 1, k4, M1 with the strand at corner 2, k1, cast on 1 backward loop (11).
Bind off all 11 stitches.
`

// A flat thumb's row is read with its corners where the loops below begin and end.
func TestAFlatThumbIsRead(t *testing.T) {
	m, err := Read(flatThumb)
	require.NoError(t, err)
	thumb := m.Parts[1]
	assert.Equal(t, 1, thumb.Moved)
	assert.Equal(t, []string{"CO", "k", "k", cornerM1, "k", "k", "k", "k", cornerM1, "k", "CO"}, thumb.Rounds[0].Ops)
	for _, c := range [][3]string{
		{"leave the first ", "leave the first 2 ", "corner 1 comes after 1 stitches"},
		{"leave the first ", "leave the first 4 ", "3 loops are above"},
		{"leave the first ", "leave the first 0 ", "3 loops are above"},
		{"k4, M1", "k3, M1", "corner 2 comes after 7 stitches"},
		{"k1, cast on 1 backward loop (11)", "k1 (11)", "10 stitches are on the needles"},
	} {
		_, err := Read(strings.Replace(flatThumb, c[0], c[1], 1))
		assert.ErrorContains(t, err, c[2], "%s for %s", c[1], c[0])
	}
}
