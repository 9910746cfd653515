package words

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"thenar/internal/gauge"
	"thenar/internal/hand"
	"thenar/internal/mitt"
	"thenar/internal/stitch"
	"thenar/internal/units"
)

// A glove that is ripped back over its fingers is put together again: the ends undone, what
// waited taken up, what was taken up left to wait. Counted from the rounds themselves.
func TestWhatIsDoneAfterRippingBack(t *testing.T) {
	r := &mitt.Request{
		Kind: mitt.Glove, Gauge: gauge.Gauge{Stitches: 0.28, Rounds: 0.38},
		Hand: hand.Hand{Circumference: 190 * units.Millimetre, Length: 185 * units.Millimetre}, Stitch: mitt.Stitches{Repeat: 2, Rib: 4},
	}
	p, err := mitt.New().Plan(r)
	require.NoError(t, err)
	m := p.Mitt()
	upper, ring := m.Section(stitch.UpperHand), m.Section(stitch.Ring)
	held, left := ring.Rounds[0].Held(), upper.Rounds[len(upper.Rounds)-1].Out()
	require.Equal(t, left, held+p.Fingers.Each[hand.Ring].FirstRound-p.Fingers.Bridge[1], "what waits and what the ring finger stands on")

	back := Ripping{Was: m, Is: m, From: stitch.Ring, At: len(ring.Rounds), To: stitch.UpperHand, Round: len(upper.Rounds), Rounds: 26}
	assert.Equal(t, []string{
		"First undo the end, where it is worked: ring finger.",
		"Ravel 26 rounds, to round 5 of the upper hand.",
		"The " + Plural(held, "stitch") + " that were set aside since come back onto the needles.",
		"Ripped back: " + Plural(left, "stitch") + " on the needles. The marker goes before the first stitch picked up.",
	}, back.Steps(nil))

	back.From, back.At, back.To, back.Round, back.Rounds = stitch.Middle, 9, stitch.Ring, 4, 40
	assert.Contains(t, back.Steps(nil), "Put the stitches that the middle finger took up back onto waste yarn.")
	assert.Equal(t, "First undo the end, where it is worked: ring finger.", back.Steps(nil)[0], "the middle finger is on the needles")

	rounds := len(ring.Rounds)
	alone := Ripping{Was: m, Is: m, From: stitch.Thumb, To: stitch.Ring, Round: rounds - 6, Rounds: 6, Alone: true}
	steps := alone.Steps(Instructions(m, Hands{}))
	assert.Contains(t, steps[0], "the ring finger alone: undo its end, and ravel 6 rounds, to round")
	assert.Contains(t, steps[1], Plural(p.Fingers.Each[hand.Ring].Stitches.N, "stitch")+" on the needles.")
	assert.Equal(t, "Then go on where you were.", steps[len(steps)-1])
	assert.Greater(t, len(steps), 5, "how it is closed stands there, too")
	assert.Nil(t, (&Ripping{Is: m, To: stitch.Ring, Round: rounds + 1}).Steps(nil))

	for _, c := range []struct {
		to   stitch.Part
		want string
	}{{stitch.Gusset, "gusset’s first stitch"}, {stitch.Hand, "bridge’s first stitch"}, {stitch.Little, "end of its bridge"}, {stitch.Cuff, "where the round began"}} {
		steps := (&Ripping{Was: m, Is: m, From: c.to, To: c.to, Round: 2, Rounds: 1}).Steps(nil)
		assert.Contains(t, steps[len(steps)-1], c.want)
	}
}
