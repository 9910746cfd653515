package picture

import (
	"math"
	"strconv"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"thenar/internal/chart"
	"thenar/internal/draw"
	"thenar/internal/stitch"
)

// growing is a gusset's chart of six rounds, of which 1 and 4 increase, drawn over 180 mm.
func growing(t *testing.T, fromLeft bool) (chart.Grid, *draw.Scene, Geometry) {
	t.Helper()
	g := chart.Grid{Options: chart.Options{View: chart.GussetView}, Width: 11, Palette: chart.Yarns, FromLeft: fromLeft}
	for r, n := range []int{9, 9, 9, 11, 11, 11} {
		row := chart.Row{Section: stitch.Gusset, Round: r + 1, In: 40, Out: 35 + n}
		for i := range n { // as worked: three of the back come last
			j := (i + 3) % n // from the right
			c := chart.Cell{Column: "B" + strconv.Itoa(i), X: (11+n)/2 - 1 - j, Op: stitch.Knit, Planned: stitch.Knit, Yarn: "a"}
			if fromLeft {
				c.X = 10 - c.X
			}
			if j < 3 || j >= n-3 {
				c.Column = "H" + strconv.Itoa(i)
			}
			row.Cells = append(row.Cells, c)
		}
		if r%3 == 0 {
			row.Cells[1].Op = stitch.M1L
		}
		g.Rows = append(g.Rows, row)
	}
	s, at, ok := PrintedChart(g, look, 180)
	require.True(t, ok)
	high, ok := PrintedHeight(g, look, 180)
	require.True(t, ok)
	assert.InDelta(t, s.Height, high, 1e-9)
	return g, s, at
}

// uprightsOf returns the upright lines of a style's paths as x and the rows they span.
func uprightsOf(s *draw.Scene, is func(draw.Style) bool) (list [][3]float64) {
	for _, i := range s.Items {
		if i.Kind != draw.PathItem || !is(i.Style) {
			continue
		}
		var x, y float64
		draw.Walk(i.Path, func(op byte, n []float64) {
			if op == 'L' && n[0] == x {
				list = append(list, [3]float64{x, min(y, n[1]), max(y, n[1])})
			}
			if len(n) > 1 {
				x, y = n[0], n[1]
			}
		})
	}
	return list
}

// Beside the rounds that increase, and beside no others, stand on grey what they leave in
// the gusset and in all, and their numbers, larger than the others.
func TestPrintedChartSaysTheCounts(t *testing.T) {
	for _, fromLeft := range []bool{false, true} {
		g, s, at := growing(t, fromLeft)
		rows := map[string][]string{}
		sizes := map[string]float64{}
		for _, i := range s.Items {
			if i.Kind == draw.TextItem && i.Y > at.y(6) && i.Y < at.Bottom {
				y := strconv.Itoa(int(math.Ceil((at.Bottom - i.Y) / at.CellHeight)))
				rows[y] = append(rows[y], i.Text)
				sizes[i.Text] = i.Letter.Size
			}
		}
		assert.ElementsMatch(t, []string{"1", "3", "44"}, rows["1"], "a make one is a stitch of the round")
		assert.ElementsMatch(t, []string{"4", "5", "46"}, rows["4"])
		assert.Equal(t, []string{"2"}, rows["2"])
		assert.Greater(t, sizes["4"], sizes["6"])
		bands := 0
		for _, i := range s.Items {
			if i.Kind == draw.PathItem && i.Style.Fill == bandColour {
				draw.Walk(i.Path, func(op byte, n []float64) {
					if op != 'M' {
						return
					}
					if n[1] >= at.y(6)-0.01 && n[1] < at.Bottom-0.01 {
						bands++
						row := math.Round((at.Bottom - n[1]) / at.CellHeight)
						assert.Contains(t, []float64{1, 4}, row)
					}
				})
			}
		}
		assert.Equal(t, 4, bands, "at both sides of two rounds")
		assert.Len(t, g.Rows, 6)
	}
}

