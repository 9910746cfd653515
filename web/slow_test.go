package web

import (
	"context"
	"fmt"
	"net/http"
	"sync/atomic"
	"testing"
	"time"

	"github.com/chromedp/cdproto/cdp"
	"github.com/chromedp/cdproto/network"
	"github.com/chromedp/chromedp"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// sending is how fast a page may send, in bytes a second; 0 is as fast as it can.
func (b *browser) sending(rate float64) {
	b.t.Helper()
	b.station.worn = true
	if rate == 0 {
		rate = -1
	}
	b.do(chromedp.Func(func(ctx context.Context, t *chromedp.Target) error {
		if _, err := cdp.Call(ctx, t, network.Enable, network.EnableParams{}); err != nil {
			return err
		}
		_, err := cdp.Call(ctx, t, network.EmulateNetworkConditionsByRule, network.EmulateNetworkConditionsByRuleParams{
			MatchedNetworkConditions: []*network.Conditions{{UploadThroughput: rate, DownloadThroughput: -1}},
		})
		return err
	}))
}

// file puts a file of so many bytes into the field for one.
func (b *browser) file(selector, name string, size int) {
	b.t.Helper()
	b.do(chromedp.Evaluate[chromedp.Void](fmt.Sprintf(`{
		const files = new DataTransfer();
		files.items.add(new File([new Uint8Array(%d)], %q));
		document.querySelector(%q).files = files.files;
	}`, size, name, selector)))
}

// By a link that is too slow a photograph is cut off, comes to the server once,
// and the page says what to do; what was typed stays, and goes without it. A
// file that is taken in by a plain form is answered by a page.
func TestSlowLinkInTheBrowser(t *testing.T) {
	t.Parallel()
	var tries, imports atomic.Int32
	_, url := serveWith(t, func(s *Server) {
		s.slowest = slowest{rate: 1 << 20, grace: time.Second}
		app := s.Handler
		s.Handler = http.HandlerFunc(func(w http.ResponseWriter, r *http.Request) {
			switch {
			case r.Method == http.MethodPost && r.URL.Path == "/mitts/1/tries":
				tries.Add(1)
			case r.Method == http.MethodPost && r.URL.Path == "/import":
				imports.Add(1)
			}
			app.ServeHTTP(w, r)
		})
	})
	b := newBrowserAt(t, url)
	b.phone()
	b.open(b.sample() + "/tries")
	b.fill("try-round", "8")
	b.fill("try-stitches", "18")
	b.fill("try-width", "8")
	b.file(`#try-form [name="photo"]`, "mitt.jpg", 4<<20)
	b.sending(100 << 10)
	b.tap("#try-form > button")
	b.until(`document.getElementById("try-kept").textContent.includes("choose a smaller photograph")`)
	assert.EqualValues(t, 1, tries.Load(), "it is not sent again, neither by the page nor by the browser")
	b.shot("slow-phone")
	b.expectErrors() // the browser notes the 413

	b.do(chromedp.Evaluate[chromedp.Void](`document.querySelector('#try-form [name="photo"]').value = ""`))
	b.tap("#try-form > button")
	b.arrives(`location.pathname === "/mitts/1/tries/1"`)
	assert.EqualValues(t, 2, tries.Load(), "by the same link")

	b.open("/status")
	b.file(`#move [name="file"]`, "all.json", 4<<20)
	b.follow("#move form button")
	assert.Equal(t, "Too slow to arrive", eval[string](b, `document.querySelector("h1").textContent`))
	require.EqualValues(t, 1, imports.Load())
	b.expectErrors()
}
