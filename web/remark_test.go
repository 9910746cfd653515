package web

import (
	"net/http"
	"net/url"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// Without a script one form saves what stands beside all students and moves one of
// them; it is on the sheets then, and in the file of the class. A script gets the
// same answers in JSON.
func TestRemarksOfAClass(t *testing.T) {
	a := newApp(t)
	path := a.class()
	a.table(path, tuesday, nil)
	form := url.Values{
		"student": {"1", "3"}, "knits-1": {"left"}, "note-1": {"wants a longer cuff"}, "knits-was-3": {"left"},
		"do": {"move"}, "move": {"3"}, "before": {"1"},
	}
	require.Equal(t, http.StatusSeeOther, a.post(path+"/remarks", form).status)
	page := a.get(path)
	var names []string
	for _, th := range page.doc().Find(".class-table tbody th").EachIter() {
		names = append(names, th.Text())
	}
	assert.Equal(t, []string{"Celia", "Ada", "Bertil", "Dilan", "Finn"}, names)
	assert.Equal(t, 1, page.doc().Find(`[name="knits-1"][checked]`).Length())
	assert.Zero(t, page.doc().Find(`[name="knits-3"][checked]`).Length())
	assert.Contains(t, a.get(path+"/print?student=1").doc().Find(".sheets").Text(), "knitted from left to right")
	assert.Contains(t, a.get(path+"/export.json").body, "wants a longer cuff")

	form.Set("note-1", strings.Repeat("long ", 100)+"end")
	form.Set("knits-was-1", "left")
	form.Set("note-was-1", "wants a longer cuff")
	bad := a.post(path+"/remarks", form)
	assert.Equal(t, http.StatusBadRequest, bad.status)
	assert.Contains(t, bad.doc().Find("#fault-note-1").Text(), "200")
	assert.Equal(t, form.Get("note-1"), bad.doc().Find(`[name="note-1"]`).AttrOr("value", ""), "what was typed is not lost")
	form.Set("note-1", "mine")
	form.Set("note-was-1", "")
	assert.Equal(t, http.StatusConflict, a.post(path+"/remarks", form).status)
	for query, says := range map[string]string{
		"do=move&move=9&before=1": "move: names nobody", "do=move&move=1&before=9": "before: names nobody", "do=move&move=x": "choose a student of the list", "student=x": "choose a student of the list",
	} {
		got := a.do(a.request("POST", path+"/remarks", "application/x-www-form-urlencoded", query))
		assert.Equal(t, http.StatusBadRequest, got.status, query)
		assert.Contains(t, got.doc().Text(), says, query)
	}

	script := func(body url.Values) answer {
		r := a.request("POST", path+"/remarks", "application/x-www-form-urlencoded", body.Encode())
		r.Header.Set("Accept", "application/json")
		return a.do(r)
	}
	conflict := script(form)
	assert.Equal(t, http.StatusConflict, conflict.status)
	assert.JSONEq(t, `{"error": ["Another window changed what stands beside Ada."]}`, conflict.body)
	assert.JSONEq(t, `{"saved": true}`, script(url.Values{"do": {"move"}, "move": {"1"}, "before": {""}}).body)
}

// What printing takes is counted where somebody asks for it: a script in words,
// a person on the page of the class, which shows it from then on.
func TestCostOfAClass(t *testing.T) {
	a := newApp(t)
	path := a.class()
	assert.Equal(t, http.StatusBadRequest, a.get(path+"/cost").status, "nobody is on the list")
	a.table(path, tuesday, nil)
	a.post(path+"/print", url.Values{"print": {"paper=a4&double=1&pieces=own"}})
	assert.Equal(t, 1, a.get(path).doc().Find("#cost a").Length())
	to := a.get(path + "/cost")
	assert.Equal(t, path+"#print", to.header.Get("Location"))
	assert.Equal(t, "5 students, 6 sheets, both sides", strings.Join(strings.Fields(a.get(path).doc().Find("#cost").Text()), " "), "the summary, and a page for each")
	r := a.request("GET", path+"/cost", "", "")
	r.Header.Set("Accept", "application/json")
	assert.JSONEq(t, `{"cost": "6 sheets, both sides"}`, a.do(r).body)
}
