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
