package picture

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"thenar/internal/chart"
	"thenar/internal/draw"
	"thenar/internal/units"
)

// marked is the wedge with every mark of the work on it.
func marked() chart.Grid {
	g := wedge()
	g.Rows[0].Note, g.Rows[0].Cells[1].Note = "a note", "another"
	g.Rows[0].Changed, g.Rows[1].Needles = true, true
	g.Floats = []chart.Float{{Row: 2, To: 2, At: 0, Next: 5, Length: 4}}
	return g
}

// The classes of what only the page where a chart is worked on shows.
var workingClasses = []string{"painted", "note-pin", "note-flag", "note-number", "fault", "float", "float-edge", "float-length", "needles", "changed", "label changed", "ruler", "thread", "chosen", "cursor"}

func drawnClasses(list []element) map[string]bool {
	found := map[string]bool{}
	for _, e := range list {
		if e.name == "path" && e.attr["d"] != "" || e.name == "text" {
			found[e.attr["class"]] = true
		}
	}
	return found
}

func TestChartFileIsClean(t *testing.T) {
	l := look
	l.Unit = units.CM
	clean := elements(t, ChartFile(marked(), l, Surround{}))
	found := drawnClasses(clean)
	for _, class := range workingClasses {
		assert.False(t, found[class], class)
	}
	for _, e := range clean {
		assert.Empty(t, e.attr["font-weight"], e.chars)
		assert.NotContains(t, e.attr["class"], "texture")
		if e.name == "path" {
			assert.NotEmpty(t, e.attr["d"])
		}
	}
	for _, class := range []string{"symbol", "grid", "yarn yarn-b", "furrow", "label"} {
		assert.True(t, found[class], class)
	}

	found = drawnClasses(elements(t, ChartFile(marked(), l, Surround{Marks: true})))
	for _, class := range workingClasses[:12] {
		assert.True(t, found[class], class)
	}
}

// The cells of the file are those of the page: as large, in the same places to each
// other, of the same yarns.
func TestChartFileHasTheCellsOfThePage(t *testing.T) {
	onPage, _ := Chart(marked(), look)
	page, file := elements(t, onPage), elements(t, ChartFile(marked(), look, Surround{}))
	for _, class := range []string{"grid", "yarn yarn-b"} {
		want, got := extent(t, having(page, "class", class)[0].attr["d"]), extent(t, having(file, "class", class)[0].attr["d"])
		assert.InDelta(t, want.right-want.left, got.right-got.left, 0.001, class)
		assert.InDelta(t, want.bottom-want.top, got.bottom-got.top, 0.001, class)
	}
}

// What is chosen stands in the file in its order from the top, within the page, and
// nothing stands over anything else.
func TestSurroundOfAChartFile(t *testing.T) {
	all := Surround{Title: "Marit’s reading mitts", Under: "Chart of the thumb gusset, right hand", Key: true, Caption: "Worked in " + strings.Repeat("rust and cream ", 20)}
	s := ChartFile(wedge(), look, all)
	readable(t, allTexts(s))
	place := map[string]float64{}
	for _, e := range elements(t, s) {
		if e.name == "text" && e.attr["class"] != "" {
			place[strings.Fields(e.chars)[0]+e.attr["class"]] = num(t, e.attr["y"])
		}
	}
	require.Contains(t, place, "Marit’stitle")
	require.Contains(t, place, "Workedcaption")
	assert.Less(t, place["Marit’stitle"], place["Charttitle"])
	assert.Less(t, place["Charttitle"], place["Workedcaption"])
	assert.LessOrEqual(t, place["Workedcaption"], s.Height)

	bare := ChartFile(wedge(), look, Surround{})
	assert.Less(t, bare.Height, s.Height)
	for _, e := range elements(t, bare) {
		assert.NotContains(t, []string{"title", "caption"}, e.attr["class"])
		assert.NotContains(t, e.chars, "knit")
	}
	assert.NotEmpty(t, elements(t, ChartFile(chart.Grid{}, look, all)), "an empty chart is drawn")
}

// allTexts returns the texts of a scene with those of the scenes in it, all in its own mm.
func allTexts(s *draw.Scene) *draw.Scene {
	out := &draw.Scene{Width: s.Width, Height: s.Height}
	s.Each(draw.Place{Scale: 1}, func(i *draw.Item, at draw.Place) {
		if i.Kind == draw.TextItem {
			item := *i
			item.X, item.Y = at.At(i.X, i.Y)
			item.Letter.Size *= at.Scale
			out.Items = append(out.Items, item)
		}
	})
	return out
}

// Many stitches are numbered at the first and every fifth, and numbers of three
// figures, which are wider than a cell, as well.
func TestManyStitchesAreNumberedByFives(t *testing.T) {
	at := Geometry{CellWidth: 6, CellHeight: 6}
	written := func(from, to int) (out []string) {
		numbers := map[int]int{}
		for n := from; n <= to; n++ {
			numbers[to-n] = n
		}
		s := &draw.Scene{}
		numberStitches(s, numbers, at, 0)
		for _, i := range s.Items {
			out = append(out, i.Text)
		}
		return out
	}
	assert.Equal(t, []string{"1", "2", "3"}, written(1, 3))
	assert.Equal(t, []string{"1", "5", "10", "15", "20", "25", "30", "35", "40"}, written(1, 41))
	assert.Equal(t, []string{"100"}, written(97, 103))
}

func TestHowToRead(t *testing.T) {
	p := adult(t)
	g := grid(p, nil, false)
	assert.Equal(t, "Read from the bottom up, right to left. Every round begins at the right edge of the gusset. "+
		"The numbers at the foot count the stitches of round 1, those at the top of round 19.", HowToRead(g))
	assert.Equal(t, "Read from the bottom up, right to left.", HowToRead(chart.Grid{}))
	readable(t, allTexts(ChartFile(g, look, Surround{Title: "Mitts", Key: true, Caption: HowToRead(g)})))
}
