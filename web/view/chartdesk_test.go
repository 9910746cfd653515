package view

import (
	"strconv"
	"testing"

	"github.com/PuerkitoBio/goquery"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"thenar/internal/chart"
	"thenar/internal/project"
	"thenar/internal/stitch"
)

// chartDesk renders the desk of a plain mitt's chart.
func chartDesk(t *testing.T) (*goquery.Document, Mitt) {
	t.Helper()
	doc := project.New("Mitts")
	for path, text := range map[string]string{"hand.hand_circumference": "19", "gauge.swatches[0].stitches": "24", "gauge.swatches[0].width": "10"} {
		doc.Sheet[path] = text
	}
	out, err := project.NewPlanner().Derive(doc, chart.Marks{})
	require.NoError(t, err)
	m := Mitt{ID: 1, Doc: doc, Desk: ChartDesk, Answer: NewAnswer(doc, out, ChartDesk, ChartAsk{}, nil)}
	m.Answer.Chart.Page.Href = "/mitts/1/chart"
	return parsed(t, ChartPage(m)), m
}

// The row over the chart has how far a mark reaches first, then what moves
// increases and rounds; each has a letter of its own, shown beside its words.
func TestReachRow(t *testing.T) {
	t.Parallel()
	desk, _ := chartDesk(t)
	row := desk.Find("#chart-reaches")
	assert.Equal(t, "How far a mark reaches", row.AttrOr("aria-label", ""))
	assert.Equal(t, []string{
		"stitch by stitch", "a run", "a block", "all alike", "both edges", "look", "mark off",
		"put in a round", "take out a round", "move an increase",
	}, texts(row.Find("button > span:not(.in-fold)")))
	assert.Equal(t, []string{"put in one above", "take it out", "move an increase"}, texts(row.Find("button.plan > span:not(.in-row)")), "after the round's name")
	assert.Equal(t, []string{"A mark reaches stitch by stitch", "rounds"}, texts(desk.Find(`.reach > [data-folds][aria-controls="chart-reaches"][aria-expanded="false"]`)))
	seen := map[string]bool{}
	row.Find("button").Each(func(_ int, b *goquery.Selection) {
		key := b.AttrOr("aria-keyshortcuts", "")
		assert.Equal(t, key, b.Find("kbd[aria-hidden]").Text(), b.Text())
		assert.Len(t, key, 1, b.Text())
		assert.False(t, seen[key], "%s has a letter of its own", b.Text())
		seen[key] = true
	})
	assert.False(t, seen["u"] || seen["r"], "undo and redo have no letter alone")
	assert.Equal(t, []string{"undo", "redo", "nearer+", "farther−", "show…"}, texts(desk.Find(".looks button")))
}

// What is marked off has its own row, in the trade's words, shown when there is
// some.
func TestMarkedOffRow(t *testing.T) {
	t.Parallel()
	desk, _ := chartDesk(t)
	row := desk.Find(`.reach [data-selected][hidden]`)
	assert.Equal(t, "What is marked off", row.AttrOr("aria-label", ""))
	assert.Equal(t, []string{
		"let go", "repeat all round", "lay round the hand", "lay upward", "paint", "back to plan", "trace", "lift off", "lay down",
		"turn over", "upside down", "into the sampler", "in words",
	}, texts(row.Find("button")))
}

// The rail has the yarns first, then the stitches by what they do to a round of
// plain stitches, and where in the mitt one is.
func TestRail(t *testing.T) {
	t.Parallel()
	desk, m := chartDesk(t)
	rail := desk.Find(".rail")
	assert.Equal(t, "Yarns and stitches", rail.AttrOr("aria-label", ""))
	assert.Len(t, texts(rail.Find("[data-tool-colour]")), len(m.Answer.Chart.Yarns))
	for part, want := range map[string][]string{
		"keep": {"k", "p", "k tbl", "sl"}, "more": {"M1L", "M1R", "M1", "yo"}, "fewer": {"k2tog", "ssk"},
	} {
		assert.Equal(t, want, texts(rail.Find(`[data-strip-part="`+part+`"] [data-tool-op]`)), part)
	}
	others := rail.Find(`[data-strip-part="other"]`)
	assert.Equal(t, 8, others.Find("[data-tool-op]").Length())
	_, hidden := others.Attr("hidden")
	assert.True(t, hidden, "they are a press away")
	rail.Find("[data-tool-op], [data-tool-colour]").Each(func(_ int, b *goquery.Selection) {
		assert.Equal(t, "false", b.AttrOr("aria-pressed", ""), b.Text())
		assert.Equal(t, 1, b.Find("svg[aria-hidden]").Length(), "a picture of itself, with a word: %s", b.Text())
	})
	assert.Equal(t, []string{"cuff", "gusset", "hand", "thumb"}, texts(desk.Find(".whole .parts a")), "every part can be reached")
	assert.Equal(t, []string{"gusset"}, texts(desk.Find(".whole .parts [aria-current]")))
}

