package stitch_test

import (
	"math/rand/v2"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"thenar/internal/stitch"
)

func TestTableIsClosed(t *testing.T) {
	codes := map[string]bool{}
	for _, o := range stitch.All() {
		assert.True(t, o.Valid())
		assert.Equal(t, o, o.Twin().Twin(), "twin of the twin of %s", o)
		assert.Equal(t, o.In(), o.Twin().In(), "%s and its twin eat alike", o)
		assert.Equal(t, o.Out(), o.Twin().Out(), "%s and its twin make alike", o)
		assert.NotEmpty(t, o.Words())
		assert.False(t, codes[o.Code()], "code %s stands twice", o.Code())
		codes[o.Code()] = true
		back, ok := stitch.ByCode(o.Code())
		assert.True(t, ok)
		assert.Equal(t, o, back)
	}
	_, ok := stitch.ByCode("nonsense")
	assert.False(t, ok)
}

// What a stitch eats and makes, after how the Craft Yarn Council's list says
// it is worked (from memory).
func TestLoops(t *testing.T) {
	for o, want := range map[stitch.Op][2]int{
		stitch.Knit: {1, 1}, stitch.M1L: {0, 1}, stitch.YarnOver: {0, 1}, stitch.KFB: {1, 2},
		stitch.K2tog: {2, 1}, stitch.SSP: {2, 1}, stitch.S2KP: {3, 1}, stitch.BindOff: {1, 0},
		stitch.Hold: {1, 0}, stitch.PickUp: {0, 1}, stitch.GapK2tog: {1, 1}, stitch.Marker: {0, 0},
	} {
		assert.Equal(t, want, [2]int{o.In(), o.Out()}, "%s", o)
	}
}

func ops(n int, o stitch.Op) []stitch.Op {
	out := make([]stitch.Op, n)
	for i := range out {
		out[i] = o
	}
	return out
}

func join(parts ...[]stitch.Op) []stitch.Op {
	var out []stitch.Op
	for _, p := range parts {
		out = append(out, p...)
	}
	return out
}

// A stitch lies with its purl side out where its own words say that it is purled.
func TestPurled(t *testing.T) {
	for _, o := range stitch.All() {
		said := strings.Contains(strings.ReplaceAll(o.Words(), "purlwise", ""), "purl")
		assert.Equal(t, said, o.Purled(), o.Words())
	}
}

// small is a mitt of ten stitches: one increase round, three stitches held,
// one cast on over the gap, a thumb of five.
func small() stitch.Mitt {
	division := stitch.Round{Lead: 4, Ops: join(ops(3, stitch.Hold), ops(1, stitch.CastOn), ops(9, stitch.Knit))}
	division.Keep(stitch.ThumbSet)
	return stitch.Mitt{Sections: []stitch.Section{
		{Part: stitch.Cuff, CastOn: 10, Rounds: []stitch.Round{{Ops: ops(10, stitch.Knit)}}},
		{Part: stitch.Gusset, Rounds: []stitch.Round{
			{Lead: 3, Ops: join([]stitch.Op{stitch.M1L, stitch.Knit, stitch.M1R}, ops(9, stitch.Knit))},
		}},
		{Part: stitch.Hand, Rounds: []stitch.Round{division}, Finish: stitch.Round{Ops: ops(10, stitch.BindOff)}},
		{Part: stitch.Thumb, From: []stitch.Set{stitch.ThumbSet}, Rounds: []stitch.Round{
			{Lead: 2, Ops: join(ops(2, stitch.PickUp), []stitch.Op{stitch.GapK2tog, stitch.Knit, stitch.GapSSK})},
		}, Finish: stitch.Round{Ops: ops(5, stitch.BindOff)}},
	}}
}

func TestLedgerSound(t *testing.T) {
	assert.Empty(t, stitch.Ledger(small()))
	assert.Empty(t, stitch.Ledger(stitch.Mirror(small())))
}

func TestLedgerFinds(t *testing.T) {
	cases := []struct {
		name  string
		spoil func(*stitch.Mitt)
		want  string
	}{
		{"a round too greedy", func(m *stitch.Mitt) { m.Sections[0].Rounds[0].Ops[0] = stitch.K2tog }, "cuff, round 1: one stitch short (10 on the needles; it takes 11)"},
		{"held stitches lost", func(m *stitch.Mitt) { m.Sections = m.Sections[:3] }, "3 stitches held for the thumb never come back"},
		{"held stitches twice", func(m *stitch.Mitt) { m.Sections = append(m.Sections, m.Sections[3]) }, "the stitches held for the thumb are taken up twice"},
		{"stitches left over", func(m *stitch.Mitt) { m.Sections[3].Finish = stitch.Round{} }, "5 stitches are left on the needles at the end"},
		{"hand not ended", func(m *stitch.Mitt) { m.Sections[2].Finish = stitch.Round{} }, "10 stitches are still on the needles before the thumb begins"},
	}
	for _, c := range cases {
		t.Run(c.name, func(t *testing.T) {
			m := small()
			c.spoil(&m)
			faults := stitch.Ledger(m)
			require.NotEmpty(t, faults)
			var words []string
			for _, f := range faults {
				words = append(words, f.Words)
			}
			assert.Contains(t, words, c.want)
		})
	}
}

