package web

import (
	"fmt"
	"testing"

	"github.com/chromedp/chromedp"
	"github.com/chromedp/chromedp/kb"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// thumbWay is the radio button of a way to make the mitt round its thumb.
func thumbWay(key string) string { return fmt.Sprintf(`#made input[value=%q]`, key) }

// Each way to make the mitt is chosen with the mouse and with the keys: the plan, the
// words and the chart follow, the focus stays, and what was painted and fixed is kept,
// or listed and back with the way before.
func TestThumbsAreChosen(t *testing.T) {
	t.Parallel()
	b := newBrowser(t)
	page := sampled(b)
	marks := `fetch(%q + "/chart", {method: "POST", headers: {"Content-Type": "application/json"}, body: JSON.stringify({after: 1, edits: [{section: "gusset", round: 2, column: "A1", layer: "colour", value: "b"}]})}).then((r) => r.status)`
	require.EqualValues(t, 200, await[int64](b, fmt.Sprintf(marks, page)))
	b.decide(page, "after=1&pins.gusset_base=3")
	b.desk(page, "fit")
	b.until(`document.querySelector("#made") !== null`)
	b.do(chromedp.Click(chromedp.CSS("#made > summary")))
	b.shot("thumbs")
	keys := eval[[]string](b, `[...document.querySelectorAll("#made input:enabled")].map((e) => e.value)`)
	require.GreaterOrEqual(t, len(keys), 3)
	require.Equal(t, "gussetside", keys[0])
	chosen := func(key string) {
		t.Helper()
		b.until(fmt.Sprintf(`document.querySelector('%s')?.hasAttribute("checked") && %s`, thumbWay(key), settled))
	}
	for _, key := range keys[1:] {
		b.do(chromedp.Click(chromedp.CSS(thumbWay(key))))
		chosen(key)
		assert.True(t, eval[bool](b, `document.querySelector("#made").open`), "the drawings stay open")
		b.open(page)
		assert.True(t, eval[bool](b, fmt.Sprintf(`document.querySelector('%s').checked`, thumbWay(key))), "%s is found after a reload", key)
		words := eval[string](b, `document.querySelector("#made > summary").textContent`)
		lost := eval[string](b, `document.querySelector(".thumb-way:has(:checked) .costs").textContent`)
		if key == "gussetpalm" {
			assert.Contains(t, words, "Gusset in the palm")
			assert.NotContains(t, lost, "No use here")
		}
		if key == "none" {
			assert.Contains(t, lost, "fixed gusset base")
			assert.Contains(t, lost, "1 mark on the gusset")
			b.desk(page, "chart")
			assert.NotContains(t, eval[string](b, `document.body.textContent`), "Thumb gusset", "its chart has no gusset")
			b.desk(page, "pattern")
			assert.Contains(t, eval[string](b, `document.body.textContent`), "It ends below the thumb")
			b.desk(page, "fit")
			b.until(`document.querySelector("#made") !== null`)
		}
		b.do(chromedp.Click(chromedp.CSS("#made > summary")))
	}

	// With the keys, back to the first: all that was fixed and painted is there again.
	for i := len(keys) - 2; i >= 0; i-- {
		b.do(chromedp.Focus(chromedp.CSS(thumbWay(keys[i+1]))))
		b.key(kb.ArrowUp)
		chosen(keys[i])
		assert.Equal(t, "thumb-"+keys[i], eval[string](b, `document.activeElement.dataset.keep`), "the focus goes with the choice")
	}
	assert.NotContains(t, eval[string](b, `document.querySelector(".thumb-way:has(:checked) .costs").textContent`), "No use here")
	assert.Equal(t, "3", eval[string](b, `document.getElementById("field-pins.gusset_base").value`))
	assert.Contains(t, colours(b, page, "gusset", 2), "A1", "what was painted is back")
	for _, scheme := range []string{"light", "dark"} {
		b.scheme(scheme)
		b.phone()
		b.open(page)
		b.do(chromedp.Click(chromedp.CSS("#made > summary")))
		assert.LessOrEqual(t, eval[float64](b, `document.documentElement.scrollWidth - innerWidth`), 0.0)
		assert.GreaterOrEqual(t, eval[float64](b, `document.querySelector(".thumb-way").getBoundingClientRect().height`), 44.0)
		b.shot("thumbs-phone-" + scheme)
	}
}
