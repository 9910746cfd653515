package view

import (
	"testing"

	"github.com/PuerkitoBio/goquery"
	"github.com/stretchr/testify/assert"

	"thenar/internal/chart"
	"thenar/internal/tryon"
)

// deskPages renders the five desks of a mitt with a plan, by what each is for.
func deskPages(t *testing.T) map[string]*goquery.Document {
	t.Helper()
	d, a := fitAnswer(t, nil)
	charted, m := chartDesk(t)
	m.Desk = PatternDesk
	return map[string]*goquery.Document{
		"drawing":  parsed(t, FitPage(Mitt{ID: 1, Doc: d, Desk: FitDesk, Answer: a})),
		"canvas":   charted,
		"sheets":   parsed(t, PatternPage(m, handout(3, 10))),
		"forward":  shown(t, NeedlesPage(needlesAt(t, 0, chart.Marks{}))),
		"try-form": triesWith(t, tryon.Try{}, nil),
	}
}

// The first stops of the Tab key on every desk lead past the bar: to what the desk
// is for, and to the tape (WCAG 2.2, 2.4.1); each says the key that does the same.
func TestWaysPastTheBar(t *testing.T) {
	t.Parallel()
	for work, page := range deskPages(t) {
		stops := page.Find("a[href], button, input, select, summary")
		assert.Equal(t, []string{"Go to the work (F8 twice)", "Go to the desks (F8)", "Shelf"}, texts(stops.Slice(0, 3)), work)
		assert.Equal(t, "#"+work, stops.Eq(0).AttrOr("href", ""))
		assert.Equal(t, 1, page.Find("main #"+work).Length(), work)
		assert.Equal(t, 1, page.Find("nav.desk-tape"+stops.Eq(1).AttrOr("href", "")).Length(), work)
		assert.Equal(t, "F8", page.Find("#desks [aria-current]").AttrOr("aria-keyshortcuts", ""), work)
	}
	bare := shown(t, ChartPage(Mitt{Desk: ChartDesk}))
	assert.Equal(t, "#main", bare.Find("a.skip").First().AttrOr("href", ""), "there is no chart yet")
	assert.Equal(t, []string{"Go to the page"}, texts(parsed(t, ProblemPage(Problem{})).Find("a.skip")), "a page of no mitt has no tape")
}

// A row of like things is a toolbar with a name of its own, whose arrows the script
// sees to (WAI-ARIA 1.2, toolbar); the ladder's go up and down, among its rungs and
// not in a slip.
func TestRowsOfLikeThings(t *testing.T) {
	t.Parallel()
	want := map[string][]string{
		"drawing":  {"The plan", "What was measured", "The plan’s numbers"},
		"canvas":   {"How far a mark reaches", "What is marked off", "Taking back and looking", "Yarns", "Stitches"},
		"sheets":   {"The plan"},
		"forward":  {"The plan"},
		"try-form": {"The plan"},
	}
	for work, page := range deskPages(t) {
		rows := page.Find(`[role="toolbar"]`)
		assert.Equal(t, want[work], rows.Map(func(_ int, s *goquery.Selection) string { return s.AttrOr("aria-label", "") }), work)
		ladder := page.Find("#ladder")
		if work != "drawing" {
			assert.Zero(t, ladder.Length(), work)
			continue
		}
		assert.Equal(t, "vertical", ladder.AttrOr("aria-orientation", ""))
		assert.Equal(t, ladder.Find("ol.numbers > .number").Length(), ladder.Find(ladder.AttrOr("data-along", "")).Length(), "each rung, and nothing in its slip")
		assert.Contains(t, page.Find("#"+ladder.AttrOr("aria-describedby", "")).Text(), "Up and down")
	}
}

// A number of the plan is read out with its words, where it stands for itself.
func TestNumbersOfTheLineAreReadOut(t *testing.T) {
	t.Parallel()
	_, a := fitAnswer(t, nil)
	line := parsed(t, numberLinks("", planNumbers(a.Out.Plan)))
	assert.Equal(t, []string{"cast on 36", "hand 42", "gusset 3", "to 15", "in 18", "thumb 18"},
		line.Find("a").Map(func(_ int, s *goquery.Selection) string { return s.AttrOr("aria-label", "") }))
	assert.Equal(t, planLine(a.Out.Plan), line.Text(), "and shown as it was")
}

// Each yarn has its number as a key on the chart, shown at its hank.
func TestYarnsHaveKeys(t *testing.T) {
	t.Parallel()
	desk, m := chartDesk(t)
	keys := []string{"1", "2", "3", "4", "5", "6", "7", "8"}[:len(m.Answer.Chart.Yarns)]
	hanks := desk.Find(".hanks [data-tool-colour]")
	assert.Equal(t, keys, hanks.Map(func(_ int, s *goquery.Selection) string { return s.AttrOr("aria-keyshortcuts", "") }))
	assert.Equal(t, keys, hanks.Map(func(_ int, s *goquery.Selection) string { return s.Find("kbd[aria-hidden]").Text() }))
}
