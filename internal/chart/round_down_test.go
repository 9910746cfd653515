package chart

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"thenar/internal/stitch"
)

// From the fingertips a mitt hangs the other way up while it is worked, so that on a right
// hand the round crosses the back after the gusset, and then the palm.
func TestAreasFromTheFingertips(t *testing.T) {
	row := Row{Section: stitch.Gusset, lead: 3, Cells: make([]Cell, 13)}
	g := Grid{Rows: []Row{row}}
	assert.Equal(t, []string{PalmArea, BackArea}, []string{g.handArea(row, 3), g.handArea(row, 12)})
	g.down = true
	assert.Equal(t, []string{BackArea, PalmArea}, []string{g.handArea(row, 3), g.handArea(row, 12)})
	g.Mirrored = true
	assert.Equal(t, []string{PalmArea, BackArea}, []string{g.handArea(row, 3), g.handArea(row, 12)})
	row.flat, row.before = true, 5 // and its rows cross the palm first
	assert.Equal(t, []string{BackArea, PalmArea}, []string{g.handArea(row, 4), g.handArea(row, 8)})
	g.Mirrored = false
	assert.Equal(t, []string{PalmArea, BackArea}, []string{g.handArea(row, 4), g.handArea(row, 8)})
}
