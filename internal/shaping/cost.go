package shaping

import "math/bits"

// Cost is the exact cost of a schedule, num/den stitches², never negative. All
// costs of one problem have the same denominator, so that == compares them.
type Cost struct{ num, den int64 }

// Float returns the cost in stitches² as the nearest float64.
func (c Cost) Float() float64 { return float64(c.num) / float64(max(c.den, 1)) }

// Less reports whether c is less than d, exactly, even if they are costs of
// different problems.
func (c Cost) Less(d Cost) bool {
	hi, lo := bits.Mul64(uint64(c.num), uint64(max(d.den, 1)))
	hi2, lo2 := bits.Mul64(uint64(d.num), uint64(max(c.den, 1)))
	return hi < hi2 || (hi == hi2 && lo < lo2)
}

// scale makes the numbers of a problem whole: deviations are in units of
// 1/perStitch stitch, costs in units of 1/(perStitch² · factor) stitch².
type scale struct {
	perStitch, factor int64
	lambda            int64 // λ · perStitch² · factor
}

func (s scale) cost(num int64) Cost { return Cost{num, s.perStitch * s.perStitch * s.factor} }

// scale returns the scale of a problem that passes checkNumbers: perStitch is 2R
// for the default line and 10 000 for a Target, and factor makes λ whole. It
// refuses numbers whose costs could sum up to 2⁶³ or more.
func (p *Problem) scale() (scale, error) {
	s := scale{perStitch: 2 * int64(p.Rounds)}
	if p.Target != nil {
		s.perStitch = targetScale
	}
	square := s.perStitch * s.perStitch
	shared := gcd(p.Lambda*(square%1000), 1000)
	s.factor, s.lambda = 1000/shared, p.Lambda*square/shared
	worst := int64(0)
	for r := 1; r <= p.Rounds; r++ {
		t := p.target(r, s.perStitch)
		worst = max(worst, abs(int64(p.From)*s.perStitch-t), abs(int64(p.To)*s.perStitch-t))
	}
	all := product(product(product(worst, worst), s.factor), int64(p.Rounds))
	if all > maxProduct/2 || product(s.lambda, int64(p.Rounds)) > maxProduct/2 {
		return s, impossible("from", "to, target and the price (lambda) are too large to be compared exactly; write smaller numbers")
	}
	return s, nil
}

// maxProduct is above every cost of a problem that scale accepts.
const maxProduct = int64(1) << 62

// product returns a · b, or maxProduct if that is less. Neither is negative.
func product(a, b int64) int64 {
	hi, lo := bits.Mul64(uint64(a), uint64(b))
	if hi != 0 || lo > uint64(maxProduct) {
		return maxProduct
	}
	return int64(lo)
}

func abs(n int64) int64 { return max(n, -n) }

func gcd(a, b int64) int64 {
	for b != 0 {
		a, b = b, a%b
	}
	return a
}

// CostOf returns the cost of the given rounds by its definition. They must climb
// from 1 or later to at most p.Rounds, and be as many as the problem has
// changes. They may break p's gap, leads and first round, so that a rhythm fixed
// by a person can be priced too.
func CostOf(p Problem, rounds []int) (Cost, error) {
	if err := p.checkNumbers(); err != nil {
		return Cost{}, err
	}
	if len(rounds) != p.Changes() {
		return Cost{}, impossible("rounds", "are %d; %d changes are asked for", len(rounds), p.Changes())
	}
	for i, r := range rounds {
		if r < 1 || r > p.Rounds || (i > 0 && r <= rounds[i-1]) {
			return Cost{}, impossible("rounds", "don't climb within 1 to %d", p.Rounds)
		}
	}
	s, err := p.scale()
	if err != nil {
		return Cost{}, err
	}
	var cost int64
	done := 0
	for r := 1; r <= p.Rounds; r++ {
		for done < len(rounds) && rounds[done] <= r {
			done++
		}
		off := int64(p.From+p.Step*done)*s.perStitch - p.target(r, s.perStitch)
		cost += off * off * s.factor
	}
	for i := 2; i < len(rounds); i++ {
		if rounds[i]-rounds[i-1] != rounds[i-1]-rounds[i-2] {
			cost += s.lambda
		}
	}
	return s.cost(cost), nil
}
