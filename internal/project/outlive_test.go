package project

import (
	"fmt"
	"maps"
	"math/rand/v2"
	"testing"

	"github.com/stretchr/testify/require"

	"thenar/internal/chart"
	"thenar/internal/stitch"
	"thenar/internal/testenv"
	"thenar/internal/wale"
)

// otherPlan changes what a plan is made from: hand, gauge, kind, side, pins.
func otherPlan(rng *rand.Rand, d *Document) {
	d.Sheet = d.Sheet.Clone()
	set := func(path string, of ...string) { d.Sheet[path] = of[rng.IntN(len(of))] }
	switch rng.IntN(9) {
	case 0:
		set("kind", "fingerless", "mitten", "mitten_without_thumb")
	case 1:
		d.Side = []Side{Left, Right}[rng.IntN(2)]
	case 2:
		set("gauge.swatches[0].stitches", "14", "18", "22", "24", "28", "36")
	case 3:
		set("gauge.swatches[0].rounds", "20", "26", "32", "40")
	case 4:
		set("hand.gusset_length", "3", "4.5", "6.2", "8")
	case 5:
		set("stitch.both_edges", "true", "false")
	case 6:
		set("pins.gusset_base", "", "1", "2", "4", "5")
	case 7:
		set("pins.rhythm", "", "2", "3", "2, 4")
		set("pins.increase_rounds", "", "", "1, 2, 5", "2, 6, 9, 12")
	default:
		d.Sheet["hand.hand_circumference"] = fmt.Sprint(12 + rng.IntN(14))
	}
}

// anyEdit paints a cell: one that the plan has, or any other.
func anyEdit(rng *rand.Rand, names wale.Names) chart.Edit {
	parts := []stitch.Part{stitch.Cuff, stitch.CuffPlain, stitch.Gusset, stitch.Gusset, stitch.Hand, stitch.Top, stitch.Thumb}
	e := chart.Edit{
		Section: parts[rng.IntN(len(parts))], Round: 1 + rng.IntN(24),
		Column: fmt.Sprintf("%c%d", wale.Families[rng.IntN(len(wale.Families))], 1+rng.IntN(20)),
	}
	if rounds := names[e.Section]; len(rounds) > 0 && rng.IntN(4) > 0 {
		r := rng.IntN(len(rounds))
		e.Round, e.Column = r+1, rounds[r][rng.IntN(len(rounds[r]))]
	}
	switch rng.IntN(4) {
	case 0:
		e.Layer, e.Value = chart.Stitches, []string{"p", "yo", "k2tog", "ssk"}[rng.IntN(4)]
	case 1:
		e.Layer, e.Value = chart.Notes, "look"
	default:
		e.Layer, e.Value = chart.Colours, chart.ID(rng.IntN(chart.MaxYarns))
	}
	return e
}

// Random changes of the plan under random edits: every mark is either on the
// one cell that it names, in a view of the chart and in the rounds that are
// knitted, or it is listed as lost; none is both, and none is changed.
func TestNoEditIsLostUnlisted(t *testing.T) {
	cases := testenv.Cases(1_000, 10_000)
	rng := rand.New(rand.NewPCG(4, 2026))
	pl := NewPlanner()
	samples := Samples()
	var d Document
	var names wale.Names
	marks := chart.Marks{}
	placed, lost, refused := 0, 0, 0
	for i := range cases {
		if i%20 == 0 {
			d, marks = samples[rng.IntN(len(samples))], chart.Marks{}
			plan, err := pl.Plan(d.Sheet)
			require.NoError(t, err)
			names = wale.Mitt(plan.Mitt(), plan.UnderThumb())
		}
		for range 1 + rng.IntN(4) {
			marks.Apply([]chart.Edit{anyEdit(rng, names)})
		}
		before := d
		otherPlan(rng, &d)
		plan, err := pl.Plan(d.Sheet)
		if err != nil {
			d, refused = before, refused+1
			continue
		}
		kept := maps.Clone(marks)
		names = wale.Mitt(plan.Mitt(), plan.UnderThumb())
		s := chart.Source{Mitt: plan.Mitt(), Base: plan.UnderThumb(), Marks: marks, Mirrored: d.Side == Left && plan.Parted()}.Prepare()
		here, gone := count(t, s)
		require.Equal(t, len(marks.Edits()), here+gone, "case %d", i)
		require.Equal(t, kept, marks)
		placed, lost = placed+here, lost+gone
	}
	t.Logf("%d changes of the plan, %d more refused: %d marks in their places, %d listed", cases-refused, refused, placed, lost)
	require.Greater(t, placed, cases)
	require.Greater(t, lost, cases)
}

// count counts the edits that stand in a view on the cells that they name, and
// those that are listed.
func count(t *testing.T, s chart.Source) (here, gone int) {
	seen := map[chart.Anchor]bool{}
	put := s.Put()
	for _, v := range s.Views() {
		for _, row := range s.Grid(chart.Options{View: v}).Rows {
			for _, c := range row.Cells {
				at := chart.Anchor{Section: row.Section, Round: row.Round, Column: c.Column}
				mark, painted := s.Marks[at]
				if painted != c.Painted {
					t.Fatalf("%v is painted: %t, and shown so: %t", at, painted, c.Painted)
				}
				if !painted || seen[at] {
					continue
				}
				seen[at] = true
				one := chart.Marks{at: mark}
				here += len(one.Edits())
				shown := c.Op
				if s.Mirrored {
					shown = shown.Twin()
				}
				require.True(t, mark.Stitch == "" || mark.Stitch == shown.Code())
				require.True(t, mark.Colour == "" || mark.Colour == c.Yarn)
				require.Equal(t, mark.Note, c.Note)
			}
		}
	}
	require.Equal(t, len(s.Mitt.Sections), len(put.Sections))
	for _, e := range s.Lost() {
		require.False(t, seen[e.Anchor()], "listed, and in its place")
		gone++
	}
	return here, gone
}
