package picture

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"

	"thenar/internal/hand"
	"thenar/internal/mitt"
	"thenar/internal/units"
)

// Every finger of a glove's hand has its tapes, as long as what they measure; those round a
// finger are as broad as it. What was measured is not dotted. Other mitts have none.
func TestFingersHaveTapes(t *testing.T) {
	h, _ := hand.Hand{Circumference: 190 * units.Millimetre}.Fill()
	h.Fingers.Length[hand.Ring] = 76 * units.Millimetre
	f := newFigure(&h)
	f.fingered = true
	tapes := map[string]tape{}
	for _, one := range f.tapes(5) {
		tapes[one.field] = one
	}
	filled, _ := h.FillFingers()
	for i := range drawnOrder {
		of := hand.Finger(i)
		long := tapes[of.FieldLength()]
		want := filled.Length[of].MM()
		if of == hand.Middle { // drawn to where the hand ends
			want = h.Length.MM() - filled.Crotch[hand.Index].MM()
		}
		assert.InDelta(t, want, length(long.to.plus(long.from.times(-1))), 0.01, "%s", long.field)
		round := tapes[of.FieldGirth()]
		assert.InDelta(t, 1.06*filled.Girth[of].MM()/2*flatFinger, length(round.to.plus(round.from.times(-1))), 0.7, "%s", round.field)
		assert.Equal(t, filled.Girth[of], round.value)
		if of < hand.Little {
			crotch := tapes[of.FieldCrotch()]
			assert.InDelta(t, filled.Crotch[of].MM(), crotch.to.y, 0.01)
			assert.Zero(t, crotch.from.y)
		}
	}
	assert.Len(t, tapes, 8+11)

	count := func(text string) int { return strings.Count(text, `of-finger"`) }
	assert.Equal(t, 11, count(svg(t, NewBench(glove(t, 190, mitt.Make{}), HandOptions{}).Hand)))
	assert.Zero(t, count(svg(t, NewBench(plan(t, mitt.Mitten, 190), HandOptions{}).Hand)))
	bare := svg(t, Bare(h, nil, HandOptions{Fingers: true}))
	assert.Equal(t, 10, strings.Count(bare, `"tape filled of-finger"`), "one was measured")
	assert.Equal(t, 11, count(bare))
	assert.Zero(t, count(svg(t, Bare(h, nil, HandOptions{}))))
}
