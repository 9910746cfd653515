package shaping

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// topOf returns the problem of a mitten's rounded top from n stitches to end:
// T(r) = n + (end − n)·x^1.5 − 2 with x = (r − ½)/R (common practice, no source).
func topOf(n, end, rounds int) Problem {
	p := Problem{From: n, To: end, Step: -4, Rounds: rounds, Gap: 1, Lambda: 8000}
	for r := 1; r <= rounds; r++ {
		x := (float64(r) - 0.5) / float64(rounds)
		p.Target = append(p.Target, int64(math.Round(10_000*(float64(n)+float64(end-n)*math.Pow(x, 1.5)-2))))
	}
	return p
}

func quickening(p Problem) Problem {
	p.Quicken = true
	return p
}

// Known schedules. The staircase of 18 rounds is the definition of the
// default line; the mitts and tops are worked by hand (common practice, no
// source).
func TestKnownSchedules(t *testing.T) {
	gusset := func(from, to, rounds int) Problem {
		return Problem{From: from, To: to, Step: 2, Rounds: rounds, Gap: 2, LeadOut: 1, Lambda: 8000, First: 1}
	}
	for name, c := range map[string]struct {
		p    Problem
		want []int
	}{
		"18 rounds, 6 increases": {Problem{From: 3, To: 15, Step: 2, Rounds: 18, Gap: 2, LeadOut: 1, Lambda: 8000}, []int{1, 4, 7, 10, 13, 16}},
		"child's mitten":         {gusset(3, 9, 12), []int{1, 5, 9}},
		"adult mitt":             {gusset(3, 15, 19), []int{1, 4, 7, 10, 13, 16}},
		"large hand":             {gusset(4, 22, 28), []int{1, 4, 7, 10, 13, 16, 19, 22, 25}},
		"top of 30":              {topOf(30, 10, 8), []int{1, 3, 5, 7, 8}},
		"top of 48":              {topOf(48, 8, 15), []int{2, 4, 6, 8, 10, 11, 12, 13, 14, 15}},
		"top of 30, quickening":  {quickening(topOf(30, 10, 8)), []int{1, 3, 5, 7, 8}},
		"top of 48, quickening":  {quickening(topOf(48, 8, 15)), []int{2, 4, 6, 8, 10, 11, 12, 13, 14, 15}},
	} {
		t.Run(name, func(t *testing.T) {
			got, err := Solve(c.p)
			require.NoError(t, err)
			assert.Equal(t, c.want, got.Rounds)
		})
	}
}

// A solver that has solved larger and smaller problems solves the next one like
// a new solver.
func TestSolverCanBeReused(t *testing.T) {
	var s Solver
	problems := []Problem{bench14of60, bench6of19, quickening(bench30of120), bench30of120, quickening(bench6of19), bench6of19, quickening(bench14of60), bench14of60}
	for _, p := range problems {
		fresh, err := Solve(p)
		require.NoError(t, err)
		again, err := s.Solve(&p, nil)
		require.NoError(t, err)
		assert.Equal(t, fresh, again)
	}
}

// A solver that has solved a problem of the same size allocates nothing.
func TestSolveAllocatesNothing(t *testing.T) {
	for name, p := range map[string]Problem{
		"14 of 60": bench14of60, "30 of 120": bench30of120, "along a target": topOf(72, 8, 24),
		"quickening": quickening(bench30of120),
	} {
		var s Solver
		dst := make([]int, 0, p.Changes())
		allocations := testing.AllocsPerRun(20, func() {
			if _, err := s.Solve(&p, dst); err != nil {
				t.Fatal(err)
			}
		})
		assert.Zero(t, allocations, name)
	}
}
