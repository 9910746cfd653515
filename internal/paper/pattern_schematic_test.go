package paper

import (
	"fmt"
	"maps"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"thenar/internal/draw"
	"thenar/internal/pattern"
	"thenar/internal/picture"
	"thenar/internal/project"
	keys "thenar/internal/sheet"
	"thenar/internal/units"
)

// patternOf is a pattern of a sheet for hands of these girths in cm.
func patternOf(t *testing.T, of keys.Sheet, girths ...float64) PatternSheet {
	t.Helper()
	s := PatternSheet{Name: "Pattern"}
	for _, g := range girths {
		own := maps.Clone(of)
		own["gauge.swatches[0].stitches"], own["gauge.swatches[0].width"], own["hand.hand_circumference"] = "24", "10", fmt.Sprint(g)
		out, err := project.NewPlanner().Derive(project.Document{Name: "Pattern", Side: project.Right, Sheet: own}, nil)
		require.NoError(t, err)
		s.Sizes = append(s.Sizes, pattern.Size{Name: fmt.Sprintf("S%v", g), Out: out})
	}
	var err error
	s.Text, err = pattern.Of(s.Sizes, pattern.Style{Rhythm: true})
	require.NoError(t, err)
	return s
}

// patternTexts returns the texts of pages, and checks that all lie on their page.
func patternTexts(t *testing.T, pages []*draw.Scene) map[string]int {
	t.Helper()
	texts := map[string]int{}
	for n, p := range pages {
		p.Each(draw.Place{Scale: 1}, func(i *draw.Item, at draw.Place) {
			if i.Kind == draw.TextItem {
				texts[i.Text]++
				x, y := at.At(i.X, i.Y)
				require.True(t, x >= 0 && x <= p.Width && y >= 0 && y <= p.Height, "page %d: %q at %v, %v", n+1, i.Text, x, y)
			}
		})
	}
	return texts
}

// Every measure of every size stands in the pattern in both units, and its letter beside the
// name and on the drawing; on A4 and Letter, in large print, and if all is for one size.
func TestPatternMeasures(t *testing.T) {
	for _, c := range []struct {
		of     keys.Sheet
		girths []float64
		large  bool
	}{
		{keys.Sheet{"kind": "fingerless"}, []float64{16, 18, 20, 22}, false},
		{keys.Sheet{"kind": "fingerless"}, []float64{19}, false},
		{keys.Sheet{"kind": "mitten", "unit": "cm", "cuff.kind": "gauntlet"}, []float64{16, 17, 18, 19, 20, 21}, true},
		{keys.Sheet{"kind": "glove"}, []float64{16, 18, 20}, false},
	} {
		for _, size := range Papers() {
			s := patternOf(t, c.of, c.girths...)
			o := Usual()
			o.Paper, o.Large = size, c.large
			s.Each = true
			texts := patternTexts(t, Pattern(s, o))
			for _, l := range picture.LetteredOf(patternPages{PatternSheet: &s}.nested()) {
				most := 2 // on the drawing of all and in the table, and so for each size by itself
				for _, mm := range l.MM {
					if mm > 0 && len(s.Sizes) > 1 {
						most += 2
					}
				}
				require.GreaterOrEqual(t, texts[l.Letter], most, "%v: letter %s", c.of, l.Letter)
				for _, word := range strings.Fields(l.Name) {
					found := false
					for text := range texts {
						found = found || strings.Contains(text, word)
					}
					require.True(t, found, "%v: %s", c.of, l.Name)
				}
				for _, mm := range l.MM {
					require.Positive(t, texts[units.FromMM(mm).Format(units.CM)], "%v: %s %.1f mm", c.of, l.Name, mm)
					require.Positive(t, texts[units.FromMM(mm).Format(units.IN)], "%v: %s %.1f mm", c.of, l.Name, mm)
				}
			}
		}
	}
}
