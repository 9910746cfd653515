package project

import (
	"fmt"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"thenar/internal/chart"
	"thenar/internal/sheet"
	"thenar/internal/stitch"
)

// Of what lies beside base and bridge the palm has half and the back the rest, so an odd
// stitch is the back's: in the round as in rows, whose seam parts the two, on both hands and
// from either end; the drawn palm shows as many.
func TestAnOddStitchIsTheBacks(t *testing.T) {
	odd := 0
	for n := 40; n < 50; n++ {
		for base := 2; base < 5; base++ {
			for _, way := range []sheet.Sheet{nil, {"piece.flat": "true"}, {"piece.direction": "down"}} {
				s := sheet.Sheet{
					"kind": "mitten", "pins.hand_stitches": fmt.Sprint(n), "pins.gusset_base": fmt.Sprint(base), "pins.bridge": fmt.Sprint(base),
					"gauge.swatches[0].stitches": "24", "gauge.swatches[0].width": "10", "gauge.swatches[0].rounds": "32", "gauge.swatches[0].height": "10",
					"hand.hand_circumference": "19",
				}
				for path, text := range way {
					s[path] = text
				}
				for _, side := range []Side{Right, Left} {
					out, err := NewPlanner().Derive(Document{Sheet: s, Side: side}, nil)
					require.NoError(t, err)
					g := out.Charts.Grid(chart.Options{View: chart.TubeView})
					for i, row := range g.Page().Rows {
						seam := out.Charts.Mitt.Section(row.Section).Seam
						count := map[string]int{}
						for _, a := range row.Areas {
							count[a.Words] += a.Count
						}
						if count[chart.PalmArea]+count[chart.BackArea] != n-base+2*seam {
							continue // the round below the top takes an odd stitch
						}
						want := map[string]int{chart.PalmArea: (n-base)/2 + seam, chart.BackArea: n - base - (n-base)/2 + seam}
						for area, stitches := range want {
							require.Equal(t, stitches, count[area], "%s of %d beside %d, %s, %v, %s %d", area, n, base, side, way, row.Section, g.Rows[i].Round)
						}
						odd += (n - base) % 2
					}
					for _, of := range []stitch.Part{stitch.Gusset, stitch.Hand} {
						require.Len(t, out.Charts.Palm()[of][1].Hand, (n-base)/2, "%s %v", of, way)
					}
				}
			}
		}
	}
	assert.Positive(t, odd)
}
