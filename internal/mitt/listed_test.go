package mitt

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"thenar/internal/fault"
	"thenar/internal/hand"
	"thenar/internal/stitch"
)

// adult is the fingerless mitt worked by hand: 3 → 15, rounds 1, 4 … 16 of 19.
func adult(pins Pins) *Request {
	r := request(Fingerless, per10(24, 32), hand.Hand{Circumference: 190 * mm, Length: 180 * mm, Thumb: 65 * mm})
	r.Pins = pins
	return r
}

// The first increase stands where it is fixed, in a rhythm, in a fixed rhythm
// and along the hand's shape; without it a rhythm begins in round 1.
func TestFirstIncreaseIsFixed(t *testing.T) {
	for _, follow := range []Follow{FollowRhythm, FollowProfile} {
		r := adult(Pins{FirstIncrease: Fix(3)})
		r.Follow = follow
		assert.Equal(t, 3, must(t, r).Gusset.IncreaseRounds[0], "%s", follow)
	}
	p := must(t, adult(Pins{FirstIncrease: Fix(3), Rhythm: []int{3}}))
	assert.Equal(t, []int{3, 6, 9, 12, 15, 18}, p.Gusset.IncreaseRounds)
	assert.Equal(t, "3", p.Number(Rhythm), "a rhythm that can be fixed as it stands")
	assert.Equal(t, []int{1, 4, 7, 10, 13, 16}, must(t, adult(Pins{Rhythm: []int{3}})).Gusset.IncreaseRounds)
}

// A fixed list is kept to the round; where it leaves out what is usual, it is
// told, and what it costs is measured against the hand.
func TestFixedListIsKept(t *testing.T) {
	p := must(t, adult(Pins{IncreaseRounds: []int{2, 3, 7, 10, 13, 19}}))
	assert.Equal(t, []int{2, 3, 7, 10, 13, 19}, p.Gusset.IncreaseRounds)
	assert.Equal(t, 15, p.Gusset.Stitches)
	var says []string
	for _, w := range p.Warnings {
		if w.Code == "increase_rounds" {
			says = append(says, w.Message)
		}
	}
	assert.Equal(t, []string{
		"Rounds 2 and 3 both increase; with a plain round between them the gusset pulls less.",
		"The gusset's last round increases; a plain round before the thumb is divided off is easier.",
	}, says)
	costs := New().PinCosts(adult(p.Pins), p)
	require.Len(t, costs, 1)
	assert.Equal(t, IncreaseRounds, costs[0].Number)
	assert.Equal(t, "1, 4, 7, 10, 13, 16", costs[0].Free)
	assert.NotZero(t, costs[0].MM)
	assert.Equal(t, PlaceGussetShape, costs[0].Changes[0].Place)
}

// Fixed numbers of the rhythm that contradict each other are named together,
// each with the nearest that works beside the others.
func TestContradictingRhythms(t *testing.T) {
	for _, c := range []struct {
		pins  Pins
		works map[string]string
	}{
		{
			Pins{IncreaseRounds: []int{1, 4, 7, 10, 13}, Increases: Fix(6)},
			map[string]string{"pins.increases": "5", "pins.increase_rounds": "1, 4, 7, 10, 13, 15"},
		},
		{
			Pins{IncreaseRounds: []int{1, 4, 7, 10, 13, 16}, FirstIncrease: Fix(2)},
			map[string]string{"pins.first_increase": "1", "pins.increase_rounds": "2, 5, 8, 11, 14, 17"},
		},
		{
			Pins{IncreaseRounds: []int{1, 4, 8, 10}, Rhythm: []int{3}},
			map[string]string{"pins.rhythm": "", "pins.increase_rounds": "1, 4, 7, 10"},
		},
		{
			Pins{IncreaseRounds: []int{1, 5, 9, 13, 17}, GussetRounds: Fix(15)},
			map[string]string{"pins.gusset_rounds": "17", "pins.increase_rounds": "1, 5, 9, 12, 14"},
		},
		{
			Pins{FirstIncrease: Fix(16), Increases: Fix(3)},
			map[string]string{"pins.first_increase": "14", "pins.increases": "2"},
		},
	} {
		_, err := New().Plan(adult(c.pins))
		var fields fault.Fields
		require.ErrorAs(t, err, &fields)
		got := map[string]string{}
		for _, f := range fields {
			got[f.Path] = f.Works
		}
		assert.Equal(t, c.works, got, "%+v", c.pins)
	}
	_, err := New().Plan(adult(Pins{IncreaseRounds: []int{1, 4, 4}}))
	assert.ErrorContains(t, err, "pins.increase_rounds: has round 4 out of order; write the increase rounds from the first to the last")
}

// What is knitted wins over a list, which keeps what lies above; what gave way
// is named.
func TestKnittedWinsOverTheList(t *testing.T) {
	p := must(t, adult(Pins{}))
	r := adult(Pins{IncreaseRounds: []int{2, 5, 8, 12, 14, 16}, FirstIncrease: Fix(2)})
	r.Progress = p.ProgressAt(stitch.Gusset, 8) // 1, 4, 7 are made
	now := must(t, r)
	assert.Equal(t, []int{1, 4, 7, 12, 14, 16}, now.Gusset.IncreaseRounds)
	var says []string
	for _, w := range now.Warnings {
		if w.Code == "knitted" {
			says = append(says, w.Message)
		}
	}
	assert.Equal(t, []string{
		"pins.first_increase: round 2 is fixed, but on the needles the increases begin in round 1; that stays.",
		"pins.increase_rounds: 2, 5, 8, 12, 14, 16 is fixed, but what is on the needles makes it 1, 4, 7, 12, 14, 16; that stays.",
	}, says)

	// A list that stood closer than the gap goes on as it is when it is let go.
	close := must(t, adult(Pins{IncreaseRounds: []int{1, 2, 3, 10, 13, 16}}))
	r = adult(Pins{})
	r.Progress = close.ProgressAt(stitch.Gusset, 5)
	assert.Equal(t, []int{1, 2, 3}, must(t, r).Gusset.IncreaseRounds[:3])
}
