package web

import (
	"fmt"
	"strings"
	"testing"

	"github.com/chromedp/chromedp"
	"github.com/chromedp/chromedp/kb"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"thenar/internal/testenv"
)

// quiet waits until no answer is on its way.
const quiet = `document.getElementById("main").getAttribute("aria-busy") !== "true"`

// chartOf opens the sample mitt with a view of its chart.
func chartOf(b *browser, query string) string {
	b.t.Helper()
	path := b.sample()
	b.open(path + "/desk/chart" + query)
	b.until(`document.getElementById("chart-cell") !== null`)
	return path
}

// says waits until the cell that is read out, or what is announced, has some
// words in it.
func (b *browser) says(words string) {
	b.t.Helper()
	b.until(fmt.Sprintf(`(document.getElementById("chart-says").textContent + " " + document.getElementById("chart-announce").textContent).includes(%q)`, words))
}

func (b *browser) key(keys ...string) {
	b.t.Helper()
	for _, k := range keys {
		b.do(chromedp.KeyEvent(k))
	}
}

func (b *browser) with(key string, modifiers ...chromedp.Modifier) {
	b.t.Helper()
	b.do(chromedp.KeyEvent(key, chromedp.KeyModifiers(modifiers...)))
}

// command runs a command by its words, from the list that a question mark
// opens.
func (b *browser) command(words string) {
	b.t.Helper()
	b.do(chromedp.Focus(chromedp.CSS("svg[data-chart]")))
	b.key("?")
	b.until(`document.activeElement.id === "chart-can"`)
	b.do(chromedp.Evaluate[chromedp.Void](fmt.Sprintf(`[...document.querySelectorAll("[data-command]")].find((e) => e.textContent.startsWith(%q)).click()`, words)))
}

// colours are the columns of a round that are painted in a yarn, as they are
// kept: sorted, as the right hand.
func colours(b *browser, path, section string, round int) string {
	b.t.Helper()
	return await[string](b, fmt.Sprintf(`fetch(%q).then((r) => r.json()).then((c) => c.edits.filter((e) => e.section === %q && e.round === %d && e.layer === "colour").map((e) => e.column + e.value).join(" "))`,
		path+"/chart", section, round))
}

// With the keyboard alone: a motif is drawn, traced, mirrored with the brush,
// undone, and saved; each step is read out.
func TestAMotifByKeyboardAlone(t *testing.T) {
	t.Parallel()
	b := newBrowser(t)
	path := chartOf(b, "?view=hand")
	tabTo(b, `document.activeElement.closest(".hanks") !== null`)
	pressTo(b, kb.ArrowRight, `document.activeElement.dataset.toolColour === "b"`)
	b.key(kb.Enter)
	tabTo(b, `document.activeElement.matches("svg[data-chart]")`)
	assert.Equal(t, "grid", eval[string](b, `document.activeElement.getAttribute("role")`))
	b.key(kb.ArrowUp, kb.Home, kb.Enter) // the last stitch of the palm's half
	b.says("round 2 of the gusset")
	b.says("rust, painted")
	label := eval[string](b, `document.getElementById("chart-cell").getAttribute("aria-label")`)
	assert.Regexp(t, `^round 2 of the gusset, stitch \d+, knit, \d+(st|nd|rd|th) of the hand, rust, painted$`, label)
	b.key(kb.ArrowRight, kb.ArrowUp, kb.Enter)
	b.until(chartSaved)

	// Two by two cells are marked off, traced and laid down further to the right.
	b.key(kb.ArrowLeft, kb.ArrowDown)
	b.with(kb.ArrowRight, chromedp.ModifierShift)
	b.with(kb.ArrowUp, chromedp.ModifierShift)
	b.says("2 stitches by 2 rounds marked off")
	assert.Equal(t, "true", eval[string](b, `document.getElementById("chart-cell").getAttribute("aria-selected")`))
	b.with("c", chromedp.ModifierCtrl)
	b.says("4 stitches traced")
	b.key(kb.ArrowDown, kb.ArrowRight, kb.ArrowRight)
	b.with("v", chromedp.ModifierCtrl)
	b.says("Press where its lower right stitch goes.")
	assert.True(t, eval[bool](b, `document.querySelector(".ghost path.yarn-b") !== null`), "it is seen before it is laid")
	b.key(kb.Escape, kb.ArrowUp, kb.ArrowDown)
	assert.True(t, eval[bool](b, `document.querySelector(".ghost").childElementCount === 0`), "Escape leaves it")
	b.with("v", chromedp.ModifierCtrl)
	b.key(kb.Enter)
	b.until(chartSaved)
	motif := colours(b, path, "gusset", 2)
	require.Equal(t, 2, strings.Count(motif, "b"), motif)

	// The mirror brush paints the same on the other side of the gusset.
	b.key(kb.Escape)
	b.command("Both edges")
	b.until(`document.querySelector("[data-mirror]").getAttribute("aria-pressed") === "true"`)
	b.key(kb.ArrowUp, kb.ArrowUp, kb.Home, kb.ArrowRight, kb.Enter)
	b.until(chartSaved)
	both := strings.Fields(colours(b, path, "gusset", 4))
	require.Len(t, both, 2, "one on each side")

	b.with("z", chromedp.ModifierCtrl)
	b.until(`document.querySelector('[data-layer="colour"] [data-row="4"] .yarn-b') === null`)
	b.until(chartSaved)
	b.open(path + "?view=hand")
	assert.Empty(t, colours(b, path, "gusset", 4))
	assert.Equal(t, motif, colours(b, path, "gusset", 2), "saved, and found after a reload")
	b.shot("editor-keyboard")
}

