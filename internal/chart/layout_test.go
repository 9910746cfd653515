package chart

import (
	"slices"
	"testing"

	"github.com/stretchr/testify/assert"
)

// A second yarn that was named or coloured will be knitted with, so it is charted in
// columns before it is painted; one that is painted is the one in use.
func TestSecondYarn(t *testing.T) {
	own := slices.Clone(Yarns)
	own[0] = Yarn{ID: "a", Name: "moss", Fill: "#3B5B2B"}
	s := source(gusset(t), 3, 15, Marks{}, false)
	s.Palette = slices.Clone(own)
	assert.Empty(t, s.SecondYarn(), "the main colour is no second one")
	assert.Equal(t, Wedge, s.Sound(Options{}).Layout)
	s.Palette[2].Name = "oat"
	assert.Equal(t, "c", s.SecondYarn())
	assert.Equal(t, Columns, s.Sound(Options{}).Layout)
	s.Marks.Apply([]Edit{paint(2, "B2", Colours, "d"), paint(3, "B2", Colours, "b")})
	assert.Equal(t, "b", s.SecondYarn())
}

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
