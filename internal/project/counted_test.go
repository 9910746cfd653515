package project

import (
	"fmt"
	"math/rand/v2"
	"testing"

	"github.com/stretchr/testify/require"

	"thenar/internal/chart"
	"thenar/internal/mitt"
	"thenar/internal/sheet"
	"thenar/internal/stitch"
	"thenar/internal/tally"
	"thenar/internal/testenv"
	"thenar/internal/wale"
	reading "thenar/internal/written"
	"thenar/internal/yarn"
)

// countedAs compares the rounds that were counted from a text with those of a mitt.
func countedAs(size tally.Size, m stitch.Mitt) error {
	at := 0
	for _, s := range m.Sections {
		for r, round := range s.Rounds {
			if at >= len(size.Rounds) {
				return fmt.Errorf("%s, round %d: not counted", s.Part, r+1)
			}
			got := size.Rounds[at]
			if got.After != round.Out() || got.Number != r+1 || !titled(got.Section, s.Part) {
				return fmt.Errorf("%s, round %d: %+v, and the plan has %d", s.Part, r+1, got, round.Out())
			}
			if s.Part == stitch.Gusset && got.Inside != round.LeadOut() {
				return fmt.Errorf("%s, round %d: %+v, and the gusset has %d", s.Part, r+1, got, round.LeadOut())
			}
			at++
		}
	}
	if at != len(size.Rounds) {
		return fmt.Errorf("%d rounds, of %d", len(size.Rounds), at)
	}
	return nil
}

// anyPainted returns any mitt, of a quarter with marks on its chart and of a third with motifs;
// nothing for one that can't be planned or doesn't add up.
func anyPainted(t *testing.T, rng *rand.Rand, pl *Planner) (d Document, out *Outputs) {
	d, plan := anyMitt(rng, pl)
	if rng.IntN(2) == 0 {
		d.Sheet = otherwise(rng, d.Sheet)
		var err error
		if plan, err = pl.Plan(d.Sheet); err != nil {
			return d, nil
		}
	}
	var marks chart.Marks
	if rng.IntN(4) == 0 {
		m := plan.Plan.Mitt()
		marks = anyMarks(rng, m, wale.Mitt(m, plan.UnderThumb()))
	}
	d.Side = []Side{Right, Left}[rng.IntN(2)]
	d.FromLeft = rng.IntN(6) == 0
	if rng.IntN(3) == 0 {
		testenv.AnyRepeats(rng, d.Sheet)
	}
	out, err := pl.Derive(d, marks)
	require.NoError(t, err)
	if len(out.Unsound) > 0 {
		return d, nil
	}
	return d, out
}

// The words of a plan pass the count check without a finding, and every round comes to the
// count of the plan, whatever its construction, kind and hand.
func TestWordsAreCounted(t *testing.T) {
	const shards = 4
	for shard := range uint64(shards) {
		t.Run("", func(t *testing.T) {
			t.Parallel()
			rng := rand.New(rand.NewPCG(2700, shard))
			pl := NewPlanner()
			for range testenv.Cases(200, 10_000) / shards {
				d, out := anyPainted(t, rng, pl)
				if out == nil {
					continue
				}
				text := instructions(t, out)
				report := tally.Work(reading.Read(text))
				require.Len(t, report.Sizes, 1, text)
				require.NoError(t, countedAs(report.Sizes[0], out.Mitt), "%v\n%v\n%s", report.Findings, d.Sheet, text)
				require.Empty(t, report.Findings, "%v\n%s", d.Sheet, text)
				requireSameYarn(t, report.Sizes[0], out, text)
			}
		})
	}
}

// requireSameYarn compares the yarn of what was counted with that of the mitt, by the edges of
// both; a flat one's seams are told by nobody's stitches.
func requireSameYarn(t *testing.T, size tally.Size, out *Outputs, text string) {
	t.Helper()
	c := yarn.Counts{CastOn: size.Edges.CastOn, CastOff: size.Edges.CastOff, Ends: size.Edges.Ends}
	for _, r := range size.Rounds {
		c.Loops += r.After
	}
	got, want := c.Estimate(&out.Plan.Gauge, yarn.Request{}).One.Mean, yarn.Of(out.Plan, out.Mitt, yarn.Request{}).One.Mean
	if out.Plan.Make.Flat {
		require.Less(t, got, want, text)
		require.True(t, size.Edges.Rows)
		return
	}
	require.InDelta(t, want, got, 1e-6, "%+v\n%s", size.Edges, text)
}

// otherwise returns a sheet made in another construction.
func otherwise(rng *rand.Rand, s sheet.Sheet) sheet.Sheet {
	s = s.Clone()
	switch rng.IntN(3) {
	case 0:
		s[mitt.PathConstruction] = []string{"slit", "none", "straight"}[rng.IntN(3)]
	case 1:
		s[mitt.PathDirection] = "down"
	}
	if rng.IntN(3) == 0 {
		s[mitt.PathFlat] = "true"
	}
	if rng.IntN(4) == 0 {
		s[sheet.PathTerms] = "uk"
	}
	return s
}