// With a finger on a phone: a brush is ready; to look doesn't paint; a rectangle is dragged, a
// round marked as on the needles, the chart enlarged.
func TestTheEditorByTouch(t *testing.T) {
	t.Parallel()
	b := newBrowser(t)
	b.phone()
	path := chartOf(b, "")
	assert.Equal(t, "free", eval[string](b, `document.querySelector("svg[data-chart]").dataset.shape`), "a brush is ready")
	b.tap("[data-reach-open]")
	b.tap(`[data-shape="look"]`)
	b.until(`document.querySelector("[data-reach-open]").textContent === "You look; nothing is marked"`)
	b.touch(b.cell(2, 1))
	b.tap(`[data-tool-colour="c"]`)
	b.until(quiet) // it has turned to upright columns
	b.until(`document.querySelector("svg[data-chart]").dataset.shape === "free"`)
	b.tap("[data-reach-open]")
	b.tap(`[data-shape="rectangle"]`)
	b.swipe(b.cell(2, 1), b.cell(4, 3))
	b.until(chartSaved)
	assert.Equal(t, "A1c B1c", colours(b, path, "gusset", 2))
	assert.NotEmpty(t, colours(b, path, "gusset", 4))
	b.until(quiet) // what follows from the stroke has found its place on the page
	b.tap("[data-reach-open]")
	b.tap(`[data-shape="select"]`)
	b.swipe(b.cell(2, 1), b.cell(4, 3))
	b.do(chromedp.Click(chromedp.CSS(`[data-selected] [data-run="lay-up"]`)))
	b.until(`document.querySelector('[data-layer="colour"] [data-row="18"] .yarn-c') !== null`)
	b.says("6 times; 1 round left over at the top.")
	assert.True(t, eval[bool](b, `document.getElementById("chart-announce").getBoundingClientRect().right <= innerWidth`), "it is seen")
	b.until(chartSaved)
	assert.NotEmpty(t, colours(b, path, "gusset", 18), "what was selected is repeated up to the last round")
	width := eval[float64](b, chartWidth)
	b.do(chromedp.Focus(chromedp.CSS("svg[data-chart]")))
	b.key("+")
	b.until(fmt.Sprintf(`%s > %g`, chartWidth, width))
	b.tap(`[data-run="commands"]`)
	b.until(`document.activeElement.id === "chart-can"`)
	b.do(chromedp.Evaluate[chromedp.Void](`document.querySelector('[data-command="needles"]').closest("details").open = true`))
	b.tap(`[data-command="needles"]`)
	b.until(`document.querySelector('[data-layer="needles"] path').getAttribute("d") !== ""`)
	b.until(chartSaved)
	assert.LessOrEqual(t, eval[int](b, `document.documentElement.scrollWidth`), 360)
	b.shot("editor-touch")
}

