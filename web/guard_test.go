package web

import (
	"context"
	"net/http"
	"net/http/httptest"
	"net/url"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
)

// A page on the web that points its own name at this machine is refused.
func TestForeignHostIsRefused(t *testing.T) {
	a := newApp(t)
	for host, want := range map[string]int{
		"evil.example": http.StatusMisdirectedRequest, "evil.example:8420": http.StatusMisdirectedRequest,
		"127.0.0.1.evil.example": http.StatusMisdirectedRequest, "192.168.0.7:8420": http.StatusMisdirectedRequest, "": http.StatusMisdirectedRequest,
		"127.0.0.1:x": http.StatusMisdirectedRequest, "127.0.0.1:": http.StatusMisdirectedRequest, "localhost:-1": http.StatusMisdirectedRequest,
		"127.0.0.1:65536": http.StatusMisdirectedRequest, "localhost:80,evil.example": http.StatusMisdirectedRequest, "[::1]:x": http.StatusMisdirectedRequest,
		"127.0.0.1:8420": http.StatusOK, "localhost:8420": http.StatusOK, "localhost": http.StatusOK, "[::1]:8420": http.StatusOK,
	} {
		req := a.request("GET", "/", "", "")
		req.Host = host
		if host == "" {
			req.Host = "."
		}
		assert.Equal(t, want, a.do(req).status, host)
	}
}

func TestCrossSiteWriteIsRefused(t *testing.T) {
	a := newApp(t)
	for _, header := range [][2]string{{"Sec-Fetch-Site", "cross-site"}, {"Origin", "https://evil.example"}} {
		req := a.request("POST", "/mitts", "application/x-www-form-urlencoded", "sample=1")
		req.Header.Set(header[0], header[1])
		assert.Equal(t, http.StatusForbidden, a.do(req).status)
	}
	assert.Contains(t, a.get("/status").body, "mitts 0")
}

func TestHeadersAndCaching(t *testing.T) {
	a := newApp(t)
	at := a.sample()
	for _, name := range deskNames {
		page := a.desk(at, name)
		assert.Equal(t, "no-store", page.header.Get("Cache-Control"), name)
		for _, part := range []string{"default-src 'none'", "font-src 'self'"} {
			assert.Contains(t, strings.Split(page.header.Get("Content-Security-Policy"), "; "), part, name)
		}
		assert.Zero(t, page.doc().Find("[style], style, script:not([src]):not([type='application/json'])").Length(), "%s: no inline style or script", name)
	}
	page := a.desk(at, "fit")
	href := page.doc().Find(`link[rel="stylesheet"]`).First().AttrOr("href", "")
	css := a.get(href)
	assert.Equal(t, http.StatusOK, css.status)
	assert.Contains(t, css.header.Get("Cache-Control"), "immutable")
	assert.Equal(t, http.StatusBadRequest, a.get("/static/x/../../go.mod").status)
	assert.Equal(t, http.StatusNotFound, a.get("/static/x/js/").status)
	assert.NotContains(t, a.get(strings.Replace(href, "/static/", "/static/old", 1)).header.Get("Cache-Control"), "immutable")
}

func TestNotHere(t *testing.T) {
	a := newApp(t)
	for _, path := range []string{"/mitts/1", "/mitts/99999999999999999999", "/mitts/x", "/mitts/-1", "/mitts/1/desk/fit", "/mitts/1/desk/chart", "/mitts/1/desk/pattern", "/mitts/1/desk/knit", "/mitts/1/desk/try", "/mitts/1/desk/x", "/mitts/1/chart", "/mitts/1/strips", "/mitts/1/print", "/mitts/1/sheet.json", "/nowhere"} {
		assert.Equal(t, http.StatusNotFound, a.get(path).status, path)
	}
	assert.Equal(t, http.StatusNotFound, a.post("/mitts/7/preview", url.Values{}).status)
	assert.Equal(t, http.StatusNotFound, a.desk(a.sample(), "elbow").status)
	assert.Equal(t, http.StatusMethodNotAllowed, a.get("/mitts").status)
}

func TestBadForms(t *testing.T) {
	a := newApp(t)
	path := a.sample()
	form := a.form(path)
	with := func(name, value string) url.Values {
		f := url.Values{}
		for k, v := range form {
			f[k] = v
		}
		f.Set(name, value)
		return f
	}
	for name, f := range map[string]url.Values{
		"unknown field": with("hand.elbow", "9"), "side": with("side", "middle"), "long text": with("length.cuff", strings.Repeat("9", 201)),
		"control": with("length.cuff", "1\x00"), "revision": with("after", "soon"), "no name": with("name", ""),
		"twice": {"after": {"1", "2"}},
	} {
		assert.Equal(t, http.StatusBadRequest, a.post(path, f).status, name)
	}
	large := a.post(path, with("length.cuff", strings.Repeat("9", maxForm+1)))
	assert.Equal(t, http.StatusBadRequest, large.status)
	assert.Contains(t, large.doc().Text(), "larger than")
	assert.Contains(t, a.get(path+"/print?paper=a5").doc().Find(".print-form").Text(), "choose a4 or letter")
	assert.Equal(t, form, a.form(path), "nothing was saved")
}

