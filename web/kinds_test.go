package web

import (
	"fmt"
	"testing"

	"github.com/chromedp/chromedp"
	"github.com/chromedp/chromedp/kb"
	"github.com/stretchr/testify/assert"
)

// kindWay is the radio button of a kind.
func kindWay(key string) string { return fmt.Sprintf(`#kinds input[value=%q]`, key) }

// The kinds that a hand can have are drawn side by side and chosen with the keys: the plan
// and the form's list follow, and the focus stays.
func TestKindsAreChosen(t *testing.T) {
	t.Parallel()
	b := newBrowser(t)
	page := sampled(b)
	b.desk(page, "fit")
	b.until(`document.querySelector("#kinds") !== null`)
	b.do(chromedp.Focus(chromedp.CSS("#kinds > summary")))
	b.key(kb.Enter)
	b.shot("kinds")
	kinds := eval[[]string](b, `[...document.querySelectorAll("#kinds input:enabled")].map((e) => e.value)`)
	assert.Equal(t, []string{"fingerless", "mitten", "glove"}, kinds)
	assert.EqualValues(t, 3, eval[int64](b, `document.querySelectorAll("#kinds .drawn svg").length`))
	b.do(chromedp.Focus(chromedp.CSS(kindWay("fingerless"))))
	for _, kind := range kinds[1:] {
		b.key(kb.ArrowDown)
		b.until(fmt.Sprintf(`document.querySelector('%s')?.hasAttribute("checked") && %s`, kindWay(kind), settled))
		assert.Equal(t, "thumb-"+kind, eval[string](b, `document.activeElement.dataset.keep`), "the focus goes with the choice")
		assert.Equal(t, kind, eval[string](b, `document.getElementById("field-kind").value`))
		assert.True(t, eval[bool](b, `document.getElementById("kinds").open`), "the drawings stay open")
	}
	assert.True(t, eval[bool](b, `document.querySelector("#kinds > summary").textContent.includes("Glove.")`))

	// What a mitten has no use for stands at the mitten before, in a list after, and is back by
	// one press.
	b.write("pins.fingers.index.palm", "6")
	b.until(fmt.Sprintf(`document.querySelector("#kinds .thumb-way:has([value=mitten])")?.textContent.includes("fixed index finger, of the palm") && %s`, settled))
	b.do(chromedp.Click(chromedp.CSS(kindWay("mitten"))))
	b.until(fmt.Sprintf(`document.querySelector("#idle")?.textContent.includes("index finger, of the palm, 6") && %s`, settled))
	b.shot("idle")
	b.open(page)
	b.do(chromedp.Click(chromedp.CSS(`#idle [value="kind=glove"]`)))
	b.until(fmt.Sprintf(`document.querySelector("#idle") === null && document.querySelector('%s')?.hasAttribute("checked") && %s`, kindWay("glove"), settled))
	assert.Equal(t, "6", eval[string](b, `document.getElementById("field-pins.fingers.index.palm").value`))
	for _, scheme := range []string{"light", "dark"} {
		for _, phone := range []bool{false, true} {
			b.size(1280, 900)
			if phone {
				b.phone()
			}
			b.scheme(scheme)
			b.open(page)
			b.do(chromedp.Click(chromedp.CSS("#kinds > summary")))
			assert.LessOrEqual(t, eval[float64](b, `document.getElementById("kinds").getBoundingClientRect().right - innerWidth`), 0.0)
			assert.GreaterOrEqual(t, eval[float64](b, `document.querySelector("#kinds .thumb-way").getBoundingClientRect().height`), 44.0)
			b.shot(fmt.Sprintf("kinds-%s-phone-%t", scheme, phone))
		}
	}

	// A baby gets no fingers: the list in the form leaves the glove out, and so do the drawings.
	b.write("hand.hand_length", "8")
	b.until(`document.querySelector('[name="set"][value="kind=mitten_without_thumb"]') !== null`)
	b.do(chromedp.Click(chromedp.CSS(`[name="set"][value="kind=mitten_without_thumb"]`)))
	b.until(fmt.Sprintf(`document.querySelector('%s')?.hasAttribute("checked") && %s`, kindWay("mitten_without_thumb"), settled))
	offered := `[...document.getElementById("field-kind").options].filter((o) => !o.disabled && !o.hidden).map((o) => o.value)`
	assert.Equal(t, []string{"fingerless", "mitten", "mitten_without_thumb"}, eval[[]string](b, offered))
	assert.Equal(t, []string{"fingerless", "mitten", "mitten_without_thumb"}, eval[[]string](b, `[...document.querySelectorAll("#kinds input")].map((e) => e.value)`))
	b.open(page)
	assert.Equal(t, []string{"fingerless", "mitten", "mitten_without_thumb"}, eval[[]string](b, offered))
	b.write("hand.hand_length", "18")
	b.until(`!document.querySelector('#field-kind [value="glove"]').hidden`)
}
