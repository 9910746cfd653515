package mitt

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"thenar/internal/hand"
	"thenar/internal/stitch"
)

// The adult mitt with an opening (see slit_test.go) in rows, by hand: 48 stitches and an
// edge at both sides, of which rows of 50 begin and end with 2 knitted along the opening.
// The seam lies on the thumb's side, so that nothing is joined and both hands are alike.
func TestAnOpeningInASeam(t *testing.T) {
	r := opened(Pins{})
	r.Make.Flat = true
	m := must(t, r).Mitt()
	require.Empty(t, stitch.Ledger(m))
	assert.True(t, m.SeamByThumb())
	assert.Empty(t, stitch.Differing(m, stitch.Mirror(m)))
	opening := m.Section(stitch.Opening)
	require.Len(t, opening.Rounds, 16)
	assert.Equal(t, 2, opening.About.Ends)
	for i, row := range opening.Rounds {
		want := typed(t, "k50").Ops
		if i%2 == 1 {
			want = typed(t, "p2 k46 p2").Ops
		}
		assert.Equal(t, want, row.Ops, "row %d", i+1)
	}
	for _, s := range m.Sections {
		assert.Equal(t, s.Part == stitch.Opening, s.SeamOpen(), "%s", s.Part)
		for i, row := range s.Rounds {
			assert.Equal(t, stitch.Facing(i+1), row.Side, "%s, row %d", s.Part, i+1)
		}
	}
	for _, how := range []Construction{ByGusset, Straight} {
		r.Make.Construction = how
		assert.False(t, must(t, r).Mitt().SeamByThumb(), "%s", how)
	}
	narrow := opened(Pins{HandStitches: Fix(14)})
	narrow.Make.Flat = true
	assert.Equal(t, typed(t, "p k14 p").Ops, must(t, narrow).Mitt().Section(stitch.Opening).Rounds[1].Ops)
}

// Published wristlets are a straight piece whose seam is left open for the thumb. American
// Red Cross, 1917–18: 48 stitches, 12 in long, an opening of 2 in begins 2 in from the top
// (a magazine of 1918), and 52 stitches, 8 in, 2 in open, 4 in (a one-piece model).
// Australian Comforts Fund, 1940: 48 stitches, 8½ in, sew 6, open 1½, sew 1. At 9 stitches
// to the inch (the handbook of 1918), and 12 rows to the inch (from memory), their edges
// are sewn and left as long as printed. What can't be planned: they are ribbed along the
// opening, too, where ours is plain; and by k2, p2 from edge to edge, of which ours takes
// whole repeats between the edges, so that here it is k1, p1.
func TestPublishedOpeningsInASeam(t *testing.T) {
	const inch, rows = 25.4, 12
	for _, l := range []struct {
		stitches           int
		below, open, above float64 // in
		printed            float64 // in all
		source             string
	}{
		{48, 8, 2, 2, 12, "Red Cross 1917–18"},
		{52, 8, 2, 4, 14, "Red Cross 1917–18, in one piece"},
		{48, 6, 1.5, 1, 8.5, "Australian Comforts Fund 1940"},
	} {
		r := request(Fingerless, per10(9/inch*100, rows/inch*100), opened(Pins{}).Hand)
		r.Make.Construction, r.Make.Flat = Slit, true
		in := func(inches float64) Pin { return Fix(int(inches * rows)) }
		r.Pins = Pins{
			CastOn: Fix(l.stitches - 2), HandStitches: Fix(l.stitches - 2), CuffRounds: in(l.below), CuffPlainRounds: Fix(0),
			GussetRounds: in(l.open), RoundsAboveGusset: in(l.above),
		}
		p := must(t, r)
		m := p.Mitt()
		require.Empty(t, stitch.Ledger(m), l.source)
		assert.Equal(t, l.stitches, m.Sections[0].CastOn, l.source)
		sewn, all := []float64{0}, 0.0
		for _, s := range m.Sections {
			if s.SeamOpen() {
				assert.InDelta(t, l.open, s.Reach(p.Gauge.Rounds)/inch, 1e-9, l.source)
				sewn = append(sewn, 0)
			} else {
				sewn[len(sewn)-1] += s.Reach(p.Gauge.Rounds) / inch
			}
			all += s.Reach(p.Gauge.Rounds) / inch
			for i, row := range s.Rounds {
				assert.Equal(t, l.stitches, row.Out(), "%s: %s, row %d", l.source, s.Part, i+1)
			}
		}
		assert.InDeltaSlice(t, []float64{l.below, l.above}, sewn, 1e-9, l.source)
		assert.InDelta(t, l.printed, all, 1e-9, l.source)
	}
}

// A short flat thumb has no room for all of its edging: of 6 rows 4 are worked before it,
// one brings it to the ribbing's count, one is left. Once it is begun it stays so, as long
// as nothing else is wanted.
func TestAShortEdgingStays(t *testing.T) {
	r := request(Fingerless, per10(17.53, 21.65), hand.Hand{Circumference: 127_500, Length: 127_400, Thumb: 48_900})
	r.Stitch.Repeat, r.Stitch.Rib, r.Stitch.Knits, r.Make.Flat = 1, 3, 1, true
	p := must(t, r)
	require.Equal(t, []int{6, 1}, []int{p.Thumb.Rounds, p.Thumb.EdgingRounds})
	for round := 1; round <= 6; round++ {
		r.Progress = p.ProgressAt(stitch.Thumb, round)
		assert.Equal(t, p.Mitt(), must(t, r).Mitt(), "after row %d", round)
	}
	r.Progress = p.ProgressAt(stitch.Thumb, 5)
	r.Lengths.Thumb = 60 * mm
	assert.Equal(t, 8, must(t, r).Thumb.Rounds, "a longer one gets the edging that is wanted")
}
