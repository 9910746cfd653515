package web

import (
	"context"
	"io"
	"net/http"
	"net/http/httptest"
	"net/url"
	"path/filepath"
	"strings"
	"testing"

	"github.com/PuerkitoBio/goquery"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"thenar/internal/app"
	"thenar/internal/store"
)

// served is a server on a real database of its own.
type served struct {
	t       testing.TB
	handler *Server
	server  *httptest.Server
	store   *store.Store
}

func newApp(t testing.TB) *served {
	t.Helper()
	st, err := store.Open(context.Background(), filepath.Join(t.TempDir(), "thenar.db"))
	require.NoError(t, err)
	var log strings.Builder
	handler := New(app.New(st), &log, Door{})
	server := httptest.NewServer(handler)
	t.Cleanup(func() {
		server.Close()
		require.NoError(t, st.Close())
		assert.NotContains(t, log.String(), "level=ERROR", "nothing goes wrong inside")
	})
	// What is packed has tests of its own (taking), and every browser asks for it.
	server.Client().Transport.(*http.Transport).DisableCompression = true
	server.Client().CheckRedirect = func(*http.Request, []*http.Request) error { return http.ErrUseLastResponse }
	return &served{t, handler, server, st}
}

// answer is a response read whole.
type answer struct {
	t      testing.TB
	status int
	header http.Header
	body   string
}

func (a *served) do(req *http.Request) answer {
	a.t.Helper()
	resp, err := a.server.Client().Do(req)
	require.NoError(a.t, err)
	defer resp.Body.Close()
	body, err := io.ReadAll(resp.Body)
	require.NoError(a.t, err)
	return answer{a.t, resp.StatusCode, resp.Header, string(body)}
}

func (a *served) request(method, path, kind, body string) *http.Request {
	a.t.Helper()
	req, err := http.NewRequestWithContext(context.Background(), method, a.server.URL+path, strings.NewReader(body))
	require.NoError(a.t, err)
	if kind != "" {
		req.Header.Set("Content-Type", kind)
	}
	return req
}

// get reads a page. An address that leads to a desk is followed there.
func (a *served) get(path string) answer {
	a.t.Helper()
	got := a.do(a.request("GET", path, "", ""))
	if to := got.header.Get("Location"); strings.Contains(to, "/desk/") {
		return a.do(a.request("GET", to, "", ""))
	}
	return got
}

// deskNames are the desks of a mitt, as their addresses name them.
var deskNames = []string{"fit", "chart", "pattern", "knit", "try"}

// desk reads a desk of a mitt.
func (a *served) desk(mitt, name string) answer { a.t.Helper(); return a.get(mitt + "/desk/" + name) }

// form is the measure form of a mitt as a browser would send it.
func (a *served) form(mitt string) url.Values { a.t.Helper(); return a.desk(mitt, "fit").form() }

func (a *served) post(path string, form url.Values) answer {
	a.t.Helper()
	return a.do(a.request("POST", path, "application/x-www-form-urlencoded", form.Encode()))
}

func (a *served) stroke(path, body string) answer {
	a.t.Helper()
	return a.do(a.request("POST", path, "application/json", body))
}

func (r answer) doc() *goquery.Document {
	r.t.Helper()
	doc, err := goquery.NewDocumentFromReader(strings.NewReader(r.body))
	require.NoError(r.t, err)
	return doc
}

// form is the measure form of a page as a browser would send it.
func (r answer) form() url.Values { return r.fields("#measure-form") }

// fields are those of a form of the page as a browser would send them.
func (r answer) fields(form string) url.Values {
	r.t.Helper()
	values := url.Values{}
	r.doc().Find(form).First().Find("[name]:not(details)").Each(func(_ int, field *goquery.Selection) {
		name, _ := field.Attr("name")
		value, _ := field.Attr("value")
		if goquery.NodeName(field) == "select" {
			value, _ = field.Find("option[selected]").Attr("value")
		}
		values.Set(name, value)
	})
	return values
}

// sample begins the sample mitt and gives its address.
func (a *served) sample() string {
	a.t.Helper()
	made := a.post("/mitts", url.Values{"sample": {"1"}})
	require.Equal(a.t, http.StatusSeeOther, made.status)
	return made.header.Get("Location")
}

func TestEmptyShelfOffersTwoBeginnings(t *testing.T) {
	a := newApp(t)
	page := a.get("/")
	require.Equal(t, http.StatusOK, page.status)
	assert.Contains(t, page.doc().Find(".begin").Text(), "Start with a hand")
	assert.Contains(t, page.doc().Find(".begin").Text(), "Look at a sample mitt")
}

