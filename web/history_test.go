package web

import (
	"fmt"
	"net/http"
	"net/url"
	"strings"
	"testing"

	"github.com/PuerkitoBio/goquery"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"thenar/internal/project"
)

// A moment is named, looked at, and brought back as the newest, the numbers
// with the chart; undo takes that back, too.
func TestMoments(t *testing.T) {
	a := newApp(t)
	at := a.sample()
	require.Equal(t, http.StatusOK, a.stroke(at+"/chart", `{"after":1,"edits":[`+paintPurl+`]}`).status)
	require.Equal(t, http.StatusSeeOther, a.post(at+"/history", url.Values{"name": {"with one purl"}}).status)
	require.Equal(t, http.StatusOK, a.stroke(at+"/chart", `{"after":2,"undo":true}`).status)
	require.Equal(t, http.StatusSeeOther, a.post(at, url.Values{"after": {"1"}, "hand.hand_circumference": {"23"}, "side": {"left"}}).status)

	list := a.get(at + "/history").doc()
	assert.Contains(t, list.Find(".moments").Text(), "with one purl")
	assert.Contains(t, list.Find("ol.moments li").First().Text(), "as it is now")
	link, _ := list.Find(`ul.moments li:contains("with one purl") a`).Attr("href")
	assert.Equal(t, at+"/history/2?view=gusset", link, "at the chart that it changed")

	then := a.get(link).doc()
	assert.Equal(t, 1, then.Find("svg[data-chart]").Length())
	assert.Contains(t, then.Find("h1").Text(), "Marit")
	assert.Zero(t, then.Find("main script, main input:not([type=hidden]), #measure-form").Length(), "it can be looked at only")

	since := then.Find(".since").Text()
	assert.Contains(t, since, "hand 18.6 → 23")
	assert.Contains(t, since, "for the left hand")
	assert.Contains(t, since, "1 stitch", "what was drawn since")

	newest := a.desk(at, "fit").doc().Find(`#measure-form [name="after"]`).AttrOr("value", "")
	require.Equal(t, http.StatusSeeOther, a.post(at, url.Values{"after": {newest}, "terms": {"uk"}}).status)
	back := a.post(link, nil)
	require.Equal(t, http.StatusSeeOther, back.status)
	assert.Regexp(t, `Brought back: as it was at .*hand 42 .*UK terms`, a.get(back.header.Get("Location")).doc().Find("[role=status]").Text(), "terms are a way of reading")
	assert.Contains(t, a.get(at+"/chart").body, `"value":"p"`)
	page := a.get(at).doc()
	assert.Equal(t, "18.6", page.Find(`[name="hand.hand_circumference"]`).AttrOr("value", ""))
	assert.Equal(t, "right", page.Find(`[name="side"] option[selected]`).AttrOr("value", ""))

	require.Equal(t, http.StatusOK, a.stroke(at+"/chart", `{"after":6,"undo":true}`).status)
	assert.NotContains(t, a.get(at+"/chart").body, `"value":"p"`)
	page = a.get(at).doc()
	assert.Equal(t, "23", page.Find(`[name="hand.hand_circumference"]`).AttrOr("value", ""))
	assert.Equal(t, "left", page.Find(`[name="side"] option[selected]`).AttrOr("value", ""))
}

