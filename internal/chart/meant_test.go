package chart

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"thenar/internal/stitch"
)

// far paints the hand's first stitch and its last in two rounds, each in a yarn of its own:
// six stitches lie between.
func far() Marks {
	marks := Marks{}
	marks.Apply([]Edit{paint(1, "H1", Colours, "b"), paint(1, "H8", Colours, "b"), paint(2, "H1", Colours, "c"), paint(2, "H8", Colours, "c")})
	return marks
}

// A strand that is meant is neither to be looked at nor to be caught, on both hands, from
// one mark: the stitch before it on one hand is the one after it on the other. Taken back, it is told as before. It has to be as long and of that yarn: one
// that has become longer, or is of another yarn, is told.
func TestAMeantStrand(t *testing.T) {
	for _, left := range []bool{false, true} {
		see := func(marks Marks) (Grid, int) {
			s := of(t, marks, left)
			n := 0
			for _, list := range s.Catches()[stitch.Gusset] {
				n += len(list)
			}
			return s.Grid(Options{View: TubeView}), n
		}
		marks := far()
		g, caught := see(marks)
		require.Len(t, g.Floats, 2, "left: %t", left)
		require.Equal(t, len(g.Floats), caught, "all within a round")
		f := g.Floats[0]
		require.Equal(t, "b", f.Yarn)
		require.Equal(t, 6, f.Length)
		at := g.meantAt(f)
		assert.Equal(t, Anchor{stitch.Gusset, 1, "H1"}, at, "on both hands")
		mean := func(value string) []Edit {
			return marks.Apply([]Edit{{at.Section, at.Round, at.Column, Strands, value}})
		}
		before := len(g.Floats)

		back := mean("b6")
		g, now := see(marks)
		assert.Equal(t, []Float{f}, g.Meant)
		assert.Len(t, g.Floats, before-1)
		assert.Equal(t, caught-1, now)
		assert.Len(t, g.FloatWords(), before-1)
		for _, row := range g.Rows {
			for _, c := range row.Cells {
				assert.Equal(t, c.Painted, c.Yarn != ID(0), "the mark of a strand shows on no stitch")
			}
		}
		marks.Apply(back)
		assert.Equal(t, far().Edits(), marks.Edits())

		for value, meant := range map[string]bool{"b5": false, "c6": false, "b9": true, "": false} {
			mean(value)
			g, _ = see(marks)
			assert.Equal(t, meant, len(g.Meant) == 1, value)
			assert.Equal(t, before, len(g.Floats)+len(g.Meant))
		}
	}
}

// In a row, the strand that is turned at its end is marked where the right hand has come
// from; on a wrong-side row, from its left.
func TestAMeantStrandInRows(t *testing.T) {
	marks := Marks{{stitch.Hand, 1, "H2"}: {Colour: "b"}, {stitch.Hand, 2, "H10"}: {Colour: "b"}, {stitch.Hand, 2, "H3"}: {Colour: "b"}}
	s := Source{Mitt: rowsOfTen(), Marks: marks, Rules: Rules{Float: 5}}.Prepare()
	g := s.Grid(Options{View: TubeView})
	require.Len(t, g.Floats, 2)
	assert.Equal(t, Anchor{stitch.Hand, 1, "H2"}, g.meantAt(g.Floats[0]))
	assert.Equal(t, Anchor{stitch.Hand, 2, "H10"}, g.meantAt(g.Floats[1]))
	marks.Apply([]Edit{{stitch.Hand, 2, "H10", Strands, "b6"}})
	g = s.Grid(Options{View: TubeView})
	assert.Len(t, g.Floats, 1)
	assert.Len(t, g.Meant, 1)
}

func TestCheckOfAMeantStrand(t *testing.T) {
	for value, fine := range map[string]bool{"": true, "b7": true, "h999": true, "meant": false, "i7": false, "b0": false, "b1000": false, "b7 ": false} {
		err := Check([]Edit{paint(1, "B1", Strands, value)})
		assert.Equal(t, fine, err == nil, "%q: %v", value, err)
	}
	assert.Error(t, Check([]Edit{paint(1, "", Strands, "b7")}), "a whole round has none")
}
