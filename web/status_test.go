package web

import (
	"bytes"
	"context"
	"encoding/json"
	"fmt"
	"image"
	"image/color"
	"io"
	"mime/multipart"
	"net"
	"net/http"
	"net/http/httptest"
	"net/url"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"time"

	"github.com/makiuchi-d/gozxing"
	"github.com/makiuchi-d/gozxing/qrcode"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"thenar/internal/app"
	"thenar/internal/store"
	"thenar/web/view"
)

// browse asks as a browser does.
func (a *served) browse(path string) answer {
	a.t.Helper()
	req := a.request("GET", path, "", "")
	req.Header.Set("Accept", "text/html,application/xhtml+xml;q=0.9,*/*;q=0.8")
	return a.do(req)
}

// sendFile sends one file as a form does.
func (a *served) sendFile(path, name string, content []byte) answer {
	a.t.Helper()
	var b bytes.Buffer
	form := multipart.NewWriter(&b)
	part, err := form.CreateFormFile("file", name)
	require.NoError(a.t, err)
	_, err = part.Write(content)
	require.NoError(a.t, err)
	require.NoError(a.t, form.Close())
	return a.do(a.request("POST", path, form.FormDataContentType(), b.String()))
}

// The page of safe keeping tells how the database does, makes a backup and
// looks through the file when asked.
func TestStatus(t *testing.T) {
	a := newApp(t)
	a.sample()
	assert.Regexp(t, `^up\nschema \d+\nmitts 1\nclasses 0\nbytes [1-9]\d+\nwhole true\nbackup none\n$`, a.get("/status").body)
	page := a.browse("/status").doc()
	assert.Contains(t, page.Find(".facts").Text(), "1 mitt, 0 classes")
	assert.Contains(t, page.Find(".good").Text(), "whole")
	assert.Contains(t, page.Find("#device").Text(), "Only this computer")
	made := a.post("/status/backup", nil)
	require.Equal(t, http.StatusSeeOther, made.status)
	page = a.browse("/status").doc()
	assert.Equal(t, 1, page.Find("#backups tbody tr").Length())
	assert.Contains(t, page.Find("#backups pre").Text(), "thenar restore")
	kept, err := a.store.Backups()
	require.NoError(t, err)
	copied, err := store.Open(t.Context(), kept[0].Path)
	require.NoError(t, err)
	list, err := copied.List(t.Context())
	require.NoError(t, err)
	assert.Len(t, list, 1)
	require.NoError(t, copied.Close())
	assert.Equal(t, http.StatusSeeOther, a.post("/status/check", nil).status)
	assert.NotContains(t, a.get("/status").body, "backup none")
}