// The margin holds all that stands beside the chart. What is typed and chosen in
// its forms is not replaced with the chart.
func TestMargin(t *testing.T) {
	t.Parallel()
	desk, _ := chartDesk(t)
	margin := desk.Find("details.margin")
	require.Equal(t, 1, margin.Length())
	assert.Equal(t, []string{"What can I do here?", "Strands to look at", "Notes", "Motifs laid by rule", "Sampler", "Key"}, texts(margin.Find("h2")))
	fragment := margin.Find(`[data-fragment="margin"]`)
	assert.Zero(t, fragment.Find("#measure-form, form.chart-file").Length())
	assert.Equal(t, 1, margin.Find("#measure-form").Length())
	assert.Equal(t, 1, margin.Find("form.chart-file").Length())
	assert.Equal(t, []string{"long strands"}, texts(margin.Find("[data-sight]:not([checked])").Parent()), "strands are seen when asked for")
}

// The small mitt has every round of the mitt once.
func TestSmallMittHasEveryRound(t *testing.T) {
	t.Parallel()
	desk, m := chartDesk(t)
	rounds := map[string]int{}
	desk.Find("[data-mini-part]").Each(func(_ int, e *goquery.Selection) {
		n, err := strconv.Atoi(e.AttrOr("data-rounds", ""))
		require.NoError(t, err)
		rounds[e.AttrOr("data-mini-part", "")] += n
	})
	want := map[string]int{}
	for _, section := range m.Answer.Out.Charts.Mitt.Sections {
		if len(section.Rounds) > 0 {
			want[string(section.Part)] = len(section.Rounds)
		}
	}
	assert.Equal(t, want, rounds)
}

// Lost marks that lay side by side are one block.
func TestLostBlocks(t *testing.T) {
	t.Parallel()
	lost := func(section stitch.Part, round int, column, words string) chart.PageLost {
		return chart.PageLost{Edit: chart.Edit{Section: section, Round: round, Column: column}, Words: words}
	}
	blocks := lostBlocks([]chart.PageLost{
		lost(stitch.Gusset, 3, "A1", "cream"), lost(stitch.Hand, 9, "H2", "purl"), lost(stitch.Gusset, 1, "A2", "cream"),
		lost(stitch.Gusset, 2, "A1", "blue"), lost(stitch.Gusset, 2, "Z1", "blue"),
	})
	require.Len(t, blocks, 3)
	assert.Equal(t, lostBlock{"gusset, rounds 1–3: cream, blue", "0 2 3", 3}, blocks[0])
	assert.Equal(t, []string{" (3 marks)", ""}, []string{blocks[0].many(), blocks[1].many()})
	assert.Equal(t, "hand, round 9: purl", blocks[1].Words)
	assert.Equal(t, "4", blocks[2].At, "the other edge is a block of its own")
}

// The yarns in use have their fields at once; the others come one at a time, each
// behind the one before. All of them are sent with the form.
func TestOneMoreYarn(t *testing.T) {
	t.Parallel()
	desk, m := chartDesk(t)
	form := desk.Find("#measure-form")
	for i, id := range []string{"a", "b", "c", "h"} {
		at := []int{0, 1, 2, 7}[i]
		field := form.Find(`[id="` + yarnField(id) + `"]`)
		require.Equal(t, 1, field.Length(), id)
		assert.Equal(t, at, field.ParentsFiltered("details.one-more").Length(), "yarn %s lies behind those before", id)
	}
	m.Doc.Sheet["chart.yarns[2].name"] = "moss"
	again := parsed(t, ChartPage(m)).Find("#measure-form")
	assert.Zero(t, again.Find(`[id="`+yarnField("c")+`"]`).ParentsFiltered("details.one-more").Length(), "it is in use")
	assert.Equal(t, 1, again.Find(`[id="`+yarnField("b")+`"]`).ParentsFiltered("details.one-more").Length())
	before := desk.Find(".margin-body > *")
	assert.Less(t, before.IndexOfSelection(desk.Find(".file-fold")), before.IndexOfSelection(desk.Find("#measure-form")), "the chart as a file stands above the long list")
}
