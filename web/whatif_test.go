package web

import (
	"net/http"
	"net/url"
	"testing"

	"github.com/chromedp/chromedp"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// A variant is changed beside the mitt, the differences are marked, both
// curves stand side by side, and taking it swaps the two.
func TestWhatIf(t *testing.T) {
	t.Parallel()
	b := newBrowser(t)
	page := sampled(b)
	b.open(page + "/what-if")
	assert.Contains(t, eval[string](b, `document.querySelector("#compare").textContent`), "Nothing yet")
	b.do(chromedp.Evaluate[chromedp.Void](open))
	b.write("ease.hand", "+5 %")
	b.until(`document.querySelector("table.compared .differs th")?.textContent === "Ease: Hand"`)
	b.until(`[...document.querySelectorAll("tr.differs")].some((r) => r.cells[0].textContent === "hand" && r.cells[1].textContent === "42 stitches" && r.cells[2].textContent !== "42 stitches")`)
	assert.Equal(t, 2, eval[int](b, `document.querySelectorAll(".pair figure svg").length`))
	assert.Equal(t, 2, eval[int](b, `document.querySelectorAll(".pair svg .fit-other").length ? 2 : 0`), "each has the other dotted")
	b.until(settled)
	b.shot("what-if")

	b.open(page)
	assert.Contains(t, eval[string](b, `document.querySelector(".summary").textContent`), "hand 42", "the mitt is as it was")
	b.open(page + "/what-if")
	assert.Equal(t, "+5 %", eval[string](b, `document.getElementById("field-ease.hand").value`), "found after a reload")
	b.follow(`form[action$="/take"] button`)
	assert.NotContains(t, eval[string](b, `document.querySelector(".summary").textContent`), "hand 42")
	b.open(page + "/what-if")
	assert.Empty(t, eval[string](b, `document.getElementById("field-ease.hand").value`), "the mitt of before is the variant now")
}

// What a variant can't be planned from is said at its place, and the other
// ends of a variant: a mitt of its own, or none.
func TestVariantEnds(t *testing.T) {
	a := newApp(t)
	at := a.sample()
	after, _ := a.get(at + "/what-if").doc().Find(`input[name="after"]`).Attr("value")
	made := a.post(at+"/what-if", url.Values{"after": {after}, "hand.hand_circumference": {"wide"}})
	require.Equal(t, http.StatusSeeOther, made.status)
	page := a.get(at + "/what-if").doc()
	assert.Contains(t, page.Find(".in-the-way").Text(), "is not a number")
	assert.Contains(t, a.get(at).doc().Find(".summary").Text(), "Cast on 36")

	own := a.post(at+"/what-if/copy", nil)
	require.Equal(t, http.StatusSeeOther, own.status)
	assert.Contains(t, a.get(own.header.Get("Location")).doc().Find("h1").Text(), "(second thought)")
	require.Equal(t, http.StatusSeeOther, a.post(at+"/what-if/drop", nil).status)
	assert.Contains(t, a.get(at+"/what-if").doc().Find("#compare").Text(), "Nothing yet")
}
