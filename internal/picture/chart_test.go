package picture

import (
	"slices"
	"strconv"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"thenar/internal/chart"
	"thenar/internal/gauge"
	"thenar/internal/stitch"
)

// wedge returns a chart of three rounds of 5, 5 and 7 cells, worked from the right, with a
// run of rust, a fault in round 2 and a purl that the plan does not have.
func wedge() chart.Grid {
	g := chart.Grid{Options: chart.Options{View: chart.TubeView}, Width: 7, Palette: chart.Yarns}
	for r, n := range []int{5, 5, 7} {
		row := chart.Row{Section: stitch.Gusset, Round: r + 1}
		for i := range n {
			c := chart.Cell{Column: "B" + strconv.Itoa(i), X: (7+n)/2 - 1 - i, Planned: stitch.Knit, Op: stitch.Knit, Yarn: "a"}
			if i == 0 || i == n-1 {
				c.Column = "H" + strconv.Itoa(i)
			}
			row.Cells = append(row.Cells, c)
		}
		g.Rows = append(g.Rows, row)
	}
	g.Rows[1].Fault = "round 1 makes 5 stitches, round 2 needs 6"
	g.Rows[1].Cells[2].Op = stitch.Purl
	g.Rows[1].Cells[2].Painted = true
	g.Rows[2].Cells[1].Planned, g.Rows[2].Cells[1].Op = stitch.M1L, stitch.M1L
	g.Rows[2].Cells[2].Yarn, g.Rows[2].Cells[3].Yarn = "b", "b"
	return g
}

var look = Look{Cell: 6, Gauge: gauge.Gauge{Stitches: 0.22, Rounds: 0.30}}

func inLayer(list []element, layer string) []element {
	var out []element
	for _, e := range list {
		if slices.Contains(e.in, layer) && e.attr["data-layer"] == "" {
			out = append(out, e)
		}
	}
	return out
}

// Height over width is stitches over rounds: 22 by 30 makes 0.733 (worked
// example of the ratio, common practice).
func TestCellsHaveTheProportionsOfTheFabric(t *testing.T) {
	s, at := Chart(wedge(), look)
	assert.InDelta(t, 6.0, at.CellWidth, 1e-9)
	assert.InDelta(t, 0.733, at.CellHeight/at.CellWidth, 0.0005)
	grid := extent(t, having(elements(t, s), "class", "grid")[0].attr["d"])
	assert.InDelta(t, at.Left, grid.left, 0.001)
	assert.InDelta(t, at.Left+7*at.CellWidth, grid.right, 0.001)
	assert.InDelta(t, at.Bottom, grid.bottom, 0.001, "round 1 stands at the foot")
	assert.InDelta(t, at.Bottom-3*at.CellHeight, grid.top, 0.001)
	assert.True(t, grid.left > 0 && grid.top > 0 && grid.right < s.Width && grid.bottom < s.Height)
}

func TestEveryLayerHasEveryRow(t *testing.T) {
	s, at := Chart(wedge(), look)
	list := elements(t, s)
	for _, layer := range []string{"colour", "fifth", "fifth-light", "edge", "symbol", "fault", "painted"} {
		for r := 1; r <= 3; r++ {
			rows := having(inLayer(list, layer), "data-row", strconv.Itoa(r))
			require.Len(t, rows, 1, "%s %d", layer, r)
			if d := rows[0].attr["d"]; d != "" {
				a := extent(t, d)
				const frame = 6.0 / 16 // half of a frame lies outside
				assert.GreaterOrEqual(t, a.top, at.Bottom-float64(r)*at.CellHeight-frame-0.001)
				assert.LessOrEqual(t, a.bottom, at.Bottom-float64(r-1)*at.CellHeight+frame+0.001)
			}
		}
	}
	filled := func(layer string) (rows []string) {
		for _, e := range inLayer(list, layer) {
			if e.attr["d"] != "" {
				rows = append(rows, e.attr["data-row"])
			}
		}
		return rows
	}
	assert.Equal(t, []string{"2", "3"}, filled("symbol"))
	assert.Equal(t, []string{"2"}, filled("fault"))
	assert.Equal(t, []string{"2"}, filled("painted"))
	assert.Len(t, having(inLayer(list, "cursor"), "class", "thread"), 1)
	assert.Len(t, having(inLayer(list, "cursor"), "class", "cursor"), 1)
}

