package shaping

import (
	"math/big"
	"math/rand/v2"
	"slices"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// byDefinition returns the cost of a list of rounds as a fraction, straight from
// Σ (S(r) − T(r))² + λ × changes.
func byDefinition(p Problem, rounds []int) *big.Rat {
	sum := new(big.Rat)
	for r := 1; r <= p.Rounds; r++ {
		worked, here := slices.BinarySearch(rounds, r)
		if here {
			worked++
		}
		count := p.From + worked*p.Step
		ideal := new(big.Rat)
		if p.Target != nil {
			ideal.SetFrac64(p.Target[r-1], 10_000)
		} else {
			ideal.SetFrac64(int64(p.To-p.From)*int64(2*r-1), int64(2*p.Rounds))
			ideal.Add(ideal, new(big.Rat).SetInt64(int64(p.From)))
			ideal.Add(ideal, big.NewRat(int64(p.Step), 2))
		}
		off := ideal.Sub(new(big.Rat).SetInt64(int64(count)), ideal)
		sum.Add(sum, off.Mul(off, off))
	}
	for i := 2; i < len(rounds); i++ {
		if rounds[i]-rounds[i-1] != rounds[i-1]-rounds[i-2] {
			sum.Add(sum, big.NewRat(p.Lambda, 1000))
		}
	}
	return sum
}

// The cost of 6 increases on rounds 1, 4 … 16 of 18, by hand: every three
// rounds miss the line by ⅔, 0 and −⅔ of a stitch, so 6 · 8/9 = 16/3.
func TestCostByHand(t *testing.T) {
	p := Problem{From: 3, To: 15, Step: 2, Rounds: 18, Lambda: 8000, Gap: 2}
	cost, err := CostOf(p, []int{1, 4, 7, 10, 13, 16})
	require.NoError(t, err)
	assert.Zero(t, big.NewRat(16, 3).Cmp(big.NewRat(cost.num, cost.den)))
	assert.InDelta(t, 16.0/3, cost.Float(), 1e-12)
}

// Every cost equals its definition in fractions exactly, up to the largest
// numbers that are accepted.
func TestCostIsExact(t *testing.T) {
	rng := rand.New(rand.NewPCG(7, 11))
	for _, size := range []struct{ rounds, changes, step, from int }{
		{19, 6, 2, 3}, {60, 14, 2, 3}, {31, 9, -4, 48}, {127, 30, 1, 0}, {400, 150, -2, 320}, {2_000, 480, 2, 4},
	} {
		for _, lambda := range []int64{7, 8_000} {
			p := Problem{
				From: size.from, To: size.from + size.changes*size.step, Step: size.step,
				Rounds: size.rounds, Gap: max(1, size.rounds/size.changes-1), Lambda: lambda,
			}
			for range 2 {
				got, err := Solve(p)
				require.NoError(t, err, "%+v", p)
				assert.Equal(t, byDefinition(p, got.Rounds), big.NewRat(got.Cost.num, got.Cost.den), "%v changes of %v rounds, lambda %v", size.changes, size.rounds, lambda)
				p.Target = make([]int64, p.Rounds)
				for r := range p.Target {
					p.Target[r] = int64(p.From)*10_000 + int64(r)*int64(size.step)*3_000 + rng.Int64N(90_000)
				}
			}
		}
	}
}

func TestCostsCompareExactly(t *testing.T) {
	rng := rand.New(rand.NewPCG(3, 9))
	costs := []Cost{{}, {1, 1}, {1 << 62, 3}, {1<<62 - 1, 3}, {2, 4}, {1, 2}}
	for range 60 {
		costs = append(costs, Cost{rng.Int64(), 1 + rng.Int64N(1<<50)})
	}
	for _, c := range costs {
		for _, d := range costs {
			want := big.NewRat(c.num, max(c.den, 1)).Cmp(big.NewRat(d.num, max(d.den, 1))) < 0
			assert.Equal(t, want, c.Less(d), "%v and %v", c, d)
		}
	}
	assert.Zero(t, Cost{}.Float())
}

// CostOf ignores the gap, the leads and the first round, and refuses a list that
// is not a schedule.
func TestCostOfRefuses(t *testing.T) {
	p := Problem{From: 3, To: 9, Step: 2, Rounds: 12, Gap: 9, LeadIn: 5, LeadOut: 5, First: 6, Lambda: 8000}
	_, err := CostOf(p, []int{1, 2, 12})
	require.NoError(t, err)
	for name, rounds := range map[string][]int{
		"too few": {1, 5}, "too many": {1, 5, 9, 11}, "falls": {5, 1, 9}, "twice": {5, 5, 9},
		"before the first": {0, 5, 9}, "after the last": {1, 5, 13},
	} {
		t.Run(name, func(t *testing.T) {
			_, err := CostOf(p, rounds)
			var impossible *Impossible
			require.ErrorAs(t, err, &impossible)
			assert.Equal(t, "rounds", impossible.Bound)
		})
	}
	p.Step = 4
	_, err = CostOf(p, []int{1})
	require.ErrorContains(t, err, "step of 4 can't reach 9 from 3; 7 or 11 can be reached")
	p.Step, p.To, p.From = 2, 1_000_000, -1_000_000
	_, err = CostOf(p, make([]int, 1_000_000))
	require.Error(t, err)
}
