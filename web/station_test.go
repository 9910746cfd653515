package web

import (
	"context"
	"net"
	"sync"
	"testing"
	"time"

	"github.com/chromedp/cdproto/cdp"
	"github.com/chromedp/cdproto/emulation"
	"github.com/chromedp/cdproto/network"
	cdppage "github.com/chromedp/cdproto/page"
	"github.com/chromedp/chromedp"
	"github.com/stretchr/testify/require"

	"thenar/static"
)

// station is an address, and a tab that looks at it. Tests have it one after the other,
// each with an app and a database of its own: faces and scripts are in the tab already,
// on which a fresh context spends most of a first page.
type station struct {
	listener *net.TCPListener
	tab      context.Context // nil until a browser comes
	close    func()
	taken    bool // by a browser; a second one has a context of its own
	worn     bool // what was done in it can't be taken back: it is not used again
}

var stations struct {
	sync.Mutex
	free []*station
	held map[string]*station // by address
}

func (s *station) url() string { return "http://" + s.listener.Addr().String() }

// goesOn is a listener of which an app's end leaves the port open for the next app.
type goesOn struct{ *net.TCPListener }

func (l goesOn) Close() error { return l.SetDeadline(time.Unix(1, 0)) }

// takeStation is a station for one app.
func takeStation(t testing.TB) *station {
	t.Helper()
	stations.Lock()
	defer stations.Unlock()
	var s *station
	if n := len(stations.free); n > 0 {
		s, stations.free = stations.free[n-1], stations.free[:n-1]
		require.NoError(t, s.listener.SetDeadline(time.Time{}))
	} else {
		listener, err := net.ListenTCP("tcp", &net.TCPAddr{IP: net.IPv4(127, 0, 0, 1)})
		require.NoError(t, err)
		s = &station{listener: listener, close: func() {}}
	}
	if stations.held == nil {
		stations.held = map[string]*station{}
	}
	stations.held[s.url()] = s
	return s
}

// leave gives a station to the next test, if this one left it as it found it.
func (s *station) leave(t testing.TB) {
	stations.Lock()
	defer stations.Unlock()
	delete(stations.held, s.url())
	if s.worn || t.Failed() {
		s.close()
		s.listener.Close()
		return
	}
	stations.free = append(stations.free, s)
}

// tabAt is the tab of the station at an address until the test ends, or a fresh one
// where it is taken.
func tabAt(t testing.TB, url string) (context.Context, *station) {
	t.Helper()
	stations.Lock()
	s := stations.held[url]
	if s == nil || s.taken || s.worn {
		stations.Unlock()
		return freshContext(t), &station{}
	}
	s.taken = true
	stations.Unlock()
	if s.tab == nil {
		s.tab, s.close = freshTab(t)
	}
	timed, stop := context.WithTimeout(s.tab, patience(t))
	t.Cleanup(func() {
		stop()
		if t.Failed() || s.worn || s.tidy() != nil {
			s.worn = true
		}
		s.taken = false
	})
	return timed, s
}

// tidy leaves the page for one that does nothing, and forgets what pages keep.
func (s *station) tidy() error {
	ctx, stop := context.WithTimeout(s.tab, time.Minute)
	defer stop()
	// A page with something unsaved makes the browser ask, and until it is answered it stays.
	err := chromedp.Listen(ctx, func(event any) {
		if _, asks := event.(*cdppage.EventJavascriptDialogOpening); asks {
			go cdp.Call(ctx, chromedp.FromContext(ctx).Target, cdppage.HandleJavaScriptDialog, cdppage.HandleJavaScriptDialogParams{Accept: true})
		}
	})
	if err != nil {
		return err
	}
	return chromedp.Do(ctx,
		chromedp.Navigate(s.url()+static.URL("fonts/OFL-Source-Sans-3.txt")),
		chromedp.Evaluate[chromedp.Void](`localStorage.clear(); sessionStorage.clear()`),
		chromedp.Func(func(ctx context.Context, t *chromedp.Target) error {
			if _, err := cdp.Call(ctx, t, network.ClearBrowserCookies, cdp.Empty{}); err != nil {
				return err
			}
			if _, err := cdp.Call(ctx, t, emulation.SetEmulatedMedia, emulation.SetEmulatedMediaParams{}); err != nil {
				return err
			}
			_, err := cdp.Call(ctx, t, cdppage.ResetNavigationHistory, cdp.Empty{})
			return err
		}))
}
