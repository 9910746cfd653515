package wale

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"thenar/internal/stitch"
)

// flat turns rounds written as codes, with "|" on both sides of the leading block, into
// the rows of a piece with a seam.
func flat(t *testing.T, part stitch.Part, rows ...string) stitch.Section {
	t.Helper()
	s := stitch.Section{Part: part, Seam: 1}
	for i, text := range rows {
		before, rest, inside := strings.Cut(text, "|")
		lead, after, _ := strings.Cut(rest, "|")
		r := section(t, before+lead+after).Rounds[0]
		if r.Side = stitch.RightSide + stitch.Side(i%2); inside {
			r.Before, r.Lead = len(strings.Fields(before)), len(strings.Fields(lead))
		}
		s.Rounds = append(s.Rounds, r)
	}
	return s
}

// open is an invented mitt of a back of three and a palm of two, with a seam.
func open(t *testing.T) stitch.Mitt {
	t.Helper()
	cuff := flat(t, stitch.Cuff, "k k k k k k k k k k")
	g := flat(t, stitch.Gusset, "k k k k | k m1l k m1r k | k k k", "k k k k | k k k k k | k k k")
	hand := flat(t, stitch.Hand, "k k k k | hold hold hold hold hold co co | k k k", "k k k k | k k | k k k")
	hand.Rounds[0].Keep(stitch.ThumbSet)
	hand.Finish = stitch.Round{Ops: section(t, "bo bo bo bo bo bo bo bo bo").Rounds[0].Ops}
	thumb := flat(t, stitch.Thumb, "pick pick | gapk2tog k k k gapssk | pick pick", "k k | k k k k k | k k")
	thumb.From = []stitch.Set{stitch.ThumbSet}
	thumb.Finish = hand.Finish
	cuff.CastOn = 10
	return stitch.Mitt{Sections: []stitch.Section{cuff, g, hand, thumb}}
}

// columns are those of a row of a part, counted from 0.
type columns struct {
	part stitch.Part
	row  int
	want string
}

// checkColumns compares the columns of rows of a sound mitt; the other hand has the same
// from the other edge.
func checkColumns(t *testing.T, m stitch.Mitt, list []columns) {
	t.Helper()
	require.Empty(t, stitch.Ledger(m))
	for _, c := range list {
		right, left := Mitt(m, 3)[c.part][c.row], Mirror(m, 3)[c.part][c.row]
		assert.Equal(t, c.want, strings.Join(right, " "), "%s %d", c.part, c.row+1)
		r := m.Section(c.part).Rounds[c.row]
		for j, from := range r.MirrorOrder() {
			assert.Equal(t, right[from], left[j], "%s %d", c.part, c.row+1)
		}
	}
}

// In rows the gusset stands inside; the palm's columns are counted from it, then the
// back's, as in the round, and the seam's edges have a family of their own. The other
// hand has the same columns from the other edge.
func TestColumnsOfRows(t *testing.T) {
	m := open(t)
	checkColumns(t, m, []columns{
		{stitch.Cuff, 0, "S1 H1 H2 H3 H4 H5 H6 H7 H8 S2"},
		{stitch.Gusset, 0, "S1 H3 H4 H5 B1 A1 B2 Z1 B3 H1 H2 S2"},
		{stitch.Gusset, 1, "S1 H3 H4 H5 B1 A1 B2 Z1 B3 H1 H2 S2"},
		{stitch.Hand, 0, "S1 H3 H4 H5 B1 A1 B2 Z1 B3 C1 C2 H1 H2 S2"},
		{stitch.Hand, 1, "S1 H3 H4 H5 C1 C2 H1 H2 S2"},
		{stitch.Thumb, 0, "S1 P1 B1 A1 B2 Z1 B3 P2 S2"},
		{stitch.Thumb, 1, "S1 P1 B1 A1 B2 Z1 B3 P2 S2"},
	})
}

// fromTheTip is an invented mitt in rows from the fingertips: a palm of two, a thumb of five
// beside which three wait for the gap, two at its one edge, and a back of three.
func fromTheTip(t *testing.T) stitch.Mitt {
	t.Helper()
	thumb := flat(t, stitch.Thumb, "k k k k k k k k k k", "k k k k k k k k k k")
	thumb.Finish = section(t, "bo hold hold hold hold hold hold hold hold bo").Rounds[0]
	thumb.Finish.Aside = []stitch.Set{"", stitch.GapOfThumb, stitch.GapOfThumb, stitch.ThumbSet, stitch.ThumbSet, stitch.ThumbSet, stitch.ThumbSet, stitch.ThumbSet, stitch.GapOfThumb, ""}
	hand := flat(t, stitch.Hand, "k k k | k k k | k k k k", "k k k | k k k | k k k k",
		"k k k | hold hold hold take take take take take | k k k k", "k k k | k k k k k | k k k k")
	hand.Rounds[2].Keep(stitch.GapOfHand)
	hand.Rounds[2].Bring(stitch.ThumbSet)
	g := flat(t, stitch.Gusset, "k k k | k s2kp k | k k k k", "k k k | k k k | k k k k")
	cuff := flat(t, stitch.Cuff, "k k k k k k k k k k", "k k k k k k k k k k")
	cuff.Finish = section(t, "bo bo bo bo bo bo bo bo bo bo").Rounds[0]
	thumb.CastOn, hand.CastOn = 10, 10
	m := stitch.Mitt{Sections: []stitch.Section{thumb, hand, g, cuff, {
		Part: stitch.Gap, From: []stitch.Set{stitch.GapOfThumb, stitch.GapOfHand}, Finish: section(t, "graft graft graft graft graft graft").Rounds[0],
	}}}
	for i := range 4 {
		m.Sections[i].Down = true
	}
	return m
}

// From the fingertips, too, the gusset stands inside the rows, and its columns have the
// names that they have from the cuff; what waits for the gap stands at both edges of the
// thumb, beside its seam. The other hand has the same columns from the other edge.
func TestColumnsOfRowsFromTheTip(t *testing.T) {
	m := fromTheTip(t)
	checkColumns(t, m, []columns{
		{stitch.Thumb, 1, "S1 P2 P3 B1 A1 B2 Z1 B3 P1 S2"},
		{stitch.Hand, 0, "S1 H4 H5 C1 C2 C3 H1 H2 H3 S2"},
		{stitch.Hand, 2, "S1 H4 H5 C1 C2 C3 B1 A1 B2 Z1 B3 H1 H2 H3 S2"},
		{stitch.Hand, 3, "S1 H4 H5 B1 A1 B2 Z1 B3 H1 H2 H3 S2"},
		{stitch.Gusset, 0, "S1 H4 H5 B1 B2 B3 H1 H2 H3 S2"},
		{stitch.Gusset, 1, "S1 H4 H5 B1 B2 B3 H1 H2 H3 S2"},
		{stitch.Cuff, 0, "S1 H1 H2 H3 H4 H5 H6 H7 H8 S2"},
	})
}
