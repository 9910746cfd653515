package shaping

import "testing"

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
