package view

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"thenar/internal/stitch"
)

// What is done at the end of a part is called by its stitches: those of a thumb in rows are
// put aside, although its two edges go into the seam.
func TestEndsAreNamed(t *testing.T) {
	for want, ops := range map[string][]stitch.Op{
		"Bind off":  {stitch.BindOff, stitch.BindOff},
		"Draw up":   {stitch.DrawUp},
		"Graft":     {stitch.Graft, stitch.Graft},
		"Put aside": {stitch.BindOff, stitch.Hold, stitch.Hold, stitch.BindOff},
	} {
		assert.Equal(t, want, ends(stitch.Round{Ops: ops}))
	}
	assert.Equal(t, "Put aside", ends(stitch.Round{Ops: []stitch.Op{stitch.Hold}}))
}
