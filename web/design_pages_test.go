package web

import (
	"net/http"
	"net/url"
	"regexp"
	"strings"
	"testing"

	"github.com/PuerkitoBio/goquery"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// sixSizes returns the address of a mitt in six sizes.
func (a *served) sixSizes() string {
	a.t.Helper()
	at := a.sample() + "/design"
	require.Equal(a.t, http.StatusSeeOther, a.post(at+"/fill", glove("6", "11")).status)
	return at
}

// Without a script: each press changes the pages beside it and is kept, and the PDF is made
// of the same pages. Every page says what is on it.
func TestPagesOfAPatternFollow(t *testing.T) {
	t.Parallel()
	a := newApp(t)
	at := a.sixSizes()
	pages := func() *goquery.Selection { return a.get(at).doc().Find(".sheets .sheet svg") }
	text := func() string { return pages().Text() }
	require.GreaterOrEqual(t, pages().Length(), 5)
	pages().Each(func(i int, svg *goquery.Selection) {
		assert.Regexp(t, `page \d of \d: \w+`, svg.AttrOr("aria-label", ""), "page %d", i+1)
	})
	press := func(set string) *goquery.Document {
		require.Equal(t, http.StatusSeeOther, a.post(at+"/texts", url.Values{"set": {set}}).status)
		doc := a.get(at).doc()
		assert.Equal(t, "true", doc.Find(`.toggles [value="`+set+`"]`).AttrOr("aria-pressed", ""), set)
		return doc
	}
	assert.Contains(t, text(), "Right hand: ", "both hands are told")
	press("hands=left")
	assert.NotContains(t, text(), "Right hand: ")
	require.Contains(t, text(), "Increase round: ")
	press("told=rounds")
	assert.NotContains(t, text(), "Increase round: ")
	assert.Contains(t, text(), "k2tog")
	press("wording=full")
	assert.NotContains(t, text(), "k2tog")
	require.Contains(t, text(), "Bind off")
	press("terms=uk")
	assert.Contains(t, text(), "Cast off")
	doc := press("paper=letter")
	assert.Equal(t, "215.9mm", doc.Find(".sheet svg").First().AttrOr("width", ""))
	assert.True(t, doc.Find("body").HasClass("paper-letter"))
	press("grey=1")
	assert.NotContains(t, a.get(at).body, `fill="#EBDCB4"`, "the tape is grey")
	press("grey=")

	pdf := a.get(at + "/print.pdf").body
	info := pdfText(t, pdf, "pdfinfo", "FILE")
	assert.Contains(t, info, "(letter)")
	assert.Contains(t, pdf, "/Lang (en-GB)")
	assert.Contains(t, pdfText(t, pdf, "pdftotext", "FILE", "-"), "Cast off")

	for _, bad := range []string{"told=slowly", "paper=a9", "hands=three", "no such thing=1"} {
		assert.Equal(t, http.StatusBadRequest, a.post(at+"/texts", url.Values{"set": {bad}}).status, bad)
	}
	doc = a.get(at).doc() // the notch: pages of another common text
	before := text()
	last := doc.Find(".notches button[aria-pressed]").First().AttrOr("value", "")
	require.Equal(t, http.StatusSeeOther, a.post(at, url.Values{"stamp": {doc.Find(`#sizes-form [name="stamp"]`).AttrOr("value", "")}, "set": {last}}).status)
	assert.NotEqual(t, before, text())
}

// What the designer writes stands on the pages and in the PDF. A form made before another
// window saved is not saved over that, and comes back as it was typed; so does a text that
// is too long.
func TestTextsOfAPattern(t *testing.T) {
	t.Parallel()
	a := newApp(t)
	at := a.sixSizes()
	form := func() url.Values {
		v := url.Values{}
		a.get(at).doc().Find(".pattern-texts").Find("input, textarea").Each(func(_ int, field *goquery.Selection) {
			v.Set(field.AttrOr("name", ""), field.AttrOr("value", field.Text()))
		})
		return v
	}
	first := form()
	require.Len(t, first, 7, "six texts and the stamp")
	old := form() // made before all that follows
	first.Set("title", "Barley Sixes")
	first.Set("designer", "Marit Haugen <b>")
	first.Set("story", "An ear has six rows.\r\nSo has the hand.")
	first.Set("notes", "Wash the swatch first.")
	first.Set("copyright", "© 2026 Marit Haugen")
	require.Equal(t, http.StatusSeeOther, a.post(at+"/texts", first).status)
	pages := a.get(at).doc().Find(".sheets").Text()
	for _, text := range []string{"Barley Sixes", "Marit Haugen <b>", "An ear has six rows.", "So has the hand.", "Wash the swatch first.", "© 2026 Marit Haugen."} {
		assert.Contains(t, pages, text)
	}
	pdf := a.get(at + "/print.pdf")
	assert.Regexp(t, `(?s)Title: +Barley Sixes\n.*Author: +Marit Haugen <b>`, pdfText(t, pdf.body, "pdfinfo", "FILE"))
	assert.Contains(t, pdf.header.Get("Content-Disposition"), "Barley Sixes")
	assert.Equal(t, "An ear has six rows.\nSo has the hand.", form().Get("story"))
	without := form()
	without.Set("copyright", "")
	require.Equal(t, http.StatusSeeOther, a.post(at+"/texts", without).status)
	assert.Regexp(t, `© 20\d\d Marit Haugen <b>\.`, a.get(at).doc().Find(".sheets").Text(), "the year of the last change")

	old.Set("title", "Rye")
	got := a.post(at+"/texts", old)
	require.Equal(t, http.StatusConflict, got.status)
	assert.Contains(t, got.body, "Another window saved other texts in between.")
	assert.Equal(t, "Rye", got.doc().Find(`.pattern-texts [name="title"]`).AttrOr("value", ""))
	assert.Contains(t, got.doc().Find(".sheets").Text(), "Barley Sixes", "the pages are those of what is saved")
	old.Set("stamp", got.doc().Find(`.pattern-texts [name="stamp"]`).AttrOr("value", ""))
	require.Equal(t, http.StatusSeeOther, a.post(at+"/texts", old).status)
	assert.Contains(t, a.get(at).doc().Find(".sheets").Text(), "Rye")

	long := form()
	long.Set("designer", strings.Repeat("M", 500))
	got = a.post(at+"/texts", long)
	require.Equal(t, http.StatusBadRequest, got.status)
	assert.NotEmpty(t, got.doc().Find(`[data-fault-of="designer"]`).Text())
	assert.Len(t, got.doc().Find(`.pattern-texts [name="designer"]`).AttrOr("value", ""), 500)
	for i, text := range []string{`<script>alert(1)</script>`, "\" onload=\"x", "</svg><b>"} {
		v := form()
		for name := range v {
			if name != "stamp" {
				v.Set(name, text)
			}
		}
		require.Equal(t, http.StatusSeeOther, a.post(at+"/texts", v).status, i)
		assertHarmless(t, a.get(at))
	}
	assert.Regexp(t, regexp.MustCompile(`pattern`), a.get(strings.TrimSuffix(at, "/design")+"/history").body, "the mitt's history tells of them")
}
