package picture

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"

	"thenar/internal/stitch"
)

// Rows are numbered where they are begun: those of the right side at the right, those of
// the wrong side at the left (facts of the trade, in many handbooks: flat charts), and
// the other way round for knitting from left to right. The key says what is done on the
// wrong side.
func TestRowsAreNumberedWhereTheyBegin(t *testing.T) {
	for _, fromLeft := range []bool{false, true} {
		g := wedge()
		g.FromLeft = fromLeft
		for i, side := range []stitch.Side{stitch.RightSide, stitch.WrongSide, stitch.RightSide} {
			g.Rows[i].Side = side
		}
		s, at := Chart(g, look)
		for _, e := range elements(t, s) {
			y := at.Bottom
			if e.name == "text" && e.attr["class"] == "label" {
				y = num(t, e.attr["y"])
			}
			if y >= at.Bottom || y < at.Bottom-3*at.CellHeight { // only the numbers of the rows
				continue
			}
			x, middle := num(t, e.attr["x"]), at.Left+float64(g.Width)*at.CellWidth/2
			assert.Equal(t, (e.chars == "2") != fromLeft, x < middle, "number %s at %g, from left: %t", e.chars, x, fromLeft)
			assert.True(t, x > 0 && x < s.Width, "number %s", e.chars)
		}
		assert.Contains(t, Reading(g), "wrong-side rows")
		words := ""
		for name := range textAreas(Key(g, look, 200)) {
			words += name + "\n"
		}
		assert.Contains(t, words, "knit; on wrong-side rows: purl")
		assert.Contains(t, words, "purl; on wrong-side rows: knit")
		assert.Equal(t, 2, strings.Count(words, "on wrong-side rows"), "M1L has no row of that side")
		_, _, ok := PrintedChart(g, look, 300)
		assert.False(t, ok, "it would have its counts where rows begin")
	}
}
