package words

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"

	"thenar/internal/stitch"
)

// What is said of the other hand names it, and in what it differs, in at most 20 words.
func TestTheOtherHandIsTold(t *testing.T) {
	numbers := []string{"2 stitches decreased at the thumb’s corners instead of 1", "18 rounds of gusset instead of 20"}
	for want, h := range map[string]Hands{
		"Both hands are alike: make two.":                                                                         {},
		"The left hand is the mirror image, with words of its own for the thumb.":                                 {Pair: Pair{Parts: []stitch.Part{stitch.Thumb}}},
		"The right hand is the mirror image, with words of its own for the cuff, gusset and hand.":                {Left: true, Pair: Pair{Parts: []stitch.Part{stitch.Cuff, stitch.Gusset, stitch.Hand}}},
		"The left hand has words of its own: 18 rounds of gusset instead of 20.":                                  {Pair: Pair{[]stitch.Part{stitch.Gusset}, numbers[1:]}},
		"The left hand has words of its own: 2 stitches decreased at the thumb’s corners instead of 1, and more.": {Pair: Pair{[]stitch.Part{stitch.Gusset}, numbers}},
	} {
		assert.Equal(t, want, h.pair())
		assert.LessOrEqual(t, len(strings.Fields(want)), 20, want)
	}
}
