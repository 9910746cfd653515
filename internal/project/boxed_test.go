package project

import (
	"bytes"
	"encoding/csv"
	"fmt"
	"math/rand/v2"
	"slices"
	"strconv"
	"strings"
	"sync/atomic"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"thenar/internal/chart"
	"thenar/internal/stitch"
	"thenar/internal/testenv"
	"thenar/internal/wale"
)

// rowsAt are the stitches of rounds in the order in which they stand from the right, by the
// name of their round and the side that faces: "hand 3".
type rowsAt map[string][]string

// wholeRows writes out a chart of which nothing is left out.
func wholeRows(g chart.Grid) rowsAt {
	out := rowsAt{}
	for _, row := range g.Rows {
		var list []string
		for _, c := range row.Cells {
			if c.Shown() {
				list = append(list, c.Op.Code()+"/"+c.Yarn+c.Note)
			}
		}
		out[fmt.Sprint(row.Section, " ", row.Round, row.Side.Words())] = list
	}
	return out
}

// unfolded writes out a list as often as its folds say.
func unfolded[T any](list []T, folds []chart.Fold) (out []T) {
	for at := 0; at < len(list); {
		i := slices.IndexFunc(folds, func(f chart.Fold) bool { return f.From == at })
		if i < 0 {
			out = append(out, list[at])
			at++
			continue
		}
		for range folds[i].Times {
			out = append(out, list[at:at+folds[i].Count]...)
		}
		at += folds[i].Count
	}
	return out
}

// boxedRows writes out a boxed view by its counts.
func boxedRows(list []chart.Grid) (rowsAt, error) {
	out := rowsAt{}
	for _, g := range list {
		round := g.Rows[0].Round
		kept := map[int]bool{}
		for _, row := range unfolded(g.Rows, g.Up) {
			if !kept[row.Round] && row.Round != round {
				return nil, fmt.Errorf("round %d is called %d", round, row.Round)
			}
			kept[row.Round] = true
			places := make([]string, g.Width)
			for _, c := range row.Shown() {
				places[c.X] = c.Op.Code() + "/" + c.Yarn + c.Note
			}
			line := unfolded(places, g.Across)
			if !g.FromLeft {
				slices.Reverse(line)
			}
			out[fmt.Sprint(row.Section, " ", round, row.Side.Words())] = slices.DeleteFunc(line, func(s string) bool { return s == "" })
			round++
		}
	}
	return out, nil
}

// numberedRight reports whether each stitch that a boxed chart shows has the number that it
// has in its round.
func numberedRight(list []chart.Grid, whole rowsAt) error {
	for _, g := range list {
		for _, row := range g.Rows {
			of := slices.Clone(whole[fmt.Sprint(row.Section, " ", row.Round, row.Side.Words())])
			if row.Side == stitch.WrongSide {
				slices.Reverse(of)
			}
			numbers := row.Numbers()
			if len(of) != len(row.Cells) || slices.ContainsFunc(row.Cells, func(c chart.Cell) bool { return c.Op == stitch.NoStitch }) {
				continue // some only wait, or are none
			}
			for _, c := range row.Shown() {
				if got := of[numbers[c.X]-1]; got != c.Op.Code()+"/"+c.Yarn+c.Note {
					return fmt.Errorf("%s %d: stitch %d is %s", row.Section, row.Round, numbers[c.X], got)
				}
			}
		}
	}
	return nil
}

// wholeBoxes reports a box across that does not hold one motif from its one end to its other.
func wholeBoxes(list []chart.Grid) error {
	for _, g := range list {
		for _, f := range g.Across {
			var right, left bool // whether the motif's right is at the right, or at the left
			for _, row := range g.Rows {
				for _, c := range row.Shown() {
					k := c.X - f.From
					if int(c.Laid) != f.Repeat+1 || k < 0 || k >= f.Count || strings.ContainsAny(c.Column[:1], "ABZ") {
						continue
					}
					right = right || int(c.Right) != k
					left = left || int(c.Right) != f.Count-1-k
				}
			}
			if right && left {
				return fmt.Errorf("%s: no whole motif in the box of %d from place %d", g.Rows[0].Section, f.Count, f.From)
			}
		}
	}
	return nil
}

