package web

import (
	"encoding/json"
	"fmt"
	"os"
	"testing"

	"thenar/internal/testenv"

	"github.com/chromedp/chromedp"
	"github.com/chromedp/chromedp/kb"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

const marks = `JSON.parse(document.getElementById("chart-data").textContent).marks`

// chartSaved waits until every stroke is on the server, and what follows from
// it on the page: the toolbar may move a little with that.
const chartSaved = `document.getElementById("chart-saved").dataset.state === "saved" && ` + quiet

// The whole main job in a real browser: type measurements, see the plan,
// paint three stitches by pointer, keyboard and touch, reload and find them,
// undo after the reload, print to PDF and read the chart back out of it.
func TestMainJob(t *testing.T) {
	t.Parallel()
	b := newBrowser(t)
	b.open("/")
	b.follow(".begin .main-action")
	b.until(`document.querySelector(".in-the-way") !== null`)
	page := b.mitt()
	b.do(chromedp.Evaluate[chromedp.Void](`window.samePage = "still here"`))

	measure(b, page)
	assert.Equal(t, "still here", eval[string](b, `window.samePage`), "no page was loaded anew")

	b.follow(`.desk-tape a[href$="/desk/chart"]`)
	paint(b, page)
	b.until(chartSaved)
	b.desk(page, "chart")
	require.Equal(t, 3, eval[int](b, marks+`.length`), "found after a reload")
	assert.Equal(t, 2, eval[int](b, `[...document.querySelectorAll('[data-layer="painted"] path')].filter((p) => p.getAttribute("d")).length`), "a colour is no change of the plan")

	history(b, page)
	b.shot("mitt")
	printed(b, page)
}

// measure types what the tape and the swatch said; every key is answered
// without losing what is being typed.
func measure(b *browser, page string) {
	b.t.Helper()
	b.write("gauge.swatches[0].stitches", "24")
	b.write("gauge.swatches[0].width", "10")
	b.write("gauge.swatches[0].rounds", "32")
	b.write("gauge.swatches[0].height", "10")
	b.write("hand.hand_circumference", "19")
	b.until(`document.querySelector(".summary")?.textContent.includes("hand 44")`)
	b.write("hand.hand_length", "18")
	b.write("hand.thumb_circumference", "6,")
	b.until(`document.querySelector('[data-fault-for="hand.thumb_circumference"]').textContent === ""`)
	b.do(chromedp.KeyEvent("5x"))
	b.until(`document.querySelector('[data-fault-for="hand.thumb_circumference"]').textContent.includes("is not a number")`)
	require.Equal(b.t, "6,5x", eval[string](b, `document.activeElement.value`), "what was typed stands")
	b.until(`document.querySelector('[data-fragment="drawing"]').classList.contains("stale")`)
	b.do(chromedp.KeyEvent(kb.Backspace))
	b.until(`!document.querySelector('[data-fragment="drawing"]').classList.contains("stale")`)
	b.until(`document.querySelector(".summary")?.textContent.includes("gusset 3 → 15 in 19 rounds")`)
	b.until(`document.querySelector('.tape[data-field="hand.thumb_circumference"]').classList.contains("lit")`)
	for _, side := range []string{"left", "right"} {
		b.choose("side", side)
		b.until(fmt.Sprintf(`document.querySelector('.sides [value="side=%s"]').getAttribute("aria-pressed") === "true"`, side))
		b.until(`document.getElementById("saved").dataset.state === "saved"`)
		assert.Contains(b.t, b.words(page), side+" hand")
	}
}

// words are the instructions of a mitt, as they stand at Pattern.
func (b *browser) words(mitt string) string {
	b.t.Helper()
	return await[string](b, fmt.Sprintf(`fetch(%q).then((r) => r.text()).then((text) => new DOMParser().parseFromString(text, "text/html").getElementById("words").textContent)`, mitt+"/desk/pattern"))
}

// paint paints a purl with the pointer, a colour with the keyboard and a purl
// with a finger.
func paint(b *browser, page string) {
	b.t.Helper()
	b.do(chromedp.Click(chromedp.CSS(`[data-tool-op="p"]`)))
	at := b.cell(3, 2)
	b.do(chromedp.MouseClickXY(at.X, at.Y))
	b.until(chartSaved)

	b.do(chromedp.Click(chromedp.CSS(`[data-tool-colour="b"]`)))
	b.until(quiet) // it has turned to upright columns
	b.do(chromedp.Focus(chromedp.CSS("svg[data-chart]")))
	b.do(chromedp.KeyEvent(kb.ArrowUp), chromedp.KeyEvent(kb.ArrowUp), chromedp.KeyEvent(kb.ArrowLeft), chromedp.KeyEvent(kb.Enter))
	b.until(`document.getElementById("chart-says").textContent.includes("rust")`)

	b.do(chromedp.Click(chromedp.CSS(`[data-tool-op="p"]`)))
	b.touch(b.cell(7, 4))
	b.until(`document.querySelector('[data-layer="painted"] [data-row="7"]').getAttribute("d") !== ""`)
	b.until(`document.querySelector("#chart-ledger").textContent === "every round adds up"`)
	b.until(`document.querySelector(".key svg").textContent.includes("purl")`)
	b.until(chartSaved)
	assert.Contains(b.t, b.words(page), "k1, M1L, k1, p1, k3, M1R, k1")
}

// history undoes and redoes after a reload.
func history(b *browser, page string) {
	b.t.Helper()
	b.do(chromedp.Click(chromedp.CSS(`[data-do="undo"]`)))
	b.until(`document.querySelector('[data-layer="painted"] [data-row="7"]').getAttribute("d") === ""`)
	b.until(chartSaved)
	b.desk(page, "chart")
	require.Equal(b.t, 2, eval[int](b, marks+`.length`))
	b.do(chromedp.Focus(chromedp.CSS("svg[data-chart]")))
	b.with("z", chromedp.ModifierCtrl, chromedp.ModifierShift)
	b.until(`document.querySelector('[data-layer="painted"] [data-row="7"]').getAttribute("d") !== ""`)
	b.until(chartSaved)

	// A stitch that eats one more makes its round unsound, and says so.
	b.do(chromedp.Click(chromedp.CSS(`[data-tool-op="k2tog"]`)))
	at := b.cell(5, 3)
	b.do(chromedp.MouseClickXY(at.X, at.Y))
	b.until(`document.querySelector("#chart-ledger .bad")?.textContent.startsWith("round 5: one stitch short (round 4 leaves 48; it takes 49)")`)
	b.do(chromedp.Click(chromedp.CSS(`[data-do="undo"]`)))
	b.until(`document.querySelector("#chart-ledger .bad") === null`)
	b.until(chartSaved)
}

// A drag paints every cell on its way as one stroke, and another hand shows
// the same stitches mirrored.
func TestDragAndMirror(t *testing.T) {
	t.Parallel()
	b := newBrowser(t)
	page := chartOf(b, "")
	b.do(chromedp.Click(chromedp.CSS(`[data-tool-op="k2tog"]`)))
	b.drag(b.cell(9, 1), b.cell(9, 6))
	b.until(chartSaved)
	b.desk(page, "chart")
	require.Equal(t, 6, eval[int](b, marks+`.length`), "no holes")
	before := eval[string](b, marks+`.map((m) => m.column + m.value).sort().join()`)
	b.do(chromedp.Click(chromedp.CSS(`.sides [value="side=left"]`)))
	b.until(`JSON.parse(document.getElementById("chart-data").textContent).mirrored`)
	assert.Equal(t, before, eval[string](b, marks+`.map((m) => m.column + m.value).sort().join()`), "marks speak of the right hand")
	b.do(chromedp.Click(chromedp.CSS(`[data-tool="erase"]`)))
	b.until(`document.querySelector('[data-tool="erase"]').getAttribute("aria-pressed") === "true"`)
	b.drag(b.cell(9, 1), b.cell(9, 9))
	b.until(`document.querySelector('[data-layer="painted"] [data-row="9"]').getAttribute("d") === ""`)
	b.do(chromedp.Click(chromedp.CSS(`[data-do="undo"]`)))
	b.until(`document.querySelector('[data-layer="painted"] [data-row="9"]').getAttribute("d") !== ""`)
	b.until(chartSaved)
}

// elsewhere saves numbers as another window does: paths, and the text of each.
func (b *browser) elsewhere(numbers ...string) {
	b.t.Helper()
	list, err := json.Marshal(numbers)
	require.NoError(b.t, err)
	require.Equal(b.t, 200, await[int](b, fmt.Sprintf(`(() => {
		const form = document.getElementById("measure-form");
		const other = new URLSearchParams(new FormData(form));
		const list = %s;
		for (let i = 0; i < list.length; i += 2) other.set(list[i], list[i + 1]);
		return fetch(form.action, {method: "POST", body: other, headers: {Accept: "application/json"}}).then((r) => r.status);
	})()`, list)))
}

// decide saves numbers of a mitt that no page of this window shows, as a query.
func (b *browser) decide(mitt, texts string) {
	b.t.Helper()
	require.EqualValues(b.t, 200, await[int64](b, fmt.Sprintf(`fetch(%q, {method: "POST", headers: {Accept: "application/json"}, body: new URLSearchParams(%q)}).then((r) => r.status)`, mitt, texts)))
}

// Two windows on one mitt: the second is told, sees both versions, and decides
// by itself which one stands; nothing is saved before it does.
func TestTwoWindows(t *testing.T) {
	t.Parallel()
	b := newBrowser(t)
	page := sampled(b)
	b.do(chromedp.Evaluate[chromedp.Void](`window.dispatchEvent(new Event("pagehide"))`)) // it listens no more
	b.elsewhere("hand.hand_circumference", "20", "hand.thumb_circumference", "6.8")
	b.write("hand.hand_circumference", "21")
	b.until(`document.querySelector("#saved button") !== null`)
	b.expectErrors() // the refusal stands in the console, as it should
	_, err := chromedp.RunResponse(b.ctx, chromedp.Click(chromedp.CSS("#saved button")))
	require.NoError(t, err)
	b.expectErrors()
	assert.Equal(t, "21", eval[string](b, `document.getElementById("field-hand.hand_circumference").value`))
	row := `[...document.querySelectorAll(".versions tbody tr")].map((r) => [...r.children].slice(0, 3).map((c) => c.textContent.trim()).join(" | "))`
	assert.ElementsMatch(t, []string{"Hand: Hand | 21 | 20", "Hand: Thumb | 6.3 (not changed here) | 6.8"}, eval[[]string](b, row))
	b.shot("conflict")
	axe, err := os.ReadFile(testenv.File(t, "THENAR_AXE"))
	require.NoError(t, err)
	b.do(chromedp.Evaluate[chromedp.Void](string(axe)))
	found, err := chromedp.Run(b.ctx, chromedp.Evaluate[[]string](fmt.Sprintf(violations, true), chromedp.EvalAwaitPromise))
	require.NoError(t, err)
	assert.Empty(t, found)
	b.do(chromedp.Click(chromedp.CSS(`[data-take="hand.thumb_circumference"]`)))
	assert.Equal(t, "6.8", eval[string](b, `document.getElementById("field-hand.thumb_circumference").value`))
	assert.Len(t, eval[[]string](b, row), 1)
	b.write("hand.hand_length", "18.5")
	b.until(`document.querySelector(".summary").textContent.includes("hand 48")`)
	assert.Equal(t, "not saved yet", eval[string](b, `document.getElementById("saved").textContent`))
	draft := `new URLSearchParams(localStorage.getItem("thenar:draft:" + location.pathname)).get("after")`
	assert.Equal(t, "0", eval[string](b, draft), "what another window finds has to ask there, too")
	b.do(chromedp.Click(chromedp.CSS(".conflict [type=submit]")))
	b.until(`document.getElementById("saved").dataset.state === "saved" && document.querySelector(".conflict") === null`)
	b.desk(page, "fit")
	assert.Equal(t, "21", eval[string](b, `document.getElementById("field-hand.hand_circumference").value`))
	assert.Equal(t, "6.8", eval[string](b, `document.getElementById("field-hand.thumb_circumference").value`))
}

// Typing or drawing and going on at once loses nothing: the desk is left when
// the number and the stroke are saved.
func TestLeaveAtOnce(t *testing.T) {
	t.Parallel()
	b := newBrowser(t)
	sampled(b)
	b.write("hand.hand_circumference", "21")
	b.follow(`.desk-tape a[href$="/desk/chart"]`)
	at := b.cell(3, 2)
	b.do(chromedp.Evaluate[chromedp.Void](`(() => {
		const fetch = window.fetch;
		const left = new Promise((done) => document.querySelector(".desk-tape").addEventListener("click", done));
		window.fetch = (...request) => left.then(() => fetch(...request));
	})()`)) // the stroke is still on its way
	b.click(at)
	b.until(`document.getElementById("chart-saved").dataset.state === "saving"`)
	b.follow(`.desk-tape a[href$="/desk/pattern"]`)
	assert.Contains(t, eval[string](b, `document.querySelector(".sheets").textContent`), "21 cm")
	assert.Contains(t, eval[string](b, `document.getElementById("words").textContent`), "p1")
}

// notSaved holds while a form could not be sent.
const notSaved = `document.getElementById("saved").textContent.startsWith("not saved: no connection")`

// The server is away for a while: the page says so, keeps the strokes and the
// numbers, and delivers them when it is back.
func TestServerAway(t *testing.T) {
	t.Parallel()
	b := newBrowser(t)
	page := chartOf(b, "")
	b.serverAway()
	at := b.cell(2, 3)
	b.do(chromedp.MouseClickXY(at.X, at.Y))
	b.until(`document.getElementById("chart-saved").textContent.startsWith("not saved: no connection")`)
	b.choose("chart.float", "4")
	b.until(notSaved)
	b.serverBack()
	b.until(chartSaved)
	b.until(`document.getElementById("saved").dataset.state === "saved"`)

	b.desk(page, "fit")
	b.serverAway()
	b.write("hand.hand_circumference", "20")
	b.until(notSaved)
	b.serverBack()
	b.until(`document.getElementById("saved").dataset.state === "saved"`)
	b.desk(page, "chart")
	assert.Equal(t, 1, eval[int](b, marks+`.length`))
	for path, text := range map[string]string{"hand.hand_circumference": "20", "chart.float": "4"} {
		assert.Equal(t, text, eval[string](b, fmt.Sprintf(`document.getElementById(%q).value`, "field-"+path)))
	}
}
