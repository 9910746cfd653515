package web

import (
	"net/http"
	"net/url"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
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
	assert.Contains(t, list.Find(".moments li").First().Text(), "as it is now")
	link, _ := list.Find(`.moments li:contains("with one purl") a`).Attr("href")
	assert.Equal(t, at+"/history/2", link)

	then := a.get(link).doc()
	assert.Equal(t, 1, then.Find("svg[data-chart]").Length())
	assert.Contains(t, then.Find("h1").Text(), "Marit")
	assert.Zero(t, then.Find("script").Length(), "it can be looked at only")

	require.Equal(t, http.StatusSeeOther, a.post(link, nil).status)
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