func TestSampleIsAtAPlan(t *testing.T) {
	a := newApp(t)
	at := a.sample()
	page := a.desk(at, "fit")
	require.Equal(t, http.StatusOK, page.status)
	doc := page.doc()
	assert.Equal(t, 18, doc.Find(".numbers .number").Length())
	assert.Equal(t, 1, a.desk(at, "chart").doc().Find("svg[data-chart]").Length())
	assert.Contains(t, doc.Find(".summary").Text(), "Cast on 36")
	assert.Equal(t, 8, doc.Find(".drawing .tape").Length(), "a tape for each measurement")
	assert.Equal(t, 1, doc.Find(".drawing .tape.filled").Length(), "the palm is not measured")
	doc.Find(".number .why").Each(func(_ int, why *goquery.Selection) {
		assert.NotEmpty(t, strings.TrimSpace(why.Text()))
	})
	shelf := a.get("/").doc()
	assert.Equal(t, 1, shelf.Find(".mitt-item svg").Length(), "a small picture")
}

// My own hand: an empty form says what is needed, and two numbers are enough.
func TestOwnHand(t *testing.T) {
	a := newApp(t)
	made := a.post("/mitts", url.Values{})
	path := made.header.Get("Location")
	page := a.get(path)
	assert.Contains(t, page.doc().Find(".in-the-way").Text(), "measure round the knuckles")
	form := page.form()
	form.Set("hand.hand_circumference", "19")
	form.Set("gauge.swatches[0].stitches", "24")
	form.Set("gauge.swatches[0].width", "10")
	saved := a.post(path, form)
	require.Equal(t, http.StatusSeeOther, saved.status, saved.body)
	assert.Contains(t, a.get(path).doc().Find(".summary").Text(), "hand 44")
}

// Whatever is typed is kept, right or wrong, and the message stands at its
// field.
func TestFaultyNumbersAreKept(t *testing.T) {
	a := newApp(t)
	path := a.sample()
	form := a.form(path)
	form.Set("hand.thumb_circumference", "6,5x")
	form.Set("length.cuff", "0")
	require.Equal(t, http.StatusSeeOther, a.post(path, form).status)
	doc := a.get(path).doc()
	field := doc.Find(`[name="hand.thumb_circumference"]`)
	assert.Equal(t, "6,5x", field.AttrOr("value", ""))
	assert.Equal(t, "true", field.AttrOr("aria-invalid", ""))
	assert.Contains(t, doc.Find(`[data-fault-for="hand.thumb_circumference"]`).Text(), "is not a number; write 18.5")
	assert.Contains(t, doc.Find(`[data-fault-for="length.cuff"]`).Text(), "is zero")
	assert.Contains(t, doc.Find(".in-the-way").Text(), "Hand: Thumb")
}

func TestPreview(t *testing.T) {
	a := newApp(t)
	path := a.sample()
	form := a.form(path)
	form.Set("hand.hand_circumference", "20,5")
	answer := a.post(path+"/preview", form)
	require.Equal(t, http.StatusOK, answer.status)
	doc := answer.doc()
	for _, fragment := range []string{"plan", "drawing", "chart", "words"} {
		assert.Equal(t, 1, doc.Find(`[data-fragment="`+fragment+`"]`).Length(), fragment)
	}
	assert.Contains(t, doc.Find(".summary").Text(), "hand 46")
	assert.Contains(t, a.get(path).doc().Find(".summary").Text(), "hand 42", "a preview saves nothing")

	form.Set("hand.hand_circumference", "NaN")
	doc = a.post(path+"/preview", form).doc()
	assert.Zero(t, doc.Find(`[data-fragment="chart"]`).Length(), "the chart stays as it was")
	assert.Contains(t, doc.Find("#answer-state").Text(), `"hand.hand_circumference":"is not a number`)

	form.Set("hand.hand_circumference", "18")
	form.Set("side", "left")
	assert.Contains(t, a.post(path+"/preview", form).doc().Find(`[data-fragment="words"]`).Text(), "left hand")
}

