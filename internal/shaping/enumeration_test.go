package shaping

import (
	"fmt"
	"math/rand/v2"
	"slices"
	"testing"

	"thenar/internal/testenv"
)

// enumeration tries every list of rounds, in lexicographic order. It shares
// nothing with the solver but the problem: it sums costs round by round from the
// definition, in units of 1/(1000·perStitch²) stitch².
type enumeration struct {
	p         Problem // Lambda and First are not read
	perStitch int64
	lambdas   []int64   // in thousandths; all are tried at once
	before    [][]int64 // cost of rounds 1 … r, by changes done and r
	rounds    []int
	best      [][]answer // by lambda and round of the first change
	quick     [][]answer // the same for lists whose intervals never grow
}

type answer struct {
	found  bool
	cost   int64
	rounds []int
}

func enumerate(p Problem, lambdas []int64) *enumeration {
	k := (p.To - p.From) / p.Step
	en := &enumeration{p: p, lambdas: lambdas, perStitch: int64(2 * p.Rounds)}
	if p.Target != nil {
		en.perStitch = 10_000
	}
	for done := 0; done <= k; done++ {
		sums := make([]int64, p.Rounds+1)
		for r := 1; r <= p.Rounds; r++ {
			off := int64(p.From+p.Step*done)*en.perStitch - en.ideal(r)
			sums[r] = sums[r-1] + 1000*off*off
		}
		en.before = append(en.before, sums)
	}
	for range lambdas {
		en.best, en.quick = append(en.best, make([]answer, p.Rounds+1)), append(en.quick, make([]answer, p.Rounds+1))
	}
	if k == 0 {
		for i := range lambdas {
			en.best[i][0] = answer{true, en.before[0][p.Rounds], nil}
			en.quick[i][0] = en.best[i][0]
		}
		return en
	}
	en.walk(k, 1+p.LeadIn, 0, 0)
	return en
}

// ideal returns the target of round r, or
// T(r) = from + (to − from)·(r − ½)/R + step/2 in 1/2R stitch.
func (en *enumeration) ideal(r int) int64 {
	p := en.p
	if p.Target != nil {
		return p.Target[r-1]
	}
	return int64(2*p.Rounds*p.From + (p.To-p.From)*(2*r-1) + p.Step*p.Rounds)
}

func (en *enumeration) walk(k, from int, cost int64, changes int) {
	done := len(en.rounds)
	if done == k {
		last := en.rounds[k-1]
		en.note(cost+en.before[k][en.p.Rounds]-en.before[k][last-1], changes)
		return
	}
	for r := from; r+(k-done-1)*en.p.Gap <= en.p.Rounds-en.p.LeadOut; r++ {
		if !allowed(en.p.Only, r) {
			continue
		}
		c, ch := cost+en.before[done][r-1], changes
		if done > 0 {
			c -= en.before[done][en.rounds[done-1]-1]
		}
		if done > 1 && r-en.rounds[done-1] != en.rounds[done-1]-en.rounds[done-2] {
			ch++
		}
		en.rounds = append(en.rounds, r)
		en.walk(k, r+en.p.Gap, c, ch)
		en.rounds = en.rounds[:done]
	}
}

// allowed reports whether a change may stand in round r.
func allowed(only Parity, r int) bool {
	return only == EveryRound || (only == OddRounds) == (r%2 == 1)
}

func (en *enumeration) note(cost int64, changes int) {
	lists := [][][]answer{en.best}
	if !slowsDown(en.rounds) {
		lists = append(lists, en.quick)
	}
	for _, best := range lists {
		for i, lambda := range en.lambdas {
			a := &best[i][en.rounds[0]]
			if c := cost + lambda*en.perStitch*en.perStitch*int64(changes); !a.found || c < a.cost {
				*a = answer{true, c, append(a.rounds[:0], en.rounds...)}
			}
		}
	}
}

// slowsDown reports whether some interval is longer than the one before it.
func slowsDown(rounds []int) bool {
	for i := 2; i < len(rounds); i++ {
		if rounds[i]-rounds[i-1] > rounds[i-1]-rounds[i-2] {
			return true
		}
	}
	return false
}

// answer returns the best list for the ith lambda and a first round, 0 for a
// free one.
func (en *enumeration) answer(i, first int, quicken bool) answer {
	list := en.best[i]
	if quicken {
		list = en.quick[i]
	}
	best := list[first]
	if first == 0 {
		for _, a := range list {
			if a.found && (!best.found || a.cost < best.cost) {
				best = a
			}
		}
	}
	return best
}

