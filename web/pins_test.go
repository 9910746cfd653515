package web

import (
	"fmt"
	"net/http"
	"net/url"
	"testing"

	"github.com/chromedp/chromedp"
	"github.com/chromedp/chromedp/kb"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// settled is a page on which all that was typed is saved and answered.
const settled = `document.getElementById("saved").dataset.state === "saved" && document.getElementById("main").getAttribute("aria-busy") !== "true"`

// number is the element of a number of the plan.
func number(key string) string { return fmt.Sprintf(`.number[data-key=%q]`, key) }

// sampled opens a new sample mitt at Fit.
func sampled(b *browser) (page string) {
	b.t.Helper()
	page = b.sample()
	b.desk(page, "fit")
	b.until(`document.querySelector(".numbers") !== null`)
	return page
}

// A press on a number opens its slip with its text selected, what is typed over
// it fixes it and is solved anew, its cost stands beside it, one press lets it
// go, and the focus stays at its field. The ladder stays where it is.
func TestFixANumber(t *testing.T) {
	t.Parallel()
	b := newBrowser(t)
	page := sampled(b)
	castOn := number("cuff.cast_on")
	slip := castOn + " details"
	b.do(chromedp.Click(chromedp.CSS(slip + " > summary")))
	b.until(`document.activeElement.dataset.keep === "cast_on"`)
	assert.Equal(t, []int{0, 2}, eval[[]int](b, `[document.activeElement.selectionStart, document.activeElement.selectionEnd]`), "its text is selected")
	where := eval[float64](b, `document.querySelector('`+slip+`').getBoundingClientRect().top`)
	b.do(chromedp.Click(chromedp.CSS(castOn + " .fix")))
	b.until(`document.querySelector('` + castOn + ` input.fixed')?.value === "36"`)
	b.until(`document.activeElement.dataset.keep === "cast_on"`)
	assert.Equal(t, "36", eval[string](b, `document.getElementById("field-pins.cast_on").value`))
	assert.Contains(t, eval[string](b, `document.querySelector('`+castOn+` .cost').textContent`), "36 by itself, too")

	b.do(chromedp.Evaluate[chromedp.Void](`document.activeElement.select()`), chromedp.KeyEvent("4"), chromedp.KeyEvent("0"))
	b.until(`document.querySelector(".summary")?.textContent.startsWith("Cast on 40")`)
	assert.InDelta(t, where, eval[float64](b, `document.querySelector('`+slip+`').getBoundingClientRect().top`), 0.5, "the ladder stays where it is")
	require.Equal(t, "40", eval[string](b, `document.activeElement.value`), "the field keeps the focus and what was typed")
	assert.True(t, eval[bool](b, `(({ top, bottom }) => top >= 0 && bottom <= innerHeight)(document.activeElement.getBoundingClientRect())`), "and stays in view")
	b.until(`document.querySelector('` + castOn + ` .cost')?.textContent.startsWith("Free, it would be 36; fixed, it costs")`)
	b.until(settled)

	b.open(page)
	assert.Equal(t, "40", eval[string](b, `document.querySelector('`+castOn+` input').value`), "found after a reload")
	b.do(chromedp.Click(chromedp.CSS(slip+" > summary")), chromedp.Click(chromedp.CSS(castOn+" .set")))
	b.until(`document.querySelector('` + castOn + ` .fix')?.textContent.includes("Fix 36")`)
	assert.Equal(t, "cast_on", eval[string](b, `document.activeElement.dataset.keep`), "letting go keeps the focus")
	b.until(settled)
	b.open(page)
	assert.True(t, eval[bool](b, `document.querySelector('`+castOn+` .fix') !== null`))
}

// By the keyboard alone, and numbers that contradict each other: both are
// named, with a press that uses what works and one that lets go.
func TestContradiction(t *testing.T) {
	t.Parallel()
	b := newBrowser(t)
	sampled(b)
	open := func(key, keep string) {
		b.do(chromedp.Focus(chromedp.CSS(number(key)+" summary")), chromedp.KeyEvent(kb.Enter))
		b.until(`document.activeElement.matches('input[data-keep="` + keep + `"]')`)
	}
	open("thumb.held", "held")
	b.do(chromedp.KeyEvent(kb.Enter)) // as it is
	b.until(`document.querySelector('input.fixed[data-keep="held"]') !== null`)
	open("gusset.base", "gusset_base")
	b.do(chromedp.KeyEvent("4"))
	b.until(`document.querySelectorAll(".in-the-way li").length >= 2`)
	words := eval[string](b, `document.querySelector(".in-the-way").textContent`)
	assert.Contains(t, words, "Gusset base")
	assert.Contains(t, words, "Held for the thumb")
	assert.NotEmpty(t, eval[string](b, `document.activeElement.closest(".typed").querySelector(".fault-message").textContent`), "the message stands beside the field")
	b.do(chromedp.Click(chromedp.CSS(`.in-the-way button[value^="pins.held="]:not([value="pins.held="])`)))
	b.until(`document.querySelector(".summary")?.textContent.includes("gusset 4 →")`)
	b.until(settled)
}

// Without a script the same buttons send the form.
func TestFixWithoutScript(t *testing.T) {
	a := newApp(t)
	at := a.sample()
	doc := a.get(at).doc()
	button := doc.Find(number("cuff.cast_on") + " .fix")
	after, _ := doc.Find(`input[name="after"]`).Attr("value")
	set, _ := button.Attr("value")
	require.Equal(t, "pins.cast_on=36", set)
	made := a.post(at, url.Values{"after": {after}, "set": {set}})
	require.Equal(t, http.StatusSeeOther, made.status)
	doc = a.get(at).doc()
	assert.Equal(t, 1, doc.Find(number("cuff.cast_on")+" input.fixed").Length())
	after, _ = doc.Find(`input[name="after"]`).Attr("value")
	for set, status := range map[string]int{"nonsense": http.StatusBadRequest, "pins.nothing=1": http.StatusBadRequest} {
		assert.Equal(t, status, a.post(at, url.Values{"after": {after}, "set": {set}}).status, set)
	}
	made = a.post(at, url.Values{"after": {after}, "set": {"pins.cast_on="}})
	require.Equal(t, http.StatusSeeOther, made.status)
	assert.Equal(t, 0, a.get(at).doc().Find(number("cuff.cast_on")+" input.fixed").Length())
}
