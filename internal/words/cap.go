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
	from, to := h.sides()
	first := s.Rounds[0]
	picked, cast := count(first, stitch.PickUp), count(first, stitch.CastOn)
	return []string{
		fmt.Sprintf("Hold it fingers up, its back towards you. Join the yarn%s.", h.leaving(h.Tails.End)),
		fmt.Sprintf("Pick up along %s, from %s to %s.", s.About.Along, from, to),
		fmt.Sprintf("Pick up 1 beyond the back’s edge, %d across it and 1 beyond: each under one leg of a stitch. ", picked-2) + markFirst,
		fmt.Sprintf("Cast on the %s in front of the palm, then join in the round. Their ribbed edge lies flat.", Plural(cast, "loop")),
	}
}
