package web

import (
	"fmt"
	"net/http"
	"net/http/httptest"
	"net/url"
	"os"
	"strings"
	"testing"

	"github.com/PuerkitoBio/goquery"
	"github.com/chromedp/chromedp"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"thenar/internal/testenv"
)

// The files of a pattern have its title, its notes, every line of its words and every
// number. That of HTML needs nothing beside itself: headings in their order, heads of tables
// that say what they head, and a text beside each drawing.
func TestFilesOfAPattern(t *testing.T) {
	t.Parallel()
	a := newApp(t)
	at := a.sixSizes()
	require.Equal(t, http.StatusSeeOther, a.post(at+"/texts", url.Values{"title": {"Barley & Rye"}, "designer": {"Marit <Haugen>"}, "notes": {"Wash the swatch.\nThen measure."}}).status)
	require.Equal(t, http.StatusSeeOther, a.post(at+"/texts", url.Values{"set": {"terms=uk"}}).status)
	got := a.get(at + "/words.html")
	assert.Equal(t, "text/html; charset=utf-8", got.header.Get("Content-Type"))
	assert.Contains(t, got.header.Get("Content-Disposition"), "attachment")
	doc := got.doc()
	assert.Equal(t, "en-GB", doc.Find("html").AttrOr("lang", ""))
	assert.Equal(t, "Barley & Rye", doc.Find("title").Text())
	assert.Equal(t, "Marit <Haugen>", doc.Find(`meta[name="author"]`).AttrOr("content", ""))
	assert.Zero(t, doc.Find("script, link, img[src^=http], [href^=http]").Length(), "it asks for nothing")
	assert.Equal(t, 1, doc.Find("h1").Length())
	heads := doc.Find("h2").Map(func(_ int, h *goquery.Selection) string { return h.Text() })
	assert.Subset(t, heads, []string{"Sizes", "Abbreviations", "Measurements", "Notes", "Cuff", "Hand", "Thumb", "Every number, to tick off"})
	doc.Find("nav a").Each(func(_ int, link *goquery.Selection) {
		to := doc.Find(link.AttrOr("href", "") + " > h2")
		assert.Equal(t, link.Text(), to.First().Text())
	})
	require.GreaterOrEqual(t, doc.Find("#charts figure svg").Length(), 2, "the key and a chart")
	doc.Find("figure svg").Each(func(_ int, svg *goquery.Selection) { assert.NotEmpty(t, svg.AttrOr("aria-label", "")) })
	doc.Find("table tbody tr").Each(func(_ int, tr *goquery.Selection) {
		assert.Equal(t, 1, tr.Find(`th[scope="row"]`).Length(), tr.Text())
	})
	text, words := strings.Join(strings.Fields(doc.Text()), " "), a.get(at+"/words.txt").body
	marked := a.get(at + "/words.md")
	assert.Equal(t, "text/markdown; charset=utf-8", marked.header.Get("Content-Type"))
	assert.True(t, strings.HasPrefix(marked.body, "# Barley \\& Rye\n"))
	bare := strings.NewReplacer("*", "", `\`, "").Replace(marked.body)
	_, passages, ok := strings.Cut(words, "\nCuff\n")
	require.True(t, ok)
	lines := 0
	for _, line := range strings.Split(passages, "\n") {
		if line == "" || strings.HasPrefix(line, "  ") {
			continue // a table is set in cells
		}
		lines++
		assert.Contains(t, text, line)
		assert.Contains(t, bare, strings.ReplaceAll(line, "*", ""))
	}
	assert.Greater(t, lines, 25)
	for _, of := range []string{text, bare, words} {
		for _, want := range []string{"Barley & Rye", "Marit <Haugen>", "Wash the swatch.", "Then measure.", "Every number, to tick off", "Tingling"} {
			assert.Contains(t, of, want)
		}
	}
	numbers := doc.Find("#numbers tbody tr").First()
	assert.Equal(t, "Cast on 30 36 40 46 50 56", strings.Join(strings.Fields(numbers.Find("th").Text()+" "+strings.Join(numbers.Find("td").Map(func(_ int, td *goquery.Selection) string { return td.Text() }), " ")), " "))
}

// axe-core finds nothing in the file of HTML, on a desk and on a phone, where it is no wider
// than the window.
func TestHTMLOfAPatternIsForEverybody(t *testing.T) {
	t.Parallel()
	axe, err := os.ReadFile(testenv.File(t, "THENAR_AXE"))
	require.NoError(t, err)
	b := newBrowser(t)
	sample := b.sample()
	b.open("/")
	file := await[string](b, fmt.Sprintf(`fetch(%q, {method: "POST", body: new URLSearchParams(%q)}).then(() => fetch(%q)).then((r) => r.text())`, sample+"/design/fill", glove("6", "11").Encode(), sample+"/design/words.html"))
	s := httptest.NewServer(http.HandlerFunc(func(w http.ResponseWriter, _ *http.Request) { fmt.Fprint(w, file) }))
	defer s.Close()
	for _, phone := range []bool{false, true} {
		if phone {
			b.phone()
		} else {
			b.size(1280, 900)
		}
		_, err := chromedp.RunResponse(b.ctx, chromedp.Navigate(s.URL))
		require.NoError(t, err)
		b.shot(fmt.Sprintf("pattern-html-phone-%t", phone))
		b.do(chromedp.Evaluate[chromedp.Void](string(axe)))
		assert.Empty(t, await[[]string](b, fmt.Sprintf(violations, false)))
		if phone {
			assert.LessOrEqual(t, eval[int](b, `document.documentElement.scrollWidth`), 360)
		}
	}
}
