package web

import (
	"net/http"
	"net/url"
	"strings"
	"testing"

	"github.com/PuerkitoBio/goquery"
	"github.com/chromedp/chromedp"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// A baby's hand is offered a mitten without a thumb by one press; its page,
// its words and its paper speak of no thumb, and a thumb comes back the same
// way.
func TestThumblessIsOffered(t *testing.T) {
	t.Parallel()
	b := newBrowser(t)
	b.open("/")
	b.follow(".begin .main-action")
	page := b.mitt()
	b.write("gauge.swatches[0].stitches", "28")
	b.write("gauge.swatches[0].width", "10")
	b.write("hand.hand_length", "9")
	b.until(`document.querySelector('[data-code="thumbless"] button') !== null`)
	assert.Contains(t, eval[string](b, `document.querySelector('[data-filled-for="hand.hand_circumference"]').textContent`), "1.14 of the hand length")
	b.do(chromedp.Click(chromedp.CSS(`[data-code="thumbless"] button`)))
	b.until(`document.querySelector(".summary")?.textContent.includes("top in")`)
	b.until(settled)
	b.shot("thumbless")
	b.desk(page, "chart")
	assert.True(t, eval[bool](b, `document.querySelector('svg[data-chart="hand"]') !== null && document.querySelector('[data-view="view"] [value="gusset"]') === null`))
	b.open(page + "/print?paper=a4")
	assert.True(t, eval[bool](b, `document.querySelector("#words").textContent.includes("Top") && !document.querySelector("#words").textContent.includes("Thumb gusset")`))
	assert.NotContains(t, eval[string](b, `document.querySelector("main").textContent`), "Chart of the thumb gusset")
	b.shot("thumbless-print")
	b.desk(page, "fit")
	b.choose("kind", "mitten")
	b.until(settled)
	b.desk(page, "chart")
	assert.True(t, eval[bool](b, `document.querySelector('[data-go="gusset"]') !== null`))
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

// Beside a variant with a thumb every place at which the fit is told stands
// once, and what one of the two does not have is a dash.
func TestThumblessBesideAThumb(t *testing.T) {
	a := newApp(t)
	at := a.sample()
	after, _ := a.get(at + "/what-if").doc().Find(`input[name="after"]`).Attr("value")
	require.Equal(t, http.StatusSeeOther, a.post(at+"/what-if", url.Values{"after": {after}, "kind": {"mitten_without_thumb"}}).status)
	found := map[string][]string{}
	a.get(at + "/what-if").doc().Find("table.compared tr").Each(func(_ int, row *goquery.Selection) {
		name := strings.TrimSpace(row.Find("th").First().Text())
		found[name] = append(found[name], strings.TrimSpace(row.Find("td").Eq(1).Text()))
	})
	for _, name := range []string{"fabric: wrist", "fabric: hand", "fabric: palm with thumb"} {
		require.Len(t, found[name], 1, name)
		assert.NotEqual(t, "–", found[name][0])
	}
	for _, name := range []string{"fabric: thumb", "increase rounds at", "gusset base"} {
		assert.Equal(t, []string{"–"}, found[name], name)
	}
}

// The page of a fingerless sample made thumbless: its chart is the
// hand's, its words have no part of the thumb, and strokes are kept all the same.
func TestThumblessPage(t *testing.T) {
	a := newApp(t)
	at := a.sample()
	after, _ := a.get(at).doc().Find(`input[name="after"]`).Attr("value")
	require.Equal(t, http.StatusSeeOther, a.post(at, url.Values{"after": {after}, "kind": {"mitten_without_thumb"}, "pins.held": {"9"}}).status)
	chart, doc, words := a.desk(at, "chart").doc(), a.desk(at, "fit").doc(), a.desk(at, "pattern").doc().Find("#words").Text()
	assert.Equal(t, 1, chart.Find(`svg[data-chart="hand"]`).Length())
	assert.Positive(t, chart.Find(`[data-view="view"] [value="hand"]`).Length())
	assert.Zero(t, chart.Find(`[data-view="view"] [value="gusset"], [data-view="view"] [value="thumb"]`).Length())
	assert.Contains(t, doc.Find(".summary").Text(), "to the top")
	assert.Contains(t, doc.Find("#idle").Text(), "Fixed: ")
	assert.Zero(t, doc.Find(`[data-code="pins_without_effect"]`).Length(), "it is told once")
	assert.Contains(t, words, "Top")
	for _, word := range []string{"gusset", "Thumb", "bridge", "held"} {
		assert.NotContains(t, words, word)
	}
	assert.Equal(t, "mitten_without_thumb", doc.Find(`select[name="kind"] option[selected]`).AttrOr("value", ""))
}
