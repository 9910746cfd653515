package shaping

import (
	"math"
	"math/rand/v2"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// brute tries every list of rounds in lexicographic order and keeps the first
// of the cheapest. It shares nothing with the solver but the problem.
func brute(p Problem) (best []int, cost Cost, found bool) {
	k := p.Changes()
	rounds := make([]int, 0, k)
	var walk func(from int)
	walk = func(from int) {
		if len(rounds) == k {
			c, err := CostOf(p, rounds)
			if err != nil {
				panic(err)
			}
			if !found || c.Less(cost) {
				best, cost, found = append([]int(nil), rounds...), c, true
			}
			return
		}
		for r := from; r <= p.Rounds-p.LeadOut; r++ {
			if len(rounds) == 0 && p.First != 0 && r != p.First {
				continue
			}
			rounds = append(rounds, r)
			walk(r + p.Gap)
			rounds = rounds[:len(rounds)-1]
		}
	}
	walk(1 + p.LeadIn)
	return best, cost, found
}

func compare(t *testing.T, s *Solver, p Problem) {
	t.Helper()
	want, cost, found := brute(p)
	got, err := s.Solve(&p, nil)
	if !found {
		require.Error(t, err, "%+v", p)
		return
	}
	require.NoError(t, err, "%+v", p)
	require.Equal(t, cost, got.Cost, "%+v", p)
	if len(want) > 0 {
		require.Equal(t, want, got.Rounds, "%+v", p)
	}
}

// Every problem of up to 18 rounds: all numbers of changes, gaps of 1 to 3, leads of 0 and 1, a
// free and a fixed first change, three prices of a changed rhythm; then as
// many with targets drawn at random.
func TestEqualsBruteForceUpTo18Rounds(t *testing.T) {
	var s Solver
	rng := rand.New(rand.NewPCG(18, 4))
	for rounds := 1; rounds <= 18; rounds++ {
		for k := 0; k <= rounds; k++ {
			for gap := 1; gap <= 3; gap++ {
				for leads := range 4 {
					p := Problem{From: 3, To: 3 + 2*k, Step: 2, Rounds: rounds, Gap: gap, LeadIn: leads % 2, LeadOut: leads / 2}
					for _, p.Lambda = range []int64{0, 8000, 500} {
						for _, p.First = range []int{0, 1 + p.LeadIn} {
							compare(t, &s, p)
						}
					}
					p.Step, p.To = -4, 3-4*k
					p.Target = make([]int64, rounds)
					for i := range p.Target {
						p.Target[i] = 30_000 - rng.Int64N(int64(40_000*k+40_000))
					}
					compare(t, &s, p)
				}
			}
		}
	}
}

// Known schedules. The staircase of 18 rounds is the definition of the
// default line; the mitts and tops are worked by hand (common practice, no
// source).
func TestKnownSchedules(t *testing.T) {
	top := func(n, end, rounds int) Problem {
		p := Problem{From: n, To: end, Step: -4, Rounds: rounds, Gap: 1, Lambda: 8000}
		for r := 1; r <= rounds; r++ {
			x := (float64(r) - 0.5) / float64(rounds)
			p.Target = append(p.Target, int64(math.Round(10_000*(float64(n)+float64(end-n)*math.Pow(x, 1.5)-2))))
		}
		return p
	}
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
		"top of 30":              {top(30, 10, 8), []int{1, 3, 5, 7, 8}},
		"top of 48":              {top(48, 8, 15), []int{2, 4, 6, 8, 10, 11, 12, 13, 14, 15}},
	} {
		t.Run(name, func(t *testing.T) {
			got, err := Solve(c.p)
			require.NoError(t, err)
			assert.Equal(t, c.want, got.Rounds)
		})
	}
}

// A solver that has worked before, on larger and smaller problems, gives the
// same as a new one, and allocates nothing.
func TestScratchIsReused(t *testing.T) {
	var s Solver
	problems := []Problem{bench14of60, bench6of19, bench30of120, bench6of19, bench14of60}
	for _, p := range problems {
		fresh, err := Solve(p)
		require.NoError(t, err)
		again, err := s.Solve(&p, nil)
		require.NoError(t, err)
		assert.Equal(t, fresh, again)
	}
	dst := make([]int, 0, 30)
	p := bench30of120
	assert.Zero(t, testing.AllocsPerRun(20, func() { _, _ = s.Solve(&p, dst) }))
}

