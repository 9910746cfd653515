package project

import (
	"slices"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"thenar/internal/chart"
	"thenar/internal/sheet"
	"thenar/internal/stitch"
)

// palmMitten is a mitten of 48 stitches with a base of 3, its thumb in the palm.
func palmMitten() Document {
	return Document{Name: "palm", Sheet: sheet.Sheet{
		"kind": "mitten", "thumb.place": "palm", "pins.hand_stitches": "48", "pins.gusset_base": "3", "pins.bridge": "3",
		"gauge.swatches[0].stitches": "24", "gauge.swatches[0].width": "10", "gauge.swatches[0].rounds": "32", "gauge.swatches[0].height": "10",
		"hand.hand_circumference": "19",
	}}
}

// With 48 stitches the thumb lies 3 from the side line (designer's note of 2015). Worked
// by hand: 24 stitches are the palm's, 3 + 3 of the base + 18; 24 the back's. The right
// hand's round crosses the 18, the back and the 3, the left hand's the 3, the back and
// the 18, at the gusset as above it. The top begins with a stitch of each side of the
// side line.
func TestAThumbInThePalm(t *testing.T) {
	d := palmMitten()
	for side, want := range map[Side][3]int{Right: {18, 24, 3}, Left: {3, 24, 18}} {
		d.Side = side
		out, err := NewPlanner().Derive(d, nil)
		require.NoError(t, err)
		require.Equal(t, 3, out.Plan.Gusset.Inset)
		g := out.Charts.Grid(chart.Options{View: chart.TubeView})
		area := map[string]string{} // of each column in the hand's last plain round
		for i, row := range g.Page().Rows {
			var counts [3]int
			var names, cells []string
			for _, a := range row.Areas {
				for range a.Count {
					cells = append(cells, a.Words)
				}
				if a.Words == chart.PalmArea || a.Words == chart.BackArea {
					counts[len(names)] = a.Count
					names = append(names, a.Words)
				}
			}
			require.Equal(t, []string{chart.PalmArea, chart.BackArea, chart.PalmArea}, names, "%s, round %d", row.Section, row.Round)
			require.Equal(t, want, counts, "%s, round %d", row.Section, row.Round)
			for j, c := range g.Rows[i].Cells {
				area[c.Column] = cells[j]
			}
		}
		top := out.Charts.Grid(chart.Options{View: chart.TopView}).Rows[0]
		first := []string{area[top.Cells[0].Column], area[top.Cells[1].Column]}
		slices.Sort(first)
		assert.Equal(t, []string{chart.BackArea, chart.PalmArea}, first, "%s", side)
		half := len(top.Cells) / 2
		second := []string{area[top.Cells[half].Column], area[top.Cells[half+1].Column]}
		slices.Sort(second)
		assert.Equal(t, []string{chart.BackArea, chart.PalmArea}, second, "%s, the other side line", side)
		assert.NotEmpty(t, out.Pair.Parts, "the hands are no two alike: their tops begin elsewhere")
		assert.Contains(t, out.Pair.Parts, stitch.Top)
	}
}

// An inset that has no room in the palm is refused, with the largest that has.
func TestInsetsHaveRoom(t *testing.T) {
	d := palmMitten()
	d.Sheet["thumb.inset"] = "22"
	_, err := NewPlanner().Plan(d.Sheet)
	require.ErrorContains(t, err, "thumb.inset: is 22; beside a base of 3 the palm's 24 stitches leave 21 at most")
	d.Sheet["thumb.inset"] = "21"
	_, err = NewPlanner().Plan(d.Sheet)
	require.NoError(t, err)
}
