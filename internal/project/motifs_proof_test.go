package project

import (
	"fmt"
	"maps"
	"math/rand/v2"
	"slices"
	"strings"
	"sync/atomic"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"thenar/internal/chart"
	"thenar/internal/repeat"
	"thenar/internal/sheet"
	"thenar/internal/stitch"
	"thenar/internal/testenv"
	"thenar/internal/wale"
)

// otherWay changes how a mitt is made, or what it is planned from.
func otherWay(rng *rand.Rand, s sheet.Sheet) {
	set := func(path string, of ...string) { s[path] = of[rng.IntN(len(of))] }
	switch rng.IntN(12) {
	case 0:
		set("kind", "fingerless", "mitten", "mitten_without_thumb", "glove", "glove")
	case 1:
		set("thumb.construction", "gusset", "straight", "slit", "none", "gusset")
	case 2:
		set("thumb.place", "palm", "side")
		set("thumb.inset", "0", "1", "3")
	case 3:
		set("piece.flat", "true", "false")
	case 4:
		set("piece.direction", "down", "up")
	case 5:
		set("cuff.kind", "rib", "hem", "garter", "rolled", "gauntlet")
	case 6:
		set("gauge.swatches[0].stitches", "14", "18", "22", "24", "28", "36")
	case 7:
		set("hand.gusset_length", "3", "4.5", "6.2")
	case 8:
		set("thumb.increase", "lifted", "yo_closed", "kfb", "centre", "m1")
		set("stitch.both_edges", "true", "false")
	case 9:
		set("pins.gusset_base", "", "1", "2", "4", "5")
	default:
		s["hand.hand_circumference"], s["unit"] = fmt.Sprint(12+rng.IntN(14)), "cm"
	}
}

// anyOf changes a sheet, a change or more, until it can be planned.
func anyOf(rng *rand.Rand, pl *Planner, from sheet.Sheet) (sheet.Sheet, *Planned) {
	for {
		s := from.Clone()
		for range 1 + rng.IntN(3) {
			otherWay(rng, s)
		}
		if p, err := pl.Plan(s); err == nil {
			return s, p
		}
	}
}

// stranger lays repeats in the ways that testenv.AnyRepeats leaves out.
func stranger(rng *rand.Rand, s sheet.Sheet, names wale.Names) {
	for i := range 3 {
		put := func(key, text string) { s[sheet.RepeatPath(i, key)] = text }
		if s[sheet.RepeatPath(i, "motif")] == "" {
			return
		}
		if rng.IntN(3) == 0 {
			put("to", fmt.Sprint([]int{-1, -2, -9, 12, 30}[rng.IntN(5)]))
		}
		if rng.IntN(12) == 0 {
			put("off", "true")
		}
		if rng.IntN(6) == 0 {
			parts := stitch.Parts()
			put("section", string(parts[rng.IntN(len(parts))]))
		}
		switch rng.IntN(6) {
		case 0:
			part := []stitch.Part{stitch.Gusset, stitch.Gusset, stitch.BelowThumb, stitch.Hand, stitch.Cuff}[rng.IntN(5)]
			if rounds := names[part]; len(rounds) > 0 {
				row := rounds[rng.IntN(len(rounds))]
				put("over", "columns")
				put("columns", row[rng.IntN(len(row))]+"/"+row[rng.IntN(len(row))])
			}
		case 1:
			put("over", "round")
			put("set", "multiple")
		}
		testenv.GussetOfUse(s, i)
	}
}

// everyRow returns the rows of every section, once.
func everyRow(s chart.Source) map[stitch.Part][]chart.Row {
	of := map[stitch.Part][]chart.Row{}
	for _, v := range s.Views() {
		for _, row := range s.Grid(chart.Options{View: v}).Rows {
			if list := of[row.Section]; len(list) < row.Round {
				of[row.Section] = append(list, row)
			}
		}
	}
	return of
}

