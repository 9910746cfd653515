package web

import (
	"encoding/json"
	"fmt"
	"net/http"
	"net/url"
	"strconv"
	"strings"
	"testing"

	"github.com/PuerkitoBio/goquery"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// Without a script: each press goes a round on or back, each hand has its own
// count, and the shelf says what is next.
func TestNeedlesWithoutScript(t *testing.T) {
	a := newApp(t)
	at := a.sample()
	page := a.get(at + "/needles").doc()
	assert.Equal(t, "Cast on 36 stitches", page.Find("[data-title]").Text())
	assert.Contains(t, page.Find("[data-say]").Text(), "Cast on 36 stitches with a stretchy long-tail cast-on", "in large words")
	assert.Equal(t, "All 36 cast on", page.Find(".forward").Text())
	assert.Equal(t, 1, page.Find("[data-note][hidden]").Length(), "a note stands on a round")
	assert.Equal(t, "0 of 60 rounds knitted", page.Find("[data-made]").Text())
	press := func(side, nth string) {
		t.Helper()
		require.Equal(t, http.StatusSeeOther, a.post(at+"/needles", url.Values{"side": {side}, "nth": {nth}}).status)
	}
	for _, nth := range []string{"2", "3", "4", "3"} {
		press("right", nth)
	}
	press("left", "2")
	assert.Contains(t, a.get(at+"/needles?side=right").doc().Find("h2").Text(), "Round 3")
	page = a.get(at + "/needles?side=left").doc()
	assert.Contains(t, page.Find("h2").Text(), "Round 2")
	assert.Contains(t, page.Find(".which").Text(), "right hand: 2 of 60 rounds")
	assert.Contains(t, a.get("/").doc().Find(".next").Text(), "round 3 of 60, cuff, right hand")

	for nth, want := range map[string][3]string{
		"39": {"Divide round 1 of 12 · hand", "to waste yarn", "Round done"},
		"51": {"Bind off the hand", "Bind off all 42 stitches in rib", "All 42 bound off"},
		"52": {"Put the thumb on the needles", "held stitches back on the needles", "on the needles"},
		"53": {"Pick up round 1 of 10 · thumb", "Pick up and knit", "Round done"},
		"63": {"Bind off the thumb", "Bind off all 18", "All 18 bound off"},
	} {
		press("right", nth)
		page = a.get(at + "/needles?side=right").doc()
		assert.Contains(t, page.Find("[data-title]").Text(), want[0], nth)
		assert.Contains(t, page.Find("[data-say]").Text(), want[1], nth)
		assert.Contains(t, page.Find(".forward").Text(), want[2], nth)
		assert.NotContains(t, page.Find("[data-first]").Text(), want[1], "not a line beside another")
	}
	press("right", "51")
	assert.Contains(t, a.get("/").doc().Find(".next").Text(), "next: bind off the hand, right hand")
	assert.Contains(t, a.get(at+"/needles?side=left").doc().Find(".which").Text(), "right hand: 50 of 60 rounds")
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
	assert.Equal(t, "tight here", a.note(at, "left", 3), "it stands on the other hand, too")

	for _, wrong := range []string{
		`{"key":"","side":"right","section":"cuff","round":1}`, `{"key":"c","side":"middle","section":"cuff","round":1}`,
		`{"key":"c","side":"right","section":"heel","round":1}`, `{"key":"c","side":"right","section":"cuff","round":-1}`,
		`{"key":"c","side":"right","section":"cuff","round":1,"note":"two\nlines"}`, `{`,
		`{"key":"c","side":"right","section":"cuff","round":1999}`, `{"key":"c","side":"right","section":"","round":2000}`,
		`{"key":"c","side":"right","section":"cuff","round":0,"note":"on no round"}`, `{"key":"c","side":"right","section":"hand","round":2000,"note":"on no round"}`,
	} {
		assert.Equal(t, http.StatusBadRequest, send(wrong).status, wrong)
	}
}

// A count from before casting on and binding off were counted stands where it
// stood, and what is bound off stays so while the rest is planned otherwise.
func TestCountOutlivesThePlan(t *testing.T) {
	a := newApp(t)
	at := a.sample()
	send := func(key, section string, round int) {
		t.Helper()
		require.Equal(t, http.StatusOK, a.stroke(at+"/needles", fmt.Sprintf(`{"key":%q,"side":"right","section":%q,"round":%d}`, key, section, round)).status)
	}
	title := func() string { return a.get(at + "/needles?side=right").doc().Find("[data-title]").Text() }
	send("a", "cuff", 1)
	assert.Equal(t, "Round 2 of 9 · cuff", title())
	send("b", "thumb", 2)
	assert.Equal(t, "Round 3 of 10 · thumb", title())
	send("c", "cuff", 0)
	assert.Equal(t, "Round 1 of 9 · cuff", title(), "cast on")
	a.replan(at, "hand.hand_circumference", "21")
	assert.Equal(t, "36", a.counts(at, "right")[0], "what is cast on stays")
	a.replan(at, "hand.hand_circumference", "19")

	send("d", "hand", 2000)
	assert.Contains(t, title(), "Put the thumb on the needles")
	a.replan(at, "length.above_gusset", "8")
	assert.Contains(t, title(), "Put the thumb on the needles", "a hand that is bound off gets no rounds")
	assert.Contains(t, a.get(at+"/needles?side=left").doc().Find(".which").Text(), "right hand: 50 of 60 rounds")
	assert.Contains(t, a.desk(at, "fit").doc().Find(".knitted").Text(), "planned on from the finished hand")
	send("e", "hand", 12)
	assert.Contains(t, title(), "Bind off", "and it can be opened again")
}

// replan changes one number of the form.
func (a *served) replan(at, path, value string) {
	a.t.Helper()
	form := a.form(at)
	form.Set(path, value)
	require.Equal(a.t, http.StatusSeeOther, a.post(at, form).status)
}

// counts are the stitches after each task of a hand.
func (a *served) counts(at, side string) (list []string) {
	a.t.Helper()
	req := a.request("GET", at+"/needles?side="+side, "", "")
	req.Header.Set("Accept", "application/json")
	var got struct {
		Tasks []struct{ After int } `json:"tasks"`
	}
	require.NoError(a.t, json.Unmarshal([]byte(a.do(req).body), &got))
	for _, task := range got.Tasks {
		list = append(list, strconv.Itoa(task.After))
	}
	return list
}

// A round says its painted yarns, run by run, of either hand; one that is not
// painted stays as it is.
func TestNeedlesSayColours(t *testing.T) {
	a := newApp(t)
	at := a.sample()
	say := func(side string, nth int) string {
		require.Equal(t, http.StatusSeeOther, a.post(at+"/needles", url.Values{"side": {side}, "nth": {strconv.Itoa(nth)}}).status)
		return a.get(at + "/needles?side=" + side).doc().Find("[data-say]").Text()
	}
	plain := say("right", 21)
	var edits []string
	for _, column := range []string{"H1", "H2", "H3"} {
		edits = append(edits, fmt.Sprintf(`{"section":"gusset","round":3,"column":%q,"layer":"colour","value":"b"}`, column))
	}
	require.Equal(t, http.StatusOK, a.stroke(at+"/chart", `{"after":1,"edits":[`+strings.Join(edits, ",")+`]}`).status)
	assert.Regexp(t, `^k\d main colour\. Then k3 rust, k\d+ main colour\.$`, say("right", 21))
	assert.Regexp(t, `^k\d main colour\. Then k\d+ main colour, k3 rust\.$`, say("left", 21))
	assert.Equal(t, "Knit.", plain)
	assert.Regexp(t, `^In main colour: [^,]*k1, M1L`, say("right", 22), "the round above is not painted, and goes on with the yarn that it ends with")
	assert.NotContains(t, say("right", 23), "main colour", "the next goes on with it")
}

// The chart and the count speak of one round: what is counted is marked, and
// what is marked is counted.
func TestNeedlesAndChartAgree(t *testing.T) {
	a := newApp(t)
	at := a.sample()
	require.Equal(t, http.StatusOK, a.stroke(at+"/chart", `{"after":1,"edits":[{"section":"gusset","round":5,"column":"","layer":"needles","value":"here"}]}`).status)
	assert.Contains(t, a.get(at+"/needles").doc().Find("h2").Text(), "Round 5")
	require.Equal(t, http.StatusOK, a.stroke(at+"/needles", `{"key":"a","side":"right","section":"gusset","round":8}`).status)
	data := a.desk(at, "chart").doc().Find("#chart-data").Text()
	assert.Equal(t, 1, strings.Count(data, `"needles"`), "one round is on the needles")
	assert.Contains(t, data, `{"section":"gusset","round":9,"column":"","layer":"needles","value":"here"}`)
	before := a.get(at+"/chart.svg?marks=1").doc().Find(".needles").AttrOr("d", "")
	require.NotEmpty(t, before, "files with marks mark it, too")
	require.Equal(t, http.StatusOK, a.stroke(at+"/needles", `{"key":"b","side":"right","section":"gusset","round":9}`).status)
	assert.NotEqual(t, before, a.get(at+"/chart.svg?marks=1").doc().Find(".needles").AttrOr("d", ""))
	assert.Empty(t, a.get(at+"/needles").doc().Find("path.needles").AttrOr("d", ""), "a strip lights its own round")
}

// A script is answered with the whole charts of either hand, and with none of a
// mitt without a plan.
func TestNeedlesStrips(t *testing.T) {
	a := newApp(t)
	strips := func(path string) (views []string, charts string) {
		var got struct {
			Strips []struct {
				View, SVG string
				Rows, To  int
			}
		}
		require.NoError(t, json.Unmarshal([]byte(a.get(path).body), &got))
		for _, s := range got.Strips {
			views, charts = append(views, s.View), charts+s.SVG
			assert.Equal(t, s.Rows, s.To, s.View)
			assert.Contains(t, s.SVG, `class="now"`)
		}
		return views, charts
	}
	at := a.sample()
	page := a.get(at + "/desk/knit?side=left").doc()
	href := page.Find("#round").AttrOr("data-strips", "")
	views, left := strips(href)
	assert.Equal(t, page.Find("[data-strip]").Map(func(_ int, s *goquery.Selection) string { return s.AttrOr("data-strip", "") }), views)
	_, right := strips(at + "/strips?side=right")
	assert.NotEqual(t, right, left)
	views, _ = strips(a.post("/mitts", nil).header.Get("Location") + "/strips")
	assert.Empty(t, views)
}

// note goes to a round of a hand and reads what is noted there.
func (a *served) note(at, side string, nth int) string {
	a.t.Helper()
	require.Equal(a.t, http.StatusSeeOther, a.post(at+"/needles", url.Values{"side": {side}, "nth": {strconv.Itoa(nth)}}).status)
	return a.get(at+"/needles?side="+side).doc().Find("#note").AttrOr("value", "")
}

func TestNeedlesWithoutPlan(t *testing.T) {
	a := newApp(t)
	at := a.post("/mitts", nil).header.Get("Location")
	assert.Contains(t, a.get(at+"/needles").doc().Find(".message").Text(), "no plan to knit by yet")
	assert.Contains(t, a.get(at+"/tries").doc().Find(".message").Text(), "no plan to try on yet")
}
