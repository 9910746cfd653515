package chart

import (
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"

	"thenar/internal/stitch"
)

// flat is an invented gusset in rows: a back of five, a base of three, a palm of four,
// and the seam's edges; "|" stands on both sides of the gusset.
func flat(t *testing.T) stitch.Section {
	t.Helper()
	s := typed(t, "k k k k k k k m1l k m1r k k k k k k", "k k k k k k k k k k k k k k k k", "k k k k k k k m1l k k k m1r k k k k k k")
	s.Seam = 1
	for i := range s.Rounds {
		r := &s.Rounds[i]
		r.Before, r.Lead, r.Side = 6, len(r.Ops)-11, stitch.RightSide+stitch.Side(i%2)
	}
	return s
}

// A gusset inside a row lies on the chart as one that begins a round: with the hand's
// nearest columns at both sides, in both layouts, and in mirror on the other hand.
func TestTheGussetStandsInsideARow(t *testing.T) {
	for _, layout := range []Layout{Wedge, Columns} {
		for _, view := range []View{GussetView, TubeView} {
			right := source(flat(t), 3, 18, nil, false).Grid(Options{View: view, Layout: layout})
			left := source(flat(t), 3, 18, nil, true).Grid(Options{View: view, Layout: layout})
			rows := right.Rows[:3]
			for i, row := range rows {
				assert.Empty(t, row.Fault)
				want := places(row)
				for column, x := range want {
					want[column] = right.Width - 1 - x
				}
				assert.Equal(t, want, places(left.Rows[i]), "%s, %s, row %d", view, layout, i+1)
			}
			shown := make([]string, 0, len(rows[2].Cells))
			for _, c := range rows[2].Shown() {
				shown = append(shown, c.Column)
			}
			want := "H3 H2 H1 B3 Z2 Z1 B2 A1 A2 B1 H9 H8 H7"
			if view == TubeView {
				want = "S2 H4 H3 H2 H1 B3 Z2 Z1 B2 A1 A2 B1 H9 H8 H7 H6 H5 S1"
			}
			assert.Equal(t, want, strings.Join(shown, " "), "%s, %s", view, layout)
		}
	}
}

// The middle of the base keeps its place, the back lies at one side of it and the palm
// at the other, and a piece with a seam can't be turned.
func TestAreasOfARow(t *testing.T) {
	for mirrored, want := range map[bool][]string{false: {PalmArea, GussetArea, BackArea}, true: {BackArea, GussetArea, PalmArea}} {
		s := source(flat(t), 3, 18, nil, mirrored)
		g := s.Grid(Options{View: TubeView, Middle: "H2"})
		assert.Empty(t, g.Middle)
		assert.Equal(t, want, areaWords(g.Areas()))
		counts := map[string]int{}
		for _, a := range g.areasOf(g.Rows[0]) {
			counts[a.Words] += a.Count
		}
		assert.Equal(t, map[string]int{PalmArea: 5, GussetArea: 5, BackArea: 6}, counts)
		assert.Equal(t, places(g.Rows[0])["B2"], places(g.Rows[2])["B2"])
	}
}

// The drawn palm has the gusset's nearer half and the palm, without the seam.
func TestPalmOfRows(t *testing.T) {
	marks := Marks{
		{stitch.Gusset, 2, "H1"}: {Stitch: "p"}, {stitch.Gusset, 2, "H4"}: {Stitch: "p"},
		{stitch.Gusset, 2, "H5"}: {Stitch: "p"}, {stitch.Gusset, 2, "S2"}: {Stitch: "p"},
	}
	seen := source(flat(t), 3, 18, marks, false).Palm()[stitch.Gusset][1]
	purls := make([]bool, 0, len(seen.Hand))
	for _, c := range seen.Hand {
		purls = append(purls, c.Purl)
	}
	assert.Equal(t, []bool{true, false, false, true}, purls, "of 9 stitches 4 are the palm's")
	assert.Len(t, seen.Gusset, 3)
}

// Below a thumb on waste yarn, of 11 stitches 5 are the palm's and 6 the back's; the thumb
// lies 1 stitch onto the palm, so the drawn palm begins 7 stitches after the seam's edge.
func TestPalmOfRowsWithoutAGusset(t *testing.T) {
	s := flat(t)
	s.Part, s.About.Palm, s.About.Inset = stitch.BelowThumb, true, 1
	s.Rounds = s.Rounds[:1]
	s.Rounds[0].Ops = slices.Repeat([]stitch.Op{stitch.Knit}, 13)
	s.Rounds[0].Before, s.Rounds[0].Lead = 8, 2
	for mirrored, want := range map[bool][]string{false: {PalmArea, BackArea}, true: {BackArea, PalmArea}} {
		g := source(s, 2, 13, nil, mirrored).Grid(Options{View: TubeView})
		areas := g.Areas()
		assert.Equal(t, want, areaWords(areas))
		wide := map[string]int{}
		for _, a := range areas {
			wide[a.Words] = a.To - a.From + 1
		}
		assert.Equal(t, map[string]int{PalmArea: 6, BackArea: 7}, wide, "with an edge each")
	}
	marks := Marks{{stitch.BelowThumb, 1, "H1"}: {Stitch: "p"}, {stitch.BelowThumb, 1, "H5"}: {Stitch: "p"}, {stitch.BelowThumb, 1, "H11"}: {Stitch: "p"}}
	seen := source(s, 2, 13, marks, false).Palm()[stitch.BelowThumb][0]
	assert.Len(t, seen.Hand, 4)
	assert.True(t, seen.Hand[0].Purl && !seen.Hand[1].Purl)
	assert.Len(t, seen.Gusset, 1)
	assert.True(t, seen.Gusset[0].Purl, "the stitch of the palm beside the thumb")
}

// With the seam on the thumb's side a right hand's rows begin with the palm, and so does
// the drawn palm.
func TestAreasOfARowThatBeginsAtTheThumb(t *testing.T) {
	s := flat(t)
	s.Part, s.About.Ends = stitch.Opening, 2
	s.Rounds = s.Rounds[:1]
	s.Rounds[0] = stitch.Round{Ops: slices.Repeat([]stitch.Op{stitch.Knit}, 12), Even: true, Side: stitch.RightSide}
	for mirrored, want := range map[bool][]string{false: {BackArea, PalmArea}, true: {PalmArea, BackArea}} {
		assert.Equal(t, want, areaWords(source(s, 0, 12, nil, mirrored).Grid(Options{View: TubeView}).Areas()), "from the left")
	}
	marks := Marks{{stitch.Opening, 1, "H1"}: {Stitch: "p"}, {stitch.Opening, 1, "H6"}: {Stitch: "p"}, {stitch.Opening, 1, "S1"}: {Stitch: "p"}}
	seen := source(s, 0, 12, marks, false).Palm()[stitch.Opening][0]
	purls := make([]bool, 0, len(seen.Hand))
	for _, c := range seen.Hand {
		purls = append(purls, c.Purl)
	}
	assert.Equal(t, []bool{true, false, false, false, false}, purls)
}
