package web

import (
	"net/http"
	"net/url"
	"testing"

	"github.com/chromedp/chromedp"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// A baby's hand is offered a mitten without a thumb by one press; its page,
// its words and its paper speak of no thumb, and a thumb comes back the same
// way.
func TestThumblessIsOffered(t *testing.T) {
	b := newBrowser(t)
	b.open("/")
	b.follow(".begin .main-action")
	page := eval[string](b, `location.pathname`)
	b.write("gauge.swatches[0].stitches", "28")
	b.write("gauge.swatches[0].width", "10")
	b.write("hand.hand_length", "9")
	b.until(`document.querySelector('[data-code="thumbless"] button') !== null`)
	assert.Contains(t, eval[string](b, `document.querySelector('[data-filled-for="hand.hand_circumference"]').textContent`), "1.14 × hand length")
	b.do(chromedp.Click(chromedp.CSS(`[data-code="thumbless"] button`)))
	b.until(`document.querySelector(".summary")?.textContent.includes("top in")`)
	b.until(`document.querySelector("#chart")?.textContent.includes("no gusset to chart")`)
	b.until(`document.querySelector("#words")?.textContent.includes("Top") && !document.querySelector("#words").textContent.includes("Thumb gusset")`)
	b.until(settled)
	b.shot("thumbless")
	b.open(page + "/print?paper=a4")
	assert.NotContains(t, eval[string](b, `document.querySelector("main").textContent`), "Chart of the thumb gusset")
	b.shot("thumbless-print")
	b.open(page)
	b.choose("kind", "mitten")
	b.until(`document.querySelector("svg[data-chart]") !== null`)
	b.until(settled)
}

// The shelf calls it by its name, and its plan stands there small.
func TestThumblessOnTheShelf(t *testing.T) {
	a := newApp(t)
	at := a.sample()
	after, _ := a.get(at).doc().Find(`input[name="after"]`).Attr("value")
	require.Equal(t, http.StatusSeeOther, a.post(at, url.Values{"after": {after}, "kind": {"mitten_without_thumb"}}).status)
	shelf := a.get("/").doc()
	assert.Contains(t, shelf.Text(), "mitten without a thumb, right hand")
	require.Equal(t, http.StatusOK, a.get(at+"/what-if").status)
}
