package words

import (
	"fmt"

	"thenar/internal/stitch"
)

// onFabric reports whether a section is picked up on the outside of what is knitted, where
// no stitch waits for it.
func onFabric(s *stitch.Section) bool {
	return len(s.From) == 0 && len(s.Rounds) > 0 && outOfFabric(s.Rounds[0])
}

// outOfFabric reports whether a round is picked up and cast on, all of it.
func outOfFabric(r stitch.Round) bool {
	return count(r, stitch.PickUp) > 0 && r.In() == 0
}

// pickedUpOn returns how a section is begun on the fabric, with the beginning of its round.
func (h Hands) pickedUpOn(s *stitch.Section) []string {
	from, to := "right", "left"
	if h.FromLeft {
		from, to = to, from
	}
	return []string{
		fmt.Sprintf("Hold it fingers up, its back towards you. Join the yarn%s.", h.leaving(h.Tails.End)),
		fmt.Sprintf("Pick up along %s, from %s to %s.", s.About.Along, from, to),
		"Pick up one in each column of the back, and one beyond it at each side.",
		thumbMarker(1),
		"The loops that are cast on close the round over the palm. Their ribbed edge lies flat.",
	}
}
