package shaping

import (
	"os"
	"os/exec"
	"path/filepath"
	"regexp"
	"strconv"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"thenar/internal/need"
)

// timeUsed is what glpsol itself reports, to a tenth of a second.
var timeUsed = regexp.MustCompile(`Time used:\s+(\S+) secs`)

// BenchmarkAgainstGLPK gives one problem, an increase at 14 of 60 rounds, to
// Solve and to a general-purpose solver (GLPK's glpsol, simplex, on the
// shortest flow that TestEqualsGeneralPurposeSolver checks too), compares the
// optimum, and reports the ratio of the times. glpsol's is its own figure,
// without reading the model, and counted low: it prints tenths of a second,
// so a twentieth is taken off.
func BenchmarkAgainstGLPK(b *testing.B) {
	glpsol := need.Program(b, "glpsol")
	for name, p := range map[string]Problem{"14of60": bench14of60, "20of80": oracleProblems()["20 of 80"]} {
		b.Run(name, func(b *testing.B) {
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
			theirs, cost := timed(b, glpsol, p)
			assert.InDelta(b, cost, got.Cost.Float(), 1e-6*cost)
			b.ReportMetric(float64(theirs-50*time.Millisecond)/float64(ours), "times-faster")
			b.ReportMetric(theirs.Seconds(), "glpsol-s")
		})
	}
}

// timed lets glpsol solve a problem and gives its own time and the optimum.
func timed(b *testing.B, glpsol string, p Problem) (time.Duration, float64) {
	b.Helper()
	dir := b.TempDir()
	model, out := filepath.Join(dir, "p.lp"), filepath.Join(dir, "p.sol")
	require.NoError(b, os.WriteFile(model, linearProgramme(p), 0o600))
	said, err := exec.Command(glpsol, "--lp", model, "-o", out).CombinedOutput()
	require.NoError(b, err, "%s", said)
	require.Contains(b, string(said), "OPTIMAL LP SOLUTION FOUND")
	sol, err := os.ReadFile(out)
	require.NoError(b, err)
	cost, err := strconv.ParseFloat(string(objective.FindSubmatch(sol)[1]), 64)
	require.NoError(b, err)
	used := timeUsed.FindSubmatch(said)
	require.NotNil(b, used, "%s", said)
	seconds, err := strconv.ParseFloat(string(used[1]), 64)
	require.NoError(b, err)
	return time.Duration(seconds * float64(time.Second)), cost
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
