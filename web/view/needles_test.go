package view

import (
	"strings"
	"testing"

	"github.com/PuerkitoBio/goquery"
	"github.com/a-h/templ"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"thenar/internal/app"
	"thenar/internal/chart"
	"thenar/internal/project"
	"thenar/internal/stitch"
)

// shown renders a component.
func shown(t *testing.T, c templ.Component) *goquery.Document {
	t.Helper()
	var b strings.Builder
	require.NoError(t, c.Render(t.Context(), &b))
	doc, err := goquery.NewDocumentFromReader(strings.NewReader(b.String()))
	require.NoError(t, err)
	return doc
}

// needlesAt returns the page of a mitt with so many tasks done, and the marks.
func needlesAt(t *testing.T, done int, marks chart.Marks) Needles {
	t.Helper()
	return NewNeedles(handAt(t, done, marks))
}

// handAt returns the hand that the page of needlesAt shows.
func handAt(t *testing.T, done int, marks chart.Marks) app.Needles {
	t.Helper()
	d := project.New("Mitts")
	for path, text := range map[string]string{
		"hand.hand_circumference": "19", "gauge.swatches[0].stitches": "24", "gauge.swatches[0].width": "10",
		"chart.yarns[0].name": "sloe", "chart.yarns[0].colour": "#22304A", "chart.yarns[1].name": "in sloe", "chart.yarns[1].colour": "#E8D8B0",
	} {
		d.Sheet[path] = text
	}
	out, err := project.NewPlanner().Derive(d, marks)
	require.NoError(t, err)
	return app.Needles{ID: 7, Doc: d, Out: out, Done: done, Other: app.OtherHand{Planned: true}}
}

// A yarn that a round names is said and underlined by its own colour, whatever
// it is called; the stitches that change the count stand out; what comes after
// the gusset has a line of its own.
func TestYarnsAreSaidAndUnderlined(t *testing.T) {
	marks := chart.Marks{chart.Anchor{Section: stitch.Gusset, Round: 1, Column: "A1"}: {Colour: "b"}}
	n := needlesAt(t, 0, marks)
	n = needlesAt(t, nthOf(t, n, stitch.Gusset, 1), marks)
	say := shown(t, NeedlesPage(n)).Find("[data-say]")
	fills := map[string]string{}
	say.Find(".yarn-word").Each(func(_ int, s *goquery.Selection) {
		fills[s.Text()] = s.Find(".thread path").AttrOr("fill", "")
	})
	assert.Equal(t, map[string]string{"sloe": "#22304A", "in sloe": "#E8D8B0"}, fills)
	assert.Equal(t, "M1L M1R", strings.Join(say.Find("b").Map(func(_ int, s *goquery.Selection) string { return s.Text() }), " "))
	assert.Regexp(t, `^k1 sloe, .*in sloe.*\. *Then knit sloe to the end\.$`, strings.Join(strings.Fields(say.Text()), " "))
	assert.Equal(t, 1, say.Find("br").Length())
	assert.NotContains(t, say.Text(), "(", "the counts stand by themselves")
	assert.Contains(t, n.Now().Words, "of which", "but are said in the words for others")
	for _, svg := range say.Find("svg").Nodes {
		assert.Contains(t, goquery.NewDocumentFromNode(svg).AttrOr("aria-hidden", ""), "true", "it is said already")
	}
}

// A strand over too many stitches is told with its round, in the yarn's own name.
func TestStrandsAreCaughtAtTheNeedles(t *testing.T) {
	marks := chart.Marks{}
	for _, column := range []string{"H2", "H12"} {
		marks[chart.Anchor{Section: stitch.Gusset, Round: 2, Column: column}] = chart.Mark{Colour: "b"}
	}
	n := needlesAt(t, 0, marks)
	first := func(round int) string {
		return shown(t, NeedlesPage(needlesAt(t, nthOf(t, n, stitch.Gusset, round), marks))).Find("[data-first]").Text()
	}
	assert.Contains(t, first(2), "In sloe isn’t used for up to 9 stitches: catch it at least every 5th.")
	assert.NotContains(t, first(3), "catch it")
}

// nthOf returns the number of tasks before a round of a part.
func nthOf(t *testing.T, n Needles, part stitch.Part, round int) int {
	t.Helper()
	for i, one := range n.Tasks {
		if one.Section == string(part) && one.Round == round {
			return i
		}
	}
	t.Fatal(part, round)
	return 0
}

