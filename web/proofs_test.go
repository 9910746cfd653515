package web

import (
	"encoding/json"
	"net/http"
	"strconv"
	"testing"

	"github.com/chromedp/chromedp"
	"github.com/chromedp/chromedp/kb"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// colourful makes a mitten of two colours in a fine yarn, with a motif all over,
// whose handout has many sheets.
func colourful(t *testing.T, a *served) string {
	t.Helper()
	at := a.sample()
	form := a.get(at + "/desk/fit").form()
	for path, text := range map[string]string{
		"kind": "mitten", "hand.hand_circumference": "21", "gauge.swatches[0].stitches": "32", "gauge.swatches[0].rounds": "42",
		"chart.yarns[0].name": "rust", "chart.yarns[0].colour": "#B9562F", "chart.yarns[1].name": "cream", "chart.yarns[1].colour": "#F1E3C6",
	} {
		form.Set(path, text)
	}
	require.Equal(t, http.StatusSeeOther, a.post(at, form).status)
	type edit struct {
		Section string `json:"section"`
		Round   int    `json:"round"`
		Column  string `json:"column"`
		Layer   string `json:"layer"`
		Value   string `json:"value"`
	}
	var edits []edit
	for round := 1; round <= 60; round++ {
		for column := 1; column <= 66; column++ {
			if (column+round)%6 == 0 || (column*round)%11 == 0 {
				edits = append(edits, edit{"hand", round, "H" + strconv.Itoa(column), "colour", "b"})
			}
		}
	}
	stroke, err := json.Marshal(map[string]any{"after": 2, "edits": edits})
	require.NoError(t, err)
	require.Equal(t, http.StatusOK, a.stroke(at+"/chart", string(stroke)).status)
	return at
}

// The desk's page is light, however many sheets the handout has; those held
// back are at an address of their own, and without a script behind a link.
func TestPatternPageIsLight(t *testing.T) {
	t.Parallel()
	a := newApp(t)
	at := colourful(t, a)
	page := a.get(at + "/desk/pattern")
	held := page.doc().Find(".sheet.awaited").Length()
	require.Positive(t, held, "this handout is heavy")
	packed := len(a.taking("gzip", at+"/desk/pattern").body)
	assert.LessOrEqual(t, packed, 60*1024)
	t.Logf("%d bytes packed, %d of %d sheets held back", packed, held, page.doc().Find(".sheet").Length())
	rest := a.get(page.doc().Find(".sheets").AttrOr("data-rest", ""))
	assert.Equal(t, held, rest.doc().Find(".sheet svg").Length())
	all := a.get(page.doc().Find(".awaited a").AttrOr("href", "")).doc()
	assert.Zero(t, all.Find(".awaited").Length())
	assert.Equal(t, page.doc().Find(".sheet").Length(), all.Find(".sheet svg").Length())
	assert.Equal(t, all.Find(".sheet").Last().Text(), rest.doc().Find(".sheet").Last().Text())
	assert.Equal(t, http.StatusBadRequest, a.get(at+"/sheets?from=x").status)
}

// A choice lays the proofs out anew by itself: the page stays, and so does the
// focus; a number that can't be used says so at its field. The hand in the bar
// does the same to the proofs and the words.
func TestProofsFollowTheChoices(t *testing.T) {
	t.Parallel()
	b := newBrowser(t)
	b.desk(b.sample(), "pattern")
	b.until(`document.querySelector(".lay-out").hidden`)
	b.do(chromedp.Evaluate[chromedp.Void](`window.samePage = true`))
	b.do(chromedp.Focus(chromedp.CSS(`[name="sideways"]:checked`)), chromedp.KeyEvent(kb.ArrowRight))
	b.until(`document.querySelector(".sheet svg").getAttribute("width") === "297mm"`)
	assert.Equal(t, "sideways", eval[string](b, `document.activeElement.name`))
	assert.Contains(t, eval[string](b, `location.search`), "sideways=1")
	assert.Contains(t, eval[string](b, `document.body.className`), "paper-a4-sideways", "it is printed on that paper")
	b.do(chromedp.Focus(chromedp.CSS(`[name="cell"]`)), chromedp.KeyEvent("x"))
	b.until(`document.querySelector('[data-fault-of="cell"]').textContent.includes("write a width from 2 to 20 mm")`)
	b.do(chromedp.KeyEvent(kb.Backspace), chromedp.KeyEvent("5"))
	b.until(`document.querySelector('[data-fault-of="cell"]').textContent === ""`)
	assert.Equal(t, "5", eval[string](b, `document.activeElement.value`))

	b.until(`document.querySelector('.keep-layout [name="print"]').value.includes("cell=5") && document.querySelector(".keep-layout button") === null`)
	b.until(quiet) // the bar follows from what was kept
	b.do(chromedp.Click(chromedp.CSS(`[data-keep="side-left"]`)))
	b.until(`document.querySelector(".sheets").textContent.includes("left hand")`)
	b.until(`document.querySelector("#words").textContent.includes("left hand")`)
	assert.True(t, eval[bool](b, `window.samePage`), "no page was loaded anew")
	assert.Contains(t, eval[string](b, `document.querySelector('.keep-layout [name="print"]').value`), "cell=5")

	b.do(chromedp.Click(chromedp.CSS(`[aria-label="Page 5"]`)))
	b.until(`document.querySelector('.page-numbers [aria-current]').textContent === "5"`)
}
