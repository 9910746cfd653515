package words

import (
	"fmt"
	"strings"

	"thenar/internal/stitch"
)

// What is said of a thumb without a gusset (a peasant or afterthought thumb; common
// practice, no source).

// onWaste are the sentences on the round that knits the thumb's stitches with waste
// yarn.
func onWaste(s *stitch.Section) []string {
	if len(s.Rounds) == 0 || count(s.Rounds[0], stitch.Waste) == 0 {
		return nil
	}
	where := "The first round begins with the thumb’s place: knit those stitches"
	if s.Seam > 0 {
		where = "The thumb’s place lies inside the first row: knit its stitches"
	}
	return []string{
		where + " with waste yarn, smooth and of another colour.",
		"Slip what you knitted with it back, and knit it again with the working yarn. Leave the ends of the waste yarn hanging.",
	}
}

// freed are the sentences on a thumb that begins by taking the waste yarn out. Its round
// runs along the loops above as it would along a bridge; see along.
func (h Hands) freed(s *stitch.Section) []string {
	first := s.Rounds[0]
	corners := count(first, stitch.CornerM1)
	switch {
	case corners == 0:
		return nil
	case s.Seam > 0:
		return h.rowFreed(s)
	}
	from, to := h.sides()
	along := "Knit along the loops above"
	if first.Lead == corners {
		along = "Work both corners"
	}
	return []string{
		takenOut(len(first.Ops)-first.Lead, first.Lead-corners),
		heldDown + h.joinAt("the "+from+" corner"),
		fmt.Sprintf("%s from %s to %s. Then turn it fingers up for the loops below.", along, from, to),
		atCorners,
		"Put a marker before the first corner’s stitch.",
	}
}

// takenOut says how the waste yarn is taken out, with so many loops below and above it.
func takenOut(below, above int) string {
	const out = "Take the waste yarn out, loop by loop. "
	if above == 0 {
		return out + fmt.Sprintf("Put the %s below it on a needle.", Plural(below, "loop"))
	}
	return out + fmt.Sprintf("Put the %s below it on one needle, the %d above on another.", Plural(below, "loop"), above)
}

// atCorners says what is made at both corners.
const atCorners = "At each corner half a loop is left. Lift it with its strand and knit it twisted, so no hole stays."

// joinAt returns how the yarn is joined for a thumb or a finger.
func (h Hands) joinAt(place string) string {
	return fmt.Sprintf("Join the yarn at %s; %s closes the last hole.", place, strings.TrimPrefix(h.leaving(h.Tails.End), ", leaving "))
}

// heldDown says how the mitt is held while the upper edge of the thumb's opening is worked.
const heldDown = "Hold it fingers down, outside towards you. "

// sides returns where a row that is worked begins as it faces the knitter, and where it ends.
func (h Hands) sides() (from, to string) {
	if h.FromLeft {
		return "left", "right"
	}
	return "right", "left"
}
