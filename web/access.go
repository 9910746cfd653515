package web

import (
	"crypto/subtle"
	"net"
	"net/http"
	"net/netip"
	"sync"
	"time"

	"golang.org/x/time/rate"

	"thenar/web/view"
)

// Door is how other machines come in: by the link with Key, which is made at
// each start and leaves Token in the browser, by which it is known from then
// on. Without a key there is no such door, and only this machine is let in.
type Door struct {
	Key, Token string
	Link       string // with the key, to be opened on another device
}

// cookie is where a browser keeps the token.
const cookie = "thenar"

// How often one address may send a wrong key: so many at once, then one after
// each pause. Others are not held up by it.
const (
	wrongAtOnce = 5
	wrongPause  = 10 * time.Second
	mostGuests  = 1000 // addresses that are remembered
)

// access stands before every route of an app that other machines can reach.
//
// The link is answered by a page that leads on by itself, not by a redirect:
// a strict cookie is not sent along a way that began elsewhere.
func access(door Door, next http.Handler) http.Handler {
	if door.Key == "" {
		return next
	}
	guests := guests{now: time.Now, wrong: map[netip.Addr]*rate.Limiter{}}
	return http.HandlerFunc(func(w http.ResponseWriter, r *http.Request) {
		c, err := r.Cookie(cookie)
		if err == nil && is(c.Value, door.Token) {
			next.ServeHTTP(w, r)
			return
		}
		key := r.URL.Query().Get("key")
		switch tried := key != "" || err == nil; {
		case tried && guests.held(r.RemoteAddr):
			w.Header().Set("Retry-After", "10")
			http.Error(w, "Too many wrong keys came from this device. Wait ten seconds, then open the link that Thenar printed when it was started.", http.StatusTooManyRequests)
		case is(key, door.Key) && r.Method == http.MethodGet:
			letIn(w, r, door)
		default:
			if tried {
				guests.failed(r.RemoteAddr)
				http.SetCookie(w, &http.Cookie{Name: cookie, Path: "/", MaxAge: -1, HttpOnly: true, SameSite: http.SameSiteStrictMode})
			}
			http.Error(w, "This needs the link with its key that Thenar printed when it was started. Open that link once on this device.", http.StatusForbidden)
		}
	})
}

// letIn exchanges the key for a cookie and leads on without it.
func letIn(w http.ResponseWriter, r *http.Request, door Door) {
	http.SetCookie(w, &http.Cookie{
		Name: cookie, Value: door.Token, Path: "/", MaxAge: 400 * 24 * 3600, HttpOnly: true, SameSite: http.SameSiteStrictMode,
	})
	w.Header().Set("Refresh", "0; url="+r.URL.EscapedPath())
	_ = page(w, r, http.StatusOK, view.LetIn(r.URL.EscapedPath()))
}

// is compares in the same time however much of it is right.
func is(text, secret string) bool {
	return subtle.ConstantTimeCompare([]byte(text), []byte(secret)) == 1
}

// guests are the addresses from which wrong keys came.
type guests struct {
	now   func() time.Time
	mu    sync.Mutex
	wrong map[netip.Addr]*rate.Limiter
}

// held tells whether an address has to wait, whatever key it sends.
func (g *guests) held(remote string) bool {
	g.mu.Lock()
	defer g.mu.Unlock()
	l := g.wrong[from(remote)]
	return l != nil && l.TokensAt(g.now()) < 1
}

// failed counts a wrong key.
func (g *guests) failed(remote string) {
	g.mu.Lock()
	defer g.mu.Unlock()
	at := from(remote)
	l := g.wrong[at]
	if l == nil {
		if len(g.wrong) >= mostGuests {
			clear(g.wrong) // so many are an attack, against which the key is long enough
		}
		l = rate.NewLimiter(rate.Every(wrongPause), wrongAtOnce)
		g.wrong[at] = l
	}
	l.AllowN(g.now(), 1)
}

// from is whom an address belongs to: one of version 6 to everybody with its
// first 64 bits, since a device may choose the rest.
func from(remote string) netip.Addr {
	at, err := netip.ParseAddrPort(remote)
	if err != nil {
		return netip.Addr{}
	}
	addr := at.Addr().Unmap().WithZone("")
	if addr.Is6() {
		if p, err := addr.Prefix(64); err == nil {
			return p.Addr()
		}
	}
	return addr
}

// near tells whether a Host header is an address and no name: a name could be
// turned to this machine by whoever owns it.
func near(host string) bool { return net.ParseIP(named(host)) != nil }
