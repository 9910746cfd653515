package web

import (
	"fmt"
	"net/http"
	"os"
	"testing"

	"github.com/chromedp/chromedp"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"thenar/internal/chart"
	"thenar/internal/stitch"
	"thenar/internal/testenv"
)

// carried is the list of strands as it is read, and how many are drawn on the chart.
const carried = `[...document.querySelectorAll("#chart-floats > li")].map((li) => li.className + ": " + (li.querySelector("summary") ?? li).textContent).join(" | ")
	+ " | drawn " + document.querySelectorAll('[data-layer="float"] text').length`

// A long strand is said to be meant by a press beside it: it is only counted then, and
// drawn no more. That is a stroke like any other: undone, done again, heard of in another
// window and taken back there, and still there after a reload.
func TestAStrandThatIsMeant(t *testing.T) {
	t.Parallel()
	d := drawingOf(t)
	mitt := d.mitt()
	d.do(chromedp.Evaluate[chromedp.Void](`document.querySelector("[data-margin]").open = true; document.querySelector('[data-sight="float"]').click()`))
	d.until(`document.querySelectorAll('[data-layer="float"] text').length === 1`)
	told := eval[string](d.browser, carried)
	require.Regexp(t, `^look: Gusset, round 18: rust is carried over 11; .* drawn 1$`, told)

	press := func(words string) {
		t.Helper()
		d.do(chromedp.Click(chromedp.CSS(fmt.Sprintf(`#chart-floats button[aria-label^=%q]`, words))))
	}
	press("leave it long: Gusset, round 18: rust")
	d.until(`document.querySelector("#chart-floats > .meant summary")?.textContent === "1 strand left long"`)
	assert.NotContains(t, eval[string](d.browser, carried), "rust is carried")
	assert.Contains(t, eval[string](d.browser, carried), "drawn 0")
	assert.True(t, eval[bool](d.browser, `document.activeElement.closest("#chart-floats") !== null`), "the keyboard stays in the list")
	d.stays("meant", 1)
	at := chart.Anchor{Section: stitch.Gusset, Round: 18, Column: "A6"}
	value := d.head().Marks[at].Strand
	assert.Regexp(t, `^b\d+$`, value)
	d.lookAt("strand-meant")

	d.do(chromedp.Click(chromedp.CSS(`[data-do="undo"]`)))
	d.until(`!document.querySelector("#chart-floats > .meant")`)
	assert.Equal(t, told, eval[string](d.browser, carried))
	d.stays("undone", 1)
	d.do(chromedp.Click(chromedp.CSS(`[data-do="redo"]`)))
	d.until(`document.querySelector("#chart-floats > .meant") !== null`)
	d.stays("done again", 1)

	const elsewhere = `fetch(%q, {method: "POST", headers: {"Content-Type": "application/json"}, body: JSON.stringify({after: %d, edits: [{section: "gusset", round: 18, column: "A6", layer: "strand", value: %q}]})}).then((r) => r.status)`
	require.Equal(t, http.StatusOK, await[int](d.browser, fmt.Sprintf(elsewhere, mitt+"/chart", d.revision, "")))
	d.until(`!document.querySelector("#chart-floats > .meant")`)
	require.Equal(t, http.StatusOK, await[int](d.browser, fmt.Sprintf(elsewhere, mitt+"/chart", d.revision+1, value)))
	d.until(`document.querySelector("#chart-floats > .meant") !== null`)

	d.desk(mitt, "chart")
	d.until(`document.querySelector("#chart-floats > .meant summary")?.textContent === "1 strand left long"`)
	d.do(chromedp.Evaluate[chromedp.Void](`document.querySelector("[data-margin]").open = true; document.querySelector("#chart-floats > .meant details").open = true`))
	assert.Contains(t, eval[string](d.browser, `document.querySelector("#chart-floats > .meant").textContent`), "Gusset, round 18: rust over 11")
	press("look at it again: 1 strand left long")
	d.until(`!document.querySelector("#chart-floats > .meant")`)
	assert.Contains(t, eval[string](d.browser, carried), "rust is carried over 11")
	d.until(chartSaved)
	assert.Empty(t, d.head().Marks[at].Strand)
}

// lookAt keeps pictures of the page in light and dark, wide and on a phone, and lets axe-core look
// at it.
func (d *drawing) lookAt(name string) {
	d.t.Helper()
	axe, err := os.ReadFile(testenv.File(d.t, "THENAR_AXE"))
	require.NoError(d.t, err)
	show := chromedp.Evaluate[chromedp.Void](`document.querySelector("[data-margin]").open = true; document.getElementById("chart-floats").scrollIntoView({block: "center"})`)
	for _, scheme := range []string{"light", "dark"} {
		d.scheme(scheme)
		d.size(1280, 900)
		d.do(show)
		d.shot(name + "-" + scheme)
		d.do(chromedp.Evaluate[chromedp.Void](string(axe)))
		assert.Empty(d.t, await[[]string](d.browser, fmt.Sprintf(violations, false)), scheme)
	}
	d.phone()
	d.do(show)
	d.shot(name + "-phone")
	assert.Empty(d.t, eval[[]string](d.browser, lowTargets))
	d.asBegun()
	d.size(1280, 1400)
}

// What is meant goes with the mitt's file, and its words don't ask to catch it.
func TestAMeantStrandInAFile(t *testing.T) {
	t.Parallel()
	a := newApp(t)
	at := a.sample()
	const mark = `{"section":"gusset","round":18,"column":"H3","layer":"strand","value":"b8"}`
	require.Equal(t, http.StatusOK, a.stroke(at+"/chart", `{"after":1,"edits":[`+
		`{"section":"gusset","round":18,"column":"H3","layer":"colour","value":"b"},{"section":"gusset","round":18,"column":"H12","layer":"colour","value":"b"}]}`).status)
	const words = "/words.txt?section=gusset&from=18&to=18"
	assert.Contains(t, a.get(at+words).body, "Catching rust: ")
	require.Equal(t, http.StatusOK, a.stroke(at+"/chart", `{"after":2,"edits":[`+mark+`]}`).status)
	assert.NotContains(t, a.get(at+words).body, "Catching rust: ")
	assert.Equal(t, "1 strand left long", a.desk(at, "chart").doc().Find("#chart-floats .meant").Text())
	assert.Contains(t, a.get(at+"/history").doc().Find(".moments").Text(), "1 strand left long in the gusset")

	file := a.get(at + "/export.json")
	require.Equal(t, http.StatusOK, file.status)
	other := newApp(t)
	require.Equal(t, http.StatusOK, other.sendFile("/import", "mitt.json", []byte(file.body)).status)
	assert.Contains(t, other.get("/mitts/1/chart").body, mark)

	refused := a.stroke(at+"/chart", `{"after":3,"edits":[{"section":"gusset","round":18,"column":"H3","layer":"strand","value":"meant"}]}`)
	assert.Equal(t, http.StatusBadRequest, refused.status)
	assert.Contains(t, refused.body, "such as b7")
}