// sweep compares the solver's cost and rounds with the enumeration's for every
// lambda, every first round and a free one, with and without Quicken, with changes in
// all rounds, the odd or the even ones.
func sweep(t *testing.T, s *Solver, p Problem, lambdas []int64) (compared [3]int) {
	t.Helper()
	for only := EveryRound; only <= EvenRounds; only++ {
		p.Only = only
		compared[only] = sweepOne(t, s, p, lambdas)
	}
	return compared
}

func sweepOne(t *testing.T, s *Solver, p Problem, lambdas []int64) (compared int) {
	t.Helper()
	en := enumerate(p, lambdas)
	for n := range 2 * len(lambdas) {
		i := n / 2
		for first := 0; first <= p.Rounds; first++ {
			if p.To == p.From && first > 0 {
				break // nothing to fix
			}
			p.Lambda, p.First, p.Quicken = lambdas[i], first, n%2 == 1
			want := en.answer(i, first, p.Quicken)
			got, err := s.Solve(&p, nil)
			if (err == nil) != want.found {
				t.Fatalf("%+v: %v; a schedule exists: %v", p, err, want.found)
			}
			if err != nil {
				continue
			}
			cost := Cost{want.cost, 1000 * en.perStitch * en.perStitch}
			if got.Cost.Less(cost) || cost.Less(got.Cost) || !slices.Equal(got.Rounds, want.rounds) {
				t.Fatalf("%+v:\n%v at %v, but every list tried gives\n%v at %v", p, got.Rounds, got.Cost, want.rounds, cost)
			}
			if priced, err := CostOf(p, got.Rounds); err != nil || priced != got.Cost {
				t.Fatalf("%+v: %v is priced %v (%v), not %v", p, got.Rounds, priced, err, got.Cost)
			}
			compared++
		}
	}
	return compared
}

// families are the kinds of problem to sweep: several steps and sizes against the
// default line, random targets, and targets in whole stitches, which make many
// costs equal.
var families = []struct {
	from, step int
	target     func(rng *rand.Rand, from, to int) int64
}{
	{from: 3, step: 2},
	{from: 60, step: -4},
	{from: 0, step: 1},
	{from: 3, step: 2, target: func(rng *rand.Rand, from, to int) int64 {
		return rng.Int64N(int64(to-from+4)*10_000) + int64(from-2)*10_000
	}},
	{from: 72, step: -4, target: func(rng *rand.Rand, from, to int) int64 {
		return rng.Int64N(int64(from-to+20)*10_000) + int64(to-10)*10_000
	}},
	{from: 1, step: 1, target: func(rng *rand.Rand, from, to int) int64 {
		return (int64(from) + rng.Int64N(int64(to-from+2))) * 10_000
	}},
}

// Every problem of 1 to 18 rounds: every number of changes, gaps of 1 to 4,
// leads of 0 to 2 rounds, every first round, four lambdas, with and without
// Quicken, in all rounds, the odd or the even ones.
func TestEqualsEnumerationUpTo18Rounds(t *testing.T) {
	lambdas := []int64{0, 1, 333, 8_000}
	for gap := 1; gap <= 4; gap++ {
		t.Run(fmt.Sprintf("gap %d", gap), func(t *testing.T) {
			t.Parallel()
			var s Solver
			var compared [3]int
			rng := rand.New(rand.NewPCG(18, uint64(gap)))
			for rounds := 1; rounds <= testenv.Cases(13, 18); rounds++ {
				for leads := range 9 {
					for k := 0; k <= (rounds-1)/gap+2; k++ {
						for _, f := range families {
							p := Problem{
								From: f.from, To: f.from + k*f.step, Step: f.step,
								Rounds: rounds, Gap: gap, LeadIn: leads % 3, LeadOut: leads / 3,
							}
							for f.target != nil && len(p.Target) < rounds {
								p.Target = append(p.Target, f.target(rng, p.From, p.To))
							}
							for only, n := range sweep(t, &s, p, lambdas) {
								compared[only] += n
							}
						}
					}
				}
			}
			t.Logf("schedules compared: %d in any round, %d in odd ones, %d in even ones", compared[0], compared[1], compared[2])
		})
	}
}
