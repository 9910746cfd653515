package shaping

import "math/bits"

// Cost is the exact cost of a schedule: num/den stitches², not negative.
// Costs of one problem have the same denominator, so that == compares them.
type Cost struct{ num, den int64 }

// Float is the cost in stitches², λ × changes included, as near as a float64
// comes.
func (c Cost) Float() float64 { return float64(c.num) / float64(max(c.den, 1)) }

// Less compares two costs exactly, of different problems too.
func (c Cost) Less(d Cost) bool {
	hi, lo := bits.Mul64(uint64(c.num), uint64(max(d.den, 1)))
	hi2, lo2 := bits.Mul64(uint64(d.num), uint64(max(c.den, 1)))
	return hi < hi2 || (hi == hi2 && lo < lo2)
}

// scale is how a problem is turned into whole numbers: deviations in 1/line
// stitch, costs in 1/(line² · unit) stitch².
type scale struct {
	line, unit int64
	lambda     int64 // λ · line² · unit
}

func (s scale) cost(num int64) Cost { return Cost{num, s.line * s.line * s.unit} }

// scale finds whole numbers for a problem whose numbers are checked: the
// default line times 2R, a target times 10 000, and unit so that λ, given in
// thousandths, is whole. Every sum of costs then stays under 2⁶³.
func (p *Problem) scale() (scale, error) {
	s := scale{line: 2 * int64(p.Rounds)}
	if p.Target != nil {
		s.line = targetScale
	}
	square := s.line * s.line
	shared := gcd(p.Lambda*(square%1000), 1000)
	s.unit, s.lambda = 1000/shared, p.Lambda*square/shared
	worst := int64(0)
	for r := 1; r <= p.Rounds; r++ {
		t := p.target(r, s.line)
		worst = max(worst, magnitude(int64(p.From)*s.line-t), magnitude(int64(p.To)*s.line-t))
	}
	all := product(product(product(worst, worst), s.unit), int64(p.Rounds))
	if all > largest/2 || product(s.lambda, int64(p.Rounds)) > largest/2 {
		return s, impossible("from", "to, target and lambda are too large to be compared exactly; write smaller numbers")
	}
	return s, nil
}

// largest is where products stop; no cost that is used reaches it.
const largest = int64(1) << 62

// product multiplies numbers that are not negative and stops at largest.
func product(a, b int64) int64 {
	hi, lo := bits.Mul64(uint64(a), uint64(b))
	if hi != 0 || lo > uint64(largest) {
		return largest
	}
	return int64(lo)
}

func magnitude(n int64) int64 { return max(n, -n) }

func gcd(a, b int64) int64 {
	for b != 0 {
		a, b = b, a%b
	}
	return a
}

// CostOf is the cost of a given schedule, by its definition. The rounds must
// climb, lie within 1 … Rounds and be as many as the problem has changes; the
// gap, the leads and the first round are not asked for, so that a fixed
// rhythm can be priced too.
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
		off := int64(p.From+p.Step*done)*s.line - p.target(r, s.line)
		cost += off * off * s.unit
	}
	for i := 2; i < len(rounds); i++ {
		if rounds[i]-rounds[i-1] != rounds[i-1]-rounds[i-2] {
			cost += s.lambda
		}
	}
	return s.cost(cost), nil
}
