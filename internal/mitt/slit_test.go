package mitt

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"thenar/internal/hand"
	"thenar/internal/stitch"
)

// opened is the adult mitt, worked by hand, with an opening in place of gusset and thumb.
func opened(pins Pins) *Request {
	r := adult(pins)
	r.Make.Construction = Slit
	return r
}

// Hand 190, length 180, thumb 65 mm, 24 × 32: worked by hand. The ease is +0.05, so the
// hand is 2.4 · 19 · 1.05 = 47.88, 48 stitches. The opening is 0.28 · 180 = 50.4 mm,
// 16.1 rounds, 16 rows. From wrist bone to crotch are 0.33 · 180 = 59.4 mm, so the plain
// rounds are longer by 9 mm: 29.7 + 9 = 38.7 mm, 12.4 rounds, 12. The palm with the thumb
// laid in is 190 + 0.55 · 65 = 225.75 mm and stretches the fabric of 200 mm by 12.9 %.
func TestAnOpeningForTheThumb(t *testing.T) {
	p := must(t, opened(Pins{}))
	assert.Equal(t, 48, p.Body.Stitches.N)
	assert.Equal(t, 16, p.Gusset.Rounds.N)
	assert.Equal(t, 12, p.Cuff.PlainRounds)
	assert.InDelta(t, 0.12875, p.MoundStretch, 1e-9)
	assert.NotContains(t, codes(p), "mound_stretch")
	assert.False(t, p.Thumbed() || p.Gusseted() || p.Tucked())
	assert.True(t, p.Parted())

	m := p.Mitt()
	require.Empty(t, stitch.Ledger(m))
	opening := m.Section(stitch.Opening)
	require.Len(t, opening.Rounds, 16)
	for i, r := range opening.Rounds {
		side, edge := stitch.RightSide, stitch.Knit
		if i%2 == 1 {
			side, edge = stitch.WrongSide, stitch.Purl
		}
		assert.Equal(t, side, r.Side, "row %d", i+1)
		for k, op := range r.Ops {
			want := stitch.Knit
			if k < 2 || k >= 46 {
				want = edge
			}
			assert.Equal(t, want, op, "row %d, stitch %d", i+1, k+1)
		}
	}
	assert.Nil(t, m.Section(stitch.Thumb))
	assert.Equal(t, "round", m.Section(stitch.Hand).Noun(), "joined again")
	assert.Empty(t, stitch.Differing(m, stitch.Mirror(m)), "both hands are alike")
}

// A hand that stretches by more than 15 % over the base of the thumb is told (common
// practice, no source), with a count that would do: 225.75 · 0.24 / 1.15 = 47.1.
func TestAnOpeningThatPulls(t *testing.T) {
	ease := -0.05
	r := opened(Pins{})
	r.Ease.Hand = &ease
	p := must(t, r)
	assert.Equal(t, 44, p.Body.Stitches.N)
	assert.InDelta(t, 225.75*0.24/44-1, p.MoundStretch, 1e-9)
	require.Contains(t, codes(p), "mound_stretch")
	for _, w := range p.Warnings {
		if w.Code == "mound_stretch" {
			assert.Contains(t, w.Message, "48 stitches would do")
		}
	}
}

// An odd number of rows would leave the wrong side facing where the round is joined; a
// mitten covers the thumb.
func TestOpeningsAreRefused(t *testing.T) {
	_, err := New().Plan(opened(Pins{GussetRounds: Fix(15)}))
	assert.ErrorContains(t, err, "an even number of rows; write 16")
	assert.Equal(t, 20, must(t, opened(Pins{GussetRounds: Fix(20)})).Gusset.Rounds.N)
	r := request(Mitten, per10(24, 32), hand.Hand{Circumference: 190 * mm})
	r.Make.Construction = Slit
	_, err = New().Plan(r)
	assert.ErrorContains(t, err, "a mitten covers the thumb")
}

// What is knitted of an opening stays, and it ends with a wrong-side row all the same.
func TestAnOpeningOnTheNeedles(t *testing.T) {
	p := must(t, opened(Pins{}))
	for round := 1; round <= 16; round++ {
		next := opened(Pins{})
		next.Hand.Length = 120 * mm // 33.6 mm, 10.75 rounds
		next.Progress = p.ProgressAt(stitch.Opening, round)
		again := must(t, next)
		rows := again.Gusset.Rounds.N
		assert.Equal(t, max(10, (round+1)/2*2), rows, "after row %d", round)
		assert.Equal(t, p.Cuff.PlainRounds, again.Cuff.PlainRounds)
		requireRoundsKept(t, p.Mitt(), again.Mitt(), stands{stitch.Opening, round}, next)
	}
	next := opened(Pins{})
	next.Make.Construction = ByGusset
	next.Progress = p.ProgressAt(stitch.Opening, 3)
	_, err := New().Plan(next)
	assert.ErrorContains(t, err, "write slit, or rip back")
}

// Brecon, December 1914, relief work: 48 stitches, 24 rows of k3, p3 rib, 20 plain, 24
// worked to and fro for the opening, 6 plain, 12 of rib. The leaflet names no edge, which
// is left out of the comparison.
func TestPublishedOpening(t *testing.T) {
	r := opened(Pins{
		CastOn: Fix(48), HandStitches: Fix(48), CuffRounds: Fix(24), CuffPlainRounds: Fix(20), GussetRounds: Fix(24), RoundsAboveGusset: Fix(18),
	})
	r.Stitch.Rib, r.Stitch.Knits = 6, 3
	r.Lengths.Edging = 37 * mm // 12 rounds
	m := must(t, r).Mitt()
	require.Empty(t, stitch.Ledger(m))
	rib := typed(t, "k3 p3 k3 p3 k3 p3 k3 p3 k3 p3 k3 p3 k3 p3 k3 p3")
	plain := typed(t, "k48")
	var printed []stitch.Round
	for _, part := range []struct {
		of stitch.Round
		n  int
	}{{rib, 24}, {plain, 20}, {plain, 24}, {plain, 6}, {rib, 12}} {
		for range part.n {
			printed = append(printed, part.of)
		}
	}
	at := 0
	for _, s := range m.Sections {
		for i, round := range s.Rounds {
			require.Less(t, at, len(printed))
			for k, op := range round.Ops {
				if edge := s.About.Ends; k < edge || k >= len(round.Ops)-edge {
					continue
				}
				assert.Equal(t, printed[at].Ops[k], op, "%s, %d, stitch %d", s.Part, i+1, k+1)
			}
			assert.Equal(t, s.Part == stitch.Opening, round.Row(), "to and fro: %s, %d", s.Part, i+1)
			at++
		}
	}
	assert.Equal(t, len(printed), at)
	assert.Equal(t, 48, m.Sections[len(m.Sections)-1].Finish.In())
}

// Published wristlets for grown hands leave an opening of 2 in (American Red Cross, 1917
// and 1918) or 1½ in (Australian Comforts Fund, 1940) where the thumb comes out. Ours
// lies between the two for a hand of 180 mm, and within a quarter of an inch of the
// longer one for a man's of 195 mm (from memory).
func TestOpeningsAreAsLongAsPublishedOnes(t *testing.T) {
	const inch = 25.4
	assert.Greater(t, openingLength(180), 1.5*inch)
	assert.Less(t, openingLength(180), 2*inch)
	assert.InDelta(t, 2*inch, openingLength(195), 0.25*inch)
}
