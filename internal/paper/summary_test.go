package paper

import (
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"thenar/internal/draw"
)

// The teacher's sheet has a column for who knits from left to right and one for
// notes; no word of its heads is broken, on any paper. Room for notes takes no page.
func TestSummaryHasRemarksInColumns(t *testing.T) {
	f := newFourteen(t)
	tight := func(o Options) []*draw.Scene {
		h := bare(o, f.class.Name)
		blocks := h.summaryBlocks(f.class, f.class.Whole(), f.lines)
		blocks[1].ways = blocks[1].ways[1:]
		h.makeUp(blocks)
		return h.pages
	}
	for _, k := range setKinds() {
		xs, ys := map[string][]float64{}, map[string][]float64{}
		pages := summary(f.class, f.class.Whole(), f.lines, k.o)
		for n, page := range pages {
			for _, i := range page.Items {
				xs[i.Text] = append(xs[i.Text], i.X)
				ys[i.Text] = append(ys[i.Text], float64(n)*page.Height+i.Y)
			}
		}
		for _, word := range strings.Fields("student knits notes hand increases rounds held thumb above yarn") {
			require.Len(t, xs[word], len(pages), "%s: %q stands whole on every page", k.name, word)
		}
		assert.Len(t, xs["left to right"], 2, k.name)
		for _, x := range xs["left to right"] {
			assert.InDelta(t, xs["knits"][0], x, 0.01, k.name)
		}
		require.Len(t, xs["likes a loose cuff"], 1, k.name)
		assert.InDelta(t, xs["notes"][0], xs["likes a loose cuff"][0], 0.01, k.name)
		note := ys["likes a loose cuff"][0]
		assert.True(t, ys["Bertil Oxenstråle"][0] <= note && note < ys["Celia Marsh"][0], "%s: beside or below its student", k.name)
		assert.Len(t, pages, len(tight(k.o)), k.name)
	}
	down := func(pages []*draw.Scene) float64 {
		at := slices.IndexFunc(pages[0].Items, func(i draw.Item) bool { return i.Text == "Noor el-Amin" })
		require.GreaterOrEqual(t, at, 0)
		return pages[0].Items[at].Y
	}
	assert.Greater(t, down(summary(f.class, f.class.Whole(), f.lines, Usual())), down(tight(Usual()))+3*ordinary.small, "there is room to write on A4")
}
