package paper

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"thenar/internal/draw"
	"thenar/internal/project"
)

// In large print every text of every page has 18 pt at least (RNIB's large print, from
// memory: 16 to 22 pt), in drawings, charts, keys, maps and feet too.
func TestLargePrintIsLargeEverywhere(t *testing.T) {
	const points = 18.0 / 72 * 25.4 // of 18 pt, in mm
	for k, doc := range project.Samples() {
		s := coloured(t, doc)
		for _, sideways := range []bool{false, true} {
			o := Options{Paper: Papers()[k%2], Large: true, Sideways: sideways, Pieces: Pieces()}
			pages := Handout(s, o)
			shot(t, "large-"+doc.Name[:5], pages)
			for _, p := range pages {
				p.Each(draw.Place{Scale: 1}, func(i *draw.Item, at draw.Place) {
					if i.Kind == draw.TextItem {
						assert.GreaterOrEqual(t, i.Letter.Size*at.Scale, points-0.01, "%s: %q", p.Label, i.Text)
					}
				})
			}
		}
	}
}

// So it is on the measuring sheet: the names of the tapes are as large as the text.
func TestMeasuringSheetIsLargeEverywhere(t *testing.T) {
	for k := range 4 {
		o := Options{Paper: Papers()[k%2], Large: true, Sideways: k > 1}
		for _, p := range Measuring(o, k == 1, k > 0) {
			p.Each(draw.Place{Scale: 1}, func(i *draw.Item, at draw.Place) {
				if i.Kind == draw.TextItem {
					assert.GreaterOrEqual(t, i.Letter.Size*at.Scale, large.body-0.01, "%s: %q", p.Label, i.Text)
				}
			})
			nothingOverlaps(t, p, o, o.said())
		}
	}
}
