package web

import (
	"context"
	"os"
	"sync"
	"testing"

	"github.com/chromedp/chromedp"
	"github.com/stretchr/testify/require"

	"thenar/internal/testenv"
)

// chromium is the one browser of all tests of the package: a fresh context in
// it, with cookies and storage of its own, takes a tenth of the time of a fresh
// browser.
var chromium struct {
	start sync.Once
	ctx   context.Context
	err   error
	stop  func()
}

// freshContext is a page in a context of its own, which ends with the test.
func freshContext(t testing.TB) context.Context {
	t.Helper()
	page, stop := freshTab(t)
	t.Cleanup(stop)
	timed, stopTimed := context.WithTimeout(page, patience(t))
	t.Cleanup(stopTimed)
	return timed
}

// freshTab is a page in a context of its own.
func freshTab(t testing.TB) (context.Context, func()) {
	t.Helper()
	path := testenv.Browser(t)
	chromium.start.Do(func() { startChromium(path) })
	require.NoError(t, chromium.err)
	page, stop := chromedp.NewContext(chromium.ctx, chromedp.WithNewBrowserContext())
	require.NoError(t, chromedp.Do(page)) // outside any time limit, which would end the page's tab
	return page, stop
}

func startChromium(path string) {
	folder, err := os.MkdirTemp("", "thenar-chromium")
	if err != nil {
		chromium.err = err
		return
	}
	options := append(chromedp.DefaultExecAllocatorOptions[:],
		chromedp.ExecPath(path), chromedp.NoSandbox, chromedp.UserDataDir(folder),
		chromedp.Flag("disable-background-networking", true), chromedp.Flag("disable-component-update", true),
		chromedp.Flag("disable-quic", true), chromedp.Flag("no-first-run", true))
	allocator, stopAllocator := chromedp.NewExecAllocator(context.Background(), options...)
	ctx, stopBrowser := chromedp.NewContext(allocator)
	chromium.stop = func() {
		stopBrowser()
		stopAllocator()
		os.RemoveAll(folder)
	}
	chromium.ctx, chromium.err = ctx, chromedp.Do(ctx)
}

// stopChromium ends the browser after all tests.
func stopChromium() {
	if chromium.stop != nil {
		chromium.stop()
	}
}
