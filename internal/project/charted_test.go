package project

import (
	"bytes"
	"encoding/csv"
	"fmt"
	"math/rand/v2"
	"regexp"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"thenar/internal/chart"
	laidout "thenar/internal/charted"
	"thenar/internal/stitch"
	"thenar/internal/tally"
	"thenar/internal/testenv"
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
			for range testenv.Cases(40, 1000) / shards {
				d, out := anyPainted(t, rng, pl)
				if out == nil {
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

// The words of a plan and the tables of its own charts, in all views and both layouts, tell the
// same; a cell that is changed is told at its round.
func TestWordsAgreeWithTheirCharts(t *testing.T) {
	const shards = 4
	for shard := range uint64(shards) {
		t.Run("", func(t *testing.T) {
			t.Parallel()
			rng := rand.New(rand.NewPCG(2730, shard))
			pl := NewPlanner()
			for range testenv.Cases(16, 1000) / shards {
				d, _ := anyMitt(rng, pl)
				if rng.IntN(2) == 0 {
					d.Sheet = otherwise(rng, d.Sheet)
				}
				d.Side = []Side{Right, Left}[rng.IntN(2)]
				d.FromLeft = rng.IntN(6) == 0
				if rng.IntN(3) == 0 {
					testenv.AnyRepeats(rng, d.Sheet)
				}
				out, err := pl.Derive(d, nil)
				if err != nil || len(out.Unsound) > 0 {
					continue
				}
				text := instructions(t, out)
				trace, _ := tally.TraceOf(reading.Read(text), "", "")
				read := laidout.Of(trace)
				var tables []sectionTable
				for _, view := range out.Charts.Views() {
					for _, layout := range []chart.Layout{chart.Wedge, chart.Columns} {
						g := out.Grid(chart.Options{View: view, Layout: layout})
						var b bytes.Buffer
						require.NoError(t, chart.CSV(&b, g))
						table, err := laidout.ReadTable(b.Bytes())
						require.NoError(t, err, "%s", b.String())
						found := laidout.Compare(read.List, table, "")
						require.Empty(t, found.Differences, "%s %s %v\n%v\n%s\n%s", view, layout, found.How, d.Sheet, b.String(), text)
						require.Equal(t, len(g.Rows), found.Alike)
						line, damaged := slippedCell(t, rng, b.Bytes())
						table, err = laidout.ReadTable(damaged)
						require.NoError(t, err)
						found = laidout.Compare(read.List, table, "")
						require.True(t, slices.ContainsFunc(found.Differences, func(d laidout.Difference) bool { return d.Row == line }), "row %d: %v\n%s\n%s", line, found, damaged, text)
						tables = append(tables, sectionTable{b.String(), onlySection(g)})
					}
				}
				if line, damaged := slippedStitch(rng, text); line > 0 {
					trace, _ := tally.TraceOf(reading.Read(damaged), "", "")
					read, told := laidout.Of(trace), false
					for _, raw := range tables {
						table, err := laidout.ReadTable([]byte(raw.table))
						require.NoError(t, err)
						told = told || slices.ContainsFunc(laidout.Compare(read.List, table, raw.section).Differences, func(d laidout.Difference) bool { return d.Line == line })
					}
					require.True(t, told, "line %d\n%s", line, damaged)
				}
			}
		})
	}
}

// sectionTable is a table, and the section that it shows; none if it shows several. Where two
// fingers are alike, only that tells which of them is meant.
type sectionTable struct{ table, section string }

func onlySection(g chart.Grid) string {
	first := g.Rows[0].Section
	if slices.ContainsFunc(g.Rows, func(r chart.Row) bool { return r.Section != first }) {
		return ""
	}
	return first.Title()
}

// slippedCell changes one stitch of a table, and returns the line in which it stands.
func slippedCell(t *testing.T, rng *rand.Rand, raw []byte) (line int, changed []byte) {
	t.Helper()
	rows, err := csv.NewReader(bytes.NewReader(raw)).ReadAll()
	require.NoError(t, err)
	for {
		row := rng.IntN(len(rows))
		x := rng.IntN(len(rows[row]) - 1)
		was, yarn, dyed := strings.Cut(rows[row][x], "/")
		if was == "" {
			continue
		}
		rows[row][x] = "k"
		if was == "k" || strings.HasPrefix(was, "k with its") {
			rows[row][x] = "p"
		}
		if dyed {
			rows[row][x] += "/" + yarn
		}
		var b bytes.Buffer
		w := csv.NewWriter(&b)
		require.NoError(t, w.WriteAll(rows))
		return row + 1, b.Bytes()
	}
}

// knitRun finds knit stitches of a single round.
var knitRun = regexp.MustCompile(`^(?:Round|Row) \d+: (?:.*[,(] ?)?k(\d+)(?:,| \()`)

// slippedStitch purls knit stitches of one round of a text, and returns its line; 0: there are
// none.
func slippedStitch(rng *rand.Rand, text string) (line int, changed string) {
	lines := strings.Split(text, "\n")
	var at []int
	for i, l := range lines {
		if knitRun.MatchString(l) {
			at = append(at, i)
		}
	}
	if len(at) == 0 {
		return 0, text
	}
	i := at[rng.IntN(len(at))]
	found := knitRun.FindStringSubmatchIndex(lines[i])
	lines[i] = lines[i][:found[2]-1] + "p" + lines[i][found[2]:]
	return i + 1, strings.Join(lines, "\n")
}
