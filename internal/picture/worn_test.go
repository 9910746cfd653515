package picture

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"thenar/internal/chart"
	"thenar/internal/stitch"
)

// painted returns the charts of an adult's mitt with a rust column up the thumb's side of
// the palm and another up the middle of the back.
func painted(t *testing.T, left bool) (chart.Source, []chart.Edit) {
	t.Helper()
	p := adult(t)
	marks := chart.Marks{}
	var edits []chart.Edit
	for r := 1; r <= len(p.Mitt().Section(stitch.Gusset).Rounds); r++ {
		edits = append(
			edits,
			chart.Edit{Section: stitch.Gusset, Round: r, Column: "H1", Layer: chart.Colours, Value: "b"},
			chart.Edit{Section: stitch.Gusset, Round: r, Column: "H35", Layer: chart.Colours, Value: "c"},
		)
	}
	marks.Apply(edits)
	return chart.Source{Mitt: p.Mitt(), Base: p.Gusset.Base, Marks: marks, Mirrored: left}.Prepare(), edits
}

// An undyed mitt is drawn as before; a painted one wears the colours of its palm, not of
// its back, in the gusset's rounds and beside the gusset, the same on both hands.
func TestTheDrawnHandWearsItsPalm(t *testing.T) {
	p := adult(t)
	bare := chart.Source{Mitt: p.Mitt(), Base: p.Gusset.Base}
	assert.Nil(t, NewWorn(bare.Prepare()))
	bare.Palette = chart.Palette{{ID: "a", Name: "rust", Fill: "#B9562F"}}
	dyed := elements(t, Hand(p, HandOptions{Worn: NewWorn(bare.Prepare())}))
	require.Len(t, having(dyed, "fill", Furrow("#B9562F")), 1, "a dyed mitt is knitted, too, before anything is painted: its purls lie back")
	assert.NotEmpty(t, having(dyed, "stroke", "#B9562F"))
	assert.Empty(t, having(dyed, "class", "ribs"))
	for _, left := range []bool{false, true} {
		s, _ := painted(t, left)
		w := NewWorn(s)
		require.NotNil(t, w)
		f := newFigure(&p.Hand)
		m := newFabric(p, f)
		rust, rounds := 0, m.tubes[2].edges
		m.seen(w, func(s seenStitch) {
			assert.NotEqual(t, "c", s.Yarn, "the back is not seen")
			if s.Yarn != "b" {
				return
			}
			rust++
			assert.Equal(t, stitch.Gusset, s.t.part)
			near := false
			for _, e := range rounds {
				near = near || length(s.lr.plus(e.in.times(-1))) < 1e-6
			}
			assert.True(t, near, "beside the gusset")
		})
		assert.Equal(t, len(p.Mitt().Section(stitch.Gusset).Rounds), rust)

		hand := elements(t, Hand(p, HandOptions{Left: left, Worn: w}))
		fills := map[string]bool{}
		for _, e := range having(hand, "class", "worn") {
			fills[e.attr["fill"]], fills[e.attr["stroke"]] = true, true
		}
		rustFill, _ := chart.Yarns.Named("b")
		assert.True(t, fills[rustFill.Fill] && fills[Furrow(rustFill.Fill)], "as knitting")
		assert.Len(t, having(hand, "class", "worn undyed-furrow"), 1, "undyed yarn has the page's colours, in the dark, too")
		assert.NotEmpty(t, having(hand, "class", "worn undyed-strand"))
		assert.Len(t, having(hand, "class", "worn-edge"), 1)
		assert.Empty(t, having(hand, "class", "cloth"))

		small := elements(t, Small(p, SmallOptions{Left: left, Worn: w}))
		assert.Len(t, having(small, "class", "worn"), 1, "one path for its other yarn, in plain colour")
	}
}

// Worn or not, the drawing has the same size, and its stitches lie within it.
func TestAWornMittKeepsItsPlace(t *testing.T) {
	p := adult(t)
	s, _ := painted(t, false)
	bare, worn := Hand(p, HandOptions{}), Hand(p, HandOptions{Worn: NewWorn(s)})
	assert.InDelta(t, bare.Width, worn.Width, 0.2)
	assert.InDelta(t, bare.Height, worn.Height, 0.2)
	edge := extent(t, having(elements(t, worn), "class", "worn-edge")[0].attr["d"])
	for _, e := range having(elements(t, worn), "class", "worn") {
		if strings.TrimSpace(e.attr["d"]) == "" {
			continue
		}
		a := extent(t, e.attr["d"])
		assert.True(t, a.left >= edge.left-0.1 && a.right <= edge.right+0.1 && a.top >= edge.top-0.1 && a.bottom <= edge.bottom+0.1)
	}
}

// The ribs of a mitt on the shelf are seen on any yarn, knitted or still on the needles.
func TestRibsAreSeenOnDyedCloth(t *testing.T) {
	p := adult(t)
	for _, o := range []SmallOptions{{Yarn: "#5B6B3A"}, {Yarn: "#5B6B3A", Needles: true, Knitted: 30}} {
		list := elements(t, Small(p, o))
		require.Len(t, having(list, "class", "ribs-dyed"), 1)
		assert.Equal(t, Furrow(o.Yarn), having(list, "class", "ribs-dyed")[0].attr["stroke"])
		assert.Empty(t, having(list, "class", "ribs"))
	}
	assert.Len(t, having(elements(t, Small(p, SmallOptions{})), "class", "ribs"), 1, "undyed")
}