// agrees compares the chart of a right hand with the rule, cell by cell.
func (r *rule) agrees(rows map[stitch.Part][]chart.Row, marks chart.Marks) (laid int, err error) {
	for _, s := range r.m.Sections {
		if r.left && (!s.Part.Passing() || s.Part == stitch.CuffPlain && r.unknown) {
			continue
		}
		for i := range s.Rounds {
			cells := rows[s.Part][i].Cells
			if r.left && s.Rounds[i].Even && r.of[s.Part][i].changes {
				continue // its columns are named as the right hand takes them in
			}
			if len(cells) != len(s.Rounds[i].Ops) {
				return 0, fmt.Errorf("%s %d has %d cells", s.Part, i+1, len(cells))
			}
			for j, op := range s.Rounds[i].Ops {
				want, is := r.cells[cellAt{s.Part, i, j}]
				if !is {
					want = looks{yarn: "a", op: op}
				} else {
					laid++
				}
				c := cells[j]
				mark := marks[chart.Anchor{Section: s.Part, Round: i + 1, Column: c.Column}]
				if mark.Colour != "" {
					want.yarn = mark.Colour
				}
				if over, ok := stitch.ByCode(mark.Stitch); ok && mark.Stitch != "" {
					if want.op = over; r.left {
						want.op = over.Twin()
					}
				}
				if got := (looks{c.Yarn, c.Op, int(c.Laid), int(c.Right), int(c.Up)}); got != want {
					return 0, fmt.Errorf("%s %d, stitch %d (%s, column %s): the chart has %+v, the rule says %+v", s.Part, i+1, j+1, op, c.Column, got, want)
				}
			}
		}
	}
	return laid, nil
}

// A left hand has in every column what the right hand has there, or where a motif is laid as
// it is drawn its mirror image.
func leftAgrees(sh sheet.Sheet, right, left map[stitch.Part][]chart.Row) error {
	for part, rows := range right {
		for i, row := range rows {
			other := left[part][i].Cells
			if part.Passing() {
				continue
			}
			if takesAlike(row.Cells, other) {
				if !turnedRound(sh, row.Cells, other) {
					return fmt.Errorf("%s %d: no mirror image of the right hand", part, i+1)
				}
				continue
			}
			at := map[string]chart.Cell{}
			for _, c := range row.Cells {
				at[c.Column] = c
			}
			for _, c := range other {
				if is := at[c.Column]; !twins(sh, is, c) {
					return fmt.Errorf("%s %d, column %s: %+v on the right hand, %+v on the left", part, i+1, c.Column, is, c)
				}
			}
		}
	}
	return nil
}

// twins reports whether a cell of the left hand has what one of the right hand has.
func twins(sh sheet.Sheet, right, left chart.Cell) bool {
	if left.Laid == 0 || right.Laid == 0 {
		return left.Laid == right.Laid || asDrawn(sh)
	}
	if wide := readOrdered(sh, int(right.Laid)-1).wide; sh[sheet.RepeatPath(int(right.Laid)-1, "left")] == "as_drawn" {
		right.Right = uint8(wide - 1 - int(right.Right))
	} else if !asDrawn(sh) && !left.Painted && right.Yarn != left.Yarn {
		return false
	}
	return asDrawn(sh) || left.Laid == right.Laid && left.Right == right.Right && left.Up == right.Up
}

// takesAlike reports whether both hands take stitches together in a round, and work it alike.
func takesAlike(right, left []chart.Cell) bool {
	takes := func(c chart.Cell) bool { return c.Planned.In() > 1 }
	return slices.ContainsFunc(right, takes) && slices.EqualFunc(right, left, func(a, b chart.Cell) bool { return a.Planned == b.Planned })
}

// turnedRound reports whether the motifs of two such rounds are mirror images, wherever they
// begin. What sets a stitch alone sets nothing on those that are taken together.
func turnedRound(sh sheet.Sheet, right, left []chart.Cell) bool {
	some := asDrawn(sh)
	for path, text := range sh {
		some = some || strings.HasSuffix(path, "].stitches") && strings.HasPrefix(path, sheet.PathRepeats) && text != ""
	}
	n := len(right)
	same := func(a, b chart.Cell) bool {
		if a.Laid == 0 || b.Laid == 0 || a.Laid != b.Laid {
			return a.Laid == b.Laid || some
		}
		a.Painted, b.Painted, a.Yarn, b.Yarn = false, false, "", ""
		return twins(sh, a, b)
	}
	for from := range n {
		all := true
		for j := 0; j < n && all; j++ {
			all = same(right[(from+n-1-j)%n], left[j])
		}
		if all {
			return true
		}
	}
	return false
}

