package web

import (
	"bytes"
	"context"
	"fmt"
	"net/http"
	"net/url"
	"os"
	"path/filepath"
	"strings"
	"sync"
	"testing"
	"time"

	"github.com/chromedp/cdproto/cdp"
	"github.com/chromedp/cdproto/emulation"
	"github.com/chromedp/cdproto/input"
	"github.com/chromedp/cdproto/log"
	"github.com/chromedp/cdproto/runtime"
	"github.com/chromedp/chromedp"
	"github.com/stretchr/testify/require"

	"thenar/internal/app"
	"thenar/internal/store"
)

// browser is a Chromium with one page of the app, which is served for real on
// a port of its own with a real database.
type browser struct {
	t   testing.TB
	ctx context.Context
	url string

	station *station

	mu   sync.Mutex
	said []string // errors of scripts and of the content policy

	refused bool // answers 409 are no errors
}

// patience bounds one whole browser test, or benchmark.
func patience(t testing.TB) time.Duration {
	if _, long := t.(*testing.B); long {
		return 20 * time.Minute
	}
	return 3 * time.Minute
}

func newBrowser(t testing.TB) *browser {
	t.Helper()
	_, url := serveApp(t)
	return newBrowserAt(t, url)
}

// newBrowserAt is a browser of an app that is served already.
func newBrowserAt(t testing.TB, url string) *browser {
	t.Helper()
	b := &browser{t: t, url: url}
	b.ctx, b.station = tabAt(t, url)
	require.NoError(t, chromedp.Listen(b.ctx, b.hear))
	b.size(1280, 900)
	t.Cleanup(func() {
		b.mu.Lock()
		defer b.mu.Unlock()
		require.Empty(t, b.said, "the page's console is quiet")
	})
	return b
}

// serveApp serves a new app until the test ends, and gives its file and its
// address.
func serveApp(t testing.TB) (*store.Store, string) {
	t.Helper()
	return serveWith(t, func(*Server) {})
}

// serveWith is serveApp of an app that is changed first.
func serveWith(t testing.TB, change func(*Server)) (*store.Store, string) {
	t.Helper()
	st, err := store.Open(context.Background(), filepath.Join(t.TempDir(), "thenar.db"))
	require.NoError(t, err)
	s := takeStation(t)
	ctx, stop := context.WithCancel(context.Background())
	done := make(chan error, 1)
	var messages bytes.Buffer
	app := New(app.New(st), &messages, Door{})
	change(app)
	go func() { done <- app.serve(ctx, goesOn{s.listener}) }()
	t.Cleanup(func() {
		stop()
		require.NoError(t, <-done)
		require.NoError(t, st.Close())
		require.NotContains(t, messages.String(), "level=ERROR")
		s.leave(t)
	})
	return st, s.url()
}

// hear gathers what goes wrong in the page.
func (b *browser) hear(event any) {
	b.mu.Lock()
	defer b.mu.Unlock()
	switch e := event.(type) {
	case *runtime.EventExceptionThrown:
		b.said = append(b.said, e.ExceptionDetails.Text)
	case *log.EventEntryAdded:
		if e.Entry.Level == log.EntryLevelError && !(b.refused && strings.Contains(e.Entry.Text, "409")) {
			b.said = append(b.said, e.Entry.Text)
		}
	}
}

// expectErrors forgets what the console said up to here.
func (b *browser) expectErrors() {
	b.mu.Lock()
	defer b.mu.Unlock()
	b.said = nil
}

// expectRefusal forgets that the server refused what another page had changed,
// which the console may say late, and again where it is asked again.
func (b *browser) expectRefusal() {
	b.mu.Lock()
	defer b.mu.Unlock()
	b.said, b.refused = nil, true
}

// do takes the steps. A step whose element the page put anew between finding
// and pressing it is taken again: nothing has happened yet.
func (b *browser) do(steps ...chromedp.Action[chromedp.Void]) {
	b.t.Helper()
	for _, step := range steps {
		err := chromedp.Do(b.ctx, step)
		for again := 0; again < 3 && err != nil && strings.Contains(err.Error(), "Could not find node with given id"); again++ {
			err = chromedp.Do(b.ctx, step)
		}
		require.NoError(b.t, err)
	}
}

// serverAway lets nothing that the page asks for reach the server.
func (b *browser) serverAway() {
	b.t.Helper()
	b.do(chromedp.Evaluate[chromedp.Void](`window.realFetch = window.fetch; window.fetch = () => Promise.reject(new TypeError("away"))`))
}

