package tally

import (
	"testing"

	"github.com/stretchr/testify/assert"
)

// Phrases that patterns use, each with what is told of it: the count comes out in the one, and in
// the other it doesn't.
func TestPhrases(t *testing.T) {
	for text, want := range map[string][]string{
		"CO 42 sts.\nRnd 1: *K2, p2* around, end k2.":                                        nil,
		"CO 42 sts.\nRnd 1: *K2, p2; rep from *, ending with k1.":                            {"2: The repeat takes 4 stitches, and there are 41 stitches for it: 10 times, and 1 left over."},
		"CO 84 sts.\nRnd 1: With MC, k40, with CC, k44.":                                     nil,
		"CO 84 sts.\nRnd 1: With MC, k40, with CC, k45.":                                     {"2: Only 44 stitches are left in the round here, and this takes 45."},
		"CO 20 sts.\nRnd 1: K2tbl, k18.":                                                     nil,
		"CO 20 sts.\nRnd 1: K2tbl, k19.":                                                     {"2: Only 18 stitches are left in the round here, and this takes 19."},
		"CO 20 sts.\nRnd 1: Knit.\nUse a three-needle bind-off over 9 sts from each needle.": {"3: There are 20 stitches, not 18."},

		// what may be done where something isn't counted is no alarm
		"CO 40 sts.\nRnd 1: K10, slip 9 sts to a holder, k to end.\nRnd 2: K5, flurb 3 sts.\nBO.": {"3: This was not understood."},
		"CO 40 sts.\nRnd 1: K10, slip 9 sts to a holder, k to end.\nRnd 2: Knit.\nBO.":            {"2: 9 stitches were put aside here and never taken up again."},

		// yarn that is fastened off ends a piece
		"CO 12 sts.\nRnd 1: (K2tog) 6 times.\nBreak yarn; thread through.\nThumb\nCast on 6 sts.\nBO 6 sts.": nil,
		"CO 12 sts.\nRnd 1: (K2tog) 6 times.\nBO 6 sts.\nThumb\nCast on 6 sts.\nKnit 2 rnds.":                {"5: At the end 6 stitches are still on the needles."},

		// what is worked for one hand and for the other
		"CO 40 sts.\nRight mitten: K2, k8 with waste yarn, k to end.\nLeft mitten: K30, k8 with waste yarn, k to end.\nKnit 2 rnds.\nBO 40 sts.\nRemove the waste yarn and place the live sts on dpns: 8 sts below and 8 sts above. 16 sts\nBO 16 sts.": nil,
		"CO 40 sts.\nRight mitten: K2, k8 with waste yarn, k to end.\nLeft mitten: K33, k8 with waste yarn, k to end.\nKnit 2 rnds.\nBO 40 sts.": {
			"2: 8 stitches were put aside here and never taken up again.", "3: Only 7 stitches are left in the round here, and this takes 8.",
		},

		// how many rounds there are in all, and on which side rows are worked
		"CO 30 sts.\nRnd 1: Knit.\nRnd 2: Purl.\nRep rnds 1-2 four more times (10 rnds worked).":                        nil,
		"CO 30 sts.\nRnd 1: Knit.\nRnd 2: Purl.\nRep rnds 1-2 four more times (12 rnds worked).":                        {"4: This comes to 10 rounds, not 12."},
		"CO 30 sts.\nRnd 1: Knit.\nRnd 2: Purl.\nWork rnds 1-2 four times more. (12 rnds)":                              {"4: This comes to 10 rounds, not 12."},
		"CO 30 sts.\nRow 1 (WS): Knit.\nRow 2 (WS): Knit.":                                                              {"3: Rows 1 and 2 can't be on the same side."},
		"CO 30 sts.\nRow 1 (RS): Knit.\nRow 2: Purl.\nRow 3 (WS): Knit.":                                                {"4: Rows 1 and 3 must be on the same side."},
		"CO 30 sts.\nRow 1 (RS): Knit.\nRow 2 (WS): Purl.\nRows 3-5: Knit.\nRow 6 (WS): Purl.\nHand\nRow 1 (WS): Knit.": nil,

		// rounds between single asterisks
		"CO 40 sts.\n*Knit 2 rnds.\nNext rnd: K1, m1, k to end.*\nRep from * to * 4 times more. 45 sts.": nil,
		"CO 40 sts.\n*Knit 2 rnds.\nNext rnd: K1, m1, k to end.*\nRep from * to * 4 times more. 46 sts.": {"4: There are 45 stitches, not 46."},

		"CO 12 sts.\nRnd 1: Knit.\nBO.\nThe thumb: Put the 12 stitches back on three needles, four on each.\nBO.": {"4: There are no stitches that wait: they are worked already, or were never put aside."},

		// how often in all, and rounds that are not the same each time
		"CO 40 sts.\nRnd 1: K1, m1, k to end.\nRnd 2: Knit.\nWork rnds 1-2 a total of 5 times. 45 sts.":                                                                  nil,
		"CO 40 sts.\nRnd 1: K1, m1, k to end.\nRnd 2: Knit.\nWork rnds 1-2 5 times in total. 46 sts.":                                                                    {"4: There are 45 stitches, not 46."},
		"CO 45 sts.\nRnd 1: [K7, k2tog] 5 times.\nRnd 2: [K6, k2tog] 5 times. 35 sts.\nContinue decreasing in this manner every round until 10 sts remain.\nRnd 8: K10.": nil,
		"CO 45 sts.\nRnd 1: [K7, k2tog] 5 times.\nRnd 2: [K6, k2tog] 5 times. 35 sts.\nContinue decreasing in this manner every round until 11 sts remain.":              {"4: From 35 stitches it never comes to 11, by 5 at a time."},
		"CO 45 sts.\nRnd 1: [K7, k2tog] 5 times. 40 sts.\nRnd 2: Knit.\nRep last 2 rnds, working 1 st fewer between decreases, until 20 sts remain.\nRnd 3: K20.":        nil,
		"CO 45 sts.\nRnd 1: [K7, k2tog] 5 times. 40 sts.\nRnd 2: Knit.\nRep last 2 rnds 3 times more, working one fewer st before each k2tog. 26 sts.":                   {"4: There are 25 stitches, not 26."},

		"CO 10 sts.\nRnd 1: [K2tog] 5 times.\nRep last rnd 3 times more, working 1 st fewer each time.\nRnd 5: Knit. 40 sts.": nil, // no count is below nothing

		// a comma before the numbers of the other sizes
		"Sizes: S, (M, L)\nCO 38, (42, 46) sts.\nRnd 1: K18, (20, 22), m1, k2, m1, k18, (20, 22).\nBO 40, (44, 48) sts.": nil,
		"Sizes: S, (M, L)\nCO 38, (42, 46) sts.\nRnd 1: K18, (20, 22), m1, k2, m1, k18, (20, 23).":                       {"3: Only 22 stitches are left in the round here, and this takes 23."},

		"CO 40 sts.\nRnd 1: K18, pm, k4, pm, k18.\nRnd 2: K to m, sm, m1, k to m, m1, sm, k to end.\nRep rnd 2 twice more — 10 sts between markers; 46 sts total.": nil,
		"CO 40 sts.\nRnd 1: K18, pm, k4, pm, k18.\nRnd 2: K to m, sm, m1, k to m, m1, sm, k to end.\nRep rnd 2 twice more — 9 sts between markers; 46 sts total.":  {"4: Between the markers there are 10 stitches, not 9."},

		"Using long-tail CO, cast on 80 sts.\nRnd 1: K81.": {"2: Only 80 stitches are left in the round here, and this takes 81."},

		// how often it goes from marker to marker isn't known where they are lost
		"Rnd 1: *K10, pm; rep from * to end.\nRnd 2: Knit. 40 sts.\nRnd 3: *K to 2 sts before m, k2tog, sm; rep from * to end. 36 sts.\nRnd 4: K37.": {"4: Only 36 stitches are left in the round here, and this takes 37."},

		// rounds of another section, and more of the same
		"CO 40 sts.\nRnd 1: *K2, p2; rep from * to end.\nWork 5 more rnds in rib as set.\nRnd 7: Knit.":                                        nil,
		"CO 40 sts.\nRnd 1: *K2, p2; rep from * to end.\nWork 4 more rnds in rib.\nHand\nRnd 1: K39, m1, k1. 41 sts.\nRep rnd 1 of rib twice.": {"2: The repeat takes 4 stitches, and there are 41 stitches for it: 10 times, and 1 left over."},

		// stitches taken one at a time, and a rib of a flat piece ends as it begins
		"CO 40 sts.\nRnd 1: Knit, decreasing 1 st evenly. 39 sts.":                                   nil,
		"CO 40 sts.\nRnd 1: Knit, decreasing 1 st evenly. 38 sts.":                                   {"2: There are 39 stitches, not 38."},
		"CO 42 sts.\nRow 1: Knit.\nWork 6 rows in k2, p2 rib.\nCast off.":                            nil,
		"CO 42 sts.\nRnd 1: Knit.\nWork 6 rnds in k2, p2 rib.\nCast off.":                            {"3: The repeat takes 4 stitches, and there are 42 stitches for it: 10 times, and 2 left over."},
		"CO 30 sts.\nRow 1: Knit.\nWith RS facing, rejoin yarn and knit up 4 sts, k to end. 34 sts.": nil,
	} {
		assert.Equal(t, want, tells(text), text)
	}
}

