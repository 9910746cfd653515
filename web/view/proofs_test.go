package view

import (
	"context"
	"slices"
	"strings"
	"testing"

	"github.com/PuerkitoBio/goquery"
	"github.com/a-h/templ"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"thenar/internal/app"
	"thenar/internal/makeup"
	"thenar/internal/paper"
)

// parsed renders and parses a component as a page.
func parsed(t *testing.T, c templ.Component) *goquery.Document {
	t.Helper()
	var b strings.Builder
	require.NoError(t, c.Render(context.Background(), &b))
	doc, err := goquery.NewDocumentFromReader(strings.NewReader(b.String()))
	require.NoError(t, err)
	return doc
}

// handout returns the page of a handout with so many sheets of so many bytes.
func handout(sheets, bytes int) Print {
	p := NewHandoutPrint(7, app.Sheets{Name: "Bus stop", Options: paper.Usual()})
	for range sheets {
		p.Pages = append(p.Pages, "<svg>"+strings.Repeat(" ", bytes)+"</svg>")
	}
	return p
}

// texts returns the texts of elements, in their order.
func texts(s *goquery.Selection) (list []string) {
	for _, e := range s.EachIter() {
		list = append(list, strings.Join(strings.Fields(e.Text()), " "))
	}
	return list
}

// The proofs come first, then what changes them, then what else there is to
// print; every choice is named, and the present one is taken.
func TestProofsBesideTheirChoices(t *testing.T) {
	p := handout(5, 10)
	p.Options.Sideways, p.Options.FromLeft = true, true
	doc := parsed(t, PrintPage(p))
	main := doc.Find("main")
	assert.Equal(t, []string{"proofs", "proof-side no-print"}, []string{main.Children().Eq(0).AttrOr("class", ""), main.Children().Eq(1).AttrOr("class", "")})
	assert.Equal(t, []string{"12", "34", "5"}, texts(main.Find(`nav[aria-label="Pages"] span`)), "facing pages stand together")
	assert.Equal(t, "#page-4", main.Find(`nav a[aria-label="Page 4"]`).AttrOr("href", ""))
	for i, s := range main.Find(".sheet").EachIter() {
		assert.Equal(t, pageID(i), s.AttrOr("id", ""))
	}
	assert.Equal(t, []string{"Paper", "Lies", "Letters", "Ink", "Printed", "Knitted"}, texts(main.Find("form.print-form legend")))
	assert.Equal(t, []string{"A4", "sideways", "ordinary", "colours", "on one side", "from the left"}, texts(main.Find("form.print-form :checked + span, form.print-form [checked] + span")))
	assert.Equal(t, "Lay out", main.Find("form.print-form [type=submit]").Text(), "without a script")
	assert.Equal(t, []string{"Several sizes, one text", "Table of sizes", "Wall chart", "Measuring sheet", "Swatch ruler", "Words as plain text", "The whole mitt as a file", "Charts as SVG, PNG or PDF"}, texts(main.Find(".print-others a")))
	assert.Equal(t, 2, main.Find(".print-others a[download]").Length(), "files, no pages")
	assert.True(t, strings.HasPrefix(main.Find(".print-acts a.file").AttrOr("href", ""), "/mitts/7/print.pdf?"))
}

// On both sides of the paper the first page lies alone, and the back of each sheet
// beside the front of the next (common practice of bookbinding, no source).
func TestBothSidesFaceAsTheyLie(t *testing.T) {
	p := handout(5, 10)
	p.Options.Double = true
	doc := parsed(t, PrintPage(p))
	assert.Equal(t, []string{"1", "23", "45"}, texts(doc.Find(`nav[aria-label="Pages"] span`)))
	assert.Equal(t, "5 pages on 3 sheets; 2 lies beside 3", doc.Find(".page-count").Text())
	assert.True(t, doc.Find("body").HasClass("both-sides"), "the style sheet lays them so")
	area := makeup.Area{Page: 1, BothSides: true}
	for _, pair := range facing(9, true) {
		assert.Equal(t, pair[1:], slices.DeleteFunc([]int{area.Facing(pair[0], 9)}, func(n int) bool { return n == 0 }), "the pages are made up to lie so")
	}
}

// A message about a choice stands at the choice.
func TestFaultOfAChoiceStandsAtIt(t *testing.T) {
	p := handout(1, 10)
	p.Faults = map[string]string{"cell": "is large", "pieces": "is empty", "paper": "is unknown"}
	doc := parsed(t, PrintPage(p))
	for name, message := range p.Faults {
		assert.Equal(t, message, doc.Find(`[data-fault-of="`+name+`"]`).Text(), name)
	}
	assert.Equal(t, "A stitch of the chart, wide", doc.Find("label.has-fault .print-label").Text())
	assert.Equal(t, "Paper", doc.Find("fieldset.has-fault legend").Text())
	_, open := doc.Find("details.pieces").Attr("open")
	assert.True(t, open, "the message is in sight")
}

// Sheets that would make the page heavy are held back, never the first two;
// their places are there, with a way to all of them.
func TestHeavySheetsAreHeldBack(t *testing.T) {
	for _, c := range []struct{ sheets, bytes, held int }{{7, 10_000, 0}, {7, 70_000, 3}, {4, maxAtOnce, 2}, {1, maxAtOnce + 1, 0}} {
		p := handout(c.sheets, c.bytes)
		p.Hold("/mitts/7/sheets")
		doc := parsed(t, PrintPage(p))
		assert.Equal(t, c.sheets, doc.Find(".sheet").Length())
		assert.Equal(t, c.sheets-c.held, doc.Find(".sheet svg").Length(), c)
		assert.Equal(t, c.held, doc.Find(".sheet.awaited").Length(), c)
		rest := doc.Find(".sheets").AttrOr("data-rest", "")
		if c.held == 0 {
			assert.Empty(t, rest)
			continue
		}
		assert.Contains(t, rest, "/mitts/7/sheets?from=")
		assert.Equal(t, 1, doc.Find(`.awaited a[href*="all=1"]`).Length())
		held := parsed(t, HeldSheets(p)).Find(".sheet")
		require.Equal(t, c.held, held.Length())
		assert.Equal(t, pageID(c.sheets-c.held), held.First().AttrOr("id", ""))
	}
}
