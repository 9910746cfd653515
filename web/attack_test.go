package web

import (
	"bufio"
	"bytes"
	"fmt"
	"io"
	"mime/multipart"
	"net"
	"net/http"
	"net/http/httptest"
	"net/netip"
	"net/textproto"
	"strings"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"golang.org/x/time/rate"

	"thenar/internal/app"
)

// The table of these attacks is attacks.md.

// raw sends bytes as they are, and reads the answer as far as it goes.
func (a *served) raw(text string) string {
	a.t.Helper()
	return sendRaw(a.t, a.server.Listener.Addr().String(), text)
}

func sendRaw(t testing.TB, address, text string) string {
	t.Helper()
	c, err := net.Dial("tcp", address)
	require.NoError(t, err)
	defer c.Close()
	_, err = io.WriteString(c, text)
	require.NoError(t, err)
	got, _ := io.ReadAll(c) // the other side closes, or resets what it doesn't want
	return string(got)
}

// A path leads nowhere but to the files that belong to the pages.
func TestAttackPathTraversal(t *testing.T) {
	a := newApp(t)
	for _, path := range []string{
		"/static/x/../../go.mod", "/static/x/..%2f..%2fgo.mod", "/static/x/%2e%2e/%2e%2e/etc/passwd", "/static/x//etc/passwd", "/static/../../../etc/passwd",
		`/static/x/..\..\go.mod`, "/static/x/css/..%00/base.css", "/static/x/.", "/mitts/../../etc/passwd", "/mitts/1%2f..%2f..%2fetc/passwd/print", "/static/x/embed.go",
	} {
		got := a.raw("GET " + path + " HTTP/1.1\r\nHost: 127.0.0.1\r\nConnection: close\r\n\r\n")
		status, _, _ := strings.Cut(got, "\r\n")
		assert.Regexp(t, `^HTTP/1.1 (30[178]|400|404) `, status, path)
		assert.NotContains(t, got, "root:", path)
		assert.NotContains(t, got, "module thenar", path)
	}
}

// A body that is larger than what it is for is cut off with a sentence, and a
// header before anything is looked at.
func TestAttackOversized(t *testing.T) {
	a := newApp(t)
	at := a.class()
	a.table(at, tuesday, nil)
	const form = "application/x-www-form-urlencoded"
	for path, most := range map[string]int{
		"/mitts": maxForm, "/mitts/1": maxForm, "/mitts/1/preview": maxForm, "/mitts/1/name": maxForm, "/mitts/1/history": maxForm, "/mitts/1/needles": maxForm,
		"/mitts/1/begin": maxForm, "/mitts/1/repeats": maxForm, "/mitts/1/repeats/0": maxForm, "/mitts/1/yarns": maxForm, "/mitts/1/what-if": maxForm, "/mitts/1/print": maxForm, "/classes": maxForm, "/classes/1": maxForm, "/classes/1/students": maxForm, "/classes/1/students/1": maxForm, "/classes/1/remarks": maxRemarks,
	} {
		got := a.do(a.request("POST", path, form, "name="+strings.Repeat("x", most)))
		assert.Equal(t, http.StatusBadRequest, got.status, path)
		assert.Contains(t, got.body, "larger than", path)
	}
	for path, most := range map[string]int{"/mitts/1/chart": maxChart, "/motifs": maxChart, "/mitts/1/needles": maxForm} {
		got := a.stroke(path, `{"key":"`+strings.Repeat("x", most)+`"}`)
		assert.Equal(t, http.StatusBadRequest, got.status, path)
	}
	got := a.raw("GET / HTTP/1.1\r\nHost: 127.0.0.1\r\nX-Long: " + strings.Repeat("x", 2<<20) + "\r\n\r\n")
	assert.NotContains(t, got, "200 OK")
	server := bounded(a.handler, headerTime)
	assert.Equal(t, 1<<16, server.MaxHeaderBytes)
}

