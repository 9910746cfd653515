package web

import (
	"net/http"
	"net/url"
	"os"
	"strings"
	"testing"

	"github.com/PuerkitoBio/goquery"
	"github.com/chromedp/chromedp"
	"github.com/chromedp/chromedp/kb"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"thenar/internal/testenv"
)

// inSizes is a sample with sizes, and the address of its sentences.
func (a *served) inSizes() (mitt, sentences string) {
	a.t.Helper()
	mitt = a.sample()
	require.Equal(a.t, http.StatusSeeOther, a.post(mitt+"/design/fill", glove("7", "9")).status)
	return mitt, mitt + "/design/sentences"
}

// inForm returns what a page of sentences holds in its form, with a field of it typed anew.
func inForm(doc *goquery.Document, key, typed string) url.Values {
	form := url.Values{}
	doc.Find(".sentences form input[type=hidden]").Each(func(_ int, s *goquery.Selection) { form.Set(s.AttrOr("name", ""), s.AttrOr("value", "")) })
	doc.Find(".sentences textarea").Each(func(_ int, s *goquery.Selection) { form.Set(s.AttrOr("name", ""), s.Text()) })
	if key != "" {
		form.Set(key, typed)
	}
	return form
}

const castOn = "line cuff/cast-on-stitches-with-a/1"

// Without a script: a line is opened, worded otherwise, added to, taken back; its numbers
// follow the sizes, in the words and on the pages; the designer's own are told.
func TestSentencesByForms(t *testing.T) {
	t.Parallel()
	a := newApp(t)
	mitt, at := a.inSizes()
	assert.Contains(t, a.get(mitt+"/design").body, at, "the sizes lead to the sentences")
	doc := a.get(at).doc()
	require.Zero(t, doc.Find(".sentences textarea").Length())
	require.Zero(t, doc.Find(".by-hand").Length())

	open := inForm(doc, "", "")
	open.Set("open", castOn)
	got := a.post(at, open)
	require.Equal(t, http.StatusSeeOther, got.status)
	to, err := url.Parse(got.header.Get("Location"))
	require.NoError(t, err)
	assert.Empty(t, to.Fragment, "or the field would not be entered")
	doc = a.get(to.RequestURI()).doc()
	require.Equal(t, 1, doc.Find("#at-cuff-cast-on-stitches-with-a-1 textarea[autofocus]").Length())
	field := doc.Find(`.sentences textarea`)
	require.Regexp(t, `^Cast on 36 \(40, 46\) stitches with`, field.Text())
	assert.NotEmpty(t, doc.Find(`label[for="`+field.AttrOr("id", "")+`"]`).Text())

	// What is typed is saved by whichever button is pressed.
	form := inForm(doc, castOn, "Begin with 36 (40, 46) stitches and a tail of 3 handspans.")
	form.Set("open", "after hand/title")
	got = a.post(at, form)
	require.Equal(t, http.StatusSeeOther, got.status)
	require.Contains(t, got.header.Get("Location"), "open=after+hand%2Ftitle")
	doc = a.get(got.header.Get("Location")).doc()
	assert.Contains(t, doc.Find(".by-hand").Text(), "Begin with 36 (40, 46) stitches")
	assert.Equal(t, "36 (40, 46)", doc.Find(".by-hand .follows").First().Text())
	assert.Contains(t, doc.Find(".sentences").Text(), "Stays as you wrote it: 3 handspans.")
	got = a.post(at, inForm(doc, "after hand/title", "Breathe."))
	require.Equal(t, http.StatusSeeOther, got.status)
	require.True(t, strings.HasSuffix(got.header.Get("Location"), "#at-hand-title"), "to the line that was written")

	words := a.get(mitt + "/design/words.txt").body
	assert.Contains(t, words, "\nBegin with 36 (40, 46) stitches and a tail of 3 handspans.\n")
	assert.Contains(t, words, "\nBreathe.\n")
	assert.NotContains(t, words, "\nCast on 36 (40")
	assert.Contains(t, a.get(mitt+"/history").body, "sentence added: “Breathe.”")

	// Another hand: the numbers follow.
	stamp := a.get(mitt+"/design").doc().Find(`#sizes-form input[name="stamp"]`).AttrOr("value", "")
	require.Equal(t, http.StatusSeeOther, a.post(mitt+"/design", url.Values{"stamp": {stamp}, "sizes[0].hand.size": {"6"}}).status)
	assert.Contains(t, a.get(mitt+"/design/words.txt").body, "\nBegin with 30 (40, 46) stitches and a tail of 3 handspans.\n")

	// Taken back, the line is as before.
	back := inForm(a.get(at).doc(), "", "")
	back.Set("back", castOn)
	require.Equal(t, http.StatusSeeOther, a.post(at, back).status)
	assert.Contains(t, a.get(mitt+"/design/words.txt").body, "\nCast on 30 (40, 46) stitches")

	// What can't be kept comes back as it was typed, with what is wrong beside it.
	doc = a.get(at + "?open=" + url.QueryEscape(castOn)).doc()
	long := strings.Repeat("long ", 300)
	got = a.post(at, inForm(doc, castOn, long))
	require.Equal(t, http.StatusBadRequest, got.status)
	assert.Equal(t, long, got.doc().Find(".sentences textarea").Text())
	assert.Contains(t, got.doc().Find(".sentence-field .message").Text(), "1000 are the most")
	assert.Equal(t, http.StatusNotFound, a.get("/mitts/99/design/sentences").status)
}

