package paper

import (
	"testing"

	"github.com/stretchr/testify/require"

	"thenar/internal/chart"
	"thenar/internal/draw"
	"thenar/internal/project"
	"thenar/internal/stitch"
)

// marksAreOnPaper checks that every mark of a page is within the margins.
func marksAreOnPaper(t *testing.T, p *draw.Scene, what string) {
	t.Helper()
	p.Each(draw.Place{Scale: 1}, func(i *draw.Item, at draw.Place) {
		if i.Kind == draw.TextItem {
			w := draw.Measure(i.Text, i.Letter.Size*at.Scale, i.Letter.Face)
			x, _ := at.At(i.X, i.Y)
			left := x - w*[...]float64{draw.Start: 0, draw.Middle: 0.5, draw.End: 1}[i.Letter.Anchor]
			require.True(t, left > margin-4 && left+w < p.Width-margin+4, "%s: %q from %.1f to %.1f", what, i.Text, left, left+w)
			return
		}
		draw.Walk(i.Path, func(_ byte, n []float64) {
			for k := 0; k+1 < len(n); k += 2 {
				x, y := at.At(n[k], n[k+1])
				require.True(t, x > margin-4 && x < p.Width-margin+4 && y > margin-4 && y < p.Height-margin+1,
					"%s: a mark at %.1f, %.1f on %.0f × %.0f mm", what, x, y, p.Width, p.Height)
			}
		})
	})
}

// For cells of any width, on both papers, upright and sideways, of the gusset and of the
// whole tube: no part of a chart is larger than its page, and there are not too many.
func TestPartsFitTheirPages(t *testing.T) {
	marks := chart.Marks{}
	marks.Apply([]chart.Edit{{Section: stitch.Hand, Round: 4, Column: "H12", Layer: chart.Colours, Value: "c"}})
	for k, doc := range project.Samples() {
		doc.FromLeft = k == 1
		s := derived(t, doc, marks)
		for _, size := range papers() {
			for _, sideways := range []bool{false, true} {
				for _, cell := range []float64{0, SmallestCell, 4.5, 7, 9.9, 13, 16.5, LargestCell} {
					o := Options{Paper: size, Sideways: sideways, Cell: cell, Pieces: []Piece{Key, Chart}}
					pages := append(Handout(s, o), Wall(s, o, chart.TubeView)...)
					for _, p := range pages {
						marksAreOnPaper(t, p, p.Label)
					}
					require.Less(t, len(pages), 200)
				}
			}
		}
	}
}
