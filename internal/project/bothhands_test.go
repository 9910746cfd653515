package project

import (
	"math/rand/v2"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"thenar/internal/chart"
	"thenar/internal/need"
	"thenar/internal/stitch"
	"thenar/internal/wale"
)

// The charts of both hands show what the words say, round for round, in every
// section and both layouts: of any mitt, painted or not, every row read from
// its right edge is the round as worked, begun anywhere; every column is there
// on both hands; and every mark stands on its own stitch and leaves what adds
// up on one hand adding up on the other.
func TestChartsOfBothHandsAgreeWithTheRounds(t *testing.T) {
	const shards = 4
	for shard := range uint64(shards) {
		t.Run("", func(t *testing.T) {
			t.Parallel()
			rng := rand.New(rand.NewPCG(19, shard))
			pl := NewPlanner()
			for range need.Cases(2000) / shards {
				d, p := anyMitt(rng, pl)
				m := p.Mitt()
				var marks chart.Marks
				if rng.IntN(2) == 0 {
					marks = anyMarks(rng, m, wale.Mitt(m, p.Gusset.Base))
				}
				var hands [2]*Outputs
				var rows [2][]chart.Row
				for i, side := range []Side{Right, Left} {
					d.Side = side
					out, err := pl.Derive(d, marks)
					require.NoError(t, err)
					require.Empty(t, out.Unsound, "%s %v", side, d.Sheet)
					hands[i], rows[i] = out, chartsAgree(t, out)
				}
				alike := handsAgree(t, rows, hands[1].Charts.Mirrored, marks)
				for _, out := range hands {
					require.Equal(t, alike, saysMakeTwo(out), "%v", d.Sheet)
				}
			}
		})
	}
}

// chartsAgree asks of every view in both layouts that its rows are the rounds,
// and returns all of them once.
func chartsAgree(t *testing.T, out *Outputs) (rows []chart.Row) {
	t.Helper()
	for _, view := range out.Charts.Views() {
		for _, layout := range []chart.Layout{chart.Wedge, chart.Columns} {
			g := out.Charts.Grid(chart.Options{View: view, Layout: layout})
			for _, row := range g.Rows {
				worked := out.Mitt.Section(row.Section).Rounds[row.Round-1].Ops
				if !slices.EqualFunc(worked, row.Cells, func(op stitch.Op, c chart.Cell) bool { return op == c.Op }) || !onward(row, g.Width, view == chart.GussetView) {
					t.Fatalf("%s in %s, %s round %d: %v is shown as %+v", view, layout, row.Section, row.Round, worked, row.Cells)
				}
			}
			if layout == chart.Wedge && view != chart.GussetView { // the hand has it
				rows = append(rows, g.Rows...)
			}
		}
	}
	return rows
}

// onward reports whether the cells of a row follow each other from right to
// left as they are worked, each at a place of its own; after the last comes the
// first. A part shows only some of them.
func onward(row chart.Row, width int, part bool) bool {
	at := make([]int, width) // 1 + the cell at each place
	for j, c := range row.Cells {
		switch {
		case !c.Shown() && !part, c.Shown() && at[c.X] != 0:
			return false
		case c.Shown():
			at[c.X] = j + 1
		}
	}
	last := -1
	for _, j := range slices.Backward(at) {
		if j == 0 {
			continue
		}
		if last >= 0 && j-1 != (last+1)%len(row.Cells) {
			return false
		}
		last = j - 1
	}
	return true
}

// handsAgree asks that both hands have the same columns in every round, each
// with an operation that eats and makes as much, and every mark on its own. It
// reports whether all rounds are worked alike.
func handsAgree(t *testing.T, rows [2][]chart.Row, mirrored bool, marks chart.Marks) (alike bool) {
	t.Helper()
	alike = true
	of := map[string]chart.Cell{}
	for i, row := range rows[0] {
		others := rows[1][i].Cells
		require.Len(t, others, len(row.Cells))
		clear(of)
		for _, c := range others {
			of[c.Column] = c
		}
		for j, c := range row.Cells {
			at := chart.Anchor{Section: row.Section, Round: row.Round, Column: c.Column}
			other, ok := of[c.Column]
			if !ok || c.Yarn != other.Yarn || c.Planned.In() != other.Planned.In() || c.Planned.Out() != other.Planned.Out() {
				t.Fatalf("%v is %+v on the right hand, %+v on the left", at, c, other)
			}
			if mark := marks[at].Stitch; mark != "" && (mark != c.Op.Code() || mirrored && c.Op.Twin() != other.Op || !mirrored && c.Op != other.Op) {
				t.Fatalf("%v is painted with %s; it is %s on the right hand, %s on the left", at, mark, c.Op, other.Op)
			}
			alike = alike && c.Op == others[j].Op && c.Yarn == others[j].Yarn
		}
	}
	return alike
}

// “Make two” is said where both hands are worked alike, and only there: not
// with a one-sided gusset, not where one corner of the thumb has a decrease
// that the other has not, not where the palm is painted.
func TestMakeTwoAlike(t *testing.T) {
	plain := Samples()[0]
	plain.Sheet = plain.Sheet.Clone()
	plain.Sheet["pins.thumb_decreases"] = "0"
	palm := chart.Marks{{Section: stitch.Gusset, Round: 4, Column: "H2"}: {Colour: "b"}}
	for name, c := range map[string]struct {
		path, text string
		marks      chart.Marks
		alike      bool
	}{
		"plain":                        {"", "", nil, true},
		"one decrease of the thumb":    {"pins.thumb_decreases", "1", nil, false},
		"a one-sided gusset":           {"stitch.both_edges", "false", nil, false},
		"a painted palm":               {"", "", palm, false},
		"a note":                       {"", "", chart.Marks{{Section: stitch.Gusset, Round: 4, Column: "H2"}: {Note: "look"}}, true},
		"the whole painted alike":      {"", "", chart.Marks{{Section: stitch.Gusset, Round: 4, Column: "B2"}: {Colour: "b"}}, true},
		"without a thumb, and painted": {"kind", "mitten_without_thumb", chart.Marks{{Section: stitch.Hand, Round: 4, Column: "H2"}: {Colour: "b"}}, true},
	} {
		t.Run(name, func(t *testing.T) {
			d := plain
			if c.path != "" {
				d.Sheet = d.Sheet.Clone()
				d.Sheet[c.path] = c.text
			}
			for _, d.FromLeft = range []bool{false, true} {
				for _, d.Side = range []Side{Right, Left} {
					out, err := NewPlanner().Derive(d, c.marks)
					require.NoError(t, err)
					assert.Equal(t, c.alike, saysMakeTwo(out))
				}
			}
		})
	}
}

// The other hand that goes on by a plan of its own isn't alike.
func TestAHandWithAPlanOfItsOwnIsNotAlike(t *testing.T) {
	d := Samples()[0]
	d.Sheet = d.Sheet.Clone()
	d.Sheet["pins.thumb_decreases"] = "0"
	p, err := NewPlanner().Plan(d.Sheet)
	require.NoError(t, err)
	d.Sheet.Knit(p.Plan.Worked(stitch.Hand, 1), string(Right))
	out, err := NewPlanner().Derive(d, nil)
	require.NoError(t, err)
	require.True(t, saysMakeTwo(out))
	d.Sheet["second"], d.Sheet["hand.gusset_length"] = "anew", "8.4"
	out, err = NewPlanner().Derive(d, nil)
	require.NoError(t, err)
	assert.False(t, saysMakeTwo(out))
}

func saysMakeTwo(out *Outputs) bool { return strings.Contains(text(out), "make two") }
