package stitch_test

import (
	"slices"
	"testing"

	"github.com/google/go-cmp/cmp"
	"github.com/stretchr/testify/assert"

	"thenar/internal/stitch"
)

// twoSets is a made-up mitt of twelve stitches. Its hand puts three aside for
// the thumb, then two from the palm and two from the back for the index finger,
// which is worked first and has no line in the table of parts.
func twoSets() stitch.Mitt {
	division := stitch.Round{Ops: join(ops(3, stitch.Hold), ops(3, stitch.CastOn), ops(9, stitch.Knit)), Lead: 6}
	division.Keep(stitch.ThumbSet)
	parting := stitch.Round{Ops: join(ops(5, stitch.Knit), ops(2, stitch.Hold), ops(2, stitch.Knit), ops(2, stitch.Hold), ops(1, stitch.Knit)), Lead: 3}
	parting.Keep("index")
	return stitch.Mitt{Sections: []stitch.Section{
		{
			Part: stitch.Hand, CastOn: 12, Rounds: []stitch.Round{division, parting},
			Finish: stitch.Round{Ops: ops(8, stitch.BindOff)},
		},
		{Part: "index", From: []stitch.Set{"index"}, Rounds: []stitch.Round{
			{Ops: join(ops(2, stitch.Knit), ops(1, stitch.CastOn), ops(2, stitch.Knit))},
		}, Finish: stitch.Round{Ops: ops(5, stitch.DrawUp)}},
		{Part: stitch.Thumb, From: []stitch.Set{stitch.ThumbSet}, Rounds: []stitch.Round{
			{Ops: join(ops(2, stitch.PickUp), ops(3, stitch.Knit)), Lead: 2},
		}, Finish: stitch.Round{Ops: ops(5, stitch.DrawUp)}},
	}}
}

func said(m stitch.Mitt) []string {
	var words []string
	for _, f := range stitch.Ledger(m) {
		words = append(words, f.Words)
	}
	return words
}

// Stitches that are kept under names come back by name, in whichever order.
func TestNamedSets(t *testing.T) {
	m := twoSets()
	assert.Empty(t, said(m))
	assert.Empty(t, said(stitch.Mirror(m)))
	assert.Empty(t, cmp.Diff(m, stitch.Mirror(stitch.Mirror(m))))
	left := stitch.Mirror(m).Sections[0].Rounds[1]
	for i, o := range left.Ops {
		want := stitch.Set("")
		if o == stitch.Hold {
			want = "index"
		}
		assert.Equal(t, want, left.SetAt(i), "operation %d", i)
	}
	m.Sections[1], m.Sections[2] = m.Sections[2], m.Sections[1]
	assert.Empty(t, said(m), "the thumb first")
	assert.NotEmpty(t, stitch.Differing(m, twoSets()))
}

// A set that is left on waste yarn has to be said to be.
func TestSetsLeft(t *testing.T) {
	m := twoSets()
	m.Sections = m.Sections[:2]
	assert.Equal(t, []string{"3 stitches held for the thumb never come back"}, said(m))
	m.Left = []stitch.Set{stitch.ThumbSet}
	assert.Empty(t, said(m))
	assert.Empty(t, said(stitch.Mirror(m)))
	m.Left = append(m.Left, "index")
	assert.Equal(t, []string{"nothing is held for the index at the end, but should be"}, said(m))
}

func TestUnsoundSets(t *testing.T) {
	for name, c := range map[string]struct {
		spoil func(*stitch.Mitt)
		want  []string
	}{
		"taken up twice": {
			func(m *stitch.Mitt) { m.Sections = slices.Insert(m.Sections, 2, m.Sections[1]) },
			[]string{"the stitches held for the index are taken up twice", "index finger, round 1: 4 stitches short (0 on the needles; it takes 4)"},
		},
		"a wrong name": {
			func(m *stitch.Mitt) { m.Sections[1].From = []stitch.Set{"middle"} },
			[]string{
				"the index finger takes up the stitches held for the middle, but none are", "index finger, round 1: 4 stitches short (0 on the needles, held for the middle; it takes 4)",
				"4 stitches held for the index never come back",
			},
		},
		"before they are put aside": {
			func(m *stitch.Mitt) { m.Sections[0], m.Sections[1] = m.Sections[1], m.Sections[0] },
			[]string{
				"the index finger takes up the stitches held for the index, but none are", "index finger, round 1: 4 stitches short (0 on the needles; it takes 4)",
				"4 stitches held for the index never come back",
			},
		},
		"a wrong count": {
			func(m *stitch.Mitt) { m.Sections[1].Rounds[0].Ops = m.Sections[1].Rounds[0].Ops[1:] },
			[]string{"index finger, round 1: one stitch left over (4 on the needles; it takes 3)", "index finger, the last step: one stitch short (round 1 leaves 4; it takes 5)"},
		},
		"another set's count": {
			func(m *stitch.Mitt) {
				m.Sections[1].From, m.Sections[2].From = m.Sections[2].From, m.Sections[1].From
			},
			[]string{
				"index finger, round 1: one stitch short (3 on the needles, held for the thumb; it takes 4)", "thumb, round 1: one stitch left over (4 on the needles, held for the index; it takes 3)",
			},
		},
		"never taken up": {
			func(m *stitch.Mitt) { m.Sections = slices.Delete(m.Sections, 1, 2) },
			[]string{"4 stitches held for the index never come back"},
		},
		"no name": {
			func(m *stitch.Mitt) { m.Sections[0].Rounds[1].Aside = nil },
			[]string{
				"hand, round 2: stitches are put aside without a name",
				"the index finger takes up the stitches held for the index, but none are",
				"index finger, round 1: 4 stitches short (0 on the needles; it takes 4)",
			},
		},
		"two under one name": {
			func(m *stitch.Mitt) {
				m.Sections[1].Rounds[0].Ops[0] = stitch.Hold
				m.Sections[1].Rounds[0].Keep(stitch.ThumbSet)
				m.Sections[1].Finish.Ops = m.Sections[1].Finish.Ops[1:]
			},
			[]string{
				"index finger, round 1: stitches are held for the thumb, but those of the hand still wait there",
				"thumb, round 1: one stitch left over (4 on the needles; it takes 3)",
			},
		},
		"cast on beside them": {
			func(m *stitch.Mitt) { m.Sections[1].CastOn = 1 },
			[]string{
				"the index finger takes up stitches and casts on at once; cast on in its first round",
				"index finger, round 1: one stitch left over (5 on the needles; it takes 4)",
			},
		},
	} {
		t.Run(name, func(t *testing.T) {
			m := twoSets()
			c.spoil(&m)
			assert.Equal(t, c.want, said(m))
		})
	}
}
