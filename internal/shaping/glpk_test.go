package shaping

import (
	"math"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"thenar/internal/testenv"
)

// BenchmarkAgainstGLPK gives gussets of 14 increases in 60 rounds to 30 in 120
// to Solve and to a general-purpose solver (GLPK's glpsol, on the shortest
// flow that TestEqualsGeneralPurposeSolver checks too), compares the optimum,
// and reports the ratio of the times. glpsol may take the faster of its two
// methods. Its time is its own figure, without reading the model, and counted
// low: it prints tenths of a second, so a twentieth is taken off.
func BenchmarkAgainstGLPK(b *testing.B) {
	glpsol := testenv.Program(b, "glpsol")
	for _, c := range []struct {
		name string
		p    Problem
	}{{"14of60", bench14of60}, {"20of80", oracleProblems()["20 of 80"]}, {"30of120", bench30of120}} {
		b.Run(c.name, func(b *testing.B) {
			var s Solver
			dst := make([]int, 0, c.p.Changes())
			var got Schedule
			for b.Loop() {
				var err error
				if got, err = s.Solve(&c.p, dst); err != nil {
					b.Fatal(err)
				}
			}
			ours := b.Elapsed() / time.Duration(b.N)
			theirs := time.Duration(math.MaxInt64)
			for _, method := range []string{"--simplex", "--interior"} {
				cost, used := optimum(b, glpsol, method, c.p)
				require.InDelta(b, cost, got.Cost.Float(), 1e-6*cost, method)
				b.ReportMetric(used.Seconds(), "glpsol"+method+"-s")
				theirs = min(theirs, used)
			}
			b.ReportMetric(float64(theirs-50*time.Millisecond)/float64(ours), "times-faster")
		})
	}
}

// A Solver that has solved a problem of the size needs no more memory.
func TestSolveAllocatesNothing(t *testing.T) {
	for name, p := range map[string]Problem{"14 of 60": bench14of60, "30 of 120": bench30of120, "along a target": topOf(72, 8, 24)} {
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
