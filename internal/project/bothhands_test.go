package project

import (
	"fmt"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"thenar/internal/chart"
	"thenar/internal/mitt"
	"thenar/internal/stitch"
	"thenar/internal/wale"
)

// chartsAgree asks of every view in both layouts that its rows, read from their
// right edge and begun anywhere, are the rounds as worked, and returns all of
// them once. Each grid is given on.
func chartsAgree(t *testing.T, out *Outputs, each func(chart.Grid)) (rows []chart.Row) {
	t.Helper()
	for _, view := range out.Charts.Views() {
		for _, layout := range []chart.Layout{chart.Wedge, chart.Columns} {
			g := out.Charts.Grid(chart.Options{View: view, Layout: layout})
			for _, row := range g.Rows {
				worked := out.Mitt.Section(row.Section).Rounds[row.Round-1].Ops
				if !slices.EqualFunc(worked, row.Cells, func(op stitch.Op, c chart.Cell) bool { return op == c.Op }) || !onward(row, g.Width, view == chart.GussetView, waiting(row.Section)) {
					t.Fatalf("%s in %s, %s round %d: %v is shown as %+v", view, layout, row.Section, row.Round, worked, row.Cells)
				}
			}
			each(g)
			if layout == chart.Wedge && view != chart.GussetView { // the hand has it
				rows = append(rows, g.Rows...)
			}
		}
	}
	return rows
}

// waiting returns the operation that the chart of a section has no place for: the fingers
// show no stitches that wait. It is none for any other.
func waiting(section stitch.Part) stitch.Op {
	if _, finger := mitt.FingerOf(section); finger {
		return stitch.Hold
	}
	return stitch.NoStitch
}

