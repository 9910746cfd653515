package chart

import (
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"thenar/internal/stitch"
)

// small is a whole small mitt: a cuff that grows by one, a gusset on a base of
// three, a hand with a bridge of three and ribbing, a thumb with five held.
func small(t *testing.T) stitch.Mitt {
	t.Helper()
	part := func(p stitch.Part, rounds ...string) stitch.Section {
		s := typed(t, rounds...)
		s.Part = p
		return s
	}
	cuff := part(stitch.Cuff, "k p k p k p k p k p", "k p k p k m1 p k p k p")
	cuff.CastOn = 10
	for i := range cuff.Rounds {
		cuff.Rounds[i].Even = true
	}
	hand := part(stitch.Hand, "hold hold hold hold hold co co co | k k k k k k k k", "k k k | k k k k k k k k", "k p k p k p k p k p k")
	hand.Finish = stitch.Round{Ops: slices.Repeat([]stitch.Op{stitch.BindOff}, 11)}
	thumb := part(stitch.Thumb, "pick pick pick pick | gapk2tog k k k gapssk", "k k k k | k k k k k")
	hand.Rounds[0].Keep(stitch.ThumbSet)
	thumb.From, thumb.Finish = []stitch.Set{stitch.ThumbSet}, stitch.Round{Ops: slices.Repeat([]stitch.Op{stitch.BindOff}, 9)}
	m := stitch.Mitt{Sections: []stitch.Section{
		cuff, part(stitch.Gusset, "k m1l k m1r k | k k k k k k k k", "k k k k k | k k k k k k k k"), hand, thumb,
	}}
	require.Empty(t, stitch.Ledger(m))
	return m
}

func of(t *testing.T, marks Marks, mirrored bool) Source {
	return Source{Mitt: small(t), Base: 3, Marks: marks, Mirrored: mirrored, Rules: Rules{2, 5}}.Prepare()
}

var everyView = []View{GussetView, TubeView, ThumbView, CuffView}

// Every view, in both layouts, turned to any column, on both hands: no two
// cells of a row at one place, every cell of a whole view shown, every round
// adds up, and a column never stands twice in a row.
func TestViews(t *testing.T) {
	for _, mirrored := range []bool{false, true} {
		s := of(t, nil, mirrored)
		assert.Equal(t, everyView, s.Views())
		for _, view := range everyView {
			for _, layout := range []Layout{Wedge, Columns} {
				for _, middle := range []string{"", "H1", "H7", "B2", "C2", "Z1", "P1", "M1", "H99"} {
					g := s.Grid(Options{View: view, Layout: layout, Middle: middle})
					assert.Empty(t, g.Faults())
					for _, row := range g.Rows {
						at, name := map[int]bool{}, map[string]bool{}
						for _, c := range row.Cells {
							require.False(t, name[c.Column], "%s twice", c.Column)
							name[c.Column] = true
							if !c.Shown() {
								require.Equal(t, GussetView, view)
								continue
							}
							require.False(t, at[c.X], "%v %v %q: two cells at %d of %s %d", view, layout, middle, c.X, row.Section, row.Round)
							require.Less(t, c.X, g.Width)
							at[c.X] = true
						}
					}
				}
			}
		}
	}
}

// In columns every column stands upright, and the tube, turned, has the chosen
// one in its middle, with its neighbours beside it.
func TestColumnsStandUprightAndTurn(t *testing.T) {
	s := of(t, nil, false)
	for _, middle := range []string{"", "H4", "B2"} {
		g := s.Grid(Options{View: TubeView, Layout: Columns, Middle: middle})
		x := map[string]int{}
		for _, row := range g.Rows {
			for _, c := range row.Cells {
				if was, ok := x[c.Column]; ok {
					assert.Equal(t, was, c.X, c.Column)
				}
				x[c.Column] = c.X
			}
		}
		assert.Equal(t, 5+3+8, g.Width, "held, bridge and hand each have places of their own")
		if middle != "" {
			assert.InDelta(t, float64(g.Width-1)/2, float64(x[middle]), 0.5)
		}
	}
	wedge := s.Grid(Options{View: TubeView, Layout: Wedge, Middle: "H4"})
	for _, row := range wedge.Rows {
		at := places(row)
		assert.Equal(t, places(wedge.Rows[0])["H4"], at["H4"])
		assert.Equal(t, at["H4"]-1, at["H5"])
	}
	assert.True(t, s.Grid(Options{View: TubeView, Layout: Columns, Middle: ""}).NoStitch())
}

// A mirrored view is the right hand's seen in a mirror; an odd stitch in the
// middle may lie on either side.
func TestEveryViewOfTheLeftHandIsTheMirrorImage(t *testing.T) {
	for _, view := range []View{GussetView, TubeView} {
		right, left := of(t, nil, false).Grid(Options{View: view}), of(t, nil, true).Grid(Options{View: view})
		require.Equal(t, right.Width, left.Width)
		for i := range right.Rows {
			if right.Rows[i].Cells[0].Op == stitch.Hold {
				continue // put aside first on both hands
			}
			for column, x := range places(right.Rows[i]) {
				assert.Equal(t, right.Width-1-x, places(left.Rows[i])[column], "%s %d", column, i)
			}
		}
	}
}