// Pins that a sheet brought along are kept by a form that does not show them.
func TestSheetKeepsWhatTheFormDoesNotShow(t *testing.T) {
	a := newApp(t)
	path := a.sample()
	raw := []byte(`{"name":"x","side":"right","sheet":{"hand.hand_circumference":"19","gauge.swatches[0].stitches":"24","gauge.swatches[0].width":"10","pins.gusset_base":"5","hand.profile[0].height":"0"}}`)
	_, err := a.store.Save(context.Background(), 1, 1, raw)
	require.NoError(t, err)
	require.Equal(t, http.StatusSeeOther, a.post(path, a.form(path)).status)
	sheet := a.get(path + "/sheet.json").body
	assert.Contains(t, sheet, `"gusset_base": 5`)
	assert.Contains(t, sheet, `"height": 0`)
}

func TestTwoTabs(t *testing.T) {
	a := newApp(t)
	path := a.sample()
	one, two := a.form(path), a.form(path)
	one.Set("hand.hand_circumference", "20")
	two.Set("hand.hand_circumference", "21")
	require.Equal(t, http.StatusSeeOther, a.post(path, one).status)
	conflict := a.post(path, two)
	require.Equal(t, http.StatusConflict, conflict.status)
	doc := conflict.doc()
	assert.Equal(t, "21", doc.Find(`[name="hand.hand_circumference"]`).AttrOr("value", ""), "what was typed is shown")
	assert.Equal(t, 1, doc.Find(".conflict").Length())
	require.Equal(t, http.StatusSeeOther, a.post(path, conflict.form()).status, "and can be saved over the other")
	assert.Equal(t, "21", a.form(path).Get("hand.hand_circumference"))
}

func TestShelfActs(t *testing.T) {
	a := newApp(t)
	path := a.sample()
	require.Equal(t, http.StatusSeeOther, a.post(path+"/name", url.Values{"name": {"  Winter <b>pair</b> "}}).status)
	require.Equal(t, http.StatusOK, a.stroke(path+"/chart", `{"after":1,"edits":[{"section":"gusset","round":1,"column":"B1","layer":"stitch","value":"p"}]}`).status)
	copied := a.post(path+"/copy", url.Values{})
	require.Equal(t, http.StatusSeeOther, copied.status)
	assert.Contains(t, a.get(copied.header.Get("Location")+"/chart").body, `"column":"B1"`, "the chart is copied, too")
	doc := a.get("/").doc()
	names := doc.Find(".mitts h2").Map(func(_ int, s *goquery.Selection) string { return s.Text() })
	assert.Equal(t, []string{"Winter <b>pair</b> (copy)", "Winter <b>pair</b>"}, names, "the newest first, and no markup of a name")
	require.Equal(t, http.StatusSeeOther, a.post(path+"/archive", url.Values{"archived": {"true"}}).status)
	doc = a.get("/").doc()
	assert.Equal(t, 1, doc.Find(".archive .mitt-item").Length())
	require.Equal(t, http.StatusSeeOther, a.post(path+"/archive", url.Values{"archived": {"false"}}).status)
	assert.Zero(t, a.get("/").doc().Find(".archive").Length())
	assert.Equal(t, http.StatusBadRequest, a.post(path+"/name", url.Values{"name": {" "}}).status)
	assert.Equal(t, http.StatusBadRequest, a.post(path+"/name", url.Values{"name": {strings.Repeat("x", 121)}}).status)
}

// A caution names the field as the form does, not by its path.
func TestCautionsAreWorded(t *testing.T) {
	a := newApp(t)
	path := a.sample()
	form := a.form(path)
	form.Set("hand.hand_circumference", "26")
	text := a.post(path+"/preview", form).doc().Find(".warnings").Text()
	assert.Contains(t, text, "Hand: 260 mm is outside the usual 150 mm to 250 mm")
	assert.NotContains(t, text, "hand_circumference")
}

// A hand that is not wholly measured is drawn so before there is a plan, too.
func TestFilledLooksFilledWithoutAPlan(t *testing.T) {
	a := newApp(t)
	at := a.sample()
	after, _ := a.get(at).doc().Find(`input[name="after"]`).Attr("value")
	made := a.post(at, url.Values{"after": {after}, "gauge.swatches[0].stitches": {""}, "hand.thumb_circumference": {""}})
	require.Equal(t, http.StatusSeeOther, made.status)
	doc := a.get(at).doc()
	assert.Equal(t, 1, doc.Find(".in-the-way").Length())
	assert.Equal(t, 2, doc.Find(".drawing .tape.filled").Length(), "the thumb, and the palm with it")
	assert.Contains(t, doc.Find(`[data-filled-for="hand.thumb_circumference"]`).Text(), "0.34 of the hand circumference")
}
