package paper

import (
	"slices"
	"strconv"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"thenar/internal/draw"
	"thenar/internal/project"
	"thenar/internal/stitch"
)

// Every round of a gusset that changes its stitches stands on a grey tab, with the
// gusset's count and the whole one in columns of their own, one below the other; no
// plain round does. A part that ends in rib says before it where it is begun.
func TestRoundsStandInATable(t *testing.T) {
	for _, large := range []bool{false, true} {
		s := derived(t, project.Samples()[0], nil)
		o := Usual()
		o.Large, o.Pieces = large, []Piece{Words}
		var changed, counts []string
		for i, r := range s.Out.Mitt.Section(stitch.Gusset).Rounds {
			if r.In() != r.Out() {
				changed = append(changed, strconv.Itoa(i+1))
				counts = append(counts, strconv.Itoa(r.LeadOut()), strconv.Itoa(r.Out()))
			}
		}
		var tabs, told []string
		columns := map[float64]bool{}
		in := false
		var texts []string
		for _, p := range Handout(s, o) {
			for k, i := range p.Items {
				if i.Kind == draw.TextItem {
					texts = append(texts, i.Text)
				}
				switch {
				case i.Kind == draw.TextItem && i.Letter.Face == draw.Serif:
					in = i.Text == "Thumb gusset"
				case !in:
				case i.Kind == draw.PathItem && i.Style.Fill == tabGrey:
					next := slices.IndexFunc(p.Items[k:], func(i draw.Item) bool { return i.Kind == draw.TextItem })
					tabs = append(tabs, p.Items[k+next].Text)
				case i.Kind == draw.TextItem && i.Letter.Anchor == draw.End && i.X > p.Width/2 && slices.Contains(counts, i.Text):
					told = append(told, i.Text)
					columns[i.X] = true
				}
			}
		}
		assert.Equal(t, changed, tabs)
		assert.Equal(t, counts, told, "large: %v", large)
		assert.Len(t, columns, 2)
		begin := slices.IndexFunc(texts, func(text string) bool { return len(text) > 20 && text[:20] == "Begin round 10, the " })
		require.Positive(t, begin)
		assert.Equal(t, "2–9", texts[begin-2], "before it")
		assert.Contains(t, texts[begin+1:begin+3], "10–12", "after it")
	}
}

// In large print no length of a section is told in the small figures of a fraction.
func TestLargeLengthsAreSpelt(t *testing.T) {
	s := derived(t, project.Samples()[0], nil)
	o := Usual()
	o.Large, o.Pieces = true, []Piece{Words}
	for _, p := range Handout(s, o) {
		for _, text := range textsOf(p) {
			assert.NotRegexp(t, `[⅛¼⅜½⅝¾⅞]`, text)
		}
	}
}