// Who sends their header or body drop by drop, or nothing at all, is cut off;
// others are served meanwhile.
//
//thenar:race
func TestAttackSlow(t *testing.T) {
	a := newApp(t)
	a.sample()
	ln, err := (&net.ListenConfig{}).Listen(t.Context(), "tcp", "127.0.0.1:0")
	require.NoError(t, err)
	a.handler.slowest.grace = 100 * time.Millisecond
	server := bounded(a.handler, 50*time.Millisecond)
	done := make(chan error, 1)
	go func() { done <- server.Serve(ln) }()
	t.Cleanup(func() {
		require.NoError(t, server.Close())
		require.ErrorIs(t, <-done, http.ErrServerClosed)
	})
	for what, sent := range map[string]string{
		"nothing": "", "half a header": "GET / HTTP/1.1\r\nHost: 127.0.0.1\r\nX-Slow: ",
		"half a form":     "POST /mitts HTTP/1.1\r\nHost: 127.0.0.1\r\nContent-Type: application/x-www-form-urlencoded\r\nContent-Length: 1000\r\n\r\nname=",
		"half a stroke":   "POST /mitts/1/chart HTTP/1.1\r\nHost: 127.0.0.1\r\nContent-Type: application/json\r\nContent-Length: 1000\r\n\r\n{",
		"chunks that end": "POST /mitts HTTP/1.1\r\nHost: 127.0.0.1\r\nContent-Type: application/x-www-form-urlencoded\r\nTransfer-Encoding: chunked\r\n\r\n5\r\nname=\r\n",
	} {
		got := sendRaw(t, ln.Addr().String(), sent) // which returns only when the server hangs up
		if strings.HasPrefix(sent, "POST") {
			assert.Regexp(t, `^HTTP/1.1 413 `, got, what)
			assert.Contains(t, got, late, what)
		} else {
			assert.NotContains(t, got, "200 OK", what)
		}
	}
	ok := sendRaw(t, ln.Addr().String(), "GET /status HTTP/1.1\r\nHost: 127.0.0.1\r\nConnection: close\r\n\r\n")
	assert.Contains(t, ok, "mitts 1", "nothing was made of the halves")
}

// Guessing is slowed for who guesses, whatever they send then, and for nobody
// else; after a while they may try again.
//
//thenar:race
func TestAttackGuessedKeys(t *testing.T) {
	now := time.Date(2025, 3, 9, 10, 0, 0, 0, time.UTC)
	g := guests{now: func() time.Time { return now }, wrong: map[netip.Addr]*rate.Limiter{}}
	for range wrongAtOnce {
		require.False(t, g.held("192.168.0.9:1"))
		g.failed("192.168.0.9:1")
	}
	assert.True(t, g.held("192.168.0.9:2"), "from another port as well")
	assert.False(t, g.held("192.168.0.10:1"))
	now = now.Add(wrongPause)
	assert.False(t, g.held("192.168.0.9:1"))
	g.failed("192.168.0.9:1")
	assert.True(t, g.held("192.168.0.9:1"))
	for range wrongAtOnce {
		g.failed("[2001:db8::1]:1")
	}
	assert.True(t, g.held("[2001:db8::ffff]:9"), "one who owns many addresses of version 6")
	for i := range 3 * maxGuests {
		g.failed(fmt.Sprintf("10.%d.%d.1:1", i/250, i%250))
	}
	assert.LessOrEqual(t, len(g.wrong), maxGuests)

	const key = "ABCDEFGHIJKLMNOPQRSTUVWXYZ"
	a := newApp(t)
	app := New(app.New(a.store), io.Discard, Door{Key: key})
	token, err := a.store.LetIn(t.Context(), "phone")
	require.NoError(t, err)
	ask := func(from, path, token string) *httptest.ResponseRecorder {
		r := httptest.NewRequest("GET", path, nil)
		r.Host, r.RemoteAddr = "192.168.0.7:8420", from
		if token != "" {
			r.AddCookie(&http.Cookie{Name: cookie, Value: token})
		}
		w := httptest.NewRecorder()
		app.ServeHTTP(w, r)
		return w
	}
	for i := range wrongAtOnce {
		w := ask("192.168.0.9:1", fmt.Sprintf("/?key=%d", i), "")
		require.Equal(t, http.StatusForbidden, w.Code)
	}
	held := ask("192.168.0.9:1", "/?key="+key, "")
	assert.Equal(t, http.StatusTooManyRequests, held.Code, "or guessing on would not be slowed")
	assert.Equal(t, "10", held.Header().Get("Retry-After"))
	assert.Equal(t, http.StatusOK, ask("192.168.0.9:1", "/", token).Code, "a device that is known is not held up")
	assert.Equal(t, http.StatusOK, ask("192.168.0.11:1", "/?key="+key, "").Code)
	gone := ask("192.168.0.12:1", "/", "stale")
	assert.Equal(t, -1, gone.Result().Cookies()[0].MaxAge, "a cookie that is no longer known is taken back")
}

// Other sites can't frame a page, read it, or have a file of ours taken for
// something else.
func TestAttackFromOtherSites(t *testing.T) {
	a := newApp(t)
	page := a.get(a.sample())
	for name, want := range map[string]string{
		"X-Frame-Options": "DENY", "X-Content-Type-Options": "nosniff", "Cross-Origin-Resource-Policy": "same-origin",
		"Cross-Origin-Opener-Policy": "same-origin", "Referrer-Policy": "same-origin", "Cache-Control": "no-store",
	} {
		assert.Equal(t, want, page.header.Get(name), name)
	}
	assert.NotContains(t, page.header.Get("Content-Security-Policy"), "unsafe")
	assert.Contains(t, page.header.Get("Content-Security-Policy"), "frame-ancestors 'none'")
	assert.Empty(t, page.header.Get("Access-Control-Allow-Origin"))
	for _, path := range []string{"/status/backup", "/status/check", "/import", "/mitts/1/chart", "/mitts/1", "/classes"} {
		for _, kind := range []string{"application/x-www-form-urlencoded", "text/plain", "application/json"} {
			req := a.request("POST", path, kind, "sample=1")
			req.Header.Set("Origin", "https://evil.example")
			assert.Equal(t, http.StatusForbidden, a.do(req).status, path)
		}
	}
}

