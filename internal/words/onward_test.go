package words

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"thenar/internal/mitt"
)

// Worked by hand: 18 rounds of gusset with increases in rounds 1, 4, 7 … are
// tried on after round 5 and go on quicker.
func TestOnward(t *testing.T) {
	plan := func(rounds int, list ...int) *mitt.Plan {
		p := &mitt.Plan{}
		p.Gusset = mitt.Gusset{Base: 3, Step: 2, Increases: len(list), IncreaseRounds: list, Rounds: mitt.Count{N: rounds}}
		return p
	}
	was := plan(18, 1, 4, 7, 10, 13, 16)
	held := plan(18, 1, 4, 6, 8, 11, 14)
	held.Thumb.Held, held.Bridge.CastOn = 14, 1
	for _, c := range []struct {
		is    *mitt.Plan
		after int
		want  string
	}{
		{plan(18, 1, 4, 7, 10, 13, 16), 5, "Nothing changes: go on as planned."},
		{plan(18, 1, 4, 6, 8, 11, 14), 5, "Instead of every 3rd round: every 2nd round twice, then every 3rd round."},
		{held, 5, "Instead of every 3rd round: every 2nd round twice, then every 3rd round. Further: 14 stitches held instead of 0; 1 stitch of bridge instead of 0."},
		{plan(17, 1, 4, 6, 8, 10, 12, 14), 5, "Instead of every 3rd round: every 2nd round; 7 increase rounds instead of 6; 17 rounds of gusset instead of 18."},
		{plan(18, 1, 4), 5, "Instead of every 3rd round: no more increase rounds; 2 increase rounds instead of 6."},
		{plan(18, 3, 6, 9, 12, 15, 17), 0, "Instead of every 3rd round: from round 3 on every 3rd round 4 times, then every 2nd round."},
	} {
		assert.Equal(t, c.want, Onward(was, c.is, c.after))
	}
}

// What changes of a glove's fingers is told finger by finger, in the order worked.
func TestOnwardOfFingers(t *testing.T) {
	glove := func(stitches, bridge, rounds int) *mitt.Plan {
		p := &mitt.Plan{Fingers: &mitt.Fingers{}}
		for i := range p.Fingers.Each {
			f := &p.Fingers.Each[i]
			f.Palm, f.Back, f.PickedUp, f.Rounds = 6, 6, (i+1)%4, 20 // nothing is picked up for the little finger
		}
		p.Fingers.Each[3].FirstRound, p.Fingers.Bridge[2], p.Fingers.Each[1].Rounds = stitches, bridge, rounds
		return p
	}
	was := glove(15, 3, 20)
	assert.Equal(t, "Nothing changes: go on as planned.", Onward(was, glove(15, 3, 20), 0))
	assert.Equal(t, "16 stitches of the little finger instead of 15; 4 stitches of the bridge ring to little instead of 3; 22 rounds of the middle finger instead of 20.",
		Onward(was, glove(16, 4, 22), 0))
	lower := glove(15, 3, 20)
	lower.Fingers.Lower = 4
	assert.Equal(t, "4 rounds of the upper hand instead of 0.", Onward(was, lower, 0))
	tip := glove(15, 3, 20)
	tip.Fingers.Each[2].EdgingStitches = 21
	assert.Equal(t, "Nothing changes: go on as planned.", Onward(was, tip, 0), "a finger that ends in its tip has no edging")
	rib, longer := glove(15, 3, 20), glove(15, 3, 20)
	rib.Fingers.Each[0].EdgingRounds, longer.Fingers.Each[0].EdgingRounds = 4, 6
	assert.Equal(t, "6 rounds of edging of the index finger, now wider, instead of 4.", Onward(rib, longer, 0))
	assert.Equal(t, "4 rounds of edging of the index finger instead of 6.", Onward(longer, rib, 0))
}
