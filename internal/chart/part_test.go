package chart

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"thenar/internal/stitch"
)

// Who works a left mitt's rounds as in a mirror knits the right one: so the
// chart for the right hand that is read from left to right is the left hand's
// as in a mirror, and on it lies what lies on the right hand's own chart.
func TestFromLeftIsTheSameFabric(t *testing.T) {
	for _, view := range everyView {
		for _, left := range []bool{false, true} {
			own, other := of(t, nil, left), of(t, nil, !left)
			other.FromLeft = true
			g, turned := own.Grid(Options{View: view}), other.Grid(Options{View: view})
			require.Len(t, turned.Rows, len(g.Rows))
			assert.Equal(t, g.Width, turned.Width)
			for i, row := range turned.Rows {
				at := map[int]Cell{}
				for _, c := range g.Rows[i].Shown() {
					at[c.X] = c
				}
				worked := -1
				for _, c := range row.Cells {
					if !c.Shown() {
						continue
					}
					if c.Column != "" && c.Column[0] != 'H' && c.Column[0] != 'M' { // the hand's cells go on at the other edge
						assert.Greater(t, c.X, worked, "cells stand in the order worked, from left to right")
						worked = c.X
					}
					if view == GussetView {
						assert.Equal(t, at[c.X].Column, c.Column, "%s %d", view, i)
						assert.Equal(t, at[c.X].Op.In(), c.Op.In())
						assert.Equal(t, at[c.X].Op, lies(c.Op), "round %d, column %d", i+1, c.X)
					}
				}
			}
			assert.Equal(t, 1, turned.Number(0))
			assert.Equal(t, 1, g.Number(g.Width-1))
		}
	}
}

// lies is the operation that looks alike when an ordinary hand works it.
func lies(op stitch.Op) stitch.Op { return op.Twin() }

// However a chart is divided, every cell stands on a part, under its number,
// beside its round, and says what it says in the whole.
func TestPartsAreTheWhole(t *testing.T) {
	for _, fromLeft := range []bool{false, true} {
		s := of(t, Marks{}, false)
		s.FromLeft = fromLeft
		for _, view := range everyView {
			g := s.Grid(Options{View: view})
			type place struct{ round, number int }
			whole := map[place]Cell{}
			for i, row := range g.Rows {
				for _, c := range row.Shown() {
					whole[place{i, g.Number(c.X)}] = c
				}
			}
			seen := map[place]bool{}
			for foot := 0; foot < len(g.Rows); foot++ {
				for left := 0; left < g.Width; left += 3 {
					part := g.Part(left, left+5, foot, foot+2)
					for i, row := range part.Rows {
						assert.Equal(t, g.Rows[foot+i].Round, row.Round)
						assert.Equal(t, g.Rows[foot+i].Out, row.Out)
						for _, c := range row.Shown() {
							at := place{foot + i, part.Number(c.X)}
							require.Less(t, c.X, part.Width)
							assert.Equal(t, whole[at].Column, c.Column)
							assert.Equal(t, whole[at].Op, c.Op)
							seen[at] = true
						}
					}
				}
			}
			assert.Len(t, seen, len(whole), "%s", view)
		}
	}
}

// A float is drawn on a part that has both its ends, on others it is not.
func TestFloatsOfAPart(t *testing.T) {
	marks := Marks{}
	marks.Apply([]Edit{{Section: stitch.Hand, Round: 2, Column: "H1", Layer: Colours, Value: "b"}, {Section: stitch.Hand, Round: 2, Column: "H8", Layer: Colours, Value: "b"}})
	g := of(t, marks, false).Grid(Options{View: TubeView})
	require.NotEmpty(t, g.Floats)
	whole := g.Part(0, g.Width, 0, len(g.Rows))
	assert.Equal(t, g.Floats, whole.Floats)
	assert.Empty(t, g.Part(0, g.Width, 0, 1).Floats)
	high := g.Part(0, g.Width, g.Floats[0].Row, len(g.Rows))
	require.NotEmpty(t, high.Floats)
	assert.Zero(t, high.Floats[0].Row)
}

// The rows about a round stand where they stand in the whole chart, which keeps
// its own.
func TestAroundKeepsPlaces(t *testing.T) {
	g := of(t, nil, false).Grid(Options{View: ViewOf(stitch.Hand)})
	part := g.Around(3, 5)
	require.Len(t, part.Rows, len(g.Rows))
	assert.Equal(t, g.Width, part.Width)
	for i, row := range part.Rows {
		assert.Equal(t, g.Rows[i].Round, row.Round)
		assert.Equal(t, g.Rows[i].Section, row.Section)
		if i+1 < 3 || i+1 > 5 {
			assert.Empty(t, row.Shown())
			assert.NotEmpty(t, g.Rows[i].Shown())
		} else {
			assert.Equal(t, g.Rows[i].Shown(), row.Shown())
		}
	}
}
