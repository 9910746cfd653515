package chart

import (
	"testing"

	"github.com/stretchr/testify/assert"
)

// Colour work is charted in upright columns, anything else as a wedge; what is asked for
// is kept. A stitch, a note or a colour taken away is no colour.
func TestColourIsChartedInColumns(t *testing.T) {
	for name, c := range map[string]struct {
		edits []Edit
		asked Layout
		want  Layout
	}{
		"plain":                {nil, "", Wedge},
		"a stitch and a note":  {[]Edit{paint(2, "B2", Stitches, "p"), paint(3, "", Notes, "look")}, "", Wedge},
		"a colour":             {[]Edit{paint(2, "B2", Colours, "b")}, "", Columns},
		"a colour taken away":  {[]Edit{paint(2, "B2", Colours, "b"), paint(2, "B2", Colours, "")}, "", Wedge},
		"a wedge asked for":    {[]Edit{paint(2, "B2", Colours, "b")}, Wedge, Wedge},
		"columns asked for":    {nil, Columns, Columns},
		"what no chart can be": {[]Edit{paint(2, "B2", Colours, "b")}, "spiral", Columns},
	} {
		marks := Marks{}
		marks.Apply(c.edits)
		assert.Equal(t, c.want, source(gusset(t), 3, 15, marks, false).Grid(Options{Layout: c.asked}).Layout, name)
	}
}
