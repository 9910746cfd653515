package web

import (
	"crypto/subtle"
	"net"
	"net/http"

	"thenar/web/view"
)

// cookie is where a browser on another machine keeps the key.
const cookie = "thenar"

// access stands before every route of an app that other machines can reach:
// it lets in who has the key. The link with it, opened once, leaves it in the
// browser; without a key there is nothing to ask, the app is reached from
// this machine only.
//
// The link is answered by a page that leads on by itself, not by a redirect:
// a strict cookie is not sent along a way that began elsewhere.
func access(key string, next http.Handler) http.Handler {
	if key == "" {
		return next
	}
	is := func(text string) bool { return subtle.ConstantTimeCompare([]byte(text), []byte(key)) == 1 }
	return http.HandlerFunc(func(w http.ResponseWriter, r *http.Request) {
		if is(r.URL.Query().Get("key")) && r.Method == http.MethodGet {
			http.SetCookie(w, &http.Cookie{
				Name: cookie, Value: key, Path: "/", MaxAge: 400 * 24 * 3600, HttpOnly: true, SameSite: http.SameSiteStrictMode,
			})
			w.Header().Set("Refresh", "0; url="+r.URL.EscapedPath())
			_ = page(w, r, http.StatusOK, view.LetIn(r.URL.EscapedPath()))
			return
		}
		if c, err := r.Cookie(cookie); err == nil && is(c.Value) {
			next.ServeHTTP(w, r)
			return
		}
		http.Error(w, "This needs the link with its key that Thenar printed when it was started. Open that link once on this device.", http.StatusForbidden)
	})
}

// near tells whether a Host header is an address and no name: a name could be
// turned to this machine by whoever owns it.
func near(host string) bool { return net.ParseIP(named(host)) != nil }