// Each moment says what it changed, by the words of the form and the chart; a
// stroke that changed the numbers is one moment with them.
func TestMomentsSayWhatChanged(t *testing.T) {
	a := newApp(t)
	at := a.sample()
	said := func() string {
		line := a.get(at + "/history").doc().Find("ol.moments li p").First().Children()
		return strings.Join(line.Map(func(_ int, e *goquery.Selection) string { return strings.TrimSpace(e.Text()) }), " · ")
	}
	named := func() {
		require.Equal(t, http.StatusSeeOther, a.post(at+"/history", url.Values{"name": {"x"}}).status)
	}
	assert.Contains(t, said(), " · begun · ")
	named()
	require.Equal(t, http.StatusOK, a.stroke(at+"/chart", `{"after":1,"edits":[`+paintPurl+`]}`).status)
	assert.Contains(t, said(), " · 1 stitch purl in the ")
	named()
	require.Equal(t, http.StatusOK, a.stroke(at+"/chart", `{"after":2,"undo":true}`).status)
	assert.Contains(t, said(), " · undone: 1 stitch back as planned in the ")
	named()
	require.Equal(t, http.StatusSeeOther, a.post(at, url.Values{"after": {"1"}, "hand.hand_circumference": {"18.9"}, "pins.cast_on": {"36"}, "side": {"left"}}).status)
	assert.Contains(t, said(), " · for the left hand; hand 18.6 → 18.9; and 1 more · ")
	named()
	require.Equal(t, http.StatusOK, a.stroke(at+"/chart", `{"after":4,"change":{"kind":"insert","section":"hand","round":2}}`).status)
	assert.Contains(t, said(), " · rounds put in or taken out: above the gusset, now ")
	named()
	require.Equal(t, http.StatusOK, a.stroke(at+"/chart", `{"after":6,"change":{"kind":"insert","section":"hand","round":2}}`).status)
	assert.Contains(t, said(), " · 1 round put in: above the gusset, now ")
	assert.Equal(t, 6, a.get(at+"/history").doc().Find("ol.moments > li").Length(), "not one more for the numbers of a stroke")
}

// A long history has pages; each says what stands on it as if it were the only
// one, and a named moment is found from the first.
func TestMomentsOfManyRevisions(t *testing.T) {
	a := newApp(t)
	at := a.sample()
	doc, err := project.Samples()[0].Encode()
	require.NoError(t, err)
	for i := range 230 {
		next := strings.Replace(string(doc), `"hand.hand_circumference":"18.6"`, fmt.Sprintf(`"hand.hand_circumference":"18.%d"`, i+10), 1)
		_, err := a.store.Save(t.Context(), 1, int64(i+1), []byte(next))
		require.NoError(t, err)
	}
	require.NoError(t, a.store.Name(t.Context(), 1, 7, "early"))
	first := a.get(at + "/history").doc()
	assert.Contains(t, first.Find("ol.moments").Text(), "hand 18.39 → 18.239")
	assert.Equal(t, at+"/history/7", first.Find(`ul.moments a:contains("early")`).AttrOr("href", ""))
	assert.Equal(t, at+"/history?before=32", first.Find(`a[rel="next"]`).AttrOr("href", ""))
	second := a.get(at + "/history?before=32").doc()
	assert.Contains(t, second.Find("ol.moments").Text(), "hand 18.15 → 18.39")
	assert.Contains(t, second.Find("ol.moments").Text(), "begun: hand 18.6 → 18.15")
	assert.NotContains(t, second.Find("ol.moments").Text(), "as it is now")
	assert.Zero(t, second.Find(`a[rel="next"]`).Length())
	assert.Equal(t, 1, second.Find(`a:contains("The newest moments")`).Length())
	assert.Equal(t, http.StatusNotFound, a.get(at+"/history?before=x").status)
}

func TestMomentsThatAreNot(t *testing.T) {
	a := newApp(t)
	at := a.sample()
	for _, path := range []string{"/history/0", "/history/99", "/history/x"} {
		assert.Equal(t, http.StatusNotFound, a.get(at+path).status, path)
		assert.Equal(t, http.StatusNotFound, a.post(at+path, nil).status, path)
	}
	assert.Equal(t, http.StatusBadRequest, a.post(at+"/history", url.Values{"name": {strings.Repeat("x", 61)}}).status)
	assert.Equal(t, http.StatusNotFound, a.post(at+"/history", url.Values{"name": {"x"}, "revision": {"9"}}).status)
	assert.Equal(t, http.StatusBadRequest, a.post(at+"/history", url.Values{"name": {"x"}, "revision": {"one"}}).status)
}

