package web

import (
	"fmt"
	"net/http"
	"net/url"
	"regexp"
	"strings"
	"testing"

	"github.com/PuerkitoBio/goquery"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"thenar/internal/testenv"
)

// evil are texts that would do something, if a page took them for more than
// text.
var evil = []string{
	`"><script>alert(1)</script>`, `'><img src=x onerror=alert(1)>`, `</script><script>alert(1)</script>`, `javascript:alert(1)`,
	`</text><script>alert(1)</script>`, `--><svg onload=alert(1)>`, "`${alert(1)}`", `&lt;script&gt;alert(1)`, `{{7*7}}</title><b>`,
}

var onEvent = regexp.MustCompile(`^on[a-z]+$`)

// assertHarmless looks at a page as a browser would: no script but ours, none
// that runs from an attribute, nothing from elsewhere.
func assertHarmless(t *testing.T, r answer) {
	t.Helper()
	kind := r.header.Get("Content-Type")
	if strings.HasPrefix(kind, "image/svg") {
		assert.NotRegexp(t, `(?i)<script|\son[a-z]+=|javascript:`, r.body)
		return
	}
	if !strings.HasPrefix(kind, "text/html") {
		return
	}
	for _, s := range r.doc().Find("script").EachIter() {
		src, sent := s.Attr("src")
		data := s.AttrOr("type", "") == "application/json"
		assert.True(t, sent && strings.HasPrefix(src, "/static/") || data, "a script: %.100s", s.Text())
	}
	for _, s := range r.doc().Find("*").EachIter() {
		for _, attr := range s.Nodes[0].Attr {
			assert.NotRegexp(t, onEvent, attr.Key, goquery.NodeName(s))
			if attr.Key == "href" || attr.Key == "src" || attr.Key == "action" {
				assert.Regexp(t, `^(/|#|\?|http://127\.0\.0\.1|$)`, attr.Val, goquery.NodeName(s))
			}
		}
	}
	assert.Zero(t, r.doc().Find("img[src=x], iframe, object, embed, base, title b").Length())
}

// A script in every text that a person can type, on every page that shows it.
func TestAttackScriptInEveryText(t *testing.T) {
	t.Parallel()
	a := newApp(t)
	for i, text := range testenv.Some(2, evil) {
		at := a.sample()
		id := strings.TrimPrefix(at, "/mitts/")
		require.Equal(t, http.StatusSeeOther, a.post(at+"/name", url.Values{"name": {text}}).status)
		form := a.form(at)
		for name := range form {
			if name != "after" && form.Get(name) == "" {
				form.Set(name, text)
			}
		}
		form.Set("gauge.swatches[0].piece", text)
		form.Set("chart.yarns[0].name", text)
		saved := a.post(at, form)
		assertHarmless(t, saved)
		assertHarmless(t, a.post(at+"/preview", form))
		assertHarmless(t, a.post(at+"/what-if", form))
		require.Equal(t, http.StatusOK, a.stroke(at+"/chart", fmt.Sprintf(`{"after":%d,"edits":[{"section":"gusset","round":3,"column":"","layer":"note","value":%q}]}`, 1, text)).status)
		assertHarmless(t, a.post(at+"/history", url.Values{"name": {text}}))
		assertHarmless(t, a.stroke("/motifs", fmt.Sprintf(`{"name":%q,"cells":[{"left":0,"up":0,"stitch":"p","colour":""}]}`, text)))
		plan := a.sample() // that has a plan, to be tried on
		assertHarmless(t, a.post(plan+"/tries", url.Values{
			"key": {text}, "date": {"2025-03-09"}, "side": {"right"}, "section": {"gusset"}, "round": {"8"}, "note": {text}, "feel.cuff": {"1"},
		}))
		assertHarmless(t, a.post(plan+"/tries", url.Values{"key": {"k"}, "date": {text}, "side": {text}, "section": {text}, "round": {text}, "count": {text}, "width": {text}, "note": {text}}))
		for _, path := range []string{
			"/", at, at + "/desk/fit", at + "/desk/chart", at + "/desk/pattern", at + "/desk/knit", at + "/desk/try",
			at + "/what-if", at + "/history", at + "/history/1", at + "/chart.svg", at + "/sizes", at + "/wall",
			plan + "/yarns", plan + "/desk/try", plan + "/desk/knit", plan + "/strips", plan + "/desk/pattern", "/motifs", "/status", "/classes",
		} {
			assertHarmless(t, a.get(path))
		}
		classAttack(t, a, id, text, i)
		if i >= testenv.Cases(1, 3) { // the same code reads all of them
			continue
		}
		for _, name := range []string{"view", "layout", "middle", "cells", "paper", "cell", "pieces", "from", "to", "by", "side", "section", "beside", "desk", "turn"} {
			q := "?" + url.Values{name: {text}}.Encode()
			for _, path := range []string{plan, plan + "/desk/fit", plan + "/desk/chart", plan + "/desk/pattern", plan + "/sizes", plan + "/wall", plan + "/words.txt", plan + "/desk/knit", plan + "/strips", plan + "/desk/try", "/paper/grid"} {
				assertHarmless(t, a.get(path+q))
			}
		}
	}
}

// classAttack does the same for the texts of a class and its students.
func classAttack(t *testing.T, a *served, mitt, text string, i int) {
	t.Helper()
	made := a.post("/classes", url.Values{"name": {text}, "mitt": {mitt}})
	require.Equal(t, http.StatusSeeOther, made.status)
	at := made.header.Get("Location")
	form := a.get(at).fields(`form[action="` + at + `"]`)
	for _, name := range []string{"name", "date", "place", "yarn", "needle", "note", "pins.bridge"} {
		form.Set(name, text)
	}
	assertHarmless(t, a.post(at, form))
	form.Del("date")
	form.Del("pins.bridge")
	assertHarmless(t, a.post(at, form))
	form.Set("stamp", "another")
	form.Set("place", fmt.Sprintf("%s %d", text, i))
	assertHarmless(t, a.post(at, form)) // both versions
	assertHarmless(t, a.post(at+"/students", url.Values{"name": {text}, "note": {text}, "hand.hand_circumference": {"18"}}))
	assertHarmless(t, a.post(at+"/students", url.Values{"name": {text}, "hand.hand_circumference": {text}, "gauge_from": {text}}))
	assertHarmless(t, a.post(at+"/students/1", url.Values{"name": {"x" + text}, "stamp": {"another"}, "note": {"y" + text}}))
	assertHarmless(t, a.table(at, "name\t"+text+"\nx"+text+"\t18\n"+text+"\t"+text+"\n", nil))
	for _, path := range []string{at, at + "/students/1", at + "/print", "/classes"} {
		assertHarmless(t, a.get(path))
	}
}