// A window that another one overtook, with sentences or with other numbers, saves nothing and
// keeps what was typed.
func TestSentencesInTwoWindows(t *testing.T) {
	t.Parallel()
	a := newApp(t)
	mitt, at := a.inSizes()
	first := a.get(at + "?open=" + url.QueryEscape(castOn)).doc()
	stamp := a.get(mitt+"/design").doc().Find(`#sizes-form input[name="stamp"]`).AttrOr("value", "")
	require.Equal(t, http.StatusSeeOther, a.post(mitt+"/design", url.Values{"stamp": {stamp}, "sizes[0].hand.size": {"6"}}).status)
	got := a.post(at, inForm(first, castOn, "Begin with 36 (40, 46) stitches."))
	require.Equal(t, http.StatusConflict, got.status)
	doc := got.doc()
	assert.Equal(t, "Begin with 36 (40, 46) stitches.", doc.Find(".sentences textarea").Text())
	assert.Contains(t, doc.Find(".sentence-field label").Text(), "Cast on 30 (40, 46) stitches", "what the line says now")
	require.Equal(t, http.StatusSeeOther, a.post(at, inForm(doc, castOn, "Begin with 30 (40, 46) stitches.")).status)
	assert.Contains(t, a.get(mitt+"/design/words.txt").body, "\nBegin with 30 (40, 46) stitches.\n")
}

// A sentence that lost its place is listed on top, printed nowhere, and put at another line or
// let go.
func TestLostSentences(t *testing.T) {
	t.Parallel()
	a := newApp(t)
	mitt, at := a.inSizes()
	const key = "line hand/slip/1"
	doc := a.get(at + "?open=" + url.QueryEscape(key)).doc()
	require.Equal(t, http.StatusSeeOther, a.post(at, inForm(doc, key, "Round 1: put 12 aside, to 40 (46, 52) stitches.")).status)
	form := a.get(mitt + "/desk/fit").form()
	form.Set("thumb.construction", "none")
	form.Set("kind", "mitten_without_thumb")
	require.Equal(t, http.StatusSeeOther, a.post(mitt, form).status)
	doc = a.get(at).doc()
	lost := doc.Find(".lost-place")
	require.Equal(t, 1, lost.Length(), doc.Text())
	assert.Contains(t, lost.Text(), "put 12 aside")
	assert.NotContains(t, a.get(mitt+"/design/words.txt").body, "put 12 aside")

	target := doc.Find(".sentence-list select option").FilterFunction(func(_ int, s *goquery.Selection) bool {
		return strings.HasPrefix(s.AttrOr("value", ""), "cuff/after-start")
	}).First().AttrOr("value", "")
	require.NotEmpty(t, target)
	put := inForm(doc, "", "")
	put.Set("put", key)
	put.Set("to "+key, target)
	got := a.post(at, put)
	require.Equal(t, http.StatusSeeOther, got.status)
	doc = a.get(got.header.Get("Location")).doc()
	field := doc.Find(".sentences textarea")
	require.Equal(t, "line "+target, field.AttrOr("name", ""))
	assert.Contains(t, field.Text(), "put 12 aside", "it is looked at before it is saved")
	require.Equal(t, http.StatusSeeOther, a.post(at, inForm(doc, "line "+target, "Rib, as before.")).status)
	doc = a.get(at).doc()
	assert.Zero(t, doc.Find(".lost-place").Length())
	assert.Contains(t, doc.Find(".by-hand").Text(), "Rib, as before.")
	assert.Contains(t, a.get(mitt+"/design/words.txt").body, "\nRib, as before.\n")
}

// In a browser, by keyboard and on a phone: a sentence is opened, typed, saved; axe-core finds
// nothing; nothing is wider than the phone.
func TestSentencesInABrowser(t *testing.T) {
	t.Parallel()
	axe, err := os.ReadFile(testenv.File(t, "THENAR_AXE"))
	require.NoError(t, err)
	b := newBrowser(t)
	mitt := b.sample()
	b.open(mitt + "/design")
	await[string](b, `fetch("`+mitt+`/design/fill", {method: "POST", body: new URLSearchParams("`+glove("7", "9").Encode()+`")}).then((r) => r.url)`)
	b.open(mitt + "/design")
	b.follow(`a[href$="/sentences"]`)
	b.do(chromedp.Focus(chromedp.CSS(`button[value="` + castOn + `"]`)))
	_, err = chromedp.RunResponse(b.ctx, chromedp.KeyEvent(kb.Enter))
	require.NoError(t, err)
	b.until(`document.activeElement.tagName === "TEXTAREA"`)
	b.do(chromedp.SetValue(chromedp.CSS(`.sentences textarea`), "Begin with 36 (40, 46) stitches; leave 20 cm."))
	b.shot("sentences-open")
	b.follow(`.sentence-field .save`)
	b.until(`document.querySelector(".by-hand .follows").textContent === "36 (40, 46)"`)
	assert.Contains(t, eval[string](b, `document.querySelector("main").innerText`), "Stays as you wrote it: 20 cm.")
	b.shot("sentences")
	check(b, string(axe), "sentences", mitt+"/design/sentences?open="+url.QueryEscape(castOn))
	b.shot("sentences-phone")
}
