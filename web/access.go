package web

import (
	"context"
	"crypto/subtle"
	"net"
	"net/http"
	"net/netip"
	"net/url"
	"strings"
	"sync"
	"time"

	"golang.org/x/time/rate"

	"thenar/internal/fault"
	"thenar/web/view"
)

// Door lets other machines in: through a link with Key, which is new at each
// start. A device that came in through the link gets a token of its own, and is
// known by that until it is let out. Without a key, only this machine is let
// in.
type Door struct {
	Key  string
	Link string // with the key, to open on another device
}

// cookie is the name of the cookie in which a browser keeps its token.
const cookie = "thenar-device"

// The wrong keys that one address may send: some at once, then one after each
// pause. Other addresses are not held up by it.
const (
	wrongAtOnce = 5
	wrongPause  = 10 * time.Second
	maxGuests   = 1000 // addresses remembered
)

// access lets in only devices with a token or the key, if other machines can
// reach the app.
//
// The link is answered by a page that leads on by itself instead of by a
// redirect, since a browser does not send a strict cookie on a request that
// another site began.
func (s *Server) access(next http.Handler) http.Handler {
	if s.door.Key == "" {
		return next
	}
	guests := guests{now: time.Now, wrong: map[netip.Addr]*rate.Limiter{}}
	return http.HandlerFunc(func(w http.ResponseWriter, r *http.Request) {
		key := r.URL.Query().Get("key")
		c, err := r.Cookie(cookie)
		strange := false // whether the token was never given
		if err == nil {
			d, known, err := s.app.FindDevice(r.Context(), c.Value)
			switch {
			case err != nil:
				s.log.Error("can't tell who is let in", "error", err)
				w.Header().Set("Retry-After", retryAfter)
				refuse(w, r, http.StatusServiceUnavailable, fault.Message(err))
				return
			case known && !d.Out && key != "" && r.Method == http.MethodGet:
				http.Redirect(w, r, bare(r.URL), http.StatusSeeOther)
				return
			case known && !d.Out:
				if err := s.app.NoteUse(r.Context(), d); err != nil {
					s.log.Error("the day of a device", "error", err)
				}
				next.ServeHTTP(w, r.WithContext(context.WithValue(r.Context(), deviceKey{}, d.ID)))
				return
			}
			strange = !known
		}
		switch tried := key != "" || strange; {
		case tried && guests.held(r.RemoteAddr):
			w.Header().Set("Retry-After", "10")
			refuse(w, r, http.StatusTooManyRequests, "Too many wrong keys. Wait ten seconds, then open the link that Thenar printed when it was started.")
		case sameSecret(key, s.door.Key) && r.Method == http.MethodGet:
			s.letIn(w, r)
		default:
			if tried {
				guests.failed(r.RemoteAddr)
			}
			if err == nil {
				http.SetCookie(w, &http.Cookie{Name: cookie, Path: "/", MaxAge: -1, HttpOnly: true, SameSite: http.SameSiteStrictMode})
			}
			refuse(w, r, http.StatusForbidden, "Open the link with its key once on this device: Thenar printed it when it was started.")
		}
	})
}

// refuse answers with a message, as JSON if a script asks.
func refuse(w http.ResponseWriter, r *http.Request, status int, message string) {
	if wantsJSON(r) {
		writeJSON(w, status, map[string][]string{"error": {message}})
		return
	}
	http.Error(w, message, status)
}

// letIn gives the device a token in exchange for the key, and leads on to an
// address without the key.
func (s *Server) letIn(w http.ResponseWriter, r *http.Request) {
	token, err := s.app.LetIn(r.Context(), r.UserAgent())
	if err != nil {
		s.log.Error("nobody can be let in", "error", err)
		refuse(w, r, statuses[fault.KindOf(err)], fault.Message(err))
		return
	}
	http.SetCookie(w, &http.Cookie{
		Name: cookie, Value: token, Path: "/", MaxAge: 400 * 24 * 3600, HttpOnly: true, SameSite: http.SameSiteStrictMode,
	})
	to := bare(r.URL)
	w.Header().Set("Refresh", "0; url="+to)
	_ = page(w, r, http.StatusOK, view.LetIn(to))
}

// bare returns the path and query of an address without the key. It begins with
// one slash only: two would name another host.
func bare(u *url.URL) string {
	query := u.Query()
	query.Del("key")
	to := url.URL{RawQuery: query.Encode()}
	return "/" + strings.TrimLeft(u.EscapedPath(), `/\`) + to.String()
}

// sameSecret reports whether text is the secret, in a time that does not tell
// how much of it is right.
func sameSecret(text, secret string) bool {
	return subtle.ConstantTimeCompare([]byte(text), []byte(secret)) == 1
}

// guests are the addresses that sent wrong keys.
type guests struct {
	now   func() time.Time
	mu    sync.Mutex
	wrong map[netip.Addr]*rate.Limiter
}

// held reports whether an address has to wait, whatever key it sends.
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
		if len(g.wrong) >= maxGuests {
			clear(g.wrong) // so many are an attack, and the key is long enough to withstand it
		}
		l = rate.NewLimiter(rate.Every(wrongPause), wrongAtOnce)
		g.wrong[at] = l
	}
	l.AllowN(g.now(), 1)
}

// from returns the address to count wrong keys by. Of an IPv6 address that is
// the first 64 bits, since a device can choose the rest.
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

// near reports whether a Host header is an IP address. A name is not enough:
// its owner could point it at this machine.
func near(host string) bool { return net.ParseIP(named(host)) != nil }
