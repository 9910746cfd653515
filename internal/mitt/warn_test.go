package mitt

import (
	"fmt"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"thenar/internal/hand"
	"thenar/internal/stitch"
	"thenar/internal/units"
)

// grown is a fingerless mitt of common size: hand 190 mm, thumb 65 mm, at 24 ×
// 32 over 10 cm. It has 44 stitches and a thumb of 18.
func grown() *Request {
	return request(Fingerless, per10(24, 32), hand.Hand{Circumference: 190 * mm, Length: 180 * mm, Thumb: 65 * mm})
}

// said are the messages of one code.
func said(p *Plan, code string) []string {
	var list []string
	for _, w := range p.Warnings {
		if w.Code == code {
			list = append(list, w.Message)
		}
	}
	return list
}

// Fabric much smaller than the hand brings the usual caution, whatever made it
// so: 30 stitches are 125 mm on a hand of 190, a thumb of 10 is 42 mm on 65, a
// cuff of 26 is 108 mm on a wrist of 158.
func TestMuchSmallerIsCautioned(t *testing.T) {
	assert.NotContains(t, codes(must(t, grown())), "tight")
	for where, fix := range map[string]func(*Pins){
		"hand 34\u00a0%":  func(p *Pins) { p.HandStitches = Fix(30) },
		"thumb 36\u00a0%": func(p *Pins) { p.ThumbStitches = Fix(10) },
		"cuff 31\u00a0%":  func(p *Pins) { p.CastOn = Fix(26) },
	} {
		r := grown()
		fix(&r.Pins)
		list := said(must(t, r), "tight")
		require.Len(t, list, 1, where)
		assert.Contains(t, list[0], where)
		assert.Contains(t, list[0], "Tingling, cold or pale fingers")
		assert.Contains(t, list[0], "not medical advice")
	}
	r := grown()
	ease := -0.12
	r.Ease.Hand = &ease
	assert.Contains(t, said(must(t, r), "tight")[0], "hand 12\u00a0%", "40 stitches are 167 mm")
}

// A count that is off names what is in the way, and not what isn't.
func TestWarningNamesWhatIsInTheWay(t *testing.T) {
	r := grown()
	r.Pins.GussetBase, r.Pins.Increases = Fix(3), Fix(2)
	assert.Contains(t, said(must(t, r), "thumb_count"), "The thumb gets 12 stitches, not 18.4: the fixed numbers are in the way.",
		"19 rounds have room for nine increase rounds")

	r = grown()
	r.Hand.GussetLength, r.Hand.Thumb = 9*mm, 90*mm
	assert.Contains(t, fmt.Sprint(said(must(t, r), "thumb_count")), "3 gusset rounds hold no more increases")

	r = request(Mitten, per10(24, 32), hand.Hand{Circumference: 190 * mm, Length: 180 * mm})
	r.Pins = Pins{TopRounds: Fix(8)}
	p := must(t, r)
	assert.Less(t, p.Bridge.HandAfter, p.Body.Stitches.N-1)
	assert.NotContains(t, codes(p), "hand_count", "the hand has the count that was wanted, up to the bridge")
}

// An edging that finds no room for its rounds doesn't shrink in silence.
func TestShortEdgingIsTold(t *testing.T) {
	assert.NotContains(t, codes(must(t, grown())), "edging_rounds")
	r := grown()
	r.Pins.ThumbRounds, r.Pins.RoundsAboveGusset = Fix(3), Fix(3)
	p := must(t, r)
	require.Equal(t, 2, p.Thumb.EdgingRounds)
	require.Equal(t, 2, p.Body.EdgingRounds)
	assert.Equal(t, []string{
		"The hand has room for 2 of its edging's 3 rounds; a few more rounds would help.",
		"The thumb has room for 2 of its edging's 3 rounds; a few more rounds would help.",
	}, said(p, "edging_rounds"))
}

// A single fixed number has no rest that it could contradict.
func TestLoneFixedNumberIsRefused(t *testing.T) {
	r := grown()
	r.Pins.PickedUp = Fix(0)
	_, err := New().Plan(r)
	require.EqualError(t, err, "pins.picked_up: 0 doesn't go with this hand and swatch; 1 would work")
}

// A gusset that is knitted is said to have no more rounds where more were
// wanted, and no fewer where fewer were.
func TestKnittedGussetIsTold(t *testing.T) {
	p := must(t, grown())
	for length, says := range map[units.Length]string{72 * mm: "can be no more", 50 * mm: "can be no fewer"} {
		r := grown()
		r.Hand.GussetLength, r.Progress = length, p.ProgressAt(stitch.Hand, 2)
		now := must(t, r)
		require.Equal(t, p.Gusset.Rounds.N, now.Gusset.Rounds.N)
		require.Len(t, said(now, "gusset_rounds"), 1)
		assert.Contains(t, said(now, "gusset_rounds")[0], says)
	}
	r := grown()
	r.Hand.GussetLength, r.Progress, r.Pins.GussetRounds = 72*mm, p.ProgressAt(stitch.Gusset, 2), Fix(p.Gusset.Rounds.N)
	now := must(t, r)
	require.Equal(t, p.Gusset.Rounds.N, now.Gusset.Rounds.N)
	assert.Contains(t, said(now, "gusset_rounds")[0], "Let go of them", "it is fixed, not knitted")
}
