package web

import (
	"bufio"
	"io"
	"net/http"
	"net/http/httptest"
	"net/url"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"thenar/internal/app"
)

const testKey = "ABCDEFGHIJKLMNOPQRSTUVWXYZ"

// far is an app that other machines reach.
func far(t *testing.T) (*served, *Server) {
	t.Helper()
	a := newApp(t)
	return a, New(app.New(a.store), io.Discard, Door{Key: testKey, Link: "http://192.168.0.7:8420/?key=" + testKey})
}

// askFrom asks as a device near by does, with the cookie that it has.
func askFrom(app http.Handler, method, path, token, agent string, form url.Values) *httptest.ResponseRecorder {
	r := httptest.NewRequest(method, path, strings.NewReader(form.Encode()))
	r.Host = "192.168.0.7:8420"
	r.Header.Set("Content-Type", "application/x-www-form-urlencoded")
	r.Header.Set("Accept", "text/html")
	r.Header.Set("User-Agent", agent)
	if token != "" {
		r.AddCookie(&http.Cookie{Name: cookie, Value: token})
	}
	w := httptest.NewRecorder()
	app.ServeHTTP(w, r)
	return w
}

// What browsers say of themselves, from memory.
const (
	aPhone  = "Mozilla/5.0 (Linux; Android 10; K) AppleWebKit/537.36 (KHTML, like Gecko) Chrome/156.0.0.0 Mobile Safari/537.36"
	aTablet = "Mozilla/5.0 (Linux; Android 10; K) AppleWebKit/537.36 (KHTML, like Gecko) Chrome/156.0.0.0 Safari/537.36"
	anApple = "Mozilla/5.0 (iPhone; CPU iPhone OS 18_5 like Mac OS X) AppleWebKit/605.1.15 (KHTML, like Gecko) Version/18.5 Mobile/15E148 Safari/604.1"
	aLinux  = "Mozilla/5.0 (X11; Linux x86_64; rv:140.0) Gecko/20100101 Firefox/140.0"
	aMac    = "Mozilla/5.0 (Macintosh; Intel Mac OS X 10_15_7) AppleWebKit/605.1.15 (KHTML, like Gecko) Version/18.5 Safari/605.1.15"
	windows = "Mozilla/5.0 (Windows NT 10.0; Win64; x64; rv:140.0) Gecko/20100101 Firefox/140.0"
)

// An app with a key lets in who has it, and still no name that another owns.
func TestAccess(t *testing.T) {
	a, app := far(t)
	token, err := a.store.LetIn(t.Context(), "phone")
	require.NoError(t, err)
	handle, secret, _ := strings.Cut(token, ".")
	for _, c := range []struct {
		what, method, host, path, cookie string
		want                             int
	}{
		{"without the key", "GET", "192.168.0.7:8420", "/", "", http.StatusForbidden},
		{"a script without it", "GET", "192.168.0.7:8420", "/static/x/js/mitt.js", "", http.StatusForbidden},
		{"another key", "GET", "192.168.0.7:8420", "/?key=ABC", "", http.StatusForbidden},
		{"the link", "GET", "192.168.0.7:8420", "/?key=" + testKey, "", http.StatusOK},
		{"a browser that is known", "GET", "192.168.0.7:8420", "/", token, http.StatusOK},
		{"the key is not the token", "GET", "192.168.0.7:8420", "/", testKey, http.StatusForbidden},
		{"nor is the handle", "GET", "192.168.0.7:8420", "/", handle, http.StatusForbidden},
		{"the secret is not the key", "GET", "192.168.0.7:8420", "/?key=" + secret, "", http.StatusForbidden},
		{"this machine too has to know it", "GET", "127.0.0.1:8420", "/", "", http.StatusForbidden},
		{"a name with the key", "GET", "evil.example", "/", token, http.StatusMisdirectedRequest},
		{"a write by the link", "POST", "192.168.0.7:8420", "/mitts?key=" + testKey, "", http.StatusForbidden},
		{"a write that is known", "POST", "192.168.0.7:8420", "/mitts", token, http.StatusSeeOther},
	} {
		r := httptest.NewRequest(c.method, c.path, nil)
		r.Host, r.RemoteAddr = c.host, c.what // none is held up by the others
		if c.cookie != "" {
			r.AddCookie(&http.Cookie{Name: cookie, Value: c.cookie})
		}
		w := httptest.NewRecorder()
		app.ServeHTTP(w, r)
		assert.Equal(t, c.want, w.Code, c.what)
	}
}

// The key leaves the address: by the page that lets in, and on a device that is
// known by a redirect, which is led nowhere else.
func TestKeyLeavesTheAddress(t *testing.T) {
	_, app := far(t)
	in := askFrom(app, "GET", "/mitts/1/chart?view=hand&key="+testKey, "", aPhone, nil)
	require.Equal(t, http.StatusOK, in.Code)
	assert.Equal(t, "0; url=/mitts/1/chart?view=hand", in.Header().Get("Refresh"))
	c := in.Result().Cookies()[0]
	assert.True(t, c.HttpOnly)
	assert.Equal(t, http.SameSiteStrictMode, c.SameSite)
	for path, to := range map[string]string{
		"/?key=" + testKey: "/", "/?key=of-an-earlier-start": "/", "/mitts/1/chart?view=hand&key=" + testKey: "/mitts/1/chart?view=hand",
		"http://192.168.0.7//evil.example/?key=x": "/evil.example/", `http://192.168.0.7/\evil.example/?key=x`: "/%5Cevil.example/",
	} {
		got := askFrom(app, "GET", path, c.Value, aPhone, nil)
		assert.Equal(t, http.StatusSeeOther, got.Code, path)
		assert.Equal(t, to, got.Header().Get("Location"), path)
	}
	assert.Equal(t, http.StatusOK, askFrom(app, "GET", "/", c.Value, aPhone, nil).Code)
}

