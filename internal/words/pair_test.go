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
		"Both hands are alike: make two.": {},
		"The left hand has its own sheet: palm and back change places, the thumb is mirrored.":                   {Pair: Pair{Parts: []stitch.Part{stitch.Thumb}}},
		"The right hand has its own sheet: palm and back change places, the cuff, gusset and hand are mirrored.": {Left: true, Pair: Pair{Parts: []stitch.Part{stitch.Cuff, stitch.Gusset, stitch.Hand}}},
		"The left hand has its own sheet: 18 rounds of gusset instead of 20.":                                    {Pair: Pair{[]stitch.Part{stitch.Gusset}, numbers[1:]}},
		"The left hand has its own sheet: 2 stitches decreased at the thumb’s corners instead of 1, and more.":   {Pair: Pair{[]stitch.Part{stitch.Gusset}, numbers}},
		"The left hand has its own sheet: palm and back change places.": {
			Pair: Pair{Parts: []stitch.Part{stitch.CuffPlain, stitch.Gusset, stitch.Hand, stitch.Little, stitch.UpperHand, stitch.Ring, stitch.Middle, stitch.Index, stitch.Thumb}},
		},
	} {
		assert.Equal(t, want, h.pair())
		assert.LessOrEqual(t, len(strings.Fields(want)), 20, want)
	}
}
