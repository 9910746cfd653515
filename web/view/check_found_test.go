package view

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"thenar/internal/tally"
	write "thenar/internal/written"
)

// What is found at one place in several sizes is one thing to look at.
func TestFoundInSizes(t *testing.T) {
	at := write.Spot{Line: 3, Column: 5}
	one := func(size, round, message string) tally.Finding {
		return tally.Finding{At: at, Sizes: []string{size}, Section: "Hand", Round: round, Message: message}
	}
	c := Check{}
	c.Checked.Report = &tally.Report{Sizes: make([]tally.Size, 4), Findings: []tally.Finding{
		one("S", "round 4", "There are 40 stitches, not 41."),
		one("M", "round 4", "There are 44 stitches, not 41."),
		one("L", "round 6", "There are 48 stitches, not 41."),
		one("XL", "round 6", "There is 1 stitch, not 41."),
	}}
	found := c.Found()
	if assert.Len(t, found, 2) {
		assert.Equal(t, "Line 3 · sizes S, M, L · Hand, round 4 (4, 6)", found[0].Place)
		assert.Equal(t, "There are 40 (44, 48) stitches, not 41.", found[0].Told)
		assert.Equal(t, 1, found[0].No)
		assert.Equal(t, "Line 3 · size XL · Hand, round 6", found[1].Place)
		assert.Equal(t, 4, found[1].No)
	}
}
