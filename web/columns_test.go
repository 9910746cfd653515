package web

import (
	"net/http"
	"net/url"
	"strings"
	"testing"

	"github.com/chromedp/chromedp"
	"github.com/chromedp/chromedp/kb"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// columns are what a page tells of the columns of a table: heading, values and
// how it was read.
func columns(r answer) (list []string) {
	for _, c := range r.doc().Find("#columns .column").EachIter() {
		samples := strings.Join(strings.Fields(c.Find(".samples").Text()), " ")
		list = append(list, c.Find("b").Text()+" | "+samples+" | "+c.Find("option[selected]").Text())
	}
	return list
}

// all are the fields of a form, also those of which there are several.
func (r answer) all(form string) url.Values {
	list := url.Values{}
	for _, f := range r.doc().Find(form + " [name]").EachIter() {
		name, value := f.AttrOr("name", ""), f.AttrOr("value", f.Text())
		if f.Is("select") {
			value = f.Find("option[selected]").AttrOr("value", "")
		}
		if _, ticked := f.Attr("checked"); f.AttrOr("type", "") != "radio" || ticked {
			list.Add(name, value)
		}
	}
	return list
}

// Every column is told with how it was read; what was chosen otherwise is
// remembered for the class, in its file too; a table that is sent again fills
// what was missing.
func TestColumnsOfATable(t *testing.T) {
	t.Parallel()
	a := newApp(t)
	path := a.class()
	const table = "Name;Vorname;Handumfang (cm);Daumen;Größter Finger\nMüller;Anna;18,5;6,5;7,9\nWeiß;Jörg;21;7;8,8\n"
	got := a.table(path, table, nil)
	require.Equal(t, http.StatusOK, got.status)
	assert.Equal(t, []string{
		"Name | Müller · Weiß | Name", "Vorname | Anna · Jörg | First name", "Handumfang (cm) | 18,5 · 21 | Hand, round the knuckles",
		"Daumen | 6,5 · 7 | Thumb, round", "Größter Finger | 7,9 · 8,8 | not used",
	}, columns(got))
	assert.Contains(t, got.doc().Find("#columns").Text(), "One is not used.")
	assert.NotEmpty(t, cells(a.get(path), "Anna Müller"))

	form := got.all("#columns")
	form["field"][4] = "hand.wrist_circumference" // whatever it is
	again := a.post(path+"/table", form)
	require.Equal(t, http.StatusOK, again.status)
	assert.Contains(t, again.doc().Find("#read").Text(), "2 had gaps, which are filled now.")
	assert.Equal(t, "7,9", a.get(path+"/students/1").fields(".student-form").Get("hand.wrist_circumference"))
	third := a.table(path, "vorname;GRÖSSTER FINGER\nKim;8\n", nil)
	assert.Contains(t, columns(third)[1], "Wrist, round", "it is remembered")

	file := a.get(path + "/export.json")
	require.Equal(t, http.StatusOK, file.status)
	assert.Contains(t, file.body, `"grosster finger": "hand.wrist_circumference"`)
}

// What a table that is sent again has otherwise is asked about, and changed
// only where the new value was chosen and nobody else changed it.
func TestTableSentAgain(t *testing.T) {
	t.Parallel()
	a := newApp(t)
	path := a.class()
	a.table(path, "name\thand\tnote\nAda\t18,5\twool\nBo\t20\t\n", nil)
	got := a.table(path, "name\thand\tnote\tthumb\nada\t18.5\tsilk\t6,5\nBo\t21\t\t\n", nil)
	assert.Equal(t, []string{"Ada: Note", "Bo: Hand, round the knuckles"}, func() (list []string) {
		for _, l := range got.doc().Find("#differ legend").EachIter() {
			list = append(list, l.Text())
		}
		return list
	}())
	value := func(student, name string) string {
		return a.get(path + "/students/" + student).fields(".student-form").Get(name)
	}
	assert.Equal(t, "6,5", value("1", "hand.thumb_circumference"), "what was empty is filled")
	assert.Equal(t, "wool", value("1", "note"))
	assert.Equal(t, "20", value("2", "hand.hand_circumference"))
	form := got.all("#differ")
	form.Set("take-0", "kept")
	form.Set("take-1", "new")
	require.Equal(t, http.StatusSeeOther, a.post(path+"/table/take", form).status)
	assert.Equal(t, "wool", value("1", "note"))
	assert.Equal(t, "21", value("2", "hand.hand_circumference"))
	late := a.post(path+"/table/take", form)
	assert.Equal(t, http.StatusConflict, late.status)
	assert.Contains(t, late.doc().Find(".conflict").Text(), "Bo: Hand, round the knuckles")
}

// A table of which no heading is known is chosen column by column, with the
// keyboard alone.
func TestColumnsByKeyboard(t *testing.T) {
	t.Parallel()
	b := newBrowser(t)
	sampled(b)
	class := classOf(b)
	b.open(class + "#add")
	b.do(chromedp.Evaluate[chromedp.Void](`document.querySelector("#field-table").value = "Imię;Obwód;Telefon\nEwa;18,5;1\n"`))
	b.follow(`#add form[action$="/table"] [type=submit]`)
	b.until(`document.querySelector("#columns") !== null`)
	b.expectErrors() // it can't be read yet
	assert.Equal(t, 3, eval[int](b, `document.querySelectorAll("#columns select").length`))
	for i, word := range []string{"Na", "Ha"} {
		b.do(chromedp.Evaluate[chromedp.Void](`document.querySelectorAll("#columns select")[` + string(rune('0'+i)) + `].focus()`))
		for _, key := range word {
			b.do(chromedp.KeyEvent(string(key)))
		}
	}
	assert.Equal(t, []string{"name", "hand.hand_circumference", ""}, eval[[]string](b, `[...document.querySelectorAll("#columns select")].map((s) => s.value)`))
	for _, scheme := range []string{"light", "dark"} {
		b.scheme(scheme)
		b.shot("columns-" + scheme + "-desk")
	}
	b.phone()
	b.shot("columns-phone")
	assert.LessOrEqual(t, eval[int](b, `document.documentElement.scrollWidth`), 360)
	b.do(chromedp.Evaluate[chromedp.Void](`document.querySelector("#columns button").focus()`))
	_, err := chromedp.RunResponse(b.ctx, chromedp.KeyEvent(kb.Enter))
	require.NoError(t, err)
	assert.Contains(t, eval[string](b, `document.querySelector("#read").textContent`), "1 student added.")
	assert.Contains(t, eval[string](b, `document.querySelector(".class-table").textContent`), "Ewa")
}
