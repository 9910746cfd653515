package project

import (
	"math/rand/v2"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"thenar/internal/likeness"
	"thenar/internal/mitt"
	"thenar/internal/stitch"
	"thenar/internal/tally"
	"thenar/internal/testenv"
	reading "thenar/internal/written"
)

// madeAs names how a mitt is made, for the figures of a log.
func madeAs(p *mitt.Plan) string {
	text := string(p.Kind) + ", " + string(p.Construction())
	if p.Down() {
		text += ", from the fingertips"
	}
	if p.Make.Flat {
		text += ", flat"
	}
	return text
}

// opened returns what the words of a mitt are like, at its own gauge.
func opened(t *testing.T, text string, p *mitt.Plan) *likeness.Likeness {
	t.Helper()
	read := reading.Read(text)
	report := tally.Work(read)
	trace, ok := tally.TraceOf(read, report.Sizes[0].Name, report.Sizes[0].Hand)
	require.True(t, ok)
	on10 := func(perMM float64) string { return strconv.FormatFloat(perMM*100, 'f', 4, 64) }
	return likeness.Of(text, &trace, &report.Sizes[0], likeness.Gauge{
		Stitches: on10(p.Gauge.Stitches), Rounds: on10(p.Gauge.Rounds), StitchesPerMM: p.Gauge.Stitches, RoundsPerMM: p.Gauge.Rounds,
	})
}

// countsOfAll lists the counts of all rounds of a mitt, in the order worked.
func countsOfAll(m stitch.Mitt) (list []int) {
	for _, s := range m.Sections {
		for _, r := range s.Rounds {
			list = append(list, r.Out())
		}
	}
	return list
}

// The words of a plan, opened as a mitt at the same gauge, plan to the same counts in every
// round: always where that is claimed, and nearly always it is.
func TestWordsOpenAsTheirMitt(t *testing.T) {
	rng := rand.New(rand.NewPCG(2704, 1))
	pl := NewPlanner()
	all, same := map[string]int{}, map[string]int{}
	for range testenv.Cases(250, 10_000) {
		d, plan := anyMitt(rng, pl)
		if rng.IntN(2) == 0 {
			d.Sheet = otherwise(rng, d.Sheet)
			var err error
			if plan, err = pl.Plan(d.Sheet); err != nil {
				continue
			}
		}
		d.Side = []Side{Right, Left}[rng.IntN(2)]
		out, err := pl.Derive(d, nil)
		require.NoError(t, err)
		l := opened(t, instructions(t, out), plan.Plan)
		way := madeAs(plan.Plan)
		if all[way]++; !l.Same() {
			continue
		}
		same[way]++
		again, err := pl.Plan(l.Sheet)
		require.NoError(t, err, "%v", l.Sheet)
		assert.Equal(t, countsOfAll(plan.Plan.Mitt()), countsOfAll(again.Plan.Mitt()), "%s: %v\nwas %v", way, l.Sheet, d.Sheet)
		assert.Equal(t, plan.Plan.Kind, again.Plan.Kind)
		assert.Equal(t, plan.Plan.Construction(), again.Plan.Construction())
	}
	for way, n := range all {
		t.Logf("%s: %d of %d", way, same[way], n)
	}
	every, opens := 0, 0
	for way, n := range all {
		every, opens = every+n, opens+same[way]
		assert.GreaterOrEqual(t, 2*same[way]+2, n, way)
	}
	t.Logf("all: %d of %d", opens, every)
	assert.GreaterOrEqual(t, 100*opens, 93*every)
}

// A text in which one number or stitch is changed is called the same as a plan only if it is:
// every round that was counted in it is that of the plan.
func TestDamagedWordsAreNotCalledTheSame(t *testing.T) {
	rng := rand.New(rand.NewPCG(2706, 1))
	pl := NewPlanner()
	tried, same := 0, 0
	for range testenv.Cases(150, 5_000) {
		d, plan := anyMitt(rng, pl)
		out, err := pl.Derive(d, nil)
		require.NoError(t, err)
		lines := strings.Split(instructions(t, out), "\n")
		at := rng.IntN(len(lines))
		slip := counting[rng.IntN(len(counting))]
		for n := 0; n < len(lines); n++ {
			var ok bool
			if lines[at], ok = slip.slipped(rng, lines[at]); ok {
				break
			}
			at = (at + 1) % len(lines)
		}
		text := strings.Join(lines, "\n")
		l := opened(t, text, plan.Plan)
		if tried++; !l.Same() {
			continue
		}
		same++
		again, err := pl.Plan(l.Sheet)
		require.NoError(t, err)
		var counted []int
		for _, r := range tally.Work(reading.Read(text)).Sizes[0].Rounds {
			counted = append(counted, r.After)
		}
		assert.Equal(t, counted, countsOfAll(again.Plan.Mitt()), "%s\n%s", lines[at], text)
	}
	t.Logf("%d of %d damaged texts are another plan’s", same, tried)
}