// Motifs are kept, listed and taken off the list; what can't be stamped is
// refused with its place.
func TestMotifs(t *testing.T) {
	a := newApp(t)
	kept := a.stroke("/motifs", `{"name":" star ","cells":[{"left":0,"up":1,"stitch":"p","colour":"b"}]}`)
	require.Equal(t, http.StatusOK, kept.status, kept.body)
	assert.JSONEq(t, `[{"id":1,"name":"star","cells":[{"left":0,"up":1,"stitch":"p","colour":"b"}]}]`, a.get("/motifs").body)
	for says, body := range map[string]string{
		"name: is empty":                  `{"name":"","cells":[{"left":0,"up":0,"stitch":"","colour":""}]}`,
		"cells: are 0":                    `{"name":"x","cells":[]}`,
		"cells[0].stitch":                 `{"name":"x","cells":[{"left":0,"up":0,"stitch":"hold","colour":""}]}`,
		"cells[0].colour":                 `{"name":"x","cells":[{"left":0,"up":0,"stitch":"p","colour":"z"}]}`,
		"cells[0]: lies":                  `{"name":"x","cells":[{"left":-1,"up":0,"stitch":"p","colour":""}]}`,
		"motif: can't be read":            `{"name":"x","cells":[{"wide":1}]}`,
		"motif: goes on after the docume": `{"name":"x","cells":[{"left":0,"up":0,"stitch":"p","colour":""}]} {}`,
	} {
		refused := a.stroke("/motifs", body)
		assert.Equal(t, http.StatusBadRequest, refused.status)
		assert.Contains(t, strings.ReplaceAll(refused.body, `\u0026`, "&"), says)
	}
	assert.Equal(t, http.StatusBadRequest, a.post("/motifs", url.Values{"name": {"x"}}).status)
	assert.Equal(t, http.StatusOK, a.post("/motifs/1/remove", nil).status)
	assert.Equal(t, http.StatusNotFound, a.post("/motifs/1/remove", nil).status)
	assert.Equal(t, http.StatusNotFound, a.post("/motifs/x/remove", nil).status)
	assert.JSONEq(t, `[]`, a.get("/motifs").body)
}

// A moment shows the whole mitt as it was, in its colours: what was painted and what a motif
// lays by rule, from the palm and laid open; and says so in words.
func TestAMomentInItsColours(t *testing.T) {
	t.Parallel()
	a := newApp(t)
	at := a.sample()
	whole := func(revision int) (*goquery.Selection, string) {
		t.Helper()
		s := a.get(fmt.Sprintf("%s/history/%d", at, revision)).doc().Find(".whole-then")
		require.Equal(t, 1, s.Length())
		fills := map[string]bool{}
		for _, p := range s.Find(".laid-open path[fill]").EachIter() {
			fills[p.AttrOr("fill", "")] = true
		}
		html, err := s.Find("figure").First().Html()
		require.NoError(t, err)
		return s, fmt.Sprintf("%d colours laid open; rust on the palm: %t", len(fills), strings.Contains(html, "#B9694A"))
	}
	s, colours := whole(1)
	assert.Equal(t, "1 colours laid open; rust on the palm: false", colours)
	assert.Contains(t, s.Text(), "All in the main colour.")

	const motif = `{"section":"","round":0,"column":"repeats[0].%s","layer":"sheet","value":%q}`
	edits := fmt.Sprintf(motif+","+motif+","+motif, "name", "birds", "motif", "b.b./.b.b", "section", "hand")
	require.Equal(t, http.StatusOK, a.stroke(at+"/chart", `{"after":1,"edits":[`+edits+`]}`).status)
	newest := a.desk(at, "fit").doc().Find(`#measure-form [name="after"]`).AttrOr("value", "")
	s, colours = whole(2)
	assert.Equal(t, "2 colours laid open; rust on the palm: true", colours, "newest %s", newest)
	assert.Contains(t, s.Text(), "In the main colour and rust.")
	assert.Regexp(t, `“birds”: \d+ times`, s.Find("li").Text())

	first, _ := whole(1)
	assert.NotContains(t, first.Text(), "birds", "the earlier moment is as it was")
	assert.NotEmpty(t, a.get(at+"/history/2").doc().Find(`.parts-then a[aria-current]`).Text())
}
