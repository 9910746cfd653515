package web

import (
	"net"
	"net/http"
	"strconv"
	"strings"
)

// policy allows only what comes from this server: no inline script or style,
// no frames, no forms to elsewhere.
const policy = "default-src 'none'; script-src 'self'; style-src 'self'; img-src 'self'; connect-src 'self'; " +
	"form-action 'self'; base-uri 'none'; frame-ancestors 'none'"

// guard stands before every route: it refuses a foreign Host (a page on the
// web can point its own name at this machine), refuses writes that another
// site makes and all else that it sets off, and sets the headers of every
// answer.
func guard(door Door, next http.Handler) http.Handler {
	origin := http.NewCrossOriginProtection()
	protected := origin.Handler(next)
	return http.HandlerFunc(func(w http.ResponseWriter, r *http.Request) {
		h := w.Header()
		h.Set("Content-Security-Policy", policy)
		h.Set("X-Content-Type-Options", "nosniff")
		h.Set("X-Frame-Options", "DENY") // for browsers that don't know frame-ancestors
		h.Set("Referrer-Policy", "same-origin")
		h.Set("Cross-Origin-Resource-Policy", "same-origin")
		if ours(r.Host) { // elsewhere a page without https has no use for it
			h.Set("Cross-Origin-Opener-Policy", "same-origin")
		}
		h.Set("Cache-Control", "no-store")
		if !ours(r.Host) && (door.Key == "" || !near(r.Host)) {
			http.Error(w, "This address is not one of Thenar's. Open it as http://127.0.0.1 with its port.", http.StatusMisdirectedRequest)
			return
		}
		if setOff(r.Header) {
			http.Error(w, "Another site’s page asked for this. Open it from Thenar’s own pages, or by a link.", http.StatusForbidden)
			return
		}
		protected.ServeHTTP(w, r)
	})
}

// setOff reports whether a page of another site asked, without a person who
// follows a link: by a picture, a frame, a script. It could not read the answer,
// but have it worked out. The headers are those of Fetch Metadata Request
// Headers (W3C); a browser sends none to an address of the local network that
// has no https. A frame navigates, too, so what counts is that it leads to a
// document of its own; and so does what a page has fetched ahead (Speculation
// Rules, WICG), which says its purpose (Fetch standard; Purpose before that).
func setOff(h http.Header) bool {
	switch h.Get("Sec-Fetch-Site") {
	case "", "same-origin", "none":
		return false
	}
	ahead := h.Get("Sec-Purpose") != "" || h.Get("Purpose") != ""
	return ahead || h.Get("Sec-Fetch-Mode") != "navigate" || h.Get("Sec-Fetch-Dest") != "document"
}

// ours tells whether a Host header names this machine itself.
func ours(host string) bool {
	name := named(host)
	ip := net.ParseIP(name)
	return name == "localhost" || ip != nil && ip.IsLoopback()
}

// named is a Host header without its port; "" where that is none.
func named(host string) string {
	name, port, err := net.SplitHostPort(host)
	if err != nil {
		return strings.Trim(host, "[]")
	}
	if _, err := strconv.ParseUint(port, 10, 16); err != nil {
		return ""
	}
	return name
}
