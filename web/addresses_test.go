package web

import (
	"net/http"
	"net/url"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// The addresses that a mitt's pages had before each desk had one of its own,
// and where each leads. %M is the address of a mitt.
var earlier = []struct {
	from, to, why string
}{
	{"%M", "%M/desk/fit", "a planned mitt that this browser never saw"},
	{"%M?why=link", "%M/desk/fit?why=link", "a query is kept, whatever it is"},

	// One chart of several, or another drawing of it, was asked for on the one page.
	{"%M?view=hand", "%M/desk/chart?view=hand", "a section's chart"},
	{"%M?view=hand&layout=columns", "%M/desk/chart?view=hand&layout=columns", "in upright columns"},
	{"%M?view=hand&middle=A3", "%M/desk/chart?view=hand&middle=A3", "the tube turned"},
	{"%M?cells=square", "%M/desk/chart?cells=square", "square cells"},

	{"%M/needles", "%M/desk/knit", "round by round"},
	{"%M/needles?side=left", "%M/desk/knit?side=left", "the other hand"},
	{"%M/tries", "%M/desk/try", "all tries"},
	{"%M/tries?side=left", "%M/desk/try?side=left", "of the other hand"},
	{"%M/tries?beside=1&beside=2", "%M/desk/try?beside=1&beside=2", "two beside each other"},
	{"%M/print", "%M/desk/pattern", "the handout"},
	{"%M/print?paper=letter&scale=2", "%M/desk/pattern?paper=letter&scale=2", "as it was laid out"},
}

// Addresses that are no desk, and stay what they were.
var untouched = []string{
	"/", "/status", "/classes", "/motifs",
	"%M/history", "%M/what-if", "%M/yarns", "%M/wall", "%M/sizes", "%M/chart", "%M/strips", "%M/chart.svg", "%M/chart.csv", "%M/words.txt",
	"%M/print.pdf", "%M/wall.pdf", "%M/sizes.pdf", "%M/sheet.json", "%M/export.json",
}

// What a plain form sent to an address of a mitt leads to.
var earlierForms = []struct {
	to    string
	form  url.Values
	leads string
}{
	{"%M/needles", url.Values{"side": {"left"}, "nth": {"0"}}, "%M/desk/knit?side=left"},
	{"%M/second", url.Values{"side": {"left"}, "second": {"anew"}}, "%M/desk/knit?side=left"},
	{"%M/print", url.Values{"print": {"paper=letter"}}, "%M/desk/pattern"},
	{"%M/tries", url.Values{"key": {"a"}, "date": {"2025-03-09"}, "side": {"right"}, "section": {"hand"}, "round": {"4"}, "feel.cuff": {"1"}}, "%M/tries/1"},
	{"%M/habits", nil, "%M/desk/try#habits"},
	{"%M/name", url.Values{"name": {"Rust"}}, "/"},
	{"%M/name", url.Values{"name": {"Rust"}, "to": {"chart"}}, "%M/desk/chart"},
	{"%M/name", url.Values{"name": {"Rust"}, "to": {"//elsewhere"}}, "/"},
	{"%M/hand", url.Values{"side": {"left"}, "to": {"knit"}}, "%M/desk/knit?side=left"},
	{"%M/hand", url.Values{"side": {"right"}, "to": {"//elsewhere"}}, "%M"},
	{"%M/copy", nil, "/mitts/2"},
	{"%M/begin", url.Values{"name": {"Next"}}, "/mitts/3"},
	{"%M/archive", url.Values{"archived": {"true"}}, "/"},
}

// Each address from before the desks leads to where its page is now, with its
// query; the others answer as they did.
func TestEarlierAddresses(t *testing.T) {
	a := newApp(t)
	mitt := a.sample()
	at := func(address string) string { return strings.ReplaceAll(address, "%M", mitt) }
	ask := func(address string) answer { return a.do(a.request("GET", at(address), "", "")) }
	for _, e := range earlier {
		got := ask(e.from)
		assert.Equal(t, http.StatusSeeOther, got.status, "%s: %s", e.from, e.why)
		assert.Equal(t, at(e.to), got.header.Get("Location"), "%s: %s", e.from, e.why)
		assert.Equal(t, http.StatusOK, ask(e.to).status, e.to)
	}
	for _, address := range untouched {
		assert.Equal(t, http.StatusOK, ask(address).status, address)
	}
	for _, address := range []string{"%M/desk/loom", "%M/desk/Fit", "%M/desk/", "%M/desk", "/mitts/99", "/mitts/99/desk/fit", "/mitts/99/print", "/mitts/0/desk/fit", "/mitts/x"} {
		got := ask(address)
		if to := got.header.Get("Location"); to != "" {
			got = ask(to)
		}
		assert.Equal(t, http.StatusNotFound, got.status, address)
		assert.Empty(t, got.header.Get("Set-Cookie"), "%s: nothing was seen", address)
	}
	req := a.request("GET", mitt+"/needles?side=left", "", "")
	req.Header.Set("Accept", "application/json")
	assert.Contains(t, a.do(req).body, `"nth":0`, "a script is told where the knitting stands, as before")
}

// Each form that was sent to an address of a mitt still is, and leads on to a
// desk.
func TestEarlierForms(t *testing.T) {
	a := newApp(t)
	mitt := a.sample()
	at := func(address string) string { return strings.ReplaceAll(address, "%M", mitt) }
	numbers := a.post(mitt, a.form(mitt))
	assert.Equal(t, http.StatusSeeOther, numbers.status)
	assert.Equal(t, mitt, numbers.header.Get("Location"), "and from there to the desk of this browser")
	for _, s := range earlierForms {
		got := a.post(at(s.to), s.form)
		assert.Equal(t, http.StatusSeeOther, got.status, "%s: %s", s.to, got.body)
		assert.Equal(t, at(s.leads), got.header.Get("Location"), s.to)
	}
}

// The address of a mitt leads to the desk at which the work is: Fit until there
// is a plan, and Knit once a hand is on the needles; but each browser finds
// every mitt where it left it.
func TestTheDeskThatOpens(t *testing.T) {
	a := newApp(t)
	planned, knitting := a.sample(), a.sample()
	blank := a.post("/mitts", url.Values{}).header.Get("Location")
	require.Equal(t, http.StatusSeeOther, a.post(knitting+"/needles", url.Values{"side": {"right"}, "nth": {"3"}}).status)
	cookies := map[string]*http.Cookie{}
	for _, name := range deskNames {
		set := (&http.Response{Header: a.desk(planned, name).header}).Cookies()
		require.Len(t, set, 1)
		cookies[name] = set[0]
		assert.Equal(t, planned, set[0].Path, "it is sent to the pages of this mitt only")
		assert.True(t, set[0].HttpOnly)
		assert.Equal(t, http.SameSiteLaxMode, set[0].SameSite)
		assert.Greater(t, set[0].MaxAge, 300*24*3600, "a winter later it is still there")
	}
	cookies["loom"] = &http.Cookie{Name: lastDesk, Value: "loom"}
	for _, c := range []struct{ mitt, query, last, opens string }{
		{blank, "", "", "fit"},
		{blank, "", "chart", "fit"},
		{blank, "?view=hand", "", "chart"},
		{planned, "", "", "fit"},
		{planned, "", "chart", "chart"},
		{planned, "", "pattern", "pattern"},
		{planned, "", "try", "try"},
		{planned, "", "loom", "fit"},
		{planned, "?view=hand", "knit", "chart"},
		{knitting, "", "", "knit"},
		{knitting, "", "loom", "knit"},
		{knitting, "", "chart", "chart"},
	} {
		req := a.request("GET", c.mitt+c.query, "", "")
		if c.last != "" {
			req.AddCookie(cookies[c.last])
		}
		assert.Equal(t, c.mitt+"/desk/"+c.opens+c.query, a.do(req).header.Get("Location"), "%+v", c)
	}
}

// Only a page that is looked at counts as seen: not one that a script reads, or
// that a browser fetches ahead.
func TestADeskThatNobodySaw(t *testing.T) {
	a := newApp(t)
	mitt := a.sample()
	for _, c := range []struct {
		header, value string
		seen          bool
	}{
		{"Sec-Fetch-Dest", "document", true}, {"Sec-Fetch-Dest", "empty", false}, {"Sec-Purpose", "prefetch", false}, {"Sec-Fetch-Dest", "iframe", false},
	} {
		req := a.request("GET", mitt+"/desk/chart", "", "")
		req.Header.Set(c.header, c.value)
		assert.Equal(t, c.seen, a.do(req).header.Get("Set-Cookie") != "", "%+v", c)
	}
}
