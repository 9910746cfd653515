package web

import (
	"fmt"
	"os"
	"testing"

	"github.com/chromedp/chromedp"
	"github.com/chromedp/chromedp/kb"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"thenar/internal/testenv"
)

// A glove from the choice to paper, in one go: chosen by key, its fingers measured, covered
// and fixed, and printed. In a long run one of them is painted, the little finger is
// followed to and tried on, and every desk looked at, wide and narrow, light and dark: a
// phone's is no wider than the window, and axe-core finds nothing.
func TestGloveFromChoiceToPaper(t *testing.T) {
	t.Parallel()
	b := newBrowser(t)
	page := b.sample()
	b.desk(page, "fit")
	gloveChosen(b)
	fingerMeasured(b)
	fingersCovered(b)
	fingerFixed(b)
	if testenv.Long() { // the rest takes too long beside all others
		fingerPainted(b, page)
		followedToFinger(b, page)
		triedOn(b, page)
	}
	onPaperOnce(b, page, "ring finger")
	if testenv.Long() {
		lookedAt(b, page)
	}
}

// gloveChosen chooses a glove with the keyboard, in the form.
func gloveChosen(b *browser) {
	b.t.Helper()
	b.do(chromedp.Click(chromedp.CSS("#measure > summary")))
	assert.False(b.t, eval[bool](b, `[...document.querySelectorAll(".drawer .group > summary")].some((s) => /Fingers|fingers/.test(s.textContent) && s.checkVisibility())`), "a mitten's form does not grow")
	b.do(chromedp.Focus(chromedp.CSS(`[id="field-kind"]`)))
	b.key("g")
	b.until(`document.querySelectorAll(".by-finger .finger").length === 5`)
	b.until(settled)
}

// fingerMeasured types the girth of a finger: its tape is lit, and it is filled no more.
func fingerMeasured(b *browser) {
	b.t.Helper()
	b.do(chromedp.Evaluate[chromedp.Void](`document.getElementById("field-hand.fingers.index.girth").closest("details").open = true`))
	filled := func(path string) string {
		return eval[string](b, fmt.Sprintf(`document.querySelector('[data-filled-for=%q]').textContent`, path))
	}
	assert.Contains(b.t, filled("hand.fingers.ring.girth"), "0.306 of the hand circumference, from measured hands")
	b.write("hand.fingers.index.girth", "6.4")
	b.until(settled)
	assert.True(b.t, eval[bool](b, `document.querySelector('.tape[data-field="hand.fingers.index.girth"]').classList.contains("lit")`), "its tape is lit")
	b.shot("glove-measured")
	b.do(chromedp.KeyEvent(kb.Tab))
	assert.Equal(b.t, "field-hand.fingers.index.length", eval[string](b, `document.activeElement.id`), "the tape goes on along the finger")
}

// fingersCovered ends all four fingers half-way at once, then one of them by itself.
func fingersCovered(b *browser) {
	b.t.Helper()
	b.do(chromedp.Click(chromedp.CSS(`#covered > summary`)))
	b.do(chromedp.Click(chromedp.CSS(`.covered [name="end-all"][value="half"]`)))
	b.until(`[...document.querySelectorAll(".finger-name")].filter((e) => e.textContent.includes("half")).length === 4 && ` + settled)
	b.do(chromedp.Focus(chromedp.CSS(`.covered [name="end-fingers.middle"]:checked`)))
	b.key(kb.ArrowLeft)
	b.until(`[...document.querySelectorAll(".finger-name")].filter((e) => e.textContent.includes("half")).length === 3 && ` + settled)
	b.shot("glove-covered")
}

// fingerFixed fixes a number in its finger's line and sees what it costs. One that can't
// be has a way out.
func fingerFixed(b *browser) {
	b.t.Helper()
	b.do(chromedp.Click(chromedp.CSS(`#finger-ring > summary`)))
	b.do(chromedp.Click(chromedp.CSS(`[id="at-fingers.ring.back"] .fix`)))
	b.until(`document.querySelector('[id="at-fingers.ring.back"] .cost')?.textContent.includes("by itself") && ` + settled)
	b.shot("glove-fixed")
	b.do(chromedp.Evaluate[chromedp.Void](`document.getElementById("field-pins.fingers.ring.back").closest("details").open = true`))
	b.write("pins.fingers.ring.back", "40")
	b.until(`document.querySelector('.field [data-fault-for="pins.fingers.ring.back"]').textContent !== ""`)
	b.shot("glove-fault")
	b.do(chromedp.Click(chromedp.CSS(`.in-the-way button[value^="pins.fingers.ring.back="]`)))
	b.until(`document.querySelector(".by-finger") !== null && ` + settled)
	b.do(chromedp.Click(chromedp.CSS(`#fixed a`)))
	b.until(`document.activeElement.closest('[id="at-fingers.ring.back"]') !== null`)
	b.do(chromedp.Click(chromedp.CSS(`[id="at-fingers.ring.back"] button.set`)))
	b.until(`document.getElementById("fixed") === null && ` + settled)
}

// fingerPainted paints a stitch of a finger's own chart with the pointer.
func fingerPainted(b *browser, page string) {
	b.t.Helper()
	b.open(page + "/desk/chart?view=middle")
	b.do(chromedp.Click(chromedp.CSS(`[data-tool-op="p"]`)))
	at := b.cell(3, 4)
	b.do(chromedp.MouseClickXY(at.X, at.Y))
	b.until(`document.querySelector('[data-layer="painted"] [data-row="3"]').getAttribute("d") !== ""`)
	b.until(chartSaved)
	b.shot("glove-middle-finger")
	b.open(page + "/desk/chart?view=middle")
	require.Equal(b.t, 1, eval[int](b, marks+`.length`), "found after a reload")
}

// followedToFinger counts on until the little finger is on the needles.
func followedToFinger(b *browser, page string) {
	b.t.Helper()
	b.desk(page, "knit")
	b.until(`document.getElementById("awake").textContent !== ""`)
	nth := eval[int](b, `JSON.parse(document.getElementById("tasks").textContent).findIndex((t) => t.section === "little" && t.round === 2)`)
	require.Positive(b.t, nth)
	await[int](b, fmt.Sprintf(`fetch(%q, {method: "POST", body: new URLSearchParams({side: "right", nth: %d})}).then((r) => r.status)`, page+"/needles", nth))
	b.desk(page, "knit")
	assert.Regexp(b.t, `^Round 2 of \d+ · little finger`, eval[string](b, title))
	b.shot("glove-little-finger")
}

// lookedAt checks the desks of the glove as they look.
func lookedAt(b *browser, page string) {
	b.t.Helper()
	axe, err := os.ReadFile(testenv.File(b.t, "THENAR_AXE"))
	require.NoError(b.t, err)
	b.do(chromedp.Evaluate[chromedp.Void](`localStorage.clear()`))
	for _, desk := range deskNames {
		check(b, string(axe), "glove-"+desk, page+"/desk/"+desk)
	}
	b.scheme("light")
	b.phone()
	b.desk(page, "fit")
	b.do(chromedp.Click(chromedp.CSS("#measure > summary")))
	b.do(chromedp.Evaluate[chromedp.Void](`document.querySelectorAll(".drawer .group, .finger").forEach((e) => (e.open = true))`))
	assert.LessOrEqual(b.t, eval[int](b, `document.documentElement.scrollWidth`), 360)
	assert.Empty(b.t, eval[[]string](b, lowTargets))
	b.shot("glove-measure-phone")
}
