package fit

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"thenar/internal/stitch"
)

// Counted by hand: the rounds that are more than 5 mm too narrow or too wide, none
// of them of a plain cuff or a top.
func TestMisfits(t *testing.T) {
	row := func(part stitch.Part, fabric float64) Row {
		return Row{Section: part, Fabric: fabric, Wanted: 100, fitted: part.Over() != stitch.OverTips && !part.Passing()}
	}
	rows := []Row{
		row(stitch.Cuff, 94), row(stitch.Cuff, 94), row(stitch.CuffPlain, 80),
		row(stitch.Gusset, 93), row(stitch.Gusset, 95), row(stitch.Gusset, 100), row(stitch.Gusset, 106), row(stitch.Gusset, 108),
		row(stitch.Hand, 96), row(stitch.Hand, 105), row(stitch.Top, 50), row(stitch.Thumb, 112),
	}
	assert.Equal(t, []Misfit{
		{stitch.Cuff, -6, 2, 2}, {stitch.Gusset, -7, 1, 5}, {stitch.Gusset, 8, 2, 5}, {stitch.Thumb, 12, 1, 1},
	}, Misfits(rows, 5))
}
