package shaping

import (
	"errors"
	"math/rand/v2"
	"slices"
	"testing"
)

// lists yields every list of k rounds that begins with the worked changes and
// keeps the problem's bounds. It is written from the definition.
func lists(p *Problem, k int, yield func([]int)) {
	done := len(p.Changed)
	var walk func(list []int)
	walk = func(list []int) {
		if len(list) == k {
			if k == 0 || p.First == 0 || list[0] == p.First {
				yield(list)
			}
			return
		}
		from := max(1+p.LeadIn, p.Worked+1)
		if n := len(list); n > 0 {
			from = max(from, list[n-1]+p.Gap)
		}
		to := p.Rounds - p.LeadOut
		if n := len(list); p.Quicken && n > max(done, 1) {
			to = min(to, 2*list[n-1]-list[n-2])
		}
		for r := from; r <= to; r++ {
			if !allowed(p.Only, r) {
				continue
			}
			walk(append(list, r))
		}
	}
	if done <= k {
		walk(append(make([]int, 0, k+done), p.Changed...))
	}
}

// randomWorked returns a random problem with worked rounds.
func randomWorked(rng *rand.Rand) Problem {
	p := Problem{
		From: 3, Step: 2, Rounds: 1 + rng.IntN(15), Gap: 1 + rng.IntN(3), LeadIn: rng.IntN(2), LeadOut: rng.IntN(2),
		Lambda: []int64{0, 333, 8_000}[rng.IntN(3)], Quicken: rng.IntN(2) == 0, Only: Parity(rng.IntN(3)),
	}
	p.To = p.From + p.Step*rng.IntN(6)
	if rng.IntN(2) == 0 {
		for range p.Rounds {
			p.Target = append(p.Target, 10_000*(3+rng.Int64N(int64(p.To))))
		}
	}
	p.Worked = rng.IntN(p.Rounds + 1)
	for r := 1 + rng.IntN(3); r <= p.Worked && rng.IntN(5) > 0; r += 1 + rng.IntN(4) {
		p.Changed = append(p.Changed, r)
	}
	if rng.IntN(4) == 0 && len(p.Changed) > 0 {
		p.First = p.Changed[0]
	}
	return p
}

// The worked changes stay, and the schedule is the cheapest of all lists that
// begin with them, the first of equally cheap ones. A problem without such a
// list is refused.
func TestWorkedEqualsEnumeration(t *testing.T) {
	rng := rand.New(rand.NewPCG(5, 1))
	var s Solver
	solved, refused, offBeat := 0, 0, 0
	for range 30_000 {
		p := randomWorked(rng)
		var best []int
		var least Cost
		lists(&p, p.Changes(), func(list []int) {
			if c, err := CostOf(p, list); err != nil {
				t.Fatal(err)
			} else if best == nil || c.Less(least) {
				best, least = append([]int{}, list...), c
			}
		})
		got, err := s.Solve(&p, nil)
		var impossible *Impossible
		switch {
		case best == nil && errors.As(err, &impossible):
			refused++
		case best == nil || err != nil:
			t.Fatalf("%+v: %v, %v; tried: %v", p, got.Rounds, err, best)
		case got.Cost != least || !slices.Equal(got.Rounds, best):
			t.Fatalf("%+v:\n%v at %v; tried: %v at %v", p, got.Rounds, got.Cost, best, least)
		default:
			solved++
			if n := len(p.Changed); n > 0 && n < p.Changes() && !allowed(p.Only, p.Changed[n-1]) {
				offBeat++
			}
		}
	}
	t.Logf("%d solved, %d of them from a round in which none may be chosen; %d without a list", solved, offBeat, refused)
	if solved < 5_000 || offBeat < 300 || refused < 1_000 {
		t.Error("too few of a kind to tell anything")
	}
}

// A solved schedule that is worked up to any round and solved again stays the
// same.
func TestWorkedScheduleStays(t *testing.T) {
	for _, p := range []Problem{
		{From: 3, To: 15, Step: 2, Rounds: 19, Gap: 2, LeadOut: 1, Lambda: 8_000, First: 1},
		{From: 3, To: 31, Step: 2, Rounds: 60, Gap: 2, LeadOut: 1, Lambda: 8_000, First: 1},
		{From: 48, To: 8, Step: -4, Rounds: 15, Gap: 1, Lambda: 8_000},
		{From: 3, To: 15, Step: 2, Rounds: 26, Gap: 3, LeadOut: 1, Lambda: 8_000, First: 1, Only: OddRounds},
		{From: 48, To: 8, Step: -4, Rounds: 31, Gap: 1, Lambda: 8_000, Only: EvenRounds},
	} {
		whole, err := Solve(p)
		if err != nil {
			t.Fatal(err)
		}
		for p.Worked = 1; p.Worked <= p.Rounds; p.Worked++ {
			n, _ := slices.BinarySearch(whole.Rounds, p.Worked+1)
			p.Changed = whole.Rounds[:n]
			if got, err := Solve(p); err != nil || !slices.Equal(got.Rounds, whole.Rounds) || got.Cost != whole.Cost {
				t.Errorf("from round %d of %v: %v, %v", p.Worked, whole.Rounds, got.Rounds, err)
			}
		}
	}
}
