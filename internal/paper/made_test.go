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
)

// coloured returns a sample whose hand has columns of a second yarn.
func coloured(t *testing.T, doc project.Document) Sheet {
	t.Helper()
	marks := chart.Marks{}
	for n := 1; n <= 15; n += 2 {
		for round := 2; round < 9; round++ {
			marks.Apply([]chart.Edit{{Section: stitch.Hand, Round: round, Column: fmt.Sprint("H", n), Layer: chart.Colours, Value: "b"}})
		}
	}
	return derived(t, doc, marks)
}

// printings returns ways to print a handout.
func printings() []Options {
	var list []Options
	for _, size := range Papers() {
		for _, o := range []Options{{}, {Sideways: true}, {Large: true}, {Large: true, Sideways: true}, {Grey: true, Double: true}} {
			o.Paper = size
			list = append(list, o)
		}
	}
	return list
}

// covered returns what the seen marks of a scene cover; texts from the height of their
// capitals to the foot of their descenders.
func covered(s *draw.Scene) box {
	b := nothing()
	s.Each(draw.Place{Scale: 1}, func(i *draw.Item, at draw.Place) {
		switch {
		case i.Kind == draw.TextItem && i.Text != "":
			b = b.with(textBox(i, at, 0.7, 0.22))
		case i.Kind == draw.PathItem && (i.Style.Fill != "" || i.Style.Stroke != ""):
			b = b.with(pathBox(i.Path, at))
		}
	})
	return b
}

// Every part of every way of every piece keeps within the height for which it is laid
// and within the margins, so that no part reaches into another or off its page.
func TestPartsKeepTheirHeights(t *testing.T) {
	doc := project.Samples()[2]
	s := coloured(t, doc)
	s.Doubts = []string{"the swatch is far off"}
	for _, o := range printings() {
		o.Pieces = Pieces()
		h := newHandout(&s, o)
		for _, b := range h.blocks() {
			for w, way := range b.ways {
				for k, p := range way.parts {
					page := &draw.Scene{Width: h.size.Width, Height: h.size.Height}
					p.draw(page, margin, 0)
					got := covered(page)
					if got == nothing() {
						continue
					}
					what := fmt.Sprintf("%+v: %s, way %d, part %d", o, b.name, w, k)
					require.GreaterOrEqual(t, got.top, -0.3, what)
					require.LessOrEqual(t, got.bottom, float64(p.Height)/10+0.3, what)
					require.GreaterOrEqual(t, got.left, margin-1, what)
					require.LessOrEqual(t, got.right, h.size.Width-margin+1, what)
					require.LessOrEqual(t, p.Height, h.area().Page, "%s is higher than a page", what)
				}
			}
		}
	}
}

// The pieces come in the order that was chosen, each of them; no page ends with a
// heading, and none but the last is nearly empty.
func TestPiecesKeepTheirOrder(t *testing.T) {
	s := coloured(t, project.Samples()[0])
	heads := map[Piece]string{Lesson: "How it is worked", Key: "Key", Words: "Words", Ticks: "Rounds to tick", Curve: "Fabric and hand, round by round", Own: "My own numbers", Notes: "Notes", Cautions: "Cautions"}
	backwards := slices.Clone(Pieces())
	slices.Reverse(backwards)
	for _, order := range [][]Piece{Pieces(), backwards} {
		for _, o := range printings() {
			o.Pieces = order
			var want, got []string
			for _, p := range order {
				if heads[p] != "" {
					want = append(want, heads[p])
				}
			}
			for _, page := range Handout(s, o) {
				foot := footOf(page)
				for _, i := range page.Items {
					if i.Kind == draw.TextItem && i.Letter.Face == draw.Serif {
						assert.Greater(t, foot, i.Y+0.4*i.Letter.Size, "%+v: %q ends its page", o, i.Text)
						if slices.Contains(want, i.Text) {
							got = append(got, i.Text)
						}
					}
				}
			}
			assert.Equal(t, want, got, "%+v", o)
		}
	}
}

// Printed on both sides, the chart of the gusset lies open beside the words of its
// rounds, or on their page, on every paper.
func TestChartFacesItsWords(t *testing.T) {
	for _, doc := range project.Samples()[:2] {
		s := derived(t, doc, nil)
		for _, size := range Papers() {
			o := Usual()
			o.Paper, o.Double = size, true
			pages := Handout(s, o)
			chartOn, wordsOn := 0, 0
			for n, p := range pages {
				for _, text := range textsOf(p) {
					if text == "Chart of the thumb gusset" {
						chartOn = n + 1
					} else if text == "Thumb gusset" {
						wordsOn = n + 1
					}
				}
			}
			require.Positive(t, chartOn*wordsOn)
			h := newHandout(&s, o)
			assert.Contains(t, []int{chartOn, h.area().Facing(chartOn, len(pages))}, wordsOn, "%s on %s", doc.Name, size.Name)
		}
	}
}

// A handout of ordinary size takes at most four pages, of which, but for the last, at
// most 12 % is empty at the foot; the drawn hand and the cells of the chart are not
// smaller than they may be.
func TestHandoutsTakeTwoSheets(t *testing.T) {
	for _, doc := range project.Samples() {
		s := derived(t, doc, nil)
		for _, size := range Papers() {
			o := Usual()
			o.Paper = size
			pages := Handout(s, o)
			shot(t, size.Name+"-packed-"+doc.Name[:5], pages)
			assert.LessOrEqual(t, len(pages), 4, "%s on %s", doc.Name, size.Name)
			empty := 0.0
			for _, p := range pages[:len(pages)-1] {
				empty += 1 - filled(p)
			}
			assert.LessOrEqual(t, empty/float64(len(pages)-1), 0.12, "%s on %s", doc.Name, size.Name)
		}
	}
}

// filled returns the share of a page's height down to its last mark above the foot.
func filled(p *draw.Scene) float64 {
	return min((footOf(p)-margin)/(p.Height-2*margin-footRoom), 1)
}

// footOf returns the lower edge of the last mark above a page's foot, in mm.
func footOf(p *draw.Scene) float64 {
	above := &draw.Scene{}
	for _, i := range p.Items {
		if i.Kind != draw.TextItem && len(i.Attrs) == 0 || i.Kind == draw.TextItem && i.Y < p.Height-margin-0.1 {
			above.Items = append(above.Items, i)
		}
	}
	return covered(above).bottom
}

// Very many notes are laid in turns: none is lost.
func TestManyNotesAreLaidInTurns(t *testing.T) {
	s := derived(t, project.Samples()[0], nil)
	for n := range 2100 {
		s.Doubts = append(s.Doubts, fmt.Sprintf("doubt %d", n))
	}
	told := 0
	for _, p := range Handout(s, Usual()) {
		for _, text := range textsOf(p) {
			if strings.HasPrefix(text, "Look at this first: doubt") {
				told++
			}
		}
	}
	assert.Equal(t, 2100, told)
}
