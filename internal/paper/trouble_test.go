package paper

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"thenar/internal/testenv"
)

// No part of a handout is higher than its page, and none is parted from what it should
// stay with, in all combinations of the options: with the samples as they are planned,
// painted, and with all pieces.
func TestNoHandoutHasTrouble(t *testing.T) {
	for k, o := range testenv.Some(6, combinations()) {
		for _, all := range []bool{false, true} {
			if all {
				o.Pieces = Pieces()
			}
			s := painted(t, k%3, o.FromLeft)
			h := newHandout(&s, o)
			h.makeUp(h.blocks())
			assert.Empty(t, h.troubles, "%s, %s, all pieces %v", s.Doc.Name, o.said(), all)
		}
	}
}

// A trouble of the layout is told, not lost: a part that is higher than its page.
func TestTroubleIsTold(t *testing.T) {
	s := painted(t, 0, false)
	h := newHandout(&s, Usual())
	h.makeUp([]block{one("too high", 0, []part{space(h.area().Page + 1)})})
	assert.Len(t, h.troubles, 1)
}
