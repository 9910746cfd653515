package tally

import (
	"fmt"
	"testing"

	"github.com/stretchr/testify/assert"
)

// tells returns the lines and messages of what is told of a text.
func tells(text string) (list []string) {
	for _, f := range worked(text).Findings {
		list = append(list, fmt.Sprintf("%d: %s", f.At.Line, f.Message))
	}
	return list
}

// Rows that turn before their end are worked stitch by stitch: what waits stays on the needle,
// on both sides in a round. The counts are worked out by hand from how a heel is turned (common
// practice, no source).
func TestRowsThatTurn(t *testing.T) {
	const heel = "CO 60 sts. Join.\nKnit 3 rounds.\nKnit first 15 sts, turn.\nNext row: Sl 1, p29, turn.\nRow 1: *Sl 1, k1; rep from * to end.\nRow 2: Sl 1, purl to end.\nRep these 2 rows 3 times more.\n" +
		"Row 1: K17, skpo, k1, turn.\nRow 2: Sl 1, p5, p2tog, p1, turn.\nRow 3: Sl 1, k to 1 st before gap, skpo, k1, turn.\nRow 4: Sl 1, p to 1 st before gap, p2tog, p1, turn.\nRep rows 3 and 4 until all heel sts have been worked. 18 sts remain.\n"
	for text, want := range map[string][]string{
		heel + "Next rnd: K18, pick up and knit 15 sts, k30 instep sts, pick up and knit 15 sts. 78 sts.":                                                                        nil,
		heel + "Next rnd: K18, pick up and knit 15 sts, k30 instep sts, pick up and knit 15 sts. 76 sts.":                                                                        {"13: There are 78 stitches, not 76."},
		heel + "Next rnd: K18, pick up and knit 15 sts, k32 instep sts, pick up and knit 15 sts. 78 sts.":                                                                        {"13: Only 30 stitches are left in the round here, and this takes 32."},
		heel + "Next rnd: K18, pick up and knit 15 sts, k30, pick up and knit 15 sts, k9. The rnd now begins at the centre of the heel. 78 sts.\nNext rnd: K9, m1, k69. 79 sts.": nil,

		// a gap is where the work was turned, and a wrapped stitch the one after it
		"CO 30 sts.\nRow 1: K24, w&t.\nRow 2: P18, w&t.\nRow 3: K to wrapped st, k the wrapped st tog with its wrap, w&t.\nRow 4: P19, turn.\nRow 5: Knit.":                           nil,
		"CO 30 sts.\nRow 1: K24, w&t.\nRow 2: P18, w&t.\nRow 3: K25, w&t.\nRow 4: P20.":                                                                                               {"4: Only 24 stitches are left in the round here, and this takes 25."},
		"CO 30 sts.\nRow 1: K24, turn.\nRow 2: DS, p to end.\nRow 3: DS, k to DS, turn.":                                                                                              nil,
		"CO 40 sts.\nKnit 2 rounds.\nRow 1: K19, turn.\nRow 2: DS, p to last st, turn.\nRow 3: DS, k to DS, turn.\nRow 4: DS, p to DS, turn.\nNext rnd: Knit across all sts. 40 sts.": nil,

		// in a flat piece: a wedge, and a thumb on some of the stitches
		"CO 34 sts.\nRow 1: K24, turn.\nRow 2: Sl 1, k to end.\nRow 3: K34.": nil,
		"CO 34 sts.\nRow 1: K24, turn.\nRow 2: Sl 1, k24.\nRow 3: Knit.":     {"3: Only 23 stitches are left in the round here, and this takes 24."},
		"CO 58 sts.\nRow 1: Purl.\nNext row: K37, turn, cast on 2 sts.\nNext row: P14, turn, cast on 2 sts.\nWork 8 rows in st st on these 16 sts.\nCast off in rib.\nRejoin wool and knit up 4 sts, k to end. (50 sts.)": nil,
		"CO 58 sts.\nRow 1: Purl.\nNext row: K37, turn.\nNext row: P12, turn.\nWork 6 rows in st st over these 12 thumb sts.\nCast off.\nRejoin yarn, pick up and knit 2 sts, k to end. (50 sts.)":                        {"7: There are 48 stitches, not 50."},
	} {
		assert.Equal(t, want, tells(text), text)
	}
}

// The end of a needle is that of the part of a round which is worked again on the others.
func TestNeedlesShareARound(t *testing.T) {
	for text, want := range map[string][]string{
		"CO 24 sts.\nRnd 1: *K1, m1, k to last st on needle, m1, k1; rep from * on second needle. 28 sts.":    nil,
		"CO 24 sts.\nRnd 1: *K1, ssk, k to last 3 sts of needle, k2tog, k1; rep from * once more. 20 sts.":    nil,
		"CO 24 sts.\nRnd 1: *K1, ssk, k to last 3 sts of needle, k2tog, k1; rep from * 3 times more. 16 sts.": nil,
		"CO 24 sts.\nRnd 1: *K1, ssk, k to last 2 sts of needle, k2tog, k1; rep from * once more. 20 sts.":    {"2: Only 1 stitch is left in the round here, and this takes 2."},
		"CO 24 sts.\nRnd 1: *K1, ssk, k to last 3 sts of needle, k2tog, k1; rep from * once more. 22 sts.":    {"2: There are 20 stitches, not 22."},
	} {
		assert.Equal(t, want, tells(text), text)
	}
}

// Of a graft both sides are counted, however they are told.
func TestGraftsHaveTwoSides(t *testing.T) {
	for graft, n := range map[string]int{
		"Graft the two sets of 8 sts together.":                     16,
		"Graft 6 sts from front to 6 sts from back.":                12,
		"Graft the toe: 8 sts on each needle.":                      16,
		"Graft the 14 sts of the sole to the 14 sts of the instep.": 28,
		"Graft the remaining 20 sts.":                               20,
		"K4. Graft the 2 sets of 8 sts together.":                   16,
	} {
		assert.Empty(t, tells(fmt.Sprintf("CO %d sts.\nRnd 1: Knit.\n%s", n, graft)), graft)
		assert.NotEmpty(t, tells(fmt.Sprintf("CO %d sts.\nRnd 1: Knit.\n%s", n+2, graft)), graft)
	}
}
