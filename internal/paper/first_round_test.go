package paper

import (
	"fmt"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"thenar/internal/chart"
	"thenar/internal/draw"
	"thenar/internal/project"
	"thenar/internal/stitch"
	"thenar/internal/words"
)

// A heading of the words never stands apart from its first round, and no section's last round
// begins a page by itself.
func TestHeadingsStandWithTheirFirstRound(t *testing.T) {
	docs := project.Samples()
	for _, c := range gloves[:2] {
		docs = append(docs, c.doc)
	}
	for _, doc := range docs {
		sheet := derived(t, doc, chart.Marks{})
		titles := map[string]bool{}
		for _, p := range words.Merged(sheet.Out.Words) {
			titles[p.Title] = slices.ContainsFunc(p.Rows(), func(r words.Row) bool { return r.From > 0 })
		}
		for _, o := range printings() {
			o.Pieces = []Piece{Plan, Words}
			name := fmt.Sprintf("%s, %s", doc.Name, o.said())
			met := 0
			for n, page := range Handout(sheet, o) {
				open := ""
				for i := range page.Items {
					switch item := &page.Items[i]; {
					case item.Kind != draw.TextItem:
					case item.Letter.Face == draw.Serif:
						assert.Empty(t, open, "%s: page %d", name, n+1)
						if open = ""; titles[item.Text] {
							open, met = item.Text, met+1
						}
					case item.Letter.Face == draw.Semibold && strings.HasPrefix(item.Text, "1"):
						open = ""
					}
				}
				assert.Empty(t, open, "%s: the foot of page %d", name, n+1)
			}
			require.Positive(t, met, name)
		}
	}
}

// Charts of fingers and thumb are printed where they are asked for, in the order worked, each
// beside the words of its rounds; the key explains them with the others. One that is painted
// on is printed once.
func TestChartsOfFingers(t *testing.T) {
	doc, marks := gloveOf(project.Right, nil), chart.Marks{}
	marks.Apply([]chart.Edit{{Section: stitch.Ring, Round: 5, Column: "P2", Layer: chart.Colours, Value: "b"}})
	sheet := derived(t, doc, marks)
	for _, grey := range []bool{false, true} {
		o := Usual()
		o.Grey = grey
		o.Pieces = []Piece{Plan, Chart, Digits, Key, Words}
		h := newHandout(&sheet, o)
		var titles []string
		for _, g := range h.grids {
			titles = append(titles, strings.TrimPrefix(g.View.Title(), "Chart of the "))
		}
		assert.Equal(t, []string{"thumb gusset", "ring finger", "little finger", "middle finger", "index finger", "thumb"}, titles)
		assert.Equal(t, h.pair(2), h.pairsByPart()[stitch.Little])
		var all []string
		for _, p := range Handout(sheet, o) {
			checkPage(t, p)
			nothingOverlaps(t, p, o, "charts of fingers")
			all = append(all, textsOf(p)...)
		}
		for _, sign := range []string{"k", "M1L", "Chart of the index finger", "picked up"} {
			n := len(all) - len(slices.DeleteFunc(slices.Clone(all), func(s string) bool { return s == sign }))
			if sign == "picked up" { // by every finger that has room for the words
				assert.Positive(t, n)
				continue
			}
			assert.Equal(t, 1, n, "%s, grey %t", sign, grey)
		}
	}
	o := Usual()
	o.Pieces = []Piece{Digits}
	h := newHandout(&sheet, o)
	assert.Len(t, h.grids, 5, "the gusset's chart is not asked for")
	assert.Positive(t, h.pairsByPart()[stitch.Ring])
}