// A mitt, a class and everything leave as files, and come back once.
func TestMoveHouse(t *testing.T) {
	from := newApp(t)
	class := from.class()
	from.table(class, tuesday, nil)
	require.Equal(t, http.StatusOK, from.stroke("/mitts/1/chart", `{"after":1,"edits":[`+paintPurl+`]}`).status)
	all := from.get("/export.json")
	require.Equal(t, http.StatusOK, all.status)
	assert.Regexp(t, `^attachment; filename=thenar-[0-9-]+\.json$`, all.header.Get("Content-Disposition"))
	assert.Equal(t, `attachment; filename*=utf-8''Marit%E2%80%99s%20reading%20mitts.json`, from.get("/mitts/1/export.json").header.Get("Content-Disposition"))
	assert.Equal(t, "application/json", all.header.Get("Content-Type"))

	to := newApp(t)
	got := to.sendFile("/import", "all.json", []byte(all.body))
	require.Equal(t, http.StatusOK, got.status)
	assert.Equal(t, 2, got.doc().Find(".arrived li").Length())
	assert.Contains(t, got.doc().Find(".arrived").Text(), "Marit’s reading mitts: new")
	assert.Equal(t, from.get("/mitts/1/chart").body, to.get("/mitts/1/chart").body)
	assert.Equal(t, from.get("/mitts/1/words.txt").body, to.get("/mitts/1/words.txt").body)
	assert.Equal(t, from.get(class).doc().Find(".class-table").Text(), to.get(class).doc().Find(".class-table").Text())
	for _, part := range []string{"/mitts/1/export.json", class + "/export.json"} {
		again := to.sendFile("/import", "part.json", []byte(from.get(part).body))
		require.Equal(t, http.StatusOK, again.status)
		assert.Contains(t, again.doc().Find(".arrived").Text(), "here already")
	}
	assert.Contains(t, to.get("/status").body, "mitts 1\nclasses 1\n")

	wrong := to.sendFile("/import", "all.json", []byte(strings.Replace(all.body, `"kind": "do"`, `"kind": "dont"`, 1)))
	assert.Equal(t, http.StatusBadRequest, wrong.status)
	assert.Contains(t, wrong.doc().Find("[role=alert]").Text(), "mitts[0].revisions[1].kind")
	assert.Contains(t, to.get("/status").body, "mitts 1\nclasses 1\n", "nothing is changed")
	for _, path := range []string{"/mitts/9/export.json", "/classes/9/export.json"} {
		assert.Equal(t, http.StatusNotFound, to.get(path).status)
	}
}

// The code on the page is the link, as an independent reader reads it.
func TestCodeIsTheLink(t *testing.T) {
	const link = "http://192.168.100.200:8420/?key=ABCDEFGHIJKLMNOPQRSTUVWXYZ"
	page, err := view.NewStatus(app.Status{}, 0, link)
	require.NoError(t, err)
	c := page.Code
	const dot = 4
	img := image.NewGray(image.Rect(0, 0, c.Side*dot, c.Side*dot))
	for i := range img.Pix {
		img.Pix[i] = 255
	}
	for _, square := range strings.Split(strings.TrimSuffix(c.Path, "h1v1h-1z"), "h1v1h-1z") {
		var x, y int
		_, err := fmt.Sscanf(square, "M%d %d", &x, &y)
		require.NoError(t, err)
		for i := range dot * dot {
			img.SetGray(x*dot+i%dot, y*dot+i/dot, color.Gray{})
		}
	}
	bits, err := gozxing.NewBinaryBitmapFromImage(img)
	require.NoError(t, err)
	read, err := qrcode.NewQRCodeReader().Decode(bits, nil)
	require.NoError(t, err)
	assert.Equal(t, link, read.GetText())

	a := newApp(t)
	app := New(app.New(a.store), io.Discard, Door{Key: "k", Link: link})
	token, err := a.store.LetIn(t.Context(), "phone")
	require.NoError(t, err)
	r := httptest.NewRequest("GET", "/status", nil)
	r.Host = "192.168.100.200:8420"
	r.Header.Set("Accept", "text/html")
	r.AddCookie(&http.Cookie{Name: cookie, Value: token})
	w := httptest.NewRecorder()
	app.ServeHTTP(w, r)
	assert.Contains(t, w.Body.String(), c.Path)
	assert.Contains(t, w.Body.String(), link)
}

