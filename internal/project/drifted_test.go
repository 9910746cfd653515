package project

import (
	"fmt"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"thenar/internal/chart"
)

// lying are the stitches of the motif on the cells of a mitt, as the chart shows them.
func lying(out *Outputs) map[chart.Anchor]string {
	on := map[chart.Anchor]string{}
	for _, row := range out.Charts.Grid(chart.Options{View: chart.TubeView}).Rows {
		for _, c := range row.Cells {
			on[chart.Anchor{Section: row.Section, Round: row.Round, Column: c.Column}] = ""
			if c.Laid > 0 {
				on[chart.Anchor{Section: row.Section, Round: row.Round, Column: c.Column}] = fmt.Sprintf("4x4.%d.%d", c.Right, c.Up)
			}
		}
	}
	return on
}

// A stitch that is painted on a motif stays where it is, and is told as soon as another
// stitch of the motif lies there, or none; with the place where its own lies, if there is one.
func TestPaintedStitchesThatDriftAreTold(t *testing.T) {
	pl := NewPlanner()
	full := func(side Side, with map[string]string) *Document {
		d := squares(map[string]string{"motif": "bcdb/cdbc/dbcd/bbcd", "gusset": "grow"})
		d.Side = side
		for path, text := range with {
			d.Sheet[path] = text
		}
		return &d
	}
	for side, hand := range map[Side]string{Right: "r", Left: "l"} {
		for name, with := range map[string]map[string]string{
			"another gauge":  {"gauge.swatches[0].stitches": "20", "gauge.swatches[0].rounds": "29"},
			"moved":          {"repeats[0].from": "2", "repeats[0].offset": "1"},
			"a later gusset": {"hand.gusset_length": "6"},
			"ending sooner":  {"repeats[0].to": "20"},
			"turned off":     {"repeats[0].off": "true"},
		} {
			t.Run(hand+" "+name, func(t *testing.T) {
				marks := chart.Marks{}
				first, err := pl.Derive(*full(side, nil), nil)
				require.NoError(t, err)
				i := 0
				for _, row := range first.Charts.Grid(chart.Options{View: chart.TubeView}).Rows {
					for _, c := range row.Cells {
						if i++; c.Laid > 0 && i%5 == 0 {
							marks[chart.Anchor{Section: row.Section, Round: row.Round, Column: c.Column}] = chart.Mark{Colour: "e", Motif: fmt.Sprintf("%s4x4.%d.%d", hand, c.Right, c.Up)}
						}
					}
				}
				require.Greater(t, len(marks), 100)
				still, err := pl.Derive(*full(side, nil), marks)
				require.NoError(t, err)
				assert.Empty(t, still.Drifted, "nothing has moved")

				out, err := pl.Derive(*full(side, with), marks)
				require.NoError(t, err)
				on, told := lying(out), map[chart.Anchor]chart.Drift{}
				for _, d := range out.Drifted {
					told[d.At] = d
				}
				along := 0
				for at, mark := range marks {
					now, there := on[at]
					drift, is := told[at]
					off := with["repeats[0].off"] != ""
					require.Equal(t, there && hand+now != mark.Motif && !off, is, "%v: painted on %s, now %s", at, mark.Motif, now)
					if drift.To.Column != "" {
						along++
						require.Equal(t, mark.Motif, hand+on[drift.To])
						require.Equal(t, at.Section, drift.To.Section)
					}
				}
				if with["repeats[0].off"] == "" {
					assert.NotEmpty(t, told)
					assert.Positive(t, along)
				}
				other, err := pl.Derive(*full(map[Side]Side{Right: Left, Left: Right}[side], with), marks)
				require.NoError(t, err)
				assert.Empty(t, other.Drifted, "the other hand was not painted")
			})
		}
	}
}
