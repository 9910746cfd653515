package project

import (
	"fmt"
	"math/rand/v2"
	"slices"
	"testing"

	"github.com/stretchr/testify/require"

	"thenar/internal/chart"
	laidout "thenar/internal/charted"
	"thenar/internal/stitch"
	"thenar/internal/tally"
	"thenar/internal/testenv"
	"thenar/internal/wale"
	reading "thenar/internal/written"
)

// toldAs are operations by those that the words tell them as, where the difference lies in what
// is said around the round.
var toldAs = map[stitch.Op]stitch.Op{stitch.JoinHem: stitch.Knit, stitch.CornerM1: stitch.M1, stitch.NoStitch: stitch.NoStitch}

// drawnAs compares the charts of a text with the rounds of a mitt, stitch for stitch.
func drawnAs(list []laidout.Chart, m stitch.Mitt) error {
	var rows []chart.Row
	for _, c := range list {
		for _, row := range c.Grid.Rows {
			if row.Said == "" { // not those that are worked to a measure
				rows = append(rows, row)
			}
		}
	}
	at := 0
	for _, s := range m.Sections {
		for r, round := range s.Rounds {
			if at >= len(rows) {
				return fmt.Errorf("%s, round %d: not drawn", s.Part, r+1)
			}
			row := rows[at]
			at++
			picks := slices.Contains(round.Ops, stitch.PickUp)
			var want, got []stitch.Op
			for _, op := range round.Ops {
				if op == stitch.Hold && picks || op == stitch.NoStitch {
					continue
				}
				if as, ok := toldAs[op]; ok {
					op = as
				}
				want = append(want, op)
			}
			for _, c := range row.Cells {
				got = append(got, c.Op)
			}
			if row.Round != r+1 || row.Side != round.Side || !slices.Equal(got, want) {
				return fmt.Errorf("%s, %s %d: drawn as %d %v %v %s, and the plan has %v", s.Part, round.Side.Noun(), r+1, row.Round, row.Side, got, row.Unread, want)
			}
		}
	}
	if at != len(rows) {
		return fmt.Errorf("%d rounds, of %d", at, len(rows))
	}
	return nil
}

// The chart of what was read in the words of a plan is the plan's own, stitch for stitch and
// round for round, whatever its construction, kind and hand.
func TestWordsAreCharted(t *testing.T) {
	const shards = 4
	for shard := range uint64(shards) {
		t.Run("", func(t *testing.T) {
			t.Parallel()
			rng := rand.New(rand.NewPCG(2720, shard))
			pl := NewPlanner()
			for range testenv.Cases(80, 1000) / shards {
				d, plan := anyMitt(rng, pl)
				if rng.IntN(2) == 0 {
					d.Sheet = otherwise(rng, d.Sheet)
					var err error
					if plan, err = pl.Plan(d.Sheet); err != nil {
						continue
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
					continue
				}
				text := instructions(t, out)
				trace, ok := tally.TraceOf(reading.Read(text), "", "")
				require.True(t, ok)
				require.False(t, trace.Cut)
				require.NoError(t, drawnAs(laidout.Of(trace).List, out.Mitt), "%v\n%s", d.Sheet, text)
			}
		})
	}
}