// A boxed chart, written out by its counts, is the whole one, stitch by stitch, on both
// hands, whatever motifs are laid and painted over; so is its table as a program reads it.
func TestBoxedChartsWriteOut(t *testing.T) {
	const shards = 4
	var boxed, both atomic.Int64
	t.Cleanup(func() {
		assert.Positive(t, boxed.Load(), "some charts have boxes")
		assert.Positive(t, both.Load(), "some across and up")
	})
	for shard := range uint64(shards) {
		t.Run("", func(t *testing.T) {
			t.Parallel()
			rng := rand.New(rand.NewPCG(4200, shard))
			pl := NewPlanner()
			for range testenv.Cases(120, 4000) / shards {
				d, p := anyMitt(rng, pl)
				testenv.AnyRepeats(rng, d.Sheet)
				planned, err := pl.Plan(d.Effective())
				require.NoError(t, err, "%v", d.Sheet)
				var marks chart.Marks
				if rng.IntN(3) == 0 {
					m := p.Plan.Mitt()
					marks = anyMarks(rng, m, wale.Mitt(m, p.UnderThumb()))
				}
				for _, side := range []Side{Right, Left} {
					d.Side, d.FromLeft = side, rng.IntN(4) == 0
					s := planned.Charts(d, marks)
					for _, v := range s.Views() {
						list := s.Boxed(chart.Options{View: v})
						if list == nil {
							continue
						}
						boxed.Add(1)
						if slices.ContainsFunc(list, func(g chart.Grid) bool { return len(g.Across) > 0 && len(g.Up) > 0 }) {
							both.Add(1)
						}
						g := s.Grid(chart.Options{View: v, Layout: chart.Columns})
						whole := wholeRows(g)
						got, err := boxedRows(list)
						require.NoError(t, err, "%s %s %v", side, v, d.Sheet)
						require.Equal(t, whole, got, "%s %s %v", side, v, d.Sheet)
						require.NoError(t, numberedRight(list, whole), "%s %s %v", side, v, d.Sheet)
						require.NoError(t, wholeBoxes(list), "%s %s %v", side, v, d.Sheet)
						require.NoError(t, tableAlike(list, g), "%s %s %v", side, v, d.Sheet)
					}
				}
			}
		})
	}
}

// The table of the first sample's hand with a motif of 4, its lines read over by hand.
func TestBoxedTable(t *testing.T) {
	d := squares(map[string]string{"name": "steps", "motif": ".bb.", "section": "hand"})
	out, err := NewPlanner().Derive(d, nil)
	require.NoError(t, err)
	var b bytes.Buffer
	require.NoError(t, chart.BoxedCSV(&b, out.Boxed(chart.Options{View: chart.TubeView})))
	testenv.Golden(t, "testdata/boxed.csv", b.Bytes())
}

// tableAlike reads the table of a boxed view as its help says, writes it out, and compares
// it with the rounds of the whole table.
func tableAlike(list []chart.Grid, whole chart.Grid) error {
	var b, all bytes.Buffer
	if err := chart.BoxedCSV(&b, list); err != nil {
		return err
	}
	if err := chart.CSV(&all, whole); err != nil {
		return err
	}
	lines, err := csv.NewReader(&b).ReadAll()
	if err != nil {
		return err
	}
	want, err := csv.NewReader(&all).ReadAll()
	if err != nil {
		return err
	}
	var got [][]string // the last round first
	for at := 0; at < len(lines); {
		end := at
		for lines[end][len(lines[end])-3] != "times" {
			end++
		}
		rounds, times := lines[at:end], lines[end]
		width := len(times) - 3
		slices.Reverse(rounds)
		var counts []string
		for _, r := range rounds {
			counts = append(counts, r[width+1])
		}
		var band [][]string
		for _, i := range writtenOut(counts) {
			var cells []string
			for _, x := range writtenOut(times[:width]) {
				if text := rounds[i][x]; text != "" {
					cells = append(cells, text)
				}
			}
			band = append(band, cells)
		}
		slices.Reverse(band)
		got = append(got, band...)
		at = end + 1
	}
	if len(got) != len(want) {
		return fmt.Errorf("%d rounds of %d", len(got), len(want))
	}
	for i := range want {
		cells := slices.DeleteFunc(slices.Clone(want[i][:len(want[i])-1]), func(s string) bool { return s == "" })
		if !turnedAlike(got[i], cells) {
			return fmt.Errorf("line %d: %v is not %v", i, got[i], cells)
		}
	}
	return nil
}

