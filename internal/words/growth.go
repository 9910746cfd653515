package words

import "thenar/internal/stitch"

// growthWays explain in a line how the increases that are no make ones are worked (after
// the Craft Yarn Council's list, from memory).
var growthWays = map[stitch.Op]string{
	stitch.LLI: "knit into the stitch two rows below the one just worked",
	stitch.RLI: "knit into the stitch right below the next one",
}

// growthLine returns what such an increase means, or "" for any other operation. From left
// to right it is worked as the other is, in a mirror, and keeps its name.
func growthLine(op stitch.Op, fromLeft bool) string {
	way := op
	if fromLeft {
		way = op.FromLeft()
	}
	if growthWays[way] == "" {
		return ""
	}
	return op.Words() + ": " + growthWays[way]
}

// closes says how the yarn overs of a gusset are closed, in the rounds that the
// schedule counts as plain.
const (
	closes     = "In the round after each increase, knit the yarn overs through the back loop: that closes their holes."
	closesRows = "In the row after each increase, purl the yarn overs through the back loop: that closes their holes."
)