// The two buttons come last, each with what it leads to; before them stand the
// round in large words, the chart, the rounds to come, and how far the part is.
func TestOneRoundAndWhereItLeads(t *testing.T) {
	n := needlesAt(t, 0, nil)
	n = needlesAt(t, nthOf(t, n, stitch.Gusset, 3), nil)
	page := shown(t, NeedlesPage(n))
	var order []string
	page.Find("main").Find("h2, [data-say], .strips, [data-later], [data-progress]:not([hidden]), button:not([disabled])").Each(func(_ int, s *goquery.Selection) {
		name, _ := s.Attr("class")
		order = append(order, strings.TrimSpace(goquery.NodeName(s)+" "+strings.Fields(name + " -")[0]))
	})
	assert.Equal(t, []string{"h2 -", "p say", "div strips", "ul later", "button -", "svg progress-of", "button back", "button main-action"}, order)
	for id, want := range map[string]string{"backward": "to round 2", "onward": `then round 4, \d+ stitches`} {
		assert.Regexp(t, want, page.Find("#"+id).Text())
		assert.Equal(t, 1, page.Find(`button[aria-describedby="`+id+`"]`).Length())
	}
	assert.Regexp(t, `^round \d+ of \d+$`, page.Find("[data-made]").Text())
	assert.Equal(t, laterTasks, page.Find("[data-later] li").Length())
	strip := page.Find(`[data-progress="gusset"]`)
	assert.Equal(t, []string{"knitted", "knitted", "present", "to-come"}, strip.Find("path").Map(func(_ int, s *goquery.Selection) string { return s.AttrOr("class", "") })[:4])
	assert.Equal(t, len(n.Progress[sectionAt(n, stitch.Gusset)].Increases), strip.Find("circle").Length(), "a dot over each round that increases")
	assert.Regexp(t, `^The gusset, \d+ rounds; increases in rounds 1`, strip.AttrOr("aria-label", ""))
	assert.Equal(t, "left hand: not begun", page.Find(".which a").First().Text())
	assert.Zero(t, page.Find(".which b").Length(), "which hand it is stands in the bar")
}

func sectionAt(n Needles, part stitch.Part) int {
	for i, p := range n.Progress {
		if p.Section == part {
			return i
		}
	}
	return -1
}

// A page that is wide enough shows the whole round, a phone the gusset and its
// neighbours; other parts have one chart for both.
func TestStripsOfTheRound(t *testing.T) {
	n := needlesAt(t, 0, nil)
	on := func(part stitch.Part) map[string]string {
		shows := map[string]string{}
		for _, s := range needlesAt(t, nthOf(t, n, part, 1), nil).Strips {
			if s.On != "" {
				shows[s.View] = s.On
			}
		}
		return shows
	}
	assert.Equal(t, map[string]string{"gusset": "narrow", "hand": "wide"}, on(stitch.Gusset))
	assert.Equal(t, map[string]string{"hand": "all"}, on(stitch.Hand))
	assert.Equal(t, map[string]string{"cuff": "all"}, on(stitch.Cuff))
}

// The words of the trade are those that this round or the next one uses; a page
// without a script has them, too.
func TestOnlyTheTermsOfTheseRoundsStandBelow(t *testing.T) {
	at := func(part stitch.Part, round int) []string {
		n := needlesAt(t, 0, nil)
		n = needlesAt(t, nthOf(t, n, part, round), nil)
		return texts(shown(t, NeedlesPage(n)).Find(".beside .terms li:not([hidden]) summary"))
	}
	assert.Empty(t, at(stitch.Cuff, 1))
	assert.Equal(t, []string{"M1L", "M1R"}, at(stitch.Gusset, 1))
	assert.Contains(t, at(stitch.Hand, 1), "waste yarn")
	assert.NotContains(t, at(stitch.Hand, 1), "M1L")
}

// A tone in the chart is explained while it is in view; the strip of progress
// says what a stitch of it stands for.
func TestWhatIsDrawnBesideARoundIsSaid(t *testing.T) {
	n := needlesAt(t, 1, nil)
	doc := shown(t, NeedlesPage(n))
	drawn := doc.Find(".strip-of:not([hidden]) path.gap[d]")
	_, hidden := doc.Find("[data-gaps]").Attr("hidden")
	assert.Equal(t, drawn.Length() == 0, hidden)
	assert.Equal(t, "each stitch: a round of the cuff", doc.Find("[data-made-of]").Text())
}