// Two tabs on one chart: each sees the other's strokes, of two on one cell the
// last stands in both, and none is lost.
func TestStrokesOfTwoTabs(t *testing.T) {
	t.Parallel()
	first := newBrowser(t)
	path := chartOf(first, "")
	first.station.worn = true // the second tab may still be closing then
	ctx, stop := chromedp.NewContext(first.ctx)
	t.Cleanup(stop)
	second := &browser{t: t, ctx: ctx, url: first.url}
	second.desk(path, "chart")
	second.until(`document.getElementById("chart-cell") !== null`)

	painted := func(row int) string {
		return fmt.Sprintf(`document.querySelector('[data-layer="painted"] [data-row="%d"]').getAttribute("d") !== ""`, row)
	}
	first.click(first.cell(3, 1))
	second.until(painted(3))
	second.do(chromedp.Click(chromedp.CSS(`[data-tool-colour="b"]`)))
	second.until(quiet) // it has turned to upright columns
	second.click(second.cell(5, 1))
	first.until(`document.querySelector('[data-layer="colour"] [data-row="5"] .yarn-b') !== null`)

	// Both draw on one cell at once; both end alike, and as the server has it.
	for range testenv.Cases(1, 5) {
		first.click(first.cell(7, 2))
		second.click(second.cell(7, 2))
		second.click(second.cell(7, 3))
		first.do(chromedp.Click(chromedp.CSS(`[data-tool-op="yo"]`)))
		first.click(first.cell(7, 2))
		first.do(chromedp.Click(chromedp.CSS(`[data-tool-op="p"]`)))
	}
	first.until(chartSaved)
	second.until(chartSaved)
	same := fmt.Sprintf(`fetch(%q).then((r) => r.json()).then((c) => JSON.stringify(c.edits))`, path+"/chart")
	kept := await[string](first, same)
	assert.Contains(t, kept, `"yo"`)
	assert.Contains(t, kept, `"colour"`)
	row := `["symbol", "painted"].map((l) => document.querySelector('[data-layer="' + l + '"] [data-row="7"]').getAttribute("d")).join()`
	second.desk(path, "chart")
	second.until(fmt.Sprintf(`%s === %q`, row, eval[string](first, row)))

	// A change of the rounds in one is a new plan in both, and the number that
	// it fixed stands in both forms.
	first.command("Put in a plain round")
	second.until(`document.querySelector(".plan-line").textContent.includes("in 21")`)
	second.until(`document.getElementById("field-pins.gusset_rounds").value === "21"`)
	first.until(`document.querySelector(".plan-line").textContent.includes("in 21")`)

	// A number saved at one desk is taken over by the other, both ways.
	second.desk(path, "fit")
	assert.Contains(t, eval[string](second, `document.querySelector(".summary").textContent`), "in 21 rounds")
	second.write("hand.hand_circumference", "20")
	first.until(`document.getElementById("field-hand.hand_circumference").value === "20"`)
	first.until(quiet)
	first.choose("chart.float", "4")
	second.until(`document.getElementById("field-chart.float").value === "4"`)
	first.until(quiet)
	second.until(quiet)
}

