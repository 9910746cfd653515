package sheet

import "slices"

// forEveryHand are the numbers that, fixed for one mitt, make sense for hands
// of any size: where the gusset begins, what stays on the hand, what is cast on
// over the gap, in which round it first increases, and how often (common practice, no source). All
// others are counts of one hand.
var forEveryHand = []string{"gusset_base", "kept_on_hand", "bridge", "first_increase", "rhythm"}

// ForEveryHand are the names of the pins that hold for hands of any size.
func ForEveryHand() []string { return slices.Clone(forEveryHand) }

// OfOneHand are the pins of a sheet that are counts of one hand, in the order
// of a sheet.
func (s Sheet) OfOneHand() []string {
	var names []string
	for _, n := range tree.find("pins").members {
		if !slices.Contains(forEveryHand, n.key) && s.Given(join("pins", n.key)) != "" {
			names = append(names, n.key)
		}
	}
	return names
}
