package mitt

import "math"

// The weights of the search, in mm² where nothing else is said. All are common
// practice, no source: they put choices in the order in which a careful knitter
// would.
const (
	// Too tight over the base of the thumb hurts; too loose is hardly felt and
	// counts a quarter.
	looseShare = 0.25
	// A palm girth that was filled, not measured, counts a quarter.
	filledShare = 0.25
	// Three base stitches make a gusset with a middle column between its two
	// edges. One works, two have no middle; more make a blunt point.
	baseOne, baseTwo, baseMore = 16, 64, 6
	// Picking up one stitch more than the bridge has comes nearest to its width.
	pickUp = 9
	// A bridge wider than this pulls the thumb out of the hand (mm).
	widestBridge = 22.0
	// A thumb of more than this share of the hand leaves the palm bare.
	largestShare, shareWeight = 0.45, 40_000.0
	smallestShare             = 0.25
)

// decreases[d] is the price of d decreases at the corners. One or two are hardly
// seen there; three and four need a second round.
var decreases = [...]int64{0, 1, 3, 20, 25}

// The bounds of the search.
const (
	maxBase      = 8
	maxBridge    = 10
	maxExtra     = 2 // stitches picked up beyond the bridge's
	maxDecreases = len(decreases) - 1
)

// nano is the number of units of cost in 1 mm². Costs are compared as whole
// numbers of 10⁻⁹ mm², so that equal costs are equal on every machine.
const nano = 1_000_000_000

// crotchCost returns the cost of a palm that is x mm too wide (negative: too
// tight) where the thumb parts.
func crotchCost(x float64, measured bool) int64 {
	cost := x * x
	if x >= 0 {
		cost *= looseShare
	}
	if !measured {
		cost *= filledShare
	}
	return toNano(cost)
}

// shapeCost returns the cost of a base of b stitches, with c cast on, p picked up
// and d decreased.
func shapeCost(b, c, p, d int) int64 {
	var cost int64
	switch {
	case b == 1:
		cost = baseOne
	case b == 2:
		cost = baseTwo
	case b > 3:
		cost = baseMore * int64((b-3)*(b-3))
	}
	off := int64(p - c - 1)
	return (cost + pickUp*off*off + decreases[d]) * nano
}

// bridgeCost returns the cost of a bridge that is width mm wide.
func bridgeCost(width float64) int64 {
	over := width - widestBridge
	if over <= 0 {
		return 0
	}
	return toNano(over * over)
}

// shareCost returns the cost of holding m of n stitches for the thumb.
func shareCost(m, n int) int64 {
	over := float64(m)/float64(n) - largestShare
	if over <= 0 {
		return 0
	}
	return toNano(shareWeight * over * over)
}

// toNano returns a cost in units of 10⁻⁹ mm². It caps the cost, so that a sum of
// five never overflows.
func toNano(cost float64) int64 {
	return int64(math.Round(min(cost, 1e9) * nano))
}