// An increase is dragged to another round: the list is fixed, the page says so,
// the plan is solved again around it, and undo lets it go. The first one can be
// moved, too; it can't pass its neighbour.
func TestDragAnIncrease(t *testing.T) {
	t.Parallel()
	b := newBrowser(t)
	path := chartOf(b, "")
	before := b.words(path)
	b.click(eval[point](b, `(() => {
		const r = [...document.querySelectorAll(".rule-rounds .number")].find((e) => e.textContent === "5").getBoundingClientRect();
		return {X: r.left + r.width / 2, Y: r.top + r.height / 2};
	})()`))
	assert.Contains(t, eval[string](b, `document.querySelector("[data-round-now]").textContent`), "round 5", "a number that is pressed points at its round")
	b.do(chromedp.Click(chromedp.CSS(`[data-shape="move"]`)))
	b.says("Drag an increase up or down")
	b.drag(b.cell(7, 2), b.cell(8, 2))
	b.until(`document.getElementById("field-pins.increase_rounds").value === "1, 4, 8, 10, 13, 16"`)
	b.says("Fixed: increases in rounds 1, 4, 8, 10, 13, 16.")
	b.until(`JSON.parse(document.getElementById("chart-data").textContent).rows[7].runs.some((r) => r.op === "m1l")`)
	b.until(quiet)
	assert.NotEqual(t, before, b.words(path))
	b.do(chromedp.Click(chromedp.CSS(`[data-acts] button`))) // Undo, beside what is said
	b.until(`document.getElementById("field-pins.increase_rounds").value === ""`)
	b.says("The plan is as it was.")
	b.until(`JSON.parse(document.getElementById("chart-data").textContent).rows[6].runs.some((r) => r.op === "m1l")`)
	b.until(quiet)
	b.drag(b.cell(1, 2), b.cell(2, 2))
	b.until(`document.getElementById("field-pins.increase_rounds").value === "2, 4, 7, 10, 13, 16"`)
	b.until(quiet)
	b.drag(b.cell(2, 2), b.cell(4, 2))
	b.says("goes between its neighbours")
	assert.NotContains(t, eval[string](b, `document.getElementById("chart-says").textContent`), "neighbours", "it is said once")
	b.expectErrors() // the refusal stands in the console, as it should
}

// Another layout or view keeps what is selected and the size; the address
// keeps the view; a file is what is shown.
func TestViewsKeepSelectionAndSize(t *testing.T) {
	t.Parallel()
	b := newBrowser(t)
	path := chartOf(b, "?view=hand")
	b.do(chromedp.Focus(chromedp.CSS("svg[data-chart]")))
	b.key("+")
	b.command("Mark off the column")
	b.says("rounds marked off")
	chosen := `document.querySelector(".chosen").getAttribute("d")`
	before, width := eval[string](b, chosen), eval[string](b, `document.querySelector("svg[data-chart]").getAttribute("width")`)
	assert.Contains(t, eval[string](b, `location.search`), "layout=wedge", "the page keeps the layout that it opened with, whatever is painted")
	assert.NotContains(t, eval[string](b, `document.cookie`), "layout", "the next visit takes one anew")
	b.pick("layout", "columns")
	b.until(`JSON.parse(document.getElementById("chart-data").textContent).layout === "columns"`)
	assert.NotEqual(t, before, eval[string](b, chosen))
	assert.NotEmpty(t, eval[string](b, chosen))
	assert.NotEqual(t, "", width)
	assert.True(t, eval[bool](b, `document.querySelector("svg[data-chart]").classList.contains("sized")`))
	b.command("Turn the tube: this")
	b.until(`document.querySelector('[data-run="turn-back"]') !== null`)
	assert.Contains(t, eval[string](b, `document.cookie`), "layout", "the one that was chosen stays")
	assert.Equal(t, path+"/desk/chart?view=hand&layout=columns", eval[string](b, `location.pathname + location.search.replace(/&middle=.*/, "")`))
	assert.NotEmpty(t, eval[string](b, `document.querySelector('input[form="chart-file"][name="middle"]').value`), "a file is what is shown")
	b.pick("view", "thumb")
	b.until(`document.querySelector('svg[data-chart="thumb"]') !== null`)
	b.until(quiet)
	b.shot("editor-thumb")
}