// serverBack ends that, and the page hears of it.
func (b *browser) serverBack() {
	b.t.Helper()
	b.do(chromedp.Evaluate[chromedp.Void](`window.fetch = window.realFetch; window.dispatchEvent(new Event("online"))`))
}

func (b *browser) open(path string) {
	b.t.Helper()
	b.do(chromedp.Navigate(b.url + path))
}

// mitt is the address of the mitt at one of whose desks the browser is.
func (b *browser) mitt() string {
	b.t.Helper()
	return eval[string](b, `location.pathname.replace(/\/desk\/.*/, "")`)
}

// desk opens a desk of a mitt.
func (b *browser) desk(mitt, name string) {
	b.t.Helper()
	b.open(mitt + "/desk/" + name)
}

// sample is the address of a new sample mitt, made as the shelf's form makes it
// and without a page: the load of two would cost as much as the steps of a test.
func (b *browser) sample() string {
	b.t.Helper()
	client := http.Client{CheckRedirect: func(*http.Request, []*http.Request) error { return http.ErrUseLastResponse }}
	made, err := client.PostForm(b.url+"/mitts", url.Values{"sample": {"1"}})
	require.NoError(b.t, err)
	require.NoError(b.t, made.Body.Close())
	require.Equal(b.t, http.StatusSeeOther, made.StatusCode)
	return made.Header.Get("Location")
}

// follow clicks on what leads to another page, and waits for that page.
func (b *browser) follow(selector string) {
	b.t.Helper()
	_, err := chromedp.RunResponse(b.ctx, chromedp.Click(chromedp.CSS(selector)))
	require.NoError(b.t, err)
}

// eval gives the value of an expression.
func eval[T any](b *browser, expression string) T {
	b.t.Helper()
	v, err := chromedp.Run(b.ctx, chromedp.Evaluate[T](expression))
	require.NoError(b.t, err, expression)
	return v
}

// await gives what the promise of an expression comes to.
func await[T any](b *browser, expression string) T {
	b.t.Helper()
	v, err := chromedp.Run(b.ctx, chromedp.Evaluate[T](expression, chromedp.EvalAwaitPromise))
	require.NoError(b.t, err, expression)
	return v
}

// until waits for an expression to hold.
func (b *browser) until(expression string) {
	b.t.Helper()
	_, err := chromedp.Run(b.ctx, chromedp.Poll[bool](expression, chromedp.WithPollingTimeout(15*time.Second)))
	if err != nil {
		b.shot("failed-" + strings.ReplaceAll(b.t.Name(), "/", "-"))
		require.NoError(b.t, err, expression)
	}
}

// write unfolds what a field lies in and types into a field by its path, over what stands there.
func (b *browser) write(path, text string) {
	b.t.Helper()
	b.do(chromedp.Evaluate[chromedp.Void](fmt.Sprintf(`(() => {
		const field = document.getElementById(%q);
		for (let up = field.closest("details"); up; up = up.parentElement.closest("details")) up.open = true;
		field.select();
	})()`, "field-"+path)), chromedp.KeyEvent(text))
}

// choose sets a select by its path.
func (b *browser) choose(path, value string) {
	b.t.Helper()
	b.do(chromedp.Evaluate[chromedp.Void](fmt.Sprintf(`(() => {
		const field = document.getElementById(%q);
		field.value = %q;
		field.dispatchEvent(new Event("input", {bubbles: true}));
		field.dispatchEvent(new Event("change", {bubbles: true}));
	})()`, "field-"+path, value)))
}

// point is the middle of a chart's cell in the window.
type point struct{ X, Y float64 }

func (b *browser) cell(round, stitch int) point {
	b.t.Helper()
	return eval[point](b, fmt.Sprintf(`(() => {
		const data = JSON.parse(document.getElementById("chart-data").textContent);
		const svg = document.querySelector("svg[data-chart]");
		const frame = svg.closest(".grid-frame");
		const x = data.rows[%d - 1].runs.flatMap((r) => Array.from({length: r.n}, (_, i) => r.x < 0 ? -1 : r.x - i))[%d - 1];
		const p = new DOMPoint(data.left + (x + 0.5) * data.cell_width, data.bottom - (%d - 0.5) * data.cell_height);
		let q = p.matrixTransform(svg.getScreenCTM());
		const box = frame.getBoundingClientRect();
		if (q.x < box.left || q.x > box.left + frame.clientWidth || q.y < box.top || q.y > box.top + frame.clientHeight) {
			frame.scrollBy(q.x - box.left - frame.clientWidth / 2, q.y - box.top - frame.clientHeight / 2);
			q = p.matrixTransform(svg.getScreenCTM());
		}
		return {X: q.x, Y: q.y};
	})()`, round, stitch, round))
}

