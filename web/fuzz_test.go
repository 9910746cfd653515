package web

import (
	"context"
	"io"
	"net/http"
	"net/http/httptest"
	"net/url"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"thenar/internal/app"
	"thenar/internal/store"
)

// fuzzed is an app that is made anew after so many questions, so that what it
// was sent doesn't pile up.
type fuzzed struct {
	dir   string
	store *store.Store
	app   http.Handler
	left  int
}

const questions = 500

func newFuzzed(f *testing.F) *fuzzed {
	z := &fuzzed{}
	f.Cleanup(z.close)
	return z
}

func (z *fuzzed) close() {
	if z.store != nil {
		_ = z.store.Close()
		_ = os.RemoveAll(z.dir)
	}
	z.store, z.left = nil, 0
}

// open begins a class on the sample mitt, in a new file.
func (z *fuzzed) open(t *testing.T) {
	t.Helper()
	z.close()
	var err error
	z.dir, err = os.MkdirTemp("", "thenar")
	require.NoError(t, err)
	z.store, err = store.Open(context.Background(), filepath.Join(z.dir, "thenar.db"))
	require.NoError(t, err)
	z.app, z.left = New(app.New(z.store), io.Discard, Door{}), questions
	const form = "application/x-www-form-urlencoded"
	for _, made := range [][2]string{{"/mitts", "sample=1"}, {"/classes", "name=Tuesday&mitt=1"}, {"/classes/1/students", "name=Ada&hand=18,5"}} {
		require.Equal(t, http.StatusSeeOther, z.send(http.MethodPost, made[0], form, made[1]).Code)
	}
}

func (z *fuzzed) send(method, address, kind, body string) *httptest.ResponseRecorder {
	r := httptest.NewRequest(method, "/", strings.NewReader(body))
	r.URL, _ = url.ParseRequestURI(address)
	r.RequestURI, r.Host = address, "127.0.0.1:8420"
	if kind != "" {
		r.Header.Set("Content-Type", kind)
	}
	w := httptest.NewRecorder()
	z.app.ServeHTTP(w, r)
	return w
}

// ask sends one request past the network and looks at the answer: whatever was
// asked, nothing goes wrong inside.
func (z *fuzzed) ask(t *testing.T, method, address, kind, body string) {
	t.Helper()
	at, err := url.ParseRequestURI(address)
	if err != nil || at.Host != "" || !strings.HasPrefix(address, "/") || strings.HasSuffix(at.Path, "/chart/events") {
		return // no server sees such a line; and a line of events stays open
	}
	if z.left--; z.left < 0 {
		z.open(t)
	}
	w := z.send(method, address, kind, body)
	require.Less(t, w.Code, 500, "%s %q: %.300s", method, address, w.Body.String())
	require.NotEmpty(t, w.Header().Get("Content-Security-Policy"))
	if strings.HasPrefix(w.Header().Get("Content-Type"), "text/html") {
		require.NotContains(t, w.Body.String(), "<script>", "no text of ours is a script")
	}
}

// The addresses of pages and files with anything behind them.
func FuzzAddress(f *testing.F) {
	z := newFuzzed(f)
	for _, seed := range []string{
		"/", "/mitts/1", "/mitts/1/desk/fit", "/mitts/1/desk/chart?view=thumb&layout=columns&middle=A1&cells=square", "/mitts/1/desk/pattern?paper=a4", "/mitts/1/desk/elbow", "/mitts/1?view=thumb&layout=columns&middle=A1&cells=square", "/mitts/1/chart", "/mitts/1/history", "/mitts/1/history/1",
		"/mitts/1/chart.svg?view=hand", "/mitts/1/chart.csv", "/mitts/1/words.txt?section=gusset&from=3&to=7", "/mitts/1/what-if", "/mitts/1/yarns", "/mitts/1/desk/knit?side=left", "/mitts/1/needles?side=left", "/mitts/1/strips?side=left",
		"/mitts/1/desk/try?back=1", "/mitts/1/tries", "/mitts/1/tries/1", "/mitts/1/tries/1/photo", "/mitts/1/desk/pattern?paper=letter&cell=5&pieces=plan,chart&large=1&grey=1&sideways=1&knits=left",
		"/mitts/1/sizes?from=17&to=21&by=0.5", "/mitts/1/wall?cell=12", "/mitts/1/sheet.json", "/mitts/1/export.json", "/classes", "/classes/1", "/classes/1/students/1",
		"/classes/1/print?student=1&double=1", "/classes/1/cost", "/classes/1/export.json", "/paper/measure?paper=letter", "/paper/ruler", "/paper/grid?cell=4&stitches=24&rounds=32",
		"/motifs", "/status", "/static/x/css/base.css", "/static/../go.mod", "/mitts/1/%2e%2e/2", "/mitts/00001", "/?key=abc", "/export.json",
	} {
		f.Add(seed)
	}
	f.Fuzz(func(t *testing.T, address string) { z.ask(t, http.MethodGet, address, "", "") })
}

