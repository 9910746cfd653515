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

// In rows the gusset stands inside; the palm's columns are counted from it, then the
// back's, as in the round, and the seam's edges have a family of their own. The other
// hand has the same columns from the other edge.
func TestColumnsOfRows(t *testing.T) {
	m := open(t)
	require.Empty(t, stitch.Ledger(m))
	for _, c := range []struct {
		part stitch.Part
		row  int
		want string
	}{
		{stitch.Cuff, 0, "S1 H1 H2 H3 H4 H5 H6 H7 H8 S2"},
		{stitch.Gusset, 0, "S1 H3 H4 H5 B1 A1 B2 Z1 B3 H1 H2 S2"},
		{stitch.Gusset, 1, "S1 H3 H4 H5 B1 A1 B2 Z1 B3 H1 H2 S2"},
		{stitch.Hand, 0, "S1 H3 H4 H5 B1 A1 B2 Z1 B3 C1 C2 H1 H2 S2"},
		{stitch.Hand, 1, "S1 H3 H4 H5 C1 C2 H1 H2 S2"},
		{stitch.Thumb, 0, "S1 P1 B1 A1 B2 Z1 B3 P2 S2"},
		{stitch.Thumb, 1, "S1 P1 B1 A1 B2 Z1 B3 P2 S2"},
	} {
		right, left := Mitt(m, 3)[c.part][c.row], Mirror(m, 3)[c.part][c.row]
		assert.Equal(t, c.want, strings.Join(right, " "), "%s %d", c.part, c.row+1)
		r := m.Section(c.part).Rounds[c.row]
		for j, from := range r.MirrorOrder() {
			assert.Equal(t, right[from], left[j], "%s %d", c.part, c.row+1)
		}
	}
}
