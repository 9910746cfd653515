package web

import (
	"net/http"
	"net/url"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// Without a script: each press goes a round on or back, each hand has its own
// count, and the shelf says what is next.
func TestNeedlesWithoutScript(t *testing.T) {
	a := newApp(t)
	at := a.sample()
	page := a.get(at + "/needles").doc()
	assert.Contains(t, page.Find("h2").Text(), "Round 1")
	assert.Contains(t, page.Find("[data-first]").Text(), "Cast on")
	assert.Equal(t, "0 of 64 rounds knitted", page.Find("[data-made]").Text())
	press := func(side, nth string) {
		t.Helper()
		require.Equal(t, http.StatusSeeOther, a.post(at+"/needles", url.Values{"side": {side}, "nth": {nth}}).status)
	}
	for _, nth := range []string{"1", "2", "3", "2"} {
		press("right", nth)
	}
	press("left", "1")
	assert.Contains(t, a.get(at+"/needles?side=right").doc().Find("h2").Text(), "Round 3")
	page = a.get(at + "/needles?side=left").doc()
	assert.Contains(t, page.Find("h2").Text(), "Round 2")
	assert.Contains(t, page.Find(".which").Text(), "right hand: 2 of 64 rounds")
	assert.Contains(t, a.get("/").doc().Find(".next").Text(), "next: round 3 of the cuff, right hand")

	press("right", "50")
	page = a.get(at + "/needles?side=right").doc()
	assert.Contains(t, page.Find("[data-title]").Text(), "Round 1 of 14 · thumb")
	assert.Contains(t, page.Find("[data-first]").Text(), "Bind off", "what ends the hand comes before the thumb")
	press("right", "64")
	page = a.get(at + "/needles?side=right").doc()
	assert.Contains(t, page.Find("h2").Text(), "Done")
	assert.Contains(t, page.Find("[data-then]").Text(), "Weave in the ends")
	assert.Contains(t, a.get("/").doc().Find(".next").Text(), "left hand", "the first is done")
}

// What a script sends is noted once by its key, in whatever order its answers
// were lost; a note is a stroke of the chart.
func TestNeedlesByScript(t *testing.T) {
	a := newApp(t)
	at := a.sample()
	send := func(body string) answer { t.Helper(); return a.stroke(at+"/needles", body) }
	require.Equal(t, http.StatusOK, send(`{"key":"a","side":"right","section":"cuff","round":1}`).status)
	require.Equal(t, http.StatusOK, send(`{"key":"b","side":"right","section":"cuff","round":2}`).status)
	require.Equal(t, http.StatusOK, send(`{"key":"a","side":"right","section":"cuff","round":1}`).status)
	assert.Contains(t, a.get(at+"/needles").doc().Find("h2").Text(), "Round 3")
	for range 2 {
		require.Equal(t, http.StatusOK, send(`{"key":"n","side":"right","section":"cuff","round":3,"note":"tight here"}`).status)
	}
	assert.Equal(t, "tight here", a.get(at+"/needles").doc().Find("#note").AttrOr("value", ""))
	assert.Contains(t, a.get(at+"/chart").body, `"revision":2`, "drawn once")
	assert.Equal(t, "tight here", a.note(at, "left", 2), "it stands on the other hand, too")

	for _, wrong := range []string{
		`{"key":"","side":"right","section":"cuff","round":1}`, `{"key":"c","side":"middle","section":"cuff","round":1}`,
		`{"key":"c","side":"right","section":"heel","round":1}`, `{"key":"c","side":"right","section":"cuff","round":-1}`,
		`{"key":"c","side":"right","section":"cuff","round":1,"note":"two\nlines"}`, `{`,
	} {
		assert.Equal(t, http.StatusBadRequest, send(wrong).status, wrong)
	}
}

// The chart and the count speak of one round: what is counted is marked, and
// what is marked is counted.
func TestNeedlesAndChartAgree(t *testing.T) {
	a := newApp(t)
	at := a.sample()
	require.Equal(t, http.StatusOK, a.stroke(at+"/chart", `{"after":1,"edits":[{"section":"gusset","round":5,"column":"","layer":"needles","value":"here"}]}`).status)
	assert.Contains(t, a.get(at+"/needles").doc().Find("h2").Text(), "Round 5")
	require.Equal(t, http.StatusOK, a.stroke(at+"/needles", `{"key":"a","side":"right","section":"gusset","round":8}`).status)
	data := a.get(at).doc().Find("#chart-data").Text()
	assert.Equal(t, 1, strings.Count(data, `"needles"`), "one round is on the needles")
	assert.Contains(t, data, `{"section":"gusset","round":9,"column":"","layer":"needles","value":"here"}`)
	before := a.get(at+"/chart.svg").doc().Find(".needles").AttrOr("d", "")
	require.NotEmpty(t, before, "files mark it, too")
	require.Equal(t, http.StatusOK, a.stroke(at+"/needles", `{"key":"b","side":"right","section":"gusset","round":9}`).status)
	assert.NotEqual(t, before, a.get(at+"/chart.svg").doc().Find(".needles").AttrOr("d", ""))
	assert.Empty(t, a.get(at+"/needles").doc().Find("path.needles").AttrOr("d", ""), "a strip lights its own round")
}

// note goes to a round of a hand and reads what is noted there.
func (a *app) note(at, side string, nth int) string {
	a.t.Helper()
	require.Equal(a.t, http.StatusSeeOther, a.post(at+"/needles", url.Values{"side": {side}, "nth": {string(rune('0' + nth))}}).status)
	return a.get(at+"/needles?side="+side).doc().Find("#note").AttrOr("value", "")
}

func TestNeedlesWithoutPlan(t *testing.T) {
	a := newApp(t)
	at := a.post("/mitts", nil).header.Get("Location")
	assert.Contains(t, a.get(at+"/needles").doc().Find(".message").Text(), "no plan to knit by yet")
	assert.Contains(t, a.get(at+"/tries").doc().Find(".message").Text(), "no plan to try on yet")
}
