package stitch_test

import (
	"testing"

	"github.com/google/go-cmp/cmp"
	"github.com/stretchr/testify/assert"

	"thenar/internal/stitch"
)

// onWaste is a made-up mitt of eight stitches whose thumb stands on four knitted with waste
// yarn: once that is out, four loops lie below it and three whole ones above.
func onWaste() stitch.Mitt {
	first := stitch.Round{Ops: join(ops(4, stitch.Waste), ops(4, stitch.Knit)), Lead: 4}
	first.Keep(stitch.ThumbSet)
	thumb := stitch.Round{Ops: join(ops(1, stitch.CornerM1), ops(3, stitch.Knit), ops(1, stitch.CornerM1), ops(4, stitch.Knit)), Lead: 5}
	return stitch.Mitt{Sections: []stitch.Section{
		{Part: stitch.Hand, CastOn: 8, Rounds: []stitch.Round{first}, Finish: stitch.Round{Ops: ops(8, stitch.BindOff)}},
		{Part: stitch.Thumb, From: []stitch.Set{stitch.ThumbSet.Above(), stitch.ThumbSet}, Rounds: []stitch.Round{thumb}, Finish: stitch.Round{Ops: ops(9, stitch.BindOff)}},
	}}
}

// What is knitted with waste yarn goes on over its own loops, which come back later, and
// one fewer with them from above.
func TestLoopsOnBothSidesOfTheWasteYarn(t *testing.T) {
	m := onWaste()
	assert.Empty(t, said(m))
	left := stitch.Mirror(m)
	assert.Empty(t, said(left))
	assert.Empty(t, cmp.Diff(m, stitch.Mirror(left)))
	assert.Equal(t, 4, m.Sections[0].Rounds[0].Held())
	assert.Equal(t, stitch.ThumbSet, m.Sections[1].Joins(), "it stands where its lower loops are")

	m.Sections[1].From = m.Sections[1].From[1:]
	assert.Equal(t, []string{
		"thumb, round 1: 3 stitches short (4 on the needles; it takes 7)",
		"3 stitches held for the thumb above never come back",
	}, said(m))
	m = onWaste()
	m.Sections[0].Rounds[0].Ops[3] = stitch.Knit
	assert.Equal(t, []string{"thumb, round 1: 2 stitches short (5 on the needles; it takes 7)"}, said(m)[:1], "three below, two above")
	m = onWaste()
	m.Sections[0].Rounds[0].Ops[1] = stitch.Knit
	assert.Equal(t, []string{"thumb, round 1: 3 stitches short (4 on the needles; it takes 7)"}, said(m)[:1], "between two that are apart no loop comes free")
}
