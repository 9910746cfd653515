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

// Without a script, a mitt is begun from another on the shelf, without its
// drawing, and the yarns of another are brought to a mitt.
func TestBeginAndBringWithoutScript(t *testing.T) {
	t.Parallel()
	a := newApp(t)
	from := a.sample()
	form := a.form(from)
	form.Set("pins.cast_on", "40")
	form.Set("chart.yarns[1].name", "sloe <b>")
	form.Set("chart.yarns[1].colour", "#2E2F4F")
	require.Equal(t, http.StatusSeeOther, a.post(from, form).status)
	require.Equal(t, http.StatusOK, a.stroke(from+"/chart", `{"after":1,"edits":[{"section":"gusset","round":1,"column":"B1","layer":"colour","value":"b"}]}`).status)

	act := `.mitts form[action="` + from + `/begin"]`
	shelf := a.get("/")
	assert.Equal(t, "with its one fixed number", strings.TrimSpace(shelf.doc().Find(act+" .tick").Text()))
	fields := shelf.fields(act)
	assert.Equal(t, "true", fields.Get("pins"), "when it is ticked")
	fields.Set("name", "Harbour")
	with := a.post(from+"/begin", fields)
	require.Equal(t, http.StatusSeeOther, with.status)
	assert.Equal(t, "40", a.form(with.header.Get("Location")).Get("pins.cast_on"))
	fields.Del("pins")
	made := a.post(from+"/begin", fields).header.Get("Location")
	assert.Empty(t, a.form(made).Get("pins.cast_on"))
	assert.Equal(t, "sloe <b>", a.form(made).Get("chart.yarns[1].name"))
	assert.NotContains(t, a.get(made+"/chart").body, "B1")
	assert.Zero(t, a.get("/").doc().Find(`form[action="`+made+`/begin"] .tick`).Length(), "nothing is fixed there")
	wrong := a.post(from+"/begin", url.Values{"name": {"x"}, "pins": {"maybe"}})
	assert.Equal(t, http.StatusBadRequest, wrong.status)
	assert.Contains(t, wrong.doc().Find(".message").Text(), "pins: is")

	plain := a.sample()
	page := a.get(a.desk(plain, "chart").doc().Find(`a[href="`+plain+`/yarns"]`).First().AttrOr("href", "no way there"))
	assert.Equal(t, []string{"Harbour", "Harbour"}, headings(page)[:2])
	assert.Contains(t, page.doc().Find(".yarns").First().Text(), "sloe <b>")
	bring := page.fields(".palettes form")
	require.Equal(t, plain+"/desk/chart", a.post(plain+"/yarns", bring).header.Get("Location"))
	brought := a.form(plain)
	assert.Equal(t, []string{"sloe <b>", "#2E2F4F"}, []string{brought.Get("chart.yarns[1].name"), brought.Get("chart.yarns[1].colour")})
	again := a.get(plain + "/yarns").doc()
	assert.Zero(t, again.Find(".palettes form").Length())
	assert.Contains(t, again.Find(".palettes").Text(), "Nothing to bring")
	assert.Contains(t, a.post(plain+"/yarns", url.Values{"from": {"x"}}).doc().Find(".message").Text(), "from: is")
}

// headings are the names of the mitts whose yarns are offered.
func headings(page answer) (names []string) {
	for _, h := range page.doc().Find(".palettes h3").EachIter() {
		names = append(names, h.Text())
	}
	return names
}

// By keyboard alone: a mitt is begun from the one on the shelf, its fixed number
// ticked, and the yarns of another are brought and taken out again.
func TestBeginAndBringByKeyboard(t *testing.T) {
	t.Parallel()
	b := newBrowser(t)
	sampled(b)
	send := `fetch(document.getElementById("measure-form").action, {method: "POST", body: new URLSearchParams("after=1&pins.cast_on=40&chart.yarns[1].name=sloe&chart.yarns[1].colour=%232E2F4F")}).then((r) => r.status)`
	require.Equal(t, 200, await[int](b, send))
	enter := func() {
		_, err := chromedp.RunResponse(b.ctx, chromedp.KeyEvent(kb.Enter))
		require.NoError(t, err)
	}
	b.open("/")
	for _, fold := range []string{"More", "Begin another from it"} {
		tabTo(b, `document.activeElement.textContent === "`+fold+`"`)
		b.do(chromedp.KeyEvent(kb.Enter))
	}
	tabTo(b, `document.activeElement.name === "pins"`)
	b.do(chromedp.KeyEvent(" "))
	tabTo(b, `document.activeElement.textContent === "Begin"`)
	enter()
	assert.Equal(t, "40", eval[string](b, `document.getElementById("field-pins.cast_on").value`))
	assert.Contains(t, eval[string](b, `document.querySelector("h1").textContent`), "(new)")

	page := b.sample()
	b.open(page + "/yarns")
	tabTo(b, `document.activeElement.textContent === "Bring these yarns"`)
	enter()
	assert.Equal(t, page+"/desk/chart", eval[string](b, `location.pathname`))
	yarn := `document.querySelector('[data-tool-colour="b"] span').textContent`
	b.until(yarn + ` === "sloe"`)
	tabTo(b, `document.activeElement.dataset.do === "undo"`)
	b.do(chromedp.KeyEvent(kb.Enter))
	b.until(yarn + ` === "rust"`)
	b.until(chartSaved)
}
