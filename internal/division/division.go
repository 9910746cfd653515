// Package division divides a hand into four fingers, exactly: how many stitches
// each takes of palm and back, and how many are cast on between them. It works
// with whole numbers and knows nothing of wool.
package division

// The fingers, from the thumb's side on.
const (
	Index = iota
	Middle
	Ring
	Little
	Fingers // how many there are
)

// The bridges between neighbours. Bridge j joins the fingers j and j + 1.
const (
	IndexMiddle = iota
	MiddleRing
	RingLittle
	Bridges // how many there are
)

// The bounds of a division. All but WidestBridge hold for fixed numbers, too.
const (
	// MaxStitches is the most that a hand may have, far beyond anything knitted.
	// Up to there the sums of costs stay within an int64.
	MaxStitches = 10_000
	// LeastHand is the least that can be divided: fewestOfHand for each finger.
	LeastHand = Fingers * fewestOfHand

	fewestOfHand   = 2 // h of one finger: a stitch of the palm, one of the back
	fewestStitches = 6 // n of one finger
	narrowestBridge,
	WidestBridge = 1, 6
)

// PerStitch is the number of units of Wanted in a stitch.
const PerStitch = 10_000

// Problem asks for the division of a hand of N′ stitches that minimises
//
//	Σ (n_i − t_i)² + ¼ · ((x₁ − x₂)² + (x₂ − x₃)²)
//
// Finger i takes f_i stitches of the palm and k_i of the back, h_i = f_i + k_i. The
// palm has ⌊N′/2⌋ stitches, the back the rest, and all are taken. x_j are cast on
// between the fingers j and j + 1, by the one that is worked first, and picked up
// by the other, so that both have them:
//
//	n₁ = h₁ + x₁   n₂ = h₂ + x₁ + x₂   n₃ = h₃ + x₂ + x₃   n₄ = h₄ + x₃
//
// Bounds: |f_i − k_i| ≤ 1, h_i ≥ 2, n_i ≥ 6, 1 ≤ x_j ≤ 6. A fixed x_j may be more
// than 6. The ¼ keeps the bridges alike where that costs the fingers little
// (common practice, no source).
type Problem struct {
	Stitches int            // N′, of the hand below the fingers, its bridge at the thumb included
	Wanted   [Fingers]int64 // t_i in 1/10 000 stitch, within ±10 000 stitches
	Pins     Pins
}

// Pins are the numbers that are fixed. 0 leaves one free.
type Pins struct {
	Palm, Back [Fingers]int // f_i, k_i
	Both       [Fingers]int // h_i, palm and back together
	Stitches   [Fingers]int // n_i
	Bridge     [Bridges]int // x_j
}

// Division says where each stitch of a hand goes.
type Division struct {
	Palm, Back [Fingers]int // f_i, k_i
	Bridge     [Bridges]int // x_j
	Stitches   [Fingers]int // n_i, in the first round of the finger
	Cost       Cost
}

// Both returns h_i, the stitches of palm and back that finger i takes.
func (d *Division) Both(i int) int { return d.Palm[i] + d.Back[i] }

// Off returns by how much each finger is wider than wanted, in 1/10 000 stitch.
func (d *Division) Off(p *Problem) (off [Fingers]int64) {
	for i, n := range d.Stitches {
		off[i] = int64(n)*PerStitch - p.Wanted[i]
	}
	return off
}

// Cost is the cost of a division in 1/10 000² stitch². Costs are compared with ==
// and <.
type Cost int64

// costOfUnequal is the ¼ of Problem as a Cost.
const costOfUnequal = PerStitch * PerStitch / 4

// Float returns the cost in stitch² as the nearest float64.
func (c Cost) Float() float64 { return float64(c) / (PerStitch * PerStitch) }

// besides returns the stitches of the bridges on both sides of each finger.
func besides(x [Bridges]int) [Fingers]int {
	return [Fingers]int{x[0], x[0] + x[1], x[1] + x[2], x[2]}
}

// unequal returns the cost of bridges that are not alike.
func unequal(x [Bridges]int) Cost {
	a, b := int64(x[0]-x[1]), int64(x[1]-x[2])
	return Cost(costOfUnequal * (a*a + b*b))
}

// Solve returns the division of least cost. Among equal ones it has the smallest
// Σ x_j, then the lexicographically largest n₁ … n₄, then the smallest x₁ … x₃.
// Where h_i is odd, sides says whether palm or back gives the extra stitch. If
// nothing keeps to the pins, it returns an *Impossible.
func Solve(p *Problem) (Division, error) {
	if d, ok := p.solve(); ok {
		return d, nil
	}
	return Division{}, p.impossible()
}
