package web

import (
	"fmt"
	"testing"

	"github.com/chromedp/chromedp"
	"github.com/chromedp/chromedp/kb"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// rusts are the stitches of a round of the chart that are drawn in rust, counted as cell
// counts them: by what is painted at the place of each.
func rusts(b *browser, round int) []int {
	b.t.Helper()
	return eval[[]int](b, fmt.Sprintf(`(() => {
		const data = JSON.parse(document.getElementById("chart-data").textContent);
		const xs = data.rows[%d - 1].runs.flatMap((r) => Array.from({length: r.n}, (_, i) => r.x < 0 ? -1 : r.x - i));
		const paths = [...document.querySelectorAll('svg[data-chart] [data-layer="colour"] [data-row="%[1]d"] path.yarn-b')];
		const at = (x) => new DOMPoint(data.left + (x + 0.5) * data.cell_width, data.bottom - (%[1]d - 0.5) * data.cell_height);
		return xs.flatMap((x, i) => (x >= 0 && paths.some((p) => p.isPointInFill(at(x))) ? [i + 1] : []));
	})()`, round))
}

// gave is a script that has the text of a field of the first motif.
func gave(key string) string {
	return fmt.Sprintf(`(JSON.parse(document.getElementById("chart-data").textContent).repeats?.[0]?.given[%q] ?? "")`, key)
}

// edgeOf is the middle of the upper border of what is in hand, and the height of a round.
func edgeOf(b *browser) (at point, round float64) {
	b.t.Helper()
	got := eval[struct {
		At   point
		High float64
	}](b, `(() => {
		const data = JSON.parse(document.getElementById("chart-data").textContent), box = document.querySelector(".grid-frame");
		const svg = document.querySelector("svg[data-chart]"), frame = () => document.querySelector(".in-hand").getBoundingClientRect();
		box.scrollTop += frame().top - box.getBoundingClientRect().top - box.clientHeight / 2;
		const seen = box.getBoundingClientRect(), now = frame();
		const left = Math.max(now.left, seen.left), right = Math.min(now.right, seen.left + box.clientWidth);
		return {At: {X: (left + right) / 2, Y: now.top + 1}, High: data.cell_height * svg.getScreenCTM().d};
	})()`)
	return got.At, got.High
}

// On a phone a motif is taken in hand, moved by buttons, dragged by its edge with a finger,
// and let go.
func TestAMotifInHandByTouch(t *testing.T) {
	t.Parallel()
	b := newBrowser(t)
	mitt := dotted(b)
	b.do(chromedp.Click(chromedp.CSS(`.picked [data-run="repeat"]`)))
	b.until(`document.querySelectorAll("[data-laid-form]").length === 1`)
	b.until(chartSaved)
	b.phone()
	b.open(mitt + "/desk/chart?view=hand&layout=columns")
	b.until(`document.querySelector("[data-needle] .wood") !== null`)
	b.tap("[data-margin] > summary")
	b.until(`document.querySelector("[data-margin]").open`)
	b.tap("[data-laid-take]")
	b.until(`document.querySelector(".in-hand").getAttribute("d") !== ""`)
	b.says("in hand")
	b.says("Drag its upper or lower edge.")
	from := b.given("from")
	act := func(words string) {
		t.Helper()
		b.touch(eval[point](b, fmt.Sprintf(`(() => {
			const r = [...document.querySelectorAll("[data-acts] button")].find((e) => e.textContent === %q).getBoundingClientRect();
			return {X: r.left + r.width / 2, Y: r.top + r.height / 2};
		})()`, words)))
	}
	act("up")
	b.until(gave("from") + fmt.Sprintf(` === String(%s + 1)`, from))
	b.until(chartSaved)
	act("left")
	b.until(fmt.Sprintf(`Number(%s) === 1`, gave("offset")))
	b.until(chartSaved)
	b.until(`document.querySelector(".in-hand").getAttribute("d") !== "" && document.querySelector("[data-acts] button") !== null`)
	b.shot("in-hand-by-touch")
	at, high := edgeOf(b)
	b.swipe(at, at.by(0, 4*high))
	b.until(fmt.Sprintf(`Number(%s) > 0`, gave("to")))
	b.until(chartSaved)
	const free = `document.querySelector(".in-hand").getAttribute("d") === ""`
	for range 5 { // a touch that only stops what the swipe set gliding is no press
		if act("let go"); await[bool](b, drawn) && eval[bool](b, free) {
			break
		}
	}
	b.until(free)
}

// On a left hand a motif lies where it was marked off by the pointer, as it was drawn there;
// "as drawn" turns it as the right hand's is; its edge is dragged.
func TestAMotifOnALeftHandByPointer(t *testing.T) {
	t.Parallel()
	b := newBrowser(t)
	mitt := b.sample()
	b.desk(mitt, "chart")
	b.do(chromedp.Click(chromedp.CSS(`.sides [value="side=left"]`)))
	b.until(`document.querySelector('.sides [value="side=left"]').getAttribute("aria-pressed") === "true"`)
	b.until(settled)
	dots(b, mitt, 11)
	require.True(t, eval[bool](b, `Boolean(JSON.parse(document.getElementById("chart-data").textContent).mirrored)`))
	require.Equal(t, []int{12}, rusts(b, 22))
	require.Equal(t, []int{14}, rusts(b, 23))
	b.do(chromedp.Click(chromedp.CSS(`.picked [data-run="repeat"]`)))
	b.until(`document.querySelectorAll("[data-laid-form]").length === 1`)
	b.until(chartSaved)
	low, high := rusts(b, 22), rusts(b, 23)
	require.Greater(t, len(low), 5)
	assert.Contains(t, low, 12, "where it was painted")
	assert.Contains(t, high, 14)
	assert.NotContains(t, low, 13)

	b.do(chromedp.Focus(chromedp.CSS("svg[data-chart]")))
	b.key(kb.ArrowLeft)
	b.until(chartSaved)
	b.until(`JSON.parse(document.getElementById("chart-data").textContent).repeats[0].given.offset !== "3"`)
	assert.Contains(t, rusts(b, 22), 13, "one to the left, as the chart looks")
	b.key(kb.ArrowRight)
	b.until(`JSON.parse(document.getElementById("chart-data").textContent).repeats[0].given.offset === "3"`)
	b.until(chartSaved)

	at, round := edgeOf(b)
	b.pull(at, at.by(0, 4*round))
	b.until(fmt.Sprintf(`Number(%s) > 0`, gave("to")))
	b.until(chartSaved)
	b.do(chromedp.Evaluate[chromedp.Void](`document.querySelector("[data-margin]").open = true; document.querySelector('[data-laid-form] [name="left"]').closest("details").open = true`))
	b.do(chromedp.Evaluate[chromedp.Void](`(() => { const f = document.querySelector('[data-laid-form] [name="left"]'); f.value = "as_drawn"; f.dispatchEvent(new Event("change", {bubbles: true})); })()`))
	b.set("left", "as_drawn")
	turned := rusts(b, 22)
	assert.NotContains(t, turned, 12)
	assert.Contains(t, turned, 13, "its second stitch from the other side")
	b.shot("laid-on-a-left-hand")
}

// How a motif meets itself is a strip that slides by keys, and the best offset is a press
// away.
func TestTheStripOfAMotif(t *testing.T) {
	t.Parallel()
	b := newBrowser(t)
	mitt := b.sample()
	b.desk(mitt, "chart")
	dots(b, mitt, 2)
	b.do(chromedp.Click(chromedp.CSS(`.picked [data-run="repeat"]`)))
	b.until(`document.querySelectorAll("[data-laid-form]").length === 1`)
	b.until(chartSaved)
	b.do(chromedp.Evaluate[chromedp.Void](`document.querySelector("[data-margin]").open = true`))
	b.do(chromedp.Evaluate[chromedp.Void](`document.querySelector(".repeat-strip > summary").focus()`))
	b.key(kb.Enter)
	b.until(`document.querySelector(".repeat-strip").open`)
	b.key(kb.Tab)
	slides := `document.activeElement.matches(".strip-slides")`
	assert.True(t, eval[bool](b, slides), "the keyboard comes to it")
	assert.NotEmpty(t, eval[string](b, `document.activeElement.getAttribute("aria-label")`))
	b.until(`document.querySelector(".strip-slides").scrollWidth > document.querySelector(".strip-slides").clientWidth`)
	b.key(kb.ArrowRight)
	b.until(`document.querySelector(".strip-slides").scrollLeft > 0`)
	b.shot("strip-of-a-motif")

	move := `document.querySelector('[data-repeat-set^="repeats[0].offset="]')`
	require.True(t, eval[bool](b, move+` !== null`), "it can lie better")
	best := eval[string](b, move+`.dataset.repeatSet.split("=")[1]`)
	require.NotEqual(t, best, "0"+b.given("offset"))
	said := `document.querySelector(".repeat-strip p").textContent`
	assert.Contains(t, eval[string](b, said), "Moved on by "+best)
	b.do(chromedp.Evaluate[chromedp.Void](move + `.focus()`))
	b.key(kb.Enter)
	b.set("offset", best)
	b.until(said + `.startsWith("It lies best so")`)
	assert.True(t, eval[bool](b, `document.querySelector(".repeat-strip").open`), "it stays open")
}

// Of the counts that take a motif whole, one is pressed, and the hand is fixed at it; at the
// other desks none is asked for.
func TestCountsThatTakeAMotifWhole(t *testing.T) {
	t.Parallel()
	b := newBrowser(t)
	mitt := dotted(b) // four stitches wide, on a hand of 42
	b.do(chromedp.Click(chromedp.CSS(`.picked [data-run="repeat"]`)))
	b.until(`document.querySelectorAll("[data-laid-form]").length === 1`)
	b.until(chartSaved)
	b.do(chromedp.Evaluate[chromedp.Void](`document.querySelector("[data-margin]").open = true; document.querySelector(".repeat-counts").open = true`))
	hand := `/hand (\d+)/.exec(document.querySelector(".bar").textContent)[1]`
	require.Equal(t, "42", eval[string](b, hand))
	counts := eval[[]string](b, `[...document.querySelectorAll(".repeat-counts li")].map((e) => e.textContent.trim())`)
	require.Len(t, counts, 3, "those further off than an inch are left out")
	for _, c := range counts {
		assert.Regexp(t, `^\d+: \d+ times, (as wanted|[\d.,]+ mm (tighter|looser) than wanted)`, c, "in millimetres, as at the other desks")
	}
	press := `.repeat-counts [value="pins.hand_stitches=44"]`
	b.do(chromedp.Click(chromedp.CSS(press)))
	b.until(hand + ` === "44"`)
	b.until(chartSaved)
	b.until(`document.querySelector("[data-came]").textContent.startsWith("11 times")`)
	assert.Equal(t, "44", eval[string](b, `[...document.querySelectorAll(".repeat-counts li > b")].map((e) => e.textContent).join(" ")`), "the one that it has can't be pressed")
	b.shot("counts-of-a-motif")
	assert.Contains(t, eval[string](b, `document.querySelector(".bar").textContent`), "1 fixed", "there it can be let go again")

	change := func(key, text string) {
		t.Helper()
		b.do(chromedp.Evaluate[chromedp.Void](fmt.Sprintf(`(() => { const f = document.querySelector('[data-laid-form] [name=%q]'); f.value = %q; f.dispatchEvent(new Event("change", {bubbles: true})); })()`, key, text)))
		b.set(key, text)
	}
	change("from", "1")
	change("section", "thumb")
	b.until(`document.querySelector(".repeat-counts > summary")?.textContent === "Counts of the thumb that take it whole"`)
	assert.Zero(t, eval[int](b, `document.querySelectorAll('[value="repeats[0].set=multiple"], [data-laid-form] [name="set"] [value="multiple"]').length`), "the hand's multiple is no cure for a thumb")
	b.do(chromedp.Evaluate[chromedp.Void](`document.querySelector(".repeat-counts").open = true`))
	thumb := `.repeat-counts button[value^="pins.thumb_stitches="]`
	b.do(chromedp.Click(chromedp.CSS(thumb)))
	b.until(`document.querySelector(".bar").textContent.includes("2 fixed")`)
	b.until(chartSaved)
	b.until(`!document.querySelector("[data-came]").textContent.includes("plain")`)
	b.shot("counts-of-a-thumb")

	b.desk(mitt, "fit")
	assert.Empty(t, eval[string](b, `document.querySelector(".repeat-counts")?.textContent ?? ""`))
}
