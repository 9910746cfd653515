package shaping

import (
	"math/rand/v2"
	"slices"
	"testing"
)

// FuzzSolve solves problems of any numbers, and of the same numbers reduced to
// sizes that have schedules.
func FuzzSolve(f *testing.F) {
	f.Add(3, 15, 2, 19, 2, 0, 1, int64(8000), 1, uint64(0))
	f.Add(48, 8, -4, 15, 1, 0, 0, int64(500), 0, uint64(7))
	f.Add(0, 0, 1, 1, 1, 0, 0, int64(0), 0, uint64(0))
	f.Add(4, 22, 2, 41, 3, 2, 2, int64(0), 0, uint64(1))
	f.Fuzz(func(t *testing.T, from, to, step, rounds, gap, leadIn, leadOut int, lambda int64, first int, seed uint64) {
		p := Problem{From: from, To: to, Step: step, Rounds: rounds % 80, Gap: gap, LeadIn: leadIn, LeadOut: leadOut, Lambda: lambda, First: first}
		if seed != 0 && p.Rounds > 0 {
			rng := rand.New(rand.NewPCG(seed, 1))
			for range p.Rounds {
				p.Target = append(p.Target, rng.Int64N(2_000_000)-1_000_000)
			}
		}
		checkSchedule(t, p)
		p.From, p.Step, p.Gap, p.LeadIn, p.LeadOut = from%100, step%5, 1+gap&3, leadIn&3, leadOut&3
		p.To, p.Lambda, p.First = p.From+p.Step*(to&15), lambda&0xffff, first&7
		checkSchedule(t, p)
		p.Quicken = true
		checkSchedule(t, p)
		p.Only = OddRounds + Parity(seed&1)
		checkSchedule(t, p)
		p.Quicken = false
		checkSchedule(t, p)
	})
}

// checkSchedule checks the solver's rounds against every bound and its cost
// against the definition. Moving one change by up to two rounds may not be
// cheaper, nor as cheap and lexicographically smaller.
func checkSchedule(t *testing.T, p Problem) {
	t.Helper()
	got, err := Solve(p)
	if err != nil {
		return
	}
	if len(got.Rounds) != p.Changes() || !keepsBounds(p, got.Rounds) {
		t.Fatalf("%v breaks a bound of %+v", got.Rounds, p)
	}
	cost, err := CostOf(p, got.Rounds)
	if err != nil || cost != got.Cost {
		t.Fatalf("cost %v, stated %v (%v)", cost, got.Cost, err)
	}
	for i := range got.Rounds {
		for _, by := range []int{-2, -1, 1, 2} {
			other := slices.Clone(got.Rounds)
			if other[i] += by; !keepsBounds(p, other) {
				continue
			}
			c, err := CostOf(p, other)
			if err != nil || c.Less(cost) || (c == cost && slices.Compare(other, got.Rounds) < 0) {
				t.Fatalf("%v at %v is better than %v at %v (%v): %+v", other, c, got.Rounds, cost, err, p)
			}
		}
	}
}

func keepsBounds(p Problem, rounds []int) bool {
	for i, r := range rounds {
		if r < 1+p.LeadIn || r > p.Rounds-p.LeadOut || (i > 0 && r-rounds[i-1] < p.Gap) || (i == 0 && p.First != 0 && r != p.First) || !allowed(p.Only, r) {
			return false
		}
	}
	return !p.Quicken || !slowsDown(rounds)
}