// A line of the log for each request says what was asked and how it went, and
// nothing that a person wrote; the time of a slow one is marked.
func TestLog(t *testing.T) {
	a := newApp(t)
	var log bytes.Buffer
	app := New(app.New(a.store), &log, Door{Key: "secretkey"})
	token, err := a.store.LetIn(t.Context(), "phone")
	require.NoError(t, err)
	handle, secret, _ := strings.Cut(token, ".")
	ask := func(method, path, body string) {
		r := httptest.NewRequest(method, path, strings.NewReader(body))
		r.Host, r.RemoteAddr = "192.168.0.7:8420", "192.168.0.9:1"
		r.Header.Set("Content-Type", "application/x-www-form-urlencoded")
		r.AddCookie(&http.Cookie{Name: cookie, Value: token})
		app.ServeHTTP(httptest.NewRecorder(), r)
	}
	ask("POST", "/mitts", "name=Annes+mitts")
	ask("GET", "/mitts/1/desk/fit?middle=Annes", "")
	ask("GET", "/mitts/99", "")
	ask("GET", "/"+strings.Repeat("x", 5000), "")
	ask("GET", "/mitts/1?middle=Annes&key=secretkey", "") // which leads on without the key
	ask("GET", "/mitts/1?middle=Annes", "")               // to a desk
	lines := strings.Split(strings.TrimSpace(log.String()), "\n")
	require.Len(t, lines, 6)
	assert.Regexp(t, `level=INFO msg=request method=POST path=/mitts status=303 bytes=0 ms=\d+$`, lines[0])
	assert.Regexp(t, `method=GET path=/mitts/1/desk/fit status=200 bytes=[1-9]\d+ ms=\d+$`, lines[1])
	assert.Contains(t, lines[2], "status=404")
	assert.Less(t, len(lines[3]), 300)
	assert.Contains(t, lines[4], "path=/mitts/1 status=303")
	assert.Contains(t, lines[5], "path=/mitts/1 status=303")
	for _, private := range []string{"Anne", "secret", "192.168.0.9", handle, secret} {
		assert.NotContains(t, log.String(), private)
	}
	assert.Equal(t, "slow request", lineOfRequest(slow))
	assert.Equal(t, "request", lineOfRequest(slow-time.Millisecond))
}

// A server that is told to stop finishes what it has begun: the save that is
// under way is answered and kept, new ones are not taken, and it ends.
//
//thenar:race
func TestStopsGracefully(t *testing.T) {
	path := filepath.Join(t.TempDir(), "thenar.db")
	st, err := store.Open(context.Background(), path)
	require.NoError(t, err)
	ln, err := (&net.ListenConfig{}).Listen(t.Context(), "tcp", "127.0.0.1:0")
	require.NoError(t, err)
	ctx, stop := context.WithCancel(context.Background())
	done := make(chan error, 1)
	go func() { done <- Serve(ctx, ln, app.New(st), io.Discard, Door{}) }()
	ahead, err := net.Dial("tcp", ln.Addr().String())
	require.NoError(t, err)
	defer ahead.Close()
	c, err := net.Dial("tcp", ln.Addr().String())
	require.NoError(t, err)
	defer c.Close()
	body := url.Values{"name": {"The last mitt"}}.Encode()
	_, err = fmt.Fprintf(c, "POST /mitts HTTP/1.1\r\nHost: 127.0.0.1\r\nContent-Type: application/x-www-form-urlencoded\r\nContent-Length: %d\r\nExpect: 100-continue\r\n\r\n", len(body))
	require.NoError(t, err)
	buffer := make([]byte, 1024)
	n, err := c.Read(buffer) // the handler has begun to read the body
	require.NoError(t, err)
	require.Contains(t, string(buffer[:n]), "100 Continue")
	stop()
	require.Eventually(t, func() bool {
		_, err := (&net.Dialer{}).DialContext(t.Context(), "tcp", ln.Addr().String())
		return err != nil
	}, 5*time.Second, 5*time.Millisecond, "nobody new is let in")
	_, err = io.WriteString(c, body)
	require.NoError(t, err)
	rest, err := io.ReadAll(c)
	require.NoError(t, err)
	assert.Contains(t, string(rest), "303 See Other")
	_, err = ahead.Read(buffer)
	assert.ErrorIs(t, err, io.EOF, "who has asked nothing yet is not waited for")
	require.NoError(t, <-done)
	require.NoError(t, st.Close())
	again, err := store.Open(context.Background(), path)
	require.NoError(t, err)
	list, err := again.List(t.Context())
	require.NoError(t, err)
	require.Len(t, list, 1)
	assert.Contains(t, string(list[0].Document), "The last mitt")
	require.NoError(t, again.Close())
	_, err = os.Stat(path + "-wal")
	assert.ErrorIs(t, err, os.ErrNotExist, "the log is folded into the file")
}

