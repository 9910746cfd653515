package web

import (
	"net/http"
	"net/url"
	"os"
	"strings"
	"testing"

	"github.com/chromedp/chromedp"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"thenar/internal/testenv"
)

// A pattern goes out as a version with a name. What changed since is told by numbers, size by
// size, and by sentences, on the page and as plain text; the version stays what it was.
func TestVersionsByForms(t *testing.T) {
	t.Parallel()
	a := newApp(t)
	mitt, sentences := a.inSizes()
	at := mitt + "/design/versions"
	assert.Contains(t, a.get(mitt+"/design").body, at)
	stamp := func() string { return a.get(at).doc().Find(`input[name="stamp"]`).AttrOr("value", "") }
	require.Equal(t, http.StatusSeeOther, a.post(at, url.Values{"stamp": {stamp()}, "name": {""}}).status)
	old := stamp()
	require.Equal(t, http.StatusSeeOther, a.post(at, url.Values{"stamp": {old}, "name": {"sent to testers"}}).status)
	require.Equal(t, http.StatusSeeOther, a.post(at, url.Values{"stamp": {old}, "name": {"sent to testers"}}).status, "sent twice")
	page := a.get(at).doc()
	require.Equal(t, 2, page.Find(".versions li").Length(), "kept once")
	assert.Contains(t, page.Find(".versions li").First().Text(), "Version 2 (sent to testers)")
	assert.Contains(t, a.get(at+"/2").body, "Nothing changed since.")
	assert.Contains(t, a.get(at+"/2/errata.txt").body, "Nothing changed.")

	// A number is fixed for one size, a sentence is worded otherwise and one is added.
	sizes := a.get(mitt+"/design").doc().Find(`#sizes-form input[name="stamp"]`).AttrOr("value", "")
	require.Equal(t, http.StatusSeeOther, a.post(mitt+"/design", url.Values{"stamp": {sizes}, "sizes[1].pins.cuff_rounds": {"13"}}).status)
	doc := a.get(sentences + "?open=" + url.QueryEscape(castOn)).doc()
	require.Equal(t, http.StatusSeeOther, a.post(sentences, inForm(doc, castOn, "Begin with 36 (40, 46) stitches.")).status)
	doc = a.get(sentences + "?open=" + url.QueryEscape("after hand/title")).doc()
	require.Equal(t, http.StatusSeeOther, a.post(sentences, inForm(doc, "after hand/title", "Breathe.")).status)

	doc = a.get(at + "/2").doc()
	numbers := doc.Find(".changed-numbers").Text()
	assert.Contains(t, numbers, "Cuff’s edge, rounds, size 8: 10 → 13")
	assert.NotContains(t, numbers, "size 7", "what is the same is not told")
	lines := strings.Join(strings.Fields(doc.Find(".changed-lines").Text()), " ")
	assert.Contains(t, lines, "Cuffbefore: Cast on 36 (40, 46) stitches with")
	assert.Contains(t, lines, "now: Begin with 36 (40, 46) stitches.")
	assert.Contains(t, lines, "Rounds 1–9 (10, 10): [k1, p1] 18 (20, 23) times.")
	assert.Contains(t, lines, "Handbefore: nothingnow: Breathe.")
	assert.NotContains(t, doc.Text(), "Thenar itself")
	note := a.get(at + "/2/errata.txt")
	require.Equal(t, http.StatusOK, note.status)
	assert.Equal(t, note.body, doc.Find("#errata").Text())
	assert.Contains(t, note.body, "what changed since version 2 (sent to testers), of ")
	assert.Contains(t, note.body, "size 8: 10 → 13\n")
	assert.Contains(t, note.body, "\nCuff\n  instead of: Cast on 36 (40, 46)")
	assert.Contains(t, note.body, "\n  read: Begin with 36 (40, 46) stitches.\n")

	// What was changed in another window does not go out unseen; a wrong name comes back.
	got := a.post(at, url.Values{"stamp": {old}, "name": {"third"}})
	require.Equal(t, http.StatusConflict, got.status)
	assert.Equal(t, "third", got.doc().Find("#version-name").AttrOr("value", ""))
	require.Equal(t, http.StatusBadRequest, a.post(at, url.Values{"stamp": {stamp()}, "name": {strings.Repeat("x", 61)}}).status)
	for _, none := range []string{"/9", "/x", "/9/errata.txt"} {
		assert.Equal(t, http.StatusNotFound, a.get(at+none).status, none)
	}
	plain := a.sample()
	assert.Contains(t, a.get(plain+"/design/versions").body, "There is no text for several sizes yet.")
}

// In a browser: a version is kept with its name, and what changed is read; axe-core finds
// nothing.
func TestVersionsInABrowser(t *testing.T) {
	t.Parallel()
	axe, err := os.ReadFile(testenv.File(t, "THENAR_AXE"))
	require.NoError(t, err)
	b := newBrowser(t)
	mitt := b.sample()
	b.open(mitt + "/design")
	await[string](b, `fetch("`+mitt+`/design/fill", {method: "POST", body: new URLSearchParams("`+glove("7", "9").Encode()+`")}).then((r) => r.url)`)
	b.open(mitt + "/design/versions")
	b.do(chromedp.Focus(chromedp.CSS(`#version-name`)), chromedp.KeyEvent("sent to testers"))
	b.follow(`.send-version .save`)
	b.until(`document.querySelector(".versions").innerText.includes("Version 1 (sent to testers)")`)
	b.shot("versions")
	b.open(mitt + "/design/sentences?open=" + url.QueryEscape(castOn))
	b.do(chromedp.SetValue(chromedp.CSS(`.sentences textarea`), "Begin with 36 (40, 46) stitches."))
	b.follow(`.sentence-field .save`)
	b.open(mitt + "/design/versions")
	b.follow(`.versions a[href$="/versions/1"]`)
	b.until(`document.querySelector(".changed-lines").innerText.includes("Begin with 36 (40, 46) stitches.")`)
	b.shot("since")
	check(b, string(axe), "since", mitt+"/design/versions/1")
	check(b, string(axe), "versions", mitt+"/design/versions")
}
