package chart

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"thenar/internal/stitch"
)

// numbered returns the numbers of a row from the left; 0 is a place without one.
func numbered(g Grid, row int) []int {
	list, at := make([]int, g.Width), g.Rows[row].Numbers()
	for x := range list {
		list[x] = at[x]
	}
	return list
}

// Counted by hand on the rounds of gusset(t): 13 stitches in the first, 15 in the
// last, worked from right to left and beginning with the gusset.
func TestNumbersAreThoseOfTheRound(t *testing.T) {
	s := source(gusset(t), 3, 8, nil, false)
	g := s.Grid(Options{})
	assert.Equal(t, []int{0, 8, 7, 6, 5, 4, 3, 2, 1, 13, 12, 11, 0}, numbered(g, 0))
	assert.Equal(t, []int{10, 9, 8, 7, 6, 5, 4, 3, 2, 1, 15, 14, 13}, numbered(g, 3))
	g = s.Grid(Options{Layout: Columns})
	assert.Equal(t, []int{8, 7, 6, 5, 0, 4, 3, 2, 0, 1, 13, 12, 11}, numbered(g, 0), "the columns made later have none at the foot")
	g = s.Grid(Options{View: TubeView})
	assert.Equal(t, []int{9, 8, 7, 6, 5, 4, 3, 2, 1, 13, 12, 11, 10}, withoutGaps(numbered(g, 0)), "all round")
}

func withoutGaps(list []int) (out []int) {
	for _, n := range list {
		if n > 0 {
			out = append(out, n)
		}
	}
	return out
}

// A cell painted as no stitch is not counted.
func TestNoStitchHasNoNumber(t *testing.T) {
	marks := Marks{}
	marks.Apply([]Edit{paint(2, "B2", Stitches, stitch.NoStitch.Code())})
	g := wedge(gusset(t), 3, 8, marks, false)
	assert.Equal(t, []int{0, 7, 6, 5, 4, 3, 0, 2, 1, 12, 11, 10, 0}, numbered(g, 1))
}

// On a right hand the round crosses the palm after the gusset, so that the palm is
// on the left of the chart; a left hand is the mirror image (common practice, no
// source).
func TestAreas(t *testing.T) {
	for _, layout := range []Layout{Wedge, Columns} {
		right := source(gusset(t), 3, 8, nil, false).Grid(Options{View: TubeView, Layout: layout}).Areas()
		left := source(gusset(t), 3, 8, nil, true).Grid(Options{View: TubeView, Layout: layout}).Areas()
		assert.Equal(t, []string{"palm", "gusset", "back"}, areaWords(right), layout)
		assert.Equal(t, []string{"back", "gusset", "palm"}, areaWords(left), layout)
		assert.Equal(t, 4, right[0].To-right[0].From+1, "half of the 8 stitches beside the gusset")
		assert.Equal(t, 4, right[2].To-right[2].From+1)
		assert.Equal(t, right[0].To+1, right[1].From)
		assert.Equal(t, right[1].To+1, right[2].From)
	}
	wide := source(gusset(t), 3, 8, nil, false).Grid(Options{View: TubeView, Layout: Columns}).Areas()
	assert.Equal(t, 7, wide[1].To-wide[1].From+1, "the gusset's columns are its widest round's")
	assert.Empty(t, Grid{}.Areas())
}

func areaWords(list []Area) (words []string) {
	for _, a := range list {
		words = append(words, a.Words)
	}
	return words
}

// Turned to the middle of the back, the tube is cut open beside the gusset or in
// the palm, and every area keeps all of its columns.
func TestAreasOfATurnedTube(t *testing.T) {
	g := source(gusset(t), 3, 8, nil, false).Grid(Options{View: TubeView, Middle: "H6"})
	widths := map[string]int{}
	for _, a := range g.Areas() {
		widths[a.Words] += a.To - a.From + 1
	}
	assert.Equal(t, map[string]int{"palm": 4, "gusset": 5, "back": 4}, widths)
}

// A top begins with the bridge over the thumb, which is the side of the mitt.
func TestABridgeAtTheFootHasNoArea(t *testing.T) {
	row := Row{Section: stitch.Top, lead: 3}
	for i := range 13 {
		row.Cells = append(row.Cells, Cell{X: 12 - i, Op: stitch.Knit})
	}
	assert.Equal(t, []Area{{BackArea, 0, 4}, {PalmArea, 5, 9}}, Grid{Width: 13, Rows: []Row{row}}.Areas())
	row.Section = stitch.Thumb
	assert.Empty(t, Grid{Width: 13, Rows: []Row{row}}.Areas(), "a thumb has no palm")
}
