package web

import (
	"fmt"
	"os"
	"testing"

	"github.com/chromedp/chromedp"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"thenar/internal/testenv"
)

// A designer's task, by a mouse, in presses: a motif of 8 by 6 is drawn and laid round the
// hand; another gauge leaves stitches over, which is said, and the hand is kept to a multiple
// at a press; hand and yarn follow; the clean chart is saved as a file, with one motif in a box
// and the number of times that it is worked.
func TestAMotifThatLasts(t *testing.T) {
	t.Parallel()
	p := newPerson(t, byMouse, 1440, 900)
	mitt := p.sample() // its hand has 42 stitches
	p.desk(mitt, "fit")
	p.next("to the chart, all round the hand")
	p.goTo("chart", `document.getElementById("chart-cell") !== null`)
	p.allRound()
	p.wideEnough()

	p.next("a motif of 8 by 6")
	p.takes("b")
	p.until(quiet) // it has turned to upright columns
	for _, at := range [][2]int{{22, 4}, {22, 5}, {23, 3}, {23, 6}, {24, 2}, {24, 7}, {25, 2}, {25, 7}, {26, 3}, {26, 6}, {27, 4}, {27, 5}} {
		p.paints(at[0], at[1])
	}

	p.next("laid round the hand")
	p.reach("select")
	p.spans(22, 1, 5, 7)
	p.press(`.picked [data-run="repeat"]`)
	p.until(`document.querySelectorAll("[data-laid-form]").length === 1`)
	p.until(chartSaved)
	came := `document.querySelector("[data-came]").textContent`
	assert.Contains(t, eval[string](p.browser, came), "5 times, ")
	assert.Contains(t, eval[string](p.browser, came), "2 plain stitches")
	assert.Empty(t, eval[[]any](p.browser, marks), "the marks have gone into the motif")
	p.shot("motif-1-laid")

	p.next("another gauge")
	p.goTo("fit", `document.querySelector("#yarn-head + p") !== null && document.querySelector(".drawing svg") !== null`)
	need := `document.querySelector("#yarn-head + p").textContent`
	before := eval[string](p.browser, need)
	field := `[id="field-gauge.swatches[0].stitches"]`
	p.press(field)
	p.do(chromedp.Evaluate[chromedp.Void](fmt.Sprintf(`document.querySelector(%q).select()`, field)), chromedp.KeyEvent("26"))
	p.presses++
	p.until(settled)
	hand := `/hand (\d+)/.exec(document.querySelector(".bar").textContent)[1]`
	other := eval[string](p.browser, hand)
	require.NotEqual(t, "42", other)

	p.next("what is left over is said, and set right")
	p.goTo("chart", `document.querySelector("[data-needle] .wood") !== null`)
	look := eval[string](p.browser, `document.querySelector("[data-look-here]").textContent`)
	assert.Contains(t, look, "a motif lies differently now")
	p.shot("motif-2-other-gauge")
	p.press(`[data-look-here] [data-repeat-set$=".set=multiple"]`)
	p.until(`!document.querySelector("[data-came]").textContent.includes("plain")`)
	p.until(chartSaved)
	whole := eval[int](p.browser, `Number(`+hand+`)`)
	assert.Zero(t, whole%8, "the hand has %d stitches", whole)
	p.shot("motif-3-multiple")

	p.next("seen on the hand, and its yarn")
	p.goTo("fit", `document.querySelector("#yarn-head + p") !== null && document.querySelector(".drawing svg") !== null`)
	p.seen(`document.querySelector(".drawing .hand svg, .drawing .pair svg, .drawing svg")`, `look.middle(e)`)
	assert.True(t, eval[bool](p.browser, `[...document.querySelectorAll(".drawing path.worn")].some((e) => e.getAttribute("stroke"))`), "the hand wears the motif")
	assert.NotEqual(t, before, eval[string](p.browser, need), "another hand takes other yarn")
	p.shot("motif-4-hand")

	p.next("the clean chart, one motif of it, boxed")
	p.goTo("chart", `document.querySelector("[data-needle] .wood") !== null`)
	p.press(`#chart-file [name="boxed"]`)
	name, file := p.saves(func() { p.act(`#chart-file button:not([formaction])`) })
	assert.Regexp(t, `-hand\.svg$`, name)
	boxed := boxesOf(t, file, 8)
	require.NotEmpty(t, boxed)
	assert.Equal(t, whole/8, boxed[0].times, "over the gusset, all round the hand")
	assert.GreaterOrEqual(t, len(boxed[0].rows), 6, "a whole motif")
	for _, one := range boxed {
		assert.True(t, one.isMotif([]string{"...bb...", "..b..b..", ".b....b.", ".b....b.", "..b..b..", "...bb..."}), "× %d: %v", one.times, one.rows)
	}
	assert.NotContains(t, file, "laid-line", "no working marks")
	p.kept("motif-5-boxed.svg", file)
	p.done()
	assert.LessOrEqual(t, p.presses, 40)
	motifsLookedAt(p.browser, mitt)
}

// motifsLookedAt looks at the motifs' part of the margin on a desk in light and on a phone in dark.
func motifsLookedAt(b *browser, mitt string) {
	b.t.Helper()
	axe, err := os.ReadFile(testenv.File(b.t, "THENAR_AXE"))
	require.NoError(b.t, err)
	for _, way := range []look{{false, "light"}, {true, "dark"}} {
		b.scheme(way.scheme)
		b.size(1280, 900)
		if way.phone {
			b.phone()
		}
		b.open(mitt + "/desk/chart?view=hand&layout=columns")
		b.until(`document.querySelector("[data-needle] .wood") !== null`)
		b.do(chromedp.Evaluate[chromedp.Void](`document.querySelector("[data-margin]").open = true; for (const d of document.querySelectorAll(".laid-motifs details")) d.open = true`))
		b.do(chromedp.Evaluate[chromedp.Void](`document.getElementById("chart-laid").scrollIntoView()`))
		await[bool](b, drawn)
		b.shot("motif-margin-" + way.scheme)
		b.do(chromedp.Evaluate[chromedp.Void](string(axe)))
		assert.Empty(b.t, await[[]string](b, fmt.Sprintf(violations, true)), way.scheme)
		if way.phone {
			assert.LessOrEqual(b.t, eval[int](b, `document.documentElement.scrollWidth`), 360)
			assert.Empty(b.t, eval[[]string](b, lowTargets))
		}
	}
	b.asBegun()
}
