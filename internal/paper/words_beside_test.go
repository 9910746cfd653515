package paper

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"thenar/internal/chart"
	"thenar/internal/draw"
	"thenar/internal/project"
	"thenar/internal/words"
)

// Sections stand side by side where that saves the most of the height in all, against all
// ways to take or leave each pair.
func TestSectionsStandBesideWhereThatSavesTheMost(t *testing.T) {
	met := 0 // pairs that would save less than a later one in their way
	for _, doc := range project.Samples() {
		sheet := derived(t, doc, chart.Marks{})
		for _, o := range printings() {
			o.Pieces = usual
			h := newHandout(&sheet, o)
			all := sections{h, h.pairsByPart(), h.lengthsByPart(), map[setIn][]part{}}
			list := words.Merged(h.Out.Words)
			var most func(i int) int
			most = func(i int) int {
				if i == len(list) {
					return 0
				}
				best := most(i + 1)
				if with := all.beside(list[i:]); with.n > 0 {
					if taken := with.saves + most(i+with.n); taken >= best {
						best = taken
					} else {
						met++
					}
				}
				return best
			}
			chosen, got := all.chosen(list), 0
			for i := 0; i < len(list); i += max(1, chosen[i].n) {
				got += chosen[i].saves
			}
			require.Equal(t, most(0), got, "%s, %s", doc.Name, o.said())
		}
	}
	assert.Positive(t, met, "in one of them the first pair isn’t the best")
}

// So the mitten of the samples takes three pages of A4, its top beside its thumb.
func TestMittenTakesThreePages(t *testing.T) {
	pages := Handout(derived(t, project.Samples()[1], chart.Marks{}), Usual())
	require.Len(t, pages, 3)
	at := map[string]*draw.Item{}
	for i := range pages[2].Items {
		if item := &pages[2].Items[i]; item.Kind == draw.TextItem && item.Letter.Face == draw.Serif {
			at[item.Text] = item
		}
	}
	require.NotNil(t, at["Top"])
	require.NotNil(t, at["Thumb"])
	assert.InDelta(t, at["Top"].Y, at["Thumb"].Y, 0.01)
	assert.Less(t, at["Top"].X+20, at["Thumb"].X)
}