// Stitches that are put aside, taken up and begun anew, in the words that patterns use.
func TestStitchesWait(t *testing.T) {
	const glove = "CO 40 sts. Join.\nKnit 3 rounds.\nLITTLE FINGER\nK6, put the next 28 sts on scrap yarn, cast on 2 sts, k6. (14 sts)\nBO.\nRING FINGER\n"
	const thumb = "CO 14 sts.\nRnd 1: Knit.\nBreak yarn and leave the 14 sts on a holder.\nHand\nCO 40 sts.\nRnd 1: Knit.\n"
	for text, want := range map[string][]string{
		thumb + "Next rnd: K to end, then knit the 14 thumb sts from the holder. 54 sts.": nil,
		thumb + "Next rnd: K to end, then knit the 14 thumb sts from the holder. 55 sts.": {"7: There are 54 stitches, not 55."},
		"CO 14 sts.\nRnd 1: Knit.\nCut yarn, slip sts onto scrap yarn.\nHand\nCO 40 sts.": {"3: 14 stitches were put aside here and never taken up again."},

		"CO 40 sts.\nRnd 1: K8 with waste yarn and again with the working yarn, k to end.\nLeave the ends of the waste yarn hanging.\nCut the yarn and leave the tail on hold.\nRnd 2: K41.": {
			"2: 8 stitches were put aside here and never taken up again.", "5: Only 40 stitches are left in the round here, and this takes 41.",
		},

		"CO 44 sts.\nRnd 1: K20, pm, K4, pm, K20.\nRnd 2: K to marker, remove it, CO 4 sts, k to end. 48 sts.": nil,
		"CO 44 sts.\nRnd 1: K20, pm, K4, pm, K20.\nRnd 2: K to marker, remove it, CO 4 sts, k to end. 44 sts.": {"3: There are 48 stitches, not 44."},

		glove + "From the held sts take the first 6 and the last 6, leaving 16 on hold.\nJoin yarn, k12. (12 sts)\nBO.\nPut the 16 held sts on needles, join yarn, knit them, pick up and knit 4 sts. (20 sts)\nBO.": nil,
		glove + "From the held sts take the first 6 and the last 6, leaving 15 on hold.\nBO.\nPut the 16 held sts on needles.\nBO.":                                                                                  {"7: 28 stitches wait for this, not 27."},

		"CO 44 sts.\nKnit 10 rounds. BO.\nFLAP\nPick up and knit 20 sts. CO 20 sts and join in the round: 40 sts.\nRnd 1: K40.\nBO.":                                                         nil,
		"CO 44 sts.\nKnit 10 rounds. BO.\nFLAP\nWith RS facing and working along the back of the hand, 6 rounds below the rib, pick up and knit 20 sts. CO 20 sts.\nRnd 1: K41.\nBO 40 sts.": {"5: Only 40 stitches are left in the round here, and this takes 41."},

		"CO 3 sts.\nKnit 6 rows. Do not turn, but rotate work, pick up and knit 3 sts along the edge, rotate again, pick up and knit 3 sts from cast-on edge. [9 sts]": nil,
		"CO 3 sts.\nKnit 6 rows. Do not turn, but rotate work, pick up and knit 3 sts along the edge, rotate again, pick up and knit 3 sts from cast-on edge. [8 sts]": {"2: There are 9 stitches, not 8."},

		"CO 3 sts and work 40 rounds of i-cord. BO these 3 sts.": nil,
		"CO 3 sts and work 40 rounds of i-cord. BO these 4 sts.": {"1: There are 3 stitches, not 4."},

		"CO 28 sts.\nRnd 1: K26, and you're back at 28 sts.": {"2: 2 stitches are left over: the round takes 26, and there are 28."},

		"CO 30 sts.\nRow 1: K24, w&t.\nRow 2: P18, w&t.\nRow 3: K to 1 st before last wrapped st, w&t.\nRow 4: P16, w&t.":                 nil,
		"CO 30 sts.\nRow 1: K24, turn.\nRow 2: Sl 1, k17, turn.\nRow 3: K to wrapped st, k it together with its wrap, turn.\nRow 4: P27.": {"5: Only 25 stitches are left in the round here, and this takes 27."},
	} {
		assert.Equal(t, want, tells(text), text)
	}
}
