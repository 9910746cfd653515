package web

import (
	"strings"
	"testing"

	"github.com/chromedp/chromedp"
	"github.com/chromedp/chromedp/kb"
	"github.com/stretchr/testify/assert"
)

// listed is a line over marks to be decided; empty if it is not shown.
func (b *browser) listed(of string) string {
	b.t.Helper()
	return eval[string](b, `(() => { const box = document.querySelector('[data-undecided="`+of+`"]:not([hidden])'); return box ? box.querySelector("[data-said]").textContent : ""; })()`)
}

// What is painted on a motif stays on its stitch while the motif moves, and is listed then: it
// is taken along at a press, and the press can be undone.
func TestPaintedStitchesOfAMotifThatMoved(t *testing.T) {
	t.Parallel()
	b := newBrowser(t)
	mitt := dotted(b)
	b.do(chromedp.Click(chromedp.CSS(`.picked [data-run="repeat"]`)))
	b.until(`document.querySelectorAll("[data-laid-form]").length === 1`)
	b.until(chartSaved)
	b.key(kb.Escape)
	b.do(chromedp.Click(chromedp.CSS(`[data-shape="free"]`)))
	b.do(chromedp.Click(chromedp.CSS(`[data-tool-colour="c"]`)))
	b.until(quiet)
	b.click(b.cell(22, 3))
	b.click(b.cell(23, 9))
	b.until(chartSaved)
	section := eval[string](b, `JSON.parse(document.getElementById("chart-data").textContent).rows[21].section`)
	round := eval[int](b, `JSON.parse(document.getElementById("chart-data").textContent).rows[21].round`)
	count := func(round int) int { return strings.Count(colours(b, mitt, section, round), "c") }
	assert.Empty(t, b.listed("drifted"), "it lies where it was painted")

	b.do(chromedp.Evaluate[chromedp.Void](`document.querySelector("[data-laid-take]").getAttribute("aria-pressed") === "true" || document.querySelector("[data-laid-take]").click()`))
	b.do(chromedp.Focus(chromedp.CSS("svg[data-chart]")))
	b.key(kb.ArrowUp)
	b.until(chartSaved)
	b.until(`document.querySelector('[data-undecided="drifted"]') !== null`)
	assert.Equal(t, "2 painted stitches no longer lie where they did in their motif.", b.listed("drifted"))
	b.key(kb.Escape)

	b.do(chromedp.Click(chromedp.CSS(`[data-undecided="drifted"] [data-along]`)))
	b.until(`document.querySelector('[data-undecided="drifted"]').hidden`)
	b.until(chartSaved)
	assert.Equal(t, []int{0, 1, 1}, []int{count(round), count(round + 1), count(round + 2)}, "a round up, as the motif")
	b.do(chromedp.Click(chromedp.CSS(`[data-do="undo"]`)))
	b.until(`document.querySelector('[data-undecided="drifted"]:not([hidden])') !== null`)
	b.until(chartSaved)
	assert.Equal(t, []int{1, 1, 0}, []int{count(round), count(round + 1), count(round + 2)})
	b.do(chromedp.Click(chromedp.CSS(`[data-undecided="drifted"] [data-leave]`)))
	b.until(`document.querySelector('[data-undecided="drifted"]').hidden`)
	b.until(chartSaved)
	b.desk(mitt, "chart")
	assert.Empty(t, b.listed("drifted"), "left there, it belongs to no motif")
	b.desk(mitt, "fit")
	assert.NotContains(t, eval[string](b, `document.querySelector(".fit-motifs").textContent`), "painted")
}

// Over the marks that have no place stands how many are left, also after some are put back, and
// after that is undone.
func TestMarksWithoutAPlaceAreCounted(t *testing.T) {
	t.Parallel()
	b := newBrowser(t)
	mitt := b.sample()
	b.open(mitt + "/desk/chart?view=hand&layout=columns")
	b.until(`document.querySelector("[data-needle] .wood") !== null`)
	b.do(chromedp.Click(chromedp.CSS(`[data-tool-op="p"]`)))
	b.click(b.cell(18, 3))
	b.click(b.cell(18, 30))
	b.click(b.cell(19, 30))
	b.until(chartSaved)
	b.elsewhere("hand.gusset_length", "4")
	b.until(`document.querySelector('[data-undecided="lost"]') !== null`)
	assert.Contains(t, b.listed("lost"), "3 marks have no place")
	b.until(quiet)
	blocks := `[...document.querySelectorAll('[data-undecided="lost"] li:not([hidden])')]`
	n := eval[int](b, blocks+`.length`)
	assert.Positive(t, n)
	b.do(chromedp.Evaluate[chromedp.Void](blocks + `.find((li) => !li.textContent.includes("marks")).querySelector("[data-drop]").click()`))
	b.until(chartSaved)
	assert.Contains(t, b.listed("lost"), "2 marks have no place")
	b.do(chromedp.Click(chromedp.CSS(`[data-do="undo"]`)))
	b.until(`document.querySelector('[data-undecided="lost"] [data-said]').textContent.startsWith("3 marks")`)
	assert.Equal(t, n, eval[int](b, blocks+`.length`))
}

// Without a connection a press on a motif is answered all the same, and the page doesn't say
// in one place that it is saved and in another that it is not.
func TestAMotifWithoutAConnection(t *testing.T) {
	t.Parallel()
	b := newBrowser(t)
	dotted(b)
	b.do(chromedp.Click(chromedp.CSS(`.picked [data-run="repeat"]`)))
	b.until(`document.querySelectorAll("[data-laid-form]").length === 1`)
	b.until(chartSaved)
	b.until(quiet)
	b.serverAway()
	b.do(chromedp.Evaluate[chromedp.Void](`document.querySelector('[data-laid-form] [value="off"]').click()`))
	b.until(`document.querySelector("#chart-saved").dataset.state === "unsaved"`)
	const waits = "The motif changes as soon as there is a connection."
	assert.Equal(t, waits, eval[string](b, `document.querySelector("#chart-announce").textContent`))
	assert.Equal(t, waits, eval[string](b, `document.querySelector("[data-came]").textContent`))
	assert.NotContains(t, eval[string](b, `document.getElementById("saved").textContent`), "saved")
	b.serverBack()
	b.until(`document.querySelector("[data-came]").textContent === "Turned off."`)
	b.until(chartSaved)
	assert.Contains(t, eval[string](b, `document.getElementById("saved").textContent`), "saved")
	b.expectErrors()
}