// The page This computer lists who was let in, lets them be named, and lets one out or
// all, at once.
func TestDevicesOnThePage(t *testing.T) {
	a, app := far(t)
	in := func(agent string) string {
		t.Helper()
		w := askFrom(app, "GET", "/?key="+testKey, "", agent, nil)
		require.Equal(t, http.StatusOK, w.Code)
		return w.Result().Cookies()[0].Value
	}
	phone, desk := in(aPhone), in(aLinux)
	assert.NotEqual(t, phone, desk, "each has a secret of its own")
	page := func(token string) answer {
		t.Helper()
		w := askFrom(app, "GET", "/status", token, aLinux, nil)
		return answer{t, w.Code, w.Header(), w.Body.String()}
	}
	list := page(desk).doc().Find(".devices li")
	require.Equal(t, 2, list.Length())
	assert.Contains(t, list.First().Find("p").Text(), "Linux computer this device")
	assert.Contains(t, list.Last().Find("p").Text(), "Android phone let in today, last here today")
	rename, _ := list.Last().Find("details form").Attr("action")
	out, _ := list.Last().Find("form").First().Attr("action")
	require.NotEqual(t, rename, out)

	assert.Equal(t, http.StatusSeeOther, askFrom(app, "POST", rename, desk, aLinux, url.Values{"name": {" Anne’s <old> phone "}}).Code)
	assert.Contains(t, page(desk).doc().Find(".devices").Text(), "Anne’s <old> phone")
	for _, wrong := range []string{"", " ", "a\nb", strings.Repeat("x", 60+1)} {
		w := askFrom(app, "POST", rename, desk, aLinux, url.Values{"name": {wrong}})
		assert.Equal(t, http.StatusBadRequest, w.Code, wrong)
		assert.Contains(t, w.Body.String(), "name: ")
	}
	assert.Equal(t, http.StatusSeeOther, askFrom(app, "POST", out, desk, aLinux, nil).Code)
	gone := askFrom(app, "GET", "/", phone, aPhone, nil)
	assert.Equal(t, http.StatusForbidden, gone.Code)
	assert.Equal(t, -1, gone.Result().Cookies()[0].MaxAge)
	assert.Equal(t, http.StatusForbidden, askFrom(app, "POST", "/mitts", phone, aPhone, url.Values{"sample": {"1"}}).Code)
	assert.Contains(t, a.get("/status").body, "mitts 0")
	assert.Equal(t, http.StatusNotFound, askFrom(app, "POST", out, desk, aLinux, nil).Code)
	for range 2 * wrongAtOnce {
		askFrom(app, "GET", "/", phone, aPhone, nil)
	}
	again := in(aPhone) // who was let out is not held up as one who guesses
	assert.Equal(t, http.StatusOK, askFrom(app, "GET", "/", again, aPhone, nil).Code)
	assert.Equal(t, http.StatusForbidden, askFrom(app, "GET", "/", phone, aPhone, nil).Code)

	assert.Equal(t, http.StatusSeeOther, askFrom(app, "POST", "/status/devices/out", desk, aLinux, nil).Code)
	for _, token := range []string{desk, again} {
		assert.Equal(t, http.StatusForbidden, askFrom(app, "GET", "/", token, aLinux, nil).Code)
	}
	held := httptest.NewRequest("POST", "/mitts/1/chart", strings.NewReader("{}"))
	held.Host = "192.168.0.7:8420"
	held.Header.Set("Content-Type", "application/json")
	w := httptest.NewRecorder()
	app.ServeHTTP(w, held)
	assert.Equal(t, http.StatusForbidden, w.Code)
	assert.Contains(t, w.Body.String(), `{"error":["Open the link`, "a script can tell it on its page")
}

// Who is let out hears nothing more, also by a line of events that stood open.
//
//thenar:race
func TestLetOutEndsTheLineOfEvents(t *testing.T) {
	a, app := far(t)
	at := a.sample()
	server := httptest.NewServer(app)
	t.Cleanup(server.Close)
	token, err := a.store.LetIn(t.Context(), "phone")
	require.NoError(t, err)
	d, _, err := a.store.FindDevice(t.Context(), token)
	require.NoError(t, err)
	req, err := http.NewRequestWithContext(t.Context(), "GET", server.URL+at+"/chart/events?after=1", nil)
	require.NoError(t, err)
	req.AddCookie(&http.Cookie{Name: cookie, Value: token})
	resp, err := server.Client().Do(req)
	require.NoError(t, err)
	defer resp.Body.Close()
	require.Equal(t, http.StatusOK, resp.StatusCode)
	line := bufio.NewReader(resp.Body)
	breath, err := line.ReadString('\n')
	require.NoError(t, err)
	require.Equal(t, ":\n", breath)
	require.NoError(t, a.store.LetOut(t.Context(), d.ID))
	require.Equal(t, http.StatusOK, a.stroke(at+"/chart", `{"after":1,"edits":[`+paintPurl+`]}`).status)
	rest, err := io.ReadAll(line)
	require.NoError(t, err)
	assert.Equal(t, "\n", string(rest))
}
