package web

import (
	"bytes"
	"context"
	"net"
	"os"
	"path/filepath"
	"testing"

	"github.com/chromedp/chromedp"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"thenar/internal/app"
	"thenar/internal/chart"
	"thenar/internal/store"
	"thenar/internal/testenv"
)

// The disk runs full while somebody draws and measures: page and form say so,
// keep what was not saved, and deliver it when there is space again. A plain
// form keeps what was typed on the page that says why.
func TestFullDiskInTheBrowser(t *testing.T) {
	t.Parallel()
	b := newBrowser(t)
	dir := testenv.Disk(t, 4<<20)
	st, err := store.Open(t.Context(), filepath.Join(dir, "thenar.db"))
	require.NoError(t, err)
	ln, err := (&net.ListenConfig{}).Listen(t.Context(), "tcp", "127.0.0.1:0")
	require.NoError(t, err)
	ctx, stop := context.WithCancel(context.Background())
	done := make(chan error, 1)
	var log bytes.Buffer
	go func() { done <- Serve(ctx, ln, app.New(st), &log, Door{}) }()
	t.Cleanup(func() {
		b.do(chromedp.Navigate("about:blank"))
		stop()
		require.NoError(t, <-done)
		require.NoError(t, st.Close())
		assert.Contains(t, log.String(), "can't be done now")
	})
	b.url = "http://" + ln.Addr().String()
	page := chartOf(b, "")
	ballast := fill(t, dir, st)

	at := b.cell(2, 3)
	b.do(chromedp.MouseClickXY(at.X, at.Y))
	b.until(`document.getElementById("chart-saved").textContent.startsWith("not saved")`)
	b.choose("chart.float", "4")
	b.until(`document.getElementById("saved").textContent.includes("is full. Free some space")`)
	assert.Contains(t, eval[string](b, `document.getElementById("saved").textContent`), "Kept here, and sent again by itself")
	b.shot("disk-full")
	require.NoError(t, os.Remove(ballast))
	b.do(chromedp.Evaluate[chromedp.Void](`window.dispatchEvent(new Event("online"))`))
	b.until(chartSaved)
	b.until(`document.getElementById("saved").dataset.state === "saved"`)
	b.desk(page, "chart")
	assert.Equal(t, 1, eval[int](b, marks+`.length`))
	assert.Equal(t, "4", eval[string](b, `document.getElementById("field-chart.float").value`))

	b.open("/")
	ballast = fill(t, dir, st)
	b.do(chromedp.Evaluate[chromedp.Void](`(() => { const f = document.querySelector('form[action$="/name"]'); f.closest("details").open = true; f.elements.name.value = "Winter mitts"; })()`))
	b.follow(`form[action$="/name"] button`)
	assert.Equal(t, "Not now", eval[string](b, `document.querySelector("main h2").textContent`))
	assert.Contains(t, eval[string](b, `document.querySelector(".message").textContent`), "The disk that holds")
	b.shot("disk-full-form")
	require.NoError(t, os.Remove(ballast))
	b.follow("main form button")
	assert.Contains(t, eval[string](b, `document.querySelector("main").textContent`), "Winter mitts")
	b.expectErrors()
}

// fill fills a disk until nothing can be saved on it.
func fill(t *testing.T, dir string, st *store.Store) string {
	t.Helper()
	path := filepath.Join(dir, "ballast")
	f, err := os.Create(path)
	require.NoError(t, err)
	for size := 1 << 16; size >= 1<<12; {
		if _, err := f.Write(make([]byte, size)); err != nil {
			size /= 2
		}
	}
	require.NoError(t, f.Close())
	for err = nil; err == nil; { // the log has room for some more
		_, err = st.KeepMotif(t.Context(), chart.Motif{Name: "star", Cells: []chart.MotifCell{{Stitch: "p"}}})
	}
	return path
}
