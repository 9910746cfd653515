package shaping

import (
	"testing"
	"time"

	"github.com/stretchr/testify/assert"

	"thenar/internal/need"
)

// BenchmarkAgainstGLPK gives problems as large as gussets are to Solve and to
// a general-purpose solver (GLPK's glpsol, on the flow that
// TestEqualsGeneralPurposeSolver checks too; by simplex, the largest by
// interior point, since simplex does not end within its limit), compares the
// optimum, and reports the ratio of the times. glpsol's is its own figure,
// without reading the model, and counted low: it prints tenths of a second,
// so a twentieth is taken off.
func BenchmarkAgainstGLPK(b *testing.B) {
	glpsol := need.Program(b, "glpsol")
	for _, c := range []struct {
		name, method string
		p            Problem
	}{
		{"14of60", "--simplex", bench14of60},
		{"20of80", "--simplex", oracleProblems()["20 of 80"]},
		{"30of120", "--interior", bench30of120},
	} {
		p := c.p
		b.Run(c.name, func(b *testing.B) {
			var s Solver
			dst := make([]int, 0, p.Changes())
			var got Schedule
			for b.Loop() {
				var err error
				if got, err = s.Solve(&p, dst); err != nil {
					b.Fatal(err)
				}
			}
			ours := b.Elapsed() / time.Duration(b.N)
			cost, theirs := optimum(b, glpsol, c.method, p)
			assert.InDelta(b, cost, got.Cost.Float(), 1e-6*cost)
			b.ReportMetric(float64(theirs-50*time.Millisecond)/float64(ours), "times-faster")
			b.ReportMetric(theirs.Seconds(), "glpsol-s")
		})
	}
}

// A Solver that has solved a problem of the size needs no more memory.
func TestSolveAllocatesNothing(t *testing.T) {
	for name, p := range map[string]Problem{"14 of 60": bench14of60, "30 of 120": bench30of120} {
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
