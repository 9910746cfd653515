package division

import (
	"bytes"
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"regexp"
	"strconv"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"thenar/internal/testenv"
)

// Ten hands that are too large for enumeration, some with numbers fixed, are given to a
// general-purpose integer solver (GLPK's glpsol) as well.
func TestEqualsGeneralPurposeSolver(t *testing.T) {
	glpsol := testenv.Program(t, "glpsol")
	usual := girthOverHand(t)
	hand := func(stitches int, spread ...float64) Problem {
		p := Problem{Stitches: stitches}
		for i, ratio := range usual {
			p.Wanted[i] = wanted(ratio*spread[i]*float64(stitches)/(1+handEase), 1)
		}
		return p
	}
	for name, p := range map[string]Problem{
		"44, usual fingers":                     hand(44, 1, 1, 1, 1),
		"57, slender fingers":                   hand(57, 0.93, 0.91, 0.95, 0.94),
		"66, a wide index finger":               hand(66, 1.12, 1, 0.98, 0.97),
		"72, a swollen middle finger":           hand(72, 1, 1.35, 1, 1),
		"81, wide fingers":                      hand(81, 1.3, 1.25, 1.3, 1.4),
		"96, fine yarn":                         hand(96, 0.99, 1.02, 1.01, 0.96),
		"48, the bridges of 1918":               fixed(hand(48, 1, 1, 1, 1), Pins{Bridge: [Bridges]int{3, 3, 3}}),
		"60, three numbers":                     fixed(hand(60, 1, 1, 1, 1), Pins{Palm: [Fingers]int{0, 0, 6}, Stitches: [Fingers]int{0, 22}, Bridge: [Bridges]int{0, 0, 7}}),
		"66, whose palm and back leave no turn": fixed(hand(66, 1, 1, 1, 1), Pins{Palm: [Fingers]int{8, 0, 7}, Both: [Fingers]int{17, 0, 15}}),
		"80, a bridge of 9":                     fixed(hand(80, 1, 0.9, 1, 1), Pins{Back: [Fingers]int{0, 9, 0, 11}, Bridge: [Bridges]int{0, 9}}),
	} {
		t.Run(name, func(t *testing.T) {
			t.Parallel()
			got, err := Solve(&p)
			require.NoError(t, err)
			assert.InDelta(t, optimum(t, glpsol, &p), got.Cost.Float(), 1e-6)
		})
	}
}

func fixed(p Problem, pins Pins) Problem {
	p.Pins = pins
	return p
}

var (
	objective = regexp.MustCompile(`Objective:\s+\S+ = (\S+) \(MINimum\)`)
	proved    = regexp.MustCompile(`INTEGER OPTIMAL SOLUTION FOUND`)
)

// optimum returns the least cost that glpsol finds within 60 s and proves to be least.
func optimum(t *testing.T, glpsol string, p *Problem) float64 {
	t.Helper()
	dir := t.TempDir()
	model, out := filepath.Join(dir, "p.lp"), filepath.Join(dir, "p.sol")
	require.NoError(t, os.WriteFile(model, integerProgramme(p), 0o600))
	said, err := exec.Command(glpsol, "--lp", model, "--tmlim", "60", "-o", out).CombinedOutput()
	require.NoError(t, err, "%s", said)
	require.Regexp(t, proved, string(said), "no answer within the limit is a failure")
	sol, err := os.ReadFile(out)
	require.NoError(t, err)
	m := objective.FindSubmatch(sol)
	require.NotNil(t, m, "%s", sol)
	cost, err := strconv.ParseFloat(string(m[1]), 64)
	require.NoError(t, err)
	return cost
}

// integerProgramme returns a problem in CPLEX LP format. Palm, back and bridges are whole
// numbers. A square is chosen from a list: the binary n_i_v says that finger i has v
// stitches, d_j_v that the bridges j and j + 1 differ by v.
func integerProgramme(p *Problem) []byte {
	var cost, rows, limits, whole, binary bytes.Buffer
	palm, back := "", ""
	for i := range Fingers {
		f, k, most := fmt.Sprintf("f%d", i), fmt.Sprintf("k%d", i), p.Stitches
		palm, back = palm+" + "+f, back+" + "+k
		fmt.Fprintf(&whole, " %s %s\n", f, k)
		fmt.Fprintf(&rows, " %s - %s <= 1\n %s - %s <= 1\n %s + %s >= 2\n", f, k, k, f, f, k)
		pin(&rows, f, p.Pins.Palm[i])
		pin(&rows, k, p.Pins.Back[i])
		pin(&rows, f+" + "+k, p.Pins.Both[i])
		one, count := "", ""
		for v := 6; v <= most; v++ {
			name := fmt.Sprintf("n_%d_%d", i, v)
			off := float64(v) - float64(p.Wanted[i])/10_000
			fmt.Fprintf(&cost, " + %.10f %s\n", off*off, name)
			fmt.Fprintf(&binary, " %s\n", name)
			one, count = one+" + "+name+"\n", count+fmt.Sprintf(" - %d %s\n", v, name)
		}
		beside := ""
		if i > 0 {
			beside += fmt.Sprintf(" + x%d", i-1)
		}
		if i < Bridges {
			beside += fmt.Sprintf(" + x%d", i)
		}
		fmt.Fprintf(&rows, "%s = 1\n %s + %s%s%s = 0\n", one, f, k, beside, count)
		if n := p.Pins.Stitches[i]; n != 0 {
			fmt.Fprintf(&rows, " n_%d_%d = 1\n", i, n)
		}
	}
	fmt.Fprintf(&rows, "%s = %d\n%s = %d\n", palm, p.Stitches/2, back, p.Stitches-p.Stitches/2)
	for j := range Bridges {
		x := fmt.Sprintf("x%d", j)
		fmt.Fprintf(&whole, " %s\n", x)
		fmt.Fprintf(&limits, " 1 <= %s <= %d\n", x, max(6, p.Pins.Bridge[j]))
		pin(&rows, x, p.Pins.Bridge[j])
		if j == 0 {
			continue
		}
		one, differ := "", ""
		for v := -12; v <= 12; v++ {
			name := fmt.Sprintf("d_%d_%d", j, v+12)
			fmt.Fprintf(&cost, " + %.4f %s\n", float64(v*v)/4, name)
			fmt.Fprintf(&binary, " %s\n", name)
			one, differ = one+" + "+name+"\n", differ+fmt.Sprintf(" %+d %s\n", -v, name)
		}
		fmt.Fprintf(&rows, "%s = 1\n x%d - %s%s = 0\n", one, j-1, x, differ)
	}
	return fmt.Appendf(nil, "Minimize\n cost:\n%sSubject To\n%sBounds\n%sGeneral\n%sBinary\n%sEnd\n",
		cost.String(), rows.String(), limits.String(), whole.String(), binary.String())
}

func pin(rows *bytes.Buffer, what string, to int) {
	if to != 0 {
		fmt.Fprintf(rows, " %s = %d\n", what, to)
	}
}
