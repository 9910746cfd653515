package web

import (
	"fmt"
	"testing"
	"time"

	"github.com/chromedp/chromedp"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

const (
	keptAll  = `document.getElementById("kept").dataset.state === "saved"`
	keptHere = `document.getElementById("kept").textContent.includes("Offline: keep this page open; rounds are sent later.")`
	lit      = `[...document.querySelectorAll("[data-strip]:not([hidden])")].map((e) => e.dataset.strip + (e.querySelector(".now").getAttribute("d") && e.dataset.on)).sort().join() === "gussetnarrow,handwide"`
	title    = `document.querySelector("[data-title]").textContent`
)

// A try-on at the size of a phone, with the server killed again and again: the
// rounds that were counted, the note, the try and its answer all arrive, once.
func TestTryOnFromTheNeedles(t *testing.T) {
	t.Parallel()
	b := newBrowser(t)
	k := newKillable(t)
	b.url = "http://" + k.address
	b.phone()
	mitt := b.sample()

	b.open(mitt + "/desk/knit")
	b.until(`document.getElementById("awake").textContent !== ""`)
	assert.Equal(t, "awake", eval[string](b, `(() => { const { left, bottom } = document.getElementById("awake").getBoundingClientRect(); return document.elementFromPoint(left + 2, bottom - 2)?.id; })()`), "its last row is read")
	b.taps(".forward", 21)
	b.until(keptAll)
	b.until(lit) // the page came with the cuff: the gusset's charts came after it
	k.kill()
	b.taps(".forward", 6)
	assert.True(t, eval[bool](b, lit), "the charts are here without the server")
	b.do(chromedp.Evaluate[chromedp.Void](`document.getElementById("note").focus()`), chromedp.KeyEvent("a stitch slipped"))
	b.tap("[data-note] button")
	b.taps(".forward", 1)
	b.taps(".back", 1)
	b.until(keptHere)
	assert.Equal(t, "Round 9 of 20 · gusset", eval[string](b, title), "cast on, 9 of ribbing, 9 plain, 8 of the gusset")
	k.start()
	b.until(keptAll)
	b.open(mitt + "/desk/knit")
	assert.Equal(t, "Round 9 of 20 · gusset", eval[string](b, title))
	assert.Equal(t, "a stitch slipped", eval[string](b, `document.getElementById("note").value`))
	assert.Empty(t, eval[[]string](b, `[...document.querySelectorAll(".later li")].filter((li) => {
		const all = li.parentElement.getBoundingClientRect(), one = li.getBoundingClientRect();
		return one.left < all.right && one.bottom > all.bottom + 1;
	}).map((li) => li.textContent)`), "what comes later is whole or not there")
	assert.LessOrEqual(t, eval[int](b, `document.documentElement.scrollWidth`), 360)
	b.shot("needles-phone")

	b.open(mitt + "/desk/try")
	assert.Equal(t, "8", eval[string](b, `document.getElementById("try-round").value`), "the count is known")
	assert.Less(t, eval[float64](b, `document.querySelector(".caution-first").getBoundingClientRect().top`), 300.0, "said first")
	ends := eval[[2]point](b, `(() => {
		const [, handle] = document.querySelectorAll(".pull-handle"); // that of the gusset
		handle.scrollIntoView({ block: "center" });
		const r = handle.getBoundingClientRect(), svg = document.querySelector(".pulling svg");
		const stop = (14 * svg.getBoundingClientRect().width) / svg.viewBox.baseVal.width;
		const at = { X: r.left + r.width / 2, Y: r.top + r.height / 2 };
		return [at, { X: at.X - stop, Y: at.Y }];
	})()`)
	b.swipe(ends[0], ends[1])
	assert.Equal(t, "1", eval[string](b, `document.querySelector('[name="feel.gusset"]:checked').value`), "its tape was pulled out by a stop")
	b.tap(`[name="feel.cuff"][value="0"]`)
	assert.Equal(t, "palm at the thumb, hand, thumb: not knitted yet", eval[string](b, `document.querySelector("[data-unfelt]").textContent`))
	b.fill("try-stitches", "18")
	b.fill("try-width", "8")
	b.fill("try-top", "4")
	b.tap(`[name="top_way"][value="low"]`)
	b.tap(`[name="top_way"][value="low"]`)
	assert.False(t, eval[bool](b, `document.querySelector('[name="top_way"][value="low"]').checked`), "pressed again, it says nothing")
	b.tap(`[name="top_way"][value="low"]`)
	assert.Equal(t, "palm at the gusset: a little tight", eval[string](b, `[...document.querySelectorAll(".pull-words.is-said")].at(-1).textContent`), "the tape is where the word is")
	assert.Empty(t, eval[[]string](b, `(() => {
		const svg = document.querySelector(".pulling svg"), at = svg.getBoundingClientRect();
		const hands = [...svg.querySelectorAll(".pull")].map((e) => at.left + (Number(e.dataset.from) * at.width) / svg.viewBox.baseVal.width);
		const ends = (e) => { const all = document.createRange(); all.selectNodeContents(e); return all.getBoundingClientRect().right; };
		return [...document.querySelectorAll(".pull-words")].filter((e, i) => e.checkVisibility() && ends(e) > hands[i]).map((e) => e.textContent);
	})()`), "no word lies on the hand")
	k.kill()
	b.tap("#try-form > button")
	b.until(`document.getElementById("try-kept").textContent.includes("No connection")`)
	assert.Equal(t, "18", eval[string](b, `document.getElementById("try-stitches").value`), "what was typed stands")
	k.start()
	b.arrives(`document.querySelectorAll(".correction").length === 3`)
	b.shot("answer-phone")

	before := eval[string](b, `document.querySelector(".onward").textContent`)
	b.tap(`[name="keep"][value="top"]`)
	b.until(fmt.Sprintf(`document.querySelector(".onward").textContent !== %q`, before))
	k.kill()
	b.tap(`button[value="on"]`)
	b.until(`document.getElementById("try-kept").textContent.includes("No connection")`)
	k.start()
	b.arrives(`document.querySelector("[data-title]") !== null`)
	assert.Regexp(t, `^Round 9 of \d+ · gusset$`, eval[string](b, title), "the next round is shown")

	k.kill()
	k.start()
	b.expectErrors() // those of the times without a server
	b.open(mitt + "/desk/knit")
	assert.Regexp(t, `^Round 9 of \d+ · gusset$`, eval[string](b, title))
	b.open(mitt + "/desk/try")
	assert.Equal(t, 1, eval[int](b, `document.querySelectorAll("ol.moments > li").length`), "kept once")
	b.open(mitt + "/history")
	assert.Equal(t, 1, eval[int](b, `[...document.querySelectorAll(".moments")].filter((e) => e.textContent.includes("as it is now")).length`))
	b.desk(mitt, "fit")
	assert.Contains(t, eval[string](b, `document.querySelector(".knitted").textContent`), "round 8 of the gusset")
	b.size(1280, 900)
	b.desk(mitt, "fit")
	b.shot("mitt-after-try")
	require.Equal(t, 200, eval[int](b, `performance.getEntriesByType("navigation")[0].responseStatus`))
	b.do(chromedp.Navigate("about:blank")) // nothing listens any more when the server goes
}

// taps presses a button as a finger does, some times.
func (b *browser) taps(selector string, times int) {
	b.t.Helper()
	for range times {
		before := eval[string](b, title)
		b.tap(selector)
		b.until(fmt.Sprintf(`%s !== %q`, title, before))
	}
}

// arrives waits for an expression to hold on a page to which the script leads.
func (b *browser) arrives(expression string) {
	b.t.Helper()
	require.Eventually(b.t, func() bool {
		holds, err := chromedp.Run(b.ctx, chromedp.Evaluate[bool](expression))
		return err == nil && holds // while the page changes it can't be asked
	}, 15*time.Second, 50*time.Millisecond, expression)
}

// fill types into a field.
func (b *browser) fill(id, text string) {
	b.t.Helper()
	b.do(chromedp.Evaluate[chromedp.Void](fmt.Sprintf(`document.getElementById(%q).focus()`, id)), chromedp.KeyEvent(text))
}
