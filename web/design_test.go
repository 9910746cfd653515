package web

import (
	"fmt"
	"net/http"
	"net/url"
	"strings"
	"testing"

	"github.com/PuerkitoBio/goquery"
	"github.com/chromedp/chromedp"
	"github.com/chromedp/chromedp/kb"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// glove asks for glove sizes, one by one.
func glove(from, to string) url.Values {
	return url.Values{"fill.set": {"glove_sizes"}, "fill.glove_sizes.from": {from}, "fill.glove_sizes.to": {to}, "fill.glove_sizes.step": {"1"}}
}

// Without a script: sizes are filled from a set, a common text is chosen, a hand is
// changed, a list is added, a size is opened as a mitt. What can't be read comes back as
// it was typed, with what is wrong beside it.
func TestSizesByForms(t *testing.T) {
	t.Parallel()
	a := newApp(t)
	mitt := a.sample()
	design := mitt + "/design"
	require.Contains(t, a.get(design).body, "To begin, take glove sizes")
	require.Equal(t, http.StatusBadRequest, a.get(design+"/words.txt").status)
	require.Equal(t, http.StatusSeeOther, a.post(design+"/fill", glove("6", "11")).status)

	doc := a.get(design).doc()
	names := doc.Find(".strips-table thead th").Map(func(_ int, th *goquery.Selection) string { return th.Text() })
	require.Equal(t, []string{"6", "7", "8", "9", "10", "11"}, names)
	doc.Find(".strips-table tbody tr").Each(func(_ int, tr *goquery.Selection) {
		cells := 0
		tr.Find("td").Each(func(_ int, td *goquery.Selection) {
			switch span := td.AttrOr("colspan", "1"); span {
			case "":
			default:
				cells += int(span[0] - '0')
			}
		})
		assert.Equal(t, 6, cells, tr.Text())
	})
	assert.Contains(t, doc.Find(".nested svg").AttrOr("aria-label", doc.Find(".nested svg title").Text()), "sizes 6, 7, 8, 9, 10, 11 over each other")
	notches := doc.Find(".notches button[aria-pressed]")
	require.Greater(t, notches.Length(), 1)
	require.Equal(t, 1, doc.Find(`.notches button[aria-pressed="true"]`).Length())

	// The last notch is one text for all: no number splits.
	stamp := func(doc *goquery.Document) string {
		return doc.Find(`#sizes-form input[name="stamp"]`).AttrOr("value", "")
	}
	set := notches.Last().AttrOr("value", "")
	require.Equal(t, http.StatusSeeOther, a.post(design, url.Values{"stamp": {stamp(doc)}, "set": {set}}).status)
	doc = a.get(design).doc()
	assert.Contains(t, doc.Find("#text-head ~ p").First().Text(), "One text for all sizes.")
	assert.Equal(t, 5, doc.Find(".strips-table .strip").Length(), "each number is one strip")

	words := a.get(design + "/words.txt").body
	assert.Contains(t, words, "Cast on 30 (36, 40, 46, 50, 56) stitches")
	assert.Contains(t, words, "Increase round: ")
	assert.NotContains(t, a.get(design+"/words.txt?rounds").body, "Increase round: ")

	got := a.get(design + "/print.pdf?paper=letter")
	require.Equal(t, http.StatusOK, got.status)
	assert.True(t, strings.HasPrefix(got.body, "%PDF-"))

	// A wrong hand is kept and told; an old form is not saved over a newer one.
	old := stamp(doc)
	require.Equal(t, http.StatusSeeOther, a.post(design, url.Values{"stamp": {old}, "sizes[0].hand.size": {"six"}}).status)
	doc = a.get(design).doc()
	assert.Equal(t, "six", doc.Find(`input[name="sizes[0].hand.size"]`).AttrOr("value", ""))
	assert.NotEmpty(t, doc.Find(`[data-fault-of="sizes[0].hand.size"]`).Text())
	got = a.post(design, url.Values{"stamp": {old}, "sizes[0].hand.size": {"6"}})
	require.Equal(t, http.StatusConflict, got.status)
	assert.Contains(t, got.body, "Another window saved other sizes in between.")
	assert.Equal(t, "6", got.doc().Find(`input[name="sizes[0].hand.size"]`).AttrOr("value", ""))
	require.Equal(t, http.StatusSeeOther, a.post(design, url.Values{"stamp": {stamp(got.doc())}, "sizes[0].hand.size": {"6"}}).status)

	require.Equal(t, http.StatusSeeOther, a.post(design+"/list", url.Values{"fill.list": {"tall 20.5 21\n"}}).status)
	got = a.post(design+"/list", url.Values{"fill.list": {"short tiny\nxl wide"}})
	require.Equal(t, http.StatusBadRequest, got.status)
	assert.Equal(t, "short tiny\nxl wide", got.doc().Find("textarea").Text(), "what was pasted stays")
	assert.Contains(t, a.get(design).body, "tall")

	// A size that can't be made is told in words; what is wrong with the mitt itself, too.
	require.Equal(t, http.StatusSeeOther, a.post(design, url.Values{"stamp": {stamp(a.get(design).doc())}, "fix": {"held"}, "fix_for": {"0"}, "fix_value": {"99"}}).status)
	doc = a.get(design).doc()
	assert.Contains(t, doc.Find(".look-at-sizes dd").First().Text(), "Size 6: Held for the thumb: 99 doesn't go")
	require.Equal(t, http.StatusSeeOther, a.post(design, url.Values{"stamp": {stamp(doc)}, "sizes[0].pins.held": {""}}).status)

	// Each size can be looked at on its hand; what each pays stands beside its own best.
	doc = a.get(design).doc()
	require.Equal(t, 7, doc.Find(`.size-table a`).Length())
	hand := a.get(doc.Find(`.size-table a`).First().AttrOr("href", ""))
	assert.Equal(t, http.StatusOK, hand.status)
	assert.Contains(t, hand.doc().Find("figure svg").Text()+hand.body, "hand to scale")
	assert.Equal(t, 6, hand.doc().Find(`main nav a`).Length(), "the other sizes")
	for _, none := range []string{"0", "8", "x"} {
		assert.Equal(t, http.StatusNotFound, a.get(design+"/hand/"+none).status)
	}
	require.Equal(t, 2, doc.Find(`.strips-table .roots`).Length())
	doc.Find(".pays td").Each(func(i int, td *goquery.Selection) {
		mm := func(of *goquery.Selection) (v float64) { _, _ = fmt.Sscan(of.Eq(i).Text(), &v); return v }
		pays := mm(doc.Find(".pays td"))
		assert.InDelta(t, pays, mm(doc.Find(".roots").Eq(1).Find("td"))-mm(doc.Find(".roots").Eq(0).Find("td")), 0.11, "what a size pays")
	})
	assert.Equal(t, 3, doc.Find(".look-at-sizes dt").Length())

	got = a.post(design+"/open", url.Values{"size": {"tall"}})
	require.Equal(t, http.StatusSeeOther, got.status)
	assert.NotEqual(t, mitt, got.header.Get("Location"))
	assert.Contains(t, a.get(strings.TrimSuffix(got.header.Get("Location"), "/")+"/desk/fit").body, ", size tall")

	for _, bad := range []url.Values{glove("x", "8"), glove("6", "60")} {
		assert.Equal(t, http.StatusBadRequest, a.post(design+"/fill", bad).status)
	}
	assert.Contains(t, a.get(mitt+"/history").body, "sizes", "the mitt's history tells of its sizes")
}

// In a browser, Enter in a field works the sizes out and takes none away, whatever was typed
// elsewhere on the page is kept by any button, and what can't be used stands as it was typed.
func TestSizesAreTypedByKeyboard(t *testing.T) {
	t.Parallel()
	b := newBrowser(t)
	design := b.sample() + "/design"
	b.open(design)
	await[string](b, fmt.Sprintf(`fetch(%q, {method: "POST", body: new URLSearchParams(%q)}).then((r) => r.url)`, design+"/fill", glove("6", "8").Encode()))
	b.open(design)
	field := func(name string) string { return fmt.Sprintf(`[name="%s"]`, name) }
	set := func(name, text string) {
		eval[bool](b, fmt.Sprintf(`(document.querySelector(%q).value = %q) !== ""`, field(name), text))
	}
	value := func(name string) string {
		return eval[string](b, fmt.Sprintf(`document.querySelector(%q).value`, field(name)))
	}
	set("sizes[1].name", "medium")
	b.do(chromedp.Focus(chromedp.CSS(field("sizes[0].name"))), chromedp.KeyEvent("!"))
	_, err := chromedp.RunResponse(b.ctx, chromedp.KeyEvent(kb.Enter))
	require.NoError(t, err)
	assert.Equal(t, []string{"!6", "medium", "8"}, []string{value("sizes[0].name"), value("sizes[1].name"), value("sizes[2].name")})
	assert.Equal(t, "medium", eval[string](b, `document.querySelector(".size-table thead").rows[0].cells[2].textContent`))

	// A list that can't be read, with a hand that was changed beside it.
	set("sizes[2].hand.size", "9")
	set("fill.list", "XL wide\nXXL broad")
	defer b.expectErrors() // a refused form is answered with 400
	b.follow(`button[formaction$="/list"]`)
	assert.Equal(t, []string{"9", "XL wide\nXXL broad"}, []string{value("sizes[2].hand.size"), value("fill.list")})
	assert.Contains(t, eval[string](b, `document.querySelector('[data-fault-of="list"]').textContent`), "line 2")
}
