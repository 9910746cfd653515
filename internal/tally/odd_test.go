package tally

import (
	"testing"

	"github.com/stretchr/testify/assert"
)

// Where numbers stand together there is one for each size: else it is told, and open.
func TestNumbersAreOneForEachSize(t *testing.T) {
	const sizes = "Sizes: S (M, L)\nCO 40 (44, 48) sts.\n"
	for text, want := range map[string][]string{
		sizes + "Rnd 1: K20 (22), k to end.\nRnd 2: K99. 40 (44, 48) sts.\nRnd 3: K39 (44, 48).": {
			"3: 2 numbers stand together here, and they are for 3 sizes. What follows is open.", "5: 1 stitch is left over: the round takes 39, and there are 40.",
		},
		sizes + "Rnd 1: K5 (6, 7, 8), k to end.":                                     {"3: 4 numbers stand together here, and they are for 3 sizes. What follows is open."},
		sizes + "Rnd 1: K5, m1, k to end. 41 (45) sts":                               {"3: 2 numbers stand together here, and they are for 3 sizes. What follows is open."},
		sizes + "Size M only: Rnd 1: K5 (6, 7), k to end.\nAll sizes:\nRnd 2: Knit.": nil,
		sizes + "Rnds 1–4 (1–5, 1–6): Knit.\nRnd 5 (6, 7): K40 (44, 48).":            nil,
		sizes + "Rnd 1: K20, m1, k20 (24, 28). (41, 45, 49 sts)":                     nil,

		// rounds for some sizes only leave no gap in the numbers of the others
		sizes + "Rnd 1: Knit.\nSizes M and L only:\nRnd 2: Knit.\nAll sizes:\nRnd 3: Knit.": nil,
		sizes + "Rnd 1: Knit.\nAll sizes:\nRnd 3: Knit.":                                    {"5: Round 3 follows round 1: what is between is not told."},
	} {
		assert.Equal(t, want, tells(text), text)
	}
}