// What can't be done now is told with what was sent, to be sent again; a
// script is told when to come back.
func TestNotNow(t *testing.T) {
	a := newApp(t)
	at := a.sample()
	var log bytes.Buffer
	app := New(app.New(a.store), &log, Door{})
	path := movedAway(t, a)
	ask := func(kind, body string) *httptest.ResponseRecorder {
		r := httptest.NewRequest("POST", at+"/name", strings.NewReader(body))
		r.Host = "127.0.0.1"
		r.Header.Set("Content-Type", "application/x-www-form-urlencoded")
		r.Header.Set("Accept", kind)
		w := httptest.NewRecorder()
		app.ServeHTTP(w, r)
		return w
	}
	w := ask("text/html", "name=Winter+%26+%22mitts%22")
	assert.Equal(t, http.StatusServiceUnavailable, w.Code)
	page := answer{t, w.Code, w.Header(), w.Body.String()}
	assert.Contains(t, page.doc().Find(".message").Text(), "was moved or replaced")
	assert.Equal(t, url.Values{"name": {`Winter & "mitts"`}}, page.fields("main form"))
	assert.Equal(t, at+"/name", page.doc().Find("main form").AttrOr("action", ""))
	w = ask("application/json", "name=x")
	assert.Equal(t, retryAfter, w.Header().Get("Retry-After"))
	var said map[string][]string
	require.NoError(t, json.Unmarshal(w.Body.Bytes(), &said))
	assert.Contains(t, said["error"][0], "was moved or replaced")
	shown := a.browse("/status")
	assert.Equal(t, http.StatusServiceUnavailable, shown.status)
	assert.Contains(t, shown.doc().Find(".bad").Text(), "does not work now")
	assert.Contains(t, shown.doc().Find(".message").Text(), "was moved or replaced")
	r := httptest.NewRequest("POST", "/status/backup", nil)
	r.Host = "127.0.0.1"
	w = httptest.NewRecorder()
	app.ServeHTTP(w, r)
	assert.Contains(t, w.Body.String(), "was moved or replaced", "a backup of it would be one of another file")
	assert.Contains(t, log.String(), "can't be done now")
	require.NoError(t, os.Rename(path+".away", path))
	assert.Equal(t, http.StatusSeeOther, ask("text/html", "name=Winter").Code)
}

// A log that was removed under the app: what is sent stays on the page, with
// what happened and what to do, and safe keeping says it, too.
func TestLogGone(t *testing.T) {
	a := newApp(t)
	at := a.sample()
	a.server.Config.Handler = New(app.New(a.store), io.Discard, Door{}) // whose log has it
	st, err := a.store.State(t.Context())
	require.NoError(t, err)
	require.NoError(t, os.Remove(st.Path+"-wal"))
	const says = "thenar.db-wal was removed or replaced while Thenar used it. Start Thenar again."
	got := a.post(at+"/name", url.Values{"name": {"Winter"}})
	assert.Equal(t, http.StatusServiceUnavailable, got.status)
	assert.Contains(t, got.body, says)
	shown := a.browse("/status")
	assert.Equal(t, http.StatusServiceUnavailable, shown.status)
	assert.Contains(t, shown.doc().Find(".message").Text(), says)
	assert.Equal(t, http.StatusServiceUnavailable, a.post("/status/backup", nil).status)
	assert.Equal(t, http.StatusOK, a.get(at).status, "it can still be read")
}

// movedAway moves the database of an app away.
func movedAway(t *testing.T, a *served) string {
	t.Helper()
	st, err := a.store.State(t.Context())
	require.NoError(t, err)
	require.NoError(t, os.Rename(st.Path, st.Path+".away"))
	return st.Path
}