func TestImpossible(t *testing.T) {
	ok := Problem{From: 3, To: 15, Step: 2, Rounds: 19, Gap: 2, LeadOut: 1, Lambda: 8000}
	for name, c := range map[string]struct {
		change func(*Problem)
		bound  string
		says   string
	}{
		"too few rounds":   {func(p *Problem) { p.Rounds = 11 }, "rounds", "6 changes need 12 rounds (1 more), or make 5 changes (1 fewer)"},
		"step leads away":  {func(p *Problem) { p.Step = -2 }, "step", "write 2"},
		"step of nothing":  {func(p *Problem) { p.Step = 0 }, "step", "is 0"},
		"step falls short": {func(p *Problem) { p.To = 16 }, "step", "15 or 17 can be reached"},
		"no rounds":        {func(p *Problem) { p.Rounds = 0 }, "rounds", "from 1 to"},
		"too many rounds":  {func(p *Problem) { p.Rounds = 1 << 40 }, "rounds", "from 1 to"},
		"gap":              {func(p *Problem) { p.Gap = 0 }, "gap", "from 1"},
		"late first":       {func(p *Problem) { p.First = 19 }, "first", "rounds 1 to 18"},
		"early first":      {func(p *Problem) { p.LeadIn = 2; p.First = 1 }, "first", "rounds 3 to 18"},
		"lead":             {func(p *Problem) { p.LeadIn = -1 }, "lead-in", "from 0"},
		"short target":     {func(p *Problem) { p.Target = make([]int64, 3) }, "target", "each of the 19"},
		"huge numbers":     {func(p *Problem) { p.From = math.MinInt }, "from", "within"},
		"negative price":   {func(p *Problem) { p.Lambda = -1 }, "lambda", "between"},
		"too exact": {func(p *Problem) {
			p.Target = []int64{1e10, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0}
			p.Lambda = 1
		}, "from", "too large"},
	} {
		t.Run(name, func(t *testing.T) {
			p := ok
			c.change(&p)
			_, err := Solve(p)
			var no *Impossible
			require.ErrorAs(t, err, &no)
			assert.Equal(t, c.bound, no.Bound)
			assert.Contains(t, no.Message, c.says)
		})
	}
}

var (
	bench14of60  = Problem{From: 3, To: 31, Step: 2, Rounds: 60, Gap: 2, LeadOut: 1, Lambda: 8000}
	bench30of120 = Problem{From: 3, To: 63, Step: 2, Rounds: 120, Gap: 2, LeadOut: 1, Lambda: 8000}
	bench6of19   = Problem{From: 3, To: 15, Step: 2, Rounds: 19, Gap: 2, LeadOut: 1, Lambda: 8000, First: 1}
)

func benchmark(b *testing.B, p Problem) {
	var s Solver
	dst := make([]int, 0, p.Changes())
	b.ReportAllocs()
	for b.Loop() {
		if _, err := s.Solve(&p, dst); err != nil {
			b.Fatal(err)
		}
	}
}

func BenchmarkSolve6of19(b *testing.B)   { benchmark(b, bench6of19) }
func BenchmarkSolve14of60(b *testing.B)  { benchmark(b, bench14of60) }
func BenchmarkSolve30of120(b *testing.B) { benchmark(b, bench30of120) }

func FuzzSolve(f *testing.F) {
	f.Add(3, 15, 2, 19, 2, 0, 1, int64(8000), 1, uint64(0))
	f.Add(48, 8, -4, 15, 1, 0, 0, int64(500), 0, uint64(7))
	f.Add(0, 0, 1, 1, 1, 0, 0, int64(0), 0, uint64(0))
	f.Fuzz(func(t *testing.T, from, to, step, rounds, gap, leadIn, leadOut int, lambda int64, first int, seed uint64) {
		p := Problem{From: from, To: to, Step: step, Rounds: rounds % 80, Gap: gap, LeadIn: leadIn, LeadOut: leadOut, Lambda: lambda, First: first}
		if seed != 0 && p.Rounds > 0 {
			rng := rand.New(rand.NewPCG(seed, 1))
			for range p.Rounds {
				p.Target = append(p.Target, rng.Int64N(2_000_000)-1_000_000)
			}
		}
		got, err := Solve(p)
		if err != nil {
			return
		}
		if len(got.Rounds) != p.Changes() {
			t.Fatalf("%d rounds for %d changes", len(got.Rounds), p.Changes())
		}
		for i, r := range got.Rounds {
			if r < 1+p.LeadIn || r > p.Rounds-p.LeadOut || (i > 0 && r-got.Rounds[i-1] < p.Gap) || (i == 0 && p.First != 0 && r != p.First) {
				t.Fatalf("%v breaks a bound of %+v", got.Rounds, p)
			}
		}
		cost, err := CostOf(p, got.Rounds)
		if err != nil || cost != got.Cost {
			t.Fatalf("cost %v, stated %v (%v)", cost, got.Cost, err)
		}
	})
}