func TestARunOfOneYarnIsOneRectangle(t *testing.T) {
	s, at := Chart(wedge(), look)
	list := elements(t, s)
	rust := having(inLayer(list, "colour"), "class", "yarn yarn-b")
	require.Len(t, rust, 1)
	a := extent(t, rust[0].attr["d"])
	assert.InDelta(t, at.Left+3*at.CellWidth, a.left, 0.001, "cells 2 and 3 from the right are x 4 and 3")
	assert.InDelta(t, 2*at.CellWidth, a.right-a.left, 0.001)
	fill, ok := chart.Yarns.Named("b")
	require.True(t, ok)
	assert.Equal(t, fill.Fill, rust[0].attr["fill"])
	assert.Empty(t, having(list, "class", "texture texture-b"), "on the page and in colour")

	copier := look
	copier.Grey = true
	s, _ = Chart(wedge(), copier)
	texture := having(inLayer(elements(t, s), "colour"), "class", "texture texture-b")
	require.Len(t, texture, 1)
	inside := extent(t, texture[0].attr["d"])
	assert.True(t, inside.left >= a.left && inside.right <= a.right && inside.top >= a.top && inside.bottom <= a.bottom)
}

func TestTexturesStayInTheirRectangleAndDiffer(t *testing.T) {
	seen := map[string]bool{}
	for i := 1; i < chart.MaxYarns; i++ {
		d := Texture(chart.ID(i), 5, 7, 12, 4, 1.5)
		a := extent(t, d)
		assert.True(t, a.left >= 5 && a.right <= 17 && a.top >= 7 && a.bottom <= 11, chart.ID(i))
		assert.False(t, seen[d])
		seen[d] = true
	}
	assert.Empty(t, Texture(chart.Yarns[0].ID, 0, 0, 1, 1, 0.25))
}

// The gusset's edges are at x 2 and 5 in the rounds of 5 cells, at 1 and 6 in that of 7.
func TestHeavyLinesAtTheGussetsEdges(t *testing.T) {
	s, at := Chart(wedge(), look)
	border := having(elements(t, s), "class", "border")
	require.Len(t, border, 1)
	a := extent(t, border[0].attr["d"])
	assert.InDelta(t, at.Left+at.CellWidth, a.left, 0.001)
	assert.InDelta(t, at.Left+6*at.CellWidth, a.right, 0.001)
}

// In a wedge the foot numbers the stitches of the first round, the head those of the last,
// each over its stitch; the areas are named under them.
func TestRoundsAreNumberedOnTheRightAndStitchesAsTheyAreCounted(t *testing.T) {
	s, at := Chart(wedge(), look)
	readable(t, s)
	var rounds, foot, head []string
	for _, e := range elements(t, s) {
		if e.name != "text" || e.attr["class"] == "area" {
			continue
		}
		switch y := num(t, e.attr["y"]); {
		case y > at.Bottom:
			foot = append(foot, e.chars)
			assert.InDelta(t, at.Left+(6-num(t, e.chars)+0.5)*at.CellWidth, num(t, e.attr["x"]), 0.001)
		case y < at.Bottom-3*at.CellHeight:
			head = append(head, e.chars)
			assert.InDelta(t, at.Left+(7-num(t, e.chars)+0.5)*at.CellWidth, num(t, e.attr["x"]), 0.001)
		default:
			rounds = append(rounds, e.chars)
			assert.Greater(t, num(t, e.attr["x"]), at.Left+6*at.CellWidth)
		}
	}
	assert.Equal(t, []string{"1", "2", "3"}, rounds)
	assert.Equal(t, []string{"1", "2", "3", "4", "5"}, foot)
	assert.Equal(t, []string{"1", "2", "3", "4", "5", "6", "7"}, head)
	assert.Len(t, having(elements(t, s), "class", "area"), 2, "palm and back; the wedge has no gusset cells of its own")
}

func TestAnEmptyChartIsDrawn(t *testing.T) {
	s, _ := Chart(chart.Grid{}, look)
	assert.NotEmpty(t, elements(t, s))
}

func TestTheKeyNamesEveryStitchWithinItsWidth(t *testing.T) {
	g := chart.Grid{Palette: chart.Yarns}
	for _, op := range stitch.All()[1:] {
		g.Rows = append(g.Rows, chart.Row{Cells: []chart.Cell{{Op: op, Yarn: "a"}, {Op: op, Yarn: "c", X: 1}}})
	}
	for _, by := range Conventions {
		for _, width := range []float64{60, 120} {
			s := Key(g, Look{Symbols: by}, width)
			assert.InDelta(t, width, s.Width, 1e-9)
			readable(t, s)
			assert.Len(t, having(elements(t, s), "class", "symbol"), len(stitch.All())-len(empty))
			assert.Len(t, having(elements(t, s), "class", "yarn yarn-c"), 1)
		}
	}
}

// Ink on #6C6C6C has 3.01 : 1, on #6B6B6B 2.97 : 1 (worked out by hand after WCAG 2.2).
func TestLinesOnDarkYarnsAreLight(t *testing.T) {
	for fill, dark := range map[string]bool{"#000000": true, "#1B2A5C": true, "#6C6C6C": false, "#6B6B6B": true, "#FFFFFF": false, "#B9562F": false, "": false, "navy": false} {
		assert.Equal(t, dark, Dark(fill), fill)
	}
}
