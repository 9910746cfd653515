package web

import (
	"encoding/csv"
	"net/http"
	"net/url"
	"os"
	"strings"
	"testing"

	"github.com/chromedp/chromedp"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"thenar/internal/testenv"
)

// A text of one's own invention that is drawn: markers, wrong lines and a stitch that has no
// symbol.
const toDraw = `Sizes: S (M)

Cuff
CO 36 (40) sts and join in the round.
Rnds 1-6: *K1 tbl, p1; rep from * around.

Hand
Rnd 1: Knit.
Rnd 2: K18 (20), pm, m1p, k1, m1, pm, k to end. 38 (42) sts.
Rnd 3: K to marker, sm, m1l, k to marker, m1r, sm, k to end.
Rnds 4-5: Knit.
Rnd 6: K2, ssk, k to end.
Rnd 7: K10, k2tgo, k to end.
Rnd 8: Knit. 39 (43) sts.
Rnd 9: K20, k2tog, k to end.
BO all sts.`

// Without a script: what was read is drawn in the size that is chosen, its rounds with slips
// are told at their chart, and it is saved as SVG and as CSV.
func TestReadIsDrawnByForms(t *testing.T) {
	t.Parallel()
	a := newApp(t)
	asked := a.post("/check", url.Values{"text": {toDraw}}).doc()
	require.Equal(t, 0, asked.Find(".check-chart").Length(), "it is drawn when it is asked for")
	require.Equal(t, "Draw the chart", asked.Find(".check-draw button").Text())
	require.Equal(t, 2, asked.Find(`.check-draw input[type="radio"]`).Length())

	form := url.Values{"text": {toDraw}, "draw": {"1"}, "size": {"M"}}
	doc := a.post("/check", form).doc()
	charts := doc.Find(".check-chart")
	require.Equal(t, 3, charts.Length())
	assert.Equal(t, "M", doc.Find(`.check-draw input[checked]`).AttrOr("value", ""))
	assert.Equal(t, "Cuff 6 rounds", charts.Eq(0).Find("summary").Text())
	assert.Equal(t, "Hand 8 rounds, 1 to look at", charts.Eq(1).Find("summary").Text())
	assert.Equal(t, "round 7: This was not understood.", charts.Eq(1).Find("li").Text())
	assert.Equal(t, "#line-13", charts.Eq(1).Find("li a").AttrOr("href", ""))
	svg := charts.Eq(1).Find("svg").Text()
	for _, said := range []string{"not read", "open", "M1P", "make one, purled"} {
		assert.Contains(t, svg, said)
	}

	form.Set("chart", "3")
	file := a.post("/check/chart.csv", form)
	assert.Equal(t, "text/csv; charset=utf-8; header=absent", file.header.Get("Content-Type"))
	assert.Contains(t, file.header.Get("Content-Disposition"), `read-3.csv`)
	rows, err := csv.NewReader(strings.NewReader(file.body)).ReadAll()
	require.NoError(t, err)
	require.Len(t, rows, 1)
	assert.Equal(t, "9", rows[0][len(rows[0])-1])
	form.Del("chart")
	picture := a.post("/check/chart.svg", form)
	assert.Equal(t, "image/svg+xml", picture.header.Get("Content-Type"))
	assert.Contains(t, picture.body, "Chart of what was read")
	assert.Equal(t, http.StatusUnprocessableEntity, a.post("/check/chart.svg", url.Values{"text": {" "}}).status)
}

// What was read is compared with a chart's table; what is no such table is told at its field,
// and nothing typed is lost.
func TestReadIsComparedByForms(t *testing.T) {
	t.Parallel()
	a := newApp(t)
	form := url.Values{"text": {toDraw}, "draw": {"1"}, "size": {"S"}}
	table := a.post("/check/chart.csv", form).body
	form.Set("against", table)
	doc := a.post("/check", form).doc()
	assert.Contains(t, doc.Find(".check-charts").Text(), "The chart and the text tell the same: 13 rounds.")
	assert.Contains(t, doc.Find(".check-how").Text(), "Round 7 of “Hand” isn’t compared: nobody knows its stitches.")

	form.Set("against", strings.Replace(table, "ssk", "k2tog", 1))
	doc = a.post("/check", form).doc()
	found := doc.Find(".check-differs li")
	require.Equal(t, 1, found.Length())
	assert.Equal(t, "#line-12", found.Find("a").AttrOr("href", ""))
	assert.Equal(t, "Round 6: stitch 3 is k2tog on the chart, ssk in the text.", found.Find("p").Text())

	form.Set("section", "Cuff")
	doc = a.post("/check", form).doc()
	assert.Equal(t, "Cuff", doc.Find(`select[name="section"] option[selected]`).AttrOr("value", ""))
	form.Set("against", "k,k2tgo,1")
	got := a.post("/check", form)
	assert.Equal(t, http.StatusUnprocessableEntity, got.status)
	assert.Equal(t, `row 1, field 2: "k2tgo" is no stitch; is k2tog meant?`, got.doc().Find("#fault-against").Text())
	assert.Equal(t, "k,k2tgo,1", strings.TrimPrefix(got.doc().Find(`textarea[name="against"]`).Text(), "\n"))
}

// In a browser: the chart is drawn on a desk and a phone, in light and dark, scrolls in its box,
// and axe-core finds nothing; another size is drawn, and a table compared.
func TestReadIsDrawnInABrowser(t *testing.T) {
	t.Parallel()
	axe, err := os.ReadFile(testenv.File(t, "THENAR_AXE"))
	require.NoError(t, err)
	b := newBrowser(t)
	sound := func() {
		t.Helper()
		b.do(chromedp.Evaluate[chromedp.Void](string(axe)))
		assert.Empty(t, await[[]string](b, strings.Replace(violations, "%t", "false", 1)))
	}
	b.asBegun()
	b.open("/check")
	b.do(chromedp.SetValue(chromedp.CSS(`.check-form textarea`), toDraw))
	b.follow(`.check-form .main-action`)
	b.follow(`.check-draw button`)
	b.until(`document.querySelectorAll(".check-chart svg").length === 3`)
	sound()
	b.shot("check-chart")
	b.do(chromedp.Click(chromedp.CSS(`.check-draw [value="M"]`)))
	b.do(chromedp.SetValue(chromedp.CSS(`[name="against"]`), "k,k2tog,1"))
	b.follow(`.check-charts > button`)
	b.until(`document.querySelectorAll(".check-how li").length > 1`)
	assert.Equal(t, "M", eval[string](b, `document.querySelector(".check-draw :checked").value`))
	sound()
	b.phone()
	assert.LessOrEqual(t, eval[int](b, `document.documentElement.scrollWidth`), 360)
	assert.True(t, eval[bool](b, `[...document.querySelectorAll(".check-chart[open] .scroll")].some((s) => s.scrollWidth > s.clientWidth)`), "a wide chart scrolls in its box")
	assert.Empty(t, eval[[]string](b, lowTargets))
	b.shot("check-chart-phone")
	b.scheme("dark")
	sound()
	b.shot("check-chart-dark")
}
