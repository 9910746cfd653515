package stitch_test

import (
	"slices"
	"testing"

	"github.com/google/go-cmp/cmp"
	"github.com/stretchr/testify/assert"

	"thenar/internal/stitch"
)

// fromTheTip is a made-up mitt of twelve stitches, worked from the fingertips: the thumb
// first, of seven stitches, of which four come into the hand's last round and three wait
// with three of the hand's for the end.
func fromTheTip() stitch.Mitt {
	waits := stitch.Round{Ops: ops(7, stitch.Hold), Lead: 3, Aside: slices.Concat(slices.Repeat([]stitch.Set{stitch.GapOfThumb}, 3), slices.Repeat([]stitch.Set{stitch.ThumbSet}, 4))}
	joins := stitch.Round{Ops: join(ops(3, stitch.Hold), ops(4, stitch.Take), ops(9, stitch.Knit)), Lead: 7}
	joins.Keep(stitch.GapOfHand)
	joins.Bring(stitch.ThumbSet)
	plain := stitch.Round{Ops: ops(12, stitch.Knit), Lead: 3}
	narrow := stitch.Round{Ops: join(ops(1, stitch.SSK), ops(1, stitch.K2tog), ops(9, stitch.Knit)), Lead: 2}
	return stitch.Mitt{Sections: []stitch.Section{
		{Part: stitch.Thumb, Down: true, CastOn: 7, Rounds: []stitch.Round{{Ops: ops(7, stitch.Knit), Lead: 3}}, Finish: waits, About: stitch.About{Tip: true}},
		{Part: stitch.Hand, Down: true, CastOn: 12, Rounds: []stitch.Round{plain, joins}},
		{Part: stitch.Gusset, Down: true, Rounds: []stitch.Round{narrow}, Finish: stitch.Round{Ops: ops(11, stitch.BindOff)}},
		{Part: stitch.Gap, Rounds: []stitch.Round{}, From: []stitch.Set{stitch.GapOfThumb, stitch.GapOfHand}, Finish: stitch.Round{Ops: ops(6, stitch.Graft)}},
	}}
}

// Stitches that were kept aside come into the middle of a round, each once; on the other
// hand as well, where the others are put aside before them, too.
func TestStitchesComeIntoARound(t *testing.T) {
	m := fromTheTip()
	assert.Empty(t, said(m))
	left := stitch.Mirror(m)
	assert.Empty(t, said(left))
	assert.Empty(t, cmp.Diff(m, stitch.Mirror(left)))
	joins := left.Sections[1].Rounds[1]
	assert.Equal(t, m.Sections[1].Rounds[1].Ops, joins.Ops)
	assert.Equal(t, stitch.ThumbSet, joins.SetAt(3))

	m.Sections[1].Rounds[1].Ops = join(ops(3, stitch.Hold), ops(3, stitch.Take), ops(9, stitch.Knit))
	assert.Equal(t, []string{
		"gusset, round 1: one stitch short (12 on the needles; it takes 13)",
		"1 stitch held for the thumb never comes back",
	}, said(m))
	m = fromTheTip()
	m.Sections[1].Rounds[1].Ops = join(ops(3, stitch.Hold), ops(5, stitch.Take), ops(9, stitch.Knit))
	m.Sections[1].Rounds[1].Bring(stitch.ThumbSet)
	assert.Equal(t, []string{
		"hand, round 2: takes in a stitch held for the thumb, but none is left there",
		"gusset, round 1: one stitch left over (14 on the needles; it takes 13)",
	}, said(m))
}

// A mitt from the tip lies on the hand the other way about: its sections from the last
// worked up, the thumb after them, and each round the other way up.
func TestHowAMittLies(t *testing.T) {
	m := fromTheTip()
	assert.True(t, m.Down())
	var parts []stitch.Part
	for _, s := range m.Upward() {
		parts = append(parts, s.Part)
	}
	assert.Equal(t, []stitch.Part{stitch.Gusset, stitch.Hand, stitch.Thumb}, parts)
	assert.Equal(t, []int{3, 4, 3}, m.SetAside(), "a yarn for each set")
	hand := m.Section(stitch.Hand)
	assert.Equal(t, []int{2, 1}, []int{hand.Lies(1), hand.Lies(2)})
	assert.Equal(t, []int{12, 13}, []int{hand.Above(2), hand.Below(2)})
	assert.Equal(t, stitch.ThumbSet, m.Section(stitch.Thumb).Joins())
	assert.True(t, m.Section(stitch.Thumb).Closed())

	up := twoSets()
	assert.False(t, up.Down())
	assert.Equal(t, 2, up.Section(stitch.Hand).Lies(2))
	assert.Equal(t, []int{8, 12}, []int{up.Section(stitch.Hand).Above(2), up.Section(stitch.Hand).Below(2)})
	assert.Equal(t, stitch.ThumbSet, up.Section(stitch.Thumb).Joins())

	assert.Equal(t, 1, stitch.Order(stitch.Thumb, true))
	assert.Equal(t, 2, stitch.Order(stitch.Top, true))
	assert.Equal(t, 8, stitch.Order(stitch.Cuff, true))
	for _, p := range []stitch.Part{stitch.Little, stitch.UpperHand, stitch.Index} {
		assert.Equal(t, 0, stitch.Order(p, true), "%s is never worked so", p)
	}
	for _, p := range stitch.Parts() {
		assert.Equal(t, p.Order(), stitch.Order(p, false))
	}
}
