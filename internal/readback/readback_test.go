package readback

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// smallMitt is a small mitt in the trade's usual wording, worked out by hand.
const smallMitt = `Cuff
Cast on 8 stitches with a stretchy cast-on, leaving a tail of 20 cm.
Rounds 1–2: (k1, p1) 4 times (8).

Thumb gusset
The round begins with the first stitch of the gusset.
An increase round, then 1 plain round; twice in all. 2 increase rounds, 1 → 5 stitches. Rounds 1, 3.
Round 1: M1L, k1, M1R | knit to the end (10, of which 3 in the gusset).
Round 2: Knit (10, of which 3 in the gusset).
Round 3: K1, M1L, k1, M1R, k1 | k1, (k2, p1) twice (12, of which 5 in the gusset).
Round 4: Knit (12, of which 5 in the gusset).
Stop when it reaches where the thumb parts from the hand.

Hand
Round 1: Slip 5 to waste yarn, cast on a bridge of 1 backward loop, k7 (8).
Round 2: K1, (yo, k2tog) 3 times, k1 (8).

Top
Knit 1 more: the round now begins at the side line.
A decrease round every round; twice in all. 2 decrease rounds, 8 → 2 stitches. Rounds 1, 2.
Round 1: (k2tog) 4 times (4).
Try it on before round 2: it should end 0.6 cm / ¼ in below the tip.
Round 2: Ssk, k2tog (2).
Cut the yarn, draw it through the 2 stitches that are left, pull tight and fasten off inside.

Thumb
Put the 5 held stitches back on the needles. Join the yarn with a 20 cm tail.
Round 1: Pick up and knit 2, k2tog with the strand at corner 1, k3, ssk with the strand at corner 2 (7).
Bind off all 7 stitches in rib: work 2, *slip both back, k2tog, work 1; repeat from *. Cut the yarn, draw it through the last.
Weave in the ends.
`

func TestRead(t *testing.T) {
	m, err := Read(smallMitt)
	require.NoError(t, err)
	require.Len(t, m.Parts, 5)
	cuff, gusset, hand, top, thumb := m.Parts[0], m.Parts[1], m.Parts[2], m.Parts[3], m.Parts[4]
	assert.Equal(t, 8, cuff.CastOn)
	assert.Equal(t, uncoloured(strings.Fields("k p k p k p k p"), 8, -1), cuff.Rounds[1])
	assert.Equal(t, uncoloured(strings.Fields("k M1L k M1R k k k k p k k p"), 12, 5), gusset.Rounds[2])
	assert.Equal(t, strings.Fields("hold hold hold hold hold CO k k k k k k k"), hand.Rounds[0].Ops)
	assert.Equal(t, strings.Fields("k yo k2tog yo k2tog yo k2tog k"), hand.Rounds[1].Ops)
	assert.Equal(t, 1, top.Moved)
	assert.Equal(t, "draw up", top.Finish)
	assert.Equal(t, []string{""}, thumb.From)
	assert.Equal(t, []string{"pick up", "pick up", "k2tog with the gap strand", "k", "k", "k", "ssk with the gap strand"}, thumb.Rounds[0].Ops)
	assert.Equal(t, 7, thumb.Finished)
}

// A line that can't be followed, or that contradicts the needles, is an error.
func TestReadRefuses(t *testing.T) {
	for _, c := range [][3]string{
		{"Cast on 8", "Cast on 9", "are left of the round"},
		{"Rounds 1–2", "Rounds 1–0", "round 1 follows"},
		{"4 times (8)", "4 times (9)", "8 stitches are on the needles"},
		{"4 times (8)", "5 times (10)", "k takes 1, and 0 are left"},
		{"M1L, k1, M1R |", "M1L, k2, M1R |", "4 stitches are in the gusset"},
		{"1 plain round; twice", "2 plain rounds; twice", "the rhythm gives rounds [1 4]"},
		{"1 → 5", "1 → 7", "from 1 to 7 was told"},
		{"Round 4: Knit (12, of which 5 in the gusset).\n", "", "the rhythm ends with round 4, of 3"},
		{"An increase round, then 1 plain round;", "1 plain round, then an increase round, then 1 plain round;", "the rhythm gives rounds []"},
		{"Round 4: Knit (12,", "Rounds 4–5: Knit (12,", "the rhythm ends with round 4, of 5"},
		{"Rounds 1, 3.", "Rounds 1, 4.", "the list says [1 4]"},
		{"Slip 5 to", "Slip 4 to", "are left of the round"},
		{"Put the 5 held", "Put the 4 held", "5 on waste yarn"},
		{"through the 2", "through the 3", "2 stitches are on the needles"},
		{"ssk with the strand at corner 2", "ssk with the strand at corner 2, k0, ssk with the strand at corner 2", "takes 1, and 0 are left"},
		{"ssk with the strand at corner 2", "ssk with the gap strand", "is no stitch"},
		{"corner 1, k3, ssk with the strand at corner 2", "corner 2, k3, ssk with the strand at corner 2", "corner 2 is the end of the round, and 4 stitches are left"},
		{"corner 1, k3", "corner 1, k2, k2tog with the strand at corner 1", "corner 1 is where the picked-up stitches end"},
		{"a bridge of 1 backward loop", "a bridge of 1 backward loops", "is no stitch"},
		{"work 1; repeat", "work 3; repeat", "nobody can tell"},
		{"Rounds 1–2: (k1", "The next round brings the stitches to a multiple of 3, for the ribbing.\nRounds 1–2: (k1", "a multiple of 3"},
		{"Weave in the ends.", "Graft 4 to the rest.", "nobody can tell"},
		{"before round 2: it", "before round 3: it", "round 2 follows"},
		{"Round 4: Knit (12, of which 5 in the gusset).\nStop when it reaches where the thumb parts from the hand.", "Stop when it reaches where the thumb parts from the hand.\nRound 4: Knit (12, of which 5 in the gusset).", "round 3 was to be the last of 4"},
		{"Stop when it reaches where the thumb parts from the hand.", "Stop when it reaches the wrist.\nStop when it ends 1 cm below it.", "the end was told 1 times"},
		{"K1, (yo", "K1, (zo", "is no stitch"},
		{"Bind off all 7 stitches in rib: work 2, *slip both back, k2tog, work 1; repeat from *. Cut the yarn, draw it through the last.\n", "", "at the end 7 stitches"},
	} {
		_, err := Read(strings.Replace(smallMitt, c[0], c[1], 1))
		assert.ErrorContains(t, err, c[2], "%s for %s", c[1], c[0])
	}
}

// uncoloured is a round of which no yarn is told.
func uncoloured(ops []string, after, gusset int) Round {
	return Round{Ops: ops, After: after, Gusset: gusset, Yarns: make([]string, len(ops))}
}