// turnedAlike reports whether two rounds are the same from some stitch on: the whole chart
// is cut open at another place.
func turnedAlike(a, b []string) bool {
	if len(a) != len(b) {
		return false
	}
	for k := range max(len(a), 1) {
		if slices.Equal(a, slices.Concat(b[k:], b[:k])) {
			return true
		}
	}
	return false
}

// writtenOut returns which of a list of counts is worked, one after the other: "8x5" in each
// of 8 that are worked 5 times, and nothing in what is worked once.
func writtenOut(counts []string) (list []int) {
	for at := 0; at < len(counts); {
		size, times, ok := strings.Cut(counts[at], "x")
		n, t := 1, 1
		if ok {
			n, _ = strconv.Atoi(size)
			t, _ = strconv.Atoi(times)
		}
		for range t {
			for k := range n {
				list = append(list, at+k)
			}
		}
		at += n
	}
	return list
}

// The first sample has 42 stitches, of which the first 3 lie under the gusset, so that the
// first of its motifs of 4 isn't whole beside it: counted by hand, 9 stand there and 10 above
// it, after the round that casts on for the bridge. 2 are left over. The left hand's rounds
// begin within the first motif.
func TestBoxedHand(t *testing.T) {
	stripes := map[string]string{"name": "steps", "motif": "bca."}
	for name, c := range map[string]struct {
		side Side
		with map[string]string
		said []string
	}{
		"right": {Right, map[string]string{"name": "steps"}, []string{
			"gusset, rounds 1 to 20. Work the box of 4 stitches (steps) 9 times.",
			"hand, round 1. Work the box of 4 stitches (steps) 9 times.",
			"hand, rounds 2 to 12. Work the box of 4 stitches (steps) 10 times.",
		}},
		"left": {Left, map[string]string{"name": "steps"}, []string{
			"gusset, rounds 1 to 20. Work the box of 4 stitches (steps) 9 times.",
			"hand, rounds 1 to 12. Work the box of 4 stitches (steps) 9 times.",
		}},
		"one round high": {Right, stripes, []string{
			"gusset, rounds 1 to 20. Work the box of 4 stitches (steps) 9 times. Round 17 is worked 4 times, up to round 20.",
			"hand, round 1. Work the box of 4 stitches (steps) 9 times.",
			"hand, rounds 2 to 12. Work the box of 4 stitches (steps) 10 times. Round 2 is worked 8 times, up to round 9.",
		}},
	} {
		t.Run(name, func(t *testing.T) {
			d := squares(c.with)
			d.Side = c.side
			out, err := NewPlanner().Derive(d, nil)
			require.NoError(t, err)
			var said []string
			for _, g := range out.Charts.Boxed(chart.Options{View: chart.TubeView}) {
				said = append(said, g.BoxedRounds()+"."+g.BoxWords())
			}
			assert.Equal(t, c.said, said)
			assert.Nil(t, out.Charts.Boxed(chart.Options{View: chart.GussetView}), "its chart shows three stitches of the hand on either side")
		})
	}
	out, err := NewPlanner().Derive(squares(nil), nil)
	require.NoError(t, err)
	var cuff []string
	for _, g := range out.Charts.Boxed(chart.Options{View: chart.CuffView}) {
		cuff = append(cuff, g.BoxedRounds()+"."+g.BoxWords())
	}
	assert.Equal(t, []string{"cuff, rounds 1 to 9.", "plain cuff, round 1.", "plain cuff, rounds 2 to 9. Work the box of 4 stitches 10 times."}, cuff, "the round that increases evenly stands alone")
	out, err = NewPlanner().Derive(Samples()[0], nil)
	require.NoError(t, err)
	assert.Nil(t, out.Charts.Boxed(chart.Options{View: chart.TubeView}), "nothing is laid")
}
