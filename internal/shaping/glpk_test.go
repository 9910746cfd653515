package shaping

import (
	"bytes"
	"fmt"
	"math"
	"math/rand/v2"
	"os"
	"os/exec"
	"path/filepath"
	"regexp"
	"strconv"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"thenar/internal/testenv"
)

// glpkProblems returns problems that are too large for enumeration. A
// general-purpose solver (GLPK's glpsol, simplex) gets them as a flow. 20 of 80
// takes it some seconds; 30 of 120 takes half a minute and is left to
// BenchmarkAgainstGLPK.
func glpkProblems() map[string]Problem {
	rng := rand.New(rand.NewPCG(60, 14))
	random := Problem{From: 3, To: 35, Step: 2, Rounds: 40, Gap: 2, LeadOut: 1, Lambda: 8000}
	for r := range random.Rounds {
		random.Target = append(random.Target, int64(30_000+8_000*r)+rng.Int64N(60_000)-30_000)
	}

	return map[string]Problem{
		"6 of 19, an adult's gusset":      bench6of19,
		"14 of 60":                        bench14of60,
		"20 of 80":                        {From: 4, To: 44, Step: 2, Rounds: 80, Gap: 2, LeadOut: 1, Lambda: 8000},
		"top of 48 over 15":               topOf(48, 8, 15),
		"9 of 47, no two rhythms alike":   {From: 1, To: 19, Step: 2, Rounds: 47, Gap: 3, LeadIn: 2, LeadOut: 2, Lambda: 500},
		"16 of 40 after a drawn profile":  random,
		"top of 72 over 24 rounds":        topOf(72, 8, 24),
		"17 of 44, one-sided, first in 1": {From: 4, To: 21, Step: 1, Rounds: 44, Gap: 2, LeadOut: 1, Lambda: 8000, First: 1},
		"11 of 53, gauntlet decreases":    {From: 60, To: 38, Step: -2, Rounds: 53, Gap: 3, LeadOut: 2, Lambda: 2000},

		"never slower: top of 48 over 15":       quickened(topOf(48, 8, 15)),
		"never slower: top of 72 over 24":       quickened(topOf(72, 8, 24)),
		"never slower: 11 of 53":                quickened(Problem{From: 60, To: 38, Step: -2, Rounds: 53, Gap: 3, LeadOut: 2, Lambda: 2000}),
		"never slower: 9 of 44 after a drawing": quickened(drawn(44, 9)),
		"never slower, odd rows: top of 64":     quickened(onlyIn(OddRounds, topOf(64, 8, 44))),

		"odd rows: 8 of 40, a gusset":        {From: 3, To: 19, Step: 2, Rounds: 40, Gap: 2, LeadOut: 1, Lambda: 8000, First: 1, Only: OddRounds},
		"odd rows: 12 of 52, gap 3":          {From: 1, To: 25, Step: 2, Rounds: 52, Gap: 3, LeadIn: 1, LeadOut: 2, Lambda: 500, Only: OddRounds},
		"odd rows: top of 64 over 44":        onlyIn(OddRounds, topOf(64, 8, 44)),
		"even rows: 9 of 50 after a drawing": onlyIn(EvenRounds, drawn(50, 9)),
		"odd rows: 13 of 53, one-sided":      {From: 4, To: 17, Step: 1, Rounds: 53, Gap: 2, LeadOut: 1, Lambda: 2000, Only: OddRounds},
	}
}

// onlyIn returns a problem whose changes stand only in odd or only in even rounds.
func onlyIn(only Parity, p Problem) Problem {
	p.Only = only
	return p
}

// quickened returns a problem whose intervals never grow.
func quickened(p Problem) Problem {
	p.Quicken = true
	return p
}

// drawn returns a problem of so many rounds and increases along a random profile.
func drawn(rounds, changes int) Problem {
	rng := rand.New(rand.NewPCG(61, uint64(rounds)))
	p := Problem{From: 3, To: 3 + 2*changes, Step: 2, Rounds: rounds, Gap: 2, LeadOut: 1, Lambda: 8000}
	for r := range rounds {
		p.Target = append(p.Target, 30_000+int64(20_000*changes*r/rounds)+rng.Int64N(60_000)-30_000)
	}
	return p
}

func TestEqualsGeneralPurposeSolver(t *testing.T) {
	glpsol := testenv.Program(t, "glpsol")
	for name, p := range glpkProblems() {
		if p.Rounds > testenv.Cases(53, 80) {
			continue
		}
		t.Run(name, func(t *testing.T) {
			t.Parallel()
			got, err := Solve(p)
			require.NoError(t, err)
			cost, _ := optimum(t, glpsol, "--simplex", p)
			assert.InDelta(t, cost, got.Cost.Float(), 1e-6*max(1, got.Cost.Float()))
		})
	}
}

var objective = regexp.MustCompile(`Objective:\s+\S+ = (\S+) \(MINimum\)`)

// timeUsed matches the time that glpsol reports, to a tenth of a second.
var timeUsed = regexp.MustCompile(`Time used:\s+(\S+) secs`)

// proved matches what glpsol reports, with either method, once it has proved
// that nothing costs less.
var proved = regexp.MustCompile(`OPTIMAL (LP )?SOLUTION FOUND`)