// The hand's own columns are the gusset's: a motif goes on over the division.
func TestFaultsAcrossSections(t *testing.T) {
	marks := Marks{}
	marks.Apply([]Edit{{stitch.Gusset, 2, "H3", Stitches, "k2tog"}, {stitch.Hand, 3, "H1", Stitches, "yo"}})
	assert.Equal(t, []string{
		"gusset, round 2: one stitch short (round 1 leaves 13; it takes 14)", "hand, round 3: one stitch left over (round 2 leaves 11; it takes 10)",
	}, of(t, marks, false).Grid(Options{View: TubeView}).Faults())
	marks.Apply([]Edit{{stitch.Gusset, 2, "H3", Stitches, "kfb"}})
	g := of(t, marks, false).Grid(Options{View: TubeView})
	assert.Equal(t, "round 1 of the hand: one stitch left over (round 2 of the gusset leaves 14; it takes 13)", g.Rows[2].Fault)
}

// A float longer than the rule is found within a round and past its
// beginning, both ways; a yarn that rests a whole round is not carried.
func TestFloats(t *testing.T) {
	colour := func(part stitch.Part, round int, columns, yarn string) []Edit {
		var edits []Edit
		for _, c := range strings.Fields(columns) {
			edits = append(edits, Edit{part, round, c, Colours, yarn})
		}
		return edits
	}
	for name, c := range map[string]struct {
		edits []Edit
		want  []string
	}{
		"within": {colour(stitch.Gusset, 1, "B1 H2 H3 H4 H5 H6 H7 H8", "b"), []string{
			"gusset, round 1: rust is carried over 5 stitches; catch it every 4", "gusset, round 1: main colour is carried over 7 stitches; catch it every 4",
		}},
		"short": {colour(stitch.Gusset, 1, "A1 H1 H5 H8", "b"), []string{}},
		"past the beginning": {
			append(colour(stitch.Gusset, 1, "H3", "b"), colour(stitch.Gusset, 2, "A1 Z1", "b")...),
			[]string{"gusset, round 1: rust is carried over 6 stitches; catch it every 4"},
		},
		"rests": {append(colour(stitch.Gusset, 1, "H3", "b"), colour(stitch.Hand, 1, "H1", "b")...), []string{}},
		"three yarns": {
			append(colour(stitch.Gusset, 2, "B1", "b"), colour(stitch.Gusset, 2, "A1", "c")...),
			[]string{"gusset, round 2: 3 yarns, where 2 are the most"},
		},
	} {
		t.Run(name, func(t *testing.T) {
			marks := Marks{}
			marks.Apply(c.edits)
			s := of(t, marks, false)
			s.Rules.Float = 4
			assert.Equal(t, c.want, s.Grid(Options{View: TubeView}).FloatWords())
		})
	}
}

// One inch at 22 stitches over 4 in is 5.5, so 6 (a published rule of at most
// 1 in gives "about 6" there); a person's own smaller number holds.
func TestFloatRule(t *testing.T) {
	assert.Equal(t, 6, FloatRule(7, 22/101.6))
	assert.Equal(t, 5, FloatRule(5, 22/101.6))
	assert.Equal(t, 3, FloatRule(5, 12/101.6))
}

func TestShares(t *testing.T) {
	marks := Marks{}
	marks.Apply([]Edit{{stitch.Gusset, 2, "B1", Colours, "b"}, {stitch.Gusset, 2, "B2", Colours, "b"}})
	shares := of(t, marks, false).Shares()
	assert.Equal(t, Share{2, 1}, shares["b"], "one stitch of the main colour lies between the two")
	total := 0
	for _, section := range small(t).Sections {
		for _, r := range section.Rounds {
			total += r.Out()
		}
	}
	assert.Equal(t, total-2, shares["a"].Stitches)
}

// Every mark stands in its section, wherever it was painted; Put gives the
// rounds that the ledger reads.
func TestPutEverywhere(t *testing.T) {
	marks := Marks{}
	marks.Apply([]Edit{{stitch.Cuff, 2, "M1", Stitches, "yo"}, {stitch.Hand, 2, "C2", Stitches, "p"}, {stitch.Thumb, 2, "P1", Stitches, "p"}, {stitch.Thumb, 9, "P1", Notes, "?"}})
	s := of(t, marks, false)
	m := s.Put()
	assert.Empty(t, stitch.Ledger(m))
	assert.Equal(t, stitch.YarnOver, m.Section(stitch.Cuff).Rounds[1].Ops[5])
	assert.Equal(t, stitch.Purl, m.Section(stitch.Hand).Rounds[1].Ops[1])
	assert.Equal(t, stitch.Purl, m.Section(stitch.Thumb).Rounds[1].Ops[0])
	assert.Equal(t, []Edit{{stitch.Thumb, 9, "P1", Notes, "?"}}, s.Lost())
	assert.Equal(t, "note “?”", s.Lost()[0].Words(Yarns))
}

// The difference of two states turns one into the other.
func TestDifference(t *testing.T) {
	a, b := Marks{}, Marks{}
	a.Apply([]Edit{paint(1, "B1", Stitches, "p"), paint(1, "B2", Colours, "b"), paint(3, "B2", Notes, "x")})
	b.Apply([]Edit{paint(1, "B1", Stitches, "yo"), paint(1, "B2", Stitches, "p"), paint(3, "B2", Notes, "x")})
	edits := a.Difference(b)
	assert.Len(t, edits, 3)
	a.Apply(edits)
	assert.Equal(t, b, a)
	assert.Empty(t, a.Difference(b))
}