// asDrawn reports whether a motif is laid as drawn on the left hand, so that what it leaves
// free is elsewhere.
func asDrawn(sh sheet.Sheet) bool {
	for path, text := range sh {
		if strings.HasSuffix(path, "].left") && text == "as_drawn" {
			return true
		}
	}
	return false
}

// Random motifs on a random plan, and then on another one: every cell is what the rule says,
// worked out by following each loop, what is left over is counted right, what lies nowhere
// says so, and what is painted by hand is in its place or listed, as without motifs.
func TestMotifsOnEveryPlan(t *testing.T) {
	const shards = 4
	var all, plans, nowhere atomic.Int64
	t.Cleanup(func() {
		t.Logf("%d plans, %d cells laid; %d repeats lay nowhere", plans.Load(), all.Load(), nowhere.Load())
		assert.Positive(t, all.Load())
	})
	for shard := range uint64(shards) {
		t.Run("", func(t *testing.T) {
			t.Parallel()
			rng, pl := rand.New(rand.NewPCG(1500, shard)), NewPlanner()
			for range testenv.Cases(100, 10_000) / shards {
				d, p := anyMitt(rng, pl)
				names := wale.Mitt(p.Plan.Mitt(), p.UnderThumb())
				marks := chart.Marks{}
				if rng.IntN(2) == 0 {
					marks = anyMarks(rng, p.Plan.Mitt(), names)
				}
				kept := maps.Clone(marks)
				base := d.Sheet.Clone()
				for {
					d.Sheet = base.Clone()
					testenv.AnyRepeats(rng, d.Sheet)
					stranger(rng, d.Sheet, names)
					var err error
					if p, err = pl.Plan(d.Sheet); err == nil {
						break
					}
				}
				for range 2 {
					n, none := motifsAgree(t, d, p, marks)
					all.Add(int64(n))
					nowhere.Add(int64(none))
					plans.Add(1)
					require.Equal(t, kept, marks)
					d.Sheet, p = anyOf(rng, pl, d.Sheet)
				}
			}
		})
	}
}

// motifsAgree compares the charts of both hands with the rule.
func motifsAgree(t *testing.T, d Document, p *Planned, marks chart.Marks) (laid, nowhere int) {
	t.Helper()
	bare := chart.Source{Mitt: p.Plan.Mitt(), Base: p.UnderThumb(), Marks: marks}.Prepare()
	d.Side = Right
	s := p.Charts(d, marks)
	says := func(err error) { require.NoError(t, err, "%v", d.Sheet) }
	r := ruled(p.Plan.Mitt(), d.Sheet, len(s.Repeats), bare, nil)
	for i, came := range s.Came() {
		want := r.came[i]
		if came.Nowhere != "" || want.Nowhere != "" {
			require.Equal(t, want.Nowhere != "", came.Nowhere != "", "repeat %d: %q, the rule: %q\n%v", i+1, came.Nowhere, want.Nowhere, d.Sheet)
			nowhere++
			continue
		}
		require.Equal(t, want, came, "repeat %d\n%v", i+1, d.Sheet)
		if one := s.Repeats[i]; one.Set == repeat.KeptMultiple && one.Section == repeat.Whole && d.Sheet["pins.hand_stitches"] == "" {
			require.Zero(t, came.Plain(), "repeat %d\n%v", i+1, d.Sheet)
		}
	}
	right := everyRow(s)
	laid, err := r.agrees(right, marks)
	says(err)
	require.Equal(t, bare.Lost(), s.Lost())
	d.Side = Left
	other := p.Charts(d, marks)
	require.Equal(t, s.Came(), other.Came(), "%v", d.Sheet)
	require.Equal(t, s.Lost(), other.Lost())
	if other.Mirrored {
		rows := everyRow(other)
		says(leftAgrees(d.Sheet, right, rows))
		_, err := ruled(p.Plan.Mitt(), d.Sheet, len(s.Repeats), bare, rows).agrees(rows, marks)
		says(err)
	}
	return laid, nowhere
}
