package paper

import (
	"cmp"
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
)

func sheet(t *testing.T, doc project.Document, size Size) []*draw.Scene {
	t.Helper()
	marks := chart.Marks{}
	marks.Apply([]chart.Edit{{Section: stitch.Gusset, Round: 2, Column: "B1", Layer: chart.Stitches, Value: "k2tog"}})
	out, err := project.NewPlanner().Derive(doc, marks)
	require.NoError(t, err)
	o := Usual()
	o.Paper = size
	return Handout(Sheet{Doc: doc, Out: out}, o)
}

// Every sample, and a mitt of very fine yarn, on both papers: texts keep within the
// margins and off each other, and each page has a ruler.
func TestEverythingFitsThePaper(t *testing.T) {
	docs := project.Samples()
	fine := docs[0]
	fine.Sheet = fine.Sheet.Clone()
	fine.Sheet["gauge.swatches[0].stitches"], fine.Sheet["gauge.swatches[0].rounds"] = "60", "84"
	fine.Name = strings.Repeat("A long name of a mitt ", 5)
	docs = append(docs, fine)
	for _, size := range []Size{A4, Letter} {
		for _, doc := range docs {
			pages := sheet(t, doc, size)
			shot(t, size.Name+"-"+doc.Name[:5], pages)
			require.GreaterOrEqual(t, len(pages), 3)
			for i, p := range pages {
				assert.InDelta(t, size.Width, p.Width, 0)
				assert.InDelta(t, size.Height, p.Height, 0)
				assert.Equal(t, fmt.Sprintf("%s, page %d of %d", doc.Name, i+1, len(pages)), p.Label)
				checkPage(t, p)
			}
		}
	}
}

// checkPage checks that the page's own texts are within the margins and don't overlap,
// and that there is one ruler.
func checkPage(t *testing.T, p *draw.Scene) {
	t.Helper()
	rulers, depth := 0, 0
	lines := map[float64][]placed{} // the texts on a line
	for _, i := range p.Items {
		switch {
		case i.Kind == draw.MoveItem:
			depth++
		case i.Kind == draw.EndItem:
			depth--
		case i.Kind == draw.TextItem && depth == 0:
			w := draw.Measure(i.Text, i.Letter.Size, i.Letter.Face)
			left := i.X
			switch i.Letter.Anchor {
			case draw.End:
				left -= w
			case draw.Middle:
				left -= w / 2
			}
			assert.GreaterOrEqual(t, left, margin-0.01, i.Text)
			assert.LessOrEqual(t, left+w, p.Width-margin+0.01, i.Text)
			assert.LessOrEqual(t, i.Y, p.Height-margin+0.01, i.Text)
			lines[i.Y] = append(lines[i.Y], placed{left, left + w, i.Text})
		case i.Kind == draw.PathItem && len(i.Attrs) > 0 && i.Attrs[0].Name == "data-ruler":
			rulers++
		}
	}
	assert.Equal(t, 1, rulers)
	assert.Zero(t, depth)
	for _, line := range lines {
		slices.SortFunc(line, func(a, b placed) int { return cmp.Compare(a.left, b.left) })
		for i := 1; i < len(line); i++ {
			assert.GreaterOrEqual(t, line[i].left, line[i-1].right, "%q lies on %q", line[i].text, line[i-1].text)
		}
	}
}

// placed is a text with its place on its line.
type placed struct {
	left, right float64
	text        string
}

// The words follow the marks on the chart, and say what does not add up.
func TestSheetTellsWhatDoesNotAddUp(t *testing.T) {
	var all []string
	for _, p := range sheet(t, project.Samples()[0], A4) {
		for _, i := range p.Items {
			if i.Kind == draw.TextItem {
				all = append(all, i.Text)
			}
		}
	}
	text := strings.Join(all, " ")
	assert.Contains(t, text, "Does not add up: gusset, round 2: one stitch short (round 1 leaves 44; it takes 45).")
	assert.Contains(t, text, "k2tog, k4")
	assert.Contains(t, text, "Tingling")
}

// Marks outside the gusset have a chart of their own, with the yarns in its key; notes
// are listed.
func TestEveryPaintedViewIsPrinted(t *testing.T) {
	doc := project.Samples()[0]
	marks := chart.Marks{}
	marks.Apply([]chart.Edit{
		{Section: stitch.Hand, Round: 4, Column: "H12", Layer: chart.Colours, Value: "c"},
		{Section: stitch.Thumb, Round: 2, Layer: chart.Notes, Value: "knit it looser"},
	})
	out, err := project.NewPlanner().Derive(doc, marks)
	require.NoError(t, err)
	var all []string
	for _, p := range Handout(Sheet{Doc: doc, Out: out}, Usual()) {
		checkPage(t, p)
		for _, i := range p.Items {
			all = append(all, i.Text)
		}
	}
	text := strings.Join(all, " | ")
	for _, want := range []string{"Chart of the thumb gusset", "Chart of the hand, all round", "blue", "thumb, round 2: knit it looser"} {
		assert.Contains(t, text, want)
	}
	assert.NotContains(t, text, "Chart of the cuff")
}

// A mitten without a thumb has no chart, for either hand.
func TestNoChartWithoutAThumb(t *testing.T) {
	for _, side := range []project.Side{project.Right, project.Left} {
		doc := project.Samples()[1]
		doc.Sheet, doc.Side = doc.Sheet.Clone(), side
		doc.Sheet["kind"] = "mitten_without_thumb"
		pages := sheet(t, doc, A4)
		require.Len(t, pages, 2)
		for _, p := range pages {
			checkPage(t, p)
			for _, i := range p.Items {
				assert.NotContains(t, i.Text, "Chart of")
				assert.NotContains(t, i.Text, "gusset")
			}
		}
	}
}

func TestSizeNamed(t *testing.T) {
	size, ok := SizeNamed("letter")
	assert.True(t, ok)
	assert.InDelta(t, 8.5*25.4, size.Width, 1e-9)
	assert.InDelta(t, 11*25.4, size.Height, 1e-9)
	_, ok = SizeNamed("a5")
	assert.False(t, ok)
}