// Paper comes as pages of its size, with plan, chart and words.
func TestPrint(t *testing.T) {
	a := newApp(t)
	path := a.sample()
	for paper, want := range map[string][2]string{"": {"210mm", "297mm"}, "a4": {"210mm", "297mm"}, "letter": {"215.9mm", "279.4mm"}} {
		doc := a.get(path + "/print?paper=" + paper).doc()
		sheets := doc.Find(".sheet > svg")
		assert.GreaterOrEqual(t, sheets.Length(), 3)
		assert.Equal(t, want[0], sheets.First().AttrOr("width", ""))
		assert.Equal(t, want[1], sheets.First().AttrOr("height", ""))
		for _, text := range []string{"Marit’s reading mitts", "Chart of the thumb gusset", "make one leaning left", "Cast on 36 stitches"} {
			assert.Contains(t, doc.Text(), text)
		}
	}
	empty := a.post("/mitts", url.Values{}).header.Get("Location")
	for of, want := range map[string]int{"/print": http.StatusOK, "/print.pdf": http.StatusBadRequest} {
		answer := a.get(empty + of)
		assert.Equal(t, want, answer.status, of)
		assert.Contains(t, answer.doc().Find(".message").Text(), "no plan to print yet", of)
	}
}

// Who turns away while an answer is made is no failure of this side: newApp
// looks at the log.
func TestTurnedAway(t *testing.T) {
	a := newApp(t)
	path := a.sample()
	ctx, cancel := context.WithCancel(context.Background())
	cancel()
	req := httptest.NewRequestWithContext(ctx, http.MethodGet, "http://127.0.0.1"+path, nil)
	a.handler.ServeHTTP(httptest.NewRecorder(), req)
}

// A page of another site that points pictures, frames, scripts or prefetches at
// an address starts no work there, though it could not read the answer; a link
// that a person follows from there does. A browser of the local network, which
// says nothing of where it comes from, is not held up. The names are those of
// Fetch Metadata Request Headers (W3C).
func TestOtherSitesStartNothing(t *testing.T) {
	a := newApp(t)
	at := a.sample()
	for _, c := range []struct {
		site, mode, dest string
		want             int
	}{
		{"same-origin", "no-cors", "image", http.StatusOK},
		{"same-origin", "cors", "empty", http.StatusOK},
		{"none", "navigate", "document", http.StatusOK},
		{"none", "no-cors", "image", http.StatusOK},
		{"", "", "", http.StatusOK},
		{"cross-site", "navigate", "document", http.StatusOK},
		{"same-site", "navigate", "document", http.StatusOK}, // another port of this machine
		{"cross-site", "no-cors", "image", http.StatusForbidden},
		{"cross-site", "navigate", "iframe", http.StatusForbidden},
		{"cross-site", "navigate", "embed", http.StatusForbidden},
		{"cross-site", "cors", "empty", http.StatusForbidden},
		{"cross-site", "no-cors", "document", http.StatusForbidden},
		{"same-site", "no-cors", "image", http.StatusForbidden},
		{"cross-site", "", "", http.StatusForbidden},
		{"another-site", "no-cors", "image", http.StatusForbidden},
	} {
		paths := []string{"/desk/fit", "", "/desk/pattern", "/sheets?from=0", "/strips", "/print.pdf", "/chart.png", "/export.json"}
		if c.want == http.StatusOK {
			paths = paths[:1]
		}
		for _, path := range paths {
			req := a.request("GET", at+path, "", "")
			for name, value := range map[string]string{"Sec-Fetch-Site": c.site, "Sec-Fetch-Mode": c.mode, "Sec-Fetch-Dest": c.dest} {
				if value != "" {
					req.Header.Set(name, value)
				}
			}
			got := a.do(req)
			assert.Equal(t, c.want, got.status, "%+v %s", c, path)
			if c.want == http.StatusForbidden {
				assert.Contains(t, got.body, "Another site")
			}
		}
	}
}

// A page of another site can have an address of ours fetched ahead by rules of
// its own (Speculation Rules, WICG; Sec-Purpose, Fetch standard): it navigates
// to a document, but nobody followed a link.
func TestOtherSitesFetchNothingAhead(t *testing.T) {
	a := newApp(t)
	at := a.sample()
	for _, c := range []struct {
		site, header, purpose string
		want                  int
	}{
		{"cross-site", "Sec-Purpose", "prefetch", http.StatusForbidden},
		{"cross-site", "Sec-Purpose", "prefetch;prerender", http.StatusForbidden},
		{"same-site", "Sec-Purpose", "prefetch;anonymous-client-ip", http.StatusForbidden},
		{"cross-site", "Purpose", "prefetch", http.StatusForbidden}, // as browsers named it before
		{"same-origin", "Sec-Purpose", "prefetch", http.StatusOK},
		{"none", "Sec-Purpose", "prefetch;prerender", http.StatusOK}, // while an address is typed
		{"cross-site", "Sec-Purpose", "", http.StatusOK},
	} {
		req := a.request("GET", at+"/desk/pattern", "", "")
		req.Header.Set("Sec-Fetch-Site", c.site)
		req.Header.Set("Sec-Fetch-Mode", "navigate")
		req.Header.Set("Sec-Fetch-Dest", "document")
		req.Header.Set(c.header, c.purpose)
		assert.Equal(t, c.want, a.do(req).status, "%+v", c)
	}
}
