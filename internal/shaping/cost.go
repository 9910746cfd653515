package shaping

import "math/bits"

// Cost is the exact cost of a schedule: num/den stitches². Costs of one
// problem have the same denominator.
type Cost struct{ num, den int64 }

// Float is the cost in stitches², λ × changes included, as near as a float64
// comes.
func (c Cost) Float() float64 {
	if c.den == 0 {
		return 0
	}
	return float64(c.num) / float64(c.den)
}

// Less compares two costs of one problem exactly.
func (c Cost) Less(d Cost) bool { return c.num < d.num }

// scale is how a problem is turned into whole numbers: deviations in 1/line
// stitch, costs in 1/(line² · unit) stitch².
type scale struct {
	line   int64
	unit   int64
	lambda int64 // λ · line² · unit
}

// scale finds whole numbers for a checked problem: the default line times 2R,
// a target times 10 000, and λ, given in thousandths, made whole.
func (p *Problem) scale() (scale, error) {
	s := scale{line: 2 * int64(p.Rounds)}
	if p.Target != nil {
		s.line = targetScale
	}
	s.unit = 1000 / gcd(p.Lambda, 1000)
	lambda := product(product(s.line, s.line), p.Lambda*s.unit/1000)
	worst := int64(0)
	for r := 1; r <= p.Rounds; r++ {
		t := p.target(r, s.line)
		worst = max(worst, magnitude(int64(p.From)*s.line-t), magnitude(int64(p.To)*s.line-t))
	}
	all := product(product(product(worst, worst), s.unit), int64(p.Rounds))
	changes := product(lambda, int64(p.Rounds))
	if all > largest/2 || changes > largest/2 {
		return s, impossible("from", "to, target and lambda are too large to be compared exactly; write smaller numbers")
	}
	s.lambda = lambda
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

func magnitude(n int64) int64 {
	if n < 0 {
		return -n
	}
	return n
}

func gcd(a, b int64) int64 {
	for b != 0 {
		a, b = b, a%b
	}
	return max(a, 1)
}

// target is T(r) in 1/line stitch.
func (p *Problem) target(r int, line int64) int64 {
	if p.Target != nil {
		return p.Target[r-1]
	}
	return int64(p.From)*line + int64(p.To-p.From)*int64(2*r-1) + int64(p.Step)*int64(p.Rounds)
}

// CostOf is the cost of a given schedule. The rounds must climb and lie
// within 1 … Rounds and be as many as the problem has changes; the gap and
// the leads are not asked for, so that a fixed rhythm can be priced too.
func CostOf(p Problem, rounds []int) (Cost, error) {
	free := p
	free.Gap, free.LeadIn, free.LeadOut, free.First = 1, 0, 0, 0
	if err := free.check(); err != nil {
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
	s, err := free.scale()
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
	return Cost{cost, s.line * s.line * s.unit}, nil
}
