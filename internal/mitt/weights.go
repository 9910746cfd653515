package mitt

import "math"

// The weights of the search, in mm², in this one place with their reasons.
// All are common practice, no source: they order choices that a careful
// knitter would order alike.
const (
	// Too tight over the base of the thumb hurts; too loose is hardly felt.
	looseShare = 0.25
	// A palm girth that was filled, not measured, is worth a quarter.
	filledShare = 0.25
	// Three base stitches make a gusset with a middle column between its two
	// edges. One works, two have no middle; more make a blunt point.
	baseOne, baseTwo, baseMore = 16, 64, 6
	// One stitch more than was cast on over the gap comes nearest to its width.
	pickUp = 9
	// A bridge wider than this pulls the thumb out of the hand (mm).
	widestBridge = 22.0
	// A thumb of more than this share of the hand leaves the palm bare.
	largestShare, shareWeight = 0.45, 40_000.0
	smallestShare             = 0.25
)

// decreases is the price of d decreases at the corners: one or two vanish in
// the corners, three and four need a second round.
var decreases = [...]int64{0, 1, 3, 20, 25}

// The bounds of the search.
const (
	maxBase      = 8
	maxBridge    = 10
	maxExtra     = 2 // picked up beyond the bridge
	maxDecreases = len(decreases) - 1
)

// nano is the fineness in which costs are compared, 10⁻⁹ mm²: whole numbers,
// so that equal costs are equal on every machine.
const nano = 1_000_000_000

// crotchCost is the cost of a gusset that makes x mm too much (negative: too
// little) where the thumb parts.
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

// shapeCost is the cost of base b, c cast on, p picked up and d decreased.
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

// bridgeCost is the cost of a bridge of width mm.
func bridgeCost(width float64) int64 {
	over := width - widestBridge
	if over <= 0 {
		return 0
	}
	return toNano(over * over)
}

// shareCost is the cost of holding m of n stitches for the thumb.
func shareCost(m, n int) int64 {
	over := float64(m)/float64(n) - largestShare
	if over <= 0 {
		return 0
	}
	return toNano(shareWeight * over * over)
}

// toNano rounds, and holds what is too large for the sum of five costs.
func toNano(cost float64) int64 {
	return int64(math.Round(min(cost, 1e9) * nano))
}
