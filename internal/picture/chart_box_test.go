package picture

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"thenar/internal/chart"
	"thenar/internal/draw"
)

// folded is the wedge of which two columns stand for ten, and one round for three.
func folded(fromLeft bool) chart.Grid {
	g := wedge()
	g.FromLeft, g.Rows[2].Round = fromLeft, 5
	g.Across, g.Up = []chart.Fold{{From: 2, Count: 2, Times: 5}}, []chart.Fold{{From: 1, Count: 1, Times: 3}}
	return g
}

// A box lies round its cells, its counts stand over them and beside them, on the side where
// no round begins; other charts are drawn as they were.
func TestBoxes(t *testing.T) {
	for _, fromLeft := range []bool{false, true} {
		g := folded(fromLeft)
		s, at := Chart(g, look)
		list := elements(t, s)
		columns, rounds := having(list, "class", "box"), having(list, "class", "box-rounds")
		require.Len(t, columns, 1, "round the columns, over all rounds")
		require.Len(t, rounds, 1, "round the round, from end to end")
		got := extent(t, columns[0].attr["d"])
		assert.InDelta(t, at.x(2), got.left, 0.01)
		assert.InDelta(t, at.x(4), got.right, 0.01)
		assert.InDelta(t, at.y(3), got.top, 0.01)
		assert.InDelta(t, at.y(0), got.bottom, 0.01)
		got, row := extent(t, rounds[0].attr["d"]), g.Rows[1].Shown()
		assert.InDelta(t, at.x(row[0].X), got.left, 0.01)
		assert.InDelta(t, at.x(row[len(row)-1].X+1), got.right, 0.01)
		assert.InDelta(t, at.y(2), got.top, 0.01)
		assert.InDelta(t, at.y(1), got.bottom, 0.01)
		readable(t, allTexts(s))
		said := map[string]element{}
		for _, e := range list {
			if e.name == "text" {
				said[e.chars] = e
			}
		}
		require.Contains(t, said, "× 5")
		require.Contains(t, said, "× 3")
		assert.InDelta(t, at.x(3), num(t, said["× 5"].attr["x"]), 0.01)
		assert.Less(t, num(t, said["× 5"].attr["y"]), at.y(3))
		beside := num(t, said["× 3"].attr["x"])
		assert.Equal(t, fromLeft, beside > at.x(g.Width), "%v", beside)
		assert.Equal(t, !fromLeft, beside < at.x(0), "%v", beside)

		width, height := ChartSize(g, look)
		assert.InDelta(t, s.Width, width, 1e-9)
		assert.InDelta(t, s.Height, height, 1e-9)
	}
	plain, _ := Chart(wedge(), look)
	assert.Empty(t, having(elements(t, plain), "class", "box"))
}

// A part of a chart has of a box what stands on it, open where it goes on, and nothing over
// places without a stitch.
func TestBoxesOfAPart(t *testing.T) {
	g := folded(false)
	s, at := Chart(g.Part(0, 3, 0, len(g.Rows)), look)
	box := having(elements(t, s), "class", "box")[0].attr["d"]
	assert.Equal(t, 3, strings.Count(box, "M"), "left, head and foot: it goes on at the right: %s", box)
	assert.InDelta(t, at.x(3), extent(t, box).right, 0.01)

	empty := folded(false)
	for i := range empty.Rows[1].Cells {
		empty.Rows[1].Cells[i].X = -1
	}
	empty = empty.Part(0, 2, 0, len(g.Rows)) // without columns of the box
	s, _ = Chart(empty, look)
	for _, e := range elements(t, s) {
		assert.NotContains(t, e.chars, "×", "there is no cell that is worked again")
		assert.NotEqual(t, "box", e.attr["class"])
	}
}

// No border of the gusset stands within a box: it would be said of each of its places.
func TestNoBorderInABox(t *testing.T) {
	count := func(g chart.Grid) int {
		return len(having(elements(t, ChartFile(g, look, Surround{})), "class", "border"))
	}
	g := wedge() // one coloured run, so that there is a border with an edge
	require.Positive(t, count(g))
	g.Across = []chart.Fold{{From: 0, Count: 7, Times: 2}}
	assert.Zero(t, count(g))
}

// The parts of a boxed view stand one above the other, the first at the foot, each under its
// line, and begin their rounds at the same edge.
func TestBoxedFile(t *testing.T) {
	small := folded(false).Part(1, 6, 0, 2)
	small.CutLeft, small.CutRight = 0, 0
	s := BoxedFile([]chart.Grid{folded(false), small}, look, Surround{Title: "Mitts", Under: "Chart of the hand", Key: true, Caption: "Read"})
	readable(t, allTexts(s))
	var lines []string
	var right []float64
	s.Each(draw.Place{Scale: 1}, func(i *draw.Item, at draw.Place) {
		switch {
		case i.Kind == draw.TextItem && i.Letter.Class == "caption":
			lines = append(lines, i.Text)
		case i.Kind == draw.PathItem && i.Style.Class == "grid" && i.Path != "":
			x, _ := at.At(extent(t, i.Path).right, 0)
			right = append(right, x)
		}
	})
	require.Len(t, right, 2)
	assert.InDelta(t, right[0], right[1], 0.01)
	assert.Equal(t, []string{
		"Gusset, rounds 1 to 4. Work the box of 2 stitches 5 times. Round", "2 is worked 3 times, up to round 4.",
		"Gusset, rounds 1 to 5. Work the box of 2 stitches 5 times. Round", "2 is worked 3 times, up to round 4.", "Read",
	}, lines)
	assert.NotNil(t, BoxedFile(nil, look, Surround{}))
}