// The name of a file that is sent is never used, and what is in it is taken
// only for what it should be.
func TestAttackFiles(t *testing.T) {
	a := newApp(t)
	at := a.sample()
	send := func(path, field, name, kind string, content []byte, more map[string]string) answer {
		t.Helper()
		var b bytes.Buffer
		form := multipart.NewWriter(&b)
		for key, value := range more {
			require.NoError(t, form.WriteField(key, value))
		}
		part, err := form.CreatePart(textproto.MIMEHeader{
			"Content-Disposition": {fmt.Sprintf("form-data; name=%q; filename=%q", field, name)}, "Content-Type": {kind},
		})
		require.NoError(t, err)
		_, err = part.Write(content)
		require.NoError(t, err)
		require.NoError(t, form.Close())
		return a.do(a.request("POST", path, form.FormDataContentType(), b.String()))
	}
	try := map[string]string{"key": "k", "date": "2025-03-09", "side": "right", "section": "gusset", "round": "8", "note": "x"}
	const svg = `<svg xmlns="http://www.w3.org/2000/svg" onload="alert(1)"><script>alert(1)</script></svg>`
	for name, content := range map[string]string{
		"../../x.jpg": svg, `"><script>alert(1)</script>.png`: "<html><script>alert(1)</script>", "a.jpg": "\xff\xd8\xff\xe0" + svg,
	} {
		got := send(at+"/tries", "photo", name, "image/jpeg", []byte(content), try)
		assert.Equal(t, http.StatusBadRequest, got.status, name)
		assert.Contains(t, got.body, "photo", name)
		assertHarmless(t, got)
	}
	got := send("/import", "file", `../../"><script>alert(1)</script>.json`, "application/json", []byte(`{"format": "thenar/export@1", "<script>alert(1)</script>": 1}`), nil)
	assert.Equal(t, http.StatusBadRequest, got.status)
	assert.Contains(t, got.doc().Find("[role=alert]").Text(), "is not known here")
	assertHarmless(t, got)
	huge := []byte("\x89PNG\r\n\x1a\n\x00\x00\x00\rIHDR\x00\x01\x00\x00\x00\x01\x00\x00\x08\x06\x00\x00\x00\x00\x00\x00\x00")
	assert.Equal(t, http.StatusBadRequest, send(at+"/tries", "photo", "bomb.png", "image/png", huge, try).status, "4 thousand million dots in 33 bytes")
	deep := []byte(`{"format": "thenar/export@1", "mitts": ` + strings.Repeat("[", 200_000) + strings.Repeat("]", 200_000) + "}")
	assert.Equal(t, http.StatusBadRequest, send("/import", "file", "deep.json", "application/json", deep, nil).status)
	assert.Equal(t, http.StatusBadRequest, a.post("/import", nil).status)
	class := a.class()
	for path, field := range map[string]string{at + "/tries": "photo", "/import": "file", class + "/table": "file"} {
		body := "--b\r\nContent-Disposition: form-data; name=" + field + "; filename=x\r\n" + strings.Repeat("X: y\r\n", 100_000) + "\r\nz\r\n--b--\r\n"
		got := a.do(a.request("POST", path, "multipart/form-data; boundary=b", body))
		assert.Equal(t, http.StatusBadRequest, got.status, path)
		assert.Contains(t, got.body, "more parts and headers", path)
	}
}

// A table that is meant for a spreadsheet holds no cell that one would run.
func TestAttackTables(t *testing.T) {
	a := newApp(t)
	at := a.sample()
	require.Equal(t, http.StatusOK, a.stroke(at+"/chart", `{"after":1,"edits":[{"section":"gusset","round":3,"column":"","layer":"note","value":"=HYPERLINK(1)"}]}`).status)
	lines := bufio.NewScanner(strings.NewReader(a.get(at + "/chart.csv").body))
	for lines.Scan() {
		for _, cell := range strings.Split(lines.Text(), ",") {
			assert.NotRegexp(t, `^"?[=+\-@\t\r]`, cell)
		}
	}
	class := a.class()
	got := a.table(class, "name\thand\n=HYPERLINK(\"http://evil.example\")\t18\n@SUM(1)\t19\n+1\t20\nAda\t18\n", nil)
	assert.NotContains(t, got.doc().Find(".class-table").Text(), "HYPERLINK")
	assert.Contains(t, got.doc().Find("#read").Text(), "formula")
}