func TestMirrorTwiceIsTheSame(t *testing.T) {
	m := small()
	assert.Empty(t, cmp.Diff(m, stitch.Mirror(stitch.Mirror(m))))
	// A made stitch that leans left after the first edge leans right before
	// the last edge on the other hand, and stays in place.
	left := stitch.Mirror(m).Section(stitch.Gusset).Rounds[0]
	assert.Equal(t, []stitch.Op{stitch.M1L, stitch.Knit, stitch.M1R}, left.Ops[:left.Lead])
	assert.Nil(t, m.Section(stitch.Top))
}

// What has no side keeps its order on the other hand: ribbing, and putting
// the thumb aside before its bridge is cast on.
func TestMirrorOfWhatHasNoSide(t *testing.T) {
	rib := stitch.Round{Ops: []stitch.Op{stitch.Knit, stitch.Knit, stitch.Purl, stitch.Purl}, Even: true}
	division := stitch.Round{Ops: []stitch.Op{stitch.Knit, stitch.Hold, stitch.Hold, stitch.Hold, stitch.CastOn, stitch.CastOn, stitch.K2tog, stitch.SSK, stitch.Knit}, Lead: 6}
	m := stitch.Mirror(stitch.Mitt{Sections: []stitch.Section{{Part: stitch.Hand, Rounds: []stitch.Round{rib, division}}}})
	assert.Equal(t, rib, m.Sections[0].Rounds[0])
	assert.Equal(t, []stitch.Op{stitch.Hold, stitch.Hold, stitch.Hold, stitch.CastOn, stitch.CastOn, stitch.Knit, stitch.Knit, stitch.K2tog, stitch.SSK}, m.Sections[0].Rounds[1].Ops)
	assert.Equal(t, stitch.Round{Ops: []stitch.Op{stitch.Hold, stitch.CastOn, stitch.SSK}, Lead: 2}, stitch.Mirror(stitch.Mirror(stitch.Mitt{Sections: []stitch.Section{{Rounds: []stitch.Round{{Ops: []stitch.Op{stitch.Hold, stitch.CastOn, stitch.SSK}, Lead: 2}}}}})).Sections[0].Rounds[0])
}

// A round that has a side is turned whether anything leads it or not: a corner
// decrease of a thumb without picked-up stitches goes to the other corner.
func TestMirrorOfARoundThatNothingLeads(t *testing.T) {
	corner := stitch.Round{Ops: []stitch.Op{stitch.Knit, stitch.Knit, stitch.SSK}}
	m := stitch.Mirror(stitch.Mitt{Sections: []stitch.Section{{Part: stitch.Thumb, Rounds: []stitch.Round{corner}}}})
	assert.Equal(t, []stitch.Op{stitch.K2tog, stitch.Knit, stitch.Knit}, m.Sections[0].Rounds[0].Ops)
}

// A stitch knitted front and back makes its new one after itself on both hands. So
// that it lies in the mirrored place, its neighbour is worked twice on the other hand.
// Turned twice, any round is itself.
func TestMirrorOfFrontAndBack(t *testing.T) {
	k, kfb := stitch.Knit, stitch.KFB
	mirrored := func(lead int, list ...stitch.Op) []stitch.Op {
		m := stitch.Mitt{Sections: []stitch.Section{{Part: stitch.Gusset, Rounds: []stitch.Round{{Ops: list, Lead: lead}}}}}
		assert.Equal(t, m, stitch.Mirror(stitch.Mirror(m)))
		return stitch.Mirror(m).Sections[0].Rounds[0].Ops
	}
	assert.Equal(t, []stitch.Op{kfb, k, k, kfb, k, stitch.SSK}, mirrored(5, kfb, k, k, kfb, k, stitch.K2tog))
	assert.Equal(t, []stitch.Op{kfb, kfb, k}, mirrored(3, kfb, kfb, k))
	assert.Equal(t, []stitch.Op{k, k, kfb, k}, mirrored(4, kfb, k, k, k))
	rng := rand.New(rand.NewPCG(23, 2))
	for range 300 {
		list := make([]stitch.Op, 1+rng.IntN(9))
		for i := range list {
			list[i] = []stitch.Op{k, k, kfb, stitch.M1L}[rng.IntN(4)]
		}
		mirrored(rng.IntN(len(list)+1), list...)
	}
}
