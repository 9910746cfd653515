package words

import "thenar/internal/stitch"

// growthLines explain in a line the increases that are no make ones (after the Craft
// Yarn Council's list, from memory).
var growthLines = map[stitch.Op]string{
	stitch.LLI: "left lifted increase: knit into the stitch two rows below the one just worked",
	stitch.RLI: "right lifted increase: knit into the stitch right below the next one, then knit that",
}

// closes says how the yarn overs of a gusset are closed, in the rounds that the
// schedule counts as plain.
const closes = "In the round after each increase, knit the yarn overs through the back loop: that closes their holes."