// Rows run out open. The gusset's edge where the round begins is a whole line with a hook
// at its foot, the other a broken one; both are thicker than the line after a fifth round.
func TestPrintedChartRunsOutOpen(t *testing.T) {
	for _, fromLeft := range []bool{false, true} {
		_, s, at := growing(t, fromLeft)
		fine := uprightsOf(s, func(st draw.Style) bool { return st.Stroke == fineColour })
		require.NotEmpty(t, fine)
		for _, l := range fine {
			assert.Greater(t, l[0], at.x(0)+0.01)
			assert.Less(t, l[0], at.x(11)-0.01)
		}
		whole := uprightsOf(s, func(st draw.Style) bool { return st.Stroke == outlineColour && st.Width == firstEdge && st.Dash == "" })
		broken := uprightsOf(s, func(st draw.Style) bool { return st.Stroke == outlineColour && st.Dash != "" })
		require.Len(t, broken, 6)
		begins, ends := at.x(7), at.x(4)
		if fromLeft {
			begins, ends = ends, begins
		}
		assert.InDelta(t, ends, broken[0][0], 1e-3)
		require.Len(t, whole, 7, "six rounds and the hook")
		assert.InDelta(t, begins, whole[0][0], 1e-3)
		assert.InDelta(t, begins, whole[6][0], 1e-3, "the hook")
		assert.Greater(t, whole[6][2], at.Bottom)
		assert.Less(t, 2*fifthWidth, firstEdge+1e-9)
		walk(s, func(x, _ float64) { assert.True(t, x >= -0.01 && x <= 180.01) }, func(left, right, y float64, i draw.Item) {
			assert.True(t, left > -0.01 && right < 180.01 && y < s.Height, i.Text)
		})
		keepApart(t, s)
	}
}

// A key is as high as it is measured, whole and row by row, in any width.
func TestKeyIsAsHighAsItIsMeasured(t *testing.T) {
	g := wedge()
	more := []Sign{{Sign: "ssk", Line: "slip two, one by one, as if to knit; knit them together"}, {Line: "the round begins", Drawn: FirstEdge}}
	key := NewKey([]chart.Grid{g}, look, more...)
	for _, width := range []float64{60, 110, 200} {
		s := key.Draw(width)
		assert.InDelta(t, key.Height(width), s.Height, 1e-9)
		readable(t, s)
		all := ""
		for _, r := range key.Rows(width) {
			row := r.Draw()
			all += words(row)
			walk(row, func(_, y float64) { assert.LessOrEqual(t, y, r.Height) }, func(_, right, y float64, i draw.Item) {
				assert.True(t, y < r.Height && right <= width, i.Text)
			})
		}
		for _, i := range s.Items {
			assert.Contains(t, all, i.Text)
		}
	}
}

// Names beside a printed chart's rulers keep clear of its lines, an upright line of the key
// clear of the next one, and in large print symbols grow with the numbers but stay in their
// cells.
func TestPrintedChartKeepsItsMarksClear(t *testing.T) {
	_, s, at := growing(t, false)
	for _, i := range s.Items {
		if i.Text == "palm" || i.Text == "back" { // ascenders and descenders, as in Source Sans
			top, foot := i.Y-0.75*i.Letter.Size, i.Y+0.21*i.Letter.Size
			assert.True(t, foot < at.y(6)-0.4 || top > at.Bottom+0.4, "%s: %.2f to %.2f", i.Text, top, foot)
		}
	}
	key := NewKey([]chart.Grid{wedge()}, look, Sign{Line: "the round begins", Drawn: FirstEdge}, Sign{Line: "the second marker", Drawn: SecondEdge}).Draw(60)
	thick := uprightsOf(key, func(st draw.Style) bool { return st.Width == firstEdge })
	require.Len(t, thick, 2)
	assert.Greater(t, thick[1][1]-thick[0][2], 1.0)
	cell := Geometry{CellWidth: 6.5, CellHeight: 4.9, letter: 6.35}
	for op, symbol := range symbols {
		low, high := 0.0, 0.0
		draw.Walk(cell.symbol(symbol, 0, 1), func(_ byte, p []float64) {
			for k := 1; k < len(p); k += 2 {
				low, high = min(low, p[k]), max(high, p[k])
			}
		})
		assert.True(t, low >= -4.95 && high <= 0.05, "%v reaches %.2f to %.2f", op, low, high)
	}
	small := Geometry{CellWidth: 6.5, CellHeight: 4.9, letter: 3.2}
	assert.Equal(t, symbolInCell(symbols[stitch.M1L], 0, -4.9, 6.5, 4.9), small.symbol(symbols[stitch.M1L], 0, 1))
	assert.NotEqual(t, small.symbol(symbols[stitch.M1L], 0, 1), cell.symbol(symbols[stitch.M1L], 0, 1))
}
