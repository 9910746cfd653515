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

// sampled opens the sample mitt.
func sampled(b *browser) (page string) {
	b.t.Helper()
	b.open("/")
	b.follow(".begin form:nth-of-type(2) button")
	b.until(`document.querySelector(".numbers") !== null`)
	return b.mitt()
}

// One press on a number fixes it, what is typed over it is solved anew, its
// cost stands beside it, and one press lets it go.
func TestFixANumber(t *testing.T) {
	t.Parallel()
	b := newBrowser(t)
	page := sampled(b)
	castOn := number("cuff.cast_on")
	b.do(chromedp.Click(chromedp.CSS(castOn + " .fix")))
	b.until(`document.querySelector('` + castOn + ` input')?.value === "36"`)
	b.until(`document.activeElement.dataset.keep === "cast_on"`)
	assert.Equal(t, "36", eval[string](b, `document.getElementById("field-pins.cast_on").value`))
	assert.Contains(t, eval[string](b, `document.querySelector('`+castOn+` .cost').textContent`), "36 by itself, too")

	b.do(chromedp.Evaluate[chromedp.Void](`document.activeElement.select()`), chromedp.KeyEvent("4"), chromedp.KeyEvent("0"))
	b.until(`document.querySelector(".summary")?.textContent.startsWith("Cast on 40")`)
	require.Equal(t, "40", eval[string](b, `document.activeElement.value`), "the field keeps the focus and what was typed")
	assert.True(t, eval[bool](b, `(({ top, bottom }) => top >= 0 && bottom <= innerHeight)(document.activeElement.getBoundingClientRect())`), "and stays in view")
	b.until(`document.querySelector('` + castOn + ` .cost')?.textContent.startsWith("Free it would be 36; fixed it costs")`)
	b.until(settled)

	b.open(page)
	assert.Equal(t, "40", eval[string](b, `document.querySelector('`+castOn+` input').value`), "found after a reload")
	b.do(chromedp.Click(chromedp.CSS(castOn + " .set")))
	b.until(`document.querySelector('` + castOn + ` .fix')?.textContent === "36 stitches"`)
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
	b.do(chromedp.Focus(chromedp.CSS(number("thumb.held")+" .fix")), chromedp.KeyEvent(kb.Enter))
	b.until(`document.activeElement.dataset.keep === "held" && document.activeElement.matches("input")`)
	b.do(chromedp.Focus(chromedp.CSS(number("gusset.base")+" .fix")), chromedp.KeyEvent(kb.Enter))
	b.until(`document.activeElement.dataset.keep === "gusset_base" && document.activeElement.matches("input")`)
	b.do(chromedp.Evaluate[chromedp.Void](`document.activeElement.select()`), chromedp.KeyEvent("4"))
	b.until(`document.querySelectorAll(".in-the-way li").length >= 2`)
	words := eval[string](b, `document.querySelector(".in-the-way").textContent`)
	assert.Contains(t, words, "Gusset base")
	assert.Contains(t, words, "Held for the thumb")
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
	assert.Equal(t, 1, doc.Find(number("cuff.cast_on")+" input").Length())
	after, _ = doc.Find(`input[name="after"]`).Attr("value")
	for set, status := range map[string]int{"nonsense": http.StatusBadRequest, "pins.nothing=1": http.StatusBadRequest} {
		assert.Equal(t, status, a.post(at, url.Values{"after": {after}, "set": {set}}).status, set)
	}
	made = a.post(at, url.Values{"after": {after}, "set": {"pins.cast_on="}})
	require.Equal(t, http.StatusSeeOther, made.status)
	assert.Equal(t, 0, a.get(at).doc().Find(number("cuff.cast_on")+" input").Length())
}
