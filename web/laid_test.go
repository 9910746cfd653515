package web

import (
	"fmt"
	"strings"
	"testing"

	"github.com/chromedp/chromedp"
	"github.com/chromedp/chromedp/kb"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// given is the text of a field of the first motif that is laid, as the page has it from the
// server; empty if it has none.
func (b *browser) given(key string) string {
	b.t.Helper()
	return eval[string](b, fmt.Sprintf(`JSON.parse(document.getElementById("chart-data").textContent).repeats?.[0]?.given[%q] ?? ""`, key))
}

// set waits until a field of the first motif has a text.
func (b *browser) set(key, text string) {
	b.t.Helper()
	b.until(chartSaved)
	b.until(fmt.Sprintf(`(JSON.parse(document.getElementById("chart-data").textContent).repeats?.[0]?.given[%q] ?? "") === %q`, key, text))
}

// laidRounds are the rounds of a page's chart on which a motif lies, with the yarns of the first
// stitches of the lowest of them.
const laidRounds = `JSON.parse(document.getElementById("chart-data").textContent).rows.flatMap((r) => (r.laid ? [r.section + r.round] : [])).join(" ")`

// dotted opens the sample's hand and draws a motif of four by two there, from round 21 of the
// gusset on, with one stitch of rust in each of its rounds.
func dotted(b *browser) (mitt string) {
	b.t.Helper()
	mitt = b.sample()
	b.desk(mitt, "chart")
	dots(b, mitt, 1)
	return mitt
}

// dots draws that motif on the chart of a mitt, with its first stitch at a place of the rounds.
func dots(b *browser, mitt string, first int) {
	b.t.Helper()
	b.open(mitt + "/desk/chart?view=hand&layout=columns")
	b.until(`document.querySelector("[data-needle] .wood") !== null`)
	b.do(chromedp.Click(chromedp.CSS(`[data-tool-colour="b"]`)))
	b.until(quiet)
	b.click(b.cell(22, first+1))
	b.click(b.cell(23, first+3))
	b.do(chromedp.Click(chromedp.CSS(`[data-shape="select"]`)))
	b.drag(b.cell(22, first), b.cell(23, first+3))
	b.says("4 stitches by 2 rounds marked off.")
	b.until(chartSaved)
}

// A block that is marked off is laid by rule where it is; in hand it is moved, stretched, turned
// off and dragged by its edges, each a stroke that can be undone, and another window follows.
func TestLayingAMotifByRule(t *testing.T) {
	t.Parallel()
	b := newBrowser(t)
	mitt := dotted(b)
	at := eval[string](b, `(() => { const r = JSON.parse(document.getElementById("chart-data").textContent).rows[21]; return r.section + " " + r.round; })()`)
	b.do(chromedp.Click(chromedp.CSS(`.picked [data-run="repeat"]`)))
	b.says("motif")
	b.set("off", "")
	first := b.given("from")
	require.NotEmpty(t, first, "it begins where it was drawn, %s", at)
	assert.Empty(t, colours(b, mitt, strings.Fields(at)[0], 22), "the marks have gone into the motif")
	lies := eval[string](b, laidRounds)
	assert.Contains(t, lies, strings.ReplaceAll(at, " ", ""))
	b.until(`document.querySelector(".laid-borders path").getAttribute("d") !== ""`)
	b.until(`document.querySelector(".in-hand").getAttribute("d") !== ""`)
	yarns := `[...document.querySelectorAll('[data-layer="colour"] [data-row="22"] path')].length`
	assert.Positive(t, eval[int](b, yarns))

	b.do(chromedp.Focus(chromedp.CSS("svg[data-chart]")))
	offset := b.given("offset")
	b.key(kb.ArrowUp)
	b.until(chartSaved)
	b.until(fmt.Sprintf(`JSON.parse(document.getElementById("chart-data").textContent).repeats[0].given.from === String(%s + 1)`, first))
	b.key(kb.ArrowLeft)
	b.until(chartSaved)
	b.until(fmt.Sprintf(`Number(JSON.parse(document.getElementById("chart-data").textContent).repeats[0].given.offset) === (%s + 1) %% 4`, "0"+offset))
	b.with(kb.ArrowDown, chromedp.ModifierShift)
	b.until(`Number(JSON.parse(document.getElementById("chart-data").textContent).repeats[0].given.to) > 0`)
	b.until(chartSaved)
	to := b.given("to")
	b.with("z", chromedp.ModifierCtrl)
	b.set("to", "")
	b.key(kb.Delete)
	b.set("off", "true")
	b.until(`document.querySelector("[data-came]").textContent === "Turned off."`)
	b.with("z", chromedp.ModifierCtrl)
	b.set("off", "")
	assert.NotEmpty(t, to)

	other := newBrowserAt(t, b.url)
	other.open(mitt + "/desk/chart?view=hand&layout=columns")
	other.until(`document.querySelectorAll("[data-laid-form]").length === 1`)
	other.do(chromedp.Evaluate[chromedp.Void](`document.querySelector('[data-laid-form] [name="name"]').closest("details").open = true; document.querySelector(".margin").open = true`))
	other.do(chromedp.Evaluate[chromedp.Void](`(() => { const f = document.querySelector('[data-laid-form] [name="set"]'); f.value = "centred"; f.dispatchEvent(new Event("change", {bubbles: true})); })()`))
	other.set("set", "centred")
	b.until(`document.querySelector('[data-laid-form] [name="set"]').value === "centred"`)
	b.set("set", "centred")

	b.do(chromedp.Evaluate[chromedp.Void](`document.querySelector("[data-laid-take]").getAttribute("aria-pressed") === "true" || document.querySelector("[data-laid-take]").click()`))
	b.until(`document.querySelector(".in-hand").getAttribute("d") !== ""`)
	grip := eval[[]point](b, `(() => {
		const frame = document.querySelector(".in-hand").getBoundingClientRect(), data = JSON.parse(document.getElementById("chart-data").textContent);
		const box = document.querySelector(".grid-frame");
		box.scrollTop += frame.top - box.getBoundingClientRect().top - box.clientHeight / 2;
		const now = document.querySelector(".in-hand").getBoundingClientRect();
		const high = data.cell_height * document.querySelector("svg[data-chart]").getScreenCTM().d;
		return [{X: now.left + now.width / 2, Y: now.top + 1}, {X: now.left + now.width / 2, Y: now.top + 1 + 4 * high}];
	})()`)
	b.pull(grip[0], grip[1])
	b.until(`Number(JSON.parse(document.getElementById("chart-data").textContent).repeats[0].given.to) > 0`)
	b.key(kb.Escape)
	b.until(`document.querySelector(".in-hand").getAttribute("d") === ""`)
	b.until(chartSaved)
	b.shot("laid-by-rule")
}

// What is painted on a laid stitch stays there; one press puts it into all of its motif.
func TestALaidStitchHereOrInAll(t *testing.T) {
	t.Parallel()
	b := newBrowser(t)
	mitt := dotted(b)
	b.do(chromedp.Click(chromedp.CSS(`.picked [data-run="repeat"]`)))
	b.until(`document.querySelectorAll("[data-laid-form]").length === 1`)
	b.until(chartSaved)
	motif := `JSON.parse(document.getElementById("chart-data").textContent).repeats[0].yarns.join("/")`
	was := eval[string](b, motif)
	b.key(kb.Escape)
	b.do(chromedp.Click(chromedp.CSS(`[data-shape="free"]`)))
	b.do(chromedp.Click(chromedp.CSS(`[data-tool-colour="c"]`)))
	b.until(quiet)
	b.click(b.cell(22, 3))
	b.says("Painted here only.")
	b.until(chartSaved)
	assert.Equal(t, was, eval[string](b, motif))
	section := eval[string](b, `JSON.parse(document.getElementById("chart-data").textContent).rows[21].section`)
	round := eval[int](b, `JSON.parse(document.getElementById("chart-data").textContent).rows[21].round`)
	require.Contains(t, colours(b, mitt, section, round), "c", "a mark, here")
	assert.Regexp(t, `^in all \d+$`, eval[string](b, `document.querySelector("[data-acts] button").textContent`))
	b.do(chromedp.Click(chromedp.CSS(`[data-acts] button`)))
	b.until(motif + ` !== "` + was + `"`)
	b.until(chartSaved)
	now := eval[string](b, motif)
	assert.Equal(t, strings.Count(was, "b"), strings.Count(now, "b"))
	assert.Equal(t, 1, strings.Count(now, "c"), now)
	assert.NotContains(t, colours(b, mitt, section, round), "c", "the mark has gone into the motif")
	b.do(chromedp.Click(chromedp.CSS(`[data-do="undo"]`)))
	b.until(motif + ` === "` + was + `"`)
	b.until(chartSaved)
	assert.Contains(t, colours(b, mitt, section, round), "c", "the mark is back")
}
