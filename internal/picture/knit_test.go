package picture

import (
	"encoding/json"
	"fmt"
	"math/rand/v2"
	"slices"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"thenar/internal/chart"
	"thenar/internal/draw"
	"thenar/internal/stitch"
	"thenar/internal/testenv"
)

// fabricCase is what Go and the page's script draw alike: stitches and marks in cells of
// a size, as numbers of path data.
type fabricCase struct {
	Shapes     chart.Shapes `json:"shapes"`
	Left       float64      `json:"left"`
	Bottom     float64      `json:"bottom"`
	CellWidth  float64      `json:"cell_width"`
	CellHeight float64      `json:"cell_height"`
	Stitches   []cellCase   `json:"stitches"`
	Basting    string       `json:"basting"`
	Frame      string       `json:"frame"`
	Flag       string       `json:"flag"`
	Pin        string       `json:"pin"`
	Needle     string       `json:"needle"`
}

// cellCase is one stitch in a cell.
type cellCase struct {
	X     int    `json:"x"`
	Y     int    `json:"y"`
	Shape string `json:"shape"`
	Path  string `json:"path"`
}

func TestFabricIsDrawnAlikeByGoAndTheScript(t *testing.T) {
	var cases []fabricCase
	for _, at := range []Geometry{{7.5, 61.2, 6, 4.387, 0}, {0, 300, 6, 6, 0}, {2.6, 90.4, 4.2, 3.15, 0}} {
		c := fabricCase{Shapes: Knitting, Left: at.Left, Bottom: at.Bottom, CellWidth: at.CellWidth, CellHeight: at.CellHeight}
		for i, shape := range []string{Knitting.Knit, Knitting.End, Knitting.Purl} {
			name := [...]string{"knit", "end", "purl"}[i]
			c.Stitches = append(c.Stitches, cellCase{3 * i, 2 + i, name, stitchIn(shape, at.x(3*i), at.y(2+i), at.CellWidth, at.CellHeight)})
		}
		g := wedge()
		g.Rows[1].Needles = true
		c.Basting = basting(g.Rows[1], 2, at)
		c.Frame = faultFrame(g.Rows[1], 2, at)
		c.Flag, c.Pin = pinWithFlag(at.x(2), at.y(2), -1, min(at.CellWidth, at.CellHeight))
		c.Needle = needleMark(g, at, pastNumber)
		cases = append(cases, c)
	}
	raw, err := json.MarshalIndent(cases, "", " ")
	require.NoError(t, err)
	testenv.Golden(t, "../../testdata/chart/fabric.json", append(raw, '\n'))
}

// A stitch has two leaves .43 of it wide; the middle of the left one is at 21 % of the
// stitch at the top, where it comes into sight, and at 36 % towards the foot. It rises .36
// of a row behind the stitch above (our own measures).
func TestKnitHasTwoLeavesThatLean(t *testing.T) {
	var left [2][]float64 // the curves down the outer and up the inner side
	var start []float64
	draw.Walk(Knitting.Knit, func(op byte, n []float64) {
		switch {
		case op == 'M' && start == nil:
			start = slices.Clone(n)
		case op == 'C' && left[0] == nil:
			left[0] = append(slices.Clone(start), n...)
		case op == 'C' && left[1] == nil:
			left[1] = append(slices.Clone(left[0][6:]), n...)
		}
	})
	mid, widest := map[float64]float64{}, 0.0
	for v := -30.0; v < 100; v++ {
		outer, inner := across(left[0], v), across(left[1], v)
		mid[v], widest = (outer+inner)/2, max(widest, inner-outer)
	}
	assert.InDelta(t, 43, widest, 1)
	assert.InDelta(t, 21, mid[20], 1)
	assert.InDelta(t, 36, mid[78], 1)
	assert.InDelta(t, -36, left[0][1], 0.001)
	assert.InDelta(t, -4, extent(t, Knitting.End).top, 0.5, "nothing hides an upper edge")
	whole := extent(t, Knitting.Knit)
	assert.InDelta(t, 100, whole.left+whole.right, 0.001, "the right leaf mirrors the left")
	purl := extent(t, Knitting.Purl)
	assert.True(t, purl.top > -40 && purl.bottom <= 102.01 && purl.left >= -1.01 && purl.right <= 101.01)
}

