package wale

import (
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"

	"thenar/internal/stitch"
)

// The hand's columns go on over the waste yarn, and the thumb stands on the same. What
// comes free above is named once for both hands, and worked back from the other end.
func TestColumnsOverTheWasteYarn(t *testing.T) {
	knit := func(n int) []stitch.Op { return slices.Repeat([]stitch.Op{stitch.Knit}, n) }
	waste := stitch.Round{Ops: append(slices.Repeat([]stitch.Op{stitch.Waste}, 3), knit(4)...), Lead: 3}
	waste.Keep(stitch.ThumbSet)
	first := slices.Concat([]stitch.Op{stitch.CornerM1}, knit(2), []stitch.Op{stitch.CornerM1}, knit(3))
	m := stitch.Mitt{Sections: []stitch.Section{
		{Part: stitch.BelowThumb, CastOn: 7, Rounds: []stitch.Round{{Ops: knit(7), Lead: 3}}},
		{Part: stitch.Hand, Rounds: []stitch.Round{waste, {Ops: knit(7), Lead: 3}}},
		{Part: stitch.Thumb, From: []stitch.Set{stitch.ThumbSet.Above(), stitch.ThumbSet}, Rounds: []stitch.Round{{Ops: first, Lead: 4}}},
	}}
	right, left := Mitt(m, 3), Mirror(m, 3)
	all := []string{"H1", "H2", "H3", "H4", "H5", "H6", "H7"}
	for _, round := range [][]string{right[stitch.BelowThumb][0], right[stitch.Hand][0], right[stitch.Hand][1]} {
		assert.Equal(t, all, round)
	}
	mirrored := []string{"H3", "H2", "H1", "H7", "H6", "H5", "H4"}
	for _, round := range [][]string{left[stitch.BelowThumb][0], left[stitch.Hand][0], left[stitch.Hand][1]} {
		assert.Equal(t, mirrored, round)
	}
	assert.Equal(t, []string{"P3", "P2", "P1", "P4", "H1", "H2", "H3"}, right[stitch.Thumb][0])
	assert.Equal(t, []string{"P4", "P1", "P2", "P3", "H3", "H2", "H1"}, left[stitch.Thumb][0])
}

// In rows the thumb's place lies inside, and its columns have the names that they have in
// the round; the thumb's own row begins among the loops above, and has a seam's edges.
func TestColumnsOverTheWasteYarnInRows(t *testing.T) {
	below := flat(t, stitch.BelowThumb, "k k k k k | k k k | k k k")
	hand := flat(t, stitch.Hand, "k k k k k | waste waste waste | k k k")
	hand.Rounds[0].Keep(stitch.ThumbSet)
	thumb := flat(t, stitch.Thumb, "co k cornerm1 k k k cornerm1 k co", "k k k k k k k k k")
	thumb.From, thumb.Shift, thumb.Across = []stitch.Set{stitch.ThumbSet.Above(), stitch.ThumbSet}, 1, 1
	below.CastOn = 11
	m := stitch.Mitt{Sections: []stitch.Section{below, hand, thumb}}
	right, left := Mitt(m, 3), Mirror(m, 3)
	for part, want := range map[stitch.Part]string{
		stitch.BelowThumb: "S1 H6 H7 H8 H9 H1 H2 H3 H4 H5 S2",
		stitch.Hand:       "S1 H6 H7 H8 H9 H1 H2 H3 H4 H5 S2",
		stitch.Thumb:      "S1 P1 P3 H1 H2 H3 P4 P2 S2",
	} {
		assert.Equal(t, strings.Fields(want), right[part][0], "%s", part)
		other := slices.Clone(left[part][0])
		slices.Reverse(other)
		assert.Equal(t, right[part][0], other, "%s", part)
	}
	assert.Equal(t, right[stitch.Thumb][0], right[stitch.Thumb][1])
}