// pick sets a select of the chart's views.
func (b *browser) pick(name, value string) {
	b.t.Helper()
	b.do(chromedp.Evaluate[chromedp.Void](fmt.Sprintf(`(() => {
		const field = document.querySelector('[data-view="%s"]');
		field.value = %q;
		field.dispatchEvent(new Event("change", {bubbles: true}));
	})()`, name, value)))
}

// What does not add up is mended by an offer, and what has lost its place is
// put back by hand.
func TestMendAndPutBack(t *testing.T) {
	t.Parallel()
	b := newBrowser(t)
	path := chartOf(b, "")
	b.do(chromedp.Click(chromedp.CSS(`[data-tool-op="k2tog"]`)))
	b.click(b.cell(18, 3))
	b.until(`document.querySelector("#chart-ledger .bad button") !== null`)
	assert.Contains(t, eval[string](b, `document.querySelector("#chart-ledger .bad").textContent`), "round 18: one stitch short (round 17 leaves 54; it takes 55)")
	b.do(chromedp.Click(chromedp.CSS("#chart-ledger .bad button")))
	b.until(`document.querySelector("#chart-ledger .bad") === null`)
	b.do(chromedp.Click(chromedp.CSS(`[data-tool-op="p"]`)))
	b.click(b.cell(18, 3))
	b.until(chartSaved)
	b.elsewhere("hand.gusset_length", "4")
	b.until(`document.querySelector(".lost [data-put-back]") !== null`)
	assert.Contains(t, eval[string](b, `document.querySelector(".lost li").textContent`), "round 18")
	b.until(quiet)
	b.do(chromedp.Focus(chromedp.CSS("svg[data-chart]")))
	b.do(chromedp.Click(chromedp.CSS("[data-put-back]")))
	b.until(chartSaved)
	b.desk(path, "chart")
	assert.Zero(t, eval[int](b, `document.querySelectorAll(".lost:not([hidden])").length`))
	assert.Equal(t, 1, eval[int](b, marks+`.length`))
}

// A motif is kept under a name and stamped; a note is written on a cell; the
// moment is named; all by the list of commands.
func TestMotifNoteMoment(t *testing.T) {
	t.Parallel()
	b := newBrowser(t)
	path := chartOf(b, "")
	b.do(chromedp.Click(chromedp.CSS(`[data-tool-colour="b"]`)))
	b.says("Upright columns, so that a motif stays whole.")
	b.do(chromedp.Click(chromedp.CSS("[data-acts] button"))) // Show the wedge
	b.until(`JSON.parse(document.getElementById("chart-data").textContent).layout === "wedge" && ` + quiet)
	b.do(chromedp.Click(chromedp.CSS(`[data-shape="rectangle"]`)))
	b.drag(b.cell(1, 1), b.cell(2, 2))
	b.until(chartSaved)
	b.do(chromedp.Click(chromedp.CSS(`[data-shape="select"]`)))
	b.drag(b.cell(1, 1), b.cell(2, 2))
	b.says("2 stitches by 2 rounds marked off")
	b.command("Keep it in the sampler")
	b.until(`document.activeElement.id === "chart-ask-text"`)
	b.key("block", kb.Enter)
	b.until(`document.querySelector('[data-motif="block"]') !== null`)
	b.do(chromedp.Evaluate[chromedp.Void](`document.querySelector("[data-motif-box]").open = true`), chromedp.Click(chromedp.CSS(`[data-motif="block"]`)))
	b.click(b.cell(10, 3))
	b.until(chartSaved)
	assert.Equal(t, "A2b A3b", colours(b, path, "gusset", 10))
	b.command("A note on the stitch")
	b.until(`document.activeElement.id === "chart-ask-text"`)
	b.key("try it on here", kb.Enter)
	b.says("note: try it on here")
	b.until(chartSaved)
	b.command("Give this moment")
	b.until(`document.activeElement.id === "chart-ask-text"`)
	b.key("before the top", kb.Enter)
	b.says("before the top")
	b.open(path + "/history")
	assert.Contains(t, eval[string](b, `document.querySelector(".moments").textContent`), "before the top")
}