// onward reports whether the cells of a row follow each other from right to
// left as they are worked, each at a place of its own; after the last comes the
// first. A part shows only some of them, and stitches that wait meanwhile have no place.
func onward(row chart.Row, width int, part bool, waits stitch.Op) bool {
	at := make([]int, width) // 1 + the cell at each place
	all := 0
	for j := range row.Cells {
		c := &row.Cells[j]
		if waits != stitch.NoStitch && c.Op == waits {
			if c.Shown() {
				return false
			}
			continue
		}
		all++
		switch {
		case !c.Shown() && !part, c.Shown() && at[c.X] != 0:
			return false
		case c.Shown():
			at[c.X] = all
		}
	}
	last := -1
	for _, j := range slices.Backward(at) {
		if j == 0 {
			continue
		}
		if last >= 0 && j-1 != (last+1)%all {
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
	of := map[string]int{} // where each column stands on the other hand
	for i, row := range rows[0] {
		others := rows[1][i].Cells
		if len(others) != len(row.Cells) {
			t.Fatalf("%s, round %d: %d on the right hand, %d on the left", row.Section, row.Round, len(row.Cells), len(others))
		}
		clear(of)
		for k := range others {
			of[others[k].Column] = k
		}
		for j := range row.Cells {
			c := &row.Cells[j]
			at := chart.Anchor{Section: row.Section, Round: row.Round, Column: c.Column}
			k, ok := of[c.Column]
			other := &others[k]
			if !ok || c.Yarn != other.Yarn || c.Planned.In() != other.Planned.In() || c.Planned.Out() != other.Planned.Out() {
				t.Fatalf("%v is %+v on the right hand, %+v on the left", at, *c, *other)
			}
			if mark := marks[at].Stitch; mark != "" && (mark != c.Op.Code() || mirrored && c.Op.Twin() != other.Op || !mirrored && c.Op != other.Op) {
				t.Fatalf("%v is painted with %s; it is %s on the right hand, %s on the left", at, mark, c.Op, other.Op)
			}
			alike = alike && c.Op == others[j].Op && c.Yarn == others[j].Yarn
		}
		if mirrored && !inMirror(row.Cells, others) {
			t.Fatalf("%s, round %d: %+v on the right hand is no mirror image of %+v", row.Section, row.Round, row.Cells, others)
		}
	}
	return alike
}

// inMirror reports whether two rows have their columns in opposite order,
// wherever they begin. It leaves out what an even round makes, the rows in which
// both hands take the same stitches of the round together, or from the tip make them, those that knit front
// and back, in neighbouring columns so that the columns of the round above are in
// mirror, and the one that puts the thumb aside, which both hands do before they
// cast on, or take the thumb in.
func inMirror(right, left []chart.Cell) bool {
	asPlanned := func(a, b chart.Cell) bool { return a.Planned == b.Planned }
	takes := func(c chart.Cell) bool {
		return c.Planned.In() > 1 || c.Planned == stitch.M1 && c.Column[0] != wale.Made
	}
	if slices.EqualFunc(right, left, asPlanned) && slices.ContainsFunc(right, takes) {
		return true
	}
	names := [2][]string{make([]string, 0, len(right)), make([]string, 0, len(left))}
	for h, cells := range [][]chart.Cell{right, left} {
		for k := range cells {
			c := &cells[k]
			if c.Planned == stitch.CastOn || c.Planned == stitch.Take || c.Planned == stitch.KFB {
				return true
			}
			if c.Column[0] != wale.Made {
				names[h] = append(names[h], c.Column)
			}
		}
	}
	n := len(names[0])
	from := slices.Index(names[1], names[0][n-1])
	for i := range n {
		if names[1][(from+i)%n] != names[0][n-1-i] {
			return false
		}
	}
	return true
}

// “Make two” is said where both hands are worked alike, and only there: not
// with a one-sided gusset, not where one corner of the thumb has a decrease
// that the other has not, not where the palm is painted. Elsewhere it is said which parts
// have words of their own.
func TestMakeTwoAlike(t *testing.T) {
	plain := Samples()[0]
	plain.Sheet = plain.Sheet.Clone()
	plain.Sheet["pins.thumb_decreases"] = "0"
	palm := chart.Marks{{Section: stitch.Gusset, Round: 4, Column: "H2"}: {Colour: "b"}}
	for name, c := range map[string]struct {
		path, text string
		marks      chart.Marks
		differ     string
	}{
		"plain":                        {"", "", nil, ""},
		"one decrease of the thumb":    {"pins.thumb_decreases", "1", nil, "thumb"},
		"a one-sided gusset":           {"stitch.both_edges", "false", nil, "gusset"},
		"a painted palm":               {"", "", palm, "gusset"},
		"a note":                       {"", "", chart.Marks{{Section: stitch.Gusset, Round: 4, Column: "H2"}: {Note: "look"}}, ""},
		"the whole painted alike":      {"", "", chart.Marks{{Section: stitch.Gusset, Round: 4, Column: "B2"}: {Colour: "b"}}, ""},
		"without a thumb, and painted": {"kind", "mitten_without_thumb", chart.Marks{{Section: stitch.Hand, Round: 4, Column: "H2"}: {Colour: "b"}}, ""},
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
					assert.Equal(t, c.differ == "", saysMakeTwo(out))
					if c.differ != "" {
						assert.Contains(t, text(out), fmt.Sprintf("The %s hand has its own sheet: palm and back change places, the %s is mirrored.", d.Side.Other(), c.differ))
					}
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
	d.Sheet.SetProgress(p.Plan.ProgressAt(stitch.Hand, 1), string(Right))
	out, err := NewPlanner().Derive(d, nil)
	require.NoError(t, err)
	require.True(t, saysMakeTwo(out))
	d.Sheet["second"], d.Sheet["hand.gusset_length"] = "anew", "8.4"
	out, err = NewPlanner().Derive(d, nil)
	require.NoError(t, err)
	assert.False(t, saysMakeTwo(out))
	assert.Regexp(t, `The left hand has its own sheet: \d+ rounds of gusset instead of \d+, and more\.`, text(out), "its increases, too")
	d.Side = Left
	out, err = NewPlanner().Derive(d, nil)
	require.NoError(t, err)
	assert.Regexp(t, `The right hand has its own sheet: \d+ rounds of gusset instead of \d+, and more\.`, text(out), "each hand tells of the other")
}

func saysMakeTwo(out *Outputs) bool { return strings.Contains(text(out), "make two") }