func (b *browser) touch(p point) { b.t.Helper(); b.swipe(p, p) }

// swipe moves a finger from one place to another.
func (b *browser) swipe(from, to point) {
	b.t.Helper()
	send := func(kind input.DispatchTouchEventType, at ...*input.TouchPoint) chromedp.Action[chromedp.Void] {
		return chromedp.Func(func(ctx context.Context, t *chromedp.Target) error {
			_, err := cdp.Call(ctx, t, input.DispatchTouchEvent, input.DispatchTouchEventParams{Type: kind, TouchPoints: append([]*input.TouchPoint{}, at...)})
			return err
		})
	}
	b.do(send(input.DispatchTouchEventTypeTouchStart, &input.TouchPoint{X: from.X, Y: from.Y}))
	await[bool](b, drawn) // the page has seen the finger before it leaves
	if from != to {
		b.do(send(input.DispatchTouchEventTypeTouchMove, &input.TouchPoint{X: to.X, Y: to.Y}))
	}
	b.do(send(input.DispatchTouchEventTypeTouchEnd))
}

// drawn holds once the page was drawn anew, twice.
const drawn = `new Promise((done) => requestAnimationFrame(() => requestAnimationFrame(() => done(true))))`

// tap touches the middle of an element.
func (b *browser) tap(selector string) {
	b.t.Helper()
	b.do(chromedp.Evaluate[chromedp.Void](fmt.Sprintf(`document.querySelector(%q).scrollIntoView({block: "center"})`, selector)))
	await[bool](b, drawn)
	b.touch(eval[point](b, fmt.Sprintf(`(() => {
		const e = document.querySelector(%q);
		const r = e.getBoundingClientRect();
		return {X: r.left + r.width / 2, Y: r.top + r.height / 2};
	})()`, selector)))
}

func (b *browser) click(p point) {
	b.t.Helper()
	b.do(chromedp.MouseClickXY(p.X, p.Y))
}

// drag paints with the pointer from one cell to another.
func (b *browser) drag(from, to point) {
	b.t.Helper()
	b.do(
		chromedp.MouseEvent(chromedp.MousePressed, from.X, from.Y, chromedp.ButtonLeft, chromedp.ClickCount(1)),
		chromedp.MouseEvent(chromedp.MouseMoved, to.X, to.Y, chromedp.ButtonLeft),
		chromedp.MouseEvent(chromedp.MouseReleased, to.X, to.Y, chromedp.ButtonLeft, chromedp.ClickCount(1)),
	)
}

func (b *browser) size(width, height int64) {
	b.t.Helper()
	b.do(chromedp.EmulateViewport(width, height))
}

// phone is a narrow window with touch.
func (b *browser) phone() {
	b.t.Helper()
	b.do(chromedp.EmulateViewport(360, 740, chromedp.EmulateMobile, chromedp.EmulateTouch))
}

// dark asks for dark colours, or light ones again.
func (b *browser) scheme(name string) {
	b.t.Helper()
	b.do(chromedp.Func(func(ctx context.Context, t *chromedp.Target) error {
		_, err := cdp.Call(ctx, t, emulation.SetEmulatedMedia, emulation.SetEmulatedMediaParams{
			Features: []*emulation.MediaFeature{{Name: "prefers-color-scheme", Value: name}},
		})
		return err
	}))
}

// media shows the page as on a screen, or as printed.
func (b *browser) media(name string) {
	b.t.Helper()
	b.do(chromedp.Func(func(ctx context.Context, t *chromedp.Target) error {
		_, err := cdp.Call(ctx, t, emulation.SetEmulatedMedia, emulation.SetEmulatedMediaParams{Media: name})
		return err
	}))
}

// shot keeps a picture of the page where THENAR_SHOTS names a folder.
func (b *browser) shot(name string) {
	b.t.Helper()
	dir := os.Getenv("THENAR_SHOTS")
	if dir == "" {
		return
	}
	picture, err := chromedp.Run(b.ctx, chromedp.FullScreenshot(100))
	require.NoError(b.t, err)
	require.NoError(b.t, os.WriteFile(filepath.Join(dir, name+".png"), picture, 0o600))
}

// kept keeps a file that a page gave beside the pictures.
func (b *browser) kept(name, content string) {
	b.t.Helper()
	if dir := os.Getenv("THENAR_SHOTS"); dir != "" {
		require.NoError(b.t, os.WriteFile(filepath.Join(dir, name), []byte(content), 0o600))
	}
}