// The forms of pages with anything in their fields.
func FuzzForm(f *testing.F) {
	z := newFuzzed(f)
	measure := url.Values{"after": {"1"}, "name": {"Mitts"}, "side": {"right"}, "kind": {"fingerless"}, "unit": {"cm"}, "hand.hand_circumference": {"18,5"}, "gauge.swatches[0].stitches": {"24"}, "gauge.swatches[0].width": {"10"}, "pins.held": {"13"}}.Encode()
	for _, seed := range []struct{ path, body string }{
		{"/mitts/1", measure},
		{"/mitts/1/preview", measure},
		{"/mitts/1/what-if", measure},
		{"/mitts/1/what-if/take", "after=1"},
		{"/mitts/1/name", "name=Ada"},
		{"/mitts/1/archive", "archived=true"},
		{"/mitts/1/hand", "side=left&to=knit"},
		{"/mitts/1/copy", ""},
		{"/mitts/1/begin", "name=Ada&pins=true"},
		{"/mitts/1/yarns", "from=2"},
		{"/mitts", "sample=1&name=x"},
		{"/mitts/1/history", "revision=1&name=begun"},
		{"/mitts/1/history/1", "after=1"},
		{"/mitts/1/needles", "key=a&side=right&section=cuff&round=3&on=1"},
		{"/mitts/1/tries", "key=k&date=2025-03-09&side=right&section=gusset&round=8&feel.cuff=1&stitches=10&width=4,2&note=x"},
		{"/mitts/1/tries/1", "after=1&keep=cuff"},
		{"/mitts/1/second", "second=anew&side=left"},
		{"/habits", "mitt=1&zone=cuff"},
		{"/mitts/1/print", "paper=a4&pieces=plan&pieces=chart"},
		{"/classes", "name=Tuesday&mitt=1"},
		{"/classes/1", "name=Tuesday&date=2025-03-09&pins.bridge=3&stamp=0"},
		{"/classes/1/pattern", "mitt=1"},
		{"/classes/1/students", "name=Eve&hand=18,5&stitches=24"},
		{"/classes/1/students/1", "name=Ada&hand=7+1/2&unit=in"},
		{"/classes/1/remarks", "student=1&note-1=x&note-was-1=&knits-1=left&do=move&move=1&before="},
		{"/classes/1/table", "table=name%09hand%0AAda%0918"},
		{"/classes/1/print", "double=1"},
	} {
		f.Add(seed.path, seed.body)
	}
	f.Fuzz(func(t *testing.T, path, body string) {
		z.ask(t, http.MethodPost, path, "application/x-www-form-urlencoded", body)
	})
}

// What scripts send: strokes, counts, motifs, moments.
func FuzzScript(f *testing.F) {
	z := newFuzzed(f)
	for _, seed := range []struct{ path, body string }{
		{"/mitts/1/chart", `{"after":1,"edits":[` + paintPurl + `]}`},
		{"/mitts/1/chart", `{"after":1,"undo":true}`},
		{"/mitts/1/chart", `{"after":1,"key":"a","change":{"kind":"insert","section":"gusset","round":3}}`},
		{"/mitts/1/needles", `{"key":"k","kind":"count","side":"right","section":"cuff","round":3}`},
		{"/motifs", `{"name":"star","cells":[{"left":0,"up":0,"stitch":"p","colour":"b"}]}`},
	} {
		f.Add(seed.path, seed.body)
	}
	f.Fuzz(func(t *testing.T, path, body string) { z.ask(t, http.MethodPost, path, "application/json", body) })
}