// optimum returns the least cost that glpsol finds by one of its methods,
// --simplex or --interior, within 300 s, and the time that it reports.
func optimum(t testing.TB, glpsol, method string, p Problem) (cost float64, used time.Duration) {
	t.Helper()
	dir := t.TempDir()
	model, out := filepath.Join(dir, "p.lp"), filepath.Join(dir, "p.sol")
	require.NoError(t, os.WriteFile(model, linearProgramme(p), 0o600))
	said, err := exec.Command(glpsol, method, "--lp", model, "--tmlim", "300", "-o", out).CombinedOutput()
	require.NoError(t, err, "%s", said)
	require.Regexp(t, proved, string(said), "no answer within the limit is a failure")
	sol, err := os.ReadFile(out)
	require.NoError(t, err)
	number := func(pattern *regexp.Regexp, text []byte) float64 {
		m := pattern.FindSubmatch(text)
		require.NotNil(t, m, "%s", text)
		n, err := strconv.ParseFloat(string(m[1]), 64)
		require.NoError(t, err)
		return n
	}
	return number(objective, sol), time.Duration(number(timeUsed, said) * float64(time.Second))
}

// linearProgramme returns a problem in CPLEX LP format as a flow of one unit,
// whose least cost is attained by a whole solution. A node n(k,r,d) is change k
// in round r, d rounds after the change before it; a hub h(k,r) is change k in
// round r at any distance. From a node the unit goes on at the same distance, or
// pays λ to reach the hub and goes on at any. The rounds from one change to the
// next have the count that the change leaves.
func linearProgramme(p Problem) []byte {
	w := network{p: p, k: p.Changes(), in: map[string][]string{}, out: map[string][]string{}}
	if p.Quicken {
		w.falling()
		return w.programme()
	}
	for r := w.low(1); r <= w.high(1); r++ {
		if !allowed(p.Only, r) {
			continue
		}
		w.edge("source", w.hub(1, r), w.between(0, 1, r))
	}
	for i := 1; i < w.k; i++ {
		for r := w.low(i); r <= w.high(i); r++ {
			for d := p.Gap; r+d <= w.high(i+1); d++ {
				if !allowed(p.Only, r) || !allowed(p.Only, r+d) {
					continue
				}
				cost := w.between(i, r, r+d)
				next := w.node(i+1, r+d, d)
				w.edge(w.hub(i, r), next, cost)
				if i > 1 && r-d >= w.low(i-1) && r-d <= w.high(i-1) {
					w.edge(w.node(i, r, d), next, cost)
				}
				w.edge(next, w.hub(i+1, r+d), float64(p.Lambda)/1000*float64(min(1, w.k-1-i)))
			}
		}
	}
	for r := w.low(w.k); r <= w.high(w.k); r++ {
		if !allowed(p.Only, r) {
			continue
		}
		w.edge(w.hub(w.k, r), "sink", w.between(w.k, r, p.Rounds+1))
	}
	return w.programme()
}

// network collects edges and writes them as a linear programme.
type network struct {
	p       Problem
	k       int
	cost    bytes.Buffer
	in, out map[string][]string
	names   []string
	edges   int
}

// low returns the earliest round of change i.
func (w *network) low(i int) int {
	return max(w.p.First, 1+w.p.LeadIn) + (i-1)*w.p.Gap
}

// high returns the latest round of change i.
func (w *network) high(i int) int {
	if i == 1 && w.p.First != 0 {
		return w.p.First
	}
	return w.p.Rounds - w.p.LeadOut - (w.k-i)*w.p.Gap
}

func (w *network) hub(i, r int) string     { return fmt.Sprintf("h_%d_%d", i, r) }
func (w *network) node(i, r, d int) string { return fmt.Sprintf("n_%d_%d_%d", i, r, d) }

// between returns the cost of rounds a … b − 1 after a number of changes.
func (w *network) between(changes, a, b int) (sum float64) {
	p := w.p
	for r := a; r < b; r++ {
		off := float64(p.From + p.Step*changes)
		if p.Target != nil {
			off -= float64(p.Target[r-1]) / 10_000
		} else {
			off -= float64(p.From) + float64(p.To-p.From)*(float64(r)-0.5)/float64(p.Rounds) + float64(p.Step)/2
		}
		sum += off * off
	}
	return sum
}

func (w *network) edge(from, to string, cost float64) {
	w.edges++
	name := fmt.Sprintf("e%d", w.edges)
	fmt.Fprintf(&w.cost, " %+.10f %s\n", cost, name)
	for _, n := range []string{from, to} {
		if w.in[n] == nil && w.out[n] == nil {
			w.names = append(w.names, n)
		}
	}
	w.out[from] = append(w.out[from], name)
	w.in[to] = append(w.in[to], name)
}

func (w *network) programme() []byte {
	var b bytes.Buffer
	fmt.Fprintf(&b, "Minimize\n cost:\n%sSubject To\n", w.cost.String())
	for _, n := range w.names {
		fmt.Fprintf(&b, " %s:", n)
		for _, e := range w.in[n] {
			fmt.Fprintf(&b, " + %s\n", e)
		}
		for _, e := range w.out[n] {
			fmt.Fprintf(&b, " - %s\n", e)
		}
		fmt.Fprintf(&b, " = %d\n", map[string]int{"source": -1, "sink": 1}[n])
	}
	b.WriteString("End\n")
	return b.Bytes()
}

// BenchmarkAgainstGLPK solves gussets of 14 increases in 60 rounds to 30 in 120
// with Solve and with glpsol, on the flow of TestEqualsGeneralPurposeSolver. It
// compares the costs and reports the ratio of the times. Of glpsol's two methods
// the faster counts, by glpsol's own figure without reading the model; as that
// is in tenths of a second, a twentieth is subtracted.
func BenchmarkAgainstGLPK(b *testing.B) {
	glpsol := testenv.Program(b, "glpsol")
	for _, c := range []struct {
		name string
		p    Problem
	}{{"14of60", bench14of60}, {"20of80", glpkProblems()["20 of 80"]}, {"30of120", bench30of120}} {
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
