package chart

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"thenar/internal/stitch"
)

// rowsOfTen is a made-up piece of ten stitches: a row of the right side, and one of the
// wrong side that differs from end to end.
func rowsOfTen() stitch.Mitt {
	knit := make([]stitch.Op, 10)
	for i := range knit {
		knit[i] = stitch.Knit
	}
	back := append([]stitch.Op{stitch.Purl}, knit[1:]...)
	return stitch.Mitt{Sections: []stitch.Section{{
		Part: stitch.Hand, CastOn: 10,
		Rounds: []stitch.Round{{Ops: knit, Side: stitch.RightSide}, {Ops: back, Side: stitch.WrongSide}},
		Finish: stitch.Round{Ops: []stitch.Op{stitch.BindOff, stitch.BindOff, stitch.BindOff, stitch.BindOff, stitch.BindOff, stitch.BindOff, stitch.BindOff, stitch.BindOff, stitch.BindOff, stitch.BindOff}},
	}}}
}

// A chart shows the right side: a row stands as it looks there, is numbered and counted
// from the edge where it is begun, and a strand goes to and fro with it. Right-side rows
// are read from the right, wrong-side rows from the left (facts of the trade, in many
// handbooks: flat charts); whoever knits from left to right reads both the other way.
func TestRowsGoToAndFro(t *testing.T) {
	marks := Marks{
		{stitch.Hand, 1, "H2"}: {Colour: "b"}, {stitch.Hand, 2, "H10"}: {Colour: "b"}, {stitch.Hand, 2, "H9"}: {Stitch: "m1l"},
	}
	s := Source{Mitt: rowsOfTen(), Marks: marks, Rules: Rules{Float: 5}}.Prepare()
	g := s.Grid(Options{View: TubeView, Layout: Columns})
	right, wrong := g.Rows[0], g.Rows[1]
	assert.Equal(t, 9, g.Width-1)
	assert.False(t, g.BeginsLeft(right))
	assert.True(t, g.BeginsLeft(wrong))
	assert.Equal(t, 1, right.Numbers()[9])
	assert.Equal(t, 1, wrong.Numbers()[0], "counted from the left")
	first, _ := wrong.First()
	assert.Equal(t, "H10", first.Column)
	require.Len(t, g.Floats, 1)
	assert.Equal(t, 8, g.Floats[0].Length, "from the second stitch on to the end of the row, where it is turned")
	assert.Equal(t, []stitch.Op{stitch.Knit, stitch.Purl, stitch.M1L}, g.UsedBehind())
	assert.Equal(t, "row", g.Noun())
	assert.Equal(t, "row 2: one stitch left over (row 1 leaves 10; it takes 9)", wrong.Fault)
	var b strings.Builder
	require.NoError(t, CSV(&b, g))
	assert.Equal(t, "k/cream,M1L,k,k,k,k,k,k,k,p,2 wrong side\r\nk,k,k,k,k,k,k,k,k/cream,k,1 right side\r\n", strings.ReplaceAll(b.String(), "/"+s.Palette.Or("b").Name, "/cream"))
	s.FromLeft = true
	g = s.Prepare().Grid(Options{View: TubeView, Layout: Wedge})
	assert.True(t, g.BeginsLeft(g.Rows[0]))
	assert.False(t, g.BeginsLeft(g.Rows[1]))
	assert.Equal(t, "right side", g.Page().Rows[0].Side)
}
