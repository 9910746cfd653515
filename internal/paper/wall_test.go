package paper

import (
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"thenar/internal/chart"
	"thenar/internal/picture"
	"thenar/internal/testenv"
)

// wallsOf returns options for walls: papers, ways up, print, hands, cells.
func wallsOf() []Options {
	var list []Options
	for _, o := range []Options{{}, {Sideways: true}, {Cell: 15}, {FromLeft: true}, {Large: true}, {Cell: 20, Grey: true}, {Cell: 4}, {Large: true, Sideways: true, FromLeft: true}} {
		for _, size := range Papers() {
			o.Paper = size
			list = append(list, o)
		}
	}
	return list
}

// A wall chart has no cover: every sheet has cells, and the key stands with the last of
// them or behind it. Each stitch is printed once, on the part that its place says, in
// cells of one width; every letter is read back once, and nothing overlaps.
func TestWallFillsItsSheets(t *testing.T) {
	for k, o := range testenv.Some(5, wallsOf()) {
		s := painted(t, k%3, o.FromLeft)
		for _, v := range []chart.View{chart.GussetView, chart.TubeView} {
			what := s.Doc.Name + ", " + string(v) + ", " + o.said()
			w := newWall(s, o, v)
			seen := map[[2]int]int{}
			for _, tile := range w.tiles {
				eachCell(w.g, tile, func(x, y int) { seen[[2]int{x, y}]++ })
			}
			assert.Len(t, seen, w.shown, what)
			for at, n := range seen {
				require.Equal(t, 1, n, "%s: the stitch at %v", what, at)
			}
			pages := Wall(s, o, v)
			found := readPages(t, onPaper(t, pages))
			keys := 0
			for i, p := range pages {
				if i < len(w.tiles) {
					assert.True(t, hasChart(p), "%s: sheet %d", what, i+1)
				}
				if slices.Contains(textsOf(p), "Key") {
					keys++
					assert.GreaterOrEqual(t, i, len(w.tiles)-1, "%s: the key stands with the last part", what)
				}
				everyLetterIsRead(t, p, found[i], what)
				nothingOverlaps(t, p, o, what)
			}
			assert.Equal(t, 1, keys, what)
		}
	}
}

// eachCell calls f for every stitch of a chart in a tile.
func eachCell(g chart.Grid, tile picture.Tile, f func(x, y int)) {
	for y := tile.Foot; y < tile.Head; y++ {
		for _, c := range g.Rows[y].Shown() {
			if c.X >= tile.Left && c.X < tile.Right {
				f(c.X, y)
			}
		}
	}
}

// Cells of the width that is chosen use their sheets as fully as any from 12 to 18 mm,
// by half a millimetre. The sample takes two sheets for its gusset and twelve for its
// hand, where it took seven and thirty-four with a cover and two stitches printed twice
// at each join.
func TestWallCellsUseTheirSheets(t *testing.T) {
	for k, size := range Papers() {
		o := Options{Paper: size, Sideways: k == 1}
		s := painted(t, 1, false)
		chosen := newWall(s, o, chart.GussetView)
		for cell := 12.0; cell <= 18; cell += 0.5 {
			o.Cell = cell
			other := newWall(s, o, chart.GussetView)
			assert.GreaterOrEqual(t, chosen.fill(), other.fill()-1e-9, "%s, %g mm", size.Name, cell)
		}
	}
	s := painted(t, 0, false)
	s.Doc.Name = strings.Repeat("long ", 40)
	assert.Len(t, Wall(s, Usual(), chart.GussetView), 2)
	assert.LessOrEqual(t, len(Wall(s, Usual(), chart.TubeView)), 12)
	assert.InDelta(t, newWall(s, Usual(), chart.GussetView).cell, WallCell(s, Usual(), chart.GussetView), 0)
}
