package project

import (
	"fmt"
	"maps"
	"math/rand/v2"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"thenar/internal/chart"
	"thenar/internal/sheet"
	"thenar/internal/stitch"
	"thenar/internal/testenv"
	"thenar/internal/wale"
)

// anySizes is any mitt in two to six sizes, with any motifs and marks.
func anySizes(rng *rand.Rand, pl *Planner) (list []*Outputs) {
	for {
		doc, p := anyMitt(rng, pl)
		if rng.IntN(3) > 0 {
			testenv.AnyRepeats(rng, doc.Sheet)
		}
		var marks chart.Marks
		if rng.IntN(4) == 0 {
			marks = anyMarks(rng, p.Mitt(), wale.Mitt(p.Mitt(), p.Gusset.Base))
		}
		girth := 14.0 + 3*rng.Float64()
		for range 2 + rng.IntN(5) {
			own := doc
			own.Sheet = sheet.Sheet(maps.Clone(doc.Sheet))
			cm := girth
			if own.Sheet["unit"] == "in" {
				cm /= 2.54
			}
			own.Sheet["hand.hand_circumference"] = fmt.Sprintf("%.2f", cm)
			if out, err := pl.Derive(own, marks); err == nil {
				list = append(list, out)
			}
			girth += 0.5 + 2*rng.Float64()
		}
		if len(list) > 1 {
			return list
		}
		list = nil
	}
}

// look is what a chart shows of a stitch.
type look struct {
	op   stitch.Op
	yarn string
}

// ownCharts returns what each size's own charts show: of a gusset what lies between the
// hand's columns, of all else the rest, from the left.
func ownCharts(out *Outputs) map[string][][]look {
	own := map[string][][]look{}
	src := out.Charts
	src.FromLeft = false
	for _, view := range src.Views() {
		for _, row := range src.Grid(chart.Options{View: view, Layout: chart.Columns}).Rows {
			views := row.Section.Views()
			if string(view) != views[len(views)-1] {
				continue
			}
			var block, rest []look
			for _, c := range slices.Backward(row.Cells) {
				of := c.Column != "" && strings.ContainsRune("ABZ", rune(c.Column[0]))
				switch {
				case c.Column == "" || !c.Shown(): // what waits has no place in a chart
				case of && row.Section.Marked():
					block = append(block, look{c.Op, c.Yarn})
				case of && c.Op.Keeps():
				default:
					rest = append(rest, look{c.Op, c.Yarn})
				}
			}
			if row.Section.Marked() {
				own[fmt.Sprint(row.Section, true)] = append(own[fmt.Sprint(row.Section, true)], block)
			}
			if len(rest) > 0 || len(own[fmt.Sprint(row.Section, false)]) > 0 {
				own[fmt.Sprint(row.Section, false)] = append(own[fmt.Sprint(row.Section, false)], rest)
			}
		}
	}
	return own
}

// From the charts of several sizes put over each other each size reads, round for round and
// stitch for stitch, what its own chart shows: with what is boxed worked as often as its
// number says, and what only other sizes increase knitted. Every gusset has a chart, and so
// has every part with more than plain stitches of the main yarn.
func TestChartsOfSizesHoldEachSize(t *testing.T) {
	designs := 40
	if testenv.Long() {
		designs = 2000
	}
	rng, pl := rand.New(rand.NewPCG(26, 5)), NewPlanner()
	shared, folded, charts, shifted := 0, 0, 0, 0
	for n := range designs {
		outs := anySizes(rng, pl)
		sources := make([]chart.Source, len(outs))
		for i, o := range outs {
			sources[i] = o.Charts
		}
		read := make([]map[string]map[int][]look, len(outs)) // by round
		for i := range read {
			read[i] = map[string]map[int][]look{}
		}
		for _, c := range chart.SizesCharts(sources) {
			charts++
			if len(c.Of) > 1 {
				shared++
			}
			if len(c.Of) > 1 && c.Folded {
				folded++
			}
			if slices.Max(c.Begin) > 0 {
				shifted++
			}
			for i, size := range c.Of {
				key := fmt.Sprint(c.Part, c.Block)
				if read[size][key] == nil {
					read[size][key] = map[int][]look{}
				}
				for y, cells := range c.Take(i) {
					var row []look
					for _, cell := range cells {
						row = append(row, look{cell.Op, cell.Yarn})
					}
					read[size][key][c.First[i]+y] = row
				}
			}
		}
		for i, o := range outs {
			for key, rows := range ownCharts(o) {
				for y, row := range rows {
					got, charted := read[i][key][y+1]
					if !charted { // plain in every size
						require.False(t, strings.HasSuffix(key, "true"), "design %d: no chart of %s", n, key)
						got = row
						for _, l := range row {
							require.Equal(t, chart.Yarns[0].ID, l.yarn, "design %d: no chart of %s", n, key)
						}
					}
					require.True(t, slices.Equal(row, got), "design %d, size %d, %s, round %d: %v", n, i, key, y+1, o.Plan.Kind)
				}
				require.LessOrEqual(t, len(read[i][key]), len(rows))
			}
		}
	}
	t.Logf("%d designs: %d charts, %d of several sizes, %d of these boxed; in %d sizes begin at different rounds", designs, charts, shared, folded, shifted)
	require.Positive(t, shared)
	require.Positive(t, folded)
}