// across returns where a cubic crosses a height, by halving.
func across(c []float64, v float64) float64 {
	at := func(t float64, i int) float64 {
		u := 1 - t
		return u*u*u*c[i] + 3*u*u*t*c[2+i] + 3*u*t*t*c[4+i] + t*t*t*c[6+i]
	}
	low, high := 0.0, 1.0
	for range 50 {
		if m := (low + high) / 2; (at(m, 1) < v) == (c[7] > c[1]) {
			low = m
		} else {
			high = m
		}
	}
	return at(low, 0)
}

// The furrow has at least 1.5 : 1 with its yarn, and what is drawn over the yarn in ink or
// light at least 3 : 1 (WCAG 2.2, 1.4.11).
func TestFurrowsAndLinesStandOutFromEveryYarn(t *testing.T) {
	r := rand.New(rand.NewPCG(8, 1))
	fills := []string{"", "#000000", "#FFFFFF", "#010101", "#B9562F", "#F1E3C6", "#6B2349", "#0000FF", "#FFFF00"}
	for range testenv.Cases(300, 20000) {
		fills = append(fills, fmt.Sprintf("#%06X", r.IntN(1<<24)))
	}
	for _, fill := range fills {
		cloth, line := Cloth(fill), inkColour
		if Dark(fill) {
			line = edgeColour
		}
		require.GreaterOrEqual(t, contrast(t, cloth, Furrow(fill)), 1.5, "%s and %s", fill, Furrow(fill))
		require.GreaterOrEqual(t, contrast(t, cloth, line), 3.0, fill)
	}
	assert.Regexp(t, `^#7[0-9A-F]3[0-9A-F]1[0-9A-F]$`, Furrow("#B9562F"), "rust stays rust")
}

// The key of a coloured chart shows knit and purl as they lie, everything else by its
// symbol as well.
func TestKeyOfAColouredChartIsKnitted(t *testing.T) {
	g := wedge()
	page := look
	page.Knitted = true
	plain, knitted := elements(t, Key(g, look, 120)), elements(t, Key(g, page, 120))
	assert.Empty(t, having(plain, "class", "knit yarn-a undyed"))
	assert.Len(t, having(plain, "class", "symbol"), 2, "purl and make one")
	assert.Len(t, having(knitted, "class", "knit yarn-a undyed"), len(g.Used())+1)
	assert.Len(t, having(knitted, "class", "edge"), 1, "a symbol is read on undyed fabric in the dark, too")
	assert.Len(t, having(knitted, "class", "symbol"), 1)
	assert.True(t, stitch.SSP.Purled() && !stitch.SSK.Purled())
}

// A chart without the second yarn, in a mitt that has one, names its only yarn if that is
// seen; on the page and in a chart file.
func TestKeyNamesTheOnlyYarn(t *testing.T) {
	g := wedge()
	for i := range g.Rows[2].Cells {
		g.Rows[2].Cells[i].Yarn = "a"
	}
	named := func(s *draw.Scene) bool {
		return slices.ContainsFunc(allTexts(s).Items, func(i draw.Item) bool { return i.Text == "oat" })
	}
	for fill, want := range map[string]bool{"": false, "#DDD3BE": true} {
		g.Palette = chart.Palette{{ID: "a", Name: "oat", Fill: fill}, chart.Yarns[1]}
		assert.Equal(t, want, named(Key(g, look, 120)), fill)
		assert.Equal(t, want, named(ChartFile(g, look, Surround{Key: true})), fill)
	}
}
